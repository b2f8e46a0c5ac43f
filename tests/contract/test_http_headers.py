"""What every answer carries, errors and failures included; origins, hosts and keys.

References: the WHATWG Fetch standard (CORS), RFC 9110 (Host, 401, Retry-After), RFC 6585 (429); the IETF's draft
"RateLimit header fields for HTTP", from memory (q quota, w window, r remaining, t seconds until it begins anew).
"""

import hashlib
from collections.abc import Iterator

import pytest

from tests.contract.http_wire import VALID, Server, head

ORIGIN = "https://shop.example"
KEY = "correct-horse-battery-staple"


@pytest.fixture(scope="module")
def guarded() -> Iterator[Server]:
    """A server that answers one origin, two hosts and one key, twice a day."""
    with Server(
        cors_origins=ORIGIN,
        trusted_hosts="localhost,*.fit.example",
        api_keys="shop:" + hashlib.sha256(KEY.encode()).hexdigest(),
        api_key_rate="2/day",
    ) as running:
        yield running


@pytest.mark.parametrize("path", ["/health/live", "/nope", "/v1/broken", "/v1/echo?x=1"])
@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("x-content-type-options", "nosniff"),
        ("content-security-policy", "default-src 'none'; frame-ancestors 'none'"),
        ("referrer-policy", "no-referrer"),
        ("cache-control", "no-store"),
    ],
)
def test_every_answer_carries_the_security_headers(server: Server, path: str, name: str, value: str) -> None:
    assert server.get(path).headers[name] == value


def test_the_server_does_not_name_what_it_is_made_of(server: Server) -> None:
    assert server.get("/health/live").headers["server"] is None


def test_a_well_formed_request_id_is_taken(server: Server) -> None:
    assert server.get("/nope", b"X-Request-ID: order-4711_a.b").headers["x-request-id"] == "order-4711_a.b"


@pytest.mark.parametrize("offered", [b"", b"a b", b"a" * 65, b"<script>", b"\xe4", b"a\tb", b'a"b'])
def test_any_other_request_id_is_replaced(server: Server, offered: bytes) -> None:
    made = server.get("/nope", b"X-Request-ID: " + offered).headers["x-request-id"]
    assert made != offered.decode("latin-1")
    assert made.isalnum()


def test_a_problem_names_its_request(server: Server) -> None:
    answer = server.get("/nope", b"X-Request-ID: mine")
    assert answer.problem["instance"] == "urn:fitment:request:mine"


def test_a_failure_is_a_problem_without_a_word_of_its_cause(server: Server) -> None:
    answer = server.get("/v1/broken")
    assert answer.status == 500
    assert answer.problem["type"] == "/problems/failure"
    assert b"secret" not in answer.body


@pytest.mark.parametrize(
    ("path", "status"), [("/health/live", 200), ("/nope", 404), ("/v1/echo", 401), ("/v1/verdict", 401)]
)
def test_cors_headers_stand_on_errors_too(guarded: Server, path: str, status: int) -> None:
    answer = guarded.get(path, b"Origin: " + ORIGIN.encode())
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (status, ORIGIN)


def test_cors_headers_stand_on_failures_too() -> None:
    with Server(cors_origins="*") as server:
        answer = server.get("/v1/broken", b"Origin: https://anywhere.example")
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (500, "*")


def test_another_origin_gets_no_leave(guarded: Server) -> None:
    assert guarded.get("/health/live", b"Origin: https://evil.example").headers["access-control-allow-origin"] is None


@pytest.mark.parametrize("wanted", [b"content-type, x-api-key", b"content-type,traceparent,tracestate"])
def test_a_preflight_is_answered(guarded: Server, wanted: bytes) -> None:
    answer = guarded.send(
        head(
            "OPTIONS",
            "/v1/echo",
            b"Origin: " + ORIGIN.encode(),
            b"Access-Control-Request-Method: POST",
            b"Access-Control-Request-Headers: " + wanted,
        )
    )
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (200, ORIGIN)


