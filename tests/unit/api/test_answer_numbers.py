"""The figures of an answer to a check: reckoned by hand, and as fine as they are good for.

Sums: UN R30 para. 6.1 (heights rounded: 101, 98, 102 mm; rim codes 17 and 18: 432 and 457 mm; 0.4 of what the rim
differs from the theoretical one), 3.05 times the diameter (ETRTO), load indices 94, 97 and 99 (670, 730, 775 kg), UN
R39 5.3 (from the true speed to a tenth and 4 km/h more); all from memory. How many decimals are shown is the project's
choice.
"""

from __future__ import annotations

import pytest

from service.api.render.assessment_answer import assessment
from tests.support.cases import ABSENT, Json, answer, changed, check, saloon

UNLIKE = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET38"), ("255/40 R18 99Y XL", "8.5J x 18 H2 ET41"))
FITMENTS = [
    UNLIKE,
    saloon(("205/50 R17 93W XL", "7J x 17 H2 ET48"), ("225/50 R17 98W XL", "7.5J x 17 H2 ET43")),
    saloon(("235/45 R17 97W XL", "8J x 17 H2 ET35"), ("205/55 R16 94W XL", "6.5J x 16 H2 ET42")),
]
WHEEL = {
    "section_width_mm": 0,
    "section_height_mm": 0,
    "overall_diameter_mm": 1,
    "rolling_circumference_mm": 1,
    "revolutions_per_km": 1,
    "load_capacity_kg": 1,
    "load_required_kg": 1,
    "speed_capability_kmh": 0,
    "minimum_pressure_kpa": 0,
    "pressure_kpa": 0,
    "static_loaded_radius_mm": 1,
    "cornering_stiffness_n_per_deg": 0,
    "aquaplaning_onset_kmh": 0,
    "wheel_mass_kg": 1,
    "wheel_inertia_kg_m2": 2,
    "rolling_circumference_band_mm": 1,
    "length_mm": 0,
    "width_mm": 0,
    "area_cm2": 0,
    "wet_reserve_percent": 1,
}
CHANGE = {
    "overall_diameter_percent": 2,
    "overall_diameter_mm": 1,
    "rolling_circumference_percent": 2,
    "section_width_mm": 1,
    "inboard_edge_mm": 1,
    "outboard_edge_mm": 1,
    "track_mm": 1,
    "scrub_radius_mm": 1,
    "ride_height_mm": 1,
    "load_capacity_percent": 1,
    "cornering_stiffness_percent": 1,
    "aquaplaning_onset_percent": 1,
    "heat_reserve_percent": 1,
    "peak_grip_percent": 1,
    "wheel_mass_kg": 1,
    "wheel_inertia_percent": 1,
}
# Of which no fitment here has a fraction, or that are stated whole.
ALWAYS_WHOLE = {"overall_diameter_mm", "load_capacity_kg", "load_required_kg", "track_mm", "scrub_radius_mm"}


@pytest.fixture(scope="module")
def unlike() -> Json:
    return answer(check(UNLIKE))


def weighed(request: Json) -> Json:
    masses = {}
    for place in ("/vehicle/front/fitted", "/vehicle/rear/fitted", "/candidate/front", "/candidate/rear"):
        masses |= {f"{place}/tyre/mass_kg": 10.37, f"{place}/rim/mass_kg": 11.11}
    return changed(request, masses | {"/candidate/front/tyre/mass_kg": 11.81})


def numbers(part: Json, prefix: str = "") -> dict[str, list[float]]:
    """Return all numbers by the nearest name that is none of an estimate."""
    found: dict[str, list[float]] = {}
    for name, value in part.items():
        key = prefix if name in ("value", "low", "high") else name
        if isinstance(value, dict):
            for inner, more in numbers(value, key).items():
                found.setdefault(inner, []).extend(more)
        elif isinstance(value, float | int) and not isinstance(value, bool):
            found.setdefault(key, []).append(float(value))
    return found


def decimals(number: float) -> int:
    return next(each for each in range(15) if abs(round(number, each) - number) < 1e-9 * max(1.0, abs(number)))


