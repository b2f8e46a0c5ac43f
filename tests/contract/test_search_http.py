"""`POST /v1/fitments/search` as a caller sees it: what it finds can be sent to `check`, and what is wrong is named."""

import json
from typing import Any

import pytest
from starlette.testclient import TestClient

from service.api.routers.many import SEARCH_BODY_BYTES
from service.api.schemas.base import MAX_ID
from service.api.schemas.search import MAX_RIMS, MAX_STOCK, MAX_STOCK_FAULTS, MAX_STOCK_TEXT
from tests.contract.document import app
from tests.support.cases import Json, saloon

PATH = "/v1/fitments/search"
RIM = {"size": "7.5J x 17 H2 ET45", "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 700}
WIDE_RIM = {**RIM, "size": "8.5J x 17 H2 ET45"}


# 245/40 R17 97W XL, number by number: sidewall practice.
NUMBERS = {
    "section_width_mm": 245,
    "aspect_ratio": 40,
    "rim_diameter_in": 17,
    "load_index": 97,
    "speed_symbol": "W",
    "load_version": "extra_load",
}
ALL_NUMBERS = NUMBERS | {
    "section_width_in": 10.55,
    "overall_diameter_in": 31.25,
    "construction": "bias_belted",
    "commercial": "LT",
    "load_index_twin": 108,
    "load_range": "E",
    "ply_rating": 10,
}


def lines(*sizes: str) -> list[Json]:
    return [{"size": each} for each in sizes]


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def question(**more: object) -> Json:
    return {"vehicle": saloon()["vehicle"], "rims": {"front": [RIM, WIDE_RIM]}, **more}


def found(client: TestClient, **more: object) -> Any:
    answer = client.post(PATH, json=question(**more))
    assert answer.status_code == 200
    return answer.json()


def test_what_is_found_can_be_sent_to_the_check(client):
    rows = found(client, max_results=5)["rows"]
    assert len(rows) == 5
    for row in rows:
        asked = {"vehicle": saloon()["vehicle"], "candidate": row["candidate"]}
        assert client.post("/v1/fitments/check", json=asked).json()["verdict"] == row["verdict"]


def test_every_result_names_tyre_rim_and_pressure(client):
    for row in found(client, stock=lines("225/45 R17 94W XL", "245/40 R17 97W XL"))["rows"]:
        for axle in ("front", "rear"):
            told, sent = row["fitment"][axle], row["candidate"][axle]
            assert told["tyre"] == sent["tyre"]["size"]
            assert sent["rim"] == [RIM, WIDE_RIM][told["rim_index"]]
            assert told["tyre"] == ["225/45 R17 94W XL", "245/40 R17 97W XL"][told["stock_index"]]
            assert told["pressure_kpa"] == sent["pressure_kpa"]


def test_rims_of_the_rear_may_differ(client):
    rims = {"front": [{"id": "F", **RIM}], "rear": [{"id": "R", **WIDE_RIM}]}
    answer = found(client, rims=rims, limits={"stagger": "any"})
    assert {row["candidate"]["rear"]["rim"]["size"] for row in answer["rows"]} == {WIDE_RIM["size"]}
    assert {tuple(row["fitment"][axle]["rim_id"] for axle in ("front", "rear")) for row in answer["rows"]} == {
        ("F", "R")
    }


def test_sizes_of_the_grid_are_said_to_be_from_it(client):
    assert "may not exist" in found(client)["notes"][0]
    assert not any("may not exist" in note for note in found(client, stock=lines("225/45 R17 94W XL"))["notes"])


def test_a_size_of_the_stock_that_cannot_be_read_is_named_and_the_others_stand(client):
    answer = found(client, stock=lines("hello", "225/45 R17 94W XL", "225/4x R17"))
    assert [(each["pointer"], each["code"]) for each in answer["refused"]] == [
        ("/stock/0/size", "unreadable_designation"),
        ("/stock/2/size", "unreadable_designation"),
    ]
    assert {row["fitment"]["front"]["stock_index"] for row in answer["rows"]} == {1}


def test_the_callers_names_come_back_with_what_is_found_and_what_is_refused(client):
    stock = [
        {"id": "A-1", "size": "225/45 R17 94W XL"},
        {"id": "A-2", **NUMBERS},
        {"id": "A-3", "size": "245/40 R17 97W XL", "aspect_ratio": 45},
        {"id": "A-4"},
        {"id": "A-5", "size": "120/70ZR17 58W M/C"},
    ]
    answer = found(client, stock=stock, rims={"front": [{"id": "R-1", **RIM}, WIDE_RIM]})
    assert [(each["id"], each["pointer"], each["code"]) for each in answer["refused"]] == [
        ("A-3", "/stock/2/aspect_ratio", "wrong_number"),
        ("A-4", "/stock/3/size", "required"),
        ("A-5", "/stock/4/size", "out_of_scope"),
    ]
    named = [row["fitment"][axle] for row in answer["rows"] for axle in ("front", "rear")]
    assert {(each["stock_id"], each["tyre"]) for each in named} == {
        ("A-1", "225/45 R17 94W XL"),
        ("A-2", "245/40 R17 97W XL"),
    }
    assert {(each.get("rim_id"), each["rim_index"]) for each in named} <= {("R-1", 0), (None, 1)}
    assert "R-1" in {each.get("rim_id") for each in named}


def test_of_many_unreadable_sizes_a_hundred_are_named_and_all_are_counted(client):
    answer = found(client, stock=lines("x") * 300)
    assert (len(answer["refused"]), answer["refused_count"], answer["rows"]) == (MAX_STOCK_FAULTS, 300, [])


def test_a_stock_of_five_thousand_is_taken(client):
    assert found(client, stock=lines("225/45 R17 94W XL") * MAX_STOCK)["sieves"]["front"]["tried"] == 2 * MAX_STOCK


def test_the_largest_stock_that_the_contract_admits_is_taken(client):
    face = "\\ud83d\\ude00"
    numbers = "".join(f"\\u{ord(each):04x}" if each.isalpha() else each for each in json.dumps(ALL_NUMBERS)[1:-1])
    escaped = f'{{"id":"{face * MAX_ID}","size":"{face * MAX_STOCK_TEXT}",{numbers}}}'
    body = client.build_request("POST", PATH, json=question()).content.decode()
    body = body[:-1] + f',"stock":[{",".join([escaped] * MAX_STOCK)}]}}'
    assert 0.9 * SEARCH_BODY_BYTES < len(body) < SEARCH_BODY_BYTES
    answer = client.post(PATH, content=body, headers={"Content-Type": "application/json"})
    assert (answer.status_code, answer.json()["refused_count"]) == (200, MAX_STOCK)


def test_why_so_few_is_told_most_first(client):
    sieve = found(client)["sieves"]["front"]
    counts = [each["count"] for each in sieve["removed_by"]]
    assert sieve["tried"] == sieve["kept"] + sum(counts)
    assert counts == sorted(counts, reverse=True)
    assert sieve["removed_by"][0]["code"] == "rim.diameter"


@pytest.mark.parametrize(
    ("changes", "pointer"),
    [
        ({"rims": {"front": []}}, "/rims/front"),
        ({"rims": {"front": [RIM] * (MAX_RIMS + 1)}}, "/rims/front"),
        ({"rims": {"front": [RIM], "rear": []}}, "/rims/rear"),
        ({"rims": {"front": [{"size": "8J"}]}}, "/rims/front/0/size"),
        ({"stock": []}, "/stock"),
        ({"stock": [5]}, "/stock/0"),
        ({"stock": ["225/45 R17 94W XL"]}, "/stock/0"),
        ({"stock": [{"size": "225/45 R17 94W XL", "id": ""}]}, "/stock/0/id"),
        ({"stock": [{"size": "225/45 R17 94W XL", "id": "x" * (MAX_ID + 1)}]}, "/stock/0/id"),
        ({"stock": [{"size": "225/45 R17 94W XL", "id": "a\nb"}]}, "/stock/0/id"),
        ({"stock": [{"size": "225/45 R17 94W XL", "name": "x"}]}, "/stock/0/name"),
        ({"stock": [{"size": "x" * (MAX_STOCK_TEXT + 1)}]}, "/stock/0/size"),
        ({"stock": [{"size": "x"}] * (MAX_STOCK + 1)}, "/stock"),
        ({"limits": {"stagger": "wide"}}, "/limits/stagger"),
        ({"limits": {"room": 5}}, "/limits/room"),
        ({"max_results": 101}, "/max_results"),
    ],
)
def test_what_is_wrong_with_the_request_is_refused(client, changes, pointer):
    refused = client.post(PATH, json=question(**changes))
    assert refused.status_code == 422
    assert refused.json()["errors"][0]["pointer"] == pointer


def test_the_same_request_gives_the_same_bytes(client):
    assert client.post(PATH, json=question()).content == client.post(PATH, json=question()).content
