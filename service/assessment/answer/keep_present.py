"""What undoes a shift of balance or a weaker wet reserve without a new fault: to leave one axle as it is.

A size that would settle it is for load, rim, room and law to allow as well, so none is named. The present wheels of one
axle are: they are tried as a candidate, and named only where they settle the finding and make nothing worse.
"""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.already import grades_of
from service.assessment.case import Axle, Case, Fitment
from service.core.findings import ADVISORY, MET, AxleName, Finding, Remedy

ASKING = ("balance.change", "balance.grip_order", "wet.reserve", "wet.axle_order", "wet.aquaplaning")
# Where these speak too, the axle that is kept must settle them, since they name another change of one axle.
BETWEEN_AXLES = (
    "diameter.axle_ratio",
    "tyre.tread_difference",
    "tyre.season_mix",
    "tyre.run_flat_mix",
    "tyre.structure",
    "law.winter_tyre",
)
QUANTITY, PRESENT = "fitment", "present"


def with_kept_axle(case: Case, findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, worst first, those of balance and wet road with the axle to keep where that settles them."""
    said = [each for each in findings if each.outcome >= ADVISORY]
    asking = [each for each in said if each.code in ASKING and not each.already]
    if not asking:
        return list(findings)
    between = [each for each in said if each.code in BETWEEN_AXLES]
    axle, met = _kept(case, [asking[0], *between], findings[0].outcome)
    if axle is None:
        return list(findings)
    told = {_place(each) for each in (*asking, *between)} & met
    remedy = keeping(axle)
    return [each._replace(remedy=remedy) if _place(each) in told else each for each in findings]


def keeping(axle: AxleName) -> Remedy:
    """Return the remedy that leaves an axle as it is."""
    return Remedy(f"keep the present {axle} wheels", f"/candidate/{axle}", QUANTITY, equals=PRESENT)


def _place(finding: Finding) -> tuple[str, str]:
    return finding.code, finding.axle


def _kept(case: Case, wanted: Sequence[Finding], most: int) -> tuple[AxleName | None, set[tuple[str, str]]]:
    """Return the axle that settles all of them, and all that is met then; one axle, since both are no change at all."""
    axles: tuple[AxleName, ...] = ("front", "rear")
    for axle in axles:
        if has_present(getattr(case.vehicle, axle), getattr(case.candidate, axle)):
            continue
        met = _settled(case, axle, most)
        if met.issuperset(map(_place, wanted)):
            return axle, met
    return None, set()


def has_present(axle: Axle, proposed: Fitment) -> bool:
    """Return whether an axle keeps its tyre and rim anyway: its pressure is for the job card alone to say."""
    now, then = ((each.tyre.designation, each.rim.designation) for each in (axle.fitted, proposed))
    return bool(now == then)


def _settled(case: Case, axle: AxleName, most: int) -> set[tuple[str, str]]:
    """Return what is met once an axle keeps its present wheels; nothing where any outcome is worse than `most`."""
    fitted = {axle: getattr(case.vehicle, axle).fitted}
    grades = list(grades_of(case._replace(candidate=case.candidate._replace(**fitted))))
    if any(grade.outcome > most for _, _, grade in grades):
        return set()
    return {(code, where) for code, where, grade in grades if grade.outcome == MET}
