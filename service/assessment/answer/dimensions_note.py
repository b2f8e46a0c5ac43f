"""What is said of dimensions that no printed table stands behind."""

from __future__ import annotations

from service.assessment.case import Tyre
from service.assessment.checks.words import plain
from service.assessment.view.nominal_dimensions import dimensions, flotation_row_mm, row_of
from service.core.numeric import known


def dimensions_note(tyre: Tyre) -> str:
    """Return the sentence on dimensions that no printed table stands behind; empty where none is needed."""
    designation, measured = tyre.designation, tyre.measured
    row = row_of(designation) if designation.aspect_ratio is None else None
    if measured is not None and known(measured.overall_diameter_mm):
        if designation.aspect_ratio is not None or row is not None or known(measured.section_width_mm):
            return ""
        width = plain(designation.section_width_mm)
        return (
            f"The section width of {designation.canonical} is taken as {width} mm by its name; the maker counts more."
        )
    size = designation.canonical
    if designation.overall_diameter_in is not None:
        outer = dimensions(designation).overall_diameter_mm
        where = "from memory of a table" if known(flotation_row_mm(designation)) else "half an inch below its name"
        return f"The overall diameter of {size} is taken as {plain(outer)} mm, {where}; the maker's data count more."
    if row is None:
        return ""
    return (
        f"{size} is taken as {plain(row.overall_diameter_mm)} mm high and {plain(row.section_width_mm)} mm wide, from "
        f"memory of a table of UN R30 ({row.confidence} confidence); the maker's data count more."
    )
