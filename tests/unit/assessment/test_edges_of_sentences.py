"""The numbers in the sentences on load, pressure, size, room and tread, worked by hand; and the unit of every finding.

Load indices 91, 93, 94 and 97 are 615, 650, 670 and 730 kg (Regeling voertuigen, Bijlage VIII, annex 4); V keeps 91 %
at 240 km/h (UN R30 2.31). The saloon's tyre is 634 mm high, its axle 1,000 kg heavy and its track 1,540 mm.
"""

import pytest

from tests.support.cases import ABSENT, changed, check, finding, saloon

TOP = "/vehicle/max_speed_kmh"
MASS = "/vehicle/rear/max_axle_mass_kg"
DRIVEN = "/vehicle/driven_axle"
INBOARD = "/vehicle/rear/clearance/inboard_mm"
TREADS = {axle: f"/candidate/{axle}/tyre/tread_depth_mm" for axle in ("front", "rear")}
ROLLS = "/candidate/front/tyre/rolling_circumference_mm"


def message(code, changes, where="rear"):
    """Return the sentences on the saloon after these changes; what is no whole pointer is of its rear wheel."""
    written = {key if key.startswith("/") else f"/candidate/rear/{key}": value for key, value in changes.items()}
    return finding(check(changed(saloon(), written)), code, where).message


V_94 = {"tyre/size": "225/45 R17 94V XL"}
WEAK = {"tyre/size": "225/45 R17 91V", TOP: 235, MASS: 1180}


@pytest.mark.parametrize(
    ("code", "changes", "said"),
    [
        (
            "load.below_present",
            {"tyre/size": "225/45 R17 93W XL"},
            "The axle's tyres carry 40 kg less than the present ones. They still carry the axle: 1300 kg for 1000 kg.",
        ),
        # 730 / 670.
        (
            "load.below_present",
            {"tyre/size": "225/45 R17 97W XL"},
            "The axle's tyres carry 9 % more than the present ones.",
        ),
        (
            "load.capacity",
            V_94 | {TOP: 240},
            "The axle's tyres carry 1219 kg at 240 km/h (91 % of the load index), enough for 1000 kg.",
        ),
        # Too slow a tyre is counted at its own speed.
        (
            "load.capacity",
            V_94 | {TOP: 250, MASS: 1250},
            "The axle's tyres carry 1219 kg at 240 km/h (91 % of the load index); the axle needs 1250 kg.",
        ),
        ("load.capacity", V_94 | {TOP: 200}, "The axle's tyres carry 1340 kg, enough for 1000 kg."),
        # 615 x 0.925 = 568.9 kg of 590.
        (
            "load.pressure",
            WEAK,
            "No pressure is enough. Each tyre must carry 590 kg, and it carries 569 kg at most.",
        ),
        # 290 (500/670)^1.25 + 38 = 239.1 kPa (pressure-load law).
        (
            "load.pressure",
            {"pressure_kpa": 200},
            "200 kPa is too little for the full axle at 228 km/h. It needs at least 239 kPa.",
        ),
        (
            "load.pressure",
            {"pressure_kpa": 400},
            "400 kPa is too much: the tyre carries its load index at 290 kPa. Usually it gets 340 kPa at most.",
        ),
        (
            "load.pressure",
            {"pressure_kpa": ABSENT},
            "The tyres carry the axle at the 250 kPa to be set. It needs at least 239 kPa.",
        ),
        # A gauge shows whole numbers: what reads as today's is no less.
        ("load.pressure", {"pressure_kpa": 249.6}, "250 kPa carries the axle, which needs at least 239 kPa."),
        (
            "load.pressure",
            {"pressure_kpa": 249.4},
            "249 kPa carries the axle, which needs at least 239 kPa. It is below the 250 kPa of today.",
        ),
        # 1,001 kg on two rims, rounded up.
        (
            "rim.load_rating",
            {"rim/load_rating_kg": 450, MASS: 1001},
            "The rim is rated for 450 kg only; each wheel has to carry 501 kg.",
        ),
    ],
)
def test_loads_and_pressures_are_told_by_their_numbers(code, changes, said):
    assert message(code, changes) == said


