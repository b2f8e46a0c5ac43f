"""Why a search finds so few, in words: what was left out and for what, and what the caller may ask otherwise."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.batch import search_pairs
from service.core.saying import Amount, Said, joined, listed, say, sentences

AXLE, VERDICTS_ASKED = "search.axle", "search.verdicts"
# More reasons than these make a sentence that nobody reads to its end.
MOST_NAMED = 3

# For what something is left out; every phrase goes behind "for".
_FOR: Mapping[str, Said] = MappingProxyType(
    {
        "rim.diameter": say("another rim diameter"),
        "rim.width": say("a rim width that the tyre does not take"),
        "rim.bolt_circle": say("another bolt circle"),
        "rim.centre_bore": say("a centre bore that does not go over the hub"),
        "rim.brake_clearance": say("a rim too small for the brake"),
        "rim.load_rating": say("a rim that carries too little"),
        "rim.contour": say("a rim contour that does not hold the tyre"),
        "load.capacity": say("too low a load index"),
        "load.pressure": say("want of a pressure that is enough"),
        "speed.capability": say("too low a speed symbol"),
        "diameter.deviation": say("an overall diameter too far from the present one"),
        "diameter.speedometer": say("a speedometer that would read too low or too high"),
        "diameter.axle_ratio": say("axles that would turn too differently"),
        "clearance.inboard": say("too little room at the strut"),
        "clearance.outboard": say("too little room at the wing"),
        "clearance.radial": say("too little room in the wheel arch"),
        "clearance.twin": say("twin tyres that would touch each other"),
        "tyre.structure": say("radial and diagonal tyres together"),
        "limits.overall_diameter_percent": say("an overall diameter beyond the limit asked for"),
        "limits.section_width_mm": say("a section width beyond the limits asked for"),
        "limits.load_margin_percent": say("less load margin than asked for"),
        "limits.inboard_room_mm": say("less room at the strut than asked for"),
        "limits.outboard_room_mm": say("less room at the wing than asked for"),
        "limits.radial_room_mm": say("less room in the wheel arch than asked for"),
        "limits.balance_deg_per_g": say("a greater change of balance than asked for"),
        search_pairs.RATIO: say("axles that would turn too differently"),
        search_pairs.STAGGER: say("another difference between front and rear tyres than the car is to have"),
        search_pairs.RIM_WIDTH_MIX: say("rims of different width on a car whose rims are alike"),
        search_pairs.SEASON_MIX: say("summer, winter or all-season tyres together"),
        search_pairs.CLASS_MIX: say("passenger car and commercial tyres together"),
        search_pairs.NOT_JOINED: say("being further from what is asked than those looked at"),
        search_pairs.NOT_GRADED: say("being further from what is asked than those looked at"),
        AXLE: say("a check that one of the axles does not pass at the pressure to be set"),
        VERDICTS_ASKED: say("a verdict that was not asked for"),
    }
)
_RULES, _OTHER = say("a rule of the place"), say("a check that is not passed")


class Sieve(NamedTuple):
    """How many were tried, how many are left, and how many each reason sent away."""

    tried: int
    kept: int
    removed: Counter[str]


def reason_in_words(code: str) -> Said:
    """Return for what a reason leaves something out, as it goes behind "for"."""
    return _FOR.get(code, _RULES if code.startswith("law.") else _OTHER)


def why_none(front: Sieve, rear: Sieve, pairs: Sieve, defaults: frozenset[str]) -> str:
    """Return why nothing is left, and which defaults of the search had a part in it; empty where something is."""
    if pairs.kept:
        return ""
    empty = [(name, sieve) for name, sieve in (("front", front), ("rear", rear)) if not sieve.kept]
    if empty:
        name, sieve = empty[0]
        none = (
            say("No tyre is left for the front axle.") if name == "front" else say("No tyre is left for the rear axle.")
        )
        return sentences(none, _counted(sieve, defaults, pairs=False))
    return sentences(say("No pair of front and rear tyres is left."), _counted(pairs, defaults, pairs=True))


def _counted(sieve: Sieve, defaults: frozenset[str], *, pairs: bool) -> Said:
    if not sieve.tried:
        return say("There was none to try.")
    reasons = [(code, count) for code, count in sieve.removed.most_common() if count]
    counted = [
        say("{count} for {reason}", count=Amount(count), reason=reason_in_words(code)) for code, count in reasons
    ]
    named = counted[:MOST_NAMED]
    more = sum(count for _, count in reasons[MOST_NAMED:])
    if more:
        named.append(say("{count} for other reasons", count=Amount(more)))
    found = _left_out(Amount(sieve.tried), listed(named), one=sieve.tried == 1, pairs=pairs)
    own = [words for words, (code, _) in zip(counted, reasons, strict=True) if code in defaults]
    if not own:
        return found
    return sentences(
        found,
        say(
            "Of these the search left out by itself, and finds when it is asked to: {reasons}.",
            reasons=joined(own, "; "),
        ),
    )


def _left_out(tried: Amount, reasons: Said, *, one: bool, pairs: bool) -> Said:
    if pairs and one:
        return say("Left out of {count} pair: {reasons}.", count=tried, reasons=reasons)
    if pairs:
        return say("Left out of {count} pairs: {reasons}.", count=tried, reasons=reasons)
    if one:
        return say("Left out of {count} tyre on a rim: {reasons}.", count=tried, reasons=reasons)
    return say("Left out of {count} tyres on rims: {reasons}.", count=tried, reasons=reasons)
