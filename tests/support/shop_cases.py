"""Questions that a shop asks, by a seed: one of the twelve vehicles, a rim that is near, a tyre of the shelves."""

from __future__ import annotations

from random import Random
from typing import Any

from tests.support import tyre_stock, workshop
from tests.support.wire import AXLES, PACKS, question

Json = dict[str, Any]
SAME_RIM = 0.45


def _code(rim: Json) -> int:
    return int(rim["size"].split(" x ")[1].split()[0])


def _rim(chance: Random, fitted: Json) -> Json:
    if chance.random() < SAME_RIM:
        return dict(fitted)
    circle = fitted.get("bolt_circle")
    near = [
        each
        for each in tyre_stock.RIMS
        if abs(_code(each) - _code(fitted)) <= 1 and circle in (None, each["bolt_circle"])
    ]
    return dict(chance.choice([*near, fitted]))


def _tyre(chance: Random, rim: Json, fitted: str) -> str:
    if chance.random() < 0.2 and f" R{_code(rim)}" in fitted:
        return fitted
    return chance.choice(tyre_stock.of_codes(str(_code(rim))) or (fitted,))


def _wheel(chance: Random, axle: Json) -> Json:
    fitted = axle["fitted"]
    rim = _rim(chance, fitted["rim"])
    wheel: Json = {"tyre": {"size": _tyre(chance, rim, fitted["tyre"]["size"])}, "rim": rim}
    if chance.random() < 0.3:
        wheel["tyre"]["tread_depth_mm"] = chance.choice((2.5, 5.0, 8.0))
    if chance.random() < 0.4:
        wheel["pressure_kpa"] = chance.choice((160, 200, 230, 260, 300, 340, 450))
    return wheel


def _measure(chance: Random, vehicle: Json) -> None:
    """Let somebody have measured a little of what a workshop seldom measures."""
    if chance.random() < 0.15:
        vehicle["speedometer"] = {"displayed_kmh": 100, "true_kmh": chance.choice((94, 96, 98))}
    for name in AXLES:
        if chance.random() < 0.25:
            room = {side: chance.randint(2, 40) for side in ("inboard_mm", "outboard_mm", "radial_mm")}
            vehicle[name]["clearance"] = room
        if chance.random() < 0.2:
            vehicle[name]["min_rim_diameter_in"] = _code(vehicle[name]["fitted"]["rim"]) - chance.choice((0, 1))


def shop_question(seed: int) -> Json:
    """Return a request to check, under the rules of one of the twelve places."""
    chance = Random(seed)
    vehicle = workshop.vehicle(chance.choice(workshop.NAMES))
    _measure(chance, vehicle)
    front = _wheel(chance, vehicle["front"])
    rear = front if chance.random() < 0.6 else _wheel(chance, vehicle["rear"])
    asked = question(vehicle, {"front": front, "rear": rear}, PACKS[seed % len(PACKS)])
    if chance.random() < 0.3:
        asked["season"] = chance.choice(("summer", "winter"))
    return asked