@pytest.mark.parametrize(
    ("diameter", "category", "said"),
    [
        (640, "M1", "from 634 to 640 mm (+0.9 %), within 1.5 % either way."),
        (643.6, "M1", "from 634 to 644 mm (+1.51 %), more than the 1.5 % that goes unnoticed."),
        (643.52, "M1", "from 634 to 644 mm (+1.5 %), just more than the 1.5 % that goes unnoticed."),
        (656, "M1", "from 634 to 656 mm (+3.5 %), more than the 3 % that a replacement size may differ by."),
        (653.04, "M1", "from 634 to 653 mm (+3 %), just more than the 3 % that a replacement size may differ by."),
        (
            656,
            "O2",
            (
                "from 634 to 656 mm (+3.5 %), more than the 1.5 % that goes unnoticed: "
                "check that the trailer stands level behind the car."
            ),
        ),
    ],
)
def test_the_diameter_is_told_with_its_change_and_the_limit_that_counts(diameter, category, said):
    changes = {"tyre/overall_diameter_mm": diameter, "/vehicle/category": category}
    assert message("diameter.deviation", changes) == f"The overall diameter goes {said}"


# A millimetre of offset is a millimetre of edge and two of track; 14 mm of room inboard, 16 outboard, 5 advised.
@pytest.mark.parametrize(
    ("offset", "code", "said"),
    [
        (35, "track.change", "The track grows by 20 mm (1.3 %): each wheel stands 10 mm further out."),
        (49.5, "track.change", "The track shrinks by 9 mm (0.6 %): each wheel stands 4.5 mm further in."),
        (54, "clearance.inboard", "The wheel needs 9 mm more room towards the strut, which leaves 5 mm."),
        (40, "clearance.inboard", "The wheel needs 5 mm less room towards the strut, which leaves 19 mm."),
        (40, "clearance.outboard", "The wheel needs 5 mm more room towards the wing edge, which leaves 11 mm."),
        (45.94, "clearance.inboard", "The wheel needs 0.9 mm more room towards the strut, which leaves 13 mm."),
        (45.96, "clearance.inboard", "The wheel needs 1 mm more room towards the strut, which leaves 13 mm."),
        (
            56,
            "clearance.inboard",
            "The wheel needs 11 mm more room towards the strut, which leaves 3 mm; 5 mm or more is advised.",
        ),
        (
            54.1,
            "clearance.inboard",
            "The wheel needs 9 mm more room towards the strut, which leaves 4.9 mm; 5 mm or more is advised.",
        ),
        (
            59.04,
            "clearance.inboard",
            "The wheel needs 14 mm more room towards the strut, less than 0.1 mm more than there is: it touches.",
        ),
    ],
)
def test_room_and_track_are_told_to_the_millimetre(offset, code, said):
    assert message(code, {"rim/size": f"7.5J x 17 H2 ET{offset}"}) == said


def test_a_change_of_track_has_no_share_where_no_track_is_given():
    changes = {"/vehicle/rear/track_mm": ABSENT, "rim/size": "7.5J x 17 H2 ET35"}
    assert message("track.change", changes) == "The track grows by 20 mm: each wheel stands 10 mm further out."


@pytest.mark.parametrize(
    ("offset", "said"),
    [
        (48, "The wheel stays within 5 mm of the present one towards the strut."),
        (42, "The wheel needs 3 mm less room towards the strut than now."),
        (45, "The room towards the strut does not change."),
        (57, "The wheel comes 12 mm nearer to the strut. The room there was not measured."),
    ],
)
def test_a_room_that_nobody_measured_is_told_by_the_shift(offset, said):
    assert message("clearance.inboard", {INBOARD: ABSENT, "rim/size": f"7.5J x 17 H2 ET{offset}"}) == said


@pytest.mark.parametrize(
    ("depth", "mark", "said"),
    [
        (8, "", "The tread is 8 mm deep."),
        (2, "", "The tread is 2 mm deep. Below 3 mm a tyre is poor on a wet road."),
        (1.5, "", "The tread is 1.5 mm deep, less than the usual legal 1.6 mm."),
        (3.5, " 3PMSF", "The tread is 3.5 mm deep. Below 4 mm a winter tyre loses its hold on snow."),
        (1.5, " 3PMSF", "The tread is 1.5 mm deep, less than the usual legal 1.6 mm."),
        (ABSENT, "", "The tread depth is not given; the tyre is taken as new."),
    ],
)
def test_the_tread_is_told_with_the_limit_that_it_misses(depth, mark, said):
    changes = {TREADS["rear"]: depth, "tyre/size": f"225/45 R17 94W XL{mark}"}
    assert message("tyre.tread_depth", changes) == said


UNEVEN = "The tyres have 8.2 mm of tread in front and 5.2 mm at the rear."
APART = "Wear alone sets the diameters apart by 0.9 %"


