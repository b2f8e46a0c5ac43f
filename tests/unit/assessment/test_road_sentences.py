"""Sentences on the road against the numbers they are made of: which way, how strongly, now and then, which axle.

The numbers are put into the saloon's view, so that a sentence is asked on each side of each threshold: 0.1 and 0.3
deg/g for the balance, 0.5 % for what is worth a word, 2 points of wet reserve (all of them the project's own).
"""

from __future__ import annotations

from math import nan

import pytest

from service.assessment.answer.road_words import turn_in_words, wet_balance
from service.assessment.checks import aquaplaning_onset, balance, grip_order, speedometer_words, wet_order
from service.core.findings import ADVISORY, MET, NOT_RECOMMENDED, OPEN, Estimate
from service.physics.turn_in import TurnIn
from tests.support.cases import check, saloon

SALOON = check(saloon())
CAR = SALOON.car


def shifted(value, low=None, high=None):
    gradient = Estimate(value, value if low is None else low, value if high is None else high)
    return CAR._replace(change=CAR.change._replace(gradient_deg_per_g=gradient))


def explained(question, car):
    return question.explain(car, question.grade(car))


@pytest.mark.parametrize(
    ("value", "direction", "degree", "text"),
    [
        (0.0, "neutral", "negligible", "The balance in the dry stays as it is."),
        (0.099, "neutral", "negligible", "The balance in the dry stays as it is."),
        (-0.099, "neutral", "negligible", "The balance in the dry stays as it is."),
        (0.1, "towards_understeer", "noticeable", "In the dry the car shifts noticeably towards understeer."),
        (0.3, "towards_understeer", "noticeable", "In the dry the car shifts noticeably towards understeer."),
        (0.301, "towards_understeer", "strong", "In the dry the car shifts strongly towards understeer."),
        (-0.1, "towards_oversteer", "noticeable", "In the dry the car shifts noticeably towards oversteer."),
        (-0.3, "towards_oversteer", "noticeable", "In the dry the car shifts noticeably towards oversteer."),
        (-0.301, "towards_oversteer", "strong", "In the dry the car shifts strongly towards oversteer."),
    ],
)
def test_the_balance_is_told_by_its_sign_and_size(value, direction, degree, text):
    found = balance.balance(shifted(value))
    assert (found.direction, found.degree, found.certain, found.text) == (direction, degree, True, text)
    assert (found.warning is None) == (direction == "neutral")


@pytest.mark.parametrize(
    ("value", "low", "high", "certain", "words"),
    [
        # The band reaches beyond what is noticeable on both sides.
        (0.2, -0.101, 0.5, False, "may shift towards understeer; the direction is uncertain"),
        (-0.2, -0.5, 0.101, False, "may shift towards oversteer; the direction is uncertain"),
        (0.05, -0.2, 0.2, False, "probably stays as it is; the estimate is too wide"),
        (0.2, -0.1, 0.5, True, "shifts noticeably towards understeer"),
        (-0.2, -0.5, 0.1, True, "shifts noticeably towards oversteer"),
        (0.05, -0.05, 0.2, True, "stays as it is."),
    ],
)
def test_a_band_over_both_directions_makes_the_balance_uncertain(value, low, high, certain, words):
    found = balance.balance(shifted(value, low, high))
    assert found.certain == certain
    assert words in found.text


@pytest.mark.parametrize(
    ("value", "low", "high", "warning"),
    [
        (0.2, 0.15, 0.25, "The front runs wide sooner, and the steering answers less readily."),
        (-0.2, -0.25, -0.15, "It turns in more readily, and the rear may slide before the driver can react."),
        (-0.2, -0.5, 0.2, "Try the car with care: it may behave differently near its limit."),
    ],
)
def test_the_warning_fits_the_direction(value, low, high, warning):
    assert balance.balance(shifted(value, low, high)).warning == warning


@pytest.mark.parametrize(
    ("value", "low", "high", "expected"),
    [
        (-0.301, -0.5, 0.1, NOT_RECOMMENDED),
        # Uncertain, or not strong, or the other way round: it needs attention and no more.
        (-0.301, -0.5, 0.101, ADVISORY),
        (-0.3, -0.5, 0.1, ADVISORY),
        (0.5, 0.4, 0.6, ADVISORY),
        (0.1, 0.0, 0.2, ADVISORY),
        (0.099, 0.0, 0.2, MET),
        (nan, nan, nan, OPEN),
    ],
)
def test_only_a_sure_and_strong_shift_to_oversteer_is_advised_against(value, low, high, expected):
    assert balance.CHANGE.grade(shifted(value, low, high)).outcome == expected


