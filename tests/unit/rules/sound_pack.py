"""A pack without a fault, for tests to break, and what they break it with."""

import shutil
from pathlib import Path

import pytest

from service.rules.reader import PACKS_DIRECTORY, PackError, load_packs

SOUND = """\
id = "zz"
title = "Nowhere"
edition = "2026-11"
inherits = ["unece"]
notes = []

[limits.overall_diameter_met_percent]
value = 1.0
unit = "%"
article = "art. 1"
source = "COMMON-PRACTICE"
status = "memory"

[winter]
label_required = true
article = "art. 2"
source = "COMMON-PRACTICE"
status = "memory"

[[winter.markings]]
marking = "3PMSF"
article = "art. 2"
source = "COMMON-PRACTICE"
status = "memory"

[[speedometer]]
kind = "band"
title = "Speedometer of Nowhere"
unit = "km/h"
least_gain = 1.0
least_constant_kmh = -5
most_gain = 1.0
most_constant_kmh = 5
article = "art. 3"
source = "COMMON-PRACTICE"
status = "memory"
test_speed_is = "true"

[[rules]]
code = "law.track_change"
title = "Track"
message = "The track is limited."
quantity = "track_change_mm"
comparison = "at_most"
value = 20
unit = "mm"
article = "art. 4"
source = "NL-RV"
status = "read"
checked = 2026-11-24

[[rules]]
code = "law.width"
title = "Width"
message = "The width is limited."
any_of = [
  { quantity = "section_width_change_mm", comparison = "at_most", value = 20, unit = "mm" },
  { quantity = "section_width_change_percent", comparison = "at_most", value = 10, unit = "%" },
]
article = "art. 5"
source = "COMMON-PRACTICE"
status = "memory"
valid_from = 2020-01-01
valid_to = 2030-01-01
categories = ["M1"]
"""
TRACK, WIDTH = SOUND.index('code = "law.track_change"'), SOUND.index('code = "law.width"')


def write(place: Path, text: str) -> Path:
    shutil.copy(PACKS_DIRECTORY / "unece.toml", place)
    (place / "zz.toml").write_text(text, encoding="utf-8")
    return place


def refusal(place: Path, text: str) -> PackError:
    with pytest.raises(PackError) as caught:
        load_packs(write(place, text))
    return caught.value


def replace_after(start: int, old: str, new: str) -> tuple[str, int]:
    """Return the pack with one text replaced after a place, and the line where the replacement stands."""
    at = SOUND.index(old, start)
    return SOUND[:at] + new + SOUND[at + len(old) :], SOUND.count("\n", 0, at) + 1


def line(text: str, start: int = 0) -> int:
    return SOUND.count("\n", 0, SOUND.index(text, start)) + 1
