"""Estimates graded at, just inside and just outside their limits, and told in the words that belong to the number.

Limits are the project's own judgement (`rules/common_practice.toml`): balance 0.1 and 0.3 deg/g, grip order -3 %, onset
-10 %, order in the wet -3 %. The numbers are put in, so that the limits alone are tried.
"""

import pytest

from service.assessment.checks import aquaplaning_onset, balance, grip_order, wet_order
from service.core.findings import ADVISORY, MET, NOT_RECOMMENDED, OPEN, Estimate
from service.core.saying import Amount
from tests.support.cases import changed, check, finding, saloon

NAN = float("nan")


def car(**figures):
    """Return the saloon with these changes of the whole vehicle put in."""
    found = check(saloon()).car
    return found._replace(change=found.change._replace(**figures))


def told(asked, view):
    """Return the outcome of a check and its words."""
    grade = asked.grade(view)
    return grade.outcome, asked.explain(view, grade).message


def shifted(value, low=None, high=None):
    """Return the saloon with this change of the understeer gradient; a band of nothing where none is given."""
    band = Estimate(value, value if low is None else low, value if high is None else high)
    return car(gradient_deg_per_g=band)


@pytest.mark.parametrize(
    ("value", "expected", "words"),
    [
        (0.0999, MET, "stays as it is"),
        (0.1, ADVISORY, "shifts noticeably towards understeer"),
        (0.3, ADVISORY, "shifts noticeably towards understeer"),
        (0.3001, ADVISORY, "shifts strongly towards understeer"),
        (-0.0999, MET, "stays as it is"),
        (-0.1, ADVISORY, "shifts noticeably towards oversteer"),
        (-0.3, ADVISORY, "shifts noticeably towards oversteer"),
        (-0.3001, NOT_RECOMMENDED, "shifts strongly towards oversteer"),
        (NAN, OPEN, "cannot be estimated"),
    ],
)
def test_a_shift_is_noticeable_from_one_tenth_and_strong_beyond_three(value, expected, words):
    outcome, message = told(balance.CHANGE, shifted(value))
    assert outcome == expected
    assert words in message


# The direction is open where the band reaches beyond what is noticeable on both sides.
@pytest.mark.parametrize(
    ("value", "low", "high", "expected", "words"),
    [
        (0.2, -0.1, 0.4, ADVISORY, "shifts noticeably towards understeer. The front runs wide sooner"),
        (
            0.2,
            -0.1001,
            0.4,
            ADVISORY,
            "may shift towards understeer; the direction is uncertain. Try the car with care",
        ),
        (-0.2, -0.4, 0.1, ADVISORY, "shifts noticeably towards oversteer. It turns in more readily, and the rear"),
        (
            -0.2,
            -0.4,
            0.1001,
            ADVISORY,
            "may shift towards oversteer; the direction is uncertain. Try the car with care",
        ),
        (0.05, -0.2, 0.1, MET, "stays as it is."),
        (0.05, -0.2, 0.2, MET, "probably stays as it is; the estimate is too wide"),
        # Dangerous for certain, or not.
        (-0.4, -0.6, 0.1, NOT_RECOMMENDED, "shifts strongly towards oversteer"),
        (-0.4, -0.6, 0.1001, ADVISORY, "may shift towards oversteer"),
        (0.4, 0.1, 0.6, ADVISORY, "shifts strongly towards understeer"),
    ],
)
def test_the_band_says_whether_the_direction_is_certain(value, low, high, expected, words):
    outcome, message = told(balance.CHANGE, shifted(value, low, high))
    assert outcome == expected
    assert words in message


def with_falling_rear(gradient, fall):
    """Return the saloon with this shift of the balance, its rear losing this much of its wet reserve."""
    view = shifted(gradient)
    return view._replace(rear_reserve=view.rear_reserve._replace(fall_percent=fall))


