"""Time the designation readers on a great many slips of the pen, and hold them against the published patterns.

Run as `python -m fuzz.time_designations --texts 1000000 --seed 1`. The texts start from the lists of designations that
the tests read. The clock counts this process's own time; a text whose first reading took long is read again, since what
is slow by itself stays slow, and what met a collection of garbage does not.
"""

from __future__ import annotations

import argparse
import contextlib
import csv
import json
import random
import re
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from time import thread_time_ns

from service.core.errors import DomainError
from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN, BoltCircle, parse_bolt_circle
from service.designation.rim import RIM_PATTERN, RimDesignation, parse_rim
from service.designation.text import MAX_LENGTH
from service.designation.tyre import TYRE_PATTERN, TyreDesignation, parse_tyre

DATA = Path(__file__).parents[1] / "tests" / "reference" / "data"
CIRCLES = ("5x112", "5 x 114,3", "5/112", "112x5", '5 x 4.5"', '4 1/4" x 4', "10x335", "6-139.7", "5 x 4\u00bd in")
SIGNS = (
    "0123456789" * 4
    + "RXLJHTSVCPDEMOIZKFYWolxjr" * 2
    + "    /-.,()+*\"'&;:\u00a0\u2009\u2013\u00d7\u00bd\u2605\u00e9\t\x00\ud800"
)

SLOW_US = 500.0
LIMIT_US = 1000.0
READINGS = 7
GENTLE = 0.5

Answer = TyreDesignation | RimDesignation | BoltCircle
Reader = Callable[[str], Answer]


@dataclass(slots=True)
class Tally:
    """What the readings came to; times in microseconds."""

    outcomes: Counter[str] = field(default_factory=Counter)
    times: list[float] = field(default_factory=list)
    slowest: list[tuple[float, float, str]] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)


def seeds() -> Iterator[tuple[str, str]]:
    """Return the kind and the text of every designation to start from."""
    for kind in ("tyre", "rim"):
        with (DATA / f"{kind}_designations.csv").open(encoding="utf-8", newline="") as lines:
            yield from ((kind, row["text"]) for row in csv.DictReader(lines))
    yield from (("bolt circle", text) for text in CIRCLES)


def mutated(text: str, others: list[str], draw: random.Random) -> str:
    """Return the text with one to four slips, half of them in what stands behind the size."""
    if draw.random() < GENTLE:
        words = [*text.split(" "), *draw.choice(others).split(" ")[1:], draw.choice(others).split(" ")[-1]]
        text = " ".join([words[0], *draw.sample(words[1:], draw.randint(0, len(words) - 1))])
        if draw.random() < GENTLE:
            return text
    for _ in range(draw.choice((1, 1, 1, 2, 2, 3, 4))):
        at, to = sorted((draw.randint(0, len(text)), draw.randint(0, len(text))))
        match draw.randrange(7):
            case 0:
                text = text[:at] + text[at + 1 :]
            case 1:
                text = text[:at] + draw.choice(SIGNS) + text[at:]
            case 2:
                text = text[:at] + draw.choice(SIGNS) + text[at + 1 :]
            case 3:
                text = text[:to] + text[at:to] * draw.choice((1, 1, 2, 9)) + text[to:]
            case 4:
                text = text[:at] + text[to:]
            case 5:
                other = draw.choice(others)
                text = text[:at] + other[draw.randint(0, len(other)) :]
            case _:
                text = draw.choice((text.lower(), text.upper(), text.replace(" ", ""), text.replace(" ", "  ")))
    return text


def read(kind: str, text: str, reader: Reader, pattern: re.Pattern[str], tally: Tally) -> None:
    """Read one text, time it, and compare with the pattern and with the canonical spelling."""
    began = thread_time_ns()
    try:
        found: Answer | None = reader(text)
    except DomainError:
        found = None
    except Exception as error:  # noqa: BLE001 - any other error is what is looked for
        tally.faults.append(f"{kind}: {text!r} raised {error!r}")
        return
    took = (thread_time_ns() - began) / 1000.0
    tally.times.append(took)
    tally.outcomes[f"{kind} {'refused' if found is None else 'read'}"] += 1
    if took > SLOW_US:
        tally.slowest.append((_again(text, reader), took, f"{kind}: {text!r}"))
    if (found is not None) != (len(text) <= MAX_LENGTH and pattern.fullmatch(text) is not None):
        tally.faults.append(f"{kind}: {text!r} is {'read' if found else 'refused'}, its pattern disagrees")
    if found is not None and reader(found.canonical).canonical != found.canonical:
        tally.faults.append(f"{kind}: {text!r} has an unstable spelling, {found.canonical!r}")


def _again(text: str, reader: Reader) -> float:
    """Return the shortest of several more readings [us]."""
    best = float("inf")
    for _ in range(READINGS):
        began = thread_time_ns()
        with contextlib.suppress(DomainError):
            reader(text)
        best = min(best, (thread_time_ns() - began) / 1000.0)
    return best


def main() -> int:
    """Read the texts, print the figures, and return 1 if anything was wrong or slow by itself."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--texts", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    readers: dict[str, tuple[Reader, re.Pattern[str]]] = {
        # Past the cache: every text is to be read.
        "tyre": (parse_tyre.__wrapped__, re.compile(TYRE_PATTERN)),
        "rim": (parse_rim.__wrapped__, re.compile(RIM_PATTERN)),
        "bolt circle": (parse_bolt_circle.__wrapped__, re.compile(BOLT_CIRCLE_PATTERN)),
    }
    draw, started, tally = random.Random(asked.seed), list(seeds()), Tally()  # noqa: S311 - cases, not secrets
    others = [text for _, text in started]
    for _ in range(asked.texts):
        kind, text = draw.choice(started)
        read(kind, mutated(text, others, draw), *readers[kind], tally)
    tally.times.sort()
    shares = {"median": 0.5, "p99": 0.99, "p99.99": 0.9999}
    figures = {name: round(tally.times[int(len(tally.times) * share)], 1) for name, share in shares.items()}
    slow = sorted(tally.slowest, reverse=True)
    shown = {
        "texts": asked.texts,
        "outcomes": dict(sorted(tally.outcomes.items())),
        "microseconds": figures | {"first reading, longest": round(tally.times[-1], 1)},
        "longest when read again": [
            f"{best:.1f} us ({first:.1f} us at first) {text}" for best, first, text in slow[:5]
        ],
        "faults": tally.faults[:20],
    }
    sys.stdout.write(json.dumps(shown, indent=2) + "\n")
    return 1 if tally.faults or (slow and slow[0][0] > LIMIT_US) else 0


if __name__ == "__main__":
    sys.exit(main())
