"""Doing all that an answer says, at once: every pressure of its job card and every remedy of its findings."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from typing import Any, NamedTuple

from tests.support import remedies
from tests.support.cases import at, changed
from tests.support.wire import AXLES, pressures

Json = dict[str, Any]


class Advice(NamedTuple):
    """One remedy as the answer shows it, with the finding that it settles."""

    code: str
    axle: str
    text: str
    pointer: str
    quantity: str
    at_least: float | None
    at_most: float | None
    equals: str | None


def advice(answer: Json) -> Iterator[Advice]:
    """Return every remedy of an answer, worst finding first."""
    for finding in answer["findings"]:
        told = finding.get("remedy")
        if finding["outcome"] == "met" or told is None:
            continue
        values = (told.get(name) for name in ("text", "pointer", "quantity", "at_least", "at_most", "equals"))
        yield Advice(finding["code"], finding["axle"], *values)


def contradictions(answer: Json) -> list[tuple[Advice, Advice]]:
    """Return pairs of remedies of which one names only values that the other one refuses."""
    found = []
    told = list(advice(answer))
    for place, one in enumerate(told):
        same = [other for other in told[place + 1 :] if (one.pointer, one.quantity) == (other.pointer, other.quantity)]
        found += [(one, other) for other in same if not _agree(one, other)]
    return found


def _agree(one: Advice, other: Advice) -> bool:
    if one.equals is not None and other.equals is not None:
        # A speed symbol that two findings ask for is the faster of both: either names the least.
        return one.quantity == "speed_symbol" or one.equals == other.equals
    low = max(-math.inf if each.at_least is None else each.at_least for each in (one, other))
    high = min(math.inf if each.at_most is None else each.at_most for each in (one, other))
    return low <= high


def _joined(told: list[Advice]) -> list[Advice]:
    """Return the remedies with those for the same quantity made one, which satisfies all of them."""
    joined: dict[tuple[str, str], Advice] = {}
    for each in told:
        key = (each.pointer, each.quantity)
        if key not in joined:
            joined[key] = each
            continue
        before = joined[key]
        lows = [value for value in (before.at_least, each.at_least) if value is not None]
        highs = [value for value in (before.at_most, each.at_most) if value is not None]
        joined[key] = before._replace(at_least=max(lows, default=None), at_most=min(highs, default=None))
    return list(joined.values())


def obey(request: Json, answer: Json) -> Json:
    """Return the request after the job card and all remedies were done.

    A pressure is what the job card says. A fact that is only asked for is stated where the verdict waits for it, as it
    is on a car that the candidate fits; what somebody measures otherwise is news and no contradiction.

    Raises
    ------
    NotApplicable
        When a remedy leads out of what a request can say, or two remedies contradict each other.
    """
    # Through JSON, so that no two wheels of it are one object.
    done = json.loads(json.dumps(request))
    told = list(advice(answer))
    # A wheel that stays on the car needs nothing of what was said of the proposed one.
    kept = [each.pointer for each in told if each.quantity == "fitment"]
    told = [
        each for each in told if each.pointer in kept or not each.pointer.startswith(tuple(f"{at}/" for at in kept))
    ]
    # A wheel like the one on the other axle is like it once all is done.
    for each in sorted(_joined(told), key=lambda one: one.quantity == "fitment"):
        asks = each.at_least is None and each.at_most is None and each.equals is None
        if each.quantity == "pressure_kpa" or (asks and answer["verdict"] != "undetermined"):
            continue
        if asks and each.quantity == "nominal_width_mm":
            # A wheel to be chosen anew is another question.
            raise remedies.NotApplicable(each)
        do = remedies._SPECIAL.get(each.quantity)
        try:
            if asks and each.quantity in _FACTS:
                done = changed(done, {each.pointer: _fact(request, each)})
            else:
                # The reader of remedies asks for nothing but these fields.
                done = do(done, each) if do else changed(done, {each.pointer: remedies._value(done, each)})
        except (AssertionError, ValueError, KeyError) as problem:
            raise remedies.NotApplicable(each) from problem
    ordered = {
        f"/candidate/{axle}/pressure_kpa": value
        for axle, value in pressures(answer).items()
        if f"/candidate/{axle}" not in kept
    }
    return changed(done, ordered)


_FACTS = ("bolt_circle", "centre_bore_mm")


def _fact(request: Json, told: Advice) -> object:
    """Return what the hub, else the wheel on it, else the proposed rim states of how a wheel is fixed."""
    axle = next(name for name in AXLES if f"/{name}/" in told.pointer)
    vehicle = request["vehicle"][axle]
    for part in (vehicle.get("hub", {}), vehicle["fitted"]["rim"], request["candidate"][axle]["rim"]):
        if told.quantity in part:
            return part[told.quantity]
    return remedies.PLAUSIBLE[told.quantity]


def unchanged(request: Json, done: Json) -> list[str]:
    """Return the axles whose proposed tyre and rim are still the same designations."""
    same = []
    for axle in AXLES:
        names = [f"/candidate/{axle}/{part}/size" for part in ("tyre", "rim")]
        if all(at(request, name) == at(done, name) for name in names):
            same.append(axle)
    return same
