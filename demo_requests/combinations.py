"""Five combinations of widths on one saloon: what the service says of each, as a row of a table."""

from __future__ import annotations

from typing import Any

Json = dict[str, Any]

# One saloon, staggered 225 and 255 now: what other widths do to it.
COMBINATIONS = (
    "staggered-same-sizes",
    "staggered-one-step-wider",
    "square-all-round",
    "narrow-all-round",
    "wide-at-the-back-only",
)
VERDICT = {
    "suitable": "fits",
    "suitable_with_conditions": "conditions",
    "not_recommended": "advised against",
    "unsuitable": "does not fit",
}
HEADS = (
    "front / rear",
    "verdict",
    "dry grip [%]",
    "braking [%]",
    "rear in the wet [%]",
    "floats [%]",
    "balance, dry [deg/g]",
    "less reserve",
    "turn-in",
    "heat [%]",
)
WIDTHS = (9, 11, 11, 9, 8, 12, 16, 8, 8, 9)
LEGEND = (
    "Two numbers are front / rear, in brackets is the band. Dry grip: change of peak grip. Rear in the wet: share of\n"
    "the load still on the road at 80 km/h in 2 mm of water, now and then. Floats: change of the aquaplaning speed,\n"
    "negative is lower. Balance: positive is towards understeer. Less reserve: the axle that floats first, now, then.\n"
    "Turn-in: at first, and once loaded. Heat: how much more the tread stands when driven hard."
)


def cells(asked: Json, found: Json) -> tuple[str, ...]:
    """Return the cells of one combination: what was asked and what was answered."""
    front, rear = (found["axles"][axle] for axle in ("front", "rear"))
    vehicle = found["vehicle"]
    balance, turn_in = vehicle["balance"], vehicle["turn_in"]
    sides = front["change"], rear["change"]
    reserve = rear["present"]["wet_reserve_percent"]["value"], rear["proposed"]["wet_reserve_percent"]["value"]
    wet = balance["wet"]
    return (
        " / ".join(asked["candidate"][axle]["tyre"]["size"].split("/")[0] for axle in ("front", "rear")),
        VERDICT[found["verdict"]],
        " / ".join(f"{each['peak_grip_percent']['value'] + 0.0:+.1f}" for each in sides),
        band(vehicle["braking_distance_percent"], 1),
        f"{reserve[0]:.0f} to {reserve[1]:.0f}",
        " / ".join(f"{each['aquaplaning_onset_percent']['value'] + 0.0:+.1f}" for each in sides),
        f"{band(balance['understeer_gradient_change_deg_per_g'], 2)} {balance['degree']}",
        f"{wet['less_reserve_present']} to {wet['less_reserve_proposed']}",
        f"{turn_in['first']}, {turn_in['then']}",
        " / ".join(f"{each['heat_reserve_percent'] + 0.0:+.0f}" for each in sides),
    )


def band(estimate: dict[str, float], digits: int) -> str:
    """Return an estimate with its band."""
    value, low, high = (f"{estimate[name] + 0.0:+.{digits}f}" for name in ("value", "low", "high"))
    return value if low == high else f"{value} ({low} to {high})"
