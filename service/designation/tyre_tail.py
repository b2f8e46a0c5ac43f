"""The second half of a tyre designation: service descriptions and words, in any order.

A word that is not known is no error once the size is complete: it is passed on as it was written, never guessed at. A
number stays an error, unless it belongs to a name.
"""

from __future__ import annotations

import re

from service.core.saying import Amount, say
from service.designation import service_description, tyre_words
from service.designation.service_description import read_bracketed, read_service
from service.designation.text import Scanner
from service.designation.tyre_size import Size
from service.designation.tyre_size_grammar import LOAD_RANGES
from service.designation.tyre_words import ANY_NUMBER, ANY_WORD, KNOWN, KNOWN_DIGITS, TOUCHING_WORD, Tail, note

SECOND_SERVICE = say(
    "The second service description is read as the additional one, which stands in brackets or a circle."
)

_SLASHED_RANGE = re.compile(rf" */ *([{LOAD_RANGES}])(?=[ (0-9]|$)")
_GLUED_INDEX = re.compile("[1-9][0-9]")
_OPENED = re.compile(r"\( *[0-9]")

_AFTER_SIZE = say("a blank, a load index or the end after the rim code")
_AFTER_SERVICE = say("a blank or the end")
_NUMBER = say("the end, a word or another known marking, not one more number")
_WORD = say("the end, a known marking such as XL or M+S, or a word of letters")


def _grammar() -> str:
    """Return the grammar of what may stand behind the size, for normalised text."""
    index, symbol, above_300 = service_description.INDEX, service_description.SYMBOL, service_description.ABOVE_300
    word, marking = tyre_words.WORD, tyre_words.DIGIT_MARKING
    before = f"(?:{marking})?(?: +(?:{word}|{marking}))*"
    behind = f"(?: +{marking})*(?: +{word}(?: +(?:{word}|{tyre_words.NUMBER_OF_NAME}))*)?"
    ending = f"{symbol}{tyre_words.TOUCHING}?"
    two_digits = "(?:[1-9][0-9]|1[0-9][0-9]|2[0-7][0-9])"
    service = (
        rf"(?: *\( *Y *\)|(?: */ *{index})? *{ending}(?:{behind} *{service_description.ADDITIONAL})?"
        f"| */ *{index} *{ending}(?: +{marking})* +{index}(?: */ *{index})? *{ending})"
    )
    return f"(?:(?:(?:{before} +{index}|{two_digits}){service}|{before} *{above_300}){behind}|{before})"


TAIL = _grammar()


def read_tail(scanner: Scanner, size: Size) -> Tail:
    """Return everything behind the size; the text ends there."""
    tail = Tail()
    if size.prefix == "HL":
        tail.stated_version = "high_load"
    _read_first(scanner, size, tail)
    named = False
    text = scanner.text
    while not scanner.at_end():
        character = text[scanner.position]
        if character == "(" and _OPENED.match(text, scanner.position):
            _read_brackets(scanner, tail)
            named = False
        elif text[scanner.position - 1] != " ":
            scanner.refuse(_AFTER_SIZE if tail.service is None else _AFTER_SERVICE)
        elif character in "0123456789":
            _read_digits(scanner, size, tail, named=named)
        else:
            _read_word(scanner, size, tail)
            named = tail.service is not None
    return tail


def _read_first(scanner: Scanner, size: Size, tail: Tail) -> None:
    """Read what touches the rim code: a load index of two digits at least, or a ply rating."""
    if size.commercial == "LT":
        slashed = scanner.take(_SLASHED_RANGE)
        if slashed is not None:
            tail.load_range = slashed.group(1)
    here = scanner.text[scanner.position : scanner.position + 1]
    if here and here in "0123456789":
        marking = scanner.take(KNOWN_DIGITS)
        if marking is not None:
            note(marking, size, tail)
        elif _GLUED_INDEX.match(scanner.text, scanner.position):
            _read_service(scanner, size, tail)
        else:
            scanner.refuse(_AFTER_SIZE)


def _read_digits(scanner: Scanner, size: Size, tail: Tail, *, named: bool) -> None:
    marking = scanner.take(KNOWN_DIGITS)
    start = scanner.position
    if marking is not None:
        if not note(marking, size, tail):
            tail.unread.append((marking.start(), marking.end()))
    elif tail.service is None:
        _read_service(scanner, size, tail)
    elif named and scanner.take(ANY_NUMBER):
        tail.unread.append((start, scanner.position))
    elif tail.service.load_index_twin is not None and tail.additional is None and not named:
        tail.additional, bracketed = read_service(scanner)
        if bracketed:
            scanner.refuse(say("a speed symbol"), start)
        tail.assumed.append(SECOND_SERVICE)
        _read_touching(scanner, size, tail)
    else:
        scanner.refuse(_NUMBER)


def _read_service(scanner: Scanner, size: Size, tail: Tail) -> None:
    tail.service, tail.bracketed = read_service(scanner)
    if not tail.bracketed:
        _read_touching(scanner, size, tail)


def _read_touching(scanner: Scanner, size: Size, tail: Tail) -> None:
    """Read a load version that touches the speed symbol."""
    following = scanner.text[scanner.position : scanner.position + 1]
    if following in ("", " "):
        return
    touching = TOUCHING_WORD.match(scanner.text, scanner.position)
    if touching is not None:
        _read_word(scanner, size, tail)


def _read_brackets(scanner: Scanner, tail: Tail) -> None:
    start = scanner.position
    description, symbol_at = read_bracketed(scanner)
    if tail.service is None:
        if description.load_index_twin is not None or description.speed_symbol != "Y":
            scanner.refuse(
                say(
                    "Y and one load index: only (.. Y), above {speed}, stands in brackets alone",
                    speed=Amount(300, "km/h"),
                ),
                symbol_at,
            )
        tail.service, tail.bracketed = description, True
    elif tail.additional is None and not tail.bracketed:
        tail.additional = description
    else:
        scanner.refuse(_NUMBER, start)


def _read_word(scanner: Scanner, size: Size, tail: Tail) -> None:
    start = scanner.position
    known = scanner.take(KNOWN)
    if known is not None:
        if not note(known, size, tail):
            tail.unread.append((start, scanner.position))
        return
    if scanner.take(ANY_WORD) is None:
        scanner.refuse(_WORD)
    if scanner.position < len(scanner.text) and scanner.text[scanner.position] not in " (":
        scanner.refuse(say("a blank, or a character that stands in words"))
    tail.unread.append((start, scanner.position))