# 3 mm of tread are 6 mm of 634, 0.9 %.
@pytest.mark.parametrize(
    ("front", "rear", "driven", "said"),
    [
        (8.2, 5.2, "rear", f"{UNEVEN} The deeper pair belongs to the rear, so that the front floats first in the wet."),
        (8.2, 5.2, "all", f"{UNEVEN} {APART}, which strains the all-wheel drive."),
        (
            8.2,
            5.2,
            ABSENT,
            f"{UNEVEN} {APART}, which strains all-wheel drive where the car has it.",
        ),
        (5.5, 8, "rear", "The tyres have 5.5 mm of tread in front and 8 mm at the rear."),
        (5.5, 5.5, "rear", "All tyres have 5.5 mm of tread."),
        (ABSENT, ABSENT, "rear", "Both axles are taken to have new tyres."),
    ],
)
def test_unlike_treads_are_told_by_both_depths(front, rear, driven, said):
    changes = {TREADS["front"]: front, TREADS["rear"]: rear, DRIVEN: driven}
    assert message("tyre.tread_difference", changes, "vehicle") == said


# Of 1933.7 mm in front and at the rear.
@pytest.mark.parametrize(
    ("rolls_mm", "driven", "said"),
    [
        (1934, "rear", "stays as it is."),
        (1940, "rear", "changes by +0.3 %, within 0.5 % either way."),
        (1960, "rear", "changes by +1.4 %: stability control may take it for a slipping wheel."),
        (1960, "all", "changes by +1.4 %: this strains the all-wheel drive."),
    ],
)
def test_the_ratio_of_the_axles_is_told_by_what_suffers(rolls_mm, driven, said):
    told = message("diameter.axle_ratio", {ROLLS: rolls_mm, DRIVEN: driven}, "vehicle")
    assert told == f"The ratio of the front to the rear circumference {said}"


READS = "The speedometer reads 3.1 % above the true speed now and"
LAWFUL = "within the lawful range at every test speed."
GROWS, SHRINKS = "The rolling circumference grows by", "The rolling circumference shrinks by"
TRUE = "the true speed."
IF = "It stays lawful if it now reads"


# Shown 100 at 97 km/h, 3.09 % too much, over the growth of the driven axle. UN R39 5.3 leaves 13.33 % at 120 km/h.
@pytest.mark.parametrize(
    ("share", "read", "said"),
    [
        (1.02, True, f"{READS} 1.1 % above it after the change, {LAWFUL}"),
        (1.0305, True, f"{READS} the true speed after the change, {LAWFUL}"),
        (1.0312, True, f"{READS} 0.03 % below it after the change: it must never read low."),
        (1.04, True, f"{READS} 0.9 % below it after the change: it must never read low."),
        (0.9, True, f"{READS} 14.5 % above it after the change: more than is lawful."),
        (
            1.03,
            False,
            f"{GROWS} 3 %, so the speedometer shows less than now. {IF} 3 to 16.7 % above {TRUE}",
        ),
        (
            0.95,
            False,
            f"{SHRINKS} 5 %, so the speedometer shows more than now. {IF} between 5 % below and 7.6 % above {TRUE}",
        ),
    ],
)
def test_the_speedometer_is_told_by_what_it_shows_now_and_then(share, read, said):
    changes = {"tyre/rolling_circumference_mm": 1933.7 * share} | ({} if read else {"/vehicle/speedometer": ABSENT})
    assert message("diameter.speedometer", changes, "vehicle") == said


UNITS = {
    "in": ("rim.diameter", "rim.width", "rim.brake_clearance"),
    "mm": (
        *("rim.bolt_circle", "rim.centre_bore", "track.change", "tyre.tread_depth", "tyre.tread_difference"),
        *(f"clearance.{side}" for side in ("inboard", "outboard", "radial", "twin")),
    ),
    "kg": ("rim.load_rating", "load.capacity", "load.below_present"),
    "km/h": ("speed.capability",),
    "kPa": ("load.pressure",),
    "%": (
        *("diameter.deviation", "diameter.speedometer", "diameter.axle_ratio"),
        *("wet.aquaplaning", "wet.reserve", "wet.axle_order", "balance.grip_order"),
    ),
    "deg/g": ("balance.change",),
    None: ("rim.contour", "tyre.temporary_spare", "tyre.structure", "tyre.season_mix", "tyre.run_flat_mix"),
}


def test_every_finding_has_the_unit_of_its_number():
    found = {each.code: each.unit for each in check(saloon()).findings if not each.code.startswith("law.")}
    assert found == {code: unit for unit, codes in UNITS.items() for code in codes}
