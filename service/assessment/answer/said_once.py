"""What one finding says in other words than another does: a card, a summary and a fitter name the cause alone.

The findings themselves stay, each with its numbers; the line that names the cause answers them too.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from service.assessment.answer.action import Action
from service.core.findings import ADVISORY, NOT_ASSESSED, Finding

_TOO_WEAK = ("load.capacity",)
_SPARE = ("tyre.temporary_spare",)
# By the code of what follows: the codes of what it follows from.
_CAUSES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "load.pressure": (*_TOO_WEAK, *_SPARE),
        "load.below_present": (*_TOO_WEAK, *_SPARE),
        "balance.grip_order": ("balance.change",),
        "wet.aquaplaning": ("wet.reserve",),
        # A spare is slower, smaller and narrower than the tyre that it stands in for: nobody needs to be told.
        "speed.capability": _SPARE,
        "diameter.deviation": _SPARE,
        "diameter.speedometer": _SPARE,
        "diameter.axle_ratio": _SPARE,
        "wet.axle_order": _SPARE,
    }
)


def spoken(of: Iterable[Finding], among: Sequence[Finding]) -> list[Finding]:
    """Return those findings that no other one among all findings says already."""
    return [each for each in of if _cause(each, among) is None]


def with_echoes(card: Sequence[Action], findings: Sequence[Finding]) -> list[Action]:
    """Return the job card, the line that names a cause answering what follows from it as well."""
    made = list(card)
    for each in findings:
        cause = _cause(each, findings)
        if cause is None:
            continue
        at = next((place for place, line in enumerate(made) if cause.code in line.findings), None)
        if at is not None and each.code not in made[at].findings:
            # Worst first: it comes among those that came out alike, behind all that came out worse.
            alike = [other.code for other in findings if other.outcome == each.outcome]
            codes = sorted((*made[at].findings, each.code), key=lambda code: _place(code, alike))
            made[at] = made[at]._replace(findings=tuple(codes))
    return made


def _place(code: str, among: Sequence[str]) -> int:
    return among.index(code) if code in among else -1


def _cause(finding: Finding, among: Sequence[Finding]) -> Finding | None:
    """Return the finding that says the same of the same axle with no less weight, None where none does."""
    codes = _CAUSES.get(finding.code, ())
    if not codes or finding.outcome < ADVISORY:
        return None
    for each in among:
        if each.code not in codes:
            continue
        alike = each.axle == finding.axle or "vehicle" in (each.axle, finding.axle)
        # What is so today already is not the cause of what the change brings; an open question causes only another.
        heavier = each.outcome >= max(finding.outcome, ADVISORY) and (finding.already or not each.already)
        open_for_open = each.outcome != NOT_ASSESSED or finding.outcome == NOT_ASSESSED
        if alike and heavier and open_for_open:
            return each
    return None
