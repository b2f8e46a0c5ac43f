"""Sizes and places of a wheel, what it must carry, and what a change does to them; by hand.

UN R30, 6.1.1.1 (0.4 mm of width for a millimetre of rim, from the theoretical rim of 0.85 of the width), 6.1.2 (height)
and 6.1.4.2 (4 % of growth in width, from memory also in height); a flange is 12.7 mm (from memory). 225/45 R17 on 7.5
in at ET 45: 225 + 0.4 (190.5 - 191.25) = 224.7 mm wide, 634 mm high, 112.35 mm to either side of its middle. 245/40 R18
on 8 in at ET 40: 245 + 0.4 (203.2 - 208.25) = 242.98 mm, 457 + 2 x 98 = 653 mm.
"""

import math

import pytest

import service.assessment
from service.assessment.view.wheel_facts import WheelFacts
from service.core.numeric import known
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon
from tests.support.unchanging import data_classes, takes_another_value

REAR, NOW = "/candidate/rear", "/vehicle/rear/fitted"
WIDER = ("245/40 R18 97Y XL", "8J x 18 H2 ET40")
TWINS = {
    "/vehicle/category": "N1",
    "/vehicle/rear/wheels_per_side": 2,
    f"{NOW}/rim/size": "5.5J x 17 H2 ET120",
    f"{REAR}/rim/size": "5.5J x 17 H2 ET125",
}


def rear(changes, proposed=None):
    """Return the rear axle of the saloon after these changes."""
    return check(changed(saloon(rear=proposed), changes)).car.rear


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        # Width, diameter, inner and outer edge from the hub face, widest, the same grown, diameter grown.
        ({}, (224.7, 634, 157.35, 67.35, 224.7, 233.688, 642.08)),
        # 5 mm further out on a spacer.
        ({f"{REAR}/spacer_mm": 5}, (224.7, 634, 152.35, 72.35, 224.7, 233.688, 642.08)),
        # For snow one per cent more.
        ({f"{REAR}/tyre/size": "225/45 R17 94W XL M+S"}, (224.7, 634, 157.35, 67.35, 224.7, 233.688, 648.5008)),
        # On 9.5 in the rim is the wider, 241.3 + 25.4 mm; the tyre is 225 + 0.4 x 50.05 mm, 254.82 when grown.
        ({f"{REAR}/rim/size": "9.5J x 17 H2 ET45"}, (245.02, 634, 178.35, 88.35, 266.7, 266.7, 642.08)),
        # What was measured counts.
        ({f"{REAR}/tyre/section_width_mm": 230}, (230, 634, 160, 70, 230, 239.2, 642.08)),
        ({f"{REAR}/tyre/overall_diameter_mm": 640}, (224.7, 640, 157.35, 67.35, 224.7, 233.688, 648.32)),
    ],
)
def test_a_wheel_stands_where_its_offset_and_width_put_it(changes, expected):
    found = rear(changes).then.geometry
    told = (
        *(found.section_width_mm, found.overall_diameter_mm, found.inner_edge_mm, found.outer_edge_mm),
        *(found.widest_mm, found.grown_widest_mm, found.grown_diameter_mm),
    )
    assert told == pytest.approx(expected, abs=1e-6)
    assert math.isnan(found.twin_gap_mm)


@pytest.mark.parametrize(("measured", "rolls"), [(ABSENT, 3.05 * 634), (1950, 1950)])
def test_a_wheel_turns_as_often_as_its_circumference_goes_into_a_kilometre(measured, rolls):
    found = rear({f"{REAR}/tyre/rolling_circumference_mm": measured}).then.geometry
    assert found.rolling_circumference_mm == pytest.approx(rolls)
    assert found.revolutions_per_km == pytest.approx(1e6 / rolls)