@pytest.mark.parametrize(("part", "fine"), [("proposed", WHEEL), ("change", CHANGE)])
def test_a_figure_has_as_many_decimals_as_it_is_good_for(part, fine):
    found: dict[str, set[int]] = {}
    for request in map(weighed, FITMENTS):
        for axle in answer(check(request))["axles"].values():
            for name, many in numbers(axle[part]).items():
                found.setdefault(name, set()).update(map(decimals, many))
    assert set(found) == set(fine)
    for name, digits in fine.items():
        assert max(found[name]) <= digits, name
        assert max(found[name]) == digits or name in ALWAYS_WHOLE, name


@pytest.mark.parametrize(
    ("axle", "told"),
    [
        (
            "front",
            {
                "overall_diameter_mm": 653.0 - 634.0,
                # 19 of 634.
                "overall_diameter_percent": 3.0,
                "rolling_circumference_percent": 3.0,
                # 245 + 0.4 (203.2 - 208.25) beside 225 + 0.4 (190.5 - 191.25).
                "section_width_mm": 18.3,
                # Half of that, with 7 mm less offset.
                "inboard_edge_mm": 2.1,
                "outboard_edge_mm": 16.1,
                "track_mm": 14.0,
                "scrub_radius_mm": 7.0,
                # 60 of 670.
                "load_capacity_percent": 9.0,
            },
        ),
        (
            "rear",
            {
                "overall_diameter_mm": 661.0 - 634.0,
                # 27 of 634.
                "overall_diameter_percent": 4.26,
                "rolling_circumference_percent": 4.26,
                # 255 + 0.4 (215.9 - 216.75) beside 224.7.
                "section_width_mm": 30.0,
                # Half of 29.96, with 4 mm less offset.
                "inboard_edge_mm": 11.0,
                "outboard_edge_mm": 19.0,
                "track_mm": 8.0,
                # 105 of 670.
                "load_capacity_percent": 15.7,
            },
        ),
    ],
)
def test_changes_are_those_of_a_sum_by_hand(unlike, axle, told):
    found = unlike["axles"][axle]["change"]
    assert {name: found[name] for name in told} == told


def test_figures_of_a_wheel_are_those_of_a_sum_by_hand(unlike):
    wheel = unlike["axles"]["front"]["present"]
    told = {
        "section_width_mm": 225.0,
        "section_height_mm": 101.0,
        "overall_diameter_mm": 634.0,
        "rolling_circumference_mm": 1933.7,
        # 1 km in metres of circumference.
        "revolutions_per_km": 517.1,
        "load_capacity_kg": 670.0,
        "load_required_kg": 480.0,
        "speed_capability_kmh": 270.0,
        "pressure_kpa": 250.0,
    }
    assert {name: wheel[name] for name in told} == told
    band = wheel["rolling_circumference_band_mm"]
    assert band["low"] < told["rolling_circumference_mm"] < band["high"]
    proposed = unlike["axles"]["rear"]["proposed"]
    assert (proposed["load_capacity_kg"], proposed["load_required_kg"]) == (775.0, 500.0)
    assert "load_required_kg" not in _bare()["axles"]["front"]["present"]


def _bare() -> Json:
    return answer(check(changed(saloon(), {"/vehicle/front/max_axle_mass_kg": ABSENT})))


def test_figures_of_the_vehicle_are_those_of_a_sum_by_hand(unlike):
    vehicle = unlike["vehicle"]
    # The rear wheels are driven: 661 of 634 mm. The front grows to 653.
    assert vehicle["speedometer"]["circumference_ratio"] == 1.0426
    assert vehicle["speedometer"]["lead_percent"] == 3.09
    # From none to 16 of 120 km/h at the greatest test speed, on wheels that roll 4.26 per cent further.
    assert vehicle["speedometer"]["least_lead_percent"] == 4.26
    assert vehicle["speedometer"]["greatest_lead_percent"] == 18.16
    assert vehicle["axle_circumference_ratio_change_percent"] == -1.21
    assert vehicle["engine_speed_change_percent"] == vehicle["odometer_change_percent"] == -4.08
    # It shows 100 at a true 97; then 4.26 per cent less.
    for reading, (true, before, after, least, most) in zip(
        vehicle["speedometer"]["readings"],
        ((40.0, 41.2, 39.6, 40.0, 48.0), (80.0, 82.5, 79.1, 80.0, 92.0), (120.0, 123.7, 118.7, 120.0, 136.0)),
        strict=True,
    ):
        assert reading == {
            "true_kmh": true,
            "displayed_before_kmh": before,
            "displayed_after_kmh": after,
            "least_lawful_kmh": least,
            "greatest_lawful_kmh": most,
        }
    assert {decimals(each) for each in vehicle["balance"]["understeer_gradient_change_deg_per_g"].values()} == {2}


