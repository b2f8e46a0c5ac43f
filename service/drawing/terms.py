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


def on_axle(name: AxleName, sentence: str) -> Said:
    """Return the sentence with the axle that it is about."""
    return say("{place}: {sentence}", place=AXLES[name], sentence=sentence)
