"""What a finding rests on and is held against, on both sides of what decides it.

UN R30 is the regulation on passenger tyres, UN R54 that on commercial ones, UN R142 allows slower tyres for snow.
Limits by common practice, no source, or this project's judgement (`rules/common_practice.toml`).
"""

import pytest

from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, OPEN
from tests.support.cases import ABSENT, changed, check, finding, saloon

REAR = "/candidate/rear"
TYRE, RIM, TREAD = f"{REAR}/tyre/size", f"{REAR}/rim/size", f"{REAR}/tyre/tread_depth_mm"
DIAMETER, ROLLS = f"{REAR}/tyre/overall_diameter_mm", f"{REAR}/tyre/rolling_circumference_mm"
VAN_TYRE, DRIVEN = "205/65 R16C 107/105T", "/vehicle/driven_axle"
UNMEASURED = {"/vehicle/rear/clearance/inboard_mm": ABSENT}


@pytest.mark.parametrize(
    ("code", "where", "changes", "source", "place"),
    [
        ("load.capacity", "rear", {}, "UN-R30 2.31", "UN R142"),
        ("load.capacity", "rear", {TYRE: VAN_TYRE}, "UN-R54 annex 8", "UN R142"),
        ("speed.capability", "rear", {}, "UN-R30 speed symbol", "maximum design speed"),
        ("speed.capability", "rear", {TYRE: VAN_TYRE}, "UN-R54 annex 8", "reduced load"),
        ("speed.capability", "rear", {TYRE: "225/45 R17 94H XL 3PMSF"}, "UN-R142", "snow tyres"),
        ("track.change", "rear", {}, "COMMON-PRACTICE", "twice the change of offset"),
        ("rim.width", "rear", {}, "ETRTO", "table row"),
        ("rim.width", "rear", {TYRE: "225/50 R17 94W"}, "ETRTO", "design guide's rule"),
        ("tyre.tread_difference", "vehicle", {DRIVEN: "rear"}, "COMMON-PRACTICE", "deeper pair goes to the rear"),
        ("tyre.tread_difference", "vehicle", {DRIVEN: "all"}, "PROJECT", "axle-to-axle"),
        ("tyre.tread_difference", "vehicle", {DRIVEN: ABSENT}, "PROJECT", "axle-to-axle"),
        ("diameter.speedometer", "vehicle", {}, "UN-R39 5.3", "0.1 V2 + 4 km/h"),
        ("tyre.temporary_spare", "rear", {TYRE: "T125/80 R17 99M"}, "UN-R64", ""),
    ],
)
def test_a_finding_names_the_document_that_it_rests_on(code, where, changes, source, place):
    basis = finding(check(changed(saloon(), changes)), code, where).basis
    assert basis.source == source
    assert place in basis.place


# Where what is found is beyond the outer limit, that one is told; where nobody measured there is none.
@pytest.mark.parametrize(
    ("code", "changes", "outcome", "measured", "limit"),
    [
        ("clearance.inboard", {}, MET, 14.0, 5.0),
        ("clearance.inboard", {RIM: "7.5J x 17 H2 ET56"}, ADVISORY, 3.0, 5.0),
        ("clearance.inboard", {RIM: "7.5J x 17 H2 ET70"}, NOT_MET, -11.0, 0.0),
        ("clearance.inboard", UNMEASURED | {RIM: "7.5J x 17 H2 ET52"}, ADVISORY, 7.0, None),
        ("clearance.inboard", UNMEASURED, MET, 0.0, None),
        ("diameter.deviation", {DIAMETER: 640.34}, MET, 1.0, 1.5),
        ("diameter.deviation", {DIAMETER: 646.68}, ADVISORY, 2.0, 1.5),
        ("diameter.deviation", {DIAMETER: 659.36}, NOT_MET, 4.0, 3.0),
        ("tyre.tread_depth", {TREAD: 2.0}, ADVISORY, 2.0, 3.0),
        ("tyre.tread_depth", {TREAD: 1.0}, NOT_MET, 1.0, 1.6),
        ("tyre.tread_depth", {TREAD: 3.5, TYRE: "225/45 R17 94W XL 3PMSF"}, ADVISORY, 3.5, 4.0),
        # Two per cent of 1,540 mm.
        ("track.change", {RIM: "7.5J x 17 H2 ET20"}, ADVISORY, 50.0, 30.8),
        ("track.change", {RIM: "7.5J x 17 H2 ET55"}, MET, -20.0, 30.8),
        # A 225/45 R17 takes 7 to 8 1/2 in; the nearer end counts.
        ("rim.width", {RIM: "9J x 17 H2 ET45"}, NOT_MET, 9.0, 8.5),
        ("rim.width", {RIM: "6.5J x 17 H2 ET45"}, NOT_MET, 6.5, 7.0),
        ("rim.width", {RIM: "7.75J x 17 H2 ET45"}, MET, 7.75, 8.5),
        # What the maker states decides to the hair.
        ("rim.width", {f"{REAR}/tyre/approved_rim_widths_in": {"min": 7, "max": 7.495}}, NOT_MET, 7.5, 7.495),
    ],
)
def test_a_number_is_held_against_the_limit_that_decides(code, changes, outcome, measured, limit):
    found = finding(check(changed(saloon(), changes)), code)
    assert found.outcome == outcome
    assert found.measured == pytest.approx(measured)
    assert found.limit == (None if limit is None else pytest.approx(limit))


