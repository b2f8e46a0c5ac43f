"""`POST /v1/fitments/compare` as a caller sees it.

References: RFC 6901 for pointers, RFC 4180 for the table, RFC 9110 section 12.5.1 for `Accept`; the single check for
what a row says. That a spreadsheet takes a cell which begins with = + - @ for a formula is common practice, no source.
"""

import csv
import io
import json
from typing import Any

import pytest
from starlette.testclient import TestClient

from service.api.schemas.comparison import MAX_CANDIDATES
from service.api.transport.accept import preferred
from tests.contract.document import app
from tests.contract.http_wire import Server, post, receive
from tests.support.cases import Json, changed, on_both_axles, saloon

PATH = "/v1/fitments/compare"
WIDER = on_both_axles(
    {"/candidate/{axle}/tyre/size": "245/40 R17 97W XL", "/candidate/{axle}/rim/size": "8J x 17 H2 ET45"}
)
TOO_SLOW = on_both_axles({"/candidate/{axle}/tyre/size": "225/45 R17 94T XL"})


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def candidate(changes: dict[str, object] | None = None, label: str = "") -> Json:
    return {**changed(saloon(), changes or {})["candidate"], "label": label}


def question(*candidates: object, **more: object) -> Json:
    return {"vehicle": saloon()["vehicle"], "candidates": list(candidates), **more}


def rows(client: TestClient, *candidates: object, **more: object) -> list[Any]:
    answer = client.post(PATH, json=question(*candidates, **more))
    assert answer.status_code == 200
    found: list[Any] = answer.json()["rows"]
    return found


def refused(client: TestClient, *candidates: object, **more: object) -> list[Any]:
    answer = client.post(PATH, json=question(*candidates, **more)).json()
    found: list[Any] = answer["refused"]
    return found


def table(client: TestClient, *candidates: object) -> list[dict[str, str]]:
    answer = client.post(PATH, json=question(*candidates), headers={"Accept": "text/csv"})
    assert answer.headers["content-type"] == "text/csv; charset=utf-8"
    return list(csv.DictReader(io.StringIO(answer.text, newline="")))


def test_each_candidate_has_a_row_best_first(client):
    found = rows(client, candidate(TOO_SLOW, "slow"), candidate(WIDER, "wide"), candidate(label="now"))
    assert [(each["rank"], each["index"], each["label"], each["verdict"]) for each in found] == [
        (1, 2, "now", "suitable"),
        (2, 1, "wide", "suitable_with_conditions"),
        (3, 0, "slow", "unsuitable"),
    ]


def test_a_row_says_what_the_check_says(client):
    request = changed(saloon(), TOO_SLOW | {"/candidate/rear/tyre/size": "205/45 R17 80W"})
    single = client.post("/v1/fitments/check", json=request).json()
    (row,) = rows(client, request["candidate"], explain_first=0)
    told = ("code", "axle", "outcome", "already", "measured", "limit", "unit")
    assert row["verdict"] == single["verdict"]
    assert row["findings"] == [{name: each[name] for name in told if name in each} for each in single["findings"][:5]]
    for axle in ("front", "rear"):
        change = single["axles"][axle]["change"]
        shown = row["axles"][axle]
        assert {name: change[name] for name in shown if name in change} == {
            name: shown[name] for name in shown if name in change
        }
        assert len(set(shown) & set(change)) == 6


def test_explained_rows_say_what_would_settle_a_finding_and_where(client):
    (row,) = rows(client, candidate(TOO_SLOW), explain_first=1)
    finding = next(each for each in row["findings"] if each["code"] == "speed.capability")
    assert finding["remedy"]["pointer"] == "/candidates/0/front/tyre/size"
    assert finding["message"]
    assert row["summary"]


def test_only_the_best_rows_are_explained(client):
    found = rows(client, candidate(), candidate(WIDER), candidate(TOO_SLOW), explain_first=1)
    assert ["summary" in each for each in found] == [True, False, False]


def test_one_bad_candidate_does_not_end_the_others(client):
    unreadable = candidate({"/candidate/rear/tyre/size": "225/4x R17"}, "misspelt")
    assert [each["index"] for each in rows(client, unreadable, candidate())] == [1]
    assert refused(client, unreadable, candidate())[0] == {
        "index": 0,
        "label": "misspelt",
        "errors": [
            {
                "pointer": "/candidates/0/rear/tyre/size",
                "detail": "This tyre designation cannot be read at position 4: expected an aspect ratio from 15 to "
                "100 per cent.",
                "code": "unreadable_designation",
                "position": 4,
                "expected": "an aspect ratio from 15 to 100 per cent",
            }
        ],
        "error_count": 1,
    }


