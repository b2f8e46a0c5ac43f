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