# The ratio is front over rear.
@pytest.mark.parametrize(
    ("share", "driven", "outcome", "measured", "limit"),
    [
        (1.004, "all", MET, 100.0 * (1.0 / 1.004 - 1.0), 0.5),
        (1.008, "all", ADVISORY, 100.0 * (1.0 / 1.008 - 1.0), 0.5),
        (1.02, "all", NOT_MET, 100.0 * (1.0 / 1.02 - 1.0), 1.0),
        (1.02, "rear", ADVISORY, 100.0 * (1.0 / 1.02 - 1.0), 0.5),
    ],
)
def test_the_ratio_of_the_axles_is_held_against_the_limit_that_decides(share, driven, outcome, measured, limit):
    found = finding(check(changed(saloon(), {ROLLS: 1933.7 * share, DRIVEN: driven})), "diameter.axle_ratio", "vehicle")
    assert (found.outcome, found.limit) == (outcome, limit)
    assert found.measured == pytest.approx(measured)


# 3 mm of tread are 6 mm of diameter, 0.946 % of 634.
@pytest.mark.parametrize(
    ("driven", "measured", "limit", "unit"),
    [("rear", 3.0, 1.0, "mm"), ("all", 0.946, 0.5, "%"), (ABSENT, 0.946, 0.5, "%")],
)
def test_unlike_tread_is_held_against_a_depth_or_where_all_wheels_are_driven_a_share(driven, measured, limit, unit):
    found = finding(check(changed(saloon(), {TREAD: 5.0, DRIVEN: driven})), "tyre.tread_difference", "vehicle")
    assert (found.outcome, found.limit, found.unit) == (ADVISORY, limit, unit)
    assert found.measured == pytest.approx(measured, abs=0.001)


# 7.00-16 has no row in the table of old sizes: what wear makes of its diameter is not known, what the tread is, is.
# The deeper pair in front needs a word whatever the diameters.
@pytest.mark.parametrize(("front", "rear", "odd", "outcome"), [(8.0, 5.0, "rear", ADVISORY), (5.0, 8.0, "front", OPEN)])
def test_where_no_diameter_tells_of_wear_the_shallower_pair_is_to_be_as_deep(front, rear, odd, outcome):
    treads = {"/candidate/front/tyre/tread_depth_mm": front, TREAD: rear, DRIVEN: "all"}
    sizes = {"/candidate/front/tyre/size": "7.00-16"}
    found = finding(check(changed(saloon(), treads | sizes)), "tyre.tread_difference", "vehicle")
    assert found.outcome == outcome
    assert found.message == (
        f"The tyres have {front:.0f} mm of tread in front and {rear:.0f} mm at the rear. "
        "What that makes of the diameters is not known."
    )
    assert (found.remedy.pointer, found.remedy.at_least) == (f"/candidate/{odd}/tyre/tread_depth_mm", 8.0)
    assert found.remedy.text == f"fit {odd} tyres with 8 mm or more of tread"


@pytest.mark.parametrize(("axle", "other"), [("front", "rear"), ("rear", "front")])
def test_the_axle_that_is_out_of_step_is_named_with_the_other_one(axle, other):
    """1,933.7 mm less and more half a per cent."""
    rolls = {f"/candidate/{axle}/tyre/rolling_circumference_mm": 1960}
    remedy = finding(check(changed(saloon(), rolls)), "diameter.axle_ratio", "vehicle").remedy
    assert remedy.text == (
        f"fit {axle} tyres with a rolling circumference of 1925 to 1943 mm beside these {other} tyres"
    )


