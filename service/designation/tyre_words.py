"""The words behind a tyre size: load version, load range, winter and other markings, and words that are only passed on.

Words are known from UN R30, UN R54 and sidewalls of the trade; what they mean is common practice, from memory.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from service.core.saying import say
from service.designation.service_description import ServiceDescription
from service.designation.tyre_size import STRUCTURE_ASSUMED, Commercial, Construction, Size
from service.designation.tyre_size_grammar import LOAD_RANGES

LoadVersion = Literal["standard", "extra_load", "high_load", "light_load"]
Tube = Literal["tubeless", "tube_type"]

# The order of the canonical spelling.
MARKINGS = (
    *("M+S", "3PMSF", "POR", "MPT", "ML", "ET", "FRT", "NHS", "ST"),
    *("EV", "RWL", "ROWL", "OWL", "BSW", "WSW", "FP", "FR", "REGROOVABLE"),
)

TRAILING_RF = say(
    "RF behind the rim code is read as Reinforced, which is extra load; run-flat tyres print RF before it."
)
TRAILING_HL = say("HL at the end is read as the prefix HL, high load.")
TRAILING_LT = say("LT behind the size is read as the prefix LT, light truck.")
TRAILING_C = say("C behind the load indices is read as the C behind the rim code, for a commercial tyre.")

# Letters, signs that begin a word, and what may follow in it. A slash stands in words such as A/T alone: elsewhere it
# joins numbers, and M/C is a motorcycle's.
_LETTERS = r"A-Z\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u024f"
_SIGNS = r"*\u2605\u2606\u0022'\u2018\u2019\u201c\u201d+&!#\-"
_INSIDE = rf"[{_LETTERS}{_SIGNS}0-9.:;\)_\u00ae\u2122]*"
WORD = rf"(?:\()?(?:[A-Z]/[A-BD-Z]|[{_LETTERS}{_SIGNS}]){_INSIDE}"
# Ply rating and winter mark, the markings that begin with a digit.
DIGIT_MARKING = "(?:(?:[2468]|1[02468]|2[024]) *(?:PR|PLY)|3 *PMSF)"
# What belongs to a name once a word has been read behind the service description, as in "Quarry Track 4".
NUMBER_OF_NAME = rf"(?:[0-9]{{1,4}}|(?:1[02468]|2[024])(?:PR|PLY)|[0-9][{_LETTERS}]{_INSIDE})"
# A load version may touch the speed symbol.
TOUCHING = "(?:XL|RF|SL|LL|TL)"

_VERSIONS: dict[str, LoadVersion] = {
    **dict.fromkeys(("XL", "EX", "RE", "RF"), "extra_load"),
    **dict.fromkeys(("SL", "ST"), "standard"),
    **dict.fromkeys(("LL", "LI"), "light_load"),
    **dict.fromkeys(("HL", "HI"), "high_load"),
}

KNOWN = re.compile(
    r"\(?(?:(?P<version>XL|EXTRA[ -]*LOAD|REINFORCED|REINF|RFD|RF|SL|STANDARD *LOAD|LL|LIGHT *LOAD|HL|HIGH *LOAD)"
    rf"|(?:LOAD *RANGE|LR) *(?P<range>[{LOAD_RANGES}])"
    r"|(?P<snow>M(?: *[-+&] *|\. *|/)?S)"
    r"|(?P<run_flat>RUN[ -]*FLAT|RFT|ROF)"
    r"|(?P<tubeless>TUBE[ -]*LESS|TL|T/L)|(?P<tube_type>TUBE[ -]*TYPE|TUBED|TT|T/T)"
    r"|(?P<radial>RADIAL)|(?P<diagonal>DIAGONAL|CROSS[ -]*PLY|BIAS[ -]*PLY|BIAS)"
    r"|(?P<raised>RAISED +WHITE +LETTERS)|(?P<outlined>OUTLINED? +WHITE +LETTERS)"
    r"|(?P<mark>POR|MPT|ML|ET|FRT|NHS|ST|EV|RWL|ROWL|OWL|BSW|WSW|FP|FR|REGROOVABLE)"
    rf"|(?P<letters>CP|LT|[{LOAD_RANGES}]))[.:;\)]*(?=[ (]|$)"
)
KNOWN_DIGITS = re.compile(r"(?:(?P<ply>2[024]|1[02468]|[2468]) *(?:PR|PLY)|(?P<alpine>3 *PMSF))(?=[ (]|$)")
ANY_WORD = re.compile(WORD)
ANY_NUMBER = re.compile(rf"{NUMBER_OF_NAME}(?=[ (]|$)")
TOUCHING_WORD = re.compile(rf"{TOUCHING}(?=[ (]|$)")

_SPELLED = {"snow": "M+S", "alpine": "3PMSF", "raised": "RWL", "outlined": "OWL"}


@dataclass(slots=True)
class Tail:
    """What stands behind the size, as it is being read."""

    service: ServiceDescription | None = None
    bracketed: bool = False
    additional: ServiceDescription | None = None
    stated_version: LoadVersion | None = None
    load_range: str | None = None
    ply_rating: int | None = None
    tube: Tube | None = None
    markings: list[str] = field(default_factory=list)
    unread: list[tuple[int, int]] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)

    @property
    def load_version(self) -> LoadVersion:
        """Return the load version that is stated, else standard."""
        return self.stated_version or "standard"


def note(words: re.Match[str], size: Size, tail: Tail) -> bool:
    """Note what known words say; return False where they contradict what was read before, or say nothing here."""
    kind = words.lastgroup or ""
    return _NOTES.get(kind, _marking)(_SPELLED.get(kind, words[kind]), size, tail)


def _marking(mark: str, _: Size, tail: Tail) -> bool:
    if mark not in tail.markings:
        tail.markings.append(mark)
    return True


def _version(written: str, size: Size, tail: Tail) -> bool:
    version = _VERSIONS[written[:2]]
    if size.system in ("lt_metric", "flotation", "temporary_spare") or tail.stated_version not in (None, version):
        return False
    if version == "high_load" and size.system != "iso_metric":
        return False
    if version == "high_load" and tail.stated_version is None:
        tail.assumed.append(TRAILING_HL)
    if written == "RF" and TRAILING_RF not in tail.assumed:
        tail.assumed.append(TRAILING_RF)
    tail.stated_version = version
    return True


def _run_flat(_: str, size: Size, __: Tail) -> bool:
    if size.construction == "radial" and size.system != "numeric":
        size.run_flat = True
    return size.run_flat


def _tubeless(_: str, __: Size, tail: Tail) -> bool:
    tail.tube = tail.tube or "tubeless"
    return tail.tube == "tubeless"


def _tube_type(_: str, __: Size, tail: Tail) -> bool:
    tail.tube = tail.tube or "tube_type"
    return tail.tube == "tube_type"


def _ply(written: str, _: Size, tail: Tail) -> bool:
    tail.ply_rating = tail.ply_rating or int(written)
    return tail.ply_rating == int(written)


def _load_range(letter: str, _: Size, tail: Tail) -> bool:
    tail.load_range = tail.load_range or letter
    return tail.load_range == letter


def _letters(written: str, size: Size, tail: Tail) -> bool:
    """Note a letter that stands alone: a light truck's load range, or C, CP and LT where they belong to the size."""
    if size.commercial == "LT":
        return len(written) == 1 and _load_range(written, size, tail)
    if size.prefix or size.commercial or tail.stated_version == "high_load":
        return False
    if size.system == "flotation" and written != "LT":
        return False
    if written == "LT":
        return _trailing_lt(size, tail)
    # The letter alone may as well be a grade of the label: only two load indices vouch for a van's tyre.
    if not written.startswith("C") or tail.service is None or tail.service.load_index_twin is None:
        return False
    size.commercial = _commercial(written)
    if size.system != "numeric":
        size.system = "commercial"
    tail.assumed.append(TRAILING_C)
    return True


