"""Measurements through HTTP: the service on one core, wrk on the other."""

from __future__ import annotations

import http.client
import statistics
import time
from collections.abc import Iterator
from typing import NamedTuple

from benchmarks.bodies import compare_bodies, demo_checks, mixed_checks, new_checks, search_body
from benchmarks.load import Bodies, Load, result
from benchmarks.place import Service

CHECK, COMPARE, SEARCH = (f"/v1/fitments/{name}" for name in ("check", "compare", "search"))
ROUNDS = 3
ROUND_S = 3.0
WARM_UP_S = 1.0
CANDIDATES = 500
# More than any cache of the service holds, so that none of them can answer.
NEW_QUESTIONS = 6600
MEMORY_REQUESTS = 200_000
MEMORY_WARM_UP = 20_000
PROBE_S = 8.0
PROBE_EVERY_S = 0.004
PROBE_CLIENTS = 8


class Row(NamedTuple):
    """One line of the table."""

    what: str
    found: str
    goal: str = ""


def check() -> Iterator[Row]:
    """Yield how a check compares with its twin, asked in turn, round by round."""
    with Service() as real, Service("benchmarks.twin") as twin:
        yield from _against_twin(real, twin, "demo requests in turn", Bodies(demo_checks()), "0.70")
        yield from _against_twin(real, twin, "no axle twice", Bodies(new_checks(NEW_QUESTIONS)), "0.70")


def _against_twin(real: Service, twin: Service, what: str, bodies: Bodies, goal: str) -> Iterator[Row]:
    for each in (real, twin):
        bodies.ask(each, CHECK, WARM_UP_S)
    rounds = [(bodies.ask(real, CHECK, ROUND_S), bodies.ask(twin, CHECK, ROUND_S)) for _ in range(ROUNDS)]
    ours, theirs = ([pair[side] for pair in rounds] for side in (0, 1))
    yield _rate(f"check, {what}", ours)
    yield _rate(f"  its twin, {what}", theirs)
    by_rate = [load.per_second / other.per_second for load, other in rounds]
    by_processor = statistics.median(other.processor_us / load.processor_us for load, other in rounds)
    shown = ", ".join(f"{each:.3f}" for each in by_rate)
    found = f"{statistics.median(by_rate):.3f} (rounds: {shown}); by processor time {by_processor:.3f}"
    yield Row(f"  check / twin, {what}", found, goal)


def _rate(what: str, loads: list[Load]) -> Row:
    rate, spent, p99 = (
        statistics.median(values)
        for values in zip(*((each.per_second, each.processor_us, each.p99_ms) for each in loads), strict=True)
    )
    return Row(what, f"{rate:,.0f} /s; {spent:.0f} us of processor each; p99 {p99:.1f} ms")


def compare() -> Iterator[Row]:
    """Yield how many candidates are compared, in requests of 500."""
    with Service() as service:
        bodies = Bodies(compare_bodies(8, CANDIDATES))
        bodies.ask(service, COMPARE, WARM_UP_S, clients=2)
        load = bodies.ask(service, COMPARE, 2 * ROUND_S, clients=2)
    rate = load.per_second * CANDIDATES
    yield Row(
        f"compare, {CANDIDATES} candidates a request",
        f"{rate:,.0f} candidates/s; {load.processor_us / CANDIDATES:.1f} us of processor each; "
        f"{1000 / load.per_second:.1f} ms a request",
        "30,000",
    )


def search() -> Iterator[Row]:
    """Yield how long a search of the whole grid takes with eight rims, one caller at a time."""
    with Service() as service:
        bodies = Bodies([search_body()])
        bodies.ask(service, SEARCH, WARM_UP_S, clients=1)
        load = bodies.ask(service, SEARCH, 2 * ROUND_S, clients=1)
    yield Row(
        "search, whole grid on 8 rims",
        f"{load.mean_ms:.1f} ms a request, p99 {load.p99_ms:.1f} ms; {load.processor_us / 1000:.1f} ms of processor",
        "100 ms",
    )


def memory() -> Iterator[Row]:
    """Yield the memory of an idle service, and how it grows over many requests."""
    with Service() as service:
        time.sleep(1.0)
        resident, proportional = service.memory_mib()
        yield Row("memory, idle", f"{resident:.0f} MiB resident, {proportional:.0f} MiB proportional", "150 MiB")
        bodies = Bodies(mixed_checks(4 * NEW_QUESTIONS))
        sent, marks = 0, [MEMORY_WARM_UP, MEMORY_WARM_UP + MEMORY_REQUESTS // 2, MEMORY_WARM_UP + MEMORY_REQUESTS]
        sizes = []
        for mark in marks:
            while sent < mark:
                sent += bodies.ask(service, CHECK, 5.0, clients=8).requests
            sizes.append((sent, service.memory_mib()[0]))
    grown = " -> ".join(f"{size:.1f} MiB at {count:,}" for count, size in sizes)
    yield Row("memory, over the requests", grown)
    yield Row(
        f"  growth over the last {sizes[-1][0] - sizes[0][0]:,}", f"{sizes[-1][1] - sizes[0][1]:+.1f} MiB", "none"
    )


def probe() -> Iterator[Row]:
    """Yield how fast /health/live answers, idle and beside eight clients with large compares."""
    with Service() as service:
        yield _probed("probe, idle", service, PROBE_S / 2)
        bodies = Bodies(compare_bodies(PROBE_CLIENTS, CANDIDATES))
        comparing = bodies.start(service, COMPARE, PROBE_S + 3.0, PROBE_CLIENTS)
        time.sleep(1.5)
        yield _probed(f"probe, {PROBE_CLIENTS} clients comparing {CANDIDATES}", service, PROBE_S)
        said, _ = comparing.communicate(timeout=60)
        load = result(said)
        yield Row("  their compares meanwhile", f"{load.per_second * CANDIDATES:,.0f} candidates/s, all answered")


def _probed(what: str, service: Service, seconds: float) -> Row:
    connection = http.client.HTTPConnection("127.0.0.1", service.port, timeout=10)
    took = []
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        start = time.perf_counter()
        connection.request("GET", "/health/live")
        answer = connection.getresponse()
        answer.read()
        took.append(time.perf_counter() - start)
        if answer.status != http.client.OK:
            raise RuntimeError(f"a probe was answered with {answer.status}")
        time.sleep(PROBE_EVERY_S)
    connection.close()
    marks = statistics.quantiles((1000 * each for each in took), n=100)
    found = f"p50 {marks[49]:.2f} ms, p99 {marks[98]:.2f} ms, worst {1000 * max(took):.1f} ms ({len(took)} probes)"
    return Row(what, found)
