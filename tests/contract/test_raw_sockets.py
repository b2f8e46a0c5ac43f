"""Raw bytes against a live server, and the answer that each must have: the table stands in the folder `raw`.

References: RFC 9110, RFC 9112 and RFC 6585, by section beside the cases.
"""

import http.client
import json
import socket
from typing import BinaryIO, NamedTuple

import pytest

from tests.contract.http_wire import Server
from tests.contract.raw import connections, framing
from tests.contract.raw.case import LIVE, Case

CASES = [
    *framing.LENGTHS,
    *framing.CHUNKS,
    *framing.SMUGGLING,
    *connections.TARGETS,
    *connections.PIPELINES,
    *connections.UPGRADES,
    *connections.TRAILERS,
    *connections.SLOW,
]


class Read(NamedTuple):
    """One answer."""

    status: int
    headers: http.client.HTTPMessage
    body: bytes


@pytest.mark.parametrize("case", [pytest.param(case, id=case.name) for case in CASES])
def test_raw_bytes_get_the_answer_that_the_table_expects(server: Server, impatient_server: Server, case: Case) -> None:
    used = impatient_server if case.impatient else server
    *expected, end = case.answers.split()
    with used.connect() as connection, connection.makefile("rb") as answers:
        for packet in case.packets:
            send(connection, packet)
            # The answer to another connection says that the server has seen this packet before the next.
            assert used.get("/health/live").status == 200
        read = [answer(answers) for _ in expected]
        assert [noted(one) for one in read] == [meant(one) for one in expected]
        if end == "open":
            connection.sendall(LIVE)
            probe = answer(answers)
            assert (probe.status, probe.body) == (200, used.get("/health/live").body)
        elif end == "closed":
            assert rest(answers) == b""


def send(connection: socket.socket, packet: bytes) -> None:
    """Send a packet; a server that has refused the one before need not take it."""
    connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    connection.sendall(packet)


def answer(answers: BinaryIO) -> Read | None:
    """Return the next answer, or None when the connection ended before it."""
    line = answers.readline()
    if not line:
        return None
    status = int(line.split()[1])
    headers = http.client.parse_headers(answers)
    return Read(status, headers, answers.read(int(headers.get("content-length", 0))))


def noted(one: Read | None) -> tuple[int, int | None] | None:
    """Return the status of an answer, and how many wheels it read; a refusal must be a problem (RFC 9457)."""
    if one is None:
        return None
    if one.status >= 400:
        assert json.loads(one.body)["status"] == one.status
    content = json.loads(one.body) if one.status == 200 else {}
    return one.status, content.get("inner", {}).get("wheel_count")


def meant(expected: str) -> tuple[int, int | None]:
    """Return the status and the wheels that the table expects."""
    status, _, wheels = expected.partition("=")
    return int(status), int(wheels) if wheels else None


def rest(answers: BinaryIO) -> bytes:
    """Return what still comes until the server closes."""
    try:
        return answers.read()
    except ConnectionResetError:
        return b""
