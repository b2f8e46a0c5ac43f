"""Many mixed requests in a row: memory, faults, and whether an answer depends on those before it.

`python -m benchmarks.soak_mixed [--requests N] [--sampled N]`. Every route, five languages, hostile requests among
them, on connections that are kept. Request number n is the same in every run. A sample, spread over the run, is put
afterwards to a process that was never asked anything, in another order, and must get the same bytes.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import multiprocessing
import random
import re
import socket
import sys
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from benchmarks.hostile import Service
from benchmarks.hostile_requests import Attacks, leaves, well_meant
from benchmarks.mixes import cold_checks
from benchmarks.soak import resident_mib
from tests.contract.http_wire import head, post, receive

CALLERS = 12
LANGUAGES = ("en", "de", "fr", "es", "nl")
DETAILS = ("short", "standard", "full")
# The shares of the mix: attacks, reads, and what takes many times a check (searches, plans, reports); the rest are
# checks.
ATTACKS, READS, LONG_WORK = 0.45, 0.45, 0.005
# Hostile requests that are answered on a connection that goes on; the others break it, which `hostile` tries.
HOSTILE = ("wrong_values", "hostile_texts", "members", "broken_json", "paths_and_methods", "queries", "header_values")
GETS = tuple((Path(__file__).parents[1] / "demo_requests" / "get_requests.txt").read_text().split("\n")[1:-1])
# Answers that tell of the moment: what is counted, and what was too much just then.
OF_THE_MOMENT = ("/metrics", "/health")
BUSY = (429, 503)
# The request's own name in a problem.
OWN_NAME = re.compile(rb"urn:fitment:request:[0-9a-f]+")
# What moves in a well-meant request, so that no two are alike.
MOVED = ("pressure_kpa", "inboard_mm", "outboard_mm", "tread_depth_mm", "max_axle_mass_kg", "track_mm", "wheelbase_mm")


class Told(NamedTuple):
    """What a stretch of requests led to."""

    statuses: Counter[int]
    sampled: dict[int, str]
    broken: int


@cache
def _pool() -> tuple[list[str], list[tuple[str, str]]]:
    """Return checks, and what takes longer with its path, as texts: each request is a copy that may be changed."""
    checks = [json.dumps(each) for each in cold_checks(600)]
    return checks, [(each.path, json.dumps(each.body)) for each in well_meant() if each.path != "/v1/fitments/check"]


def request(number: int) -> bytes:
    """Return the bytes of request number n: the same in every process."""
    dice = random.Random(number)
    kind = dice.random()
    if kind < ATTACKS:
        source = Attacks.__new__(Attacks)
        source.__dict__.update(_attacks().__dict__, random=dice)
        raw: bytes = getattr(source, dice.choice(HOSTILE))()
        return raw
    if kind < ATTACKS + READS:
        return head(
            "GET", dice.choice([path for path in GETS if path]), f"Accept-Language: {dice.choice(LANGUAGES)}".encode()
        )
    checks, others = _pool()
    if kind < 1.0 - LONG_WORK:
        path, body = "/v1/fitments/check", json.loads(dice.choice(checks))
        body["detail"] = dice.choice(DETAILS)
    else:
        path, text = dice.choice(others)
        body = json.loads(text)
    _move(body, dice)
    return post(path, json.dumps(body).encode(), f"Accept-Language: {dice.choice(LANGUAGES)}".encode())


@cache
def _attacks() -> Attacks:
    return Attacks(0)


def _move(body: Any, dice: random.Random) -> None:  # noqa: ANN401 - JSON is of any type
    for place in list(leaves(body)):
        if place[-1] in MOVED:
            parent = body
            for key in place[:-1]:
                parent = parent[key]
            if isinstance(parent[place[-1]], (int, float)):
                parent[place[-1]] = round(parent[place[-1]] * dice.uniform(0.98, 1.02), 6)


def ask(asked: tuple[int, range, frozenset[int]]) -> Told:
    """Put a stretch of requests to a port, one after another, and note the answers of the sample."""
    port, numbers, sample = asked
    statuses: Counter[int] = Counter()
    sampled: dict[int, str] = {}
    broken = 0
    connection = socket.create_connection(("127.0.0.1", port), 30)
    for number in numbers:
        raw = request(number)
        method = raw.partition(b" ")[0].decode()
        try:
            connection.sendall(raw)
            answer = receive(connection, method)
        except (OSError, ValueError) as fault:
            broken += 1
            print(f"request {number}: {fault!r}", file=sys.stderr)
            connection.close()
            connection = socket.create_connection(("127.0.0.1", port), 30)
            continue
        statuses[answer.status] += 1
        if number in sample and answer.status not in BUSY:
            kind = answer.headers.get("content-type", "")
            told = OWN_NAME.sub(b"", answer.body)
            sampled[number] = hashlib.sha256(f"{answer.status} {kind}".encode() + told).hexdigest()
        if answer.headers.get("connection", "").lower() == "close":
            connection.close()
            connection = socket.create_connection(("127.0.0.1", port), 30)
    connection.close()
    return Told(statuses, sampled, broken)


def main() -> int:
    """Measure, write the table, return 1 where memory grew, a request failed or an answer differed."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--requests", type=int, default=1_000_000)
    parser.add_argument("--sampled", type=int, default=10_000)
    options = parser.parse_args()
    sample = frozenset(
        number
        for number in random.Random(1).sample(range(options.requests), min(options.sampled, options.requests))
        if not any(part in request(number).split(b"\r\n")[0].decode("latin-1") for part in OF_THE_MOMENT)
    )
    statuses: Counter[int] = Counter()
    first: dict[int, str] = {}
    broken, seen = 0, []
    step = max(options.requests // 20, 1)
    with multiprocessing.Pool(CALLERS) as callers:
        with Service(access_log=False, queue_length=64) as server:
            for start in range(0, options.requests, step):
                stretch = [
                    (server.port, range(start + caller, min(start + step, options.requests), CALLERS), sample)
                    for caller in range(CALLERS)
                ]
                for told in callers.map(ask, stretch):
                    statuses += told.statuses
                    first |= told.sampled
                    broken += told.broken
                seen.append(resident_mib(server.process.pid))
                print(
                    f"{start + step:9} {seen[-1]:8.1f} MiB  {dict(sorted(statuses.items()))} broken {broken}",
                    flush=True,
                )
        with Service(access_log=False) as fresh:
            order = sorted(first, key=lambda number: hashlib.sha256(str(number).encode()).digest())
            again: dict[int, str] = {}
            for number in order:
                again |= ask((fresh.port, range(number, number + 1), sample)).sampled
    other = [number for number in first if again.get(number) != first[number]]
    failed = sum(count for status, count in statuses.items() if status >= 500 and status not in BUSY)
    grown = seen[-1] - seen[len(seen) // 2]
    print(f"5xx {failed}, broken {broken}, compared {len(first)}")
    print(f"other bytes {len(other)} {other[:5]}, grown over the second half {grown:+.1f} MiB")
    return 1 if failed or broken or other or grown > 4.0 else 0


if __name__ == "__main__":
    sys.exit(main())