# 25 % is what the rear may lose.
@pytest.mark.parametrize(
    ("gradient", "fall", "expected", "said"),
    [
        (0.1, 30.0, NOT_RECOMMENDED, True),
        (-0.1, 30.0, NOT_RECOMMENDED, True),
        (0.1, 30.4, NOT_RECOMMENDED, True),
        (0.1, 25.0, ADVISORY, False),
        (0.0999, 30.0, MET, False),
    ],
)
def test_a_shift_beside_a_rear_that_floats_is_told_with_its_fall(gradient, fall, expected, said):
    outcome, message = told(balance.CHANGE, with_falling_rear(gradient, fall))
    assert outcome == expected
    assert message.endswith("In standing water the rear loses some 30 % of its reserve as well.") == said


@pytest.mark.parametrize(
    ("change", "expected", "words"),
    [
        (0.0, MET, "Front and rear share the cornering stiffness as they do now."),
        (2.0, MET, "changes by +2 % against the front's, so the rear is no worse off."),
        (-2.0, MET, "changes by \u22122 % against the front's, which is hardly a change."),
        (-3.0, MET, "changes by \u22123 % against the front's, which is hardly a change."),
        (-3.01, ADVISORY, "the rear loses 3.01 % of cornering stiffness against the front"),
        (-5.5, ADVISORY, "the rear loses 5.5 % of cornering stiffness against the front"),
        (NAN, OPEN, "cannot be estimated"),
    ],
)
def test_the_rear_may_lose_three_per_cent_against_the_front(change, expected, words):
    outcome, message = told(grip_order.GRIP_ORDER, car(grip_order_percent=change))
    assert outcome == expected
    assert words in message


# The rear's lead over the front, then and now: it must be negative and fall by more than three per cent.
@pytest.mark.parametrize(
    ("then", "now", "expected", "words"),
    [
        (0.0, 10.0, MET, "Both axles float from about the same speed."),
        (
            -0.1,
            3.0,
            ADVISORY,
            "the rear floats first, from a speed about 0.1 % below the front's. Now it floats from a",
        ),
        (-0.1, 2.9, MET, "Both axles float from about the same speed."),
        (-3.0, 0.0, MET, "The rear axle floats from a speed about 3 % below the front's, which is no worse than now."),
        (-4.0, -0.9, ADVISORY, "from a speed about 4 % below the front's. Now it floats from a speed about 1 % below"),
        (-4.0, 6.0, ADVISORY, "Now it floats from a speed about 6 % above the front's. Slow down sooner"),
        (-0.5, -0.5, MET, "Both axles float from about the same speed."),
        (-0.6, -0.6, MET, "a speed about 1 % below the front's, which is no worse than now."),
        (0.5, 0.5, MET, "Both axles float from about the same speed."),
        (0.6, 0.6, MET, "a speed about 1 % above the front's: the front floats first, the safer order."),
        (NAN, 0.0, OPEN, "cannot be estimated"),
        (0.0, NAN, OPEN, "cannot be estimated"),
    ],
)
def test_the_order_of_the_axles_in_the_wet_is_told_by_the_lead_of_the_rear(then, now, expected, words):
    view = car(rear_onset_lead_percent=then, rear_onset_lead_percent_present=now)
    outcome, message = told(wet_order.AXLE_ORDER, view)
    assert outcome == expected
    assert words in message
    assert wet_order.AXLE_ORDER.grade(view).limit == 0.0


def floating(value, low, high):
    """Return the saloon's rear axle with this change of the speed from which it floats."""
    view = check(saloon()).car.rear
    return view._replace(change=view.change._replace(aquaplaning_onset_percent=Estimate(value, low, high)))


FROM = "The tyre floats on standing water from a speed about"


