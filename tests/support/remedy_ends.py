"""A remedy with a number, beside values at its ends and a step beyond, and what comes of doing either."""

from __future__ import annotations

from typing import NamedTuple

import pytest

from service.assessment.answer.assess import Assessment
from service.core.findings import MET
from tests.support.cases import changed, check, finding, saloon

SHOWN = "/vehicle/speedometer/displayed_kmh"


class Case(NamedTuple):
    """A question to the saloon, its remedy (pointer, quantity, unit; ends), and values at its ends and beyond."""

    changes: dict[str, object]
    code: str
    remedy: str
    ends: tuple[float | None, float | None]
    settles: tuple[object, ...]
    beyond: tuple[object, ...]
    where: str = "rear"
    written: str = "{}"
    """How a value stands in the request: a number alone, or within a designation."""
    field: str = ""
    """Where it is written, if not where the remedy points."""
    also: tuple[str, ...] = ()
    """Findings that the other end belongs to."""

    def asked(self, **more: object) -> Assessment:
        """Return what is found after the changes and more of them."""
        return check(changed(saloon(), {_full(pointer): value for pointer, value in (self.changes | more).items()}))

    def names_its_remedy(self) -> bool:
        """Return whether the remedy has the pointer, quantity, unit and ends that it ought to have."""
        remedy = finding(self.asked(), self.code, self.where).remedy
        assert remedy is not None
        pointer, quantity, unit = self.remedy.split()
        told = (remedy.pointer, remedy.quantity, remedy.unit or "-")
        ends = zip((remedy.at_least, remedy.at_most), self.ends, strict=True)
        kept = [end == (None if wanted is None else pytest.approx(wanted, abs=0.002)) for end, wanted in ends]
        return told == (_full(pointer), quantity, unit) and all(kept)

    def is_settled_by(self, value: object) -> bool:
        """Return whether this value keeps the finding, and those of its other end, met."""
        field = {self.field or self.remedy.split()[0]: value if self.written == "{}" else self.written.format(value)}
        if SHOWN in field:
            field["/vehicle/speedometer/true_kmh"] = 100
        found = self.asked(**field)
        return all(finding(found, code, self.where).outcome == MET for code in (self.code, *self.also))


def _full(pointer: str) -> str:
    """Return the whole pointer; what does not begin at the root is of the candidate's rear wheel."""
    return pointer if pointer.startswith("/") else f"/candidate/rear/{pointer}"
