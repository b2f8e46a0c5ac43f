"""Turn-in: the directions; rule and tolerances are this project's judgement."""

from __future__ import annotations

import math

import numpy as np
import pytest

from service.physics.turn_in import turn_in


def test_the_same_tyre_answers_alike():
    assert turn_in(1.0, 1.0, 1.0) == (0.0, 0.0)


@pytest.mark.parametrize(
    ("length", "height", "first"),
    [
        pytest.param(0.9, 1.0, -1.0, id="shorter patch"),
        pytest.param(1.1, 1.0, 1.0, id="longer patch"),
        pytest.param(1.0, 0.9, 1.0, id="lower sidewall"),
        pytest.param(1.0, 1.1, -1.0, id="higher sidewall"),
        pytest.param(0.9, 0.9, 0.0, id="shorter patch under a lower sidewall"),
        pytest.param(0.98, 1.0, 0.0, id="within the tolerance"),
        pytest.param(0.96, 1.0, -1.0, id="beyond the tolerance"),
    ],
)
def test_the_first_answer_follows_patch_and_sidewall(length, height, first):
    assert turn_in(length, height, 1.0).response_first == first


@pytest.mark.parametrize(("stiffness", "then"), [(1.02, 0.0), (1.04, 1.0), (0.98, 0.0), (0.96, -1.0)])
def test_the_loaded_answer_follows_the_cornering_stiffness(stiffness, then):
    assert turn_in(1.0, 1.0, stiffness).response_then == then


def test_an_unknown_is_not_alike():
    assert math.isnan(turn_in(math.nan, 1.0, 1.0).response_first)


def test_an_unknown_among_many_stays_unknown():
    found = turn_in(np.array([math.nan, 0.9]), np.array([1.0, 1.0]), np.array([1.0, math.nan]))
    np.testing.assert_array_equal(found.response_first, [math.nan, -1.0])
    np.testing.assert_array_equal(found.response_then, [0.0, math.nan])
