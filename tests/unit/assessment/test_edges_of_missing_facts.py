"""Each fact that may be missing: its two plausible ends, and that to put it in is to have stated it.

The ends are those of cars on the road (common practice, no source), by hand from the Larch 200: its axles may weigh
960 and 1,000 kg, so that their kerb mass is 624 to 912 and 650 to 950 kg (65 to 95 %), and a wheel is rated for 0.8 to
1.3 of its half. An assumed top speed or mass is the most there may be; the least is 0.6 of it.
"""

import pytest

from service.assessment.answer.missing_facts import missing_facts
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

# Another rim, smaller than the present one, so that every question is asked; every tyre is another, too.
OTHER = ("225/55 R16 95W", "7J x 16 H2 ET45")
VEHICLE = {"speedometer": (100, 110), "wheelbase_mm": (2400, 3000), "centre_of_gravity_height_mm": (450, 750)}
AXLES = {
    "kerb_axle_mass_kg": ((624, 912), (650, 950)),
    "track_mm": (1400, 1650),
    "clearance/inboard_mm": (0, 60),
    "clearance/outboard_mm": (0, 60),
    "clearance/radial_mm": (0, 60),
    "min_rim_diameter_in": (8, 30),
    "fitted/pressure_kpa": (200, 300),
    "hub/centre_bore_mm": (50, 80),
}
WHEELS = {"tyre/tread_depth_mm": (2, 8), "rim/load_rating_kg": ((384, 624), (400, 650)), "rim/centre_bore_mm": (50, 80)}


def _rows():
    for field, ends in VEHICLE.items():
        yield f"/vehicle/{field}", ends
    for place, fields in (("vehicle", AXLES), ("candidate", WHEELS)):
        for field, ends in fields.items():
            for number, axle in enumerate(("front", "rear")):
                yield f"/{place}/{axle}/{field}", ends[number] if isinstance(ends[0], tuple) else ends


ROWS = dict(_rows())
ASSUMED = {
    "/vehicle/max_speed_kmh": (0.6 * 270, 270),
    "/vehicle/front/max_axle_mass_kg": (0.6 * 1340, 1340),
    "/vehicle/rear/max_axle_mass_kg": (0.6 * 1340, 1340),
}
# Rated for more than the tyres carry; else the rims were the weaker ones.
STRONG = on_both_axles({"/vehicle/{axle}/fitted/rim/load_rating_kg": 900})


def asked(pointer):
    """Return a request that lacks one fact alone."""
    return changed(saloon(OTHER, OTHER), STRONG | {pointer: ABSENT})


def missing_of(pointer):
    """Return the one fact that such a request lacks, and its case."""
    case = check(asked(pointer)).case
    (found,) = missing_facts(case)
    return found, case


def stated(pointer, value):
    """Return the field and value by which a caller states a fact."""
    if pointer == "/vehicle/speedometer":
        return {pointer: {"displayed_kmh": value, "true_kmh": 100.0}}
    return {pointer: value}


@pytest.mark.parametrize(("pointer", "ends"), ROWS.items(), ids=ROWS)
def test_a_missing_fact_is_varied_between_its_plausible_ends(pointer, ends):
    found, _ = missing_of(pointer)
    assert (found.pointer, (found.low, found.high)) == (pointer, pytest.approx(ends))


@pytest.mark.parametrize("pointer", ROWS)
def test_to_put_a_fact_in_is_to_have_stated_it(pointer):
    found, case = missing_of(pointer)
    for value in (found.low, found.high):
        assert repr(found.put(case, value)) == repr(check(changed(asked(pointer), stated(pointer, value))).case)


@pytest.mark.parametrize(("pointer", "ends"), ASSUMED.items(), ids=ASSUMED)
def test_what_is_assumed_may_be_less_and_is_put_in_as_stated(pointer, ends):
    case = check(changed(saloon(), STRONG | {pointer: ABSENT})).case
    (found,) = [each for each in missing_facts(case) if each.pointer == pointer]
    assert (found.low, found.high) == pytest.approx(ends)
    put = found.put(case, found.low).vehicle
    assert not put.assumes
    told = check(changed(saloon(), STRONG | {pointer: found.low})).case.vehicle
    assert (put.max_speed_kmh, put.front.max_axle_mass_kg, put.rear.max_axle_mass_kg) == (
        told.max_speed_kmh,
        told.front.max_axle_mass_kg,
        told.rear.max_axle_mass_kg,
    )


HUB, NOW, NEW = "/vehicle/rear/hub", "/vehicle/rear/fitted/rim", "/candidate/rear/rim"


# The same circle first, then one that no wheel has beside it.
@pytest.mark.parametrize(
    ("absent", "given", "ends"),
    [
        ((HUB, NOW), {NEW: "5x112"}, ({HUB: "5x112"}, {HUB: "4x100"})),
        ((HUB, NOW), {NEW: "4x100"}, ({HUB: "4x100"}, {HUB: "5x112"})),
        ((HUB, NOW), {NEW: "5x120"}, ({HUB: "5x120"}, {HUB: "5x112"})),
        ((HUB, NOW, NEW), {}, ({HUB: "5x112", NEW: "5x112"}, {HUB: "4x100", NEW: "5x112"})),
        ((NEW,), {HUB: "5x112"}, ({NEW: "5x112"}, {NEW: "4x100"})),
        ((HUB, NEW), {NOW: "4x100"}, ({NEW: "4x100"}, {NEW: "5x112"})),
    ],
)
def test_a_circle_that_nobody_read_is_the_other_one_or_is_not(absent, given, ends):
    bare = {f"{place}/bolt_circle": ABSENT for place in absent}
    request = changed(saloon(rear=OTHER), bare | {f"{place}/bolt_circle": circle for place, circle in given.items()})
    case = check(request).case
    (found,) = missing_facts(case)
    for at, end in zip((found.low, found.high), ends, strict=True):
        told = changed(request, {f"{place}/bolt_circle": circle for place, circle in end.items()})
        assert repr(found.put(case, at)) == repr(check(told).case)


def test_a_hub_that_nobody_measured_is_held_against_a_bore_where_the_rim_states_none():
    bare = {f"{place}/centre_bore_mm": ABSENT for place in (HUB, NOW, NEW)}
    request = changed(saloon(rear=OTHER), bare)
    case = check(request).case
    (found,) = missing_facts(case)
    # The two ends lie on either side of it.
    for end in (50.0, 80.0):
        told = check(changed(request, {f"{HUB}/centre_bore_mm": end, f"{NEW}/centre_bore_mm": 65.0})).case
        assert repr(found.put(case, end)) == repr(told)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_sidewall_that_nobody_read_is_that_of_a_weak_or_of_a_strong_tyre(axle):
    pointer = f"/candidate/{axle}/tyre/size"
    request = changed(saloon(), {pointer: "225/45 R17"})
    case = check(request).case
    (found,) = missing_facts(case)
    assert found.pointer == f"/candidate/{axle}/tyre/load_index"
    for at, written in ((found.low, "50L"), (found.high, "120Y")):
        put, told = found.put(case, at), check(changed(request, {pointer: f"225/45 R17 {written}"})).case
        mine, theirs = (getattr(each.candidate, axle).tyre.designation for each in (put, told))
        assert (mine.load_index, mine.speed_symbol) == (theirs.load_index, theirs.speed_symbol)
