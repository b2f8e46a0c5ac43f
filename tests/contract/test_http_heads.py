"""Hostile and slow heads in raw bytes against a live server.

References: RFC 9110 (405 with Allow, HEAD), RFC 9112 (message syntax; section 6.3 on Transfer-Encoding beside
Content-Length), RFC 6585 (431), RFC 9457.
"""

import re

import pytest

from tests.contract.http_wire import VALID, Server, head, is_closed, post, receive

BIG = 40 * 1024


@pytest.mark.parametrize(
    "raw",
    [
        pytest.param(head("GET", "/health/live", b"X-Big: " + b"a" * BIG), id="one large header"),
        pytest.param(head("GET", "/health/live", *[b"X-%d: a" % n for n in range(4000)]), id="many small headers"),
        pytest.param(head("GET", "/health/live?" + "a" * BIG), id="long target"),
        pytest.param(b"GET / HTTP/1.1\r\nX: " + b"a" * 2_000_000, id="a line that never ends"),
        pytest.param(b"GET /" + b"a" * 2_000_000, id="a target that never ends"),
        pytest.param(b"GET / HTTP/1.1\r\n" + b"X: a\r\n" * 300_000, id="headers that never end"),
    ],
)
def test_a_head_over_32_kib_is_refused_with_431(server: Server, raw: bytes) -> None:
    with server.connect() as connection:
        try:
            connection.sendall(raw)
        except (BrokenPipeError, ConnectionResetError):
            pytest.fail("the connection was cut before the answer could be read")
        answer = receive(connection)
    assert answer.status == 431
    assert answer.problem["type"] == "/problems/head-too-large"


def test_a_head_just_under_32_kib_is_read(server: Server) -> None:
    assert server.get("/health/live", b"X-Big: " + b"a" * (32 * 1024 - 200)).status == 200


