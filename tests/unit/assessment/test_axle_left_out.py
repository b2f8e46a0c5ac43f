"""A candidate that leaves an axle out leaves it as it is: the same answer as with its present fitment written out.

Reference: each other.
"""

import pytest

from tests.support.cases import ABSENT, answer, changed, check, saloon
from tests.support.wire import client

WIDER = ("235/45 R17 97W XL", "8J x 17 H2 ET45")
OTHER = {"front": "rear", "rear": "front"}


def both_ways(left_out):
    """Return the request with an axle left out and with its present fitment written out."""
    asked = saloon(WIDER, WIDER)
    written = changed(asked, {f"/candidate/{left_out}": asked["vehicle"][left_out]["fitted"]})
    return changed(asked, {f"/candidate/{left_out}": ABSENT}), written


@pytest.mark.parametrize("left_out", ["front", "rear"])
def test_an_axle_left_out_is_answered_like_its_present_fitment(left_out):
    without, written = both_ways(left_out)
    assert answer(check(without)) == answer(check(written))


@pytest.mark.parametrize("left_out", ["front", "rear"])
def test_nothing_changes_on_an_axle_left_out(left_out):
    found = check(both_ways(left_out)[0])
    assert getattr(found.car, left_out).change.overall_diameter_mm == 0
    assert getattr(found.car, OTHER[left_out]).change.section_width_mm > 0


@pytest.mark.parametrize("left_out", ["front", "rear"])
@pytest.mark.parametrize("operation", ["check", "drawing", "report"])
def test_every_route_on_one_candidate_takes_it(operation, left_out):
    without, written = both_ways(left_out)
    answers = [client().post(f"/v1/fitments/{operation}", json=asked) for asked in (without, written)]
    assert [each.status_code for each in answers] == [200, 200]
    assert answers[0].content == answers[1].content


def test_a_comparison_takes_candidates_that_leave_an_axle_out():
    asked = saloon(WIDER, WIDER)
    rear = asked["candidate"]["rear"]
    found = client().post(
        "/v1/fitments/compare", json={"vehicle": asked["vehicle"], "candidates": [{"label": "rear only", "rear": rear}]}
    )
    (row,) = found.json()["rows"]
    assert row["changed"] == ["rear"]
    assert row["change"].endswith("the front stays as it is.")


def test_a_candidate_of_neither_axle_is_the_car_as_it_stands():
    assert check(changed(saloon(), {"/candidate": {}})).verdict == "suitable"


def test_a_comparison_says_which_candidate_has_spacers_under_twins():
    asked = changed(saloon(), {"/vehicle/rear/wheels_per_side": 2})
    spaced = {"rear": {**asked["candidate"]["rear"], "spacer_mm": 5}}
    found = client().post(
        "/v1/fitments/compare", json={"vehicle": asked["vehicle"], "candidates": [asked["candidate"], spaced]}
    )
    (refused,) = found.json()["refused"]
    assert refused["errors"][0]["pointer"] == "/candidates/1/rear/spacer_mm"
