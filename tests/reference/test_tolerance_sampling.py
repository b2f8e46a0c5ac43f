"""Combined tolerances against drawing each input at random, 10,000 times, with a fixed seed.

Source of the rule: GUM (JCGM 100:2008) 5.1.2, root of the sum of squares for inputs that are off independently (from
memory); of the check: the Monte Carlo method of its supplement 1 (JCGM 101:2008, from memory). A tolerance is taken as
1.96 standard deviations, so that 95 of 100 draws lie within. Misfit allowed: 5 % of the half-width, since the 2.5th
percentile of 10,000 draws scatters by some 2.5 % of it, and the speed shown goes with a quotient, not with a sum.
"""

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.checks.speedometer_tolerance import reading_tolerance_percent
from service.assessment.view.views import candidate_facts, now_fitted, weigh
from service.physics.tolerance import independent
from tests.support.cases import changed, saloon
from tests.support.plans import F225, F255, F285, effect, planned

DRAWS = 10_000
DEVIATIONS = 1.96
MISFIT = 0.05
# Of bands that are twice as wide on one side the draws lean, which the root of the sum of squares does not know.
SKEWED_MISFIT = 0.10


def _drawn(generator, tolerance):
    return generator.normal(0.0, tolerance / DEVIATIONS, DRAWS)


def _ends(values):
    return np.percentile(values, [2.5, 97.5])


@pytest.mark.parametrize("tolerances", [(1.0, 1.0), (2.0, 0.5, 1.5), (1.0, 2.5, 1.5), (3.0, 0.0)])
def test_independent_inputs_combine_as_the_draws_do(tolerances):
    generator = np.random.default_rng(15)
    low, high = _ends(sum(_drawn(generator, each) for each in tolerances))
    expected = independent(*tolerances)
    assert -low == pytest.approx(expected, rel=MISFIT)
    assert high == pytest.approx(expected, rel=MISFIT)


def _two_sided(generator, down, up):
    """Return draws of a tyre that rolls up to `down` % less or `up` % more; either side is as likely."""
    drawn = generator.normal(0.0, 1.0 / DEVIATIONS, DRAWS)
    return np.where(drawn < 0.0, drawn * down, drawn * up)


def test_a_speedometer_read_to_within_one_per_cent_with_other_tyres_is_off_as_the_draws_are():
    """Reading 1 %, present and proposed tyres +1.5 and -2.5 % each (WDK guideline 107, from memory)."""
    request = changed(
        saloon(("225/45 R17 94W XL", "7.5J x 17 H2 ET45"), ("235/45 R17 97W XL", "7.5J x 17 H2 ET45")),
        {"/vehicle/speedometer/tolerance_percent": 1.0, "/tyre_tolerance": "standard"},
    )
    case = translate.case(CheckRequest.model_validate(request))
    car = weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))
    down, up = reading_tolerance_percent(car)
    generator = np.random.default_rng(15)
    shown = 100.0 / 97.0 + _drawn(generator, 1.0) / 100.0
    present, proposed = (1.0 + _two_sided(generator, 2.5, 1.5) / 100.0 for _ in range(2))
    after = shown * present / (proposed * car.change.driven_circumference_ratio)
    nominal = (100.0 / 97.0) / car.change.driven_circumference_ratio
    low, high = _ends(100.0 * (after / nominal - 1.0))
    assert -low == pytest.approx(down, rel=MISFIT)
    assert high == pytest.approx(up, rel=MISFIT)


def test_ends_that_simply_add_up_would_be_too_wide():
    """Of three equal tolerances the sum is 1.7 times what the draws show: why independent ones are not added."""
    generator = np.random.default_rng(15)
    _, high = _ends(sum(_drawn(generator, 1.0) for _ in range(3)))
    assert 3.0 / high == pytest.approx(np.sqrt(3.0), rel=MISFIT)


def test_the_wet_balance_of_a_plan_is_as_uncertain_as_the_draws_of_both_axles():
    """Its band combines what is off at either axle; a draw that is off at both is drawn for each by itself."""
    found = planned((F255, F285))
    generator = np.random.default_rng(15)
    front, rear = (
        _two_sided(generator, value - low, high - value)
        for value, low, high in (
            effect(found, name) for name in ("front_wet_reserve_points", "rear_wet_reserve_points")
        )
    )
    value, least, most = effect(found, "wet_balance_points")
    low, high = _ends(rear - front)
    assert -low == pytest.approx(value - least, rel=SKEWED_MISFIT)
    assert high == pytest.approx(most - value, rel=SKEWED_MISFIT)


def test_a_pair_is_as_far_apart_as_draws_of_the_exponent_that_both_share():
    """What both have in common is drawn once: the exponent of grip on load, 0.1 to 0.35 about 0.2 (own)."""
    found = planned((F255, F285), (F225, F225))
    (one,) = [each for each in found.pairs if (each.first, each.second) == (0, 1)]
    (braking,) = [each.difference for each in one.apart if each.effect == "braking_distance_percent"]
    drawn = np.clip(0.2 + _two_sided(np.random.default_rng(15), 0.1, 0.15), 0.1, 0.35)
    # The logarithm of the distance goes with the exponent.
    distances = 100.0 * np.expm1(np.log1p(braking.value / 100.0) * drawn / 0.2)
    low, high = _ends(distances)
    assert low == pytest.approx(braking.low, rel=MISFIT)
    assert high == pytest.approx(braking.high, rel=MISFIT)
