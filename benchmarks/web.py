"""Measurements through HTTP: the service on one core, wrk on the other."""

from __future__ import annotations

import http.client
import statistics
import time
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from benchmarks.bodies import Json, compare_bodies, demo_checks, demo_request, mixed_checks, search_body
from benchmarks.load import Bodies, Load, result
from benchmarks.mixes import cold_checks, zipf_checks
from benchmarks.place import Service

CHECK, COMPARE = (f"/v1/fitments/{name}" for name in ("check", "compare"))
ROUNDS = 3
ROUND_S = 3.0
WARM_UP_S = 1.0
CANDIDATES, FEW_CANDIDATES = 500, 10
NEW_QUESTIONS = 6600
# `benchmarks.soak_mixed` looks at a million of all kinds.
MEMORY_REQUESTS = 20_000
MEMORY_WARM_UP = 4_000
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
    cold = list(cold_checks(NEW_QUESTIONS))
    with Service() as real, Service("benchmarks.twin") as twin:
        for detail, goal in (("short", "0.40"), ("standard", ""), ("full", "0.22")):
            yield from _against_twin(real, twin, f"{detail}, all new", _in_detail(cold, detail), goal)
        yield from _against_twin(real, twin, "standard, a shop's 300 x 30", Bodies(zipf_checks(NEW_QUESTIONS)), "")
        yield from _against_twin(real, twin, "standard, demo requests in turn", Bodies(demo_checks()), "")


def _in_detail(bodies: Sequence[Json], detail: str) -> Bodies:
    return Bodies({**each, "detail": detail} for each in bodies)


def _against_twin(real: Service, twin: Service, what: str, bodies: Bodies, goal: str) -> Iterator[Row]:
    for each in (real, twin):
        bodies.ask(each, CHECK, WARM_UP_S)
    rounds = [(bodies.ask(real, CHECK, ROUND_S), bodies.ask(twin, CHECK, ROUND_S)) for _ in range(ROUNDS)]
    ours, theirs = ([pair[side] for pair in rounds] for side in (0, 1))
    yield _rate(f"check, {what}", ours)
    yield _rate("  its twin", theirs)
    by_processor = [other.processor_us / load.processor_us for load, other in rounds]
    shown = ", ".join(f"{each:.3f}" for each in by_processor)
    by_rate = statistics.median(load.per_second / other.per_second for load, other in rounds)
    found = f"{statistics.median(by_processor):.3f} by processor time (rounds: {shown}); by rate {by_rate:.3f}"
    yield Row("  check / twin", found, goal)


def twin_us() -> float:
    """Return the processor time of one request of the twin, to which other work is held in the same run."""
    with Service("benchmarks.twin") as twin:
        bodies = Bodies(cold_checks(NEW_QUESTIONS // 4))
        bodies.ask(twin, CHECK, WARM_UP_S)
        return bodies.ask(twin, CHECK, ROUND_S).processor_us


def _rate(what: str, loads: list[Load]) -> Row:
    rate, spent, p99 = (
        statistics.median(values)
        for values in zip(*((each.per_second, each.processor_us, each.p99_ms) for each in loads), strict=True)
    )
    return Row(what, f"{rate:,.0f} /s; {spent:.0f} us of processor each; p99 {p99:.1f} ms")


def compare() -> Iterator[Row]:
    """Yield what a candidate of a compare costs, in requests of 500 and of ten."""
    unit = twin_us()
    with Service() as service:
        for detail in ("short", "standard", "full"):
            for size in (CANDIDATES, FEW_CANDIDATES):
                bodies = _in_detail(compare_bodies(8, size), detail)
                bodies.ask(service, COMPARE, 3 * WARM_UP_S, clients=2)
                each_us = bodies.ask(service, COMPARE, 2 * ROUND_S, clients=2).processor_us / size
                goal = "0.30" if size == CANDIDATES else ""
                found = f"{each_us:.1f} us of processor a candidate; {each_us / unit:.3f} of a twin's request"
                yield Row(f"compare, {size} candidates, {detail}", found, goal)


def search() -> Iterator[Row]:
    """Yield what a search of the whole grid and rims and plan of five combinations cost, one caller at a time."""
    asked = {
        "search, whole grid on 8 rims": ("search", search_body()),
        "rims, five combinations": ("rims", demo_request("five-combinations.rims")),
        "plan, five combinations": ("plan", demo_request("five-combinations.plan")),
    }
    unit = twin_us()
    with Service() as service:
        for what, (route, body) in asked.items():
            bodies = Bodies([body])
            bodies.ask(service, f"/v1/fitments/{route}", WARM_UP_S, clients=1)
            load = bodies.ask(service, f"/v1/fitments/{route}", ROUND_S, clients=1)
            spent = (
                f"{load.processor_us / 1000:.1f} ms of processor, {load.processor_us / unit:.0f} of a twin's requests"
            )
            yield Row(what, f"{load.mean_ms:.1f} ms a request, p99 {load.p99_ms:.1f} ms; {spent}")


def memory() -> Iterator[Row]:
    """Yield the memory of an idle service, and how it grows over many requests."""
    with Service() as service:
        time.sleep(1.0)
        resident, proportional = service.memory_mib()
        yield Row("memory, idle", f"{resident:.0f} MiB resident, {proportional:.0f} MiB proportional", "100 MiB")
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
