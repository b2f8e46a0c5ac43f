"""The published regular expression of tyre designations.

It is narrower than the reader: whatever it admits is read, but the reader also takes wider and rarer blanks, a load
index that touches the rim code, and markings before the service description. It keeps to what ECMA-262 and Rust share,
has no look-around, and admits less than MAX_LENGTH characters. Its numbers are written as classes of digits; a test
draws texts from it and has them all read.
"""

from __future__ import annotations

from service.designation.service_description import SPEED_LETTERS
from service.designation.text import PATTERN_BLANK, PATTERN_CROSSES, PATTERN_DASHES, either_case

_MAYBE = f"{PATTERN_BLANK}?"

_INDEX = "(?:[1-9]?[0-9]|1[0-9]{2}|2[0-7][0-9])"
_SYMBOL = f"(?:[Aa][1-8]|[{SPEED_LETTERS}{SPEED_LETTERS.lower()}])"
_SERVICE = (
    f"(?:{_INDEX}(?:{_MAYBE}/{_MAYBE}{_INDEX})?{_MAYBE}{_SYMBOL}"
    rf"(?:{_MAYBE}\({_INDEX}(?:/{_INDEX})?{_SYMBOL}\))?|\({_INDEX}[Yy]\))"
)

_RANGE = "[A-HJLMNa-hjlmn]"
_RANGE_WORDS = f"(?:{either_case('LOAD RANGE')}|{either_case('LR')}) {_RANGE}"
_VERSION = "[Xx][Ll]|[SsLl][Ll]|[Rr][Ff]|[Rr][Ee][Ii][Nn][Ff](?:[Oo][Rr][Cc][Ee][Dd])?|" + either_case("EXTRA LOAD")
_MARKING = (
    r"(?:[Mm][+&\/.\-]?[Ss]|3[Pp][Mm][Ss][Ff]|[Pp][Oo][Rr]|[Mm][Pp][Tt]|[Mm][Ll]|[Ee][Tt]|[Ff][Rr][Tt]"
    "|[Nn][Hh][Ss]|[Ss][Tt]|[Tt][LlTt]|(?:[468]|1[02468]|20)[Pp][Rr])"
)
_MARKINGS = f"(?:{PATTERN_BLANK}{_MARKING})"


def _load(load: str) -> str:
    """Return the pattern of an optional load version or load range with perhaps one marking before it."""
    return f"(?:{_MARKINGS}?{PATTERN_BLANK}(?:{load}))?"


_CONSTRUCTION = f"{_MAYBE}(?:[Zz]?[Rr][Ff]?|[DdBb{PATTERN_DASHES}]){_MAYBE}"
_RIM_CODE = "(?:(?:[89]|[12][0-9])(?:[.,][05])?|30)"
_WIDTH_MM = "(?:[6-9][0-9]|[1-4][0-9]{2}|500)"
_RATIO = f"{_MAYBE}/{_MAYBE}(?:1[5-9]|[2-9][0-9]|100)"
_METRIC_SIZE = f"{_WIDTH_MM}{_RATIO}{_CONSTRUCTION}{_RIM_CODE}"

# Each overall diameter goes with rim codes at least four inches below it.
_DECIMALS = "(?:[.,][0-9]{1,2})?"
_ACROSS = f"{_DECIMALS}{_MAYBE}[{PATTERN_CROSSES}]{_MAYBE}(?:[4-9]|1[0-9]){_DECIMALS}{_CONSTRUCTION}"
_FLOTATION_SIZE = (
    f"(?:(?:2[4-9]|30){_ACROSS}(?:[89]|1[0-9])|(?:3[1-9]|4[0-9]|5[0-3]){_ACROSS}(?:[89]|1[0-9]|2[0-6]))(?:[.,][05])?"
)

_PLAIN_SIZE = f"(?:[Pp]{_MAYBE}{_METRIC_SIZE}|{_WIDTH_MM}(?:{_RATIO})?{_CONSTRUCTION}{_RIM_CODE})"
_COMMERCIAL_SIZE = f"{_WIDTH_MM}(?:{_RATIO})?{_CONSTRUCTION}{_RIM_CODE}{_MAYBE}[Cc][Pp]?"
_TRUCK_SIZE = f"(?:[Ll][Tt]{_MAYBE}{_METRIC_SIZE}|{_FLOTATION_SIZE}{_MAYBE}[Ll][Tt])"
_OTHER_SIZE = f"(?:(?:[Hh][Ll]|[Tt]){_MAYBE}{_METRIC_SIZE}|{_FLOTATION_SIZE})"

TYRE_PATTERN: str = (
    f"^(?:(?:{_PLAIN_SIZE}(?:{PATTERN_BLANK}{_SERVICE})?|{_COMMERCIAL_SIZE}(?:{_MAYBE}{_SERVICE})?)"
    f"{_load(f'{_VERSION}|{_RANGE_WORDS}')}"
    f"|{_TRUCK_SIZE}(?:{PATTERN_BLANK}{_SERVICE})?{_load(f'{_RANGE}|{_RANGE_WORDS}')}"
    f"|{_OTHER_SIZE}(?:{PATTERN_BLANK}{_SERVICE})?{_load(_RANGE_WORDS)}"
    f"){_MARKINGS}{{0,5}}$"
)
