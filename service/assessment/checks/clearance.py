"""How much room is left to the strut, to the wing and to the arch?

The shift of an edge is computed with the wider of tyre and rim and the tyre's growth in service. A wheel that needs
no more room than the present one passes without a measurement.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.missing import diameter_remedy, offset_remedy, width_remedy
from service.assessment.checks.words import apart, plain, rim_pointer, span
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, known, known_or, pick, unknown
from service.rules.limits import Limit, Limits

# Below this a length is told in tenths.
WHOLE_MM = 0.95


class Side(NamedTuple):
    """One direction in which a wheel may touch."""

    name: str
    towards: str
    shift: Callable[[AxleView], float]
    room: Callable[[AxleView], float]
    enough: Callable[[Limits], Limit]


SIDES = (
    Side(
        "inboard",
        "strut",
        lambda view: view.change.inboard_edge_mm,
        lambda view: view.axle.clearance_inboard_mm,
        lambda limits: limits.clearance_inboard_met_mm,
    ),
    Side(
        "outboard",
        "wing edge",
        lambda view: view.change.outboard_edge_mm,
        lambda view: view.axle.clearance_outboard_mm,
        lambda limits: limits.clearance_outboard_met_mm,
    ),
    Side(
        "radial",
        "wheel arch",
        lambda view: view.change.radial_edge_mm,
        lambda view: view.axle.clearance_radial_mm,
        lambda limits: limits.clearance_radial_met_mm,
    ),
)


def _grade(view: AxleView, side: Side) -> Grade:
    shift, room = side.shift(view), side.room(view)
    left = room - shift
    least, enough = view.limits.clearance_least_mm.value, side.enough(view.limits).value
    # Room that was already scarce and does not shrink is the vehicle's own affair.
    grows = shift > 0.0
    outcome = worst(
        not_met=grows & (left < least - LAST_BIT),
        open_question=(grows & unknown(left)) | unknown(shift),
        advisory=grows & (left < enough - LAST_BIT),
    )
    limit = pick(outcome == NOT_MET, least, enough)
    return Grade(outcome, known_or(left, shift), pick(known(left), limit, UNKNOWN))


def _explain(view: AxleView, grade: Grade, side: Side) -> Finding:
    enough, shift = side.enough(view.limits), side.shift(view)
    limit = view.limits.clearance_least_mm if grade.outcome == NOT_MET else enough
    way = "more" if shift > 0.0 else "less"
    moved = f"The wheel needs {millimetres(abs(shift))} {way} room towards the {side.towards}"
    remedy = None
    if unknown(shift):
        message, remedy = _unplaced(view, side)
    elif is_open(grade.outcome):
        field = f"vehicle.{view.name}.clearance.{side.name}_mm"
        message = f"{moved}; how much there is was not measured."
        least = shift + enough.value
        text = f"measure {field}; {span(least, None, 'mm')} is enough"
        remedy = Remedy(text, f"/{field.replace('.', '/')}", f"{side.name}_mm", least, unit="mm")
    elif grade.outcome == MET and plain(abs(shift), 1) == "0":
        message = f"The room towards the {side.towards} does not change."
    elif grade.outcome == MET and unknown(grade.limit):
        message = f"{moved} than now."
    elif grade.outcome == NOT_MET:
        message = f"{moved}, {millimetres(-grade.measured)} more than there is: it touches."
        remedy = _remedy(view, side, enough.value)
    elif grade.outcome == ADVISORY:
        left = apart(grade.measured, enough.value)
        message = f"{moved}, which leaves {left} mm; {plain(enough.value)} mm or more is advised."
        remedy = _remedy(view, side, enough.value)
    else:
        message = f"{moved}, which leaves {plain(grade.measured)} mm."
    code = f"clearance.{side.name}"
    shown = None if unknown(grade.limit) else limit.value
    return Finding(code, view.name, grade.outcome, message, finite(grade.measured), shown, "mm", limit.basis, remedy)


def millimetres(length: float) -> str:
    """Return a length in whole millimetres; what is less than one, to a tenth."""
    if length >= WHOLE_MM:
        return f"{plain(length)} mm"
    tenths = plain(length, 1)
    return "less than 0.1 mm" if tenths == "0" else f"{tenths} mm"


def _unplaced(view: AxleView, side: Side) -> tuple[str, Remedy | None]:
    if side.name == "radial":
        return "The room to the arch cannot be judged without the overall diameters.", diameter_remedy(view)
    lacking = offset_remedy(view)
    if lacking is None:
        return "The room cannot be judged without the section widths.", width_remedy(view)
    return "Where the wheel stands is not known: a rim states no offset (ET).", lacking


def _remedy(view: AxleView, side: Side, enough_mm: float) -> Remedy:
    lacking = enough_mm - (side.room(view) - side.shift(view))
    if side.name == "radial":
        most = view.then.geometry.overall_diameter_mm - 2.0 * lacking
        return Remedy(
            f"an overall diameter of {span(None, most, 'mm')}",
            f"/candidate/{view.name}/tyre/size",
            "overall_diameter_mm",
            at_most=most,
            unit="mm",
        )
    offset = view.then.facts.offset_mm
    low, high = offset_window_mm(view)
    if low <= high:
        return Remedy(f"ET {span(low, high, '')}", rim_pointer(view.name), "offset_mm", low, high, unit="mm")
    no_room = f"a narrower wheel, since no offset leaves enough on both sides; for the {side.towards} alone ET"
    if side.name == "inboard" or view.axle.wheels_per_side > 1:
        text = f"{no_room} {span(None, offset - lacking, '')}"
        return Remedy(text, rim_pointer(view.name), "offset_mm", at_most=offset - lacking, unit="mm")
    text = f"{no_room} {span(offset + lacking, None, '')}"
    return Remedy(text, rim_pointer(view.name), "offset_mm", offset + lacking, unit="mm")


def offset_window_mm(view: AxleView) -> tuple[float, float]:
    """Return the least and the greatest offset that leave enough room on both sides; least above greatest: none does.

    A side whose room was not measured, or that needs no more than now, sets no bound of its own beyond that.
    """
    offset, limits = view.then.facts.offset_mm, view.limits
    ends = []
    for side in SIDES[:2]:
        spare = side.room(view) - side.shift(view) - side.enough(limits).value
        # Standing no further than the present wheel is always enough.
        ends.append(max(spare, -side.shift(view)) if known(spare) else -side.shift(view))
    inboard, outboard = ends
    if view.axle.wheels_per_side > 1:
        # Both edges of a twin move out with the offset, and the two tyres come together without it.
        together = view.then.geometry.twin_gap_mm - limits.clearance_twin_met_mm.value
        return offset - 0.5 * together, offset + min(inboard, outboard)
    return offset - outboard, offset + inboard


def _check(side: Side) -> Check[AxleView]:
    def grade(view: AxleView) -> Grade:
        return _grade(view, side)

    def explain(view: AxleView, found: Grade) -> Finding:
        return _explain(view, found, side)

    return Check(f"clearance.{side.name}", grade, explain)


INBOARD, OUTBOARD, RADIAL = (_check(side) for side in SIDES)
