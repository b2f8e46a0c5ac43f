"""Generated requests: plausible changes on a saloon, and anything that the wire model admits."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from service.rules.reader import pack_ids
from tests.support.cases import ABSENT, Json, changed, saloon

PLAUSIBLE_TYRES = (
    "205/55 R16 91V",
    "205/55 R16 94W XL",
    "215/55 R17 98W XL",
    "225/45 R17 91W",
    "225/45 R17 94W XL",
    "235/45 R17 94Y",
    "245/40 R18 97Y XL",
    "225/40 R18 92Y XL",
    "255/35 R19 96Y XL",
    "285/30 R19 98Y XL",
    "225/40 R19 93Y XL",
    "275/35 ZR18 (95Y)",
    "225/45 ZR17",
    "195/65 R15 91T",
    "195/65 R15",
    "185/65 R15 88H",
    "155 R13 78S",
    "175 R16 88S",
    "HL245/40 R20 105Y",
    "P215/65 R15 95T",
    "LT235/85 R16 120/116Q E",
    "31x10.50 R15LT 109R",
    "215/65 R16C 109/107T (108/106T)",
    "195/70 R15C 104/102R",
    "205/70 D15 96T",
    "T125/80 D16 97M",
    "235/75 R15 105S M+S",
    "245/45 R18 100V M+S 3PMSF",
)
PLAUSIBLE_RIMS = (
    "6.5J x 16 H2 ET45",
    "7J x 17 H2 ET45",
    "7.5J x 17 H2 ET45",
    "7.5J x 17 ET38",
    "8J x 17 H2 ET52",
    "8J x 18 H2 ET45",
    "8J x 18 H2 ET30",
    "9J x 19 H2 ET40",
    "10J x 19 H2 ET28",
    "8J x 19 H2 ET45",
    "8J x 18",
    "6J x 15 H2 ET40",
    "5.5J - 16 ET60",
    "5J x 13 H2 ET40",
    "10J x 18 H2 ET20",
    "8.5J x 20 H2 ET35",
)


def numbers(low: float, high: float, step: float = 0.1) -> st.SearchStrategy[float]:
    """Return numbers between two ends, in steps as a caller would write them."""
    return st.integers(round(low / step), round(high / step)).map(lambda count: round(count * step, 4))


def _maybe(values: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """Return a value, or often enough that the field is left out or stays as it is."""
    return st.one_of(values, values, st.just(ABSENT))


_AXLE_FIELDS: dict[str, st.SearchStrategy[Any]] = {
    "/vehicle/{axle}/fitted/tyre/size": st.sampled_from(PLAUSIBLE_TYRES),
    "/vehicle/{axle}/fitted/rim/size": st.sampled_from(PLAUSIBLE_RIMS),
    "/vehicle/{axle}/fitted/pressure_kpa": _maybe(numbers(180, 320, 5)),
    "/vehicle/{axle}/fitted/tyre/tread_depth_mm": _maybe(numbers(1, 9)),
    "/vehicle/{axle}/max_axle_mass_kg": numbers(600, 1600, 10),
    "/vehicle/{axle}/kerb_axle_mass_kg": st.just(ABSENT),
    "/vehicle/{axle}/track_mm": _maybe(numbers(1300, 1700, 1)),
    "/vehicle/{axle}/wheels_per_side": st.sampled_from((1, 1, 2)),
    "/vehicle/{axle}/hub/bolt_circle": _maybe(st.sampled_from(("5x112", "5x114.3", "4x100"))),
    "/vehicle/{axle}/hub/centre_bore_mm": _maybe(numbers(54, 74)),
    "/vehicle/{axle}/clearance/inboard_mm": _maybe(numbers(0, 40, 1)),
    "/vehicle/{axle}/clearance/outboard_mm": _maybe(numbers(0, 40, 1)),
    "/vehicle/{axle}/clearance/radial_mm": _maybe(numbers(0, 60, 1)),
    "/vehicle/{axle}/min_rim_diameter_in": _maybe(numbers(13, 20, 0.5)),
    "/candidate/{axle}/tyre/size": st.sampled_from(PLAUSIBLE_TYRES),
    "/candidate/{axle}/tyre/tread_depth_mm": _maybe(numbers(1, 9)),
    "/candidate/{axle}/tyre/overall_diameter_mm": numbers(560, 700, 1),
    "/candidate/{axle}/tyre/section_width_mm": numbers(180, 300, 1),
    "/candidate/{axle}/tyre/rolling_circumference_mm": numbers(1700, 2150, 1),
    "/candidate/{axle}/tyre/reference_pressure_kpa": numbers(220, 500, 5),
    "/candidate/{axle}/rim/size": st.sampled_from(PLAUSIBLE_RIMS),
    "/candidate/{axle}/rim/bolt_circle": _maybe(st.sampled_from(("5x112", "5x114.3", "4x112"))),
    "/candidate/{axle}/rim/centre_bore_mm": _maybe(numbers(54, 74)),
    "/candidate/{axle}/rim/load_rating_kg": _maybe(numbers(400, 900, 10)),
    "/candidate/{axle}/pressure_kpa": _maybe(numbers(180, 320, 5)),
}
_CAR_FIELDS: dict[str, st.SearchStrategy[Any]] = {
    "/vehicle/max_speed_kmh": numbers(120, 310, 1),
    "/vehicle/driven_axle": _maybe(st.sampled_from(("front", "rear", "all"))),
    "/vehicle/category": st.sampled_from(("M1", "N1", "M1G")),
    "/vehicle/speedometer": _maybe(
        st.builds(lambda shown: {"displayed_kmh": shown, "true_kmh": 100}, numbers(96, 118))
    ),
    "/vehicle/centre_of_gravity_height_mm": _maybe(numbers(450, 800, 10)),
    "/vehicle/max_mass_kg": numbers(1200, 3500, 50),
    "/vehicle/built": st.sampled_from(("1995-06-01", "2004-06-01", "2019-05-20")),
    "/vehicle/towing": st.just(value=True),
    "/season": st.sampled_from(("summer", "winter")),
    "/date": st.sampled_from(("2023-01-15", "2026-11-24")),
    "/rule_pack": st.sampled_from(pack_ids()),
}


def stories() -> st.SearchStrategy[Json]:
    """Return requests of a workshop: the saloon with some fields changed, some left out."""
    fields = {
        pointer.format(axle=name): values for name in ("front", "rear") for pointer, values in _AXLE_FIELDS.items()
    } | _CAR_FIELDS
    return st.lists(st.sampled_from(sorted(fields)), max_size=12, unique=True).flatmap(
        lambda pointers: st.fixed_dictionaries({pointer: fields[pointer] for pointer in pointers}).map(
            lambda changes: changed(saloon(), changes)
        )
    )
