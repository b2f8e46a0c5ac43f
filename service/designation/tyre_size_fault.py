"""Where a size stops being one: it is gone through step by step, to name the character and what was expected there."""

from __future__ import annotations

import re
from typing import NoReturn

from service.core.saying import Amount, Said, say
from service.designation.text import Scanner
from service.designation.tyre_size_grammar import (
    FLOTATION_DIAMETER_IN,
    FLOTATION_RIM_CODES,
    FLOTATION_WIDTH_IN,
    LETTERS_INSIDE,
    NUMERIC_WIDTH_IN,
    RATIO_PERCENT,
    WIDTH_MM,
)

EXAMPLES = say("a tyre size such as 205/55 R16, P215/65 R15, LT235/85 R16, T125/80 D16, 31x10.50 R15LT or 6.50-16")
LETTER_SIZES = say("a size in millimetres or inches; the letter sizes of the 1970s, such as ER70-14, are not read")
CONSTRUCTION = say("the construction: R, ZR, RF, ZRF, D, B or a dash")

_LETTER_SIZE = re.compile("[A-N] *R? *[4-8][0-9] *(?:[HSV]? *R|-) *1[0-9]")
_PREFIX = re.compile("(HL|LT|P|T)(?= *[0-9]) *")
_NUMBER = re.compile(r"[1-9][0-9]*(?:\.[0-9]{1,2})?(?![0-9.])")
_INTEGER = re.compile("[1-9][0-9]*")
_CROSS = re.compile(" *X *")
_SLASH = re.compile(" */ *")
_CONSTRUCTION = re.compile(f" *(?:ZRF|ZR|RF|R|[DBX-]|[{LETTERS_INSIDE}] *R?F?) *")
_RIM_CODE = re.compile(r"30(?:\.0)?|(?:1[0-9]|2[0-46-9])(?:\.[05])?|[89](?:\.[05])?")


def refuse_size(scanner: Scanner, start: int) -> NoReturn:
    """Refuse the size that begins at this position, at the first character that does not belong there."""
    scanner.position = start
    prefix = scanner.take(_PREFIX)
    at = scanner.position
    number = scanner.take(_NUMBER)
    if number is None:
        scanner.refuse(LETTER_SIZES if _LETTER_SIZE.match(scanner.text, at) else EXAMPLES)
    inches = float(number.group())
    if (prefix is None or prefix.group(1) == "LT") and inches < WIDTH_MM[0] and scanner.take(_CROSS):
        if inches < NUMERIC_WIDTH_IN[1]:
            _refuse_rim(scanner)
        _refuse_flotation(scanner, inches, at)
    if prefix is None and ("." in number.group() or inches < NUMERIC_WIDTH_IN[1]):
        _refuse_numeric(scanner, number.group(), at)
    low, high = WIDTH_MM
    if "." in number.group() or not low <= inches <= high:
        scanner.refuse(
            say(
                "a section width from {low} to {high} mm, or an overall diameter in inches and x",
                low=Amount(low),
                high=Amount(high),
            ),
            at,
        )
    _refuse_metric(scanner, prefix, at)


def _refuse_metric(scanner: Scanner, prefix: re.Match[str] | None, width_at: int) -> NoReturn:
    ratio = scanner.take(_SLASH)
    if ratio is not None:
        at = scanner.position
        digits = scanner.take(_INTEGER)
        low, high = RATIO_PERCENT
        if digits is None or not low <= int(digits.group()) <= high:
            scanner.refuse(say("an aspect ratio from {low} to {high} per cent", low=Amount(low), high=Amount(high)), at)
    elif prefix is not None:
        scanner.refuse(
            say("a slash and the aspect ratio, as every size that begins with {letters} has", letters=prefix.group(1))
        )
    if not scanner.take(_CONSTRUCTION):
        scanner.skip_blanks()
        # Most sizes have a ratio, and what stands in place of the slash is what is wrong with them.
        if ratio is None:
            scanner.refuse(say("a slash and the aspect ratio, or the construction: R, ZR, RF, ZRF, D, B or a dash"))
        scanner.refuse(CONSTRUCTION)
    _refuse_rim(scanner, rest=say("a width that ends in 5, as those of cars, vans and trucks do"), rest_at=width_at)


def _refuse_flotation(scanner: Scanner, diameter_in: float, at: int) -> NoReturn:
    low, high = FLOTATION_DIAMETER_IN
    if not low <= diameter_in <= high:
        scanner.refuse(
            say("an overall diameter from {low} to {high} inches", low=Amount(low, "", 1), high=Amount(high, "", 1)), at
        )
    width_at = scanner.position
    number = scanner.take(_NUMBER)
    low, high = FLOTATION_WIDTH_IN
    if number is None or not low <= float(number.group()) < high:
        scanner.refuse(
            say("a section width from {low} to {high} inches", low=Amount(low, "", 1), high=Amount(high, "", 1)),
            width_at,
        )
    if not scanner.take(_CONSTRUCTION):
        scanner.skip_blanks()
        scanner.refuse(CONSTRUCTION)
    rim_at = scanner.position
    code = scanner.take(_RIM_CODE)
    highest = next(most for least, below, most in FLOTATION_RIM_CODES if least <= diameter_in < below)
    if code is not None and float(code.group()) > highest:
        scanner.refuse(
            say("a rim code of at most {highest}, well below the overall diameter", highest=Amount(highest, "", 1)),
            rim_at,
        )
    scanner.position = rim_at
    rest = say("the section width with its decimals, as in 31x10.50, or LT at the end")
    _refuse_rim(scanner, rest=rest, rest_at=width_at)


def _refuse_numeric(scanner: Scanner, written: str, at: int) -> NoReturn:
    low, high = NUMERIC_WIDTH_IN
    if not low <= float(written) < high:
        scanner.refuse(
            say(
                "a section width from {low_mm} to {high_mm} mm or from {low} to {high} inches",
                low_mm=Amount(WIDTH_MM[0]),
                high_mm=Amount(WIDTH_MM[1]),
                low=Amount(low, "", 1),
                high=Amount(high, "", 1),
            ),
            at,
        )
    if not scanner.take(_CONSTRUCTION):
        scanner.skip_blanks()
        scanner.refuse(say("the construction: R or a dash, as in 7.00 R16 or 6.50-16"))
    rest = say("a size in inches as printed, such as 6.50-16, 7.00 R16 or 12 R22.5")
    _refuse_rim(scanner, rest=rest, rest_at=at)


def _refuse_rim(scanner: Scanner, rest: Said = EXAMPLES, rest_at: int = 0) -> NoReturn:
    """Refuse the rim code that should stand here or, where one does, what is wrong with the whole."""
    if scanner.take(_RIM_CODE) is None:
        scanner.refuse(say("a rim diameter code from 8 to 30 and not 25; diameters in millimetres are not read"))
    scanner.refuse(rest, rest_at)
