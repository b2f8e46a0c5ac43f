"""Hostile and careless bodies in raw bytes against a live server.

References: RFC 8259 (JSON: UTF-8, no byte order mark, no NaN or Infinity; repeated keys make a text unpredictable),
RFC 9110 (415, 413, Accept, Accept-Post by the Linked Data Platform), RFC 9457 (problem+json), RFC 6901 (pointers),
JSON Schema 2020-12 core, 6.3 (a number with a zero fraction is an integer).
"""

import json

import pytest

from tests.contract.http_app import MAX_BODY_BYTES
from tests.contract.http_wire import VALID, Server, head, post, receive

ECHOES = ["/v1/echo", "/v1/echo-with-query"]


def inner(**members: object) -> bytes:
    return json.dumps({"inner": {"speed_kmh": 100.0, "wheel_count": 4} | members}).encode()


@pytest.mark.parametrize("path", ECHOES)
@pytest.mark.parametrize(
    "body",
    [
        pytest.param(VALID.replace(b"120.5", b"NaN"), id="NaN"),
        pytest.param(VALID.replace(b"120.5", b"Infinity"), id="Infinity"),
        pytest.param(VALID.replace(b"120.5", b"-Infinity"), id="minus Infinity"),
        pytest.param(VALID.replace(b"120.5", b"1e400"), id="beyond a float"),
        pytest.param(b'{"inner": {"speed_kmh": 1, "speed_kmh": 2, "wheel_count": 4}}', id="key twice"),
        pytest.param(b'{"inner": {"speed_kmh": 1, "\\u0073peed_kmh": 2, "wheel_count": 4}}', id="key twice, escaped"),
        pytest.param(b'{"a": ":", "inner": {}, "inner": {}}', id="key twice beside a colon in a text"),
        pytest.param(inner(label="x").replace(b'"x"', b'"\\ud800"'), id="lone surrogate in a value"),
        pytest.param(b'{"\\udfff": 1}', id="lone surrogate in a key"),
        pytest.param(b"\xef\xbb\xbf" + VALID, id="byte order mark"),
        pytest.param(VALID.decode().encode("utf-16"), id="UTF-16"),
        pytest.param(VALID.decode().encode("utf-32"), id="UTF-32"),
        pytest.param(inner(label="x").replace(b'"x"', b'"\xff"'), id="no UTF-8"),
        pytest.param(inner(label="x").replace(b'"x"', b'"\xed\xa0\x80"'), id="surrogate in UTF-8"),
        pytest.param(inner(label="x").replace(b'"x"', b'"\x00"'), id="bare NUL"),
        pytest.param(b"[" * 8000 + b"]" * 8000, id="nested 8000 deep"),
        pytest.param(b"[" * 17 + b"]" * 17, id="nested 17 deep"),
        pytest.param(b'{"a":' * 3000, id="never closed"),
        pytest.param(json.dumps({"inner": dict.fromkeys(map(str, range(65)))}).encode(), id="65 members"),
        pytest.param(VALID + b"{}", id="something after the end"),
        pytest.param(VALID.replace(b"}}", b",}}"), id="trailing comma"),
        pytest.param(b"", id="empty"),
        pytest.param(b"\x00" * 1000, id="zeros"),
    ],
)
def test_what_is_no_strict_json_is_refused_with_400(server: Server, path: str, body: bytes) -> None:
    answer = server.post(path, body)
    assert answer.status == 400
    assert answer.problem["type"] == "/problems/malformed"


