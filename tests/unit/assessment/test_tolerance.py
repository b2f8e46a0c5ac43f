"""What was measured to within a tolerance: judged at the worse end, and said whether it holds.

Limits by common practice, no source (`rules/common_practice.toml`): 5 mm of room are enough, the track may change by
2 %. The arithmetic of the ends is worked out beside each test.
"""

from dataclasses import replace

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.within_tolerance import as_measured, is_stated
from service.assessment.batch.compare import compare
from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.batch.rim_search import RimsAsked, rims_for
from service.assessment.checks.offset_window import offset_window_mm
from service.assessment.view.views import candidate_facts, now_fitted, weigh
from tests.support.cases import ABSENT, answer, changed, check, finding, outcome, saloon

RIM = "/candidate/rear/rim/size"
ROOM = "/vehicle/rear/clearance"
WITHIN = f"{ROOM}/tolerance_mm"
READ = "/vehicle/speedometer"


def at_offset(offset, **more):
    return changed(saloon(), {RIM: f"7.5J x 17 H2 ET{offset}", **more})


# 9 mm further in leave 14 - 9 = 5 mm inboard, which is enough; with 1 mm of tolerance perhaps 4.
@pytest.mark.parametrize(
    ("offset", "tolerance", "expected", "holds"),
    [
        (54, 0, "met", None),
        (54, 1, "advisory", False),
        (53, 1, "met", True),
        (56, 1, "advisory", True),
        (58, 2, "not_met", False),
        (60, 2, "not_met", True),
    ],
)
def test_the_worse_end_of_a_room_decides_and_it_says_whether_it_holds(offset, tolerance, expected, holds):
    found = finding(check(at_offset(offset, **{WITHIN: tolerance})), "clearance.inboard")
    assert outcome(check(at_offset(offset, **{WITHIN: tolerance})), "clearance.inboard") == expected
    assert found.holds_within_tolerance is holds


def test_one_sentence_says_what_is_enough_and_how_it_was_measured():
    found = finding(check(at_offset(63, **{f"{ROOM}/inboard_mm": 24, WITHIN: 2})), "clearance.inboard")
    assert found.message.endswith(" 23 mm is enough; you measured 24 mm to within 2 mm.")


def test_the_verdict_is_that_of_the_worse_end():
    assert check(at_offset(54)).verdict == "suitable"
    assert check(at_offset(54, **{WITHIN: 1})).verdict == "suitable_with_conditions"


def test_the_present_wheel_is_never_said_to_touch():
    """It turns today, so the room is at least none, whatever the tape may be off."""
    request = changed(saloon(), {f"{ROOM}/inboard_mm": 1, WITHIN: 10})
    found = finding(check(request), "clearance.inboard")
    assert outcome(check(request), "clearance.inboard") == "advisory"
    assert found.already


def test_a_room_that_is_to_be_measured_is_asked_for_with_the_tolerance_on_top():
    bare = {f"{ROOM}/inboard_mm": ABSENT}
    exact, within = (
        finding(check(at_offset(54, **bare, **more)), "clearance.inboard").remedy for more in ({}, {WITHIN: 2})
    )
    assert within.at_least == pytest.approx(exact.at_least + 2.0)


@pytest.mark.parametrize("side", ["inboard_mm", "outboard_mm"])
def test_whoever_measures_what_was_asked_for_gets_it_met(side):
    offset = {"inboard_mm": 54, "outboard_mm": 36}[side]
    request = at_offset(offset, **{f"{ROOM}/{side}": ABSENT, WITHIN: 2})
    code = f"clearance.{side.removesuffix('_mm')}"
    enough = finding(check(request), code).remedy.at_least
    assert outcome(check(changed(request, {f"{ROOM}/{side}": enough})), code) == "met"


def _window(request):
    case = translate.case(CheckRequest.model_validate(request))
    return offset_window_mm(weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate)).rear)


