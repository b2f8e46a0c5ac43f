"""How much is answered: `short` is what a shop shows, `standard` every finding, `full` every sentence and source."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from tests.contract.document import app
from tests.support.cases import Json, saloon

ROOT = Path(__file__).parents[2]
STORIES = [path for path in sorted((ROOT / "demo_requests").glob("*.check.json")) if "typing-error" not in path.name]
# A shop's page shows this much (the size that the service aims at for the middle one of the stories).
SHORT_BYTES = 2500


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def asked(client: TestClient, request: Json, detail: str | None) -> Json:
    more = {} if detail is None else {"detail": detail}
    answer = client.post("/v1/fitments/check", json=request | more)
    assert answer.status_code == 200, answer.text
    found: Json = answer.json()
    return found


def heads(findings: list[Json]) -> list[tuple[str, ...]]:
    return [(each["code"], each["axle"], each["outcome"]) for each in findings]


@pytest.mark.parametrize("path", STORIES, ids=lambda path: path.name)
def test_each_level_says_the_same_and_less_of_it(client, path):
    request = json.loads(path.read_text(encoding="utf-8"))
    short, standard, full = (asked(client, request, each) for each in ("short", "standard", "full"))
    for name in ("verdict", "summary", "finding_counts"):
        assert short[name] == standard[name] == full[name]
    assert heads(standard["findings"]) == heads(full["findings"])
    speaking = [each for each in full["findings"] if each["outcome"] != "met" and each.get("decides", True)]
    assert heads(short["findings"]) == heads(speaking)
    assert [each["message"] for each in short["findings"]] == [each["message"] for each in speaking]
    assert {each["code"] for each in short["actions"]} <= {each["code"] for each in full["actions"]}
    assert len(json.dumps(short)) < len(json.dumps(standard)) < len(json.dumps(full))


def test_standard_is_what_is_answered_where_nothing_is_said(client):
    assert asked(client, saloon(), None) == asked(client, saloon(), "standard")


def test_what_a_short_answer_leaves_out_of_the_job_card_stands_in_its_findings(client):
    request = json.loads((ROOT / "demo_requests" / "staggered-one-step-wider.check.json").read_text(encoding="utf-8"))
    short, full = asked(client, request, "short"), asked(client, request, "full")
    kept = {each["code"] for each in short["actions"]}
    left_out = [each for each in full["actions"] if each["code"] not in kept]
    assert left_out
    listed = {each["code"] for each in short["findings"]}
    assert all(set(each["findings"]) & listed for each in left_out)


def test_every_source_that_a_finding_names_is_listed_once(client):
    full = asked(client, saloon(), "full")
    named = {each["basis"]["source"] for each in (*full["findings"], *full["trade_offs"])}
    assert named == set(full["sources"])
    assert all(each["reference"] for each in full["sources"].values())


@pytest.mark.parametrize("path", STORIES, ids=lambda path: path.name)
def test_every_sentence_can_be_made_again_from_its_template_and_what_fills_it(client, path):
    # As `str.format` reads a template (the Python library reference, "Format String Syntax").
    full = asked(client, json.loads(path.read_text(encoding="utf-8")), "full")
    told = [(each["message"], each) for each in full["findings"]] + [(each["text"], each) for each in full["actions"]]
    for sentence, each in told:
        filled = {name: parameter["text"] for name, parameter in each.get("parameters", {}).items()}
        assert each["template"].format_map(filled) == sentence


def test_what_fills_a_sentence_is_data_in_metric_units_whatever_the_sentence_says(client):
    # Load index 91 is 615 kg, of which a V tyre keeps 92.5 % at 235 km/h (UN Regulation No. 30, para. 2.31), twice;
    # a pound is 0.45359237 kg (international yard and pound agreement, 1959).
    request = json.loads((ROOT / "demo_requests" / "load-fails-at-top-speed.check.json").read_text(encoding="utf-8"))
    worst = asked(client, request | {"language": "de", "units": "imperial"}, "standard")["findings"][0]
    assert worst["parameters"]["carried"] == {"text": "2508 lb", "value": pytest.approx(1137.75), "unit": "kg"}
    assert worst["parameters"]["share"] == {"text": "92,5 %", "value": pytest.approx(92.5), "unit": "%"}
    assert "template" not in worst


def test_most_short_answers_are_as_short_as_a_shop_shows(client):
    sizes = []
    for path in STORIES:
        answer = client.post(
            "/v1/fitments/check", json=json.loads(path.read_text(encoding="utf-8")) | {"detail": "short"}
        )
        sizes.append(len(answer.content))
    assert sorted(sizes)[len(sizes) // 2] < SHORT_BYTES


@pytest.mark.parametrize("detail", ["short", "standard", "full"])
def test_rows_of_a_comparison_have_as_much_as_is_asked_for(client, detail):
    request = saloon()
    question = {"vehicle": request["vehicle"], "candidates": [request["candidate"]] * 2, "detail": detail}
    answer = client.post("/v1/fitments/compare", json=question | {"explain_first": 1}).json()
    for row in answer["rows"]:
        assert ("axles" in row) is ("findings" in row) is (detail != "short")
    assert "summary" in answer["rows"][0]
    bases = [each for each in answer["rows"][0].get("findings", []) if "basis" in each]
    assert ("sources" in answer) is bool(bases)
    assert detail == "full" or not bases
