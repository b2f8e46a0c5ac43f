"""A developer with curl: the mistakes that everybody makes, and what comes back.

Each answer must point at the place and say what to write instead. References: RFC 9457, RFC 6901, RFC 8259 (a number
has a point and no quotation marks), RFC 9110 (405 with Allow, 415 with Accept); what curl sends by itself: its manual.
"""

import json
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.contract.callers import Json, Service
from tests.contract.http_wire import PATIENCE_S
from tests.support.cases import ABSENT, changed, saloon

CHECK = "/v1/fitments/check"
JSON = ("-H", "Content-Type: application/json")
TYRE = "/candidate/rear/tyre/size"


@pytest.fixture(scope="module")
def service() -> Iterator[Service]:
    """The service as `make serve` runs it."""
    with Service(drain_s=0) as running:
        yield running


def curl(service: Service, path: str, *arguments: str, body: str | None = None) -> tuple[int, Any]:
    """Return the status and the answer that curl shows; a body is handed to it on its standard input."""
    sent = () if body is None else ("--data-binary", "@-")
    done = subprocess.run(
        ["curl", "-s", "-w", "\n%{http_code}", *sent, *arguments, f"http://127.0.0.1:{service.port}{path}"],
        input=(body or "").encode(),
        capture_output=True,
        timeout=PATIENCE_S,
        check=True,
    )
    text, _, status = done.stdout.decode().rpartition("\n")
    return int(status), json.loads(text)


def faults(service: Service, question: Json, path: str = CHECK) -> dict[str, Json]:
    """Return the faults of a question that must have some, by their pointers."""
    status, problem = curl(service, path, *JSON, body=json.dumps(question))
    assert status == problem["status"] == 422
    assert problem["error_count"] == len(problem["errors"])
    return {each["pointer"]: each for each in problem["errors"]}


def only_fault(service: Service, changes: dict[str, object]) -> Json:
    (found,) = faults(service, changed(saloon(), changes)).values()
    return found


@pytest.mark.parametrize(
    ("pointer", "meant"),
    [
        ("/candidate/front/presure_kpa", "pressure_kpa"),
        ("/candidate/rear/tyre/tread_depth", "tread_depth_mm"),
        ("/vehicle/maxSpeedKmh", "max_speed_kmh"),
        ("/vehicle/front/max_axle_mass", "max_axle_mass_kg"),
        ("/vehicle/front/hub/center_bore_mm", "centre_bore_mm"),
        ("/rulepack", "rule_pack"),
    ],
)
def test_a_misspelt_field_is_answered_with_its_name(service: Service, pointer: str, meant: str) -> None:
    fault = only_fault(service, {pointer: 250})
    assert (fault["pointer"], fault["code"]) == (pointer, "unknown_field")
    assert f'did you mean "{meant}"?' in fault["detail"]


def test_a_field_like_no_other_is_answered_with_all_names(service: Service) -> None:
    fault = only_fault(service, {"/candidate/front/rim/et": 45})
    assert fault["pointer"] == "/candidate/front/rim/et"
    assert fault["detail"].endswith("one_piece, offset_mm, bolt_circle, centre_bore_mm, load_rating_kg, mass_kg.")


def test_the_body_of_another_route_is_told_what_is_missing_and_what_is_too_much(service: Service) -> None:
    question = saloon()
    found = faults(service, {"vehicle": question["vehicle"], "candidates": [question["candidate"]]})
    assert {pointer: each["code"] for pointer, each in found.items()} == {
        "/candidate": "required",
        "/candidates": "unknown_field",
    }
    assert 'did you mean "candidate"?' in found["/candidates"]["detail"]


def test_without_a_content_type_curl_sends_a_form_and_is_told_the_header(service: Service) -> None:
    status, problem = curl(service, CHECK, body=json.dumps(saloon()))
    assert (status, problem["type"]) == (415, "/problems/unsupported-media-type")
    assert "application/json" in problem["detail"]
    assert "Content-Type" in problem["detail"]


def test_a_compressed_body_is_told_to_come_plain(service: Service) -> None:
    status, problem = curl(service, CHECK, *JSON, "-H", "Content-Encoding: gzip", body=json.dumps(saloon()))
    assert (status, "uncompressed" in problem["detail"]) == (415, True)


