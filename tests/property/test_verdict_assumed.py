"""Top speed and axle mass left out: the present fitment is taken to be right, and nothing more is claimed.

A car is no faster than the speed symbols of its tyres, and an axle weighs no more than its tyres and rims carry: that
is what type approval asks of every new car (UN R142, from memory), and what a fitter reads off the car in front of him.
"""

import pytest

from service.api.inbound.translate import case
from service.api.schemas.request import CheckRequest
from tests.support import obeying, workshop
from tests.support.cases import ABSENT, at, changed
from tests.support.effort import cases
from tests.support.remedies import NotApplicable
from tests.support.shop_cases import shop_question
from tests.support.wire import AXLES, PACKS, check, post, question, rank

SPEED = "/vehicle/max_speed_kmh"
MASSES = [f"/vehicle/{axle}/max_axle_mass_kg" for axle in AXLES]
LEFT_OUT = {"speed": [SPEED], "masses": MASSES, "one mass": MASSES[1:], "all": [SPEED, *MASSES]}
SEEDS = range(cases(40, 600))
OF_LOAD_AND_SPEED = ("speed.capability", "load.capacity", "load.pressure", "load.towing", "rim.load_rating")


def without(asked, left_out):
    """Return a request without these fields."""
    return changed(asked, dict.fromkeys(LEFT_OUT[left_out], ABSENT))


def outcomes(answer):
    """Return how the questions on load and speed came out, by code and axle."""
    return {
        (each["code"], each["axle"]): each["outcome"]
        for each in answer["findings"]
        if each["code"] in OF_LOAD_AND_SPEED
    }


def asked_for(seed):
    """Return a shop's question, and what is left out of it."""
    return shop_question(seed), list(LEFT_OUT)[seed % len(LEFT_OUT)]


@pytest.mark.parametrize("left_out", LEFT_OUT)
@pytest.mark.parametrize("name", workshop.NAMES)
def test_the_present_fitment_stays_suitable(name, left_out):
    pack = PACKS[(len(name) + len(left_out)) % len(PACKS)]
    answer = check(without(question(workshop.vehicle(name), pack=pack), left_out))
    assert answer["verdict"] == "suitable", answer["summary"]


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_met_without_the_numbers_is_not_broken_by_the_true_ones(seed):
    """The vehicles of the workshop are sound: their true speeds and masses are within what is assumed of them."""
    asked, left_out = asked_for(seed)
    supposed, true = outcomes(check(without(asked, left_out))), outcomes(check(asked))
    assert not [where for where, outcome in true.items() if outcome == "not_met" and supposed[where] == "met"]


@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_is_forbidden_for_a_number_that_nobody_gave(seed):
    asked, _ = asked_for(seed)
    assert "not_met" not in outcomes(check(without(asked, "all"))).values()


@pytest.mark.parametrize("seed", SEEDS)
def test_stating_what_was_assumed_makes_nothing_worse(seed):
    """Where nothing waits for a number; of weaker wheels, the most that may be is of course too much."""
    asked, left_out = asked_for(seed)
    supposed = without(asked, left_out)
    vehicle = case(CheckRequest.model_validate(supposed)).vehicle
    numbers = [vehicle.max_speed_kmh, vehicle.front.max_axle_mass_kg, vehicle.rear.max_axle_mass_kg]
    stated = {
        field: number for field, number in zip([SPEED, *MASSES], numbers, strict=True) if field in LEFT_OUT[left_out]
    }
    found = check(supposed)
    if "not_assessed" not in outcomes(found).values():
        assert rank(check(changed(asked, stated))) <= rank(found)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_number_that_is_enough_is_enough(seed):
    asked, left_out = asked_for(seed)
    supposed = without(asked, left_out)
    answer = check(supposed)
    for each in answer["findings"]:
        remedy = each.get("remedy", {})
        if remedy.get("pointer") in LEFT_OUT[left_out] and "at_most" in remedy:
            stated = check(changed(supposed, {remedy["pointer"]: remedy["at_most"]}))
            key = (each["code"], each["axle"])
            assert rank(stated) <= rank(answer)
            assert outcomes(stated).get(key) != "not_met", each


@pytest.mark.parametrize("seed", SEEDS)
def test_who_does_what_the_answer_says_gets_no_worse_verdict(seed):
    asked, left_out = asked_for(seed)
    supposed = without(asked, left_out)
    answer = check(supposed)
    assert obeying.contradictions(answer) == []
    try:
        done = obeying.obey(supposed, answer)
    except NotApplicable:
        return
    assert rank(check(done)) <= rank(answer)


@pytest.mark.parametrize("seed", range(0, 120, cases(12, 3)))
def test_compare_says_what_check_says(seed):
    questions = [shop_question(seed + 120 * step) for step in range(6)]
    left_out = list(LEFT_OUT)[seed % len(LEFT_OUT)]
    first = without(questions[0], left_out)
    asked = {"vehicle": first["vehicle"], "rule_pack": PACKS[seed % len(PACKS)]}
    candidates = [each["candidate"] for each in questions]
    answer = post("/v1/fitments/compare", {**asked, "candidates": candidates})
    assert len(answer["notes"]) == len(LEFT_OUT[left_out])
    for row in answer["rows"]:
        alone = check({**asked, "candidate": candidates[row["index"]]})
        assert row["verdict"] == alone["verdict"]
        worst = next((each for each in alone["findings"] if each["outcome"] != "met"), None)
        if row.get("reason") and worst and alone["verdict"] != "suitable":
            assert row["reason"] == worst["message"]


@pytest.mark.parametrize("seed", range(6))
def test_search_and_rims_answer_and_offer_what_check_says(seed):
    vehicle = without({"vehicle": workshop.vehicle(workshop.NAMES[2 * seed])}, "all")["vehicle"]
    rims = {axle: [at(vehicle, f"/{axle}/fitted/rim")] for axle in AXLES}
    searched = post("/v1/fitments/search", {"vehicle": vehicle, "rims": rims, "max_results": 5})
    for row in searched["rows"]:
        assert check({"vehicle": vehicle, "candidate": row["candidate"]})["verdict"] == row["verdict"]
    tyres = {"front": [{"size": at(vehicle, "/front/fitted/tyre/size")}]}
    found = post("/v1/fitments/rims", {"vehicle": vehicle, "tyres": tyres})
    assert found["axles"]["front"]["tyres"][0]["widths"]
    taken = check(question(vehicle))["assumptions"][: len(LEFT_OUT["all"])]
    assert set(taken) < set(found["notes"])
    assert set(taken) < set(searched["notes"])