def led(then, now):
    change = CAR.change._replace(rear_onset_lead_percent=then, rear_onset_lead_percent_present=now)
    return explained(wet_order.AXLE_ORDER, CAR._replace(change=change))


@pytest.mark.parametrize(
    ("then", "now", "outcome", "text"),
    [
        (
            *(-7.0, -2.0, ADVISORY),
            (
                "On standing water the rear floats first, from a speed about 7 % below the front's. Now it floats from "
                "a speed about 2 % below the front's. Slow down sooner in heavy rain."
            ),
        ),
        (
            *(-7.0, 4.0, ADVISORY),
            (
                "On standing water the rear floats first, from a speed about 7 % below the front's. Now it floats from "
                "a speed about 4 % above the front's. Slow down sooner in heavy rain."
            ),
        ),
        (
            *(-4.0, 0.0, ADVISORY),
            (
                "On standing water the rear floats first, from a speed about 4 % below the front's. Now it floats from "
                "the same speed as the front. Slow down sooner in heavy rain."
            ),
        ),
        # No worse than now by more than 3 %.
        (
            *(-7.0, -4.0, MET),
            "The rear axle floats from a speed about 7 % below the front's, which is no worse than now.",
        ),
        (
            *(5.0, 9.0, MET),
            "The rear axle floats from a speed about 5 % above the front's: the front floats first, the safer order.",
        ),
        (0.5, 0.0, MET, "Both axles float from about the same speed."),
        (-0.5, 0.0, MET, "Both axles float from about the same speed."),
        (
            *(0.51, 0.0, MET),
            "The rear axle floats from a speed about 1 % above the front's: the front floats first, the safer order.",
        ),
        (
            *(-0.51, 0.0, MET),
            "The rear axle floats from a speed about 1 % below the front's, which is no worse than now.",
        ),
    ],
)
def test_the_order_of_the_axles_on_water_is_told_now_and_then(then, now, outcome, text):
    found = led(then, now)
    assert (found.outcome, found.message, found.measured) == (outcome, text, then)


@pytest.mark.parametrize(
    ("change", "text"),
    [
        ((0.0, 0.0, 0.0), "The speed from which the tyre floats on standing water does not change."),
        ((0.4, 0.2, 0.6), "The speed from which the tyre floats on standing water hardly changes."),
        ((-0.4, -0.6, -0.2), "The speed from which the tyre floats on standing water hardly changes."),
        ((-6.0, -9.0, -3.0), "The tyre floats on standing water from a speed about 6 % lower (3 to 9 %)."),
        ((6.0, 3.0, 9.0), "The tyre floats on standing water from a speed about 6 % higher (3 to 9 %)."),
        ((-6.0, -6.1, -5.9), "The tyre floats on standing water from a speed about 6 % lower."),
        ((6.0, 5.9, 6.1), "The tyre floats on standing water from a speed about 6 % higher."),
        (
            (-6.0, -18.0, 3.0),
            (
                "The tyre floats on standing water from a speed about 6 % lower (by pattern and wear anything from 18 "
                "% lower to 3 % higher)."
            ),
        ),
        (
            (6.0, -3.0, 18.0),
            (
                "The tyre floats on standing water from a speed about 6 % higher (by pattern and wear anything from 3 "
                "% lower to 18 % higher)."
            ),
        ),
    ],
)
def test_aquaplaning_is_told_by_its_sign_and_band(change, text):
    view = CAR.front._replace(change=CAR.front.change._replace(aquaplaning_onset_percent=Estimate(*change)))
    assert explained(aquaplaning_onset.AQUAPLANING, view).message == text


def test_aquaplaning_far_sooner_is_slowed_down_for():
    view = CAR.rear._replace(change=CAR.rear.change._replace(aquaplaning_onset_percent=Estimate(-10.1, -12.0, -9.0)))
    found = explained(aquaplaning_onset.AQUAPLANING, view)
    assert (found.outcome, found.axle) == (ADVISORY, "rear")
    assert found.message.endswith("about 10 % lower (9 to 12 %). Slow down sooner in heavy rain.")


