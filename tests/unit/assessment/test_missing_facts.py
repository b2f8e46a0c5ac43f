"""What the verdict waits for is named first among what to measure; what the present wheel tells is not asked for.

Which fact answers which question is common practice, no source: the bolt circle is read on the wheel, the bore of the
hub is measured, load index and speed symbol stand on the sidewall.
"""

from __future__ import annotations

import pytest

from service.assessment.answer.measure_first import measure_first
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

PRESENT = ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
WIDER = ("245/40 R17 97W XL", "8.5J x 17 H2 ET45")
ROOM = on_both_axles({"/vehicle/{axle}/clearance": ABSENT}) | {"/vehicle/speedometer": ABSENT}


def told(proposed, changes):
    """Return what to measure first on a car whose room and speedometer nobody measured either."""
    found = measure_first(check(changed(saloon(proposed, proposed), ROOM | on_both_axles(changes))).case)
    return {each.pointer: each.settles for each in found}


@pytest.mark.parametrize(
    ("absent", "pointer", "code"),
    [
        (("rim/bolt_circle",), "/candidate/{axle}/rim/bolt_circle", "rim.bolt_circle"),
        (("hub/bolt_circle", "now/bolt_circle"), "/vehicle/{axle}/hub/bolt_circle", "rim.bolt_circle"),
        (
            ("hub/bolt_circle", "now/bolt_circle", "rim/bolt_circle"),
            "/vehicle/{axle}/hub/bolt_circle",
            "rim.bolt_circle",
        ),
        (("rim/centre_bore_mm",), "/candidate/{axle}/rim/centre_bore_mm", "rim.centre_bore"),
        (
            ("hub/centre_bore_mm", "now/centre_bore_mm", "rim/centre_bore_mm"),
            "/vehicle/{axle}/hub/centre_bore_mm",
            "rim.centre_bore",
        ),
        (("rim/load_rating_kg", "now/load_rating_kg"), "/candidate/{axle}/rim/load_rating_kg", "rim.load_rating"),
    ],
)
def test_what_the_verdict_waits_for_comes_before_the_room(absent, pointer, code):
    places = {"rim": "/candidate/{axle}/rim", "hub": "/vehicle/{axle}/hub", "now": "/vehicle/{axle}/fitted/rim"}
    left_out = {f"{places[each.split('/')[0]]}/{each.split('/')[1]}": ABSENT for each in absent}
    found = told(WIDER, left_out)
    assert list(found)[:2] == [pointer.format(axle=axle) for axle in ("front", "rear")]
    assert code in found[pointer.format(axle="front")]


def test_a_tyre_without_a_service_description_has_its_sidewall_read_first():
    found = told(("245/40 R17", WIDER[1]), {})
    assert list(found)[:2] == ["/candidate/front/tyre/load_index", "/candidate/rear/tyre/load_index"]
    assert {"load.capacity", "speed.capability"} <= set(found["/candidate/front/tyre/load_index"])


def test_of_the_rim_that_is_on_the_car_neither_circle_nor_bore_is_asked():
    places = ("/candidate/{axle}/rim", "/vehicle/{axle}/hub", "/vehicle/{axle}/fitted/rim")
    left_out = {f"{place}/{fact}": ABSENT for place in places for fact in ("bolt_circle", "centre_bore_mm")}
    assert not any("bolt_circle" in pointer or "centre_bore" in pointer for pointer in told(PRESENT, left_out))


ROOM_OUTBOARD = "/vehicle/rear/clearance/outboard_mm"


def weight(changes):
    """Return what to measure first on the saloon, by pointer, and how much each weighs."""
    return {each.pointer: each for each in measure_first(check(changed(saloon(), changes)).case)}


@pytest.mark.parametrize(
    ("offset", "effect"),
    [
        # 35 mm further out: touches with no room, is met with 60; the verdict waits for it.
        (10, 10.0 + 5.0),
        # 3 mm further out are no question today, but with no room at all they would touch.
        (42, 5.0),
    ],
)
def test_what_the_verdict_waits_for_weighs_ten_and_outcomes_their_distance(offset, effect):
    found = weight({ROOM_OUTBOARD: ABSENT, "/candidate/rear/rim/size": f"7.5J x 17 H2 ET{offset}"})
    assert (found[ROOM_OUTBOARD].settles, found[ROOM_OUTBOARD].narrows) == (("clearance.outboard",), ())
    assert found[ROOM_OUTBOARD].effect == effect


def test_what_narrows_a_band_weighs_a_tenth_of_its_share():
    wheelbase = "/vehicle/wheelbase_mm"
    front = {"/candidate/front/tyre/size": "245/40 R17 97W XL", "/candidate/front/rim/size": "8J x 17 H2 ET45"}
    # As it is with either end stated.
    none, short, long = (
        check(changed(saloon(), front | {wheelbase: each})).car.driving.braking_distance_percent
        for each in (ABSENT, 2400, 3000)
    )
    share = abs(long.value - short.value) / (none.high - none.low)
    assert share > 0.02
    found = weight(front | {wheelbase: ABSENT})[wheelbase]
    assert (found.settles, found.narrows) == ((), ("braking_distance_percent",))
    assert found.effect == pytest.approx(0.1 * share)


def test_no_more_than_eight_facts_are_named():
    bare = on_both_axles(
        {f"/vehicle/{{axle}}/{each}": ABSENT for each in ("clearance", "track_mm", "kerb_axle_mass_kg", "hub")}
        | {"/vehicle/{axle}/fitted/pressure_kpa": ABSENT, "/candidate/{axle}/rim/load_rating_kg": ABSENT}
        | {"/candidate/{axle}/rim/size": "8J x 17 H2 ET20", "/candidate/{axle}/rim/bolt_circle": ABSENT}
    )
    assert len(weight(bare)) == 8
