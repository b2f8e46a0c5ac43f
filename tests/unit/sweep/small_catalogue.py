"""A small catalogue of invented vehicles and candidates, varied by a fixed seed."""

import random

import pandas as pd

SIZES = ("195/65 R15", "205/55 R16", "215/45 R18", "225/40 R18", "235/40 R18", "225/45ZR17", "195R14C", "185/75 R16C")
SERVICE = ("91V", "95Y XL", "88H", "106/104R", "102/100T", "94W", "")
RIMS = ("6J x 15 ET38", "7J x 16 H2 ET40", "7.5J x 18 H2 ET45", "8J x 18 H2 ET45", "8.5 x 17", "5.5J x 14 H ET35")

# Wheels that belong together; without them nothing would ever fit.
SOUND = (
    ("215/45 R18 93W XL", "7.5J x 18 H2 ET45"),
    ("225/40 R18 95Y XL", "8J x 18 H2 ET45"),
    ("225/45 R17 94W XL", "7.5J x 17 H2 ET45"),
    ("215/45 R18 93H M+S 3PMSF", "7.5J x 18 H2 ET45"),
    ("225/40 R18", "8J x 18 H2 ET44"),
    ("225/40 R18 M+S 3PMSF", "8J x 18 H2 ET44"),
    ("225/40 R18 95V XL 3PMSF", "8J x 18 H2 ET45"),
)
# What was drawn for another wheel and would contradict a sound one.
NOT_ON_SOUND = (
    "overall_diameter_mm",
    "section_width_mm",
    "rolling_circumference_mm",
    "reference_pressure_kpa",
    "approved_min_in",
    "approved_max_in",
    "tread_depth_mm",
    "pressure_kpa",
    "hub_bolt_circle",
    "hub_centre_bore_mm",
    "clearance_inboard_mm",
)


def _sound_wheels(dice: random.Random) -> dict[str, object]:
    front = dice.choice(SOUND)
    # Now and then other tyres at the rear, such as winter tyres on one axle only.
    rear = dice.choice(SOUND) if dice.random() < 0.3 else front
    made: dict[str, object] = {}
    for axle, (tyre, rim) in (("front", front), ("rear", rear)):
        wheel = {"tyre": tyre, "rim": rim, "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 690.0}
        made |= {f"{axle}_{name}": value for name, value in wheel.items()}
    return made


def _wheel(dice: random.Random, axle: str) -> dict[str, object]:
    tyre = f"{dice.choice(SIZES)} {dice.choice(SERVICE)}".strip()
    wheel = {f"{axle}_tyre": tyre, f"{axle}_rim": dice.choice(RIMS)}
    optional: dict[str, object] = {
        "pressure_kpa": dice.choice((220.0, 250.0, 300.0)),
        "tread_depth_mm": dice.choice((2.0, 4.5, 8.0)),
        "overall_diameter_mm": dice.choice((620.0, 650.0)),
        "section_width_mm": 230.0,
        "rolling_circumference_mm": 1980.0,
        "reference_pressure_kpa": 475.0,
        "tyre_mass_kg": 10.0,
        "bolt_circle": dice.choice(("5x112", "5x120", "4x100")),
        "centre_bore_mm": dice.choice((57.1, 66.6)),
        "load_rating_kg": dice.choice((560.0, 900.0)),
        "rim_mass_kg": 11.0,
    }
    wheel |= {f"{axle}_{name}": value if dice.random() < 0.6 else None for name, value in optional.items()}
    if dice.random() < 0.2:
        wheel |= {f"{axle}_approved_min_in": 7.0, f"{axle}_approved_max_in": 8.5}
    return wheel


def _axle(dice: random.Random, axle: str) -> dict[str, object]:
    optional: dict[str, object] = {
        "kerb_axle_mass_kg": 760.0,
        "track_mm": 1540.0,
        "wheels_per_side": dice.choice((1, 2)),
        "hub_bolt_circle": dice.choice(("5x112", "5x120")),
        "hub_centre_bore_mm": 66.6,
        "clearance_inboard_mm": 12.0,
        "clearance_outboard_mm": 15.0,
        "clearance_radial_mm": 20.0,
        "min_rim_diameter_in": 16.0,
    }
    made: dict[str, object] = {f"{axle}_max_axle_mass_kg": dice.choice((900.0, 1250.0, 1900.0))}
    made |= {f"{axle}_{name}": value if dice.random() < 0.7 else None for name, value in optional.items()}
    return made | _wheel(dice, axle)


def vehicles(count: int, seed: int = 1) -> pd.DataFrame:
    dice = random.Random(seed)
    rows = []
    for number in range(count):
        row: dict[str, object] = {
            "vehicle_id": f"larch-{number}",
            "max_speed_kmh": dice.choice((150.0, 180.0, 228.0, 250.0)),
            "category": dice.choice(("M1", "N1", "M3", None)),
            "driven_axle": dice.choice(("front", "rear", "all", None)),
            "centre_of_gravity_height_mm": dice.choice((540.0, None)),
            "built": dice.choice(("2012-03-01", "2021-08-17", None)),
            "max_mass_kg": dice.choice((1900.0, 3600.0, None)),
            "seats_standing": dice.choice((True, False, None)),
            "speed_limited_kmh": dice.choice((60.0, 100.0, None)),
            "towing": dice.choice((True, None)),
        }
        if dice.random() < 0.5:
            row |= {"displayed_kmh": 100.0, "true_kmh": 96.0}
        rows.append(row | _axle(dice, "front") | _axle(dice, "rear"))
    half = range(0, count, 2)
    for number in half:
        rows[number] |= _sound_wheels(dice) | {"category": "M1", "towing": None}
        for axle in ("front", "rear"):
            rows[number] |= {f"{axle}_max_axle_mass_kg": 960.0, f"{axle}_wheels_per_side": 1}
            rows[number] |= {f"{axle}_{name}": None for name in NOT_ON_SOUND}
    return pd.DataFrame(rows)


def candidates(count: int, seed: int = 2) -> pd.DataFrame:
    dice = random.Random(seed)
    rows = [{"candidate_id": f"c{n}"} | _wheel(dice, "front") | _wheel(dice, "rear") for n in range(count)]
    for number in range(0, count, 2):
        rows[number] = {"candidate_id": f"c{number}"} | _sound_wheels(dice)
    return pd.DataFrame(rows)