@pytest.mark.parametrize(
    ("change", "outcome", "text"),
    [
        (0.0, MET, "Front and rear share the cornering stiffness as they do now."),
        (-2.0, MET, "The rear's cornering stiffness changes by −2 % against the front's, which is hardly a change."),
        (2.0, MET, "The rear's cornering stiffness changes by +2 % against the front's, so the rear is no worse off."),
        (-3.0, MET, "The rear's cornering stiffness changes by −3 % against the front's, which is hardly a change."),
        (
            *(-7.6, ADVISORY),
            "In the dry the rear loses 7.6 % of cornering stiffness against the front: it may slide earlier.",
        ),
    ],
)
def test_the_order_of_grip_is_told_by_its_sign(change, outcome, text):
    found = explained(grip_order.GRIP_ORDER, CAR._replace(change=CAR.change._replace(grip_order_percent=change)))
    assert (found.outcome, found.message) == (outcome, text)


@pytest.mark.parametrize(
    ("change", "told", "shown"),
    [
        (2.0, "grows by 2 %.", "grows by 2 %, so the speedometer shows less than now."),
        (-2.0, "shrinks by 2 %.", "shrinks by 2 %, so the speedometer shows more than now."),
        (0.04, "grows by less than 0.1 %.", "grows by less than 0.1 %, so the speedometer shows less than now."),
    ],
)
def test_a_larger_circumference_makes_the_speedometer_show_less(change, told, shown):
    begins = "The rolling circumference "
    assert speedometer_words.changes(change) == begins + told
    assert speedometer_words.changes(change, shown=True) == begins + shown


@pytest.mark.parametrize(
    ("now", "after", "low", "text"),
    [
        (3.0, 3.0, False, "3 % above the true speed now and after the change"),
        (3.0, 4.0, False, "3 % above the true speed now and 4 % above it after the change"),
        (3.0, -1.0, False, "3 % above the true speed now and 1 % below it after the change"),
        (3.0, 0.0, False, "3 % above the true speed now and the true speed after the change"),
        (0.0, -0.04, True, "the true speed now and 0.04 % below it after the change"),
        (-2.0, -2.0, True, "2 % below the true speed now and after the change"),
    ],
)
def test_a_reading_is_told_now_and_after(now, after, low, text):
    assert speedometer_words.reading(now, after, low=low) == f"The speedometer reads {text}"


@pytest.mark.parametrize(
    ("first", "then", "words", "text"),
    [
        (0.1, 0.2, ("quicker", "more"), "answers a little quicker at first and holds more once"),
        (0.1, -0.2, ("quicker", "less"), "answers a little quicker at first and holds less once"),
        (-0.1, 0.2, ("slower", "more"), "answers a little slower at first and holds more once"),
        (0.0, 0.0, ("alike", "alike"), "answers at first as it does now and holds as much once"),
    ],
)
def test_turning_in_is_told_by_both_signs(first, then, words, text):
    found = turn_in_words(CAR, TurnIn(first, then))
    assert (found.first, found.then) == words
    assert text in found.text


def in_the_wet(now, then):
    front = CAR.front_reserve._replace(present_percent=now[0], proposed_percent=then[0])
    rear = CAR.rear_reserve._replace(present_percent=now[1], proposed_percent=then[1])
    return wet_balance(CAR._replace(front_reserve=front, rear_reserve=rear))


@pytest.mark.parametrize(
    ("now", "then", "less"),
    [
        ((30.0, 40.0), (45.0, 20.0), ("front", "rear")),
        ((40.0, 30.0), (20.0, 45.0), ("rear", "front")),
        # Less than two points apart is no difference to a driver.
        ((30.0, 31.9), (31.9, 30.0), ("alike", "alike")),
        ((30.0, 32.0), (32.0, 30.0), ("front", "rear")),
    ],
)
def test_the_axle_with_less_reserve_is_named_now_and_then(now, then, less):
    found = in_the_wet(now, then)
    assert (found.less_reserve_present, found.less_reserve_proposed) == less
    shares = [f"{share:.0f}" for share in (*then, *now)]
    assert found.text == (
        f"In the wet, at 80 km/h in 2 mm of water, the front keeps some {shares[0]} % of its load on the road and the "
        f"rear {shares[1]} %; now {shares[2]} and {shares[3]} %."
    )


def test_a_wet_balance_that_stays_is_told_once():
    text = in_the_wet((30.0, 40.0), (30.0, 40.0)).text
    assert text.startswith("In the wet the balance stays as it is")
    assert "the front keeps some 30 % of its load on the road and the rear 40 %." in text


@pytest.mark.parametrize("place", range(4))
def test_a_wet_balance_of_which_one_share_is_not_known_is_not_told(place):
    shares = [30.0] * 4
    shares[place] = nan
    assert in_the_wet(shares[:2], shares[2:]) is None
