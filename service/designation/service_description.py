"""Service descriptions: load index, index in twin fitment and speed symbol, as in `112/110R`."""

from __future__ import annotations

import re
from dataclasses import dataclass

from service.core.saying import Amount, say
from service.designation.text import Scanner

# The alphabet of speed symbols, as grammar only; the speeds are in standards. There is no I, O or X, and Z tells of the
# construction.
SPEED_LETTERS = "BCDEFGHJKLMNPQRSTUVWY"
HIGHEST_INDEX = 279

INDEX = "(?:[1-9]?[0-9]|1[0-9][0-9]|2[0-7][0-9])"
SYMBOL = f"(?:A[1-8]|[{SPEED_LETTERS}])"
# A single description in brackets alone: above 300 km/h.
ABOVE_300 = rf"\( *{INDEX} *Y *\)"
ADDITIONAL = rf"\( *{INDEX}(?: */ *{INDEX})? *{SYMBOL} *\)"

_INDEX = re.compile("0(?![0-9])|[1-9][0-9]*")
_SYMBOL = re.compile(SYMBOL)
_TWIN = re.compile(" */ *")
_BRACKETED_Y = re.compile(r" *\( *Y *\)")
_CLOSING = re.compile(r" *\)")
_ALTERNATIVE = re.compile(" */")
_COMMON = re.compile(rf"([1-9][0-9]|1[01][0-9]) ?([{SPEED_LETTERS}])(?= +[^ /]| *$)")


@dataclass(frozen=True, slots=True)
class ServiceDescription:
    """One load index, perhaps a second for twin fitment, and one speed symbol."""

    load_index: int
    load_index_twin: int | None
    speed_symbol: str

    def spelled(self) -> str:
        """Return the canonical spelling, without brackets."""
        if self.load_index_twin is None:
            return f"{self.load_index}{self.speed_symbol}"
        return f"{self.load_index}/{self.load_index_twin}{self.speed_symbol}"


def read_service(scanner: Scanner) -> tuple[ServiceDescription, bool]:
    """Return the description that starts here and whether its symbol stands in brackets, as in `97(Y)`."""
    common = scanner.take(_COMMON)
    if common is not None:
        return ServiceDescription(int(common[1]), None, common[2]), False
    index = _read_index(scanner)
    twin = _read_index(scanner) if scanner.take(_TWIN) else None
    if twin is None and scanner.take(_BRACKETED_Y):
        return ServiceDescription(index, None, "Y"), True
    scanner.skip_blanks()
    symbol = scanner.take(_SYMBOL)
    if symbol is None:
        scanner.refuse(say("a speed symbol: A1 to A8 or one of {letters}", letters=" ".join(SPEED_LETTERS)))
    start = scanner.position
    if scanner.take(_ALTERNATIVE):
        scanner.refuse(say("one speed symbol, not a choice of two"), start)
    return ServiceDescription(index, twin, symbol.group()), False


def read_bracketed(scanner: Scanner) -> tuple[ServiceDescription, int]:
    """Return the description between the bracket that opens here and its end, and the position of its speed symbol."""
    scanner.position += 1
    scanner.skip_blanks()
    description, twice = read_service(scanner)
    symbol_at = scanner.position - len(description.speed_symbol)
    if twice or not scanner.take(_CLOSING):
        scanner.refuse(say("a closing bracket after the speed symbol"))
    return description, symbol_at


def _read_index(scanner: Scanner) -> int:
    start = scanner.position
    digits = scanner.take(_INDEX)
    if digits is None or int(digits.group()) > HIGHEST_INDEX:
        scanner.refuse(say("a load index from 0 to {highest}", highest=Amount(HIGHEST_INDEX)), start)
    return int(digits.group())