def test_of_twins_the_outer_one_is_the_inner_one_turned_round():
    """225 + 0.4 (139.7 - 191.25) = 204.38 mm: 102.19 + 125 from the hub face both ways, 250 - 212.555 between them."""
    found = rear(TWINS)
    shape = found.then.geometry
    assert (shape.inner_edge_mm, shape.outer_edge_mm) == pytest.approx((227.19, 227.19))
    assert shape.twin_gap_mm == pytest.approx(250 - 1.04 * 204.38)
    # Both edges move out by the 5 mm of offset, and the middle between the two wheels stays.
    change = found.change
    assert (change.inboard_edge_mm, change.outboard_edge_mm, change.offset_mm) == pytest.approx((5, 5, 5))
    assert (change.track_mm, change.scrub_radius_mm) == (0, 0)


def test_a_wider_wheel_further_out_changes_by_its_halves_and_its_offset():
    change = rear({}, WIDER).change
    assert (change.section_width_mm, change.half_width_mm) == pytest.approx((18.28, 9.14))
    # 5 mm further out: 9.14 - 5 inboard, 9.14 + 5 outboard, 10 of track.
    assert (change.offset_mm, change.track_mm, change.scrub_radius_mm) == (-5, 10, 5)
    assert (change.inboard_edge_mm, change.outboard_edge_mm) == pytest.approx((4.14, 14.14))
    assert (change.overall_diameter_mm, change.radial_edge_mm) == (19, 9.5)
    assert change.overall_diameter_percent == pytest.approx(100 * 19 / 634)
    assert change.rolling_circumference_percent == pytest.approx(100 * 19 / 634)
    # 97 is 730 kg for 94, 670.
    assert change.load_capacity_percent == pytest.approx(100 * 60 / 670)
    # 4 % of 242.98 on both sides, of 98 mm above.
    assert (change.growth_sideways_mm, change.growth_radial_mm) == pytest.approx((4.8596, 3.92))
    assert change.same_rim == 0


def test_the_same_wheel_changes_nothing_and_needs_no_room_to_grow():
    change = rear({}).change
    moved = (change.inboard_edge_mm, change.outboard_edge_mm, change.radial_edge_mm, change.offset_mm, change.track_mm)
    assert (moved, change.growth_sideways_mm, change.growth_radial_mm) == ((0, 0, 0, 0, 0), 0, 0)
    assert change.same_rim == 1
    # As high on another width: what is wider may grow, what is as high has what it needs.
    change = rear({f"{REAR}/tyre/section_width_mm": 230}).change
    assert (change.growth_sideways_mm, change.growth_radial_mm) == (pytest.approx(4.6), 0)


