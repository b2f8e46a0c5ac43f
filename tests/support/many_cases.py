"""Requests of every kind by a seed: tyres, rims and vehicles common and odd, with much stated or little."""

from __future__ import annotations

from random import Random
from typing import Any

from service.rules.reader import pack_ids

Json = dict[str, Any]

ODD_TYRES = (
    "P215/65 R15 95T",
    "LT235/85 R16 120/116R E",
    "225/70 R15C 112/110R",
    "225/70R15C 112/110R (115N)",
    "195/75 R16C 107/105R",
    "T125/80 D16 97M",
    "31x10.50 R15LT 109S",
    "30x9.50 R15LT",
    "165 R13 82S",
    "155 R13",
    "185/70 D14 88S",
    "255/35 ZR19",
    "255/35 ZR19 (96Y)",
    "HL245/40 R19 101Y",
    "225/45 RF17 94W XL",
    "205/55 R16",
    "205/55 R16 91H M+S",
    "205/55 R16 94V XL M+S 3PMSF",
    "275/20 R22 91Y",
    "145/80 R13 75T",
    "235/85 R16 120S",
)
ODD_RIMS = ("6J x 15", "6 x 15 ET38", "5.5J - 16 ET60", "10J x 20 H2 ET-12", "8.5J x 19 FH2 ET25.5", "4.5J x 13 H ET35")

UNREAD = 0.15


def _maybe(chance: Random, part: Json, name: str, value: object, likely: float = 0.8) -> None:
    if chance.random() < likely:
        part[name] = value


def _tyre(chance: Random, code: int) -> Json:
    if chance.random() < 0.15:
        size = chance.choice(ODD_TYRES)
    else:
        width, aspect = chance.randrange(145, 316, 10), chance.randrange(25, 81, 5)
        index, symbol = chance.randint(70, 112), chance.choice("QSTUHVWY")
        size = f"{width}/{aspect} R{code} {index}{symbol}{chance.choice(('', '', ' XL', ' 3PMSF'))}"
    tyre: Json = {"size": size}
    _maybe(chance, tyre, "tread_depth_mm", chance.choice((0.5, 1.6, 3, 5.5, 8, 11)))
    _maybe(chance, tyre, "overall_diameter_mm", chance.uniform(300, 800), 0.1)
    _maybe(chance, tyre, "section_width_mm", chance.uniform(140, 320), 0.1)
    _maybe(chance, tyre, "rolling_circumference_mm", chance.uniform(1500, 2500), 0.05)
    _maybe(chance, tyre, "reference_pressure_kpa", chance.uniform(220, 550), 0.1)
    _maybe(chance, tyre, "mass_kg", chance.uniform(6, 20), 0.1)
    narrow = chance.uniform(4, 9)
    _maybe(chance, tyre, "approved_rim_widths_in", {"min": narrow, "max": narrow + chance.uniform(-0.5, 3)}, 0.1)
    return tyre


def _rim(chance: Random, code: int) -> Json:
    size = f"{chance.choice((5, 6, 6.5, 7, 7.5, 8, 8.5, 9.5)):g}J x {code} H2 ET{chance.randint(20, 55)}"
    rim: Json = {"size": chance.choice(ODD_RIMS) if chance.random() < 0.1 else size}
    _maybe(chance, rim, "bolt_circle", chance.choice(("5x112", "5x112", "5x112", "5x114.3", "4x100")))
    _maybe(chance, rim, "centre_bore_mm", chance.choice((66.6, 66.6, 72.6, 57.1)))
    _maybe(chance, rim, "load_rating_kg", chance.uniform(350, 900))
    _maybe(chance, rim, "mass_kg", chance.uniform(7, 18), 0.3)
    return rim


def wheel(chance: Random) -> Json:
    """Return the fitment of one axle."""
    code = chance.choice((14, 15, 16, 17, 17, 18, 18, 19))
    rim_code = code if chance.random() < 0.95 else code + 1
    fitment: Json = {"tyre": _tyre(chance, code), "rim": _rim(chance, rim_code)}
    _maybe(chance, fitment, "pressure_kpa", chance.uniform(120, 420))
    return fitment


def _sound(chance: Random) -> Json:
    """Return a fitment like the present one, or one step from it, with nearly everything stated that is asked for."""
    width, rim_width, offset = chance.choice(((225, 7.5, 45), (225, 7.5, 43), (215, 7.5, 45), (235, 8, 46)))
    aspect = {215: 50, 225: 45, 235: 45}[width]
    mark = chance.choice((" XL", " XL 3PMSF"))
    made: Json = {
        "tyre": {"size": f"{width}/{aspect} R17 {chance.choice((97, 98, 99))}Y{mark}", "tread_depth_mm": 8},
        "rim": {
            "size": f"{rim_width:g}J x 17 H2 ET{offset}",
            "bolt_circle": "5x112",
            "centre_bore_mm": 66.6,
            "load_rating_kg": 900,
        },
        "pressure_kpa": 300,
    }
    # Now and then nobody has read what stands on the back of the wheel, which decides on a rim that the car has not.
    if chance.random() < UNREAD:
        made["rim"].pop("load_rating_kg")
    return made


