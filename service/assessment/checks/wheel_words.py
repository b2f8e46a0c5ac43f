"""Which wheel or tyre is meant, in whole words: endings and genders differ between languages, so nothing is put in."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from service.core.findings import AxleName
from service.core.saying import Said, say

Which = Literal["present", "new"]

TYRES: Mapping[tuple[Which, AxleName], Said] = MappingProxyType(
    {
        # Say: the object of an advice, as in "look up the overall diameter of {tyre}".
        ("present", "front"): say("the present front tyre"),
        # Say: the object of an advice, as in "look up the overall diameter of {tyre}".
        ("present", "rear"): say("the present rear tyre"),
        # Say: the object of an advice, as in "look up the overall diameter of {tyre}".
        ("new", "front"): say("the new front tyre"),
        # Say: the object of an advice, as in "look up the overall diameter of {tyre}".
        ("new", "rear"): say("the new rear tyre"),
    }
)
WHEELS: Mapping[tuple[Which, AxleName], Said] = MappingProxyType(
    {
        # Say: as in "read the offset (ET) on the back of {wheel}".
        ("present", "front"): say("the present front wheel"),
        # Say: as in "read the offset (ET) on the back of {wheel}".
        ("present", "rear"): say("the present rear wheel"),
        # Say: as in "read the offset (ET) on the back of {wheel}".
        ("new", "front"): say("the new front wheel"),
        # Say: as in "read the offset (ET) on the back of {wheel}".
        ("new", "rear"): say("the new rear wheel"),
    }
)
