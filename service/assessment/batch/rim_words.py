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
from service.core.saying import Amount, Said, say

Units = Mapping[tuple[str, Where], str | None]

_DIGITS = 1


def units_of(case: Case) -> Units:
    """Return the unit of each question on the vehicle of a case, by code and place: it is the same for every wheel."""
    return {(each.code, each.axle): each.unit for each in assess(case).findings}


def in_words(reason: Reason, case: Case, unit: str | None) -> Said:
    """Return a reason in words: `room to the strut (front axle): 4.5 mm, the limit is 5 mm`."""
    place, about = PLACES[reason.where], subject_of(reason.code, case)
    if place:
        about = say("{subject} ({place})", subject=about, place=place)
    if reason.outcome == NOT_ASSESSED and unknown(reason.limit):
        return say("{subject}: not known", subject=about)
    if unit is None or unknown(reason.measured):
        return _without_number(reason, about)
    if unknown(reason.limit):
        return say("{subject}: {measured}", subject=about, measured=plain(reason.measured, _DIGITS, unit))
    return say(
        "{subject}: {measured}, the limit is {limit}",
        subject=about,
        measured=_beyond(reason, unit),
        limit=plain(reason.limit, _DIGITS, unit),
    )


def _beyond(reason: Reason, unit: str) -> Amount:
    """Return what was measured, with the decimals that tell it from its limit; a limit above 0 may hold either way."""
    measured, limit = reason.measured, reason.limit
    return apart(measured, -limit if measured < 0.0 < limit else limit, _DIGITS, unit)


def _without_number(reason: Reason, about: str) -> Said:
    if reason.outcome == NOT_MET:
        return say("{subject}: does not go", subject=about)
    if reason.outcome == NOT_ASSESSED:
        return say("{subject}: not known", subject=about)
    return say("{subject}: to be heeded", subject=about)


def subject_of(code: str, case: Case) -> str:
    """Return what a question is about; of a rule of the place, its title."""
    titles = (rule.title for rule in case.pack.rules if rule.code == code)
    return next(titles, None) or subject(code)
