"""Designations of a catalogue, read once: a sweep meets the same thousands of texts in every batch.

The readers themselves remember nothing, since a service is asked about other vehicles each time.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass, field
from functools import lru_cache
from operator import attrgetter
from typing import NamedTuple

from service.assessment.case import Rim
from service.assessment.view.facts import rim_facts, tyre_facts
from service.assessment.view.load_at_speed import service_facts
from service.assessment.view.wheel_facts import RimFacts, ServiceFacts, TyreFacts, names_of
from service.core.numeric import UNKNOWN
from service.designation.rim import parse_rim
from service.designation.tyre import TyreDesignation, parse_tyre

# Some 3 KB each.
REMEMBERED = 32_768
_TYRE_ROW = attrgetter(*names_of(TyreFacts))
_SERVICE_ROW = attrgetter(*names_of(ServiceFacts))
_RIM_ROW = attrgetter(*names_of(RimFacts))


@dataclass(frozen=True)
class ServiceKind:
    """Tyres whose load and speed come out alike on every vehicle, and one of them."""

    said: Hashable
    example: TyreDesignation = field(compare=False)


class KnownTyre(NamedTuple):
    """What a tyre's designation says, the same as a row, and of which kind its service description is."""

    facts: TyreFacts
    row: tuple[float, ...]
    service: ServiceKind


@lru_cache(maxsize=REMEMBERED)
def tyre(text: str) -> KnownTyre:
    """Return the tyre of a designation.

    Raises
    ------
    UnreadableDesignation
        As the reader of designations does.
    """
    designation = parse_tyre(text)
    facts = tyre_facts(designation)
    return KnownTyre(facts, _TYRE_ROW(facts), ServiceKind(_said(designation), designation))


@lru_cache(maxsize=REMEMBERED)
def rim(text: str) -> tuple[float, ...]:
    """Return what the designation of a rim says, as a row of facts.

    Raises
    ------
    UnreadableDesignation
        As the reader of designations does.
    """
    return _RIM_ROW(rim_facts(Rim(parse_rim(text))))


@lru_cache(maxsize=REMEMBERED)
def service(kind: ServiceKind, wheels_per_side: int, top_kmh: float, law_kmh: float | None) -> tuple[float, ...]:
    """Return what tyres of a kind carry on a vehicle, as a row of facts; `law_kmh` None: at its top speed."""
    # None, because NaN is not equal to itself and would never be remembered.
    law = UNKNOWN if law_kmh is None else law_kmh
    return _SERVICE_ROW(service_facts(kind.example, wheels_per_side, top_kmh, law))


def _said(designation: TyreDesignation) -> Hashable:
    """Return all that the load and speed of a tyre depend on, besides the vehicle."""
    return (
        designation.load_index,
        designation.load_index_twin,
        designation.speed_symbol,
        designation.is_commercial,
        designation.construction,
        designation.speed_letter,
        designation.z_rated,
        designation.bracketed,
        designation.additional,
    )