@pytest.mark.parametrize(
    ("band", "expected", "words"),
    [
        ((0.0, 0.0, 0.0), MET, "The speed from which the tyre floats on standing water does not change."),
        ((0.001, 0.0, 0.002), MET, "The speed from which the tyre floats on standing water hardly changes."),
        ((0.4, 0.3, 0.5), MET, "The speed from which the tyre floats on standing water hardly changes."),
        ((-6.0, -6.2, -5.8), MET, f"{FROM} 6 % lower."),
        ((6.0, 5.8, 6.2), MET, f"{FROM} 6 % higher."),
        ((-10.0, -17.0, -8.0), MET, f"{FROM} 10 % lower (8 to 17 %)."),
        ((-10.1, -17.0, -8.0), ADVISORY, f"{FROM} 10 % lower (8 to 17 %). Slow down sooner in heavy rain."),
        ((8.0, 6.0, 14.0), MET, f"{FROM} 8 % higher (6 to 14 %)."),
        ((-4.0, -9.0, 2.0), MET, f"{FROM} 4 % lower (by pattern and wear anything from 9 % lower to 2 % higher)."),
        ((4.0, -2.0, 9.0), MET, f"{FROM} 4 % higher (by pattern and wear anything from 2 % lower to 9 % higher)."),
        # Whole per cents, whatever was reckoned; an end at nought is on neither side.
        ((4.4, -2.3, 9.4), MET, f"{FROM} 4 % higher (by pattern and wear anything from 2 % lower to 9 % higher)."),
        ((-4.4, -9.4, 2.3), MET, f"{FROM} 4 % lower (by pattern and wear anything from 9 % lower to 2 % higher)."),
        ((-6.4, -9.4, -3.3), MET, f"{FROM} 6 % lower (3 to 9 %)."),
        ((6.4, 3.3, 9.4), MET, f"{FROM} 6 % higher (3 to 9 %)."),
        ((0.6, 0.0, 1.6), MET, f"{FROM} 1 % higher (0 to 2 %)."),
        ((0.6, 0.004, 1.6), MET, f"{FROM} 1 % higher (0 to 2 %)."),
        ((-0.6, -1.6, -0.004), MET, f"{FROM} 1 % lower (0 to 2 %)."),
        ((-0.6, -1.6, 0.004), MET, f"{FROM} 1 % lower (by pattern and wear anything from 2 % lower to 0 % higher)."),
    ],
)
def test_the_onset_is_told_with_its_band_and_graded_at_ten_per_cent(band, expected, words):
    outcome, message = told(aquaplaning_onset.AQUAPLANING, floating(*band))
    assert (outcome, message) == (expected, words)
    assert {each.unit for each in parameters(message) if isinstance(each, Amount)} <= {"%"}


def parameters(said):
    """Return what fills a sentence, and what fills that."""
    for each in getattr(said, "parameters", {}).values():
        yield each
        yield from parameters(each)


# 2 mm of diameter for each of tread: 3.17 mm of it are one per cent of 634 mm. What the car has today is no reason.
@pytest.mark.parametrize(
    ("rear", "today", "driven", "expected"),
    [
        (4.84, 8.0, "all", ADVISORY),
        (4.82, 8.0, "all", NOT_RECOMMENDED),
        (4.82, 4.82, "all", ADVISORY),
        (4.82, 4.90, "all", NOT_RECOMMENDED),
        (4.0, 8.0, None, ADVISORY),
        (7.0, 8.0, "rear", MET),
        (6.99, 8.0, "front", ADVISORY),
        (4.0, 8.0, "rear", ADVISORY),
    ],
)
def test_unlike_wear_on_driven_axles_is_refused_beyond_one_per_cent(rear, today, driven, expected):
    changes = {"/candidate/rear/tyre/tread_depth_mm": rear, "/vehicle/rear/fitted/tyre/tread_depth_mm": today}
    asked = changed(saloon(), changes)
    del asked["vehicle"]["driven_axle"]
    if driven is not None:
        asked["vehicle"]["driven_axle"] = driven
    assert finding(check(asked), "tyre.tread_difference", "vehicle").outcome == expected