def test_several_faults_come_back_at_once(service: Service) -> None:
    question = changed(
        saloon(),
        {
            "/rule_pack": "uk",
            "/vehicle/max_speed_kmh": "228",
            "/vehicle/front/fitted/rim/size": ABSENT,
            "/candidate/front/pressure_kpa": 2.5,
            "/candidate/label": 5,
            TYRE: "225/4S R17 94W XL",
        },
    )
    assert {pointer: each["code"] for pointer, each in faults(service, question).items()} == {
        "/rule_pack": "unknown_name",
        "/vehicle/max_speed_kmh": "wrong_type",
        "/vehicle/front/fitted/rim/size": "required",
        "/candidate/front/pressure_kpa": "out_of_range",
        "/candidate/label": "wrong_type",
        TYRE: "unreadable_designation",
    }


@pytest.mark.parametrize(
    ("size", "position", "expected"),
    [
        ("225/4S R17 94W XL", 5, "the digit 5, not the letter S"),
        ("225/45 R17 94", 13, "speed symbol"),
        ("225 45 R17 94W", 3, "a slash between section width and aspect ratio"),
        ("225\\45 R17 94W", 3, "a slash between section width and aspect ratio"),
        ("225/45/17 94W", 6, "the construction before the rim code: R"),
        ("225/45 RI7 94W", 8, "the digit 1, not the letter I"),
        ("225,45 R17 94W", 3, "a slash"),
        ("tyre", 0, "such as 205/55 R16"),
    ],
)
def test_a_slip_in_a_tyre_size_is_shown_by_its_place(service: Service, size: str, position: int, expected: str) -> None:
    fault = only_fault(service, {TYRE: size})
    assert (fault["pointer"], fault["code"], fault["position"]) == (TYRE, "unreadable_designation", position)
    assert expected in fault["expected"]
    assert f"at position {position}" in fault["detail"]
    assert fault["expected"] in fault["detail"]


@pytest.mark.parametrize(
    ("pointer", "text", "position", "expected"),
    [
        ("/candidate/rear/rim/size", "7.5J x 17 ET", 12, "offset"),
        ("/candidate/rear/rim/size", "7.5J", 4, "x"),
        ("/candidate/rear/rim/bolt_circle", "5x", 2, "mm"),
    ],
)
def test_a_slip_in_a_rim_is_shown_by_its_place(
    service: Service, pointer: str, text: str, position: int, expected: str
) -> None:
    fault = only_fault(service, {pointer: text})
    assert (fault["pointer"], fault["position"]) == (pointer, position)
    assert expected in fault["expected"]


def test_a_tyre_of_the_query_is_shown_by_its_place_too(service: Service) -> None:
    status, problem = curl(service, "/v1/designations/tyre?text=205/5O%20R16")
    (fault,) = problem["errors"]
    assert (status, fault["parameter"], fault["position"]) == (422, "text", 5)


def test_a_decimal_comma_is_called_so_and_its_place_is_given(service: Service) -> None:
    body = json.dumps(saloon(), indent=2).replace('"centre_bore_mm": 66.6', '"centre_bore_mm": 66,6', 1)
    status, problem = curl(service, CHECK, *JSON, body=body)
    lines = body.splitlines()
    line = next(number for number, text in enumerate(lines, 1) if "66,6" in text)
    column = lines[line - 1].index("66,6") + len("66,6")
    assert (status, problem["type"]) == (400, "/problems/malformed")
    assert "a point is expected in its place" in problem["detail"]
    assert f"(line {line}, column {column})" in problem["detail"]


def test_a_decimal_comma_in_a_designation_is_read(service: Service) -> None:
    body = json.dumps(changed(saloon(), {"/candidate/rear/rim/size": "7,5J x 17 H2 ET45"}))
    status, answer = curl(service, CHECK, *JSON, body=body)
    assert (status, answer["axles"]["rear"]["proposed"]["rim"]) == (200, "7.5J x 17 H2 ET45")


@pytest.mark.parametrize(
    ("written", "right"), [("228", "write 228,"), ("228.5", "write 228.5,"), ("228,5", "write 228.5,")]
)
def test_a_number_in_quotation_marks_is_answered_with_the_number(service: Service, written: str, right: str) -> None:
    fault = only_fault(service, {"/vehicle/max_speed_kmh": written})
    assert (fault["pointer"], fault["code"]) == ("/vehicle/max_speed_kmh", "wrong_type")
    assert right in fault["detail"]
    assert "without quotation marks" in fault["detail"]


def test_a_number_with_its_unit_is_told_to_drop_it(service: Service) -> None:
    detail = only_fault(service, {"/vehicle/max_speed_kmh": "228 km/h"})["detail"]
    assert "without quotation marks and unit" in detail


