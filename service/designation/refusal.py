"""Why a designation is refused, said as a fitter would: out of scope, a look-alike, or what may have been meant.

Only texts that the readers refuse come here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from service.core.errors import DesignationKind, UnreadableDesignation
from service.core.saying import Said, say
from service.designation.repairs import Repair, repairs
from service.designation.scope import OtherVehicle, other_vehicle
from service.designation.text import MAX_LENGTH, normal


class RefusedDesignation(UnreadableDesignation):
    """A designation that cannot be read, with the canonical spelling of what may have been meant, if any is near."""

    def __init__(self, kind: DesignationKind, position: int, expected: Said, did_you_mean: str | None = None) -> None:
        super().__init__(kind, position, expected)
        self.did_you_mean = did_you_mean
        if did_you_mean is not None:
            self.detail = say("{refusal} Did you mean {designation}?", refusal=self.detail, designation=did_you_mean)
            self.args = (self.detail,)


class OutOfScope(RefusedDesignation):
    """A designation that is well known, but of a tyre that no car, van or truck takes."""

    code = "out_of_scope"

    def __init__(self, vehicle: OtherVehicle) -> None:
        super().__init__("tyre", 0, say("a tyre of a car, a van or a truck"))
        self.vehicle = vehicle
        self.detail = vehicle.value
        self.args = (self.detail,)


def explained(error: UnreadableDesignation, text: str, canonical: Callable[[str], str]) -> RefusedDesignation:
    """Return the refusal of a text in its best words.

    `canonical` returns the canonical spelling of a text, or raises `UnreadableDesignation`.
    """
    if len(text) > MAX_LENGTH:
        return RefusedDesignation(error.kind, error.position, error.expected)
    if error.kind == "tyre":
        vehicle = other_vehicle(normal(text))
        if vehicle is not None:
            return OutOfScope(vehicle)
    return _nearest(error, repairs(error, text), canonical)


def _nearest(
    error: UnreadableDesignation, candidates: Iterable[Repair], canonical: Callable[[str], str]
) -> RefusedDesignation:
    """Return the refusal with the first repair that reads."""
    for repair in candidates:
        try:
            meant = canonical(repair.text)
        except UnreadableDesignation:
            continue
        return RefusedDesignation(error.kind, repair.position, repair.expected, meant)
    return RefusedDesignation(error.kind, error.position, error.expected)
