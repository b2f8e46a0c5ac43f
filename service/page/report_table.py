"""Before and after in numbers, a line for each that a fitter asks for: present, proposed, change, limit."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Final, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.answer.verdict_words import OUTCOME_WORDS
from service.assessment.checks.clearance import SIDES, Side
from service.assessment.checks.wet_reserve import SPEED
from service.assessment.view.change import Wheel, new_onset_kmh, percent
from service.assessment.view.driving import AxleDriving
from service.assessment.view.views import AxleView
from service.core.findings import MET, OPEN, Finding, Where
from service.core.numeric import known, known_or
from service.core.saying import Said, say
from service.designation.tyre import TyreDesignation
from service.page.report_cells import NOTHING, Cell, Writer

NOT_MEASURED: Final = say("not measured")
ROOMS: Final[Mapping[str, Said]] = {
    "inboard": say("Room to the strut"),
    "outboard": say("Room to the wing edge"),
    "radial": say("Room to the arch"),
}
RESERVE: Final = say("Wet reserve at {speed}", speed=SPEED)


class ReportLine(NamedTuple):
    """A line of the table; `style` names the worst of what is said of it, and is empty where it is in order."""

    name: str
    present: Cell
    proposed: Cell
    change: Cell
    limit: Cell
    style: str
    title: str


class Lines:
    """Makes the lines of one place, each with the worst outcome of its questions there."""

    def __init__(self, found: Assessment, where: Where, write: Writer) -> None:
        self.write = write
        self._told = {each.code: each for each in found.findings if each.axle == where}

    def finding(self, code: str) -> Finding | None:
        """Return the finding of a question at this place."""
        return self._told.get(code)

    def limit(self, code: str) -> float | None:
        """Return the limit that a question was held against."""
        finding = self.finding(code)
        return None if finding is None else finding.limit

    def line(
        self, name: Said, cells: tuple[Cell, Cell], change: Cell = NOTHING, limit: Cell = NOTHING, codes: str = ""
    ) -> ReportLine:
        """Return a line; `codes` are its questions, with blanks between them."""
        outcomes = [each.outcome for each in map(self.finding, codes.split()) if each is not None]
        worst = max(outcomes, default=MET)
        words = next(each for each in OUTCOME_WORDS if each.outcome == worst)
        quiet = worst in (MET, OPEN)
        said = self.write.said
        style, title = ("", "") if quiet else (words.name, said(words.title).text)
        return ReportLine(said(name).text, *cells, change, limit, style, title)


def axle_lines(found: Assessment, view: AxleView, write: Writer) -> Iterator[ReportLine]:
    """Yield the lines of one axle."""
    lines = Lines(found, view.name, write)
    candidate = found.case.candidate
    fitted, then = view.axle.fitted, candidate.front if view.name == "front" else candidate.rear
    tyres = fitted.tyre.designation, then.tyre.designation
    yield lines.line(say("Tyre"), (Cell(tyres[0].canonical), Cell(tyres[1].canonical)), codes="rim.diameter")
    yield from _service(lines, view, tyres)
    facts = view.then.facts
    yield lines.line(
        say("Rim"),
        (write.said(fitted.rim_in_words), write.said(then.rim_in_words)),
        limit=write.between(facts.approved_min_in, facts.approved_max_in, "in", 2),
        codes="rim.width rim.bolt_circle rim.centre_bore rim.brake_clearance rim.load_rating rim.contour",
    )
    yield lines.line(
        say("Offset (ET)"),
        _both(view, lambda wheel: write.offset(wheel.facts.offset_mm)),
        write.offset(view.change.offset_mm, signed=True),
        codes="track.change",
    )
    yield _pressure(lines, view)
    yield from _sizes(lines, view)
    yield from (_room(lines, view, side) for side in SIDES)
    if known(view.then.geometry.twin_gap_mm):
        yield lines.line(
            say("Gap between the twin tyres"),
            _both(view, lambda wheel: write.amount(wheel.geometry.twin_gap_mm, "mm", 0)),
            codes="clearance.twin",
        )
    yield from _on_the_road(lines, found, view)


def _both(view: AxleView, cell: Callable[[Wheel], Cell]) -> tuple[Cell, Cell]:
    return cell(view.now), cell(view.then)


def _service(lines: Lines, view: AxleView, tyres: tuple[TyreDesignation, TyreDesignation]) -> Iterator[ReportLine]:
    write = lines.write
    now, then = view.now.facts, view.then.facts
    yield lines.line(
        say("Load index (LI)"),
        (
            _marked(_indices(tyres[0]), write.amount(now.rated_kg, "kg")),
            _marked(_indices(tyres[1]), write.amount(then.rated_kg, "kg")),
        ),
        write.change(then.load_index - now.load_index, "", 0),
    )
    yield lines.line(
        say("Load capacity"),
        _both(view, lambda wheel: write.amount(wheel.load.axle_capacity_kg, "kg")),
        write.change(view.change.load_capacity_percent, "%"),
        # A mass or a speed that was only taken for right is no limit of the vehicle's papers.
        NOTHING if view.axle.mass_assumed else write.least(view.axle.max_axle_mass_kg, "kg"),
        "load.capacity load.below_present",
    )
    yield lines.line(
        say("Speed symbol"),
        (
            _marked(tyres[0].speed_symbol, write.amount(now.speed_capability_kmh, "km/h")),
            _marked(tyres[1].speed_symbol, write.amount(then.speed_capability_kmh, "km/h")),
        ),
        limit=NOTHING if view.vehicle.speed_assumed else write.least(view.vehicle.max_speed_kmh, "km/h"),
        codes="speed.capability",
    )


def _indices(tyre: TyreDesignation) -> str | None:
    if tyre.load_index is None:
        return None
    return str(tyre.load_index) if tyre.load_index_twin is None else f"{tyre.load_index}/{tyre.load_index_twin}"


def _marked(mark: str | None, worth: Cell) -> Cell:
    """Return what is marked on a tyre, and what it is worth."""
    return worth if mark is None else Cell(f"{mark} ({worth.text})", worth.also)


def _pressure(lines: Lines, view: AxleView) -> ReportLine:
    write, now = lines.write, view.now.facts.pressure_kpa
    # What is to be set counts, whatever was asked; where nothing can be ordered, what was asked.
    then = known_or(view.ordered_pressure_kpa, view.then.facts.pressure_kpa)
    return lines.line(
        say("Pressure, cold"),
        (write.amount(now, "kPa"), write.amount(then, "kPa")),
        write.change(then - now, "kPa", 0),
        write.least(view.then.load.required_pressure_kpa, "kPa"),
        "load.pressure",
    )


def _sizes(lines: Lines, view: AxleView) -> Iterator[ReportLine]:
    write, change = lines.write, view.change
    yield lines.line(
        say("Overall diameter, new"),
        _both(view, lambda wheel: write.amount(wheel.geometry.overall_diameter_mm, "mm")),
        write.change(change.overall_diameter_percent, "%"),
        write.either_way(lines.limit("diameter.deviation"), "%"),
        "diameter.deviation",
    )
    yield lines.line(
        say("Rolling circumference"),
        _both(view, lambda wheel: write.amount(wheel.geometry.rolling_circumference_mm, "mm")),
        write.change(change.rolling_circumference_percent, "%"),
    )
    yield lines.line(
        say("Section width"),
        _both(view, lambda wheel: write.amount(wheel.geometry.section_width_mm, "mm")),
        write.change(change.section_width_mm, "mm", 0),
    )


def _room(lines: Lines, view: AxleView, side: Side) -> ReportLine:
    """Return the room on one side: as measured, and what the proposed wheel leaves of it at its largest."""
    write, code = lines.write, f"clearance.{side.name}"
    room, needed = side.room(view), side.needed(view)
    limit = lines.limit(code)
    return lines.line(
        ROOMS[side.name],
        (write.amount(room, "mm", 1, NOT_MEASURED), write.amount(room - needed, "mm", 1) if known(room) else NOTHING),
        write.change(-needed if known(room) else -side.shift(view), "mm"),
        NOTHING if limit is None else write.least(limit, "mm"),
        code,
    )


def _on_the_road(lines: Lines, found: Assessment, view: AxleView) -> Iterator[ReportLine]:
    """Yield what changes on the road at one axle; all of it is estimated."""
    write, car = lines.write, found.car
    driving: AxleDriving[float] = car.driving.front if view.name == "front" else car.driving.rear
    yield lines.line(say("Grip on a dry road"), (NOTHING, NOTHING), write.estimate(driving.peak_grip_percent, "%"))
    now, then, _ = car.front_reserve if view.name == "front" else car.rear_reserve
    most = lines.limit("wet.reserve")
    if not car.vehicle.is_trailer:
        yield lines.line(
            RESERVE,
            (write.amount(now, "%"), write.amount(then, "%")),
            write.change(percent(now, then) if now else then - now, "%"),
            NOTHING if most is None else write.change(-most, "%"),
            "wet.reserve",
        )
    patch = car.front.now.behaviour.patch_width_mm
    least = lines.limit("wet.aquaplaning")
    yield lines.line(
        say("Aquaplaning from"),
        _both(view, lambda wheel: write.amount(new_onset_kmh(wheel, patch), "km/h")),
        write.estimate(view.change.aquaplaning_onset_percent, "%"),
        NOTHING if least is None else write.change(least, "%"),
        "wet.aquaplaning",
    )