def candidate(chance: Random, vehicle: Json) -> Json:
    """Return a candidate: now and then the present fitment itself or one that may suit, mostly any."""
    if chance.random() < 0.1:
        return {"front": vehicle["front"]["fitted"], "rear": vehicle["rear"]["fitted"]}
    if chance.random() < 0.3:
        front = _sound(chance)
        return {"front": front, "rear": front if chance.random() < 0.7 else _sound(chance)}
    front = wheel(chance)
    return {"front": front, "rear": front if chance.random() < 0.5 else wheel(chance)}


def _axle(chance: Random) -> Json:
    axle: Json = {"max_axle_mass_kg": chance.uniform(500, 2200), "fitted": wheel(chance)}
    if chance.random() < 0.5:
        axle = {"max_axle_mass_kg": chance.uniform(700, 1200), "fitted": _sound(chance)}
    _maybe(chance, axle, "kerb_axle_mass_kg", 0.8 * axle["max_axle_mass_kg"])
    _maybe(chance, axle, "track_mm", chance.uniform(1300, 1700))
    _maybe(chance, axle, "wheels_per_side", 2, 0.1)
    _maybe(chance, axle, "hub", {"bolt_circle": "5x112", "centre_bore_mm": 66.6})
    room: Json = {}
    for side in ("inboard_mm", "outboard_mm", "radial_mm"):
        _maybe(chance, room, side, chance.uniform(0, 40))
    axle["clearance"] = room
    _maybe(chance, axle, "min_rim_diameter_in", chance.choice((14, 16, 17)))
    return axle


def vehicle(chance: Random) -> Json:
    """Return a vehicle with its present fitment."""
    made: Json = {
        "max_speed_kmh": chance.choice((90, 140, 165, 189.5, 210, 228, 245, 260, 299, 320)),
        "front": _axle(chance),
        "rear": _axle(chance),
    }
    _maybe(chance, made, "category", chance.choice(("M1", "M1", "M1G", "N1", "O1", "O2", "M2", "N2")))
    _maybe(chance, made, "driven_axle", chance.choice(("front", "rear", "all")))
    _maybe(chance, made, "wheelbase_mm", chance.uniform(2200, 3600))
    _maybe(chance, made, "centre_of_gravity_height_mm", chance.uniform(400, 900))
    _maybe(chance, made, "speedometer", {"displayed_kmh": 100, "true_kmh": chance.uniform(90, 101)})
    _maybe(chance, made, "built", chance.choice(("1995-04-01", "2005-01-10", "2019-05-20")), 0.6)
    _maybe(chance, made, "max_mass_kg", chance.uniform(900, 4500), 0.6)
    _maybe(chance, made, "seats_standing", chance.random() < 0.5, 0.2)
    _maybe(chance, made, "speed_limited_kmh", 100.0, 0.2)
    _maybe(chance, made, "towing", True, 0.3)
    return made


def _add_tolerances(chance: Random, asked: Json) -> None:
    """Say to within how much it was measured, by a chance of its own, so that all else stays as it is."""
    car = asked["vehicle"]
    for name in ("front", "rear"):
        car[name]["clearance"]["tolerance_mm"] = chance.choice((0.5, 2, 5, 12))
        _maybe(chance, car[name], "track_tolerance_mm", chance.choice((2, 10)))
    if "speedometer" in car:
        car["speedometer"]["tolerance_percent"] = chance.choice((0.5, 1, 2))
    _maybe(chance, asked, "tyre_tolerance", "standard", 0.5)


def question(seed: int, candidates: int) -> Json:
    """Return a request to compare this many candidates under the rules of some place."""
    chance = Random(seed)
    packs = pack_ids()
    known = vehicle(chance)
    asked: Json = {
        "vehicle": known,
        "rule_pack": packs[seed % len(packs)],
        "candidates": [candidate(chance, known) for _ in range(candidates)],
    }
    if seed % 3 == 0:
        _add_tolerances(Random(1000 + seed), asked)
    _maybe(chance, asked, "season", chance.choice(("winter", "summer")), 0.4)
    _maybe(chance, asked, "date", chance.choice(("2010-01-15", "2024-10-01", "2026-11-24")), 0.4)
    return asked
