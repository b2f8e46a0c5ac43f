"""Twelve ordinary vehicles, all invented, as a workshop knows them: registration document, sidewall, back of the wheel.

Nobody there has a speedometer reading, and the room around the wheel was measured on one of them only. Offsets are
known. Bolt circle and bore are those of the hub, as a configurator keeps them, or what is read on the back of the
wheel; of the classic car nobody noted them. Ratings of rims are known of some. Masses, speeds and sizes are common
practice, no source. Each fitment carries its axle by the load index table (UN R30, annex 4; UN R54 for C and LT tyres)
with the reduction at speed, and each pressure is enough by P = P_ref (load / capacity)^1.25 with the addition for
speed; the comments show the sums.
"""

from __future__ import annotations

import copy
from typing import Any

Json = dict[str, Any]


def _wheel(tyre: str, rim: str, pressure_kpa: float, **more: float | str) -> Json:
    """Return what is fitted; `more` is of the rim but for tread depth and reference pressure, which are of the tyre."""
    of_tyre = {name: more.pop(name) for name in ("tread_depth_mm", "reference_pressure_kpa") if name in more}
    return {"tyre": {"size": tyre, **of_tyre}, "rim": {"size": rim, **more}, "pressure_kpa": pressure_kpa}


def _axle(max_axle_mass_kg: float, fitted: Json, **more: object) -> Json:
    return {"max_axle_mass_kg": max_axle_mass_kg, "fitted": fitted, **more}


def _vehicle(kind: tuple[str, float, str | None], papers: tuple[float, str], front: Json, rear: Json) -> Json:
    """Return a vehicle: (category, top speed, driven axle), (maximum mass, day it was built)."""
    category, max_speed_kmh, driven = kind
    made: Json = {"category": category, "max_speed_kmh": max_speed_kmh, "front": front, "rear": rear}
    if driven is not None:
        made["driven_axle"] = driven
    return made | {"max_mass_kg": papers[0], "built": papers[1]}


def _hatch() -> Json:
    # 615 kg at 250 kPa; 500 kg need 193 and at 195 km/h 21 more, 460 kg need 174 and 21 more.
    fitted = ("195/65 R15 91H", "6J x 15 H2 ET43")
    return _vehicle(
        ("M1", 195, "front"),
        (1820, "2016-03-14"),
        _axle(1000, _wheel(*fitted, 230, bolt_circle="5x108", centre_bore_mm=63.4)),
        _axle(920, _wheel(*fitted, 220, bolt_circle="5x108", centre_bore_mm=63.4)),
    )


def _staggered_saloon() -> Json:
    # 650 kg at 290 kPa: 505 kg need 212, 710 kg: 565 kg need 218; Y at 250 km/h adds 60 from 190 km/h on.
    front = _wheel("225/40 R19 93Y XL", "8J x 19 H2 ET30", 280, bolt_circle="5x112", centre_bore_mm=66.6)
    rear = _wheel("255/35 R19 96Y XL", "9J x 19 H2 ET38", 290, bolt_circle="5x112", centre_bore_mm=66.6)
    hub = {"bolt_circle": "5x112", "centre_bore_mm": 66.6}
    made = _vehicle(
        ("M1", 250, "rear"),
        (2080, "2019-05-20"),
        _axle(1010, front, hub=hub, kerb_axle_mass_kg=810, track_mm=1548),
        _axle(1130, rear, hub=hub, kerb_axle_mass_kg=800, track_mm=1552),
    )
    return made | {"wheelbase_mm": 2810}


def _suv() -> Json:
    # 875 kg at 250 kPa: 600 kg need 156; V at 210 km/h adds 30.
    fitted = ("235/60 R18 103V", "7.5J x 18 H2 ET45")
    hub: dict[str, float | str] = {"bolt_circle": "5x112", "centre_bore_mm": 66.6}
    return _vehicle(
        ("M1G", 210, "all"),
        (2270, "2020-09-02"),
        _axle(1150, _wheel(*fitted, 230, load_rating_kg=750, **hub), hub=hub),
        _axle(1200, _wheel(*fitted, 230, load_rating_kg=750, **hub), hub=hub),
    )


def _all_wheel_drive_estate() -> Json:
    # 750 kg at 290 kPa: 565 kg need 204, 600 kg need 220; W at 235 km/h adds 45.
    fitted = ("225/50 R17 98W XL", "7.5J x 17 H2 ET47")
    known = {
        "hub": {"bolt_circle": "5x112", "centre_bore_mm": 66.6},
        "clearance": {"inboard_mm": 18, "outboard_mm": 14, "radial_mm": 30},
        "min_rim_diameter_in": 16,
    }
    return _vehicle(
        ("M1", 235, "all"),
        (2230, "2018-11-06"),
        _axle(1130, _wheel(*fitted, 260), **known),
        _axle(1200, _wheel(*fitted, 270), **known),
    )


