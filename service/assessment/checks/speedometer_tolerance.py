"""To within how much is it known what the speedometer will show?

Three things are off independently of one another: the reading itself, the present tyres that it was taken with, and
the tyres to be fitted. The tyres of one set differ alike. What was measured of a tyre replaces its tolerance, and where
the circumference stays as it is, present and proposed tyres are the same.
"""

from __future__ import annotations

from service.assessment.view.change import Wheel
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import Num, known, pick
from service.physics.rolling import TOLERANCE_DOWN_PERCENT, TOLERANCE_UP_PERCENT
from service.physics.tolerance import independent


def reading_tolerance_percent(car: CarView[Num]) -> tuple[Num, Num]:
    """Return how far the lead may lie below and above what the reading leads to, in per cent of the true speed.

    A speedometer that nobody read has none.

    References
    ----------
    .. [WDK-107] Tolerance of the rolling circumference (from memory).
    .. [GUM] Inputs that are off independently combine as the root of the sum of squares.
    """
    own = car.vehicle.speedometer_tolerance_percent
    if not car.front.conditions.tyres_vary:
        return own, own
    changes = pick(car.change.driven_circumference_ratio == 1.0, 0.0, 1.0)
    driven = _driven(car)
    present = changes * _unmeasured(*(view.now for view in driven))
    proposed = changes * _unmeasured(*(view.then for view in driven))
    # It shows more where the present tyres roll further than they should and the proposed ones less.
    down = independent(own, present * TOLERANCE_DOWN_PERCENT, proposed * TOLERANCE_UP_PERCENT)
    up = independent(own, present * TOLERANCE_UP_PERCENT, proposed * TOLERANCE_DOWN_PERCENT)
    is_read = known(car.vehicle.displayed_kmh) & known(car.vehicle.true_kmh)
    return pick(is_read, down, own), pick(is_read, up, own)


def _driven(car: CarView[Num]) -> tuple[AxleView[Num], ...]:
    driven = car.vehicle.driven_axle
    return (car.front,) if driven == "front" else (car.rear,) if driven == "rear" else (car.front, car.rear)


def _unmeasured(*wheels: Wheel[Num]) -> Num:
    """Return 1 where the circumference of any of these wheels is computed, 0 where all were measured."""
    found = 0.0
    for wheel in wheels:
        found = pick(known(wheel.facts.measured_circumference_mm), found, 1.0)
    return found
