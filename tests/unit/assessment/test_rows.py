"""What a row of many candidates says is what the single check says: reason, first remedy, pressures, axles that change.

Reference: the single check of the same candidate; its sentences and its job card. How a fitter counts the tyres that
are changed is common practice, no source.
"""

import json
from pathlib import Path

import pytest

from service.api.inbound import translate
from service.api.render.rows import rows
from service.api.schemas.comparison import CompareRequest
from service.assessment.answer.assess import assess
from service.assessment.batch.changed_axles import change_in_words, changed_axles
from service.assessment.batch.compare import compare
from service.assessment.batch.grading import stack_candidates
from service.assessment.view.views import candidate_facts
from service.core.findings import ADVISORY
from tests.support import workshop
from tests.support.cases import changed, saloon
from tests.support.effort import cases
from tests.support.many_cases import question
from tests.support.shop_cases import shop_question
from tests.support.wire import post
from tests.unit.assessment.test_compare import random_ones

AXLES = ("front", "rear")
DEMO_REQUESTS = Path(__file__).parents[3] / "demo_requests"


@pytest.mark.parametrize("seed", range(cases(12, 96)))
def test_reason_remedy_and_pressures_are_those_of_the_single_check(seed):
    one, candidates = random_ones(seed, 50)
    for row, each in zip(rows(compare(one, candidates, "balance"), "standard"), candidates, strict=True):
        alone = assess(one._replace(candidate=each))
        said = [finding for finding in alone.findings if finding.outcome >= ADVISORY]
        assert row.get("reason") == (said[0].message if said else None)
        remedies = [finding.remedy.text for finding in said[:5] if finding.remedy is not None]
        assert row.get("first_remedy") == (remedies[0] if remedies else None)
        ordered = {
            axle: action.numbers["pressure_kpa"]
            for axle in AXLES
            for action in alone.actions
            if action.code == f"set_pressure_{axle}" and "pressure_kpa" in action.numbers
        }
        assert row.get("set_pressure_kpa", {}) == pytest.approx(ordered, abs=0.01)


def test_an_axle_that_is_best_kept_is_named_in_a_row_as_in_the_check():
    asked = json.loads((DEMO_REQUESTS / "widths-of-a-saloon.compare.json").read_text(encoding="utf-8"))
    rows_of = post("/v1/fitments/compare", asked | {"explain_first": 0})["rows"]
    kept = 0
    for row in rows_of:
        if "errors" in row or row["verdict"] == "suitable":
            continue
        candidate = asked["candidates"][row["index"]]
        alone = post("/v1/fitments/check", {"vehicle": asked["vehicle"], "candidate": candidate})
        remedies = [each["remedy"]["text"] for each in alone["findings"][:5] if "remedy" in each]
        assert row["first_remedy"] == remedies[0]
        kept += remedies[0].startswith("keep the present rear wheels")
    # Far narrower and far wider at the rear alone: what is there now is better kept.
    assert kept == 2


def test_a_wheel_on_single_and_on_twin_wheels_is_looked_up_for_each():
    vehicle = workshop.vehicle("van, twin wheels")
    one = translate.question(CompareRequest.model_validate({"vehicle": vehicle, "candidates": [{}]}))
    same = one.candidate._replace(rear=one.candidate.front)
    front, rear = stack_candidates(one, [same])
    # 107/105: 975 kg alone, 925 kg as a twin (load index table).
    assert (front.rated_kg[0], rear.rated_kg[0]) == (975.0, 925.0)


# What a row keeps of a finding.
SHORT = ("code", "axle", "already", "decides", "measured", "limit", "unit")


def test_the_findings_of_a_row_say_what_is_so_today_and_what_decides():
    asked = shop_question(7)
    candidates = [shop_question(7 + 120 * step)["candidate"] for step in range(20)]
    answer = post("/v1/fitments/compare", {"vehicle": asked["vehicle"], "candidates": candidates, "explain_first": 0})
    for row in answer["rows"]:
        alone = post("/v1/fitments/check", {"vehicle": asked["vehicle"], "candidate": candidates[row["index"]]})
        # As text, because a zero with a sign equals one without.
        told = [repr([each.get(name) for name in SHORT]) for each in row["findings"]]
        assert told == [repr([each.get(name) for name in SHORT]) for each in alone["findings"][: len(told)]]


