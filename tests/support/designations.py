"""One part of a designation replaced, the rest kept as it was written; and designations as the trade prints them."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from hypothesis import strategies as st

from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre
from service.standards import rim_width

_PREFIX = re.compile("[A-Z]*")
_SERVICE = re.compile(r"\(?[0-9]+(?:/[0-9]+)?[A-Z][0-9]?\)?")
MM_PER_INCH = 25.4

DATA = Path(__file__).parents[1] / "reference" / "data"
SIGNS = "0123456789RXLJHTSVCPDEMOIZKYWolxj /-.,()+*\"'\u00a0\u2013\u00d7\u00bd\u2605\u00e9\t\x00"

# About the height of a size without a printed ratio, to write a modern one near it: common practice, no source.
OLD_SERIES_PERCENT = 80.0


def with_service(text: str, load_index: float, speed_symbol: str) -> str:
    """Return the tyre designation with this service description, for single and twin mounting alike."""
    width, code, *marks = parse_tyre(text).canonical.split(" ")
    kept = [mark for mark in marks if not _SERVICE.fullmatch(mark)]
    return " ".join([width, code, f"{load_index:.0f}{speed_symbol}", *kept])


def service_of(text: str) -> tuple[int | None, str | None]:
    """Return the load index and the speed symbol of a tyre designation."""
    designation = parse_tyre(text)
    return designation.load_index, designation.speed_symbol


def with_width(text: str, width_mm: float) -> str:
    """Return the tyre designation with another nominal width and, as near as whole per cents allow, its sidewall."""
    designation = parse_tyre(text)
    written, _, rest = designation.canonical.partition(" ")
    if designation.overall_diameter_in is not None:
        return f"{designation.overall_diameter_in:g}x{width_mm / MM_PER_INCH:.2f} {rest}"
    whole = round(width_mm)
    height_mm = designation.section_width_mm * (designation.aspect_ratio or OLD_SERIES_PERCENT) / 100.0
    prefix = _PREFIX.match(written)
    assert prefix is not None
    return f"{prefix.group()}{whole}/{min(max(round(100.0 * height_mm / whole), 20), 100)} {rest}"


def with_aspect(text: str, aspect_percent: float) -> str:
    """Return the tyre designation with this aspect ratio; a flotation size gets the overall diameter that gives it."""
    designation = parse_tyre(text)
    written, _, rest = designation.canonical.partition(" ")
    width_mm = designation.section_width_mm
    if designation.overall_diameter_in is not None:
        outer_in = designation.rim_code + 2.0 * width_mm * aspect_percent / 100.0 / MM_PER_INCH
        return f"{max(outer_in - 0.05, 24.0):.1f}x{width_mm / MM_PER_INCH:.2f} {rest}"
    prefix = _PREFIX.match(written)
    assert prefix is not None
    return f"{prefix.group()}{width_mm:.0f}/{aspect_percent:.0f} {rest}"


def sizes_around(text: str) -> Iterator[str]:
    """Return sizes of this rim code: other widths with the same sidewall, nearest first, then other sidewalls too."""
    width = round(parse_tyre(text).section_width_mm)
    widths = sorted(range(105, 406, 4), key=lambda each: abs(each - width))
    yield from (with_width(text, each) for each in widths)
    for aspect in range(25, 85, 5):
        yield from (with_aspect(with_width(text, each), aspect) for each in widths[::3])


def measuring_rim_in(text: str) -> float:
    """Return the measuring rim of a size, by the design guide."""
    designation = parse_tyre(text)
    return rim_width.measuring_rim_in(designation.section_width_mm, designation.aspect_ratio or OLD_SERIES_PERCENT)


def constructed(text: str, construction: str) -> str:
    """Return the tyre designation with radial or diagonal construction."""
    letter = {"radial": "R", "diagonal": "D"}[construction]
    width, code, *tail = parse_tyre(text).canonical.split(" ")
    return " ".join([width, re.sub("^(?:Z?RF?|[BD])", letter, code), *tail])


def rim_with(text: str, **parts: object) -> str:
    """Return the rim designation with other parts: `width_in`, `diameter_code`, `hump`, `offset_mm`, `one_piece`."""
    rim = parse_rim(text)
    new = {
        "width_in": rim.width_in,
        "diameter_code": rim.diameter_code,
        "hump": rim.hump,
        "offset_mm": rim.offset_mm,
        "one_piece": rim.one_piece,
    } | parts
    words = [f"{new['width_in']:g}{rim.flange or 'J'}", "x" if new["one_piece"] else "-", f"{new['diameter_code']:g}"]
    if new["hump"] is not None:
        words.append(str(new["hump"]))
    if new["offset_mm"] is not None:
        words.append(f"ET{new['offset_mm']:.2f}")
    return " ".join(words)


def printed(kind: str) -> list[dict[str, str]]:
    """Return the list of tyres or rims as printed or typed in the trade, with what is expected of each."""
    with (DATA / f"{kind}_designations.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


PRINTED = {
    **{kind: [row["text"] for row in printed(kind)] for kind in ("tyre", "rim")},
    "bolt circle": ["5x112", "5 x 114,3", "5/112", "112x5", '5 x 4.5"', '4 1/4" x 4', "10x335", "6 x 5\u00bd in"],
}


@st.composite
def slips(draw: st.DrawFn, texts: Sequence[str]) -> str:
    """Return one of the texts with up to three slips of the pen: a sign too many, too few or wrong, words moved."""
    text = draw(st.sampled_from(texts))
    for slip in draw(st.lists(st.sampled_from(["add", "drop", "change", "words", "repeat"]), max_size=3)):
        at = draw(st.integers(0, len(text)))
        sign = draw(st.sampled_from(SIGNS))
        match slip:
            case "add":
                text = text[:at] + sign + text[at:]
            case "drop":
                text = text[:at] + text[at + 1 :]
            case "change":
                text = text[:at] + sign + text[at + 1 :]
            case "words":
                text = f"{text} {' '.join(draw(st.sampled_from(texts)).split(' ')[1:])}"
            case _:
                text = text[:at] + text[draw(st.integers(0, at)) :]
    return text
