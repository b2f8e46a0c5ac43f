"""Every demo request is posted, and its answer is what the document promises."""

import json
from collections import Counter
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from tests.contract.document import answer_schema, app, validator

DEMO_REQUESTS = Path(__file__).parents[2] / "demo_requests"
BODIES = sorted(DEMO_REQUESTS.glob("*.json"))
GET_PATHS = [
    line.strip()
    for line in (DEMO_REQUESTS / "get_requests.txt").read_text(encoding="utf-8").splitlines()
    if line.strip() and not line.startswith("#")
]
REFUSED = {"typing-error.check.json": 422}
VERDICTS = {"suitable", "suitable_with_conditions", "undetermined", "not_recommended", "unsuitable"}


@pytest.fixture(scope="module")
def client():
    return TestClient(app())


def post(client, path):
    operation = path.name.split(".")[-2]
    return client.post(f"/v1/fitments/{operation}", json=json.loads(path.read_text(encoding="utf-8")))


def check(client, story):
    return post(client, DEMO_REQUESTS / f"{story}.check.json").json()


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_a_story_is_answered_or_refused_as_it_tells(client, path):
    assert post(client, path).status_code == REFUSED.get(path.name, 200)


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_the_answer_to_a_story_is_as_the_document_says(client, path):
    answer = post(client, path)
    media_type = answer.headers["content-type"].partition(";")[0]
    schema = answer_schema(f"/v1/fitments/{path.name.split('.')[-2]}", "post", answer.status_code, media_type)
    validator(schema).validate(answer.json() if media_type.endswith("json") else answer.text)


@pytest.mark.parametrize("path", GET_PATHS)
def test_every_path_to_read_is_answered(client, path):
    assert client.get(path).status_code == 200


def test_the_stories_come_to_every_verdict(client):
    met = Counter(post(client, path).json().get("verdict") for path in DEMO_REQUESTS.glob("*.check.json"))
    assert set(met) >= VERDICTS


def test_a_letter_for_a_digit_is_shown_where_it_stands(client):
    fault = check(client, "typing-error")["errors"][0]
    assert (fault["pointer"], fault["code"]) == ("/candidate/rear/tyre/size", "unreadable_designation")
    assert fault["position"] <= "2O5/55 R16 94W XL".index("O")


def test_a_load_index_that_fails_at_top_speed_says_what_is_left_of_it(client):
    # Load index 91 is 615 kg; a tyre V keeps 92.5 % of it at 235 km/h (UN Regulation No. 30, para. 2.31: 100 % at 210,
    # 91 % at 240 km/h, and between them a straight line).
    worst = check(client, "load-fails-at-top-speed")["findings"][0]
    assert (worst["code"], worst["outcome"]) == ("load.capacity", "not_met")
    assert worst["measured"] == pytest.approx(2 * 615 * (1 - 0.09 * (235 - 210) / (240 - 210)), abs=0.01)


def test_twin_tyres_carry_by_their_second_index(client):
    # Load index 104 is 900 kg, 102 is 850 kg (ISO load index table): four times the second is too little.
    worst = check(client, "twin-wheel-van")["findings"][0]
    assert (worst["code"], worst["outcome"], worst["measured"]) == ("load.capacity", "not_met", 4 * 850.0)


def test_an_exact_speedometer_may_not_meet_a_larger_tyre(client):
    # UN Regulation No. 39, para. 5.3: the displayed speed is never below the true one.
    found = check(client, "exact-speedometer")["findings"]
    assert {each["outcome"] for each in found if each["code"] == "diameter.speedometer"} == {"not_met"}


@pytest.mark.parametrize(
    ("story", "direction"),
    [
        ("staggered-same-sizes", "neutral"),
        ("staggered-one-step-wider", "neutral"),
        ("square-all-round", "towards_oversteer"),
        ("narrow-all-round", "towards_oversteer"),
        ("wide-at-the-back-only", "towards_understeer"),
    ],
)
def test_the_balance_shifts_as_the_trade_knows(client, story, direction):
    # Common practice, no source: narrower at the rear than before is towards oversteer, wider towards understeer.
    assert check(client, story)["vehicle"]["balance"]["direction"] == direction
