"""What ends a window of offsets, and what an offset is conditional on, in a few words with the numbers."""

from __future__ import annotations

from collections.abc import Mapping

from service.assessment.answer.assess import assess
from service.assessment.answer.subjects import PLACES, subject
from service.assessment.batch.rim_windows import Reason
from service.assessment.case import Case
from service.assessment.checks.words import apart, plain
from service.core.findings import NOT_ASSESSED, NOT_MET, Where
from service.core.numeric import unknown

Units = Mapping[tuple[str, Where], str | None]

# How a reason begins, by how the question came out; a milder one only names its subject.
_BEGINS = {NOT_MET: "does not go", NOT_ASSESSED: "not known"}
_DIGITS = 1


def units_of(case: Case) -> Units:
    """Return the unit of each question on the vehicle of a case, by code and place: it is the same for every wheel."""
    return {(each.code, each.axle): each.unit for each in assess(case).findings}


def in_words(reason: Reason, case: Case, unit: str | None) -> str:
    """Return a reason in words: `room to the strut (front axle): 4.5 mm, the limit is 5 mm`."""
    place = PLACES[reason.where]
    about = f"{subject_of(reason.code, case)}{f' ({place})' if place else ''}"
    if reason.outcome == NOT_ASSESSED and unknown(reason.limit):
        return f"{about}: not known"
    if unit is None or unknown(reason.measured):
        return f"{about}: {_BEGINS.get(reason.outcome, 'to be heeded')}"
    if unknown(reason.limit):
        return f"{about}: {plain(reason.measured, _DIGITS)} {unit}"
    number = apart(reason.measured, reason.limit, _DIGITS)
    return f"{about}: {number} {unit}, the limit is {plain(reason.limit, _DIGITS)} {unit}"


def subject_of(code: str, case: Case) -> str:
    """Return what a question is about; of a rule of the place, its title."""
    titles = (rule.title for rule in case.pack.rules if rule.code == code)
    return next(titles, None) or subject(code)
