"""Words that several drawings share."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from service.core.findings import AxleName
from service.core.saying import Said, say

Which = Literal["present", "proposed"]

AXLES: Final[Mapping[AxleName, Said]] = MappingProxyType({"front": say("Front axle"), "rear": say("Rear axle")})
# Say: labels the tyre and rim that are on the car now
PRESENT: Final = say("present")
# Say: labels the tyre and rim that the customer asks about
PROPOSED: Final = say("proposed")
FITMENTS: Final[Mapping[Which, Said]] = MappingProxyType({"present": PRESENT, "proposed": PROPOSED})
# Say: along a dimension line, followed by numbers
SECTION_WIDTH: Final = say("section width")
# Say: names a surface in a drawing: what the wheel is bolted against
HUB_FACE: Final = say("hub face")
# Say: names a thing in a drawing: the suspension strut beside the wheel
STRUT: Final = say("strut")
# Say: names a thing in a drawing: the outer edge of the wing (fender) above the wheel
WING_EDGE: Final = say("wing edge")
# Say: names a thing in a drawing: the wheel arch above the tyre, with the suspension fully compressed
ARCH: Final = say("arch, at full bump")
# Say: names a hatched place in a drawing, where the wheel would be in the strut; a negative length follows
INTO_STRUT: Final = say("overlap with the strut")
# Say: names a hatched place in a drawing, where the wheel would be in the wing edge; a negative length follows
INTO_WING_EDGE: Final = say("overlap with the wing edge")
# Say: names a hatched place in a drawing, where the tyre would be in the wheel arch; a negative length follows
INTO_ARCH: Final = say("overlap with the arch")
# Say: along a dimension line, followed by numbers: between the two tyres of a twin
TWIN_GAP: Final = say("twin gap")
# Say: names a hatched place in a drawing, where the two tyres of a twin would touch; a negative length follows
TWIN_OVERLAP: Final = say("overlap of the twins")


def on_axle(name: AxleName, sentence: str) -> Said:
    """Return the sentence with the axle that it is about."""
    return say("{place}: {sentence}", place=AXLES[name], sentence=sentence)