@pytest.mark.parametrize(
    ("changes", "pointer", "code"),
    [
        ({"/candidate/front/pressure_kpa": 9999}, "/front/pressure_kpa", "out_of_range"),
        ({"/candidate/front/pressure_kpa": "250"}, "/front/pressure_kpa", "wrong_type"),
        ({"/candidate/front/rim/size": "8J"}, "/front/rim/size", "unreadable_designation"),
        ({"/candidate/rear": 5}, "/rear", "wrong_type"),
        ({"/candidate/label": "x" * 81}, "/label", "wrong_length"),
        ({"/candidate/a~1b": 1}, "/a~01b", "unknown_field"),
    ],
)
def test_a_fault_of_a_candidate_has_the_shape_of_any_fault(client, changes, pointer, code):
    body = {**changed(saloon(), changes)["candidate"]}
    (row,) = refused(client, body)
    assert [(each["pointer"], each["code"]) for each in row["errors"]] == [(f"/candidates/0{pointer}", code)]
    alone = client.post("/v1/fitments/check", json={"vehicle": saloon()["vehicle"], "candidate": body}).json()
    # The check of one candidate knows no `id` of it.
    told = [{**each, "detail": each["detail"].replace(", id.", ".")} for each in row["errors"]]
    assert [{**each, "pointer": ""} for each in alone["errors"]] == [{**each, "pointer": ""} for each in told]


def test_a_misspelt_field_of_a_candidate_is_offered_the_nearest_name(client):
    (row,) = refused(client, candidate({"/candidate/front/presure_kpa": 250}))
    assert 'did you mean "pressure_kpa"?' in row["errors"][0]["detail"]


def test_of_many_faults_five_are_listed_and_all_are_counted(client):
    (row,) = refused(client, {f"field_{number}": 1 for number in range(30)})
    assert (len(row["errors"]), row["error_count"]) == (5, 30)


def test_where_every_candidate_is_bad_the_answer_is_still_one(client):
    answer = client.post(PATH, json=question({"front": {}}, {"side": {}})).json()
    assert (answer["compared"], answer["refused_count"], len(answer["rows"]), len(answer["refused"])) == (0, 2, 0, 2)


@pytest.mark.parametrize(
    ("body", "pointer"),
    [
        (question(5), "/candidates/0"),
        (question(), "/candidates"),
        (question(*([{}] * (MAX_CANDIDATES + 1))), "/candidates"),
        (question({}, rank_by="price"), "/rank_by"),
        (question({}, explain_first=-1), "/explain_first"),
        (question({}, vehicle={}), "/vehicle/front"),
    ],
)
def test_what_is_wrong_with_the_request_as_a_whole_is_refused(client, body, pointer):
    refused = client.post(PATH, json=body)
    assert refused.status_code == 422
    assert refused.json()["errors"][0]["pointer"] == pointer


def test_a_whole_number_may_be_written_with_a_point(client):
    assert (
        client.post(
            PATH,
            content=json.dumps(question(candidate(), explain_first=1.0)),
            headers={"Content-Type": "application/json"},
        ).status_code
        == 200
    )


def test_five_hundred_candidates_are_taken(client):
    assert len(rows(client, *[candidate(WIDER)] * MAX_CANDIDATES, explain_first=0)) == MAX_CANDIDATES


def test_the_table_has_a_line_for_each_row(client):
    found = table(client, candidate(WIDER, "wide"), candidate(label="now"), {"front": {}})
    assert [(each["rank"], each["label"], each["verdict"]) for each in found] == [
        ("1", "now", "suitable"),
        ("2", "wide", "suitable_with_conditions"),
        ("", "", ""),
    ]
    assert 'The field "tyre" is required.' in found[2]["errors"]


def test_the_table_has_the_numbers_of_the_rows(client):
    (row,) = rows(client, candidate(WIDER))
    (line,) = table(client, candidate(WIDER))
    assert float(line["measures.wet_margin_percent"]) == row["measures"]["wet_margin_percent"] < 0.0
    assert float(line["axles.front.inboard_edge_mm"]) == row["axles"]["front"]["inboard_edge_mm"]
    low = row["axles"]["rear"]["aquaplaning_onset_percent"]["low"]
    assert float(line["axles.rear.aquaplaning_onset_percent.low"]) == low


