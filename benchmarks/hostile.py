"""What hostile requests do to a live service, by class.

`python -m benchmarks.hostile [--count N] [--seed N]`. Each request has a connection of its own, eight at a time. Shown:
answers of 500 and above other than 503; 503 (the service refuses more long work for a moment, as it should); requests
after which nothing came and nothing was closed (hangs); connections ended without an answer; answers of 400 and above
that are no problem+json; and, of these refusals, the largest answer for each byte sent and the largest of all.
"""

from __future__ import annotations

import argparse
import json
import socket
import struct
import sys
import time
from collections import Counter
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from typing import ClassVar

from benchmarks.hostile_requests import Attacks
from tests.contract.http_wire import Server, head, receive

MEMBERS = {"type", "title", "status", "detail", "instance", "errors", "error_count"}
# Longer than the service may take for any answer here, half requests included.
PATIENCE_S = 15.0
IMPATIENT = {"head_timeout_s": 0.5, "body_timeout_s": 0.5, "keep_alive_s": 1}


class Service(Server):
    """The service itself, in a process of its own."""

    program: ClassVar[tuple[object, ...]] = (sys.executable, "-m", "service", "serve")


@dataclass
class Seen:
    """What one class of requests led to."""

    statuses: Counter[int] = field(default_factory=Counter)
    hangs: int = 0
    unanswered: int = 0
    no_problem: int = 0
    worst_ratio: float = 0.0
    largest_bytes: int = 0
    examples: dict[str, bytes] = field(default_factory=dict)

    def note(self, request: bytes, raw: bytes | None) -> None:
        """Count the answer to a request: its bytes, none where nothing came, `None` where nothing was closed either."""
        if raw is None:
            self.hangs += 1
            self.examples.setdefault("hang", request)
            return
        if not raw:
            self.unanswered += 1
            self.examples.setdefault("unanswered", request)
            return
        first, _, body = raw.partition(b"\r\n\r\n")
        status = int(first[9:12])
        self.statuses[status] += 1
        if status >= 500 and status != 503:
            self.examples.setdefault("failure", request)
        if status < 400:
            return
        self.worst_ratio = max(self.worst_ratio, len(raw) / len(request))
        self.largest_bytes = max(self.largest_bytes, len(raw))
        if not request.startswith(b"HEAD ") and not is_problem(first, body, status):
            self.no_problem += 1
            self.examples.setdefault("no problem", request)

    def failures(self) -> int:
        """Return how many answers were the service's fault."""
        return sum(count for status, count in self.statuses.items() if status >= 500 and status != 503)


def is_problem(first: bytes, body: bytes, status: int) -> bool:
    """Return whether an answer is a problem with all its members."""
    if b"content-type: application/problem+json" not in first.lower():
        return False
    try:
        problem = json.loads(body)
    except ValueError:
        return False
    return set(problem) == MEMBERS and problem["status"] == status


def exchange(port: int, request: bytes) -> bytes | None:
    """Return the first answer's bytes, none where the connection was closed without, `None` where nothing came."""
    with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as connection:
        raw = b""
        try:
            connection.sendall(request)
            while not is_complete(raw, request):
                part = connection.recv(1 << 20)
                if not part:
                    break
                raw += part
        except TimeoutError:
            return raw or None
        except OSError:
            pass
        return raw


def is_complete(raw: bytes, request: bytes) -> bool:
    """Return whether these bytes hold a whole answer."""
    first, end, body = raw.partition(b"\r\n\r\n")
    if not end:
        return False
    length = 0 if request.startswith(b"HEAD ") else -1
    for line in first.lower().split(b"\r\n"):
        if line.startswith(b"content-length:") and length < 0:
            length = int(line[15:])
    return len(body) >= length >= 0 or first.startswith((b"HTTP/1.1 204", b"HTTP/1.1 304"))


def leave(port: int, request: bytes) -> bytes:
    """Send a request and vanish at once with a reset; there is no answer to look at, the service must only live on."""
    with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as connection:
        connection.sendall(request)
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
    return b"HTTP/1.1 200"


def attack(
    port: int, make: Callable[[], bytes], count: int, send: Callable[[int, bytes], bytes | None] = exchange
) -> Seen:
    """Return what a number of requests led to."""
    seen = Seen()
    requests = [make() for _ in range(count)]
    with ThreadPoolExecutor(8) as pool:
        for request, raw in zip(requests, pool.map(lambda each: send(port, each), requests), strict=True):
            seen.note(request, raw)
    return seen


def main() -> int:
    """Attack, write the table, return 1 where something gave way."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=1000, help="requests of each class")
    parser.add_argument("--seed", type=int, default=1, help="another seed makes other requests")
    parser.add_argument("--only", help="one class")
    asked = parser.parse_args()
    attacks = Attacks(asked.seed)
    patient = (attacks.wrong_values, attacks.hostile_texts, attacks.members, attacks.broken_json, attacks.media_types,
               attacks.large_bodies, attacks.large_heads, attacks.paths_and_methods, attacks.queries)  # fmt: skip
    impatient = (attacks.heads, attacks.header_values, attacks.half_requests)
    print(f"{'class':18} {'requests':>8} {'5xx':>4} {'503':>4} {'hangs':>5} {'closed':>6} {'no problem':>10} "
          f"{'answer/request':>14} {'largest':>8} {'seconds':>7}  statuses")  # fmt: skip
    held = True
    with Service(access_log=False) as server, Service(access_log=False, **IMPATIENT) as other:
        work = [(make, server.port, exchange) for make in patient] + [
            (make, other.port, exchange) for make in impatient
        ]
        work.append((attacks.well_meant_request, server.port, leave))
        for make, port, send in work:
            if asked.only and asked.only != make.__name__:
                continue
            count = asked.count // 5 if make == attacks.large_bodies else asked.count
            started = time.monotonic()
            held &= show(make.__name__, attack(port, make, count, send), count, time.monotonic() - started)
        for each in (server, other):
            with each.connect() as connection:
                connection.sendall(head("GET", "/health/ready"))
                held &= receive(connection).status == 200
            code, logged = each.stop()
            held &= code == 0
            print(f"exit {code}; failures logged: {[line for line in logged if line['event'] != 'stopped'][:3]}")
    return 0 if held else 1


def show(name: str, seen: Seen, count: int, seconds: float) -> bool:
    """Write one line of the table; return whether all held."""
    statuses = " ".join(f"{status}×{number}" for status, number in sorted(seen.statuses.items()))
    counts = (
        f"{count:8} {seen.failures():4} {seen.statuses[503]:4} {seen.hangs:5} {seen.unanswered:6} {seen.no_problem:10}"
    )
    print(f"{name:18} {counts} {seen.worst_ratio:14.2f} {seen.largest_bytes:8} {seconds:7.1f}  {statuses}", flush=True)
    for kind, request in seen.examples.items():
        if kind != "unanswered" or name not in ("half_requests", "heads"):
            print(f"    {kind}: {request[:400]!r}{' ...' if len(request) > 400 else ''}")
    return not (seen.failures() or seen.hangs or seen.no_problem)


if __name__ == "__main__":
    sys.exit(main())
