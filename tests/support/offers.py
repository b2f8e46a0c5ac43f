"""What search offers a workshop: of its vehicles, its rims and its stock, the share of each verdict and what decides.

`python -m tests.support.offers` prints it. The rims asked about are those of the shelf that a fitter would take to the
car: the bolt circle that is known of hub or wheel, at most one inch from the present code, and the present ones.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

from tests.support import tyre_stock, workshop
from tests.support.wire import AXLES, VERDICTS, check, post

Json = dict[str, Any]
Rims = Callable[[Json], list[Json]]

MOST_RIMS = 16
MOST_ROWS = 100
MOST_REASONS = 5
# What stands on the wheel, the tyre or in the papers, and what is measured on the car.
READ = frozenset({"rim.bolt_circle", "rim.centre_bore", "rim.load_rating", "load.pressure"})
MEASURED = frozenset({"clearance.inboard", "clearance.outboard", "clearance.radial", "rim.brake_clearance"})
# The outcome that leads to each verdict.
DECIDING = dict(zip(VERDICTS, ("met", "advisory", "not_assessed", "not_recommended", "not_met"), strict=True))


class Offer(NamedTuple):
    """One row of a search: on which vehicle, how it came out, and the codes that made it so."""

    vehicle: str
    verdict: str
    codes: frozenset[str]


def _code(rim: Json) -> int:
    return int(rim["size"].split(" x ")[1].split()[0])


def rims_near(axle: Json) -> list[Json]:
    """Return the rims that a fitter would try on an axle, the present one first."""
    fitted = axle["fitted"]["rim"]
    circle = axle.get("hub", fitted).get("bolt_circle")
    near = [each for each in tyre_stock.RIMS if abs(_code(each) - _code(fitted)) <= 1]
    if circle is not None:
        near = [each for each in near if each["bolt_circle"] == circle]
    return [fitted, *(each for each in near if each["size"] != fitted["size"])][:MOST_RIMS]


def present_rims(axle: Json) -> list[Json]:
    """Return the rim that an axle has."""
    return [axle["fitted"]["rim"]]


def found(name: str, rims: Rims = rims_near, *, stock: bool = True) -> Json:
    """Return the answer of search for a vehicle with the stock, else with every size of the grid."""
    vehicle = workshop.vehicle(name)
    asked = {"vehicle": vehicle, "rims": {axle: rims(vehicle[axle]) for axle in AXLES}, "max_results": MOST_ROWS}
    if stock:
        asked["stock"] = [{"size": each} for each in tyre_stock.STOCK]
    return post("/v1/fitments/search", asked)


def offers(name: str, answer: Json) -> Iterator[Offer]:
    """Return the rows of an answer with what decided each, as `check` says it."""
    vehicle = workshop.vehicle(name)
    for row in answer["rows"]:
        full = check({"vehicle": vehicle, "candidate": row["candidate"]})
        yield Offer(name, row["verdict"], deciding(full))


def deciding(answer: Json) -> frozenset[str]:
    """Return the codes whose outcome made the verdict."""
    outcome = DECIDING[answer["verdict"]]
    return frozenset(
        each["code"]
        for each in answer["findings"]
        if outcome != "met" and each["outcome"] == outcome and each.get("decides", True)
    )


def shares(all_offers: list[Offer]) -> str:
    """Return a table of verdicts with their number, share and most frequent reasons."""
    lines = [f"{len(all_offers)} offers"]
    for verdict in VERDICTS:
        mine = [each for each in all_offers if each.verdict == verdict]
        reasons = Counter(code for each in mine for code in each.codes).most_common(MOST_REASONS)
        words = ", ".join(f"{code} {count}" for code, count in reasons)
        lines.append(f"{verdict:24}{len(mine):5}{100.0 * len(mine) / max(len(all_offers), 1):7.1f} %  {words}")
    open_ones = [each for each in all_offers if each.verdict == "undetermined"]
    read = sum(each.codes <= READ for each in open_ones)
    measured = sum(each.codes <= MEASURED for each in open_ones)
    lines.append(
        f"of the undetermined: {read} wait only for what is read on the wheel, {measured} only for what is measured "
        f"on the car, {len(open_ones) - read - measured} for both"
    )
    return "\n".join(lines)


def _print() -> None:
    questions: tuple[tuple[str, Rims, bool], ...] = (
        ("the stock on rims of the shelf", rims_near, True),
        ("the stock on the present rims", present_rims, True),
        ("every size of the grid on the present rims", present_rims, False),
    )
    for title, rims, stock in questions:
        every: list[Offer] = []
        sys.stdout.write(f"\n== {title}\n")
        for name in workshop.NAMES:
            mine = list(offers(name, found(name, rims, stock=stock)))
            every += mine
            sys.stdout.write(f"{name:24} {dict(Counter(each.verdict for each in mine))}\n")
        sys.stdout.write(f"{shares(every)}\n")


if __name__ == "__main__":
    _print()
