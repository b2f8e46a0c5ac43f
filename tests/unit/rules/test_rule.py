"""Grading by one rule: the outcome codes are those of the finding vocabulary."""

import dataclasses
import math

import numpy as np
import pytest

from service.core.findings import ADVISORY, MET, NOT_MET, OPEN
from service.rules.reader import default_packs
from service.rules.rule import Applies, Bound, Rule

PACKS = default_packs()


def rule_of(pack: str, code: str) -> Rule:
    return next(rule for rule in PACKS[pack].rules if rule.code == code)


TRACK = rule_of("nl", "law.track_change")
WIDTH = rule_of("fi", "law.width_without_inspection")


def test_a_value_at_the_limit_is_met_despite_the_last_bit():
    assert TRACK.outcome(100 * (1530 / 1500 - 1)) == MET


def test_a_value_beyond_the_limit_of_a_read_rule_is_not_met():
    assert TRACK.outcome(2.001) == NOT_MET


def test_a_second_hand_rule_only_advises():
    assert dataclasses.replace(TRACK, status="second_hand").outcome(2.001) == ADVISORY


def test_a_rule_from_memory_only_advises():
    assert dataclasses.replace(TRACK, status="memory").outcome(2.001) == ADVISORY


def test_a_rule_measured_by_a_stand_in_only_advises():
    assert dataclasses.replace(TRACK, stand_in=True).outcome(2.001) == ADVISORY


def test_an_unknown_value_is_an_open_question():
    assert TRACK.outcome(math.nan) == OPEN


def test_an_array_is_graded_element_by_element():
    outcome = TRACK.outcome(np.array([1.9, 2.0, 2.1, np.nan]))
    assert outcome.tolist() == [MET, MET, NOT_MET, OPEN]


@pytest.mark.parametrize(
    ("millimetres", "percent", "expected"),
    [
        (40, 25, MET),
        (45, 20, MET),
        (45, 25, ADVISORY),
        (math.nan, 20, MET),
        (math.nan, 25, OPEN),
        (math.nan, math.nan, OPEN),
    ],
)
def test_one_of_two_bounds_suffices(millimetres, percent, expected):
    assert WIDTH.outcome(millimetres, percent) == expected


def test_two_bounds_on_arrays_agree_with_two_bounds_on_numbers():
    width_mm, width_percent = [39.0, 41.0, 41.0, math.nan], [21.0, 21.0, 19.0, 21.0]
    single = [WIDTH.outcome(a, b) for a, b in zip(width_mm, width_percent, strict=True)]
    assert WIDTH.outcome(np.array(width_mm), np.array(width_percent)).tolist() == single


def test_a_rule_wants_one_value_for_each_bound():
    with pytest.raises(ValueError, match="zip"):
        WIDTH.outcome(40.0)


def test_a_second_hand_rule_says_to_check_the_official_text():
    assert "check the official text" in WIDTH.caveat


def test_a_read_rule_has_no_caveat():
    assert TRACK.caveat == ""


def test_equals_refuses_both_sides():
    bound = Bound("structure_same", "equals", 1.0, "yes/no")
    assert [bound.holds(value) for value in (0.0, 1.0, 2.0)] == [False, True, False]


def test_a_rule_for_any_axle_does_not_speak_of_the_vehicle():
    assert not Applies().concerns("vehicle")


def test_a_rule_for_the_front_does_not_speak_of_the_rear():
    assert not Applies(axle="front").concerns("rear")
