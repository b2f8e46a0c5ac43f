"""Tyre designations: from text to plain data, with the canonical spelling and what had to be assumed."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache

from service.designation.service_description import ServiceDescription
from service.designation.text import MAX_LENGTH, Scanner, plain_number
from service.designation.tyre_pattern import TYRE_PATTERN
from service.designation.tyre_size import Commercial, Construction, Size, System, read_size
from service.designation.tyre_tail import LoadVersion, Tail, read_tail

__all__ = ["MAX_LENGTH", "TYRE_PATTERN", "ServiceDescription", "TyreDesignation", "parse_tyre"]

CACHED_DESIGNATIONS = 8192

_CONSTRUCTION_LETTER: dict[Construction, str] = {"radial": "R", "diagonal": "D", "bias_belted": "B"}
_PREFIX: dict[System, str] = {"p_metric": "P", "lt_metric": "LT", "temporary_spare": "T"}


@dataclass(frozen=True, slots=True)
class TyreDesignation:
    """What a tyre designation says; two are equal when everything but the assumptions is."""

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
    assumed: tuple[str, ...] = field(compare=False)

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling: a string keeps its hash, a tuple of 18 fields does not."""
        return hash(self.canonical)


@lru_cache(maxsize=CACHED_DESIGNATIONS)
def parse_tyre(text: str) -> TyreDesignation:
    """Return what the designation says.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, and what was expected there.
    """
    scanner = Scanner("tyre", text)
    size = read_size(scanner)
    tail = read_tail(scanner, size)
    service = tail.service
    return TyreDesignation(
        _spell(size, tail),
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
        service.speed_symbol if service else None,
        tail.bracketed,
        tail.additional,
        tail.load_version,
        tail.load_range,
        tuple(tail.markings),
        tuple(size.assumed + tail.assumed),
    )


def _spell(size: Size, tail: Tail) -> str:
    words = [_spell_width(size, tail), _spell_rim(size)]
    if tail.service is not None:
        written = tail.service.spelled()
        words.append(f"({written})" if tail.bracketed else written)
    if tail.additional is not None:
        words.append(f"({tail.additional.spelled()})")
    if tail.load_range is not None:
        words.append(tail.load_range if size.commercial == "LT" else f"LR {tail.load_range}")
    if tail.load_version == "extra_load":
        words.append("XL")
    elif tail.load_version == "light_load":
        words.append("LL")
    words.extend(tail.markings)
    return " ".join(words)


def _spell_width(size: Size, tail: Tail) -> str:
    if size.overall_diameter_in is not None:
        return f"{plain_number(size.overall_diameter_in)}x{size.width:.2f}"
    prefix = "HL" if tail.load_version == "high_load" else _PREFIX.get(size.system, "")
    ratio = "" if size.aspect_ratio is None else f"/{plain_number(size.aspect_ratio)}"
    return f"{prefix}{plain_number(size.width)}{ratio}"


def _spell_rim(size: Size) -> str:
    z, f = "Z" if size.z_rated else "", "F" if size.run_flat else ""
    suffix = "" if size.system == "lt_metric" else size.commercial
    return f"{z}{_CONSTRUCTION_LETTER[size.construction]}{f}{plain_number(size.rim_code)}{suffix}"