def _electric() -> Json:
    # 1,000 kg at 290 kPa: 700 kg need 186, 780 kg need 213; W at 200 km/h adds 10.
    fitted = ("HL255/45 R20 108W", "8.5J x 20 H2 ET40")
    hub = {"bolt_circle": "5x114.3", "centre_bore_mm": 67.1}
    stated: dict[str, float | str] = {**hub, "load_rating_kg": 850}
    return _vehicle(
        ("M1", 200, "rear"),
        (2850, "2024-02-19"),
        _axle(1400, _wheel(*fitted, 260, **stated), hub=hub),
        _axle(1560, _wheel(*fitted, 270, **stated), hub=hub),
    )


def _twin_van() -> Json:
    # Single 975 kg against 925, twin 925 kg against 0.25 x 2,600 = 650; 445 and 306 kPa of the 475 on the sidewall.
    # The two tyres of a twin stand 2 x 110 mm apart, a new one is 196 mm wide, 204 with growth.
    fitted = ("195/75 R16C 107/105R", "5.5J x 16 H2 ET110")
    rim: dict[str, float | str] = {"bolt_circle": "6x205", "centre_bore_mm": 161, "load_rating_kg": 1000}
    return _vehicle(
        ("N1", 140, "rear"),
        (3500, "2019-01-22"),
        _axle(1850, _wheel(*fitted, 475, reference_pressure_kpa=475, **rim)),
        _axle(2600, _wheel(*fitted, 400, reference_pressure_kpa=475, **rim), wheels_per_side=2),
    )


def _camper() -> Json:
    # 1,320 kg against 1,050 and 1,200; the pressure that belongs to the index is on the sidewall, nobody noted it.
    fitted = ("225/75 R16CP 118R", "6J x 16 H2 ET68")
    return _vehicle(
        ("M1", 130, "front"),
        (4000, "2017-07-11"),
        _axle(2100, _wheel(*fitted, 500, bolt_circle="5x130", centre_bore_mm=78.1)),
        _axle(2400, _wheel(*fitted, 550, bolt_circle="5x130", centre_bore_mm=78.1)),
    )


def _pick_up() -> Json:
    # Load range E: 1,400 kg at 550 kPa; with the exponent 0.7 of LT tyres 875 kg need 281 kPa, 650 kg need 184.
    fitted = ("LT245/75 R16 120/116S E", "7J x 16 H2 ET30")
    return _vehicle(
        ("N1", 160, "all"),
        (2910, "2015-10-30"),
        _axle(1300, _wheel(*fitted, 260, bolt_circle="6x139.7", centre_bore_mm=106.1)),
        _axle(1750, _wheel(*fitted, 320, bolt_circle="6x139.7", centre_bore_mm=106.1)),
    )


def _caravan() -> Json:
    # A tandem: 850 kg at 450 kPa against 750 kg a wheel, which need 385.
    fitted = ("185 R14C 102/100P", "5.5J x 14 H2 ET30")
    wheel = _wheel(*fitted, 450, reference_pressure_kpa=450, bolt_circle="5x112", centre_bore_mm=66.6)
    return _vehicle(("O2", 100, None), (2900, "2012-04-03"), _axle(1500, wheel), _axle(1500, copy.deepcopy(wheel)))


def _small_city_car() -> Json:
    # 437 kg at 250 kPa: 345 kg need 186, 320 kg need 169; T adds nothing.
    fitted = ("165/65 R14 79T", "5J x 14 H2 ET35")
    return _vehicle(
        ("M1", 160, "front"),
        (1290, "2014-06-27"),
        _axle(690, _wheel(*fitted, 220, bolt_circle="4x100", centre_bore_mm=54.1)),
        _axle(640, _wheel(*fitted, 210, bolt_circle="4x100", centre_bore_mm=54.1)),
    )


def _classic() -> Json:
    # 425 kg at 250 kPa: 310 kg need 168, 350 kg need 196. Rims of that time have no hump.
    fitted = ("155 R 13 78S", "4.5J x 13 ET38")
    return _vehicle(
        ("M1", 145, "rear"),
        (1240, "1974-05-08"),
        _axle(620, _wheel(*fitted, 180)),
        _axle(700, _wheel(*fitted, 210)),
    )


def _worn() -> Json:
    # 615 kg at 250 kPa: 510 kg need 198, 450 kg need 169; V at 200 km/h adds 24.
    fitted = ("205/55 R16 91V", "6.5J x 16 H2 ET46")
    back: dict[str, float | str] = {"bolt_circle": "5x112", "centre_bore_mm": 57.1}
    return _vehicle(
        ("M1", 200, "front"),
        (1870, "2013-08-16"),
        _axle(1020, _wheel(*fitted, 240, tread_depth_mm=2.5, **back)),
        _axle(900, _wheel(*fitted, 220, tread_depth_mm=4.0, **back)),
    )


_MAKERS = {
    "hatch": _hatch,
    "staggered saloon": _staggered_saloon,
    "SUV": _suv,
    "all-wheel-drive estate": _all_wheel_drive_estate,
    "electric, HL tyres": _electric,
    "van, twin wheels": _twin_van,
    "camper": _camper,
    "pick-up": _pick_up,
    "caravan": _caravan,
    "small city car": _small_city_car,
    "classic": _classic,
    "worn tyres": _worn,
}
NAMES = tuple(_MAKERS)


def vehicle(name: str) -> Json:
    """Return one of the twelve, anew each time."""
    return _MAKERS[name]()
