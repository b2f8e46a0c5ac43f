"""Which outcome counts, and what is known: the same for one value and for many."""

import math
from itertools import product

import numpy as np
import pytest

from service.core.findings import (
    ADVISORY,
    MET,
    NOT_ASSESSED,
    NOT_MET,
    NOT_RECOMMENDED,
    OPEN,
    OUTCOME_NAMES,
    is_open,
    worst,
)
from service.core.numeric import known, known_or, looked_up, unknown

# The order of outcomes, worst first, as the design of the verdict gives it.
WORST_FIRST = {
    "not_met": NOT_MET,
    "not_recommended": NOT_RECOMMENDED,
    "not_assessed": NOT_ASSESSED,
    "advisory": ADVISORY,
}
TOGETHER = [dict(zip(WORST_FIRST, holds, strict=True)) for holds in product((False, True), repeat=4)]


def expected(told: dict[str, bool]) -> int:
    """Return the outcome of the first that holds."""
    return next((code for name, code in WORST_FIRST.items() if told[name]), MET)


@pytest.mark.parametrize("told", TOGETHER)
def test_the_worst_that_holds_counts(told):
    assert worst(**told) == expected(told)


def test_of_many_each_has_its_own_worst():
    columns = {name: np.array([told[name] for told in TOGETHER]) for name in WORST_FIRST}
    assert worst(**columns).tolist() == [expected(told) for told in TOGETHER]


@pytest.mark.parametrize("whole", WORST_FIRST)
def test_what_holds_for_all_of_many_may_be_said_once(whole):
    some = [told for told in TOGETHER if told[whole]]
    columns = {name: np.array([told[name] for told in some]) for name in WORST_FIRST}
    assert worst(**{**columns, whole: True}).tolist() == [expected(told) for told in some]


def test_an_outcome_has_the_name_of_the_contract_and_its_weight():
    """What is not assessed has one name, whether the verdict waits for it or not (the design of the verdict)."""
    named = {
        MET: "met",
        OPEN: "not_assessed",
        ADVISORY: "advisory",
        NOT_ASSESSED: "not_assessed",
        NOT_RECOMMENDED: "not_recommended",
        NOT_MET: "not_met",
    }
    assert list(named) == sorted(named) == list(range(6))
    assert [OUTCOME_NAMES[code] for code in named] == list(named.values())
    assert [is_open(code) for code in named] == [name == "not_assessed" for name in named.values()]


def test_what_is_not_said_does_not_hold():
    assert (worst(), worst(advisory=True)) == (MET, ADVISORY)


@pytest.mark.parametrize(("value", "is_known"), [(0.0, True), (-1.5, True), (math.inf, True), (math.nan, False)])
def test_a_number_is_known_and_nan_is_not(value, is_known):
    assert (known(value), unknown(value)) == (is_known, not is_known)


def test_of_many_each_is_known_or_not():
    values = np.array([0.0, math.inf, math.nan])
    assert known(values).tolist() == [True, True, False]
    assert unknown(values).tolist() == [False, False, True]


def test_what_is_not_known_is_filled_up():
    filled = known_or(np.array([1.0, math.nan, math.nan]), np.array([5.0, 6.0, math.nan]))
    assert filled.tolist()[:2] == [1.0, 6.0]
    assert math.isnan(filled[2])


def test_many_are_looked_up_as_one_is():
    # UN R39, 5.3: the speed shown is from the true speed to a tenth and 4 km/h above, so at most 48, 92 and 136.
    def band(true_kmh):
        return true_kmh, 1.1 * true_kmh + 4.0

    least, most = looked_up(band, np.array([80.0, 40.0, 120.0, 80.0]))
    assert least.tolist() == [80.0, 40.0, 120.0, 80.0]
    assert most.tolist() == pytest.approx([92.0, 48.0, 136.0, 92.0])
    assert looked_up(band, 40.0) == pytest.approx((40.0, 48.0))