@pytest.mark.parametrize(
    "lines",
    [
        (b"Origin: https://evil.example", b"Access-Control-Request-Method: POST"),
        (b"Origin: https://shop.example", b"Access-Control-Request-Method: DELETE"),
        (
            b"Origin: https://shop.example",
            b"Access-Control-Request-Method: GET",
            b"Access-Control-Request-Headers: x-a",
        ),
    ],
)
def test_a_refused_preflight_is_a_problem(guarded: Server, lines: tuple[bytes, ...]) -> None:
    answer = guarded.send(head("OPTIONS", "/v1/echo", *lines))
    assert answer.status == 403
    assert answer.problem["type"] == "/problems/forbidden"


@pytest.mark.parametrize(
    "host", [b"evil.example", b"fit.example", b"xfit.example", b"localhost.evil.example", b"[::1]", b""]
)
def test_a_request_for_another_host_is_refused(guarded: Server, host: bytes) -> None:
    answer = guarded.get("/metrics", b"Host: " + host)
    assert answer.status == 400
    assert answer.problem["type"] == "/problems/malformed"


@pytest.mark.parametrize(
    "host", [b"localhost", b"localhost:8000", b"LOCALHOST", b"a.fit.example", b"b.a.fit.example:1"]
)
def test_a_request_for_our_host_is_answered(guarded: Server, host: bytes) -> None:
    assert guarded.get("/metrics", b"Host: " + host).status == 200


@pytest.mark.parametrize("lines", [(), (b"X-API-Key: ",), (b"X-API-Key: wrong",), (b"X-API-Key: shop",)])
def test_without_a_valid_key_nothing_is_answered(guarded: Server, lines: tuple[bytes, ...]) -> None:
    answer = guarded.post("/v1/echo", VALID, *lines)
    assert answer.status == 401
    assert answer.problem["type"] == "/problems/unauthorized"
    assert "X-API-Key" in answer.headers["www-authenticate"]


def test_a_key_that_used_up_its_rate_is_told_when_to_come_back() -> None:
    settings = {"api_keys": "shop:" + hashlib.sha256(KEY.encode()).hexdigest(), "api_key_rate": "2/day"}
    with Server(**settings) as server:
        answers = [server.post("/v1/echo", VALID, b"X-API-Key: " + KEY.encode()) for _ in range(3)]
        assert [answer.status for answer in answers] == [200, 200, 429]
        assert answers[2].problem["type"] == "/problems/too-many-requests"
        assert 0 < int(answers[2].headers["retry-after"]) <= 600
        assert server.serving["keys"] == 1
        assert {answer.headers["ratelimit-policy"] for answer in answers} == {'"key";q=2;w=86400'}
        told = [answer.headers["ratelimit"].split(";") for answer in answers]
        assert [(name, remaining) for name, remaining, _ in told] == [
            ('"key"', "r=1"),
            ('"key"', "r=0"),
            ('"key"', "r=0"),
        ]
        assert all(0 < int(until.removeprefix("t=")) <= 24 * 3600 + 1 for _, _, until in told)


def test_without_keys_no_rate_is_told(server: Server) -> None:
    answer = server.post("/v1/echo", VALID)
    assert (answer.status, answer.headers["ratelimit"], answer.headers["ratelimit-policy"]) == (200, None, None)


def test_a_page_of_another_origin_may_read_its_rate(guarded: Server) -> None:
    shown = guarded.get("/health/live", b"Origin: " + ORIGIN.encode()).headers["access-control-expose-headers"]
    assert {"RateLimit", "RateLimit-Policy"} <= set(shown.split(", "))


def test_probes_need_no_key(guarded: Server) -> None:
    assert guarded.get("/health/ready").status == 200


def test_a_probe_is_answered_whatever_host_it_names(guarded: Server) -> None:
    assert guarded.get("/health/ready", b"Host: 10.0.0.7:8000").status == 200