@pytest.mark.parametrize(("present", "begins"), [("225/45 R17 94W XL", True), (VAN_TYRE, False)])
def test_commercial_tyres_in_place_of_others_are_told_to_be_so(present, begins):
    sizes = {TYRE: VAN_TYRE, "/vehicle/rear/fitted/tyre/size": present}
    message = finding(check(changed(saloon(), sizes)), "load.pressure").message
    assert "The least pressure is not known. It follows from the pressure that is marked on" in message
    assert message.startswith("The proposed tyres are commercial ones and the present tyres are not.") == begins


PRESENT, TOP = "/vehicle/rear/fitted/tyre/size", "/vehicle/max_speed_kmh"
UNKNOWN_TO_US = "Whether the tyre may run 310 km/h is not known from its designation; its maker states it."
AS_NOW = "Whether the tyre may run 310 km/h its maker states; the present one is marked in the same way."


# Y in brackets is for more than 300 km/h, how much more its maker states (UN R30 2.31). Nobody asks who has it already.
@pytest.mark.parametrize(
    ("now", "then", "outcome", "said"),
    [
        ("(94Y)", "(94Y)", OPEN, AS_NOW),
        ("94Y", "(94Y)", NOT_ASSESSED, UNKNOWN_TO_US),
        ("", "(94Y)", NOT_ASSESSED, UNKNOWN_TO_US),
        ("(94Y)", "", NOT_ASSESSED, UNKNOWN_TO_US),
        ("(94Y)", "94Y", NOT_MET, "The tyre may run 300 km/h only; the vehicle reaches 310 km/h."),
    ],
)
def test_a_speed_that_the_maker_states_is_asked_for_unless_the_car_has_such_tyres(now, then, outcome, said):
    sizes = {PRESENT: f"225/45 ZR17 {now}".strip(), TYRE: f"225/45 ZR17 {then}".strip(), TOP: 310}
    found = finding(check(changed(saloon(), sizes)), "speed.capability")
    assert found.outcome == outcome
    assert found.message.startswith(said)


SLOWER = "Winter tyres and spares may be slower than the vehicle that they are on."
SNOW, MUD, SPARE = "225/45 R17 94H XL 3PMSF", "225/45 R17 94H XL M+S", "T125/80 R17 99M"
SUMMER = "225/45 R17 94H XL"


# H is 210 and M 130 km/h. Without a top speed the present tyres tell it, unless the law lets them be slower.
@pytest.mark.parametrize(
    ("now", "then", "expected"),
    [
        (SUMMER, SUMMER, MET),
        (SNOW, SNOW, MET),
        (SUMMER, SNOW, MET),
        (SPARE, SPARE, MET),
        (SNOW, SUMMER, NOT_ASSESSED),
        (MUD, SUMMER, NOT_ASSESSED),
        (SNOW, MUD, NOT_ASSESSED),
        (SPARE, SUMMER, NOT_ASSESSED),
    ],
)
def test_tyres_that_may_be_slower_than_the_car_do_not_tell_its_speed(now, then, expected):
    found = finding(check(changed(saloon(), {PRESENT: now, TYRE: then, TOP: ABSENT})), "speed.capability")
    assert found.outcome == expected
    assert (SLOWER in found.message) == (expected == NOT_ASSESSED)


MASS = "/vehicle/rear/max_axle_mass_kg"


# 93 is 650, 94 is 670 kg; W keeps 85 % at the 270 km/h of the present tyres, Y all of it (UN R30 2.31). Where neither
# speed nor mass is given a lower index may not carry at a lower speed what the present one does.
@pytest.mark.parametrize(
    ("absent", "size", "outcome", "carried"),
    [
        ((TOP,), "225/45 R17 93W XL", MET, 1105.0),
        ((TOP,), "225/45 R17 93Y XL", MET, 1300.0),
        ((MASS,), "225/45 R17 94W XL", MET, 1340.0),
        ((MASS,), "225/45 R17 93Y XL", NOT_ASSESSED, 1300.0),
        ((TOP, MASS), "225/45 R17 94W XL", MET, 1139.0),
        ((TOP, MASS), "225/45 R17 94Y XL", MET, 1340.0),
        ((TOP, MASS), "225/45 R17 93Y XL", NOT_ASSESSED, 1300.0),
    ],
)
def test_a_lower_index_is_a_question_where_neither_speed_nor_mass_is_given(absent, size, outcome, carried):
    found = finding(check(changed(saloon(), {TYRE: size} | dict.fromkeys(absent, ABSENT))), "load.capacity")
    assert (found.outcome, found.measured) == (outcome, pytest.approx(carried))