@pytest.mark.parametrize("path", ECHOES)
@pytest.mark.parametrize(
    ("member", "value", "code"),
    [
        ("speed_kmh", "120", "wrong_type"),
        ("speed_kmh", True, "wrong_type"),
        ("speed_kmh", None, "required"),
        ("speed_kmh", [120], "wrong_type"),
        ("speed_kmh", 0.5, "out_of_range"),
        ("speed_kmh", 1e308, "out_of_range"),
        ("wheel_count", 4.5, "wrong_type"),
        ("wheel_count", 10.0, "out_of_range"),
        ("wheel_count", 10**300, "out_of_range"),
        ("wheel_count", -(10**18), "out_of_range"),
        ("wheel_count", "4", "wrong_type"),
        ("choice", "M2", "not_one_of"),
        ("choice", 1, "not_one_of"),
        ("label", "x" * 41, "wrong_length"),
        ("label", "a\x00b", "wrong_format"),
        ("label", "a\nb", "wrong_format"),
        ("label", "a\u0085b", "wrong_format"),
        ("label", "a\u2028b", "wrong_format"),
    ],
)
def test_what_the_contract_excludes_is_refused_with_422_at_its_pointer(
    server: Server, path: str, member: str, value: object, code: str
) -> None:
    answer = server.post(path, inner(**{member: value}))
    assert answer.status == 422
    assert [(fault["pointer"], fault["code"]) for fault in answer.problem["errors"]] == [(f"/inner/{member}", code)]


@pytest.mark.parametrize("path", ECHOES)
@pytest.mark.parametrize("spelling", [b"4", b"4.0", b"4e0", b"0.4e1"])
def test_a_whole_number_may_be_spelt_as_json_schema_allows(server: Server, path: str, spelling: bytes) -> None:
    answer = server.post(path, VALID.replace(b": 4", b": " + spelling))
    assert json.loads(answer.body)["inner"]["wheel_count"] == 4


@pytest.mark.parametrize("path", ECHOES)
@pytest.mark.parametrize("label", ["a: b", "::::", '"quoted": 1', "äöü €", "轮胎", "🛞", "\\", "\\u003a"])
def test_any_printable_text_passes(server: Server, path: str, label: str) -> None:
    answer = server.post(path, inner(label=label))
    assert json.loads(answer.body)["inner"]["label"] == label


@pytest.mark.parametrize(
    "headers",
    [
        pytest.param((b"Content-Type: text/plain",), id="text"),
        pytest.param((b"Content-Type: application/x-www-form-urlencoded",), id="form"),
        pytest.param((b"Content-Type: application/vnd.api+json",), id="other JSON"),
        pytest.param((b"Content-Type: application/json; charset=utf-16",), id="UTF-16"),
        pytest.param((b"Content-Type: application/json; charset=latin-1",), id="Latin-1"),
        pytest.param((b"Content-Type: application/json; version=2",), id="unknown parameter"),
        pytest.param((b"Content-Type: ",), id="empty"),
        pytest.param((), id="none"),
        pytest.param((b"Content-Type: application/json", b"Content-Encoding: gzip"), id="compressed"),
        pytest.param((b"Content-Type: application/json", b"Content-Encoding: identity"), id="any encoding"),
    ],
)
def test_another_media_type_is_refused_with_415_that_names_ours(server: Server, headers: tuple[bytes, ...]) -> None:
    answer = server.send(head("POST", "/v1/echo", b"Content-Length: %d" % len(VALID), *headers) + VALID)
    assert answer.status == 415
    assert answer.problem["type"] == "/problems/unsupported-media-type"
    assert (answer.headers["accept"], answer.headers["accept-post"]) == ("application/json", "application/json")
    # A client that is still sending would see a reset instead of the answer.
    assert answer.headers["connection"] is None


@pytest.mark.parametrize(
    "media_type", [b"application/json", b"Application/JSON", b'application/json; charset="UTF-8"', b"application/json;"]
)
def test_our_media_type_may_be_spelt_as_http_allows(server: Server, media_type: bytes) -> None:
    assert server.send(post("/v1/echo", VALID, media_type=media_type)).status == 200


def test_a_body_of_the_largest_size_is_read(server: Server) -> None:
    assert server.post("/v1/echo", VALID.ljust(MAX_BODY_BYTES)).status == 200


@pytest.mark.parametrize("path", ECHOES)
def test_a_body_is_refused_by_its_announced_size_before_any_of_it_came(server: Server, path: str) -> None:
    answer = server.send(
        head("POST", path, b"Content-Type: application/json", b"Content-Length: %d" % (MAX_BODY_BYTES + 1))
    )
    assert answer.status == 413
    assert answer.problem["detail"] == f"The body may have {MAX_BODY_BYTES} bytes at most here."


