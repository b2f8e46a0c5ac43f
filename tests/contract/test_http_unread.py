"""Clients that take no answers, and more clients than there may be: what they hold is bounded.

References: the manual pages socket(7) (SO_SNDBUF, SO_LINGER) and tcp(7) (TCP_USER_TIMEOUT).
"""

import socket
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import ClassVar

import pytest

from service.api.transport.sockets import SEND_BUFFER_BYTES, SPARE_FILES, UNTAKEN_S, bound_answers
from tests.contract.http_wire import PATIENCE_S, Server, head, is_closed, receive, wait_until

LIVE = head("GET", "/health/live")
# Some 1.5 MB, the same bytes for everybody.
LARGE = head("GET", "/docs/page.js")
MIB = 1024 * 1024


def deaf(server: Server, *requests: bytes) -> socket.socket:
    """Return a connection that has room for next to nothing and is not read from."""
    connection = socket.socket()
    connection.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
    connection.settimeout(PATIENCE_S)
    connection.connect(("127.0.0.1", server.port))
    connection.sendall(b"".join(requests))
    return connection


def ended(server: Server, reason: str) -> float:
    """Return how many connections the service says it has ended for a reason."""
    return series_of(server, f'http_connections_refused_total{{reason="{reason}"}} ')


def series_of(server: Server, name: str) -> float:
    """Return a number of the service's, 0 where it has none of this name yet."""
    lines = server.get("/metrics").body.decode().splitlines()
    return next((float(line.removeprefix(name)) for line in lines if line.startswith(name)), 0.0)


def held_by_the_system(server: Server) -> int:
    """Return how many bytes the system keeps to be sent from the server's port (proc(5), /proc/net/tcp)."""
    rows = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    return sum(int(row[4].split(":")[0], 16) for row in rows if int(row[1].split(":")[1], 16) == server.port)


def is_reset(connection: socket.socket) -> bool:
    """Return whether the server ends the connection by a reset, and not as if all had been said."""
    try:
        while connection.recv(65536):
            pass
    except ConnectionResetError:
        return True
    return False


@pytest.fixture(scope="module")
def bounded() -> Iterator[Server]:
    with Server(head_timeout_s=1, answer_space_mib=8, access_log=False) as server:
        yield server


def test_a_connection_inherits_the_bounds_of_its_listener() -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        bound_answers(listener)
        with socket.create_connection(listener.getsockname()):
            taken, _ = listener.accept()
            with taken:
                # Closed connections keep theirs too: what nobody takes of them is not kept for minutes.
                assert taken.getsockopt(socket.IPPROTO_TCP, socket.TCP_USER_TIMEOUT) == UNTAKEN_S * 1000
                assert taken.getsockopt(socket.SOL_SOCKET, socket.SO_SNDBUF) == 2 * SEND_BUFFER_BYTES


def test_the_system_keeps_little_of_an_answer_that_is_not_taken(bounded: Server) -> None:
    with ExitStack() as stack:
        for _ in range(4):
            stack.enter_context(deaf(bounded, LARGE))
        wait_until(lambda: held_by_the_system(bounded) >= 4 * 2048)
        # The system books its own costs in the buffer as well, and doubles it for them.
        assert held_by_the_system(bounded) <= 4 * 2 * SEND_BUFFER_BYTES


@pytest.mark.parametrize("request_", [LARGE, LARGE.replace(b"\r\n\r\n", b"\r\nConnection: close\r\n\r\n")])
def test_who_takes_nothing_for_a_while_is_reset(bounded: Server, request_: bytes) -> None:
    before = ended(bounded, "unread")
    with deaf(bounded, request_) as connection:
        wait_until(lambda: ended(bounded, "unread") > before)
        assert is_reset(connection)


def test_who_takes_an_answer_slowly_but_steadily_gets_it(bounded: Server) -> None:
    with deaf(bounded, head("GET", "/docs/page.css")) as connection:
        until = time.monotonic() + 2.5
        # Some 20 KB a second, for longer than who takes nothing is given.
        while time.monotonic() < until:
            assert connection.recv(2000)
            time.sleep(0.05)


