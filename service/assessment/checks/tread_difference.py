"""Are new tyres kept apart from worn ones, and is the deeper pair at the rear?

Everything else compares new with new, so what wear does to two axles is said here and nowhere else.
"""

from __future__ import annotations

from service.assessment.checks.axle_ratio import NOT_DRIVEN
from service.assessment.checks.grade import LAST_BIT, CarCheck, Grade
from service.assessment.checks.words import apart, plain, span
from service.assessment.view.change import Wheel
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, magnitude, pick, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import basis
from service.rules.limits import Limits

DEEPER_BEHIND = basis("COMMON-PRACTICE", "the deeper pair goes to the rear")


def _depths(front: Wheel[Num], rear: Wheel[Num]) -> tuple[Num, Num]:
    """Return the tread depths [mm], that of a new tyre where none is given."""
    return (
        known_or(front.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM),
        known_or(rear.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM),
    )


def _share_percent(limits: Limits, front: Wheel[Num], rear: Wheel[Num]) -> Num:
    """Return by how much wear sets the diameters apart [%]; nothing where both are worn alike, whatever their size."""
    one, other = _depths(front, rear)
    worn = limits.diameter_per_tread_depth.value * magnitude(one - other)
    return pick(one == other, worn, 100.0 * worn / front.geometry.overall_diameter_mm)


def _strains(car: CarView[Num]) -> bool:
    """Return whether unlike diameters may strain a drive: all wheels are driven, or nobody says which."""
    return car.vehicle.driven_axle in ("all", None)


def _grade(car: CarView[Num]) -> Grade[Num]:
    limits, (front, rear) = car.limits, _depths(car.front.then, car.rear.then)
    near = limits.axle_ratio_met_percent.value
    if car.vehicle.is_trailer:
        return Grade(MET, UNKNOWN, UNKNOWN)
    deeper_front = front - rear > limits.tread_deeper_front_met_mm.value + LAST_BIT
    if not _strains(car):
        return Grade(worst(advisory=deeper_front), front - rear, limits.tread_deeper_front_met_mm.value)
    share = _share_percent(car.limits, car.front.then, car.rear.then)
    # What the car has today is no reason against a change that keeps it.
    worse = share > known_or(_share_percent(car.limits, car.front.now, car.rear.now), 0.0) + LAST_BIT
    far = share > limits.axle_ratio_advisory_percent.value + LAST_BIT
    outcome = worst(
        not_recommended=far & worse & (car.vehicle.driven_axle == "all"),
        open_question=unknown(share),
        advisory=(share > near + LAST_BIT) | deeper_front,
    )
    return Grade(outcome, share, near)


def _explain(car: CarView, grade: Grade) -> Finding:
    limits, (front, rear) = car.limits, _depths(car.front.then, car.rear.then)
    rests, code = limits.axle_ratio_met_percent.basis, "tyre.tread_difference"
    if car.vehicle.is_trailer:
        return Finding(code, "vehicle", MET, NOT_DRIVEN, None, None, None, rests)
    depths = say(
        "The tyres have {front} of tread in front and {rear} at the rear.",
        front=plain(front, 1, "mm"),
        rear=plain(rear, 1, "mm"),
    )
    uneven = _strains(car) and grade.measured > limits.axle_ratio_met_percent.value + LAST_BIT
    remedy: Remedy | None = None
    if unknown(grade.measured):
        message = sentences(depths, say("What that makes of the diameters is not known."))
        remedy = _remedy(car.front if front < rear else car.rear, max(front, rear), None)
    elif grade.outcome == MET:
        message = depths
        if front == rear:
            message = say("All tyres have {depth} of tread.", depth=plain(front, 1, "mm"))
        if unknown(car.front.then.facts.tread_depth_mm) and unknown(car.rear.then.facts.tread_depth_mm):
            message = say("Both axles are taken to have new tyres.")
    else:
        message = sentences(depths, _reason(car, grade, uneven=uneven))
        remedy = _uneven_remedy(car, front, rear) if uneven else _deeper_remedy(car, front)
    unit = "%" if _strains(car) else "mm"
    measured = grade.measured if known(grade.measured) else None
    basis_of = rests if _strains(car) else DEEPER_BEHIND
    return Finding(code, "vehicle", grade.outcome, message, measured, grade.limit, unit, basis_of, remedy)


def _reason(car: CarView, grade: Grade, *, uneven: bool) -> Said:
    if not uneven:
        return say("The deeper pair belongs to the rear, so that the front floats first in the wet.")
    share = apart(grade.measured, grade.limit, 1, "%")
    if grade.outcome == ADVISORY and car.vehicle.driven_axle is None:
        return say(
            "Wear alone sets the diameters apart by {share}, which strains all-wheel drive where the car has it.",
            share=share,
        )
    return say("Wear alone sets the diameters apart by {share}, which strains the all-wheel drive.", share=share)


def _uneven_remedy(car: CarView, front: float, rear: float) -> Remedy:
    """Return the depth of the shallower pair that is near enough; a front pair is not to be the deeper one."""
    limits = car.limits
    outer = car.front.then.geometry.overall_diameter_mm
    room = limits.axle_ratio_met_percent.value / 100.0 * outer / limits.diameter_per_tread_depth.value
    deeper_front = limits.tread_deeper_front_met_mm.value
    if front < rear:
        return _remedy(car.front, rear - room, rear + min(room, deeper_front))
    return _remedy(car.rear, front - min(room, deeper_front), front + room)


def _deeper_remedy(car: CarView, front: float) -> Remedy:
    told = _remedy(car.rear, front - car.limits.tread_deeper_front_met_mm.value, None)
    facts, other = car.front.then.facts, car.rear.then.facts
    if (facts.nominal_width_mm, facts.rim_width_in) == (other.nominal_width_mm, other.rim_width_in):
        return told._replace(text=say("put the deeper pair at the rear"))
    return told


def _remedy(view: AxleView, least_mm: float, most_mm: float | None) -> Remedy:
    least = max(least_mm, 0.0)
    depth, at_front = span(least, most_mm, "mm", 1), view.name == "front"
    if most_mm is not None and least <= NEW_TREAD_DEPTH_MM <= most_mm:
        text = (
            say("fit new tyres at the front too, or ones with {depth} of tread", depth=depth)
            if at_front
            else say("fit new tyres at the rear too, or ones with {depth} of tread", depth=depth)
        )
    elif at_front:
        text = say("fit front tyres with {depth} of tread", depth=depth)
    else:
        text = say("fit rear tyres with {depth} of tread", depth=depth)
    return Remedy(text, f"/candidate/{view.name}/tyre/tread_depth_mm", "tread_depth_mm", least, most_mm, unit="mm")


DIFFERENCE = CarCheck("tyre.tread_difference", _grade, _explain)
