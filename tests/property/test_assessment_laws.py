"""Laws of the assessment: the same fitment, present and proposed swapped, bands, monotonic answers, determinism."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.core.findings import Estimate
from tests.support.cases import answer, at, changed, check, finding, saloon
from tests.support.designations import rim_with, with_service
from tests.support.stories import PLAUSIBLE_TYRES, stories

AXLES = ("front", "rear")
CODES_OF_CHANGE = (
    "load.below_present",
    "diameter.deviation",
    "diameter.axle_ratio",
    "clearance.inboard",
    "clearance.outboard",
    "clearance.radial",
    "track.change",
    "balance.change",
    "balance.grip_order",
    "wet.aquaplaning",
    "wet.axle_order",
)


def unchanged(request):
    """Return the request with what is fitted now as its candidate."""
    return changed(request, {f"/candidate/{name}": at(request, f"/vehicle/{name}/fitted") for name in AXLES})


def swapped(request):
    """Return the request with present and proposed in each other's place."""
    return changed(
        request,
        {f"/candidate/{name}": at(request, f"/vehicle/{name}/fitted") for name in AXLES}
        | {f"/vehicle/{name}/fitted": at(request, f"/candidate/{name}") for name in AXLES},
    )


def numbers_of(part):
    """Return every number in a part of an answer."""
    if isinstance(part, dict):
        return [number for each in part.values() for number in numbers_of(each)]
    return [part] if isinstance(part, (int, float)) else []


@given(stories())
def test_the_same_fitment_changes_nothing_at_all(request):
    shown = answer(check(unchanged(request)))
    assert not any(numbers_of({name: shown["axles"][name]["change"] for name in AXLES}))


@given(stories())
def test_the_same_fitment_changes_nothing_before_rounding_either(request):
    car = check(unchanged(request)).car
    for change in (car.front.change, car.rear.change):
        # The ratios are what the stiffness is made of, which is looked at by itself.
        plain = change._replace(
            cornering_stiffness=0.0, aquaplaning_onset_percent=0.0, stiffness_ratios=0.0, same_rim=0
        )
        assert change.same_rim == 1.0
        assert not any(number for number in plain if not math.isnan(number))
        assert all(number in (0.0, 1.0) for number in change.cornering_stiffness if not math.isnan(number))
        assert not any(number for number in change.aquaplaning_onset_percent if not math.isnan(number))


@given(stories())
def test_the_same_fitment_changes_nothing_on_the_vehicle(request):
    shown = answer(check(unchanged(request)))["vehicle"]
    assert not any(numbers_of(shown["balance"].get("understeer_gradient_change_deg_per_g", {})))
    assert not any(value for name, value in shown.items() if name.endswith("_change_percent"))


@given(stories())
def test_the_same_fitment_raises_no_question_of_change(request):
    found = check(unchanged(request))
    raised = [each.code for each in found.findings if each.code in CODES_OF_CHANGE and each.outcome in (1, 3)]
    assert raised == []


@pytest.mark.parametrize(
    "name",
    ["overall_diameter_mm", "section_width_mm", "inboard_edge_mm", "outboard_edge_mm", "track_mm", "offset_mm"],
)
@given(request=stories())
def test_swapping_present_and_proposed_turns_a_change_round(name, request):
    there, back = check(request).car, check(swapped(request)).car
    for axle in AXLES:
        one, other = (getattr(getattr(car, axle).change, name) for car in (there, back))
        assert (math.isnan(one) and math.isnan(other)) or one == pytest.approx(-other)


@given(stories())
def test_swapping_present_and_proposed_inverts_the_circumference(request):
    there, back = check(request).car.change, check(swapped(request)).car.change
    product = there.driven_circumference_ratio * back.driven_circumference_ratio
    assert math.isnan(product) or product == pytest.approx(1.0)


def is_at_given_pressure(car):
    """Return whether all wheels run at the 250 kPa that are given: a pressure that is wrong is set right instead."""
    return all(
        wheel.behaviour.pressure_kpa == 250.0 for view in (car.front, car.rear) for wheel in (view.now, view.then)
    )


