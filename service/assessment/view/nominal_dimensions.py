"""The dimensions that a tyre's designation stands for: computed, or from the tables where no aspect ratio is printed.

References
----------
.. [UN-R30 annex 5] Sizes without an aspect ratio: rows from memory, each with its confidence.
.. [ETRTO] Flotation sizes: rows from memory.
.. [PROJECT] Half an inch below its name for the flotation sizes without a row.
"""

from __future__ import annotations

from typing import NamedTuple

from service.core.numeric import UNKNOWN, known
from service.core.units import MM_PER_INCH
from service.designation.tyre import TyreDesignation
from service.physics.dimensions import overall_diameter_mm, section_height_mm
from service.standards import flotation, old_series, rim_diameter, rim_width
from service.standards.old_series import OldSeries


class Dimensions(NamedTuple):
    """Nominal width [mm], aspect ratio [%], section height, overall diameter, design rim and design width [mm].

    NaN stands for what no table tells; `measuring_rim_in` is NaN where the design guide tells it.
    """

    width_mm: float
    aspect_percent: float = UNKNOWN
    height_mm: float = UNKNOWN
    overall_diameter_mm: float = UNKNOWN
    design_rim_mm: float = UNKNOWN
    design_width_mm: float = UNKNOWN
    measuring_rim_in: float = UNKNOWN


def dimensions(designation: TyreDesignation) -> Dimensions:
    """Return what the size stands for."""
    nominal = rim_diameter.nominal_mm(designation.rim_code)
    if designation.overall_diameter_in is not None:
        return _flotation(designation, nominal)
    width, aspect = designation.section_width_mm, designation.aspect_ratio
    if aspect is None:
        return _tabulated(designation, nominal)
    height = section_height_mm(width, aspect)
    theoretical = width * rim_width.theoretical_factor(aspect)
    return Dimensions(width, aspect, height, overall_diameter_mm(nominal, height), theoretical, width)


def _flotation(designation: TyreDesignation, nominal: float) -> Dimensions:
    width, outer = designation.section_width_mm, flotation_row_mm(designation)
    if not known(outer):
        outer = flotation.estimate_mm(designation.overall_diameter_in or UNKNOWN)
    height = (outer - nominal) / 2.0
    if not height > 0.0:
        return Dimensions(width, design_width_mm=width)
    return Dimensions(width, 100.0 * height / width, height, outer, design_width_mm=width)


def flotation_row_mm(designation: TyreDesignation) -> float:
    """Return the overall diameter of a flotation size [mm]; NaN where it has no row."""
    outer_in, width_in = designation.overall_diameter_in or UNKNOWN, designation.section_width_in or UNKNOWN
    return flotation.from_table(outer_in, width_in, designation.rim_code)


def _tabulated(designation: TyreDesignation, nominal: float) -> Dimensions:
    width, row = designation.section_width_mm, row_of(designation)
    if row is None:
        return Dimensions(width)
    height = (row.overall_diameter_mm - nominal) / 2.0
    return Dimensions(
        width,
        100.0 * height / width,
        height,
        row.overall_diameter_mm,
        row.measuring_rim_in * MM_PER_INCH,
        row.section_width_mm,
        row.measuring_rim_in,
    )


def row_of(designation: TyreDesignation) -> OldSeries | None:
    """Return the row of a size without an aspect ratio; commercial tyres are as large as passenger ones (memory)."""
    inches = designation.section_width_in is not None
    if designation.aspect_ratio is None and not inches and designation.construction == "radial":
        return old_series.row(designation.section_width_mm, designation.rim_code)
    if designation.section_width_in is not None and designation.construction == "diagonal":
        return old_series.numeric_row(designation.section_width_in, designation.rim_code)
    return None