def test_a_short_answer_has_the_pressure_to_set_and_the_changes_that_a_shop_shows(unlike):
    short = assessment(check(UNLIKE), "short")["axles"]
    for axle in ("front", "rear"):
        full = unlike["axles"][axle]["change"]
        names = ("overall_diameter_percent", "section_width_mm", "inboard_edge_mm", "outboard_edge_mm", "track_mm")
        assert short[axle]["change"] == {name: full[name] for name in names}
        proposed = short[axle]["proposed"]
        assert proposed["tyre"] == UNLIKE["candidate"][axle]["tyre"]["size"]
        # Asked for and enough: nothing else is to be set.
        assert proposed["set_pressure_kpa"] == UNLIKE["candidate"][axle]["pressure_kpa"]
        assert "set_pressure_kpa" not in short[axle]["change"]


def test_a_car_has_a_braking_distance_of_its_own_and_a_trailer_has_its_tractors():
    """The contract has `braking_distance_percent` of a vehicle; that a trailer stops with what tows it: no source."""
    car = answer(check(UNLIKE))["vehicle"]["braking_distance_percent"]
    assert car["low"] <= car["value"] <= car["high"]
    trailer = changed(saloon(), {"/vehicle/category": "O2", "/vehicle/max_mass_kg": 1900.0})
    assert "braking_distance_percent" not in answer(check(trailer))["vehicle"]


def test_what_is_mostly_whole_has_a_tenth_where_it_is_not():
    """A V tyre keeps 92.5 % of its load at 235 km/h (UN R30 para. 2.31, from memory); load index 91 is 615 kg."""
    asked = {
        "/vehicle/max_speed_kmh": 235.0,
        "/vehicle/front/max_axle_mass_kg": 961.34,
        "/candidate/front/tyre/size": "245/40 R18 91V",
        "/candidate/front/tyre/overall_diameter_mm": 652.37,
        "/candidate/front/rim": {"width_in": 8.0, "diameter_in": 18.0, "flange": "J", "offset_mm": 41.23},
        "/candidate/front/pressure_kpa": 263.4,
    }
    found = check(changed(UNLIKE, asked))
    front = answer(found)["axles"]["front"]
    # Half of the axle's mass, 0.925 times 615 kg, 634 mm before; the face moves 45 - 41.23 mm on each side.
    assert front["proposed"]["overall_diameter_mm"] == 652.4
    assert front["proposed"]["load_required_kg"] == 480.7
    assert front["proposed"]["load_capacity_kg"] == 568.9
    told = {"overall_diameter_mm": 18.4, "track_mm": 7.5, "scrub_radius_mm": 3.8}
    assert {name: front["change"][name] for name in told} == told
    # A short answer is as fine; a gauge shows no tenths of a kilopascal.
    short = assessment(found, "short")["axles"]["front"]
    assert (short["change"]["track_mm"], short["proposed"]["set_pressure_kpa"]) == (7.5, 263.0)


def estimates(part: Json, at: str = "") -> dict[str, tuple[float, float, float]]:
    found = {at: (part["low"], part["value"], part["high"])} if {"low", "value", "high"} <= set(part) else {}
    for name, inner in part.items():
        if isinstance(inner, dict):
            found |= estimates(inner, f"{at}/{name}")
    return found


@pytest.mark.parametrize("asked", FITMENTS, ids=["unlike", "taller", "mixed"])
def test_an_estimate_lies_within_its_band(asked):
    whole = answer(check(weighed(asked)))
    found = estimates({"axles": whole["axles"], "vehicle": whole["vehicle"]})
    assert len(found) > 10
    assert [at for at, (low, value, high) in found.items() if not low <= value <= high] == []
