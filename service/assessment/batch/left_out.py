"""Why a search finds so few, in words: what was left out and for what, and what the caller may ask otherwise."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.batch import search_pairs

AXLE, VERDICTS_ASKED = "search.axle", "search.verdicts"
# One of what was tried, and several.
TYRES, PAIRS = ("tyre on a rim", "tyres on rims"), ("pair", "pairs")
# More reasons than these make a sentence that nobody reads to its end.
MOST_NAMED = 3

# For what something is left out; every phrase goes behind "for".
_FOR: Mapping[str, str] = MappingProxyType(
    {
        "rim.diameter": "another rim diameter",
        "rim.width": "a rim width that the tyre does not take",
        "rim.bolt_circle": "another bolt circle",
        "rim.centre_bore": "a centre bore that does not go over the hub",
        "rim.brake_clearance": "a rim too small for the brake",
        "rim.load_rating": "a rim that carries too little",
        "rim.contour": "a rim contour that does not hold the tyre",
        "load.capacity": "too low a load index",
        "load.pressure": "want of a pressure that is enough",
        "speed.capability": "too low a speed symbol",
        "diameter.deviation": "an overall diameter too far from the present one",
        "diameter.speedometer": "a speedometer that would read too low or too high",
        "diameter.axle_ratio": "axles that would turn too differently",
        "clearance.inboard": "too little room at the strut",
        "clearance.outboard": "too little room at the wing",
        "clearance.radial": "too little room in the wheel arch",
        "clearance.twin": "twin tyres that would touch each other",
        "tyre.structure": "radial and diagonal tyres together",
        "limits.overall_diameter_percent": "an overall diameter beyond the limit asked for",
        "limits.section_width_mm": "a section width beyond the limits asked for",
        "limits.load_margin_percent": "less load margin than asked for",
        "limits.inboard_room_mm": "less room at the strut than asked for",
        "limits.outboard_room_mm": "less room at the wing than asked for",
        "limits.radial_room_mm": "less room in the wheel arch than asked for",
        "limits.balance_deg_per_g": "a greater change of balance than asked for",
        search_pairs.RATIO: "axles that would turn too differently",
        search_pairs.STAGGER: "another difference between front and rear tyres than the car is to have",
        search_pairs.RIM_WIDTH_MIX: "rims of different width on a car whose rims are alike",
        search_pairs.SEASON_MIX: "summer, winter or all-season tyres together",
        search_pairs.CLASS_MIX: "passenger car and commercial tyres together",
        search_pairs.NOT_JOINED: "being further from what is asked than those looked at",
        search_pairs.NOT_GRADED: "being further from what is asked than those looked at",
        AXLE: "a check that one of the axles does not pass at the pressure to be set",
        VERDICTS_ASKED: "a verdict that was not asked for",
    }
)
_RULES, _OTHER = "a rule of the place", "a check that is not passed"


class Sieve(NamedTuple):
    """How many were tried, how many are left, and how many each reason sent away."""

    tried: int
    kept: int
    removed: Counter[str]


def reason_in_words(code: str) -> str:
    """Return for what a reason leaves something out, as it goes behind "for"."""
    return _FOR.get(code, _RULES if code.startswith("law.") else _OTHER)


def why_none(front: Sieve, rear: Sieve, pairs: Sieve, defaults: frozenset[str]) -> str:
    """Return why nothing is left, and which defaults of the search had a part in it; empty where something is."""
    if pairs.kept:
        return ""
    empty = [(name, sieve) for name, sieve in (("front", front), ("rear", rear)) if not sieve.kept]
    if empty:
        name, sieve = empty[0]
        return f"No tyre is left for the {name} axle. {_counted(sieve, TYRES, defaults)}"
    return f"No pair of front and rear tyres is left. {_counted(pairs, PAIRS, defaults)}"


def _counted(sieve: Sieve, what: tuple[str, str], defaults: frozenset[str]) -> str:
    if not sieve.tried:
        return "There was none to try."
    reasons = [(code, count) for code, count in sieve.removed.most_common() if count]
    counted = [f"{count} for {reason_in_words(code)}" for code, count in reasons]
    named = counted[:MOST_NAMED]
    more = sum(count for _, count in reasons[MOST_NAMED:])
    if more:
        named.append(f"{more} for other reasons")
    *others, last = named
    listed = f"{', '.join(others)} and {last}" if others else last
    found = f"Left out of {sieve.tried} {what[sieve.tried > 1]}: {listed}."
    own = [words for words, (code, _) in zip(counted, reasons, strict=True) if code in defaults]
    if own:
        found += f" Of these the search left out by itself, and finds when it is asked to: {'; '.join(own)}."
    return found