def test_a_number_next_to_nothing_has_no_sign_in_a_row():
    """14.007 mm of room less 14.01; speed shown over speed on 0.99997 of the circumference."""
    asked = changed(
        saloon(),
        {
            "/vehicle/speedometer": {"displayed_kmh": 99, "true_kmh": 100},
            "/vehicle/rear/fitted/tyre/rolling_circumference_mm": 1933.7,
            "/candidate/rear/tyre/rolling_circumference_mm": 0.99997 * 1933.7,
            "/vehicle/front/clearance/inboard_mm": 14.007,
            "/candidate/front/rim/size": "7.5J x 17 H2 ET59.01",
        },
    )
    many = {"vehicle": asked["vehicle"], "candidates": [asked["candidate"]], "explain_first": 0}
    answer = post("/v1/fitments/compare", many)
    told = {each["code"]: each for each in answer["rows"][0]["findings"]}
    assert repr(told["clearance.inboard"]["measured"]) == "0.0"
    assert repr(told["diameter.speedometer"]["limit"]) == "0.0"


@pytest.mark.parametrize("seed", [3, 4])
def test_wheels_met_twice_have_the_facts_of_one_looked_up_alone(seed):
    one, candidates = random_ones(seed)
    front, rear = stack_candidates(one, candidates)
    for at, each in enumerate(candidates):
        for stacked, alone in zip((front, rear), candidate_facts(one, each), strict=True):
            shown = {name: float(column[at]) for name, column in vars(stacked).items()}
            assert shown == pytest.approx(vars(alone), nan_ok=True)


def _row(name, **more):
    vehicle = workshop.vehicle(name)
    proposed = {axle: {**vehicle[axle]["fitted"], **more.get(axle, {})} for axle in AXLES}
    (row,) = post("/v1/fitments/compare", {"vehicle": vehicle, "candidates": [proposed]})["rows"]
    return row["changed"], row["change"]


def test_what_stays_as_it_is_is_named():
    rear = {"tyre": {"size": "285/30 R19 98Y XL"}}
    assert _row("staggered saloon", rear=rear) == (
        ["rear"],
        "Two of four: rear 285/30 R19 98Y XL; the front stays as it is.",
    )


def test_two_new_tyres_of_the_same_size_are_two_of_four():
    assert _row("worn tyres", rear={"tyre": {"size": "205/55 R16 91V"}}) == (
        ["rear"],
        "Two of four: rear 205/55 R16 91V; the front stays as it is.",
    )


def test_the_rear_axle_of_a_twin_van_has_four_of_six():
    rear = {"tyre": {"size": "195/75 R16C 110/108R", "reference_pressure_kpa": 475}}
    changed, words = _row("van, twin wheels", rear=rear)
    assert changed == ["rear"]
    assert words.startswith("Four of six: rear ")


def test_the_present_fitment_changes_nothing_and_one_size_all_round_is_said_once():
    assert _row("hatch") == ([], "As fitted now.")
    tyre = {"tyre": {"size": "205/60 R15 91V"}}
    assert _row("hatch", front=tyre, rear=tyre) == (["front", "rear"], "All four: 205/60 R15 91V.")


def test_a_rim_is_named_only_where_it_changes():
    one, candidates = random_ones(3, 10)
    for each in candidates:
        words = change_in_words(one.vehicle, each, changed_axles(one.vehicle, each))
        for axle, fitted in ((one.vehicle.front, each.front), (one.vehicle.rear, each.rear)):
            rim = fitted.rim.designation.canonical
            if rim != axle.fitted.rim.designation.canonical:
                assert rim in words


def test_verdicts_that_are_not_asked_for_are_left_out_and_counted():
    asked = question(3, 40) | {"explain_first": 0}
    everything = post("/v1/fitments/compare", asked)
    only = post("/v1/fitments/compare", asked | {"verdicts": ["unsuitable"]})
    kept = [row for row in everything["rows"] if row.get("verdict") == "unsuitable"]
    assert 0 < len(kept) < everything["compared"]
    assert [row for row in only["rows"] if "verdict" in row] == kept
    assert (everything["left_out"], only["left_out"]) == (0, only["compared"] - len(kept))


def test_where_no_candidate_is_listed_the_answer_says_why():
    vehicle = workshop.vehicle("hatch")
    now = {axle: vehicle[axle]["fitted"] for axle in AXLES}
    answer = post("/v1/fitments/compare", {"vehicle": vehicle, "candidates": [now], "verdicts": ["unsuitable"]})
    assert answer["rows"] == []
    assert answer["why_none"] == "The verdicts asked for leave out every candidate: of 1, 1 fit."