def test_every_member_of_a_row_has_its_column(client):
    sent = {"id": "A-1", **candidate(WIDER)}
    (row,) = rows(client, sent, explain_first=1)
    (line,) = table(client, sent)
    heads = {name.partition(".")[0] for name in line}
    # How many findings came out how is told by the findings themselves.
    assert set(row) - {"finding_counts"} == heads - {"errors"}


@pytest.mark.parametrize("label", ["=1+1", "+1", "-1", "@sum"])
def test_a_label_that_a_spreadsheet_would_reckon_stands_behind_an_apostrophe(client, label):
    found = table(client, candidate(label=label), {"label": label})
    assert [each["label"] for each in found] == [f"'{label}"] * 2


@pytest.mark.parametrize("route", ["compare", "plan"])
def test_the_apostrophe_before_an_id_is_told_where_the_table_is_described(client, route):
    assert table(client, {"id": "-2", **candidate(WIDER)})[0]["id"] == "'-2"
    told = client.get("/openapi.json").json()["paths"][f"/v1/fitments/{route}.csv"]["post"]["description"]
    assert "`-2` comes back as `'-2`" in told


def test_a_label_with_commas_and_quotes_comes_back_whole(client):
    assert table(client, candidate(label='a "b", c; d'))[0]["label"] == 'a "b", c; d'


@pytest.mark.parametrize(
    ("accept", "expected"),
    [
        ("*/*", "application/json"),
        ("", "application/json"),
        ("text/csv", "text/csv"),
        ("TEXT/CSV", "text/csv"),
        ("text/*", "text/csv"),
        ("text/html", "application/json"),
        ("application/json, text/csv;q=0.9", "application/json"),
        ("application/json;q=0.5, text/csv", "text/csv"),
        ("text/csv;q=0, */*", "application/json"),
        ("text/csv;q=many", "application/json"),
        ("text/csv, application/json", "application/json"),
        ("*/*;q=0.1, text/csv;q=0.2", "text/csv"),
    ],
)
def test_the_form_of_the_answer_follows_accept(accept, expected):
    assert preferred(accept, ("application/json", "text/csv")) == expected


def test_the_answer_says_that_it_depends_on_accept(client):
    assert client.post(PATH, json=question({})).headers["vary"] == "Accept, Accept-Language"


def test_verdicts_are_counted_one_by_one(client):
    def count(verdict: str) -> float:
        lines = client.get("/metrics").text.splitlines()
        name = f'fitment_verdicts_total{{verdict="{verdict}"}} '
        return sum(float(line.removeprefix(name)) for line in lines if line.startswith(name))

    before = count("suitable"), count("unsuitable")
    rows(client, candidate(), candidate(), candidate(TOO_SLOW))
    assert (count("suitable") - before[0], count("unsuitable") - before[1]) == (2.0, 1.0)


def test_the_same_request_gives_the_same_bytes(client):
    body = question(candidate(WIDER), candidate(TOO_SLOW), {}, candidate())
    assert client.post(PATH, json=body).content == client.post(PATH, json=body).content


def test_a_comparison_beyond_the_queue_is_refused_and_told_when_to_come_back():
    # Every row explained takes long enough to be seen at work.
    work = post(PATH, json.dumps(question(*[candidate(WIDER)] * MAX_CANDIDATES, explain_first=MAX_CANDIDATES)).encode())
    with Server(queue_length=0, retry_after_s=3) as server, server.connect() as first, server.connect() as second:
        first.sendall(work)
        second.sendall(work)
        answers = sorted((receive(each) for each in (first, second)), key=lambda each: each.status)
    assert [each.status for each in answers] == [200, 503]
    assert answers[1].headers["retry-after"] == "3"


def test_the_callers_own_name_comes_back_in_rows_and_refusals_and_in_the_table(client):
    sent = ({"id": "A-1", **candidate(label="now")}, {"id": "A-2"}, candidate(WIDER), {"id": "", **candidate()})
    found = {each["index"]: each for each in (*rows(client, *sent), *refused(client, *sent))}
    assert {index: each.get("id") for index, each in found.items()} == {0: "A-1", 1: "A-2", 2: None, 3: None}
    assert [each["pointer"] for each in found[3]["errors"]] == ["/candidates/3/id"]
    assert sorted(each["id"] for each in table(client, *sent)) == ["", "", "A-1", "A-2"]
