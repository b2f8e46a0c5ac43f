"""How much room is left to the strut, to the wing and to the arch?

A measured room was measured with the present tyre as it is, and the proposed one may be as large as regulation lets
it. Where nobody measured, the shift of the design says whether somebody has to.
"""

from __future__ import annotations

from collections.abc import Callable
from math import ceil
from typing import NamedTuple, Protocol

from service.assessment.checks.grade import LAST_BIT, AxleCheck, AxleFigure, Grade, finite
from service.assessment.checks.missing import diameter_remedy, offset_remedy, width_remedy
from service.assessment.checks.offset_window import offset_advice
from service.assessment.checks.words import apart, plain, span, tyre_pointer
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import NO_MARK
from service.core.findings import ADVISORY, MET, NOT_MET, Basis, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, pick, unknown
from service.core.saying import Amount, Said, say
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
    towards: Said
    nearer: Said
    between: Said
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
        # Say: as in "The wheel needs {length} more room {towards}, which leaves {left}."
        say("towards the strut"),
        # Say: as in "The wheel comes {length} {nearer}."
        say("nearer to the strut"),
        # Say: as in "measure the room {between}".
        say("between wheel and strut"),
        lambda view: view.change.inboard_edge_mm,
        lambda view: view.change.growth_sideways_mm,
        lambda view: view.axle.sure_inboard_mm,
        lambda limits: limits.clearance_inboard_met_mm,
        lambda limits: limits.unmeasured_shift_most_mm,
    ),
    Side(
        "outboard",
        # Say: as in "The wheel needs {length} more room {towards}, which leaves {left}."
        say("towards the wing edge"),
        # Say: as in "The wheel comes {length} {nearer}."
        say("nearer to the wing edge"),
        # Say: as in "measure the room {between}".
        say("between wheel and wing edge"),
        lambda view: view.change.outboard_edge_mm,
        lambda view: view.change.growth_sideways_mm,
        lambda view: view.axle.sure_outboard_mm,
        lambda limits: limits.clearance_outboard_met_mm,
        lambda limits: limits.unmeasured_shift_most_mm,
    ),
    Side(
        "radial",
        # Say: as in "The wheel needs {length} more room {towards}, which leaves {left}."
        say("towards the wheel arch"),
        # Say: as in "The wheel comes {length} {nearer}."
        say("nearer to the wheel arch"),
        # Say: as in "measure the room {between}".
        say("between wheel and wheel arch"),
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


def millimetres(length: float) -> Amount | Said:
    """Return a length in whole millimetres; what is less than one, to a tenth."""
    if length >= WHOLE_MM:
        return plain(length, 0, "mm")
    if plain(length, 1) == "0":
        return say("less than {length}", length=plain(0.1, 1, "mm"))
    return plain(length, 1, "mm")


def _measured(view: AxleView, side: Side, grade: Grade) -> Said:
    needed, enough, towards = side.needed(view), side.enough(view.limits).value, side.towards
    length = millimetres(abs(needed))
    if grade.outcome == NOT_MET:
        return say(
            "The wheel needs {length} more room {towards}, {lacking} more than there is: it touches.",
            length=length,
            towards=towards,
            lacking=millimetres(-grade.measured),
        )
    if plain(abs(needed), 1) == "0":
        if grade.outcome != ADVISORY:
            return say("The room {towards} does not change.", towards=towards)
        return say(
            "The room {towards} is {room}; {enough} or more is advised.",
            towards=towards,
            room=apart(grade.measured, enough, 0, "mm"),
            enough=plain(enough, 0, "mm"),
        )
    left = apart(grade.measured, enough, 0, "mm") if grade.outcome == ADVISORY else plain(grade.measured, 0, "mm")
    moved = (
        say(
            "The wheel needs {length} more room {towards}, which leaves {left}",
            length=length,
            towards=towards,
            left=left,
        )
        if needed > 0.0
        else say(
            "The wheel needs {length} less room {towards}, which leaves {left}",
            length=length,
            towards=towards,
            left=left,
        )
    )
    if grade.outcome == ADVISORY:
        return say("{moved}; {enough} or more is advised.", moved=moved, enough=plain(enough, 0, "mm"))
    return say("{moved}.", moved=moved)


def _unmeasured(view: AxleView, side: Side, grade: Grade) -> tuple[Said, Remedy | None, Basis]:
    shift, limits = side.shift(view), view.limits
    if grade.outcome == MET:
        within = limits.unmeasured_shift_met_mm
        return _hardly_moved(side, shift, within), None, within.basis
    message = say(
        "The wheel comes {length} {nearer}. The room there was not measured.",
        length=millimetres(shift),
        nearer=side.nearer,
    )
    least = _to_be_measured(view, side)
    enough, most = _up(least), side.unmeasured_most(limits)
    text = say("measure the room {between}: {enough} is enough", between=side.between, enough=enough)
    if grade.outcome == ADVISORY:
        text = say(
            "measure the room {between} before you order: {enough} is enough", between=side.between, enough=enough
        )
        most = limits.unmeasured_shift_met_mm
    return message, _measure(view, side, text, least), most.basis


def _hardly_moved(side: Side, shift: float, within: Limit) -> Said:
    if plain(abs(shift), 1) == "0":
        return say("The room {towards} does not change.", towards=side.towards)
    if shift < 0.0:
        return say(
            "The wheel needs {length} less room {towards} than now.", length=millimetres(-shift), towards=side.towards
        )
    return say(
        "The wheel stays within {length} of the present one {towards}.",
        length=plain(within.value, 0, "mm"),
        towards=side.towards,
    )


def _measure(view: AxleView, side: Side, text: Said, least: float) -> Remedy:
    pointer = f"/vehicle/{view.name}/clearance/{side.name}_mm"
    return Remedy(text, pointer, f"{side.name}_mm", least, unit="mm")


def _to_be_measured(view: AxleView, side: Side) -> float:
    """Return the room that is enough when it is measured to within the tolerance that holds for this axle."""
    return side.needed(view) + side.enough(view.limits).value + view.axle.clearance_tolerance_mm


def _up(length: float) -> Amount:
    return plain(float(ceil(length - LAST_BIT)), 0, "mm")


def _unplaced(view: AxleView, side: Side) -> tuple[Said, Remedy | None]:
    if side.name == "radial":
        return say("The room to the arch cannot be judged without the overall diameters."), diameter_remedy(view)
    lacking = offset_remedy(view)
    if lacking is None:
        return say("The room cannot be judged without the section widths."), width_remedy(view)
    return say("Where the wheel stands is not known without the offset (ET) of both rims."), lacking


def _remedy(view: AxleView, side: Side) -> Remedy:
    enough, needed = side.enough(view.limits).value, side.needed(view)
    if needed <= LAST_BIT:
        least = _to_be_measured(view, side)
        text = say("look for marks of rubbing and measure again: {enough} is enough", enough=_up(least))
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
    text = say("an overall diameter of {size}", size=span(None, most, "mm"))
    return Remedy(text, tyre_pointer(view.name), "overall_diameter_mm", at_most=most, unit="mm")


def _narrower(view: AxleView, spare_mm: float) -> Remedy:
    """Return the width of a tyre for the rim that the car has; the present one is always narrow enough."""
    now = view.now.geometry
    growth = 1.0 + view.limits.service_width_growth_percent.value / 100.0
    most = max((now.widest_mm + 2.0 * spare_mm) / growth, now.section_width_mm)
    text = say("a narrower tyre, its section {width} wide", width=span(None, most, "mm"))
    pointer = f"/candidate/{view.name}/tyre/section_width_mm"
    return Remedy(text, pointer, "section_width_mm", at_most=most, unit="mm")


def _check(side: Side) -> AxleCheck:
    def grade(view: AxleView[Num]) -> Grade[Num]:
        return _grade(view, side)

    def explain(view: AxleView, found: Grade) -> Finding:
        return _explain(view, found, side)

    return AxleCheck(f"clearance.{side.name}", grade, explain)


INBOARD, OUTBOARD, RADIAL = (_check(side) for side in SIDES)
