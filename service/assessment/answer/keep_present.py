"""What undoes a shift of balance or a weaker wet reserve without a new fault: to leave one axle as it is.

A size that would settle it is for load, rim, room and law to allow as well, so none is named. The present wheels of one
axle are: they are tried as a candidate, and named only where they settle the finding and make nothing worse.
"""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.already import grades_of
from service.assessment.case import Case
from service.core.findings import ADVISORY, MET, AxleName, Finding, Remedy

SETTLED = ("balance.change", "balance.grip_order", "wet.axle_order", "wet.aquaplaning")
# Where these speak they name another change of one axle against the other.
BETWEEN_AXLES = (
    "diameter.axle_ratio",
    "tyre.tread_difference",
    "tyre.season_mix",
    "tyre.run_flat_mix",
    "tyre.structure",
)
QUANTITY, PRESENT = "fitment", "present"


def with_kept_axle(case: Case, findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, those of balance and wet road with the axle to keep where that settles them."""
    asking = [each for each in findings if _asks(each)]
    if not asking or any(each.code in BETWEEN_AXLES and each.outcome >= ADVISORY for each in findings):
        return list(findings)
    most = max(each.outcome for each in findings)
    axle = _axle(case, asking, most)
    if axle is None:
        return list(findings)
    remedy = Remedy(f"keep the present {axle} wheels", f"/candidate/{axle}", QUANTITY, equals=PRESENT)
    settled = _settled(case, axle, most)
    return [
        each._replace(remedy=remedy) if _asks(each) and (each.code, each.axle) in settled else each for each in findings
    ]


def _asks(finding: Finding) -> bool:
    return finding.code in SETTLED and finding.outcome >= ADVISORY and not finding.already


def _axle(case: Case, asking: Sequence[Finding], most: int) -> AxleName | None:
    """Return the axle that settles the worst of them; one for all, since both together are no change at all."""
    code, where = asking[0].code, asking[0].axle
    axles: tuple[AxleName, ...] = ("front", "rear")
    return next((axle for axle in axles if (code, where) in _settled(case, axle, most)), None)


def _settled(case: Case, axle: AxleName, most: int) -> set[tuple[str, str]]:
    """Return what is met once an axle keeps its present wheels; nothing where any outcome is worse than `most`."""
    fitted = {axle: getattr(case.vehicle, axle).fitted}
    grades = list(grades_of(case._replace(candidate=case.candidate._replace(**fitted))))
    if any(grade.outcome > most for _, _, grade in grades):
        return set()
    return {(code, where) for code, where, grade in grades if grade.outcome == MET}
