"""One line of the job card: what to do, in words and, where there are any, with its numbers."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from service.core.findings import Finding


class Action(NamedTuple):
    """One thing for the workshop to do."""

    code: str
    text: str
    pressure_kpa: float | None = None
    ring_outer_mm: float | None = None
    ring_inner_mm: float | None = None
    speed_kmh: float | None = None
    circumference_percent: float | None = None
    spacer_mm: float | None = None
    findings: tuple[str, ...] = ()
    """The codes of the findings that it answers, each once; empty for what is done with every wheel."""

    @property
    def numbers(self) -> dict[str, float]:
        """Return the numbers that are there, by name; the unit is in the name."""
        found = self._asdict()
        return {name: found[name] for name in _NUMBERS if found[name] is not None}


_NUMBERS = Action._fields[2:-1]


def answering(action: Action, findings: Iterable[Finding]) -> Action:
    """Return the line with the codes of the findings that it answers."""
    return action._replace(findings=tuple(dict.fromkeys(each.code for each in findings)))
