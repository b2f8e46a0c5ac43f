"""How numbers read in a message: no false precision, plain plurals."""

from __future__ import annotations

from functools import lru_cache

# Limits and sizes recur from one message to the next. Few texts, since a search among many costs what it saves.
CACHED_TEXTS = 256


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
    return text if text.startswith("-") or text == "0" else f"+{text}"


def rim_pointer(axle: str) -> str:
    """Return the pointer of the candidate's rim designation."""
    return f"/candidate/{axle}/rim/size"


def tyre_pointer(axle: str) -> str:
    """Return the pointer of the candidate's tyre designation."""
    return f"/candidate/{axle}/tyre/size"
