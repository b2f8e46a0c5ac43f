"""How much room is left to the strut, to the wing and to the arch?

A measured room was measured with the present tyre as it is, and the proposed one may be as large as regulation lets
it. Where nobody measured, the shift of the design says whether somebody has to.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, Protocol

from service.assessment.checks.grade import LAST_BIT, AxleCheck, AxleFigure, Grade, finite
from service.assessment.checks.missing import diameter_remedy, offset_remedy, width_remedy
from service.assessment.checks.offset_window import offset_advice
from service.assessment.checks.words import apart, plain, span, tyre_pointer
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import NO_MARK
from service.core.findings import ADVISORY, MET, NOT_MET, Basis, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, pick, unknown
from service.rules.limits import Limit, Limits

# Below this a length is told in tenths.
WHOLE_MM = 0.95


class AxleRoom(Protocol):
    """A measured room, the same whatever the wheel."""

    def __call__(self, view: AxleView[Num], /) -> Num:
        """Return the room [mm], NaN where nobody measured."""


class Side(NamedTuple):
    """One direction in which a wheel may touch."""

    name: str
    towards: str
    shift: AxleFigure
    growth: AxleFigure
    room: AxleRoom
    enough: Callable[[Limits], Limit]
    unmeasured_most: Callable[[Limits], Limit]

    def needed(self, view: AxleView[Num]) -> Num:
        """Return how much of a measured room the wheel takes beyond the present one."""
        return self.shift(view) + self.growth(view)


SIDES = (
    Side(
        "inboard",
        "strut",
        lambda view: view.change.inboard_edge_mm,
        lambda view: view.change.growth_sideways_mm,
        lambda view: view.axle.sure_inboard_mm,
        lambda limits: limits.clearance_inboard_met_mm,
        lambda limits: limits.unmeasured_shift_most_mm,
    ),
    Side(
        "outboard",
        "wing edge",
        lambda view: view.change.outboard_edge_mm,
        lambda view: view.change.growth_sideways_mm,
        lambda view: view.axle.sure_outboard_mm,
        lambda limits: limits.clearance_outboard_met_mm,
        lambda limits: limits.unmeasured_shift_most_mm,
    ),
    Side(
        "radial",
        "wheel arch",
        lambda view: view.change.radial_edge_mm,
        lambda view: view.change.growth_radial_mm,
        lambda view: view.axle.sure_radial_mm,
        lambda limits: limits.clearance_radial_met_mm,
        lambda limits: limits.unmeasured_radius_most_mm,
    ),
)


def _grade(view: AxleView[Num], side: Side) -> Grade[Num]:
    shift, needed, room = side.shift(view), side.needed(view), side.room(view)
    left = room - needed
    least, enough = view.limits.clearance_least_mm.value, side.enough(view.limits).value
    unmeasured = unknown(room)
    outcome = worst(
        not_met=left < least - LAST_BIT,
        not_assessed=unknown(needed) | (unmeasured & (shift > side.unmeasured_most(view.limits).value + LAST_BIT)),
        # Room that is scarce today and does not shrink is said as well: it stays as it is.
        advisory=(left < enough - LAST_BIT)
        | (unmeasured & (shift > view.limits.unmeasured_shift_met_mm.value + LAST_BIT)),
    )
    limit = pick(outcome == NOT_MET, least, enough)
    return Grade(outcome, known_or(left, shift), pick(known(left), limit, UNKNOWN))


def _explain(view: AxleView, grade: Grade, side: Side) -> Finding:
    remedy = None
    limit = view.limits.clearance_least_mm if grade.outcome == NOT_MET else side.enough(view.limits)
    basis, shown = limit.basis, None if unknown(grade.limit) else limit.value
    if unknown(side.needed(view)):
        message, remedy = _unplaced(view, side)
    elif unknown(side.room(view)):
        message, remedy, basis = _unmeasured(view, side, grade)
    else:
        message = _measured(view, side, grade)
        if grade.outcome != MET:
            remedy = _remedy(view, side)
    code = f"clearance.{side.name}"
    return Finding(code, view.name, grade.outcome, message, finite(grade.measured), shown, "mm", basis, remedy)


def millimetres(length: float) -> str:
    """Return a length in whole millimetres; what is less than one, to a tenth."""
    if length >= WHOLE_MM:
        return f"{plain(length)} mm"
    tenths = plain(length, 1)
    return "less than 0.1 mm" if tenths == "0" else f"{tenths} mm"


def _measured(view: AxleView, side: Side, grade: Grade) -> str:
    needed, enough, left = side.needed(view), side.enough(view.limits).value, grade.measured
    way = "more" if needed > 0.0 else "less"
    moved = f"The wheel needs {millimetres(abs(needed))} {way} room towards the {side.towards}"
    still, advised = plain(abs(needed), 1) == "0", f"{plain(enough)} mm or more is advised."
    if grade.outcome == NOT_MET:
        return f"{moved}, {millimetres(-left)} more than there is: it touches."
    if grade.outcome == ADVISORY and still:
        return f"The room towards the {side.towards} is {apart(left, enough)} mm; {advised}"
    if grade.outcome == ADVISORY:
        return f"{moved}, which leaves {apart(left, enough)} mm; {advised}"
    if still:
        return f"The room towards the {side.towards} does not change."
    return f"{moved}, which leaves {plain(left)} mm."


def _unmeasured(view: AxleView, side: Side, grade: Grade) -> tuple[str, Remedy | None, Basis]:
    shift, limits = side.shift(view), view.limits
    least = _to_be_measured(view, side)
    if grade.outcome == MET:
        within = limits.unmeasured_shift_met_mm
        message = f"The wheel stays within {plain(within.value)} mm of the present one towards the {side.towards}."
        if plain(abs(shift), 1) == "0":
            message = f"The room towards the {side.towards} does not change."
        elif shift < 0.0:
            message = f"The wheel needs {millimetres(-shift)} less room towards the {side.towards} than now."
        return message, None, within.basis
    before = " before you order" if grade.outcome == ADVISORY else ""
    text = f"measure the room between wheel and {side.towards}{before}: {_up(least)} mm is enough"
    message = f"The wheel comes {millimetres(shift)} nearer to the {side.towards}. The room there was not measured."
    most = limits.unmeasured_shift_met_mm if grade.outcome == ADVISORY else side.unmeasured_most(limits)
    return message, _measure(view, side, text, least), most.basis


def _measure(view: AxleView, side: Side, text: str, least: float) -> Remedy:
    pointer = f"/vehicle/{view.name}/clearance/{side.name}_mm"
    return Remedy(text, pointer, f"{side.name}_mm", least, unit="mm")


def _to_be_measured(view: AxleView, side: Side) -> float:
    """Return the room that is enough when it is measured to within the tolerance that holds for this axle."""
    return side.needed(view) + side.enough(view.limits).value + view.axle.clearance_tolerance_mm


def _up(length: float) -> str:
    return plain(length + 0.5 - LAST_BIT)


def _unplaced(view: AxleView, side: Side) -> tuple[str, Remedy | None]:
    if side.name == "radial":
        return "The room to the arch cannot be judged without the overall diameters.", diameter_remedy(view)
    lacking = offset_remedy(view)
    if lacking is None:
        return "The room cannot be judged without the section widths.", width_remedy(view)
    return "Where the wheel stands is not known without the offset (ET) of both rims.", lacking


def _remedy(view: AxleView, side: Side) -> Remedy:
    enough, needed = side.enough(view.limits).value, side.needed(view)
    if needed <= LAST_BIT:
        least = _to_be_measured(view, side)
        text = f"look for marks of rubbing and measure again: {_up(least)} mm is enough"
        return _measure(view, side, text, least)
    spare = max(side.room(view) - enough, 0.0)
    if side.name == "radial":
        return _lower(view, spare)
    if view.change.same_rim == 1.0 and view.then.facts.spacer_mm == view.now.facts.spacer_mm:
        return _narrower(view, spare)
    return offset_advice(view)


def _lower(view: AxleView, spare_mm: float) -> Remedy:
    """Return the diameter that leaves enough; the present one always does."""
    facts, limits, present = view.then.facts, view.limits, view.now.geometry.overall_diameter_mm
    snow = 0.0 if facts.winter_mark == NO_MARK else limits.snow_diameter_growth_percent.value
    grown = (present + 2.0 * spare_mm) / (1.0 + snow / 100.0)
    # Growth is of the section only: the bead stays as it is.
    bead, growth = facts.rim_diameter_mm, 1.0 + limits.service_height_growth_percent.value / 100.0
    most = max(bead + (grown - bead) / growth, present)
    text = f"an overall diameter of {span(None, most, 'mm')}"
    return Remedy(text, tyre_pointer(view.name), "overall_diameter_mm", at_most=most, unit="mm")


def _narrower(view: AxleView, spare_mm: float) -> Remedy:
    """Return the width of a tyre for the rim that the car has; the present one is always narrow enough."""
    now = view.now.geometry
    growth = 1.0 + view.limits.service_width_growth_percent.value / 100.0
    most = max((now.widest_mm + 2.0 * spare_mm) / growth, now.section_width_mm)
    text = f"a narrower tyre, its section {span(None, most, 'mm')} wide"
    pointer = f"/candidate/{view.name}/tyre/section_width_mm"
    return Remedy(text, pointer, "section_width_mm", at_most=most, unit="mm")


def _check(side: Side) -> AxleCheck:
    def grade(view: AxleView[Num]) -> Grade[Num]:
        return _grade(view, side)

    def explain(view: AxleView, found: Grade) -> Finding:
        return _explain(view, found, side)

    return AxleCheck(f"clearance.{side.name}", grade, explain)


INBOARD, OUTBOARD, RADIAL = (_check(side) for side in SIDES)
