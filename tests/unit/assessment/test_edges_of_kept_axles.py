"""On which axle whose wheels may go: what both axles have alike today, which is the lighter, and whose hub is whose.

A circle is written to a tenth of a millimetre and a bore measured to one: common practice, no source. What a wheel
carries on one axle it carries on one that weighs no more.
"""

import pytest

from service.assessment.answer.keep_present import Way, on_unlike_hubs, ways
from service.assessment.view.facts import rim_facts
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

KEEP = [("front", "present"), ("rear", "present")]
REAR_AS_FRONT, FRONT_AS_REAR = ("rear", "front"), ("front", "rear")
MASS = "/vehicle/{}/max_axle_mass_kg"
WIDE = ("245/40 R17 95W XL", "8J x 17 H2 ET45")


def open_ways(changes):
    """Return which ways are tried on the saloon after these changes."""
    return [(each.axle, each.wheels) for each in ways(check(changed(saloon(front=WIDE), changes)).case)]


@pytest.mark.parametrize(
    ("front_kg", "rear_kg", "more"),
    [(960, 1000, [FRONT_AS_REAR]), (1000, 960, [REAR_AS_FRONT]), (980, 980, [REAR_AS_FRONT, FRONT_AS_REAR])],
)
def test_wheels_go_on_the_other_axle_where_it_weighs_no_more(front_kg, rear_kg, more):
    assert open_ways({MASS.format("front"): front_kg, MASS.format("rear"): rear_kg}) == KEEP + more


HUBS = "/vehicle/{axle}/hub/"


@pytest.mark.parametrize(
    ("changes", "alike"),
    [
        ({"/vehicle/front/fitted/tyre/size": "225/45 R17 91W"}, False),
        ({"/vehicle/rear/fitted/rim/size": "7.5J x 17 H2 ET40"}, False),
        ({"/vehicle/rear/fitted/spacer_mm": 5}, False),
        # What is worn or pumped otherwise is the same wheel.
        ({"/vehicle/rear/fitted/pressure_kpa": 280, "/vehicle/front/fitted/tyre/tread_depth_mm": 4}, True),
        ({"/vehicle/rear/wheels_per_side": 2}, False),
        ({"/vehicle/rear/hub/bolt_circle": "5x120"}, False),
        ({"/vehicle/rear/hub/bolt_circle": ABSENT}, False),
        (on_both_axles({f"{HUBS}bolt_circle": ABSENT}), True),
        ({"/vehicle/rear/hub/centre_bore_mm": 72.6}, False),
        ({"/vehicle/front/hub/centre_bore_mm": ABSENT}, False),
        ({"/vehicle/rear/hub/centre_bore_mm": ABSENT}, False),
        (on_both_axles({f"{HUBS}centre_bore_mm": ABSENT}), True),
    ],
)
def test_wheels_go_on_the_other_axle_where_both_are_alike_today(changes, alike):
    assert open_ways(changes) == KEEP + ([FRONT_AS_REAR] if alike else [])


@pytest.mark.parametrize(
    ("front", "rear", "unlike"),
    [
        ({}, {}, False),
        ({"bolt_circle": "5x112"}, {"bolt_circle": "5x112.1"}, True),
        ({"bolt_circle": "5x112.1"}, {"bolt_circle": "5x112"}, True),
        ({"bolt_circle": "4x108"}, {"bolt_circle": "5x108"}, True),
        ({"bolt_circle": "5x108"}, {"bolt_circle": "4x108"}, True),
        ({"centre_bore_mm": 66.6}, {"centre_bore_mm": 66.65}, False),
        ({"centre_bore_mm": 66.6}, {"centre_bore_mm": 66.8}, True),
        ({"centre_bore_mm": 66.8}, {"centre_bore_mm": 66.6}, True),
        # Of what nobody stated nothing is unlike.
        ({"centre_bore_mm": ABSENT, "bolt_circle": ABSENT}, {"centre_bore_mm": 72.6}, False),
        ({"bolt_circle": ABSENT}, {"centre_bore_mm": 72.6}, True),
    ],
)
def test_rims_belong_on_unlike_hubs_by_what_is_stated_of_them(front, rear, unlike):
    stated = {f"/candidate/front/rim/{fact}": value for fact, value in front.items()}
    stated |= {f"/candidate/rear/rim/{fact}": value for fact, value in rear.items()}
    candidate = check(changed(saloon(), stated)).case.candidate
    assert bool(on_unlike_hubs(rim_facts(candidate.front.rim), rim_facts(candidate.rear.rim))) == unlike


@pytest.mark.parametrize(
    ("way", "code", "where", "must"),
    [
        (("front", "rear"), "clearance.inboard", "front", True),
        (("front", "rear"), "rim.brake_clearance", "front", True),
        (("front", "rear"), "clearance.inboard", "rear", False),
        (("front", "rear"), "load.capacity", "front", False),
        (("rear", "front"), "rim.bolt_circle", "rear", True),
        # The present wheels turn where they are.
        (("front", "present"), "clearance.inboard", "front", False),
    ],
)
def test_nothing_is_left_to_measure_for_wheels_of_the_other_axle(way, code, where, must):
    assert Way(*way).must_stand(code, where) == must


@pytest.mark.parametrize(
    ("way", "text", "pointer"),
    [
        (("front", "present"), "keep the present front wheels", "/candidate/front"),
        (("rear", "present"), "keep the present rear wheels", "/candidate/rear"),
        (("front", "rear"), "fit the proposed rear wheels on the front axle too", "/candidate/front"),
        (("rear", "front"), "fit the proposed front wheels on the rear axle too", "/candidate/rear"),
    ],
)
def test_a_way_is_told_by_its_axle_and_its_wheels(way, text, pointer):
    remedy = Way(*way).remedy
    assert (remedy.text, remedy.pointer, remedy.quantity, remedy.equals) == (text, pointer, "fitment", way[1])
