"""How numbers read in a message: as few decimals as are needed, ranges with their ends rounded into them."""

import math

import pytest

from service.assessment.checks.words import apart, beside_true_speed, lawful_lead, plain, signed, span


@pytest.mark.parametrize(
    ("value", "digits", "text"), [(3.0, 2, "3"), (-0.04, 1, "0"), (2.50, 2, "2.5"), (1137.75, 0, "1138")]
)
def test_a_number_has_no_idle_zeros_and_no_negative_nought(value, digits, text):
    assert plain(value, digits) == text


@pytest.mark.parametrize(("value", "text"), [(0.3, "+0.3"), (-0.3, "\N{MINUS SIGN}0.3"), (0.04, "0")])
def test_a_change_has_its_sign_unless_it_rounds_to_nothing(value, text):
    assert signed(value) == text


@pytest.mark.parametrize(("value", "text"), [(2.1, "2.1"), (2.04, "2.04"), (2.3, "2.3")])
def test_what_is_beyond_a_limit_does_not_read_like_the_limit(value, text):
    assert apart(value, 2.0, 1) == text


@pytest.mark.parametrize(
    ("least", "most", "text"),
    [
        (42.5, 48.4, "43 to 48 mm"),
        (43.6, 44.4, "44 mm"),
        (42.3, 42.7, "42.5 mm"),
        (None, 9.7, "9 mm or less"),
        (8.2, None, "9 mm or more"),
    ],
)
def test_the_ends_of_a_range_are_rounded_into_it(least, most, text):
    assert span(least, most, "mm") == text


@pytest.mark.parametrize(
    ("lead", "text"),
    [(3.14, "3.1 % above the true speed"), (-2.0, "2 % below the true speed"), (0.01, "the true speed")],
)
def test_a_speedometer_reads_above_below_or_the_true_speed(lead, text):
    assert beside_true_speed(lead) == text


@pytest.mark.parametrize(
    ("least", "most", "text"),
    [
        (0.0, 10.0, "0 to 10 % above the true speed"),
        (-4.72, 7.96, "between 4.7 % below and 7.9 % above the true speed"),
        (-18.8, -8.0, "8 to 18.8 % below the true speed"),
        (-4.7, 0.04, "0 to 4.7 % below the true speed"),
        (2.0, math.inf, "at least 2 % above the true speed"),
        (-10.0, math.inf, "no more than 10 % below the true speed"),
        (0.0, math.inf, "at least 0 % above the true speed"),
        (0.0, 0.04, "0 to 0 % above the true speed"),
        (-0.04, 10.0, "0 to 10 % above the true speed"),
        (0.01, 10.0, "0.1 to 10 % above the true speed"),
    ],
)
def test_a_lawful_lead_is_told_without_negative_numbers(least, most, text):
    said = lawful_lead(least, most)
    assert said == text
    # Other languages put the unit where it belongs: each number brings its own.
    assert {each.unit for each in said.parameters.values()} == {"%"}
