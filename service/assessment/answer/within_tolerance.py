"""Does a finding hold whichever way the stated tolerances go?

Every question is graded at the worse end of what was measured. Here it is asked again with the numbers as they were
measured: what comes out otherwise does not hold within the tolerance, and is told so.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import isclose

from service.assessment.answer.already import weighed
from service.assessment.answer.every_question import graded
from service.assessment.case import Axle, Case
from service.assessment.checks.grade import LAST_BIT, Grade
from service.assessment.checks.words import plain
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN, Finding
from service.core.numeric import UNKNOWN, known
from service.core.saying import Amount, Said, say, sentences

_AS_MEASURED = {
    MET: say("As measured, nothing would speak against it."),
    OPEN: say("As measured, the question would be open."),
    ADVISORY: say("As measured, it would fit with a condition."),
    NOT_ASSESSED: say("As measured, it would still have to be settled."),
    NOT_RECOMMENDED: say("As measured, it would be advised against."),
    NOT_MET: say("As measured, it would not fit."),
}
_ROOM = "clearance."


def with_tolerance(case: Case, findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, those on which a stated tolerance bears with whether they hold within it."""
    if not is_stated(case):
        return list(findings)
    exact = as_measured(case)
    grades = {(code, where): grade for code, where, grade in graded(exact, weighed(exact))}
    return [told(case, each, grades[each.code, each.axle]) for each in findings]


def is_stated(case: Case) -> bool:
    """Return whether anything is known to within a tolerance only."""
    tolerances = [each for axle in _axles(case) for each in (axle.clearance_tolerance_mm, axle.track_tolerance_mm)]
    return any((*tolerances, case.vehicle.speedometer_tolerance_percent)) or case.tyre_tolerance != "design"


def as_measured(case: Case) -> Case:
    """Return the case with every measured number taken as exact."""
    vehicle = case.vehicle
    front, rear = (each._replace(clearance_tolerance_mm=0.0, track_tolerance_mm=0.0) for each in _axles(case))
    exact = vehicle._replace(front=front, rear=rear, speedometer_tolerance_percent=0.0)
    return case._replace(vehicle=exact, tyre_tolerance="design")


def _axles(case: Case) -> tuple[Axle, Axle]:
    return case.vehicle.front, case.vehicle.rear


def told(case: Case, finding: Finding, measured: Grade) -> Finding:
    """Return the finding; one whose number, limit or outcome the tolerance moves says whether it holds."""
    moved = finding.outcome != measured.outcome or not (
        _alike(finding.measured, measured.measured) and _alike(finding.limit, measured.limit)
    )
    if not moved:
        return finding
    holds = finding.outcome == measured.outcome
    message = finding.message if holds else sentences(finding.message, _why_not(case, finding, measured))
    return finding._replace(holds_within_tolerance=holds, message=message)


def _alike(shown: float | None, measured: float) -> bool:
    # A finding may show a limit where its grade was held against none, or none where it was held against one.
    return shown is None or not known(measured) or isclose(shown, measured, rel_tol=LAST_BIT, abs_tol=LAST_BIT)


def _why_not(case: Case, finding: Finding, measured: Grade) -> Said:
    room, within = _room(case, finding)
    if known(room):
        limit = measured.limit if finding.limit is None else finding.limit
        enough = room - measured.measured + limit
        return say(
            "{enough} is enough; you measured {room} to within {tolerance}.",
            enough=_up(enough),
            room=plain(room, 1, "mm"),
            tolerance=plain(within, 1, "mm"),
        )
    return sentences(_AS_MEASURED[measured.outcome], _worse_end(case, finding))


def _room(case: Case, finding: Finding) -> tuple[float, float]:
    """Return the measured room of which a finding speaks, and to within how much it was measured [mm]."""
    for axle in _axles(case):
        if finding.code.startswith(_ROOM) and axle.name == finding.axle:
            side = finding.code.removeprefix(_ROOM)
            return getattr(axle, f"clearance_{side}_mm", UNKNOWN), axle.clearance_tolerance_mm
    return UNKNOWN, UNKNOWN


def _up(length_mm: float) -> Amount:
    tenths = -(-(length_mm - LAST_BIT) * 10.0 // 1.0) / 10.0
    return plain(tenths, 1, "mm")


def _worse_end(case: Case, finding: Finding) -> Said:
    """Return at which end of the tolerance that bears on it a finding which is not about room was asked."""
    for axle in _axles(case):
        if axle.name == finding.axle:
            return say(
                "This is for the worse end of the {tolerance} to within which the track is known.",
                tolerance=plain(axle.track_tolerance_mm, 1, "mm"),
            )
    read = plain(case.vehicle.speedometer_tolerance_percent, 1, "%")
    if case.tyre_tolerance == "design":
        return say("This is for the worse end of the {tolerance} to within which it was read.", tolerance=read)
    if case.vehicle.speedometer_tolerance_percent > 0.0:
        return say(
            "This is for the worse end of the {tolerance} to within which it was read, and of what tyres of one size "
            "may differ by.",
            tolerance=read,
        )
    return say("This is for the worse end of what tyres of one size may differ by.")
