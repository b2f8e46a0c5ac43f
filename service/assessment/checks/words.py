"""How numbers read in a message: no false precision, plain plurals."""

from __future__ import annotations

import math
from functools import lru_cache

# Limits and sizes recur from one message to the next. Few texts, since a search among many costs what it saves.
CACHED_TEXTS = 256
# More decimals than that tell nobody anything.
MOST_DIGITS = 2
# The true minus of prose; numbers in data have the hyphen of JSON.
MINUS = "\N{MINUS SIGN}"


@lru_cache(maxsize=CACHED_TEXTS)
def plain(value: float, digits: int = 0) -> str:
    """Return the number with at most this many decimals, without idle zeros."""
    text = f"{value:.{digits}f}"
    if digits and "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@lru_cache(maxsize=CACHED_TEXTS)
def signed(value: float, digits: int = 1) -> str:
    """Return the number with its sign; nothing that rounds to zero has one."""
    text = plain(value, digits)
    return text.replace("-", MINUS) if text.startswith("-") or text == "0" else f"+{text}"


def inches(code: float) -> str:
    """Return a rim's diameter code as the trade says it: `16 inch`."""
    return f"{plain(code, 2)} inch"


def apart(value: float, limit: float, digits: int = 0) -> str:
    """Return a number that is beyond its limit with as few decimals as still tell it from the limit."""
    while digits < MOST_DIGITS and plain(value, digits) == plain(limit, digits):
        digits += 1
    return plain(value, digits)


def span(least: float | None, most: float | None, unit: str, digits: int = 0) -> str:
    """Return a range in words, its ends rounded into it: `8 to 9.5 in`, `8 in or more`; one value where both meet."""
    half, unit = 0.5 * 10.0**-digits - 1e-9, f" {unit}" if unit else ""
    low = "" if least is None else plain(least + half, digits)
    high = "" if most is None else plain(most - half, digits)
    if least is None:
        return f"{high}{unit} or less"
    if most is None:
        return f"{low}{unit} or more"
    if float(low) > float(high):
        # Narrower than the last decimal: its middle lies within.
        low = high = plain(0.5 * (least + most), digits + 1)
    return f"{low}{unit}" if low == high else f"{low} to {high}{unit}"


def beside_true_speed(lead_percent: float, digits: int = 1) -> str:
    """Return in words by how much a speedometer reads above or below the true speed."""
    text = plain(lead_percent, digits)
    if text == "0":
        return "the true speed"
    return f"{text.lstrip('-')} % {'below' if text.startswith('-') else 'above'} the true speed"


def lawful_lead(least_percent: float, most_percent: float) -> str:
    """Return in words which lead a speedometer may have, the ends rounded into the range."""
    low = plain(least_percent + 0.05 - 1e-9, 1)
    if most_percent == math.inf:
        below = f"no more than {low[1:]} % below the true speed"
        return below if low.startswith("-") else f"at least {low} % above the true speed"
    high = plain(most_percent - 0.05 + 1e-9, 1)
    if low.startswith("-") and high.startswith("-"):
        return f"{high[1:]} to {low[1:]} % below the true speed"
    if low.startswith("-") and high == "0":
        return f"0 to {low[1:]} % below the true speed"
    if low.startswith("-"):
        return f"between {low[1:]} % below and {high} % above the true speed"
    return f"{low} to {high} % above the true speed"


def rim_pointer(axle: str) -> str:
    """Return the pointer of the candidate's rim designation."""
    return f"/candidate/{axle}/rim/size"


def tyre_pointer(axle: str) -> str:
    """Return the pointer of the candidate's tyre designation."""
    return f"/candidate/{axle}/tyre/size"
