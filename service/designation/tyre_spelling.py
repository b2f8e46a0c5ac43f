"""The canonical spelling of a tyre designation, which reads back to the same parts."""

from __future__ import annotations

from service.designation.commercial import RIM_CODES as TRUCK_RIM_CODES
from service.designation.text import plain_number
from service.designation.tyre_size import Construction, Size, System
from service.designation.tyre_words import MARKINGS, Tail

# Narrower sizes print their decimals on every rim.
LEAST_WHOLE_IN = 7.0
HALF_INCH = 0.5

_CONSTRUCTION_LETTER: dict[Construction, str] = {"radial": "R", "diagonal": "D", "bias_belted": "B"}
_PREFIX: dict[System, str] = {"p_metric": "P", "lt_metric": "LT", "temporary_spare": "T"}
_TUBE = {"tubeless": "TL", "tube_type": "TT"}
_PLACE = {marking: place for place, marking in enumerate(MARKINGS)}


def spell(size: Size, tail: Tail) -> str:
    """Return size, service descriptions, load version and markings, one blank between; sorts the markings."""
    words = [_spell_numeric(size) if size.system == "numeric" else f"{_spell_width(size, tail)} {_spell_rim(size)}"]
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
    if tail.ply_rating is not None:
        words.append(f"{tail.ply_rating}PR")
    if tail.markings:
        tail.markings.sort(key=_PLACE.__getitem__)
        words.extend(tail.markings)
    if tail.tube is not None:
        words.append(_TUBE[tail.tube])
    return " ".join(words)


def _spell_width(size: Size, tail: Tail) -> str:
    if size.overall_diameter_in is not None:
        return f"{plain_number(size.overall_diameter_in)}x{size.width:.2f}"
    prefix = "HL" if tail.load_version == "high_load" else _PREFIX.get(size.system, "")
    if size.aspect_ratio is None:
        return f"{prefix}{size.width:.0f}"
    return f"{prefix}{size.width:.0f}/{size.aspect_ratio:.0f}"


def _spell_rim(size: Size) -> str:
    letter = _CONSTRUCTION_LETTER[size.construction]
    if size.z_rated or size.run_flat or size.speed_letter:
        letter = f"{'Z' if size.z_rated else size.speed_letter or ''}{letter}{'F' if size.run_flat else ''}"
    suffix = "" if size.system == "lt_metric" else size.commercial
    return f"{letter}{plain_number(size.rim_code)}{suffix}"


def _spell_numeric(size: Size) -> str:
    """Return a size in inches: two decimals, but the shortest spelling on 15 degree rims, as sidewalls print it."""
    short = size.rim_code in TRUCK_RIM_CODES and (size.width % 1.0 == HALF_INCH or _is_plain(size))
    width = plain_number(size.width) if short else f"{size.width:.2f}"
    code = f"{plain_number(size.rim_code)}{size.commercial}"
    if size.construction == "diagonal":
        return f"{width} {size.speed_letter}{code}" if size.speed_letter else f"{width}-{code}"
    return f"{width} {size.speed_letter or ''}{_CONSTRUCTION_LETTER[size.construction]}{code}"


def _is_plain(size: Size) -> bool:
    """Return whether the width is in whole inches that may stand without decimals."""
    whole = size.width % 1.0 == 0.0 and size.width >= LEAST_WHOLE_IN
    return whole and size.speed_letter is None and size.construction != "bias_belted"