def test_requests_behind_one_another_end_with_their_connection_and_are_no_failures() -> None:
    with Server(head_timeout_s=60) as server:
        with deaf(server, LARGE * 20), deaf(server, LARGE * 20):
            wait_until(lambda: held_by_the_system(server) > 0)
        wait_until(lambda: series_of(server, "http_requests_in_flight ") <= 1.0)
        _, logged = server.stop()
    assert [line for line in logged if line["event"] not in ("serving", "request", "stopped")] == []


def test_an_answer_that_was_cut_off_is_logged_by_the_id_of_its_request() -> None:
    asked = LARGE.replace(b"\r\n\r\n", b"\r\nX-Request-ID: mine\r\n\r\n")
    with Server(head_timeout_s=0.5) as server:
        with deaf(server, asked):
            wait_until(lambda: ended(server, "unread") > 0)
        _, logged = server.stop()
    told = [(line["request_id"], line["reason"]) for line in logged if line["event"] == "answer cut off"]
    assert told == [("mine", "unread")]


def test_all_that_waits_together_is_bounded_and_the_longest_wait_ends(bounded: Server) -> None:
    before = ended(bounded, "unread")
    with ExitStack() as stack:
        # Nine times some 1.4 MiB, of which 8 fit: they go long before each one's own time.
        waiting = [stack.enter_context(deaf(bounded, LARGE)) for _ in range(9)]
        wait_until(lambda: ended(bounded, "unread") > before)
        assert is_reset(waiting[0])


class Narrow(Server):
    """A service that may open so few files that three connections are the most."""

    program: ClassVar[tuple[object, ...]] = ("prlimit", f"--nofile={SPARE_FILES + 3}", *Server.program)


@pytest.fixture(scope="module")
def narrow() -> Iterator[Narrow]:
    with Narrow(max_connections=1000, retry_after_s=7, drain_s=0) as server:
        yield server


def is_free(server: Server) -> bool:
    try:
        return server.get("/health/live").status == 200
    except ConnectionError:
        # Too many to be even told.
        return False


def wait_until_free(server: Server) -> None:
    wait_until(lambda: is_free(server))


def test_few_files_mean_few_connections_and_the_start_says_so(narrow: Narrow) -> None:
    assert narrow.serving["most_connections"] == 3


def test_one_connection_too_many_is_told_so_and_the_others_are_served(narrow: Narrow) -> None:
    with ExitStack() as stack:
        kept = [stack.enter_context(narrow.connect()) for _ in range(3)]
        for connection in kept:
            connection.sendall(LIVE)
            assert receive(connection).status == 200
        with narrow.connect() as connection:
            connection.sendall(LIVE)
            refused = receive(connection)
            assert (refused.status, refused.headers["retry-after"]) == (503, "7")
            assert refused.problem["type"] == "/problems/busy"
            assert is_closed(connection)
        kept[0].sendall(LIVE)
        assert receive(kept[0]).status == 200
    wait_until_free(narrow)
    assert ended(narrow, "too_many") >= 1.0


def knock(server: Server) -> socket.socket | None:
    """Return a connection, or nothing where it was reset before the system had made it whole."""
    try:
        return server.connect()
    except ConnectionResetError:
        return None


def test_a_flood_of_connections_is_ended_and_leaves_nothing_behind(narrow: Narrow) -> None:
    flood = [knock(narrow) for _ in range(200)]
    assert all(connection is None or is_closed(connection) for connection in flood[3:])
    for connection in flood:
        if connection is not None:
            connection.close()
    wait_until_free(narrow)
    assert ended(narrow, "too_many") >= 197.0
    _, logged = narrow.stop()
    lines = [line for line in logged if line["event"] == "connections refused"]
    # Each is counted, but the log is not flooded with them.
    assert (lines[0]["reason"], lines[0]["most"], len(lines) <= 3) == ("too_many", 3, True)