def test_the_window_of_offsets_shrinks_by_the_tolerance_at_each_end():
    wide = {f"{ROOM}/inboard_mm": 18, f"{ROOM}/outboard_mm": 17, "/vehicle/rear/track_mm": 1900}
    low, high = _window(changed(saloon(), wide))
    sure_low, sure_high = _window(changed(saloon(), {**wide, WITHIN: 2}))
    assert (sure_low, sure_high) == (low + 2.0, high - 2.0)


def test_the_window_found_by_trying_every_offset_shrinks_as_much_on_the_array_path():
    """Every tenth of a millimetre is graded by the array path; the window are those where both sides are met."""
    exact, sure = (_tried(changed(saloon(), {WITHIN: tolerance})) for tolerance in (0, 2))
    assert min(sure) - min(exact) == pytest.approx(2.0, abs=1e-9)
    assert max(exact) - max(sure) == pytest.approx(2.0, abs=1e-9)


def test_the_windows_of_rims_shrink_as_much():
    """With the present tyre on each width that it takes; the narrowest window may close."""
    exact, sure = (_windows(changed(saloon(), {WITHIN: tolerance})) for tolerance in (0, 2))
    assert len(exact) > 1
    shrunk = {width: (low + 2.0, high - 2.0) for width, (low, high) in exact.items()}
    assert sure == {width: (low, high) for width, (low, high) in shrunk.items() if low <= high}


def _windows(request):
    case = translate.case(CheckRequest.model_validate(request))
    found = rims_for(case, RimsAsked(rear=(case.vehicle.rear.fitted.tyre,))).windows[1]
    return {each.row.width_in: (each.suitable.from_mm, each.suitable.to_mm) for each in found if each.suitable}


def _tried(request):
    case = translate.case(CheckRequest.model_validate(request))
    offsets = np.arange(200, 700) / 10.0
    rear = case.candidate.rear
    designation = rear.rim.designation
    rims = (rear.rim._replace(designation=replace(designation, offset_mm=float(each))) for each in offsets)
    candidates = [case.candidate._replace(rear=rear._replace(rim=rim)) for rim in rims]
    graded = grade_all(case, *stack_candidates(case, candidates))
    sides = [
        graded.outcomes[at]
        for at, each in enumerate(graded.questions)
        if each in (("clearance.inboard", "rear"), ("clearance.outboard", "rear"))
    ]
    return offsets[(np.array(sides) == 0).all(axis=0)]


# 15 mm less offset widen the track by 30 mm: 1.95 % of 1540, and 2.01 % of 1490.
def test_a_track_known_to_within_fifty_millimetres_is_judged_at_its_lesser_end():
    room = {f"{ROOM}/outboard_mm": 40}
    track = {"/vehicle/rear/track_tolerance_mm": 50}
    assert outcome(check(at_offset(30, **room)), "track.change") == "met"
    found = check(at_offset(30, **room, **track))
    assert outcome(found, "track.change") == "advisory"
    assert finding(found, "track.change").holds_within_tolerance is False


# A reading of 0.5 % above the true speed may be 0.5 % below it when it is known to within 1 %.
@pytest.mark.parametrize(
    ("tolerance", "expected", "holds"), [(0, "met", None), (0.4, "met", True), (1, "not_met", False)]
)
def test_a_speedometer_that_may_read_low_is_not_lawful_for_certain(tolerance, expected, holds):
    request = changed(saloon(), {READ: {"displayed_kmh": 100.5, "true_kmh": 100, "tolerance_percent": tolerance}})
    found = check(request)
    assert outcome(found, "diameter.speedometer", "vehicle") == expected
    assert finding(found, "diameter.speedometer", "vehicle").holds_within_tolerance is holds


