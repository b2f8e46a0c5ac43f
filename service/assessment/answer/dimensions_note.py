"""What is said of dimensions that no printed table stands behind."""

from __future__ import annotations

from service.assessment.case import Tyre
from service.assessment.checks.words import plain
from service.assessment.view.nominal_dimensions import dimensions, flotation_row_mm, row_of
from service.core.numeric import known
from service.core.saying import say

_CONFIDENCE = {
    "high": say("high confidence"),
    "medium": say("medium confidence"),
}


def dimensions_note(tyre: Tyre) -> str:
    """Return the sentence on dimensions that no printed table stands behind; empty where none is needed."""
    designation, measured = tyre.designation, tyre.measured
    row = row_of(designation) if designation.aspect_ratio is None else None
    if measured is not None and known(measured.overall_diameter_mm):
        if designation.aspect_ratio is not None or row is not None or known(measured.section_width_mm):
            return ""
        return say(
            "The section width of {size} is taken as {width} by its name; the maker counts more.",
            size=designation.canonical,
            width=plain(designation.section_width_mm, 0, "mm"),
        )
    size = designation.canonical
    if designation.overall_diameter_in is not None:
        outer = plain(dimensions(designation).overall_diameter_mm, 0, "mm")
        if known(flotation_row_mm(designation)):
            return say(
                "The overall diameter of {size} is taken as {diameter}, from memory of a table; the maker's data count "
                "more.",
                size=size,
                diameter=outer,
            )
        return say(
            "The overall diameter of {size} is taken as {diameter}, half an inch below its name; the maker's data "
            "count more.",
            size=size,
            diameter=outer,
        )
    if row is None:
        return ""
    return say(
        "{size} is taken as {height} high and {width} wide, from memory of a table of UN R30 ({confidence}); the "
        "maker's data count more.",
        size=size,
        height=plain(row.overall_diameter_mm, 0, "mm"),
        width=plain(row.section_width_mm, 0, "mm"),
        confidence=_CONFIDENCE[row.confidence],
    )
