"""The contact patches of both axles, present beside proposed, to scale and with the bands of the estimate."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import pi, sqrt
from types import MappingProxyType
from typing import Final, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.view.change import Wheel
from service.assessment.view.estimates import wheel_estimates
from service.assessment.view.views import AxleView
from service.core.findings import AxleName, Estimate
from service.core.numeric import known
from service.core.saying import Amount, Said, say
from service.drawing import paper
from service.drawing.canvas import Canvas, points
from service.drawing.dimension_lines import across, along, beneath, extension
from service.drawing.legend import Legend
from service.drawing.lettering import wrapped
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, LineType
from service.drawing.scene import AxleChoice
from service.drawing.terms import AXLES, FITMENTS, Which, on_axle
from service.locales.speech import ENGLISH, Speech
from service.physics.contact_patch import GROSS_SHARE

TITLE: Final = say("Contact patch of one tyre, from above, driving upwards")
NOTES: Final = (
    say("Hatched: the band in which the true outline is expected. The proposed patch shows the present one again."),
    say(
        "Estimates for a standing tyre at kerb load where that is given; the round corners stand for the share of the "
        "rectangle that a footprint does not fill."
    ),
)
UNKNOWN_PATCH: Final = say("not known: beyond the model")
UNKNOWN_SENTENCES: Final[Mapping[Which, Said]] = MappingProxyType(
    {"present": say("present, not known."), "proposed": say("proposed, not known.")}
)
# A share a of both sides is rounded off in ellipses: the four corners then lose (4 - pi) a^2 of the rectangle.
CORNER: Final = sqrt((1.0 - GROSS_SHARE) / (4.0 - pi))
MARGIN_UNITS: Final = 16.0
SIDE_UNITS: Final = 140.0
ABOVE_UNITS: Final = 62.0
BELOW_UNITS: Final = 104.0
# Larger than in a section: beside other things this sheet is shown smaller.
VALUES_SIZE, LABELS_SIZE, NOTES_SIZE = 19.0, 17.0, 16.0
# The space of a patch across and along, the same in every sheet: at 1:5 it holds that of any tyre of a car or van,
# so that the drawings of several candidates are at one scale whichever they are.
CELL_UNITS: Final = (300.0, 170.0)
LEAST_SCALE: Final = 5


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


class PatchRow(NamedTuple):
    """The patches of one axle."""

    name: AxleName
    now: Patch
    then: Patch

    @property
    def both(self) -> tuple[tuple[Which, Patch], ...]:
        """Return present and proposed in their order."""
        return ("present", self.now), ("proposed", self.then)


def draw_patches(
    found: Assessment, axles: AxleChoice = "both", speech: Speech = ENGLISH, *, styled: bool = True
) -> str:
    """Return the patches as SVG; without its style for a page that brings `paper.STYLE` itself."""
    both = _rows(found)
    rows = [row for row in both if axles in ("both", row.name)]
    # Scale and cells suit both axles even where one is drawn, so that two drawings can stand side by side.
    scale = _scale([patch for row in both for patch in (row.now, row.then)])
    unit = paper.unit_mm(scale)
    cell, tallest = CELL_UNITS[0] * unit, CELL_UNITS[1] * unit
    across_mm, down_mm = cell + SIDE_UNITS * unit, tallest + (ABOVE_UNITS + BELOW_UNITS) * unit
    # Both axles: present beside proposed, an axle a row. One axle: present above proposed, narrow enough for a phone.
    step = (across_mm, 0.0) if len(rows) > 1 else (0.0, down_mm)
    width = across_mm + step[0] + 2 * MARGIN_UNITS * unit
    text_width = width - 2 * MARGIN_UNITS * unit
    heading = paper.Heading.made(speech.say(TITLE), found.case.candidate.label, text_width, unit)
    foot = heading.height + 2 * down_mm
    note_lines = sum(len(wrapped(speech.say(note), text_width, NOTES_SIZE * unit)) for note in NOTES)
    legend = Legend.made(speech, text_width, unit, scale)
    height = foot + (42 + legend.height_units + paper.NOTES_STEP * NOTES_SIZE * note_lines) * unit
    canvas = paper.new_sheet("patches", (width, height), (scale, unit), speech, styled=styled)
    paper.describe(canvas, TITLE, [*_sentences(rows), *NOTES])
    heading.draw(canvas, MARGIN_UNITS * unit)
    for index, row in enumerate(rows):
        _row(canvas, row, heading.height + index * down_mm, (cell, tallest), step)
    y = legend.draw(canvas, (MARGIN_UNITS * unit, foot + 18 * unit))
    paper.paragraph(canvas, (MARGIN_UNITS * unit, y + 6 * unit), NOTES, text_width, NOTES_SIZE)
    return paper.finished(canvas)


def _scale(patches: Sequence[Patch]) -> int:
    """Return the reduction 1:n: that of every sheet, but for patches that its space does not hold."""
    sizes = [(patch.width_mm.high, patch.length_mm.high) for patch in patches if patch.known]
    steps = (n for n in paper.SCALES if n >= LEAST_SCALE)
    held = (
        n
        for n in steps
        if all(side <= cell * paper.unit_mm(n) for size in sizes for side, cell in zip(size, CELL_UNITS, strict=True))
    )
    return next(held, paper.SCALES[-1])


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
    canvas.text((x, y + 24 * unit), AXLES[row.name], 20, "start", "strong")
    for which, patch in row.both:
        centre = x + 0.5 * width, y + ABOVE_UNITS * unit + 0.5 * height
        group = canvas.group(f"{row.name}-{which}-patch", centre)
        canvas.text((centre[0], y + 46 * unit), FITMENTS[which], LABELS_SIZE, "middle", "soft")
        if not patch.known:
            size = group.fitted(UNKNOWN_PATCH, LABELS_SIZE, (width + SIDE_UNITS * unit) / unit - 12.0)
            group.text((0.0, 0.0), UNKNOWN_PATCH, size)
        else:
            _band(group, patch, f"{row.name}-{which}")
            if which == "proposed" and row.now.known:
                _outline(group, row.now, PHANTOM, "")
            _outline(group, patch, PHANTOM if which == "present" else WIDE, f"{row.name}-{which}-outline")
            _measures(group, patch, f"{row.name}-{which}", width / unit)
        x, y = x + step[0], y + step[1]


def _band(canvas: Canvas, patch: Patch, name: str) -> None:
    width, length = patch.width_mm, patch.length_mm
    ring = _rounded(width.high, length.high) + " " + _rounded(width.low, length.low)
    canvas.hatched(ring, f"{name}-band")
    canvas.path(_rounded(width.low, length.low), NARROW, f"{name}-low")
    canvas.path(_rounded(width.high, length.high), NARROW, f"{name}-high")


def _measures(canvas: Canvas, patch: Patch, name: str, cell_units: float) -> None:
    unit, width, length = canvas.unit_mm, patch.width_mm, patch.length_mm
    arm = 9.0 * unit
    canvas.line((-arm, 0.0), (arm, 0.0), CHAIN)
    canvas.line((0.0, -arm), (0.0, arm), CHAIN)
    below, beside = 0.5 * length.high + 28 * unit, 0.5 * width.high + 26 * unit
    across(canvas, (-0.5 * width.value, 0.5 * width.value), below, f"{name}-width")
    beneath(canvas, (0.0, below), _words(width), cell_units + 2 * MARGIN_UNITS, VALUES_SIZE)
    along(canvas, beside, (-0.5 * length.value, 0.5 * length.value), "", f"{name}-length")
    # Beside the line and in two lines: a patch is shorter than its words.
    room = 0.5 * cell_units + SIDE_UNITS - beside / unit - 9.0
    for line, words in enumerate((Amount(length.value, "mm", bare=True), say("({low} to {high})", **_ends(length)))):
        size = canvas.fitted(words, VALUES_SIZE, room)
        canvas.text((beside + 9 * unit, (-4 + 23 * line) * unit), words, size, "start")
    for side in (-0.5, 0.5):
        extension(canvas, (side * width.value, 0.5 * length.high), (side * width.value, below))
        extension(canvas, (0.5 * width.high, side * length.value), (beside, side * length.value))
    pressure, load = Amount(patch.pressure_kpa, "kPa"), Amount(patch.load_kg, "kg")
    lines = (
        (say("area {area}", area=_words(patch.area_cm2, "cm²", bare=False)), ""),
        # Say: under a contact patch: the inflation pressure and the wheel load that it holds for
        (say("at {pressure} and {load}", pressure=pressure, load=load), "soft"),
    )
    for line, (said, style) in enumerate(lines):
        size = canvas.fitted(said, LABELS_SIZE, cell_units + 2 * MARGIN_UNITS)
        canvas.text((0.0, below + (50 + 22 * line) * unit), said, size, style=style)


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


def _words(found: Estimate[float], unit: str = "mm", *, bare: bool = True) -> Said:
    return say("{value} ({low} to {high})", value=Amount(found.value, unit, bare=bare), **_ends(found, unit))


def _ends(found: Estimate[float], unit: str = "mm") -> dict[str, Amount]:
    return {"low": Amount(found.low, unit, bare=True), "high": Amount(found.high, unit, bare=True)}


def _sentences(rows: list[PatchRow]) -> Iterator[Said]:
    for row in rows:
        for which, patch in row.both:
            if not patch.known:
                yield on_axle(row.name, UNKNOWN_SENTENCES[which])
                continue
            sizes = {
                "width": _words(patch.width_mm, bare=False),
                "length": _words(patch.length_mm, bare=False),
                "area": _words(patch.area_cm2, "cm²", bare=False),
            }
            if which == "present":
                yield on_axle(row.name, say("present, width {width}, length {length}, area {area}.", **sizes))
            else:
                yield on_axle(row.name, say("proposed, width {width}, length {length}, area {area}.", **sizes))