def _commercial(written: str) -> Commercial:
    return "CP" if written == "CP" else "C"


def _trailing_lt(size: Size, tail: Tail) -> bool:
    if tail.stated_version is not None or size.system not in ("iso_metric", "flotation", "numeric"):
        return False
    size.commercial = "LT"
    if size.system == "iso_metric":
        size.system = "lt_metric"
        tail.assumed.append(TRAILING_LT)
    return True


def _radial(_: str, size: Size, __: Tail) -> bool:
    return _structure("radial", size)


def _diagonal(_: str, size: Size, __: Tail) -> bool:
    return _structure("diagonal", size)


def _structure(written: Construction, size: Size) -> bool:
    """Settle by a word what a dash or a missing letter left open."""
    open_question = STRUCTURE_ASSUMED.intersection(size.assumed)
    if open_question and not (size.run_flat and written == "diagonal"):
        size.construction = written
        size.assumed = [each for each in size.assumed if each not in open_question]
    return size.construction == written


_NOTES: dict[str, Callable[[str, Size, Tail], bool]] = {
    "version": _version,
    "range": _load_range,
    "letters": _letters,
    "run_flat": _run_flat,
    "tubeless": _tubeless,
    "tube_type": _tube_type,
    "radial": _radial,
    "diagonal": _diagonal,
    "ply": _ply,
}
