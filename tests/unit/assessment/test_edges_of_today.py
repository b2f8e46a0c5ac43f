"""What the car has today already: as bad or worse, and no further from its limit than after the change.

The outcomes of present and proposed are put in, 5 mm of room to be left (common practice, no source).
"""

import math

import pytest

from service.assessment.answer.already import as_today, is_already, marked, present_grades
from service.assessment.checks.grade import Grade
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN, Finding
from service.core.sources import basis
from tests.support.cases import changed, check, finding, saloon

BASIS = basis("PROJECT", "the project's own")
NAN = math.nan
SO, WORSE, PUMPED = "The change leaves this as it is today.", "It is worse today.", "It is so today."


def told(code, outcome, measured, limit=5.0):
    return Finding(code, "rear", outcome, "So it is.", measured, limit, "mm", BASIS)


@pytest.mark.parametrize(
    ("now", "then", "outcomes", "words"),
    [
        (3.0, 3.0, (ADVISORY, ADVISORY), SO),
        (2.0, 3.0, (ADVISORY, ADVISORY), WORSE),
        (3.0, 2.0, (ADVISORY, ADVISORY), None),
        # The distance counts, on whichever side of the limit.
        (8.0, 3.0, (ADVISORY, ADVISORY), WORSE),
        (7.0, 2.0, (ADVISORY, ADVISORY), None),
        # What was computed twice from the same thing is the same.
        (3.0, 3.0 - 1e-7, (ADVISORY, ADVISORY), SO),
        (3.0 - 1e-7, 3.0, (ADVISORY, ADVISORY), SO),
        (3.0, 3.0, (NOT_MET, ADVISORY), SO),
        (3.0, 3.0, (NOT_MET, NOT_MET), SO),
        (3.0, 3.0, (NOT_ASSESSED, NOT_ASSESSED), SO),
        # What is milder today is brought by the change.
        (3.0, 3.0, (ADVISORY, NOT_MET), None),
        (3.0, 3.0, (MET, ADVISORY), None),
        (3.0, 3.0, (NOT_RECOMMENDED, NOT_MET), None),
        # What is no reproach is not marked.
        (3.0, 3.0, (OPEN, OPEN), None),
        (3.0, 3.0, (MET, MET), None),
        (NAN, 3.0, (ADVISORY, ADVISORY), SO),
        (3.0, None, (ADVISORY, ADVISORY), SO),
    ],
)
def test_what_is_so_today_is_marked_and_said(now, then, outcomes, words):
    found, present = told("clearance.inboard", outcomes[1], then), Grade(outcomes[0], now, 5.0)
    given = Grade(outcomes[1], NAN if then is None else then, 5.0)
    assert bool(is_already(given, present)) == (words is not None)
    made = marked(found, present)
    assert made.already == (words is not None)
    assert made.message == ("So it is." if words is None else f"So it is. {words}")


def test_what_was_not_asked_of_the_present_fitment_is_not_marked():
    found = told("clearance.inboard", ADVISORY, 3.0)
    assert marked(found, None) is found


# A pump puts too little pressure right, so it is not left as it is; what no pressure settles stays.
@pytest.mark.parametrize(
    ("code", "outcome", "now", "words"),
    [
        ("load.pressure", ADVISORY, 200.0, PUMPED),
        ("load.pressure", ADVISORY, 190.0, WORSE),
        ("load.pressure", NOT_MET, 200.0, SO),
        ("track.change", ADVISORY, 200.0, SO),
    ],
)
def test_a_pressure_is_not_left_as_it_is(code, outcome, now, words):
    made = marked(told(code, outcome, 200.0, 239.0), Grade(outcome, now, 239.0))
    assert made.message == f"So it is. {words}"


WIDE = {"/candidate/rear/tyre/size": "245/40 R17 95W XL", "/candidate/rear/rim/size": "8J x 17 H2 ET45"}


@pytest.mark.parametrize("pack", ["unece", "nl"])
def test_the_car_as_it_is_today_is_the_one_asked_for_with_its_present_fitment(pack):
    """Under Dutch rules a trailer above 750 kg carries its load at 100 km/h (Regeling voertuigen, art. 50(4), read)."""
    trailer = {"/vehicle/category": "O2", "/vehicle/max_mass_kg": 1900, "/rule_pack": pack}
    case = check(changed(saloon(), trailer | WIDE)).case
    same = check(changed(saloon(), trailer))
    today = as_today(case, check(changed(saloon(), trailer | WIDE)).car)
    for axle in ("front", "rear"):
        one, other = getattr(today, axle), getattr(same.car, axle)
        assert repr((one.then, one.change, one.ordered_pressure_kpa)) == repr(
            (other.then, other.change, other.ordered_pressure_kpa)
        )


def test_the_grades_of_the_present_fitment_are_those_of_its_findings():
    """3 mm of room inboard are scarce today, whatever is proposed."""
    scarce = {"/vehicle/rear/clearance/inboard_mm": 3}
    grades = present_grades(check(changed(saloon(), scarce | WIDE)).case)
    now = finding(check(changed(saloon(), scarce)), "clearance.inboard")
    assert grades["clearance.inboard", "rear"].outcome == now.outcome == ADVISORY
    assert grades["clearance.inboard", "rear"].measured == 3.0
    assert grades["clearance.inboard", "front"].outcome == MET