@given(stories())
def test_swapping_present_and_proposed_turns_the_balance_round_where_both_have_the_same_level(request):
    """The level is taken from the present load index, so both fitments are given one index and the same pressure."""
    same = {}
    for name in AXLES:
        for place in (f"/candidate/{name}", f"/vehicle/{name}/fitted"):
            same[f"{place}/tyre/size"] = with_service(at(request, f"{place}/tyre/size"), 100, "Y")
            same[f"{place}/pressure_kpa"] = 250
    request = changed(request, same)
    cars = [check(each).car for each in (request, swapped(request))]
    assume(all(map(is_at_given_pressure, cars)))
    there, back = (car.change.gradient_deg_per_g.value for car in cars)
    assert math.isnan(there) == math.isnan(back)
    assert math.isnan(there) or there * back <= 1e-12


@given(stories())
def test_swapping_present_and_proposed_inverts_stiffness_at_given_pressures(request):
    places = [f"{place}/pressure_kpa" for name in AXLES for place in (f"/candidate/{name}", f"/vehicle/{name}/fitted")]
    request = changed(request, dict.fromkeys(places, 250))
    there, back = check(request).car, check(swapped(request)).car
    assume(is_at_given_pressure(there) and is_at_given_pressure(back))
    for axle in AXLES:
        product = (
            getattr(there, axle).change.cornering_stiffness.value * getattr(back, axle).change.cornering_stiffness.value
        )
        assert math.isnan(product) or product == pytest.approx(1.0)


def bands_in(part):
    """Return every estimate in a part of an answer."""
    if isinstance(part, dict):
        if {"value", "low", "high"} <= part.keys():
            return [Estimate(part["value"], part["low"], part["high"])]
        return [band for each in part.values() for band in bands_in(each)]
    return []


@given(stories())
def test_every_band_holds_its_value(request):
    bands = bands_in(answer(check(request)))
    assert bands
    assert all(band.low <= band.value <= band.high for band in bands)


@given(stories(), st.integers(0, 12), st.integers(0, 12))
def test_widening_a_rim_never_narrows_the_tyre(request, one, other):
    pointer = "/candidate/rear/rim/size"
    narrow, wide = (
        check(changed(request, {pointer: rim_with(at(request, pointer), width_in=4.0 + 0.5 * each)})).car.rear
        for each in sorted((one, other))
    )
    assert not wide.then.geometry.section_width_mm < narrow.then.geometry.section_width_mm
    assert not wide.then.geometry.outer_edge_mm < narrow.then.geometry.outer_edge_mm


@given(stories(), st.integers(0, 200), st.integers(0, 200), st.sampled_from("QTHVWY"))
def test_a_higher_load_index_never_carries_less(request, one, other, symbol):
    pointer = "/candidate/rear/tyre/size"
    # The commercial table splits at index 122, where a higher index does carry less at speed.
    assume("C" not in at(request, pointer) and "LT" not in at(request, pointer))
    low, high = (
        check(changed(request, {pointer: with_service(at(request, pointer), index, symbol)})).car.rear
        for index in sorted((one, other))
    )
    assert high.then.load.axle_capacity_kg >= low.then.load.axle_capacity_kg


@given(stories(), st.integers(100, 300), st.integers(100, 300))
def test_a_faster_vehicle_never_lets_a_tyre_carry_more(request, one, other):
    slow, fast = (
        check(changed(request, {"/vehicle/max_speed_kmh": speed})).car.rear.then.load.capacity_kg
        for speed in sorted((one, other))
    )
    assert not fast > slow


@given(st.sampled_from(PLAUSIBLE_TYRES), st.integers(600, 1500), st.integers(600, 1500))
def test_a_heavier_axle_never_asks_for_less_pressure(tyre, one, other):
    pressures = (
        check(
            changed(saloon(), {"/candidate/rear/tyre/size": tyre, "/vehicle/rear/max_axle_mass_kg": mass})
        ).car.rear.then.load.required_pressure_kpa
        for mass in sorted((one, other))
    )
    light, heavy = pressures
    assert not heavy < light


@given(stories())
def test_less_room_never_makes_a_better_finding(request):
    outcomes = []
    for room in (500, 40, 20, 5, 0):
        found = check(changed(request, {"/vehicle/rear/clearance/inboard_mm": room}))
        outcomes.append(finding(found, "clearance.inboard").outcome)
    assert outcomes == sorted(outcomes)


@settings(max_examples=50)
@given(stories())
def test_the_same_request_gives_the_same_answer(request):
    assert answer(check(request)) == answer(check(request))
