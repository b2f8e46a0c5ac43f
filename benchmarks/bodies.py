"""What is asked while measuring: the demo requests, and as many variations of them as wanted, none like another."""

from __future__ import annotations

import copy
import itertools
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast

Json = dict[str, Any]
DEMO = Path(__file__).parents[1] / "demo_requests"
# Demo requests that are there to be refused.
_REFUSED = frozenset({"typing-error"})
_AXLES = ("front", "rear")
# Sizes of the usual kind: width, aspect ratio, rim code, rim width.
_SIZES = [
    (width, aspect, code, rim)
    for width, rim in ((195, "6.5"), (205, "7"), (215, "7.5"), (225, "8"), (235, "8"), (245, "8.5"), (255, "9"))
    for aspect in (35, 40, 45, 50, 55)
    for code in (16, 17, 18, 19)
]


def demo_checks() -> list[Json]:
    """Return the demo requests for a check that are answered with a verdict."""
    files = sorted(DEMO.glob("*.check.json"))
    return [
        cast("Json", json.loads(file.read_text(encoding="utf-8")))
        for file in files
        if file.name.partition(".")[0] not in _REFUSED
    ]


def demo_request(name: str) -> Json:
    """Return the demo request of this name."""
    return cast("Json", json.loads((DEMO / f"{name}.json").read_text(encoding="utf-8")))


def new_checks(count: int) -> Iterator[Json]:
    """Yield questions of which no two have an axle in common, neither the present one nor what is proposed for it."""
    for number, demo in zip(range(count), itertools.cycle(demo_checks()), strict=False):
        body = copy.deepcopy(demo)
        for axle in _AXLES:
            # A gram more or less changes no verdict, but is another vehicle and another wheel.
            body["vehicle"][axle]["max_axle_mass_kg"] += 0.001 * number
            body["candidate"][axle]["tyre"]["tread_depth_mm"] = 7.0 + 0.0001 * number
        yield body


def mixed_checks(count: int) -> Iterator[Json]:
    """Yield demo requests in turn, and after every three of them a question that was not asked before."""
    demo = itertools.cycle(demo_checks())
    for new in new_checks(count // 4):
        yield from itertools.islice(demo, 3)
        yield new


def compare_bodies(count: int, candidates: int = 500) -> list[Json]:
    """Return questions with so many candidates each, no candidate twice."""
    demo = next(body for body in demo_checks() if "towing" not in body["vehicle"])
    bodies = []
    for number in range(count):
        body = {name: value for name, value in copy.deepcopy(demo).items() if name != "candidate"}
        body["candidates"] = [_candidate(demo["candidate"], number * candidates + at) for at in range(candidates)]
        bodies.append(body)
    return bodies


def _candidate(like: Json, number: int) -> Json:
    made = copy.deepcopy(like)
    made["label"] = f"candidate {number}"
    width, aspect, code, rim = _SIZES[number % len(_SIZES)]
    load_index = 84 + number // len(_SIZES) % 20
    for axle in _AXLES:
        wheel = made[axle]
        wheel["tyre"]["size"] = f"{width}/{aspect} R{code} {load_index}Y"
        wheel["rim"]["size"] = f"{rim}J x {code} H2 ET{30 + number % 25}"
    return made


def search_body() -> Json:
    """Return a search over the whole grid with eight rims."""
    demo = next(body for body in demo_checks() if "towing" not in body["vehicle"])
    body = {name: value for name, value in copy.deepcopy(demo).items() if name != "candidate"}
    like = demo["candidate"]["front"]["rim"]
    sizes = ("7J x 17", "7.5J x 17", "8J x 17", "7.5J x 18", "8J x 18", "8.5J x 18", "8J x 19", "8.5J x 19")
    body["rims"] = {"front": [{**like, "size": f"{size} H2 ET45"} for size in sizes]}
    return body