def test_a_large_head_after_a_body_on_one_connection_is_refused_too(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(post("/v1/echo", VALID) + head("GET", "/health/live", b"X-Big: " + b"a" * BIG))
        assert receive(connection).status == 200
        assert is_closed(connection)


@pytest.mark.parametrize(
    "raw",
    [
        pytest.param(b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03" + b"\x00" * 200, id="TLS"),
        pytest.param(b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", id="HTTP/2"),
        pytest.param(b"GET / HTTP/9.9\r\n\r\n", id="unknown version"),
        pytest.param(b"FLY / HTTP/1.1\r\n\r\n", id="unknown method"),
        pytest.param(b"GET / HTTP/1.1\r\nno colon\r\n\r\n", id="header without colon"),
        pytest.param(b"GET /health/live HTTP/1.1\r\n\r\n", id="no host"),
        pytest.param(b"GET /health/live HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", id="two hosts"),
        pytest.param(b"GET /health/live HTTP/1.1\r\nHost: a\r\nHOST: a\r\n\r\n", id="the host twice"),
        pytest.param(b"GET / HTTP/1.1\r\nA: b\x00c\r\n\r\n", id="NUL in a header"),
        pytest.param(b"GET /\xff HTTP/1.1\r\nHost: a\r\n\r\n", id="no ASCII in the target"),
        pytest.param(b"GET http://[::1 HTTP/1.1\r\nHost: a\r\n\r\n", id="broken target"),
        pytest.param(b"POST / HTTP/1.1\r\nContent-Length: 3\r\nContent-Length: 4\r\n\r\nabcd", id="two lengths"),
        pytest.param(b"POST / HTTP/1.1\r\nContent-Length: -1\r\n\r\n", id="negative length"),
        pytest.param(b"POST / HTTP/1.1\r\nContent-Length: " + b"9" * 40 + b"\r\n\r\n", id="endless length"),
        pytest.param(
            b"POST / HTTP/1.1\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
            id="length and chunks",
        ),
    ],
)
def test_what_is_no_http_is_refused_with_400(server: Server, raw: bytes) -> None:
    answer = server.send(raw)
    assert answer.status == 400
    assert answer.problem["type"] == "/problems/malformed"


def test_a_broken_chunk_is_refused_with_400(server: Server) -> None:
    start = head("POST", "/v1/echo", b"Content-Type: application/json", b"Transfer-Encoding: chunked")
    assert server.send(start + b"zz\r\n{}\r\n").status == 400


def test_a_request_before_garbage_gets_its_answer(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(post("/v1/echo", VALID) + b"\x00\x01\x02garbage\r\n\r\n")
        assert receive(connection).status == 200
        assert is_closed(connection)


def test_a_slow_head_is_refused_with_408(impatient_server: Server) -> None:
    answer = impatient_server.send(b"GET /health/live HTTP/1.1\r\nHost: loc")
    assert answer.status == 408
    assert answer.problem["type"] == "/problems/timeout"


@pytest.mark.parametrize("path", ["/v1/echo", "/v1/echo-with-query"])
def test_a_slow_body_is_refused_with_408(impatient_server: Server, path: str) -> None:
    answer = impatient_server.send(post(path, VALID)[:-5])
    assert answer.status == 408
    assert answer.problem["type"] == "/problems/timeout"


@pytest.mark.parametrize(
    "raw",
    [
        pytest.param(b"", id="nothing"),
        pytest.param(b"\r\n", id="empty line"),
        pytest.param(head("GET", "/health/live") + b"\r\n", id="empty line after a request"),
        pytest.param(head("GET", "/health/live", b"Content-Length: 100") + b"abc", id="body that nobody reads"),
        pytest.param(head("GET", "/health/live") + b"GET /health", id="half a head after a request"),
    ],
)
def test_a_connection_that_owes_something_and_falls_silent_is_closed(impatient_server: Server, raw: bytes) -> None:
    with impatient_server.connect() as connection:
        connection.sendall(raw)
        assert is_closed(connection)


def test_dripping_bytes_do_not_buy_time(impatient_server: Server) -> None:
    with impatient_server.connect() as connection:
        connection.settimeout(0.05)
        connection.sendall(b"GET / HTTP/1.1\r\nX: ")
        for _ in range(200):
            try:
                # Waiting for an answer is the pause between two drops.
                if connection.recv(65536):
                    break
            except TimeoutError:
                connection.sendall(b"a")
        else:
            pytest.fail("the connection was still open after ten seconds")


@pytest.mark.parametrize("method", ["DELETE", "PUT", "PATCH", "TRACE"])
def test_a_method_that_does_not_suit_is_answered_with_all_that_do(server: Server, method: str) -> None:
    answer = server.send(head(method, "/v1/echo"))
    assert answer.status == 405
    assert answer.problem["type"] == "/problems/method-not-allowed"
    assert answer.headers["allow"] == "GET, HEAD, POST"


@pytest.mark.parametrize(
    "path", ["/nope", "/health/live/", "/v1/echo%2F", "/%00", "//", "/v1/../health/live", "/%ff%fe", "/health%2Flive/x"]
)
def test_a_path_that_leads_nowhere_is_answered_with_a_problem_and_no_redirect(server: Server, path: str) -> None:
    answer = server.get(path)
    assert answer.status == 404
    assert answer.problem["type"] == "/problems/not-found"


def test_head_is_answered_like_get_without_the_body(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(head("HEAD", "/health/live"))
        answer = receive(connection, "HEAD")
    assert (answer.status, answer.body, answer.headers["content-type"]) == (200, b"", "application/json")


def test_an_asked_upgrade_is_not_taken_up(server: Server) -> None:
    answer = server.get("/health/live", b"Connection: Upgrade", b"Upgrade: websocket", b"Sec-WebSocket-Version: 13")
    assert answer.status == 200


def test_requests_sent_ahead_are_answered_in_turn(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(head("GET", "/health/live") * 3 + head("GET", "/nope", b"Connection: close"))
        with connection.makefile("rb") as answers:
            assert re.findall(rb"HTTP/1.1 (\d+)", answers.read()) == [b"200", b"200", b"200", b"404"]


def test_a_client_that_waits_for_leave_to_send_is_given_it(server: Server) -> None:
    with server.connect() as connection:
        request = post("/v1/echo", VALID, b"Expect: 100-continue")
        connection.sendall(request[: -len(VALID)])
        assert connection.recv(25) == b"HTTP/1.1 100 Continue\r\n\r\n"
        connection.sendall(VALID)
        assert receive(connection).status == 200


def test_fields_behind_a_body_change_nothing_of_the_head(server: Server) -> None:
    lines = (b"Content-Type: application/json", b"Transfer-Encoding: chunked", b"X-Request-ID: mine")
    chunk = b"%x\r\n%b\r\n" % (len(VALID), VALID)
    with server.connect() as connection:
        connection.sendall(head("POST", "/v1/echo", *lines) + chunk)
        # Another answer tells that this much was read before the rest.
        assert server.get("/health/live").status == 200
        connection.sendall(b"0\r\nX-Request-ID: theirs\r\nContent-Type: text/plain\r\n\r\n")
        answer = receive(connection)
    assert (answer.status, answer.headers["x-request-id"]) == (200, "mine")
