"""From findings to the verdict: the table of the design, the order, and that every question is answered."""

import numpy as np
import pytest

from service.assessment.answer.verdict import VERDICTS, verdict_codes
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN
from tests.support.cases import changed, check, finding, saloon

REAR = "/candidate/rear"
FORBIDDEN = {f"{REAR}/rim/bolt_circle": "4x100"}
OPEN_REQUIRED = {f"{REAR}/tyre/size": "225/45 R17"}
CONDITION = {f"{REAR}/rim/centre_bore_mm": 72.6}
OPEN_OTHER = {f"{REAR}/rim/size": "7.5J x 17 ET45"}

# The deciding questions of the design that an axle alone asks: rim width, load, speed, diameter.
REQUIRED_AND_OPEN = {
    "rim.width": {f"{REAR}/tyre/size": "225/15 R17 94W XL", f"{REAR}/tyre/overall_diameter_mm": 634},
    "load.capacity": {f"{REAR}/tyre/size": "225/45 R17"},
    "speed.capability": {
        f"{REAR}/tyre/size": "225/45 R17 (94Y) XL",
        "/candidate/front/tyre/size": "225/45 R17 (94Y) XL",
        "/vehicle/max_speed_kmh": 301,
    },
    "diameter.deviation": {f"{REAR}/tyre/size": "225 R17 94W"},
}
CODES_ON_AN_AXLE = (
    "rim.diameter",
    "rim.width",
    "rim.contour",
    "rim.load_rating",
    "rim.bolt_circle",
    "rim.centre_bore",
    "rim.brake_clearance",
    "load.capacity",
    "load.pressure",
    "load.below_present",
    "speed.capability",
    "diameter.deviation",
    "clearance.inboard",
    "clearance.outboard",
    "clearance.radial",
    "track.change",
    "wet.aquaplaning",
    "tyre.tread_depth",
)
CODES_ON_THE_VEHICLE = (
    "diameter.speedometer",
    "diameter.axle_ratio",
    "balance.change",
    "balance.grip_order",
    "wet.axle_order",
    "tyre.structure",
    "tyre.season_mix",
    "tyre.run_flat_mix",
    "tyre.tread_difference",
)


@pytest.mark.parametrize(
    ("changes", "verdict"),
    [
        ({}, "suitable"),
        (OPEN_OTHER, "suitable"),
        (CONDITION, "suitable_with_conditions"),
        (CONDITION | OPEN_OTHER, "suitable_with_conditions"),
        (OPEN_REQUIRED, "undetermined"),
        (OPEN_REQUIRED | CONDITION | OPEN_OTHER, "undetermined"),
        (FORBIDDEN, "unsuitable"),
        (FORBIDDEN | OPEN_REQUIRED | CONDITION | OPEN_OTHER, "unsuitable"),
    ],
)
def test_the_worst_answer_makes_the_verdict(changes, verdict):
    assert check(changed(saloon(), changes)).verdict == verdict


@pytest.mark.parametrize(
    ("outcome", "verdict"),
    [
        (MET, "suitable"),
        (OPEN, "suitable"),
        (ADVISORY, "suitable_with_conditions"),
        (NOT_ASSESSED, "undetermined"),
        (NOT_RECOMMENDED, "not_recommended"),
        (NOT_MET, "unsuitable"),
    ],
)
def test_each_outcome_means_one_verdict(outcome, verdict):
    (code,) = verdict_codes(np.array([outcome], np.int8))
    assert VERDICTS[code] == verdict


@pytest.mark.parametrize("code", REQUIRED_AND_OPEN)
def test_a_required_question_that_stays_open_leaves_the_verdict_open(code):
    found = check(changed(saloon(), REQUIRED_AND_OPEN[code]))
    where = "vehicle" if code == "diameter.speedometer" else "rear"
    assert finding(found, code, where).outcome == NOT_ASSESSED
    assert found.verdict == "undetermined"


def test_findings_come_worst_first():
    """Not met, open required questions, advisories, other open questions, met."""
    found = check(changed(saloon(), FORBIDDEN | OPEN_REQUIRED | CONDITION | OPEN_OTHER))
    required = {"rim.diameter", *REQUIRED_AND_OPEN}
    places = {NOT_MET: 0, ADVISORY: 2, MET: 4}
    order = [places.get(each.outcome, 1 if each.code in required else 3) for each in found.findings]
    assert order == sorted(order)
    assert set(order) == {0, 1, 2, 3, 4}


@pytest.mark.parametrize("where", ["front", "rear"])
@pytest.mark.parametrize("code", CODES_ON_AN_AXLE)
def test_every_question_on_an_axle_is_answered_for_both(code, where):
    assert finding(check(saloon()), code, where).code == code


@pytest.mark.parametrize("code", CODES_ON_THE_VEHICLE)
def test_every_question_on_the_vehicle_is_answered(code):
    assert finding(check(saloon()), code, "vehicle").code == code


def test_the_rules_of_a_place_are_findings_of_their_own():
    request = changed(saloon(), {"/rule_pack": "nl"})
    assert finding(check(request), "law.track_change", "rear").basis.kind == "regulation"


def test_no_question_is_answered_twice():
    found = [(each.code, each.axle) for each in check(changed(saloon(), {"/rule_pack": "nl"})).findings]
    assert len(found) == len(set(found))