def test_back_again_everything_changes_the_other_way_and_nothing_outgrows_the_present():
    sizes = {f"{NOW}/tyre/size": WIDER[0], f"{NOW}/rim/size": WIDER[1]}
    change = rear(sizes, ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")).change
    assert (change.offset_mm, change.track_mm, change.scrub_radius_mm) == (5, -10, -5)
    assert (change.inboard_edge_mm, change.outboard_edge_mm) == pytest.approx((-4.14, -14.14))
    assert (change.overall_diameter_mm, change.radial_edge_mm) == (-19, -9.5)
    assert (change.growth_sideways_mm, change.growth_radial_mm) == (0, 0)


GROWS = 0.02 * 224.7


@pytest.mark.parametrize(
    ("now", "then", "grows"),
    [
        (ABSENT, ABSENT, 0.0),
        # Beside a tyre that was measured one of which only the design is known may turn out wider.
        (230, ABSENT, GROWS),
        (230, 229, 0.0),
        (230, 230, 0.0),
        (ABSENT, 224, 0.0),
        (ABSENT, 225, 0.02 * 225),
        (220, 221, 0.02 * 221),
    ],
)
def test_a_tyre_outgrows_its_design_where_it_is_wider_than_the_present_one(now, then, grows):
    widths = {f"{NOW}/tyre/section_width_mm": now, f"{REAR}/tyre/section_width_mm": then}
    assert rear(widths).change.growth_sideways_mm == pytest.approx(grows)


# A size that no table has, on both sides: where it stands changes by the offset alone.
@pytest.mark.parametrize(
    ("now", "then", "rim", "edges", "grows"),
    [
        ("200 R 17 94S", "200 R 17 95S", "7.5J x 17 H2 ET40", (-5, 5, 0), 0.0),
        ("200 R 17 94S", "190 R 17 94S", "7.5J x 17 H2 ET40", (math.nan, math.nan, math.nan), 0.0),
        ("200 R 17 94S", "200 R 17 94S", "8J x 17 H2 ET40", (math.nan, math.nan, 0), 0.0),
        ("200 R 17 94S", "225/45 R17 94W XL", "7.5J x 17 H2 ET40", (math.nan, math.nan, math.nan), GROWS),
    ],
)
def test_of_one_unknown_size_on_both_sides_the_edges_are_known(now, then, rim, edges, grows):
    change = rear({f"{NOW}/tyre/size": now}, (then, rim)).change
    found = (change.inboard_edge_mm, change.outboard_edge_mm, change.radial_edge_mm)
    assert found == pytest.approx(edges, nan_ok=True)
    assert change.growth_sideways_mm == pytest.approx(grows)


# The share of each passenger tyre: a half; 0.45 on a trailer that is no faster than 100 km/h, on twins 0.27 and 0.24
# (UN R142, from memory). Commercial tyres have no relief: 0.5 and 0.25.
@pytest.mark.parametrize(
    ("category", "speed", "twins", "tyre", "share"),
    [
        ("M1", 100, 1, "225/45 R17 94W XL", 0.5),
        ("O1", 100, 1, "225/45 R17 94W XL", 0.45),
        ("O2", 100, 1, "225/45 R17 94W XL", 0.45),
        ("O2", 101, 1, "225/45 R17 94W XL", 0.5),
        ("O3", 100, 1, "225/45 R17 94W XL", 0.5),
        ("O2", 100, 1, "225/45 R17C 94/92T", 0.5),
        ("O2", 100, 2, "225/45 R17 94W XL", 0.24),
        ("O2", 101, 2, "225/45 R17 94W XL", 0.27),
        ("O2", 100, 2, "225/45 R17C 94/92T", 0.25),
    ],
)
def test_each_tyre_carries_its_share_of_the_axle(category, speed, twins, tyre, share):
    changes = {
        "/vehicle/category": category,
        "/vehicle/max_speed_kmh": speed,
        "/vehicle/rear/wheels_per_side": twins,
        "/vehicle/speedometer": ABSENT,
        f"{REAR}/tyre/size": tyre,
    }
    found = rear(changes).then.load
    assert found.required_kg == pytest.approx(1000 * share)
    assert found.axle_capacity_kg == pytest.approx(found.capacity_kg / share)


# A sidewall of 1.5 times the width, 300 mm on a rim of 432; and above.
@pytest.mark.parametrize(("outer", "is_known"), [(1032, True), (1032.2, False)])
def test_no_tyre_higher_than_one_and_a_half_widths_is_reckoned(outer, is_known):
    tyre = {f"{REAR}/tyre/size": "200 R 17 94S", f"{REAR}/tyre/overall_diameter_mm": outer}
    assert known(rear(tyre).then.behaviour.static_loaded_radius_mm) == is_known


# 670 kg are overloaded by a fifth at 804 kg a tyre.
@pytest.mark.parametrize(("mass", "is_known"), [(1600, True), (1616, False)])
def test_no_tyre_overloaded_by_more_than_a_fifth_is_reckoned(mass, is_known):
    masses = on_both_axles({"/vehicle/{axle}/kerb_axle_mass_kg": mass, "/vehicle/{axle}/max_axle_mass_kg": mass})
    found = rear(masses).then.behaviour
    assert known(found.cornering_stiffness_n_per_deg) == is_known
    assert found.load_share == pytest.approx(mass / 1340)


def test_what_was_found_of_a_wheel_once_is_not_changed_by_who_reads_it():
    """All candidates of a request share the present wheels."""
    kinds = list(data_classes(service.assessment))
    assert WheelFacts in kinds
    assert not [each for each in kinds if takes_another_value(each)]
