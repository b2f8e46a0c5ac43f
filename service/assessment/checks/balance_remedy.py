"""Which cornering stiffness on one axle would settle a shift of balance, and about which width that takes.

The remedy's range is that of `change/cornering_stiffness_percent` of the axle; the width beside it is for a tyre of the
present sidewall, on a rim that suits it as the present one suits the present tyre.
"""

from __future__ import annotations

from service.assessment.checks.words import plain, signed, tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Remedy
from service.core.numeric import natural_log
from service.physics.cornering_stiffness import ELASTICITIES

# Aim inside the limits, since the grade takes the limits themselves for too much.
AIM = 0.95
# A width beyond these shares of the present one is no advice.
WIDTH_STEP_MM = 5.0
LEAST_WIDTH_SHARE, GREATEST_WIDTH_SHARE = 0.7, 1.4


def balance_remedy(car: CarView) -> Remedy:
    """Return the cornering stiffness that leaves the balance as it is, on the axle that changed more."""
    room = AIM * car.limits.balance_negligible_deg_per_g.value
    change = car.change
    front, rear = (view.change.cornering_stiffness.value for view in (car.front, car.rear))
    shift_front = change.front_compliance_deg_per_g * (1.0 / front - 1.0)
    shift_rear = change.rear_compliance_deg_per_g * (1.0 / rear - 1.0)
    at_front = 1.0 + shift_rear / change.front_compliance_deg_per_g
    at_rear = 1.0 + shift_front / change.rear_compliance_deg_per_g
    slack_front = room / change.front_compliance_deg_per_g
    slack_rear = room / change.rear_compliance_deg_per_g
    front_changed_more = abs(natural_log(front)) >= abs(natural_log(rear))
    # No tyre is stiff enough to undo everything: then the other axle has to follow.
    if at_rear <= slack_rear or (front_changed_more and at_front > slack_front):
        return _stiffness(car.front, 1.0 / (at_front + slack_front), 1.0 / (at_front - slack_front))
    return _stiffness(car.rear, 1.0 / (at_rear + slack_rear), 1.0 / (at_rear - slack_rear))


def grip_order_remedy(car: CarView, tolerance_percent: float) -> Remedy:
    """Return the cornering stiffness that the rear needs so that it is no worse off against the front.

    Where no sensible tyre has so much, the front has to have less.
    """
    share = 1.0 + tolerance_percent / 100.0
    front, rear = (view.change.cornering_stiffness.value for view in (car.front, car.rear))
    if (share * front / rear) ** (1.0 / ELASTICITIES.value.width) < GREATEST_WIDTH_SHARE:
        return _stiffness(car.rear, share * front, None)
    return _stiffness(car.front, None, rear / share)


def _stiffness(view: AxleView, least: float | None, most: float | None) -> Remedy:
    low, high = (None if end is None else 100.0 * (end - 1.0) for end in (least, most))
    ends = [end for end in (least, most) if end is not None]
    aim = sum(ends) / len(ends)
    more = "" if len(ends) > 1 else " or less" if least is None else " or more"
    stiffness = " to ".join(signed(100.0 * (end - 1.0)) for end in ends)
    share = aim ** (1.0 / ELASTICITIES.value.width)
    text = f"other {view.name} tyres"
    if LEAST_WIDTH_SHARE < share < GREATEST_WIDTH_SHARE:
        width = plain(WIDTH_STEP_MM * round(share * view.now.facts.nominal_width_mm / WIDTH_STEP_MM))
        text = f"{view.name} tyres about {width} mm wide{more}, with the present sidewall and on a rim to match"
    text = f"{text} (cornering stiffness {stiffness} %{more} against the present ones)"
    return Remedy(text, tyre_pointer(view.name), "cornering_stiffness_percent", low, high, unit="%")
