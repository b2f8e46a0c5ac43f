"""How numbers read in a message: no false precision, ranges with their ends rounded into them.

What comes back is a text that remembers its numbers, so that it can be said in another language (`core/saying.py`).
"""

from __future__ import annotations

import math

from service.core.saying import Amount, Said, say

# More decimals than that tell nobody anything.
MOST_DIGITS = 2


def plain(value: float, digits: int = 0, unit: str = "") -> Amount:
    """Return the number with at most this many decimals, without idle zeros, and its unit."""
    return Amount(value, unit, digits)


def signed(value: float, digits: int = 1, unit: str = "") -> Amount:
    """Return the number with its sign; nothing that rounds to zero has one."""
    return Amount(value, unit, digits, signed=True)


def inches(code: float) -> Amount:
    """Return a rim's diameter code as the trade says it: `16 inch`."""
    return plain(code, 2, "inch")


def apart(value: float, limit: float, digits: int = 0, unit: str = "") -> Amount:
    """Return a number that is beyond its limit with as few decimals as still tell it from the limit."""
    return plain(value, _digits_apart(value, limit, digits), unit)


def signed_apart(value: float, limit: float, digits: int = 0, unit: str = "") -> Amount:
    """Return the same of a change, with its sign; the limit holds either way."""
    return signed(value, _digits_apart(abs(value), limit, digits), unit)


def _digits_apart(value: float, limit: float, digits: int) -> int:
    while digits < MOST_DIGITS and plain(value, digits) == plain(limit, digits):
        digits += 1
    return digits


def span(least: float | None, most: float | None, unit: str, digits: int = 0) -> Said:
    """Return a range in words, its ends rounded into it: `8 to 9.5 in`, `8 in or more`; one value where both meet."""
    half = 0.5 * 10.0**-digits - 1e-9
    if least is None and most is not None:
        return say("{most} or less", most=plain(round(most - half, digits), digits, unit))
    if least is not None and most is None:
        return say("{least} or more", least=plain(round(least + half, digits), digits, unit))
    if least is None or most is None:
        raise ValueError("a range has one end at least")
    low, high = round(least + half, digits), round(most - half, digits)
    if low > high:
        # Narrower than the last decimal: its middle lies within.
        low = high = 0.5 * (least + most)
        digits += 1
    if low == high:
        return say("{value}", value=plain(low, digits, unit))
    return say("{low} to {high}", low=Amount(low, unit, digits, bare=True), high=plain(high, digits, unit))


def beside_true_speed(lead_percent: float, digits: int = 1) -> Said:
    """Return in words by how much a speedometer reads above or below the true speed."""
    share = plain(abs(lead_percent), digits, "%")
    if plain(lead_percent, digits) == "0":
        return say("the true speed")
    if lead_percent < 0.0:
        return say("{share} below the true speed", share=share)
    return say("{share} above the true speed", share=share)


def lawful_lead(least_percent: float, most_percent: float) -> Said:
    """Return in words which lead a speedometer may have, the ends rounded into the range."""
    low, high = round(least_percent + 0.05 - 1e-9, 1), round(most_percent - 0.05 + 1e-9, 1)
    least, near = plain(abs(low), 1, "%"), Amount(abs(low), "%", 1, bare=True)
    if most_percent == math.inf:
        if low < 0.0:
            return say("no more than {share} below the true speed", share=least)
        return say("at least {share} above the true speed", share=least)
    most = plain(abs(high), 1, "%")
    if low < 0.0 and high < 0.0:
        nearest = Amount(abs(high), "%", 1, bare=True)
        return say("{low} to {high} below the true speed", low=nearest, high=least)
    if low < 0.0 and high == 0.0:
        return say("{low} to {high} below the true speed", low=Amount(0.0, "%", bare=True), high=least)
    if low < 0.0:
        return say("between {below} below and {above} above the true speed", below=least, above=most)
    return say("{low} to {high} above the true speed", low=near, high=most)


def rim_pointer(axle: str) -> str:
    """Return the pointer of the candidate's rim designation."""
    return f"/candidate/{axle}/rim/size"


def tyre_pointer(axle: str) -> str:
    """Return the pointer of the candidate's tyre designation."""
    return f"/candidate/{axle}/tyre/size"