@pytest.mark.parametrize("path", ECHOES)
def test_a_body_of_unknown_size_is_refused_while_it_is_read(server: Server, path: str) -> None:
    chunk = b"1000\r\n" + b" " * 4096 + b"\r\n"
    answer = server.send(
        head("POST", path, b"Content-Type: application/json", b"Transfer-Encoding: chunked") + chunk * 5
    )
    assert answer.status == 413


def test_a_client_that_sends_before_it_reads_gets_its_413_and_keeps_its_connection(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(post("/v1/echo", b"[" * 2_000_000))
        assert receive(connection).status == 413
        connection.sendall(post("/v1/echo", VALID))
        assert receive(connection).status == 200


def test_a_chunked_body_is_read(server: Server) -> None:
    chunks = b"".join(b"1\r\n%c\r\n" % byte for byte in VALID) + b"0\r\n\r\n"
    request = head("POST", "/v1/echo", b"Content-Type: application/json", b"Transfer-Encoding: chunked") + chunks
    assert server.send(request).status == 200


def test_at_most_twenty_faults_are_listed_and_all_are_counted(server: Server) -> None:
    problem = server.post("/v1/echo", json.dumps({"several": [{}] * 200}).encode()).problem
    assert (len(problem["errors"]), problem["error_count"]) == (20, 401)


@pytest.mark.parametrize(
    "name", ["x" * 10_000, "\u0001" * 200, "\u202e" * 2000, "/~" * 4000, '"' * 5000], ids=lambda name: repr(name[:2])
)
def test_an_answer_repeats_no_more_than_two_hundred_characters(server: Server, name: str) -> None:
    fault = server.post("/v1/echo", inner(**{name: 1})).problem["errors"][0]
    assert (len(fault["pointer"]) <= 200, len(fault["detail"]) <= 400) == (True, True)


def test_an_answer_is_never_larger_than_a_few_kilobytes(server: Server) -> None:
    body = json.dumps({"inner": {f"{number:03}" + "\\" * 90: 1 for number in range(60)}}).encode()
    assert len(server.post("/v1/echo", body).body) < 16_000


def test_an_answer_repeats_no_control_character(server: Server) -> None:
    problem = server.post("/v1/echo", inner(**{"a\x00\x1b\x9f\u2028b": 1})).problem
    assert problem["errors"][0]["pointer"] == "/inner/a\ufffd\ufffd\ufffd\ufffdb"


def test_the_pointer_of_a_name_with_slash_and_tilde_is_escaped(server: Server) -> None:
    # RFC 6901, section 3: ~ is ~0 and / is ~1.
    assert server.post("/v1/echo", inner(**{"a/b~c": 1})).problem["errors"][0]["pointer"] == "/inner/a~1b~0c"


@pytest.mark.parametrize("path", ECHOES)
def test_a_misspelt_field_is_answered_with_the_nearest_known_name(server: Server, path: str) -> None:
    problem = server.post(path, inner(wheel_cuont=4)).problem
    assert 'did you mean "wheel_count"?' in problem["detail"]


def test_a_fault_in_a_list_is_pointed_at_by_its_index(server: Server) -> None:
    body = json.dumps({"inner": json.loads(VALID)["inner"], "several": [json.loads(VALID)["inner"], {}]}).encode()
    problem = server.post("/v1/echo", body).problem
    assert [fault["pointer"] for fault in problem["errors"]] == ["/several/1/speed_kmh", "/several/1/wheel_count"]


@pytest.mark.parametrize(
    ("query", "parameter", "code"),
    [
        ("text=a&text=b", "text", "repeated"),
        ("txet=a", "txet", "unknown_field"),
        ("limit=many", "limit", "wrong_type"),
        ("%00=1", "\ufffd", "unknown_field"),
    ],
)
def test_a_query_is_read_as_strictly(server: Server, query: str, parameter: str, code: str) -> None:
    answer = server.get(f"/v1/echo?{query}")
    assert answer.status == 422
    assert [(fault["parameter"], fault["code"]) for fault in answer.problem["errors"]] == [(parameter, code)]
