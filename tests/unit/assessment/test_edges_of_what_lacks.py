"""What is asked for where the facts of one wheel lack: of which tyre or wheel, with which number, in which unit.

Load indices 68, 69, 77 and 78 are 315, 325, 412 and 425 kg, 91 is 615 (Regeling voertuigen, Bijlage VIII, annex 4). A
tyre overloaded by more than a fifth is beyond what the estimates were made for (project's choice).
"""

import pytest

from service.assessment.checks.missing import (
    deflection_remedy,
    diameter_remedy,
    level_remedy,
    mass_remedy,
    offset_remedy,
    service_remedy,
    stiffness_remedy,
    width_remedy,
)
from tests.support.cases import ABSENT, changed, check, finding, saloon

WHOSE = {
    ("present", "front"): "/vehicle/front/fitted",
    ("present", "rear"): "/vehicle/rear/fitted",
    ("new", "front"): "/candidate/front",
    ("new", "rear"): "/candidate/rear",
}
EACH = pytest.mark.parametrize(("which", "axle"), WHOSE)


def lacking(remedy, which, axle, field, value):
    """Return what is asked for where this field of one wheel has this value, and the pointer of that wheel."""
    wheel = WHOSE[which, axle]
    car = check(changed(saloon(), {f"{wheel}/{field}": value})).car
    views = (car.front, car.rear)
    return remedy(views[axle == "rear"]) if remedy in (offset_remedy, service_remedy) else remedy(*views), wheel


@EACH
def test_the_wheel_whose_offset_nobody_read_is_named(which, axle):
    remedy, wheel = lacking(offset_remedy, which, axle, "rim/size", "7.5J x 17 H2")
    assert (remedy.pointer, remedy.quantity, remedy.unit) == (f"{wheel}/rim/size", "offset_mm", "mm")
    assert remedy.text.startswith(f"read the offset (ET) on the back of the {which} {axle} wheel: ET ")


@EACH
def test_the_tyre_without_an_index_is_named(which, axle):
    remedy, wheel = lacking(service_remedy, which, axle, "tyre/size", "225/45 R17")
    assert (remedy.pointer, remedy.quantity) == (f"{wheel}/tyre/size", "service_description")
    assert remedy.text == f"read load index and speed symbol on the sidewall of the {which} {axle} tyre"


@EACH
@pytest.mark.parametrize("remedy", [diameter_remedy, deflection_remedy, stiffness_remedy])
def test_the_tyre_whose_diameter_no_table_has_is_named(which, axle, remedy):
    asked, wheel = lacking(remedy, which, axle, "tyre/size", "7.00-16")
    assert (asked.pointer, asked.quantity, asked.unit) == (
        f"{wheel}/tyre/overall_diameter_mm",
        "overall_diameter_mm",
        "mm",
    )
    assert asked.text == f"look up the overall diameter of the {which} {axle} tyre in its maker's data, or measure it"


@EACH
def test_the_tyre_whose_width_is_not_known_is_named(which, axle):
    asked, wheel = lacking(width_remedy, which, axle, "tyre/size", "7.00-16")
    assert (asked.pointer, asked.quantity, asked.unit) == (f"{wheel}/tyre/section_width_mm", "section_width_mm", "mm")
    assert asked.text == f"look up the section width of the {which} {axle} tyre in its maker's data, or measure it"


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(("now", "then", "kind"), [("R", "D", "radial"), ("D", "R", "diagonal")])
def test_no_estimate_goes_from_radial_to_diagonal(axle, now, then, kind):
    sizes = {
        f"/vehicle/{axle}/fitted/tyre/size": f"225/45 {now}17 94W XL",
        f"/candidate/{axle}/tyre/size": f"225/45 {then}17 94W XL",
    }
    car = check(changed(saloon(), sizes)).car
    for remedy in (deflection_remedy(car.front, car.rear), stiffness_remedy(car.front, car.rear)):
        assert (remedy.pointer, remedy.equals) == (f"/candidate/{axle}/tyre/size", kind)
        assert remedy.text == f"{kind} tyres as at present: no estimate compares radial with diagonal ones"


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_axle_whose_mass_lacks_is_named_with_the_mass_that_is_enough(axle):
    changes = {f"/vehicle/{axle}/max_axle_mass_kg": ABSENT, f"/candidate/{axle}/tyre/size": "225/45 R17 91W"}
    remedy = finding(check(changed(saloon(), changes)), "load.capacity", axle).remedy
    assert (remedy.pointer, remedy.unit) == (f"/vehicle/{axle}/max_axle_mass_kg", "kg")
    assert (remedy.at_least, remedy.at_most) == (None, 1230.0)
    assert remedy.text == f"state the maximum mass of the {axle} axle: up to 1230 kg is enough"
    unknown = mass_remedy(axle)
    assert (unknown.text, unknown.at_most, unknown.unit) == (f"state the maximum mass of the {axle} axle", None, "kg")
    assert mass_remedy(axle, 1230.4).text == f"state the maximum mass of the {axle} axle: up to 1230 kg is enough"


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_level_is_asked_for_the_index_of_the_present_tyre(axle):
    car = check(changed(saloon(), {f"/vehicle/{axle}/fitted/tyre/size": "225/45 R17"})).car
    remedy = level_remedy(car.front, car.rear)
    assert remedy.pointer == f"/vehicle/{axle}/fitted/tyre/size"
    assert remedy.text == f"read load index and speed symbol on the sidewall of the present {axle} tyre"


# 760 and 1,000 kg on two tyres, less a fifth: 316.7 and 416.7 kg.
@pytest.mark.parametrize(("kerb_kg", "index"), [(760, 69), (1000, 78), (755.9, 68)])
def test_a_present_tyre_that_its_axle_overloads_is_asked_for_an_index_that_does(kerb_kg, index):
    changes = {"/vehicle/rear/fitted/tyre/size": "225/45 R17 60W", "/vehicle/rear/kerb_axle_mass_kg": kerb_kg}
    remedy = finding(check(changed(saloon(), changes)), "balance.change", "vehicle").remedy
    assert (remedy.pointer, remedy.at_least) == ("/vehicle/rear/fitted/tyre/size", index)
    assert remedy.text == (
        "check the present load index and the axle's mass: they overload the present tyre by over 20 %"
    )


def test_a_tyre_that_no_usual_pressure_saves_is_asked_to_be_stronger():
    """135/20 R17: a sidewall of 27 mm under 1,250 kg a wheel; 600 kPa are the most that is usual (common practice)."""
    masses = {"/vehicle/rear/max_axle_mass_kg": 3000, "/vehicle/rear/kerb_axle_mass_kg": 2500}
    asked = changed(saloon(), masses | {"/candidate/rear/tyre/size": "135/20 R17 94W"})
    remedy = finding(check(asked), "wet.aquaplaning").remedy
    assert (remedy.pointer, remedy.quantity, remedy.at_least) == ("/candidate/rear/tyre/size", "load_index", None)
    assert remedy.text == "a stronger tyre for the new rear tyre, one that is not crushed by its load"


def test_what_all_wheels_tell_is_not_asked_for():
    car = check(saloon()).car
    of_all = (diameter_remedy, width_remedy, deflection_remedy, stiffness_remedy, level_remedy)
    assert [remedy(car.rear) for remedy in (offset_remedy, service_remedy)] == [None, None]
    assert [remedy(car.front, car.rear) for remedy in of_all] == [None] * 5