def test_tyres_by_the_standard_leave_less_of_a_speedometer_only_where_they_change():
    """1.5 and 2.5 % (memory) are 2.9 % together; the present tyres are what they were when it was read."""
    by_standard = {"/tyre_tolerance": "standard"}
    same = check(changed(saloon(), by_standard))
    assert outcome(same, "diameter.speedometer", "vehicle") == "met"
    larger = changed(saloon(("225/45 R17 94W XL", "7.5J x 17 H2 ET45"), ("235/45 R17 97W XL", "7.5J x 17 H2 ET45")), {})
    assert outcome(check(larger), "diameter.speedometer", "vehicle") == "met"
    assert outcome(check(changed(larger, by_standard)), "diameter.speedometer", "vehicle") == "not_met"


def test_without_a_tolerance_no_finding_speaks_of_one():
    assert all(each.holds_within_tolerance is None for each in check(at_offset(54)).findings)
    assert "holds_within_tolerance" not in answer(check(at_offset(54)))["findings"][0]


def test_a_row_of_a_comparison_gives_the_reason_in_the_words_of_the_check():
    request = at_offset(54, **{WITHIN: 1})
    case = translate.case(CheckRequest.model_validate(request))
    (words,) = compare(case, [case.candidate], "closest_to_present").words
    assert words.reason == check(request).findings[0].message


# Each of what may be known to within a tolerance.
STATED = {
    "/vehicle/front/clearance/tolerance_mm": 2,
    "/vehicle/rear/clearance/tolerance_mm": 2,
    "/vehicle/front/track_tolerance_mm": 10,
    "/vehicle/rear/track_tolerance_mm": 10,
    "/vehicle/speedometer/tolerance_percent": 1,
    "/tyre_tolerance": "standard",
}


def test_a_case_as_measured_is_the_one_without_any_tolerance():
    exact = check(saloon()).case
    assert not is_stated(exact)
    assert as_measured(check(changed(saloon(), STATED)).case) == exact
    for pointer, value in STATED.items():
        case = check(changed(saloon(), {pointer: value})).case
        assert is_stated(case)
        assert as_measured(case) == exact


# 18 mm further in and 5 to be left, of 24.26 known to within 1.04; 18 more than none is 23.
def test_what_is_enough_is_told_in_tenths_rounded_up():
    for offset, enough in ((63, "23 mm"), (62.96, "23 mm"), (62.94, "23 mm"), (62.84, "22.9 mm")):
        request = at_offset(offset, **{f"{ROOM}/inboard_mm": 23.26, WITHIN: 1.04})
        found = finding(check(request), "clearance.inboard")
        assert found.message.endswith(f" {enough} is enough; you measured 23.3 mm to within 1 mm.")


LARGER = {"/candidate/rear/tyre/size": "235/45 R17 97W XL"}
OUT_BY_15 = {RIM: "7.5J x 17 H2 ET30", f"{ROOM}/outboard_mm": 40}


@pytest.mark.parametrize(
    ("changes", "code", "where", "ends"),
    [
        (
            {READ: {"displayed_kmh": 100.5, "true_kmh": 100, "tolerance_percent": 1.26}},
            "diameter.speedometer",
            "vehicle",
            "the 1.3 % to within which it was read.",
        ),
        (
            LARGER | {"/tyre_tolerance": "standard"},
            "diameter.speedometer",
            "vehicle",
            "what tyres of one size may differ by.",
        ),
        (
            LARGER | {"/tyre_tolerance": "standard", f"{READ}/tolerance_percent": 0.5},
            "diameter.speedometer",
            "vehicle",
            "the 0.5 % to within which it was read, and of what tyres of one size may differ by.",
        ),
        (
            OUT_BY_15 | {"/vehicle/rear/track_tolerance_mm": 49.26},
            "track.change",
            "rear",
            "the 49.3 mm to within which the track is known.",
        ),
    ],
)
def test_what_a_tolerance_moves_is_told_with_the_end_that_counts(changes, code, where, ends):
    told = finding(check(changed(saloon(), changes)), code, where).message
    assert told.endswith(f"As measured, nothing would speak against it. This is for the worse end of {ends}")
