"""One case of the table: what is sent, packet by packet, and what must come back."""

from typing import NamedTuple

LIVE = b"GET /health/live HTTP/1.1\r\nHost: a\r\n\r\n"
# The head of a POST up to its framing fields; the route gives back what it read.
ECHO = b"POST /v1/echo HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\n"
CHUNKED = ECHO + b"Transfer-Encoding: chunked\r\n\r\n"
LAST = b"0\r\n\r\n"


class Case(NamedTuple):
    """`answers` has a status for each answer, with `=N` where the echo must have read N wheels.

    Then open, closed, or unread where the client owes a body that nobody waits for.
    """

    name: str
    packets: list[bytes]
    answers: str
    # A server that waits half a second for a head or a body, where the case is about time.
    impatient: bool = False


def body(wheels: int = 4) -> bytes:
    """Return a body that is in order."""
    return b'{"inner": {"speed_kmh": 120.5, "wheel_count": %d}}' % wheels


def sized(wheels: int = 4, *fields: bytes) -> bytes:
    """Return a POST with Content-Length and these fields more."""
    return echo_head(len(body(wheels)), *fields) + body(wheels)


def echo_head(length: int, *fields: bytes) -> bytes:
    """Return the head of a POST with Content-Length and these fields more."""
    return ECHO + b"".join(field + b"\r\n" for field in (*fields, b"Content-Length: %d" % length)) + b"\r\n"


def chunk(content: bytes, extension: bytes = b"") -> bytes:
    """Return one chunk."""
    return b"%x%b\r\n%b\r\n" % (len(content), extension, content)