@pytest.mark.parametrize("pressure", [2.5, 36], ids=["bar", "psi"])
def test_a_pressure_in_another_unit_is_told_range_and_unit(service: Service, pressure: float) -> None:
    fault = only_fault(service, {"/candidate/rear/pressure_kpa": pressure})
    assert (fault["pointer"], fault["code"]) == ("/candidate/rear/pressure_kpa", "out_of_range")
    assert "from 50 to 1000 kPa" in fault["detail"]


def test_a_day_written_another_way_is_answered_with_an_example(service: Service) -> None:
    fault = only_fault(service, {"/date": "24.11.2026"})
    assert (fault["pointer"], fault["code"]) == ("/date", "wrong_format")
    assert re.search(r'such as "\d{4}-\d{2}-\d{2}"', fault["detail"])


def test_a_word_that_is_no_choice_is_answered_with_the_choices(service: Service) -> None:
    fault = only_fault(service, {"/season": "Winter"})
    assert (fault["pointer"], fault["code"]) == ("/season", "not_one_of")
    assert ("summer" in fault["detail"], "winter" in fault["detail"]) == (True, True)


def test_an_unknown_rule_pack_is_answered_with_the_known_ones(service: Service) -> None:
    fault = only_fault(service, {"/rule_pack": "uk"})
    _, packs = curl(service, "/v1/rule-packs")
    assert (fault["pointer"], fault["code"]) == ("/rule_pack", "unknown_name")
    assert fault["detail"].endswith(f"Known: {', '.join(sorted(each['id'] for each in packs['rule_packs']))}.")


@pytest.mark.parametrize(
    ("path", "known"),
    [("/v1/rule-packs/uk", "unece"), ("/v1/tables/load_index", "load-index")],
)
def test_a_pack_or_table_that_does_not_exist_is_answered_with_those_that_do(
    service: Service, path: str, known: str
) -> None:
    status, problem = curl(service, path)
    assert (status, problem["type"]) == (404, "/problems/not-found")
    assert known in problem["detail"]


def test_a_misspelt_query_parameter_is_answered_with_its_name(service: Service) -> None:
    status, problem = curl(service, "/v1/designations/tyre?txt=205/55R16")
    (fault,) = problem["errors"]
    assert (status, fault["parameter"], fault["code"]) == (422, "txt", "unknown_field")
    assert 'did you mean "text"?' in fault["detail"]


@pytest.mark.parametrize("path", ["/v1/fitment/check", "/v1/fitments/check/", "/check"])
def test_a_wrong_path_is_told_where_the_right_ones_are(service: Service, path: str) -> None:
    status, problem = curl(service, path, *JSON, body="{}")
    assert (status, "/openapi.json" in problem["detail"]) == (404, True)


def test_a_get_of_a_question_is_told_the_method(service: Service, tmp_path: Path) -> None:
    headers = tmp_path / "headers"
    status, problem = curl(service, CHECK, "-D", str(headers))
    assert (status, problem["type"]) == (405, "/problems/method-not-allowed")
    assert "allow: POST\n" in headers.read_text().replace("\r", "")
    assert "Allow" in problem["detail"]


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("", "The body is empty"),
        ("{'vehicle': 1}", "line 1, column 2"),
        ('{"rule_pack": "nl", "rule_pack": "de"}', 'The key "rule_pack" stands twice'),
        ('{"rule_pack": "nl",}', "trailing comma"),
    ],
    ids=["nothing", "single quotes", "a key twice", "a comma too many"],
)
def test_what_is_no_json_is_told_why_and_where(service: Service, body: str, said: str) -> None:
    status, problem = curl(service, CHECK, *JSON, body=body)
    assert (status, problem["type"]) == (400, "/problems/malformed")
    assert said in problem["detail"]


def test_a_bad_one_among_many_does_not_stop_the_others(service: Service) -> None:
    question = saloon()
    candidates = [question["candidate"], changed(question, {TYRE: "225/4S R17"})["candidate"], {"front": 5}]
    body = json.dumps({"vehicle": question["vehicle"], "candidates": candidates})
    status, answer = curl(service, "/v1/fitments/compare", *JSON, body=body)
    assert (status, answer["compared"], answer["refused_count"]) == (200, 1, 2)
    assert [each["pointer"] for row in answer["refused"] for each in row["errors"]] == [
        "/candidates/1/rear/tyre/size",
        "/candidates/2/front",
    ]


def test_every_error_names_the_request_for_the_operator(service: Service, tmp_path: Path) -> None:
    _, problem = curl(service, CHECK, *JSON, "-H", "X-Request-ID: my-17", body="{}")
    assert problem["instance"] == "urn:fitment:request:my-17"
