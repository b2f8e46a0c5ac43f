"""Tyre designations: from text to plain data, with the canonical spelling and what had to be assumed."""

from __future__ import annotations

from dataclasses import dataclass

from service.core.errors import UnreadableDesignation
from service.core.saying import Amount, Said, say
from service.designation import commercial as commercial_signs
from service.designation.commercial import CommercialSign
from service.designation.refusal import explained
from service.designation.service_description import ServiceDescription
from service.designation.text import MAX_LENGTH, Scanner
from service.designation.tyre_pattern import TYRE_PATTERN
from service.designation.tyre_size import STRUCTURE_ASSUMED, Commercial, Construction, Size, System, read_size
from service.designation.tyre_spelling import spell
from service.designation.tyre_tail import read_tail
from service.designation.tyre_words import LoadVersion, Tail, Tube

__all__ = ["MAX_LENGTH", "TYRE_PATTERN", "ServiceDescription", "TyreDesignation", "parse_tyre"]


NO_SERVICE = say("No service description: load index and speed symbol are not known.")
NO_INDEX = say("No load index: the letter inside the size tells the speed alone.")
NO_VERSION = say("No load version is marked: standard load is assumed.")
OPEN_V = say(
    "V inside the size means above {speed}; how far above is for the tyre's maker to say.", speed=Amount(210, "km/h")
)
TWO_SPEEDS = say("The letter inside the size and the speed symbol behind it differ: the symbol behind it counts.")

_BRACKETS_AND_STOPS = "().,:;\"'\u2018\u2019\u201c\u201d"
_SIGNS_ALONE = frozenset("+&!#-_")


@dataclass(frozen=True, slots=True)
class TyreDesignation:
    """What a tyre designation says; two are equal when every field is, what was assumed included."""

    canonical: str
    system: System
    section_width_mm: float
    aspect_ratio: float | None
    construction: Construction
    rim_code: float
    overall_diameter_in: float | None
    z_rated: bool
    run_flat: bool
    commercial: Commercial
    load_index: int | None
    load_index_twin: int | None
    speed_symbol: str | None
    bracketed: bool
    additional: ServiceDescription | None
    load_version: LoadVersion
    load_range: str | None
    markings: tuple[str, ...]
    assumed: tuple[str, ...]
    section_width_in: float | None
    speed_letter: str | None
    ply_rating: int | None
    tube: Tube | None
    unread: tuple[str, ...]

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling: a string keeps its hash, a tuple of 24 fields does not."""
        return hash(self.canonical)

    @property
    def commercial_sign(self) -> CommercialSign | None:
        """Return what tells that this is a commercial tyre, with its source; None for a passenger tyre."""
        return commercial_signs.sign(self.commercial, self.load_index, self.load_index_twin, self.rim_code)

    @property
    def is_commercial(self) -> bool:
        """Return whether this is a commercial tyre, by its letters, load indices or rim code."""
        return self.commercial_sign is not None

    @property
    def structure_assumed(self) -> bool:
        """Return whether radial or diagonal construction was taken from a dash, an x or a missing letter."""
        return not STRUCTURE_ASSUMED.isdisjoint(self.assumed)


def parse_tyre(text: str) -> TyreDesignation:
    """Return what the designation says.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, what was expected there and, where one is near, the designation that
        may have been meant; `OutOfScope` for tyres of motorcycles, farm and off-road machines.
    """
    try:
        return _read(text)
    except UnreadableDesignation as error:
        refusal = explained(error, text, _canonical)
    raise refusal


def not_read(words: tuple[str, ...]) -> Said:
    """Return the assumption on words that were passed over."""
    return say("Not read: {words}. Words that are not known change nothing in the answer.", words=", ".join(words))


def _canonical(text: str) -> str:
    return _read(text).canonical


def _read(text: str) -> TyreDesignation:
    scanner = Scanner("tyre", text)
    size = read_size(scanner)
    tail = read_tail(scanner, size)
    service = tail.service
    inches = size.system in ("numeric", "flotation")
    unread = _unread(text, tail) if tail.unread else ()
    return TyreDesignation(
        spell(size, tail),
        size.system,
        size.section_width_mm,
        size.aspect_ratio,
        size.construction,
        size.rim_code,
        size.overall_diameter_in,
        size.z_rated,
        size.run_flat,
        size.commercial,
        service.load_index if service else None,
        service.load_index_twin if service else None,
        service.speed_symbol if service else _speed_inside(size),
        tail.bracketed,
        tail.additional,
        tail.load_version,
        tail.load_range,
        tuple(tail.markings),
        _assumed(size, tail, unread),
        size.width if inches else None,
        size.speed_letter,
        tail.ply_rating,
        tail.tube,
        unread,
    )


def _unread(text: str, tail: Tail) -> tuple[str, ...]:
    """Return the words that were passed over, as they were written, without brackets, quotes and stops."""
    words = (word.strip(_BRACKETS_AND_STOPS) for start, end in tail.unread for word in text[start:end].split())
    return tuple(word for word in words if not _SIGNS_ALONE.issuperset(word))


def _speed_inside(size: Size) -> str | None:
    """Return the speed symbol that the letter inside a radial size stands for; V there is open upwards."""
    return size.speed_letter if size.construction == "radial" and size.speed_letter != "V" else None


def _assumed(size: Size, tail: Tail, unread: tuple[str, ...]) -> tuple[str, ...]:
    assumed = size.assumed + tail.assumed
    service, letter = tail.service, size.speed_letter
    if service is None:
        assumed.append(NO_SERVICE if _speed_inside(size) is None else NO_INDEX)
        if letter == "V" and size.construction == "radial":
            assumed.append(OPEN_V)
    elif letter is not None and service.speed_symbol not in (("V", "W", "Y") if letter == "V" else (letter,)):
        assumed.append(TWO_SPEEDS)
    if tail.stated_version is None and size.system in ("iso_metric", "p_metric") and not _commercial(size, tail):
        assumed.append(NO_VERSION)
    if unread:
        assumed.append(not_read(unread))
    return tuple(assumed)


def _commercial(size: Size, tail: Tail) -> bool:
    index, twin = (tail.service.load_index, tail.service.load_index_twin) if tail.service else (None, None)
    return commercial_signs.sign(size.commercial, index, twin, size.rim_code) is not None
