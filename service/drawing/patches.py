"""The contact patches of both axles, present beside proposed, to scale and with the bands of the estimate."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi, sqrt
from typing import Final, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.view.change import Wheel
from service.assessment.view.estimates import wheel_estimates
from service.assessment.view.views import AxleView
from service.core.findings import Estimate
from service.core.numeric import known
from service.drawing import paper
from service.drawing.canvas import Canvas, points
from service.drawing.dimension_lines import across, along, extension
from service.drawing.lettering import plain, wrapped
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, LineType
from service.drawing.scene import AxleChoice
from service.physics.contact_patch import GROSS_SHARE

TITLE: Final = "Contact patch of one tyre, from above, driving upwards"
NOTES: Final = (
    "Hatched: the band in which the true outline is expected. The proposed patch shows the present one again.",
    (
        "Estimates for a standing tyre at kerb load where that is given; the round corners stand for the share of the "
        "rectangle that a footprint does not fill."
    ),
)
# A share a of both sides is rounded off in ellipses: the four corners then lose (4 - pi) a^2 of the rectangle.
CORNER: Final = sqrt((1.0 - GROSS_SHARE) / (4.0 - pi))
MARGIN_UNITS: Final = 16.0
SIDE_UNITS: Final = 140.0
ABOVE_UNITS: Final = 62.0
BELOW_UNITS: Final = 100.0
# Larger than in a section: beside other things this sheet is shown smaller.
VALUES_SIZE, LABELS_SIZE, NOTES_SIZE = 19.0, 16.5, 15.0
# What stands in place of a patch that is not known [mm].
EMPTY_MM: Final = 120.0


class Patch(NamedTuple):
    """One patch: its lengths with their bands, the pressure and the load they hold for."""

    length_mm: Estimate[float]
    width_mm: Estimate[float]
    area_cm2: Estimate[float]
    pressure_kpa: float
    load_kg: float

    @property
    def known(self) -> bool:
        """Return whether the models could say anything."""
        return known(self.area_cm2.value)

    @property
    def size_mm(self) -> tuple[float, float]:
        """Return width and length at the far end of their bands."""
        return (self.width_mm.high, self.length_mm.high) if self.known else (EMPTY_MM, EMPTY_MM)


class PatchRow(NamedTuple):
    """The patches of one axle."""

    name: str
    now: Patch
    then: Patch


def draw_patches(found: Assessment, axles: AxleChoice = "both", *, styled: bool = True) -> str:
    """Return the patches as SVG; without its style for a page that brings `paper.STYLE` itself."""
    both = _rows(found)
    rows = [row for row in both if axles in ("both", row.name)]
    # Scale and cells suit both axles even where one is drawn, so that two drawings can stand side by side.
    sizes = [patch.size_mm for row in both for patch in (row.now, row.then)]
    cell, tallest = max(size[0] for size in sizes), max(size[1] for size in sizes)
    scale = paper.scale_for(2.0 * cell)
    unit = paper.unit_mm(scale)
    cell = max(cell, 220.0 * unit)
    across_mm, down_mm = cell + SIDE_UNITS * unit, tallest + (ABOVE_UNITS + BELOW_UNITS) * unit
    # Both axles: present beside proposed, an axle a row. One axle: present above proposed, narrow enough for a phone.
    step = (across_mm, 0.0) if len(rows) > 1 else (0.0, down_mm)
    width = across_mm + step[0] + 2 * MARGIN_UNITS * unit
    text_width = width - 2 * MARGIN_UNITS * unit
    heading = paper.Heading.made(TITLE, found.case.candidate.label, text_width, unit)
    foot = heading.height + 2 * down_mm
    note_lines = sum(len(wrapped(note, text_width, NOTES_SIZE * unit)) for note in NOTES)
    height = foot + (92 + 1.35 * NOTES_SIZE * note_lines) * unit
    canvas = paper.new_sheet("patches", (width, height), scale, styled=styled)
    paper.describe(canvas, TITLE, [*_sentences(rows), *NOTES])
    heading.draw(canvas, MARGIN_UNITS * unit)
    for index, row in enumerate(rows):
        _row(canvas, row, heading.height + index * down_mm, (cell, tallest), step)
    y = paper.legend(canvas, (MARGIN_UNITS * unit, foot + 18 * unit), text_width, scale)
    paper.paragraph(canvas, (MARGIN_UNITS * unit, y + 6 * unit), NOTES, text_width, NOTES_SIZE)
    return paper.finished(canvas)


def _rows(found: Assessment) -> list[PatchRow]:
    first_mm = found.car.front.now.behaviour.patch_width_mm
    return [
        PatchRow(view.name, _patch(view.now, first_mm, view), _patch(view.then, first_mm, view))
        for view in (found.car.front, found.car.rear)
    ]


def _patch(wheel: Wheel, first_mm: float, view: AxleView) -> Patch:
    bands = wheel_estimates(wheel, first_mm, None)
    load_kg = view.axle.estimate_mass_kg / view.axle.tyres
    return Patch(
        bands.patch_length_mm, bands.patch_width_mm, bands.patch_area_cm2, wheel.behaviour.pressure_kpa, load_kg
    )


def _row(canvas: Canvas, row: PatchRow, y: float, cell: tuple[float, float], step: tuple[float, float]) -> None:
    unit = canvas.unit_mm
    width, height = cell
    x = MARGIN_UNITS * unit
    canvas.text((x, y + 24 * unit), f"{row.name.capitalize()} axle", 20, "start", "strong")
    for patch, words in ((row.now, "present"), (row.then, "proposed")):
        centre = x + 0.5 * width, y + ABOVE_UNITS * unit + 0.5 * height
        group = canvas.group(f"{row.name}-{words}-patch", centre)
        canvas.text((centre[0], y + 46 * unit), words, LABELS_SIZE, "middle", "soft")
        if not patch.known:
            group.text((0.0, 0.0), "not known: beyond the model", LABELS_SIZE)
        else:
            _band(group, patch, f"{row.name}-{words}")
            if words == "proposed" and row.now.known:
                _outline(group, row.now, PHANTOM, "")
            _outline(group, patch, PHANTOM if words == "present" else WIDE, f"{row.name}-{words}-outline")
            _measures(group, patch, f"{row.name}-{words}")
        x, y = x + step[0], y + step[1]


def _band(canvas: Canvas, patch: Patch, name: str) -> None:
    width, length = patch.width_mm, patch.length_mm
    ring = _rounded(width.high, length.high) + " " + _rounded(width.low, length.low)
    canvas.hatched(ring, f"{name}-band")
    canvas.path(_rounded(width.low, length.low), NARROW, f"{name}-low")
    canvas.path(_rounded(width.high, length.high), NARROW, f"{name}-high")


def _measures(canvas: Canvas, patch: Patch, name: str) -> None:
    unit, width, length = canvas.unit_mm, patch.width_mm, patch.length_mm
    arm = 9.0 * unit
    canvas.line((-arm, 0.0), (arm, 0.0), CHAIN)
    canvas.line((0.0, -arm), (0.0, arm), CHAIN)
    below, beside = 0.5 * length.high + 28 * unit, 0.5 * width.high + 26 * unit
    across(canvas, (-0.5 * width.value, 0.5 * width.value), below, _words(width, ""), f"{name}-width", VALUES_SIZE)
    along(canvas, beside, (-0.5 * length.value, 0.5 * length.value), "", f"{name}-length")
    # Beside the line and in two lines: a patch is shorter than its words.
    value, _, band = _words(length, "").partition(" ")
    for line, words in enumerate((value, band)):
        canvas.text((beside + 9 * unit, (-4 + 23 * line) * unit), words, VALUES_SIZE, "start")
    for side in (-0.5, 0.5):
        extension(canvas, (side * width.value, 0.5 * length.high), (side * width.value, below))
        extension(canvas, (0.5 * width.high, side * length.value), (beside, side * length.value))
    canvas.text((0.0, below + 27 * unit), f"area {_words(patch.area_cm2, ' cm²')}", LABELS_SIZE)
    words = f"at {plain(patch.pressure_kpa)} kPa and {plain(patch.load_kg)} kg"
    canvas.text((0.0, below + 49 * unit), words, LABELS_SIZE, style="soft")


def _outline(canvas: Canvas, patch: Patch, kind: LineType, name: str) -> None:
    size = patch.width_mm.value, patch.length_mm.value
    canvas.rectangle((0.0, 0.0), size, (CORNER * size[0], CORNER * size[1]), kind, name)


def _rounded(width: float, length: float) -> str:
    x, y = 0.5 * width, 0.5 * length
    rx, ry = CORNER * width, CORNER * length
    arc = ("A", rx, ry, "0 0 1")
    return points(
        *("M", rx - x, -y, "H", x - rx, *arc, x, ry - y, "V", y - ry, *arc, x - rx, y),
        *("H", rx - x, *arc, -x, y - ry, "V", ry - y, *arc, rx - x, -y, "Z"),
    )


def _words(found: Estimate[float], unit: str) -> str:
    return f"{plain(found.value)}{unit} ({plain(found.low)} to {plain(found.high)})"


def _sentences(rows: list[PatchRow]) -> Iterator[str]:
    for row in rows:
        for words, patch in (("present", row.now), ("proposed", row.then)):
            if not patch.known:
                yield f"{row.name.capitalize()} axle, {words}: not known."
                continue
            yield (
                f"{row.name.capitalize()} axle, {words}: width {_words(patch.width_mm, ' mm')}, "
                f"length {_words(patch.length_mm, ' mm')}, area {_words(patch.area_cm2, ' cm²')}."
            )
