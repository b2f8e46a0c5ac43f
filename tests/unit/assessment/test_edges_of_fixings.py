"""Rings, spacers and bolts on the job card, each for its own axle and to a tenth of a millimetre.

A ring fills what the rim's bore is larger than the hub; a wheel that stands further out needs bolts longer by as much:
geometry, and common practice, no source, for the rest.
"""

import pytest

from service.assessment.answer.fixings import fixings
from service.assessment.answer.spacers import spacers
from service.core.findings import ADVISORY, MET, NOT_MET, Finding
from service.core.sources import basis
from tests.support.cases import ABSENT, changed, check, saloon

OTHER = {"front": "rear", "rear": "front"}
BASIS = basis("PROJECT", "the project's own")


def lines(changes):
    """Return the job card of the saloon after these changes, by code."""
    return {each.code: each for each in check(changed(saloon(), changes)).actions}


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_ring_fills_the_rim_s_bore_down_to_the_hub(axle):
    found = lines({f"/candidate/{axle}/rim/centre_bore_mm": 72.56, f"/vehicle/{axle}/hub/centre_bore_mm": 66.54})
    ring = found[f"spigot_rings_{axle}"]
    assert ring.text == f"Fit spigot rings 72.6 to 66.5 mm on the {axle} axle."
    assert (ring.ring_outer_mm, ring.ring_inner_mm, ring.findings) == (72.56, 66.54, ("rim.centre_bore",))
    assert f"spigot_rings_{OTHER[axle]}" not in found


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_where_nobody_measured_the_hub_the_ring_s_inside_is_found_there(axle):
    wide = Finding("rim.centre_bore", axle, ADVISORY, "So it is.", 72.56, None, "mm", BASIS)
    ring, *rest = fixings(check(saloon()).car, [wide, wide._replace(outcome=MET), wide._replace(measured=None)])
    assert ring.text == f"Fit spigot rings on the {axle} axle: 72.6 mm outside, inside as the hub is measured."
    assert (ring.code, ring.ring_outer_mm, ring.ring_inner_mm) == (f"spigot_rings_{axle}", 72.56, None)
    assert [each.code for each in rest] == ["torque"]


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_bolts_are_looked_at_on_the_axle_that_gets_other_rims(axle):
    found = lines({f"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET44"})
    assert found["bolt_seat"].text == (
        f"Check on the {axle} axle that the bolts belong to these rims: seat (cone or ball) and length. Spacers are "
        "not reckoned with: fit none."
    )
    # Before they are tightened.
    assert list(found).index("bolt_seat") < list(found).index("torque")
    spaced = lines({f"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET44", f"/candidate/{axle}/spacer_mm": 3})
    assert spaced["bolt_seat"].text.endswith("seat (cone or ball) and length.")


@pytest.mark.parametrize(
    ("field", "value", "other"),
    [
        ("rim/size", "7.5J x 17 H2 ET45", False),
        ("rim/size", "8J x 17 H2 ET45", True),
        ("rim/centre_bore_mm", 72.6, True),
        ("rim/load_rating_kg", 800, False),
        ("pressure_kpa", 260, False),
    ],
)
def test_bolts_and_sensors_are_named_where_the_rims_are_others(field, value, other):
    found = lines({f"/candidate/rear/{field}": value})
    assert [code in found for code in ("bolt_seat", "pressure_sensors")] == [other, other]
    assert "torque" in found


def test_a_bore_that_nobody_measured_on_either_side_makes_no_other_rim():
    rims = ("/candidate/rear/rim", "/vehicle/rear/fitted/rim")
    assert "bolt_seat" not in lines({f"{rim}/centre_bore_mm": ABSENT for rim in rims})


def test_a_trailer_has_no_sensors_to_be_moved_over():
    found = lines({"/vehicle/category": "O2", "/candidate/rear/rim/size": "7.5J x 17 H2 ET44"})
    assert ("bolt_seat" in found, "pressure_sensors" in found) == (True, False)


LONGER = "They need bolts or studs {} longer than now, so that as many threads hold as now"
SHORTER = "They need bolts or studs {} shorter than now, so that as many threads hold as now"


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("now", "then", "begins"),
    [
        (0, 7.26, f"Fit spacers of 7.3 mm on the {{}} axle, hub-centric ones: the wheel is centred on them. {LONGER}"),
        (5, 7.26, f"Fit spacers of 7.3 mm on the {{}} axle, hub-centric ones: the wheel is centred on them. {LONGER}"),
        (7.26, 5, f"Fit spacers of 5 mm on the {{}} axle, hub-centric ones: the wheel is centred on them. {SHORTER}"),
        (7.26, 0, "Take the spacers off the {} axle. The wheels need bolts or studs {} shorter than now: longer ones"),
    ],
)
def test_bolts_grow_by_what_the_spacers_do(axle, now, then, begins):
    found = lines({f"/vehicle/{axle}/fitted/spacer_mm": now, f"/candidate/{axle}/spacer_mm": then})
    size = "7.3 mm" if not now or not then else "2.3 mm"
    assert found[f"spacers_{axle}"].text.startswith(begins.format(axle, size))
    assert found[f"spacers_{axle}"].spacer_mm == then
    assert f"spacers_{OTHER[axle]}" not in found


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_line_on_spacers_answers_what_the_place_advises_of_that_axle(axle):
    car = check(changed(saloon(), {f"/candidate/{name}/spacer_mm": 5 for name in OTHER})).car
    views = (car.front, car.rear)

    def answered(code, where, outcome):
        told = [Finding(code, where, outcome, "So it is.", 5.0, 0.0, "mm", BASIS)]
        return {each.code: each.findings for each in spacers(views, told)}

    none = {f"spacers_{name}": () for name in OTHER}
    assert answered("law.spacers", axle, ADVISORY) == none | {f"spacers_{axle}": ("law.spacers",)}
    for code, outcome in (("law.spacers", MET), ("law.spacers", NOT_MET), ("track.change", ADVISORY)):
        assert answered(code, axle, outcome) == none
