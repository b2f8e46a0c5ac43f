"""What may have been meant: a refused text with one slip of the pen put right, for the readers to try again."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from service.core.errors import UnreadableDesignation
from service.core.saying import Said, say
from service.designation.text import normal


class Repair(NamedTuple):
    """A text with one slip put right, where the slip was and what was expected there."""

    text: str
    position: int
    expected: Said


# Letters that are taken for digits, among digits; S and B, which also are speed symbols and structures, come last.
_LOOK_ALIKES = tuple(
    (re.compile(f"[0-9{letters}]*[0-9][0-9{letters}]*"), str.maketrans(letters, digits))
    for letters, digits in (("OoIl|", "00111"), ("OoIl|SsB", "00111558"))
)

_PREFIX = "(?:(?:HL|LT|P|T) *)?"
_NO_SLASH = re.compile(
    rf"( *{_PREFIX}[1-4][0-9][0-9])( *[-.X;:\\|_] *| *)([2-9][0-9])(?= *(?:[HQSTUVW] *|Z)?(?:RF?|[DB-])? *[12][0-9])"
)
_DASH_BEHIND = re.compile("([2-9][0-9]) *- *")
_NO_LETTER = re.compile(rf"( *{_PREFIX}[1-4][0-9][0-9] */ *[2-9][0-9])( *[-/.X;:\\|_]? *[A-Z]? *)([12][0-9])(?![0-9])")
_SIZE_BEHIND = re.compile(r"(?<= )(?:HL|LT|P|T)? *[0-9]+(?:\.[0-9]+)? *[/XR-]")


def repairs(error: UnreadableDesignation, text: str) -> Iterator[Repair]:
    """Return the text with the likeliest slips put right, one each, most telling first."""
    yield from _look_alikes(text)
    if error.kind == "tyre":
        yield from _missing_signs(text)
    position, expected = error.position, error.expected
    if expected.startswith(("x", "a flange letter, x")):
        yield Repair(f"{text[:position]}x{text[position:]}", position, expected)
    elif error.kind == "tyre" and expected.startswith("a blank"):
        yield Repair(f"{text[:position]} {text[position:]}", position, expected)
    elif error.kind == "tyre" and position == len(text) - len(text.lstrip()):
        behind = _SIZE_BEHIND.search(normal(text))
        if behind is not None:
            yield Repair(text[behind.start() :], position, expected)


def _look_alikes(text: str) -> Iterator[Repair]:
    """Return the text with digits in place of the letters among its digits."""
    for run, digits in _LOOK_ALIKES:
        mended = _with_digits(text, run, digits)
        if mended != text:
            position = next(at for at, (before, after) in enumerate(zip(text, mended, strict=True)) if before != after)
            yield Repair(mended, position, _digit_not(mended[position], text[position]))


def _with_digits(text: str, run: re.Pattern[str], digits: dict[int, int]) -> str:
    return run.sub(lambda found: found.group().translate(digits), text)


def _digit_not(digit: str, came: str) -> Said:
    if came.isalpha():
        return say("the digit {digit}, not the letter {letter}", digit=digit, letter=came)
    return say("the digit {digit}, not the sign {sign}", digit=digit, sign=came)


def _missing_signs(text: str) -> Iterator[Repair]:
    """Return the text with the slash behind the width, or with R before the rim code."""
    written = normal(text)
    slash = _NO_SLASH.match(written)
    if slash is not None:
        # In 205-55-16 a dash that stands for the slash tells of the other as little: radial is what most tyres are.
        dashes = _DASH_BEHIND.match(written, slash.start(3)) if slash[2].strip() == "-" else None
        behind = f"{dashes[1]} R{text[dashes.end() :]}" if dashes else text[slash.start(3) :]
        mended = f"{text[: slash.end(1)]}/{behind}"
        yield Repair(mended, _place(slash), say("a slash between section width and aspect ratio"))
    letter = _NO_LETTER.match(written)
    if letter is not None:
        mended = f"{text[: letter.end(1)]} R{text[letter.start(3) :]}"
        yield Repair(
            mended, _place(letter), say("the construction before the rim code: R, ZR, RF, ZRF, D, B or a dash")
        )


def _place(match: re.Match[str]) -> int:
    """Return where the wrong sign stands, or where the missing one should."""
    sign = match[2].strip()
    return match.start(2) + (match[2].index(sign) if sign else 0)
