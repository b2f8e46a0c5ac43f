"""What undoes a shift of balance or a weaker wet reserve without a new fault: to leave one axle as it is.

A size that would settle it is for load, rim, room and law to allow as well, so none is named. The present wheels of one
axle are, and on a car that has the same wheels all round those of the other axle: they are tried as a candidate, and
named only where they settle the finding and make nothing worse.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from typing import Literal, NamedTuple

from service.assessment.answer.every_question import graded
from service.assessment.case import Axle, Case, Fitment
from service.assessment.checks import CAR_CHECKS
from service.assessment.checks.grade import Place
from service.assessment.view.axle_view import with_wheel
from service.assessment.view.facts import rim_facts, wheel_facts
from service.assessment.view.views import CarView, car_view
from service.assessment.view.wheel_facts import SAME_BORE_MM, SAME_CIRCLE_MM, RimFacts
from service.core.findings import ADVISORY, MET, OPEN, AxleName, Finding, Holds, Remedy, Where
from service.core.numeric import Num, known, magnitude
from service.core.saying import say

ASKING = ("balance.change", "balance.grip_order", "wet.reserve", "wet.axle_order", "wet.aquaplaning")
# Where these speak too, the axle that is kept must settle them, since they name another change of one axle.
BETWEEN_AXLES = (
    "diameter.axle_ratio",
    "tyre.tread_difference",
    "tyre.season_mix",
    "tyre.run_flat_mix",
    "tyre.structure",
    "law.winter_tyre",
)
# Wheels of the other axle are named only where nothing is left to measure for them: what is read or measured for the
# proposed ones need not be enough for them.
MEASURED = (
    "rim.bolt_circle",
    "rim.centre_bore",
    "rim.brake_clearance",
    "clearance.inboard",
    "clearance.outboard",
    "clearance.radial",
)
QUANTITY = "fitment"
# Questions to the whole car, some of which speak of one axle.
_OF_THE_CAR = frozenset(check.code for check in CAR_CHECKS)
AXLES: tuple[AxleName, ...] = ("front", "rear")


class Way(NamedTuple):
    """One axle, and whose wheels it gets: its present ones, or those that are proposed for the other axle."""

    axle: AxleName
    wheels: AxleName | Literal["present"]

    def must_stand(self, code: str, where: Where) -> bool:
        """Return whether a question must leave nothing to measure."""
        return self.wheels != "present" and where == self.axle and code in MEASURED

    @property
    def remedy(self) -> Remedy:
        """Return this way as the remedy of what it settles."""
        at_front = self.axle == "front"
        if self.wheels == "present":
            text = say("keep the present front wheels") if at_front else say("keep the present rear wheels")
        elif at_front:
            text = say("fit the proposed rear wheels on the front axle too")
        else:
            text = say("fit the proposed front wheels on the rear axle too")
        return Remedy(text, f"/candidate/{self.axle}", QUANTITY, equals=self.wheels)


def ways(case: Case) -> list[Way]:
    """Return the ways to try, the first that serves is taken."""
    front, rear = case.vehicle.front, case.vehicle.rear
    found = [Way(axle, "present") for axle in AXLES]
    if not _take_the_same(front, rear):
        return found
    # What is read on a wheel and is enough for one axle is enough for one that weighs no more.
    if rear.max_axle_mass_kg <= front.max_axle_mass_kg:
        found.append(Way("rear", "front"))
    if front.max_axle_mass_kg <= rear.max_axle_mass_kg:
        found.append(Way("front", "rear"))
    return found


def on_unlike_hubs(front: RimFacts[Num], rear: RimFacts[Num]) -> Holds:
    """Return whether two rims belong on different hubs by what is stated of them; floats or arrays alike."""
    differs = magnitude(front.bolt_circle_mm - rear.bolt_circle_mm) > SAME_CIRCLE_MM
    differs = differs | (magnitude(front.bolts - rear.bolts) > 0.0)
    return differs | (magnitude(front.centre_bore_mm - rear.centre_bore_mm) > SAME_BORE_MM)


def _take_the_same(front: Axle, rear: Axle) -> bool:
    """Return whether both axles have the same wheels today, on hubs of which the same is known."""
    bores = front.hub_centre_bore_mm, rear.hub_centre_bore_mm
    return (
        _alike(front.fitted, rear.fitted)
        and front.wheels_per_side == rear.wheels_per_side
        and front.hub_bolt_circle == rear.hub_bolt_circle
        and (bores[0] == bores[1] or not any(map(known, bores)))
    )


class Cars(NamedTuple):
    """A car with what is proposed, and with what it has today."""

    proposed: CarView
    today: CarView


def with_kept_axle(case: Case, cars: Cars, findings: Sequence[Finding], shown: int = ADVISORY) -> list[Finding]:
    """Return the findings, worst first, those of balance and wet road with the axle to keep where that settles them.

    Nothing is tried where all that it could settle is milder than `shown`.
    """
    said = [each for each in findings if each.outcome >= ADVISORY]
    asking = [each for each in said if each.code in ASKING and not each.already]
    between = [each for each in said if each.code in BETWEEN_AXLES]
    if not asking or all(each.outcome < shown for each in (*asking, *between)):
        return list(findings)
    wanted = {_place(each) for each in (asking[0], *between)}
    for way in _open_ways(case):
        met = _settled(case, _car(case, cars, way), way, wanted, findings)
        if met is not None:
            break
    else:
        return list(findings)
    told = {_place(each) for each in (*asking, *between)} & met
    return [each._replace(remedy=way.remedy) if _place(each) in told else each for each in findings]


def _place(finding: Finding) -> Place:
    return finding.code, finding.axle


def _open_ways(case: Case) -> Iterator[Way]:
    """Yield the ways that change something and put no wheel on another's hub."""
    for way in ways(case):
        wheels = _wheels(case, way)
        # What is on the axle anyway differs in its pressure at most, which is for the job card alone to say.
        if _alike(wheels, getattr(case.candidate, way.axle)):
            continue
        front, rear = rim_facts(case.candidate.front.rim), rim_facts(case.candidate.rear.rim)
        if way.wheels != "present" and on_unlike_hubs(front, rear):
            continue
        yield way


def has_present(axle: Axle, proposed: Fitment) -> bool:
    """Return whether an axle keeps its tyre and rim anyway: its pressure is for the job card alone to say."""
    return _alike(axle.fitted, proposed)


def _wheels(case: Case, way: Way) -> Fitment:
    if way.wheels == "present":
        fitted: Fitment = getattr(case.vehicle, way.axle).fitted
        return fitted
    return case.candidate.front if way.wheels == "front" else case.candidate.rear


def _car(case: Case, cars: Cars, way: Way) -> CarView:
    """Return the car with the wheels of this way on one axle, on the other what is proposed."""
    proposed, today = cars
    front, rear = proposed.front, proposed.rear
    if way.wheels == "present":
        kept = today.front if way.axle == "front" else today.rear
    else:
        facts = wheel_facts(_wheels(case, way), getattr(case.vehicle, way.axle), *_speeds(case, proposed))
        kept = with_wheel(front if way.axle == "front" else rear, facts)
    return car_view(case.vehicle, *((kept, rear) if way.axle == "front" else (front, kept)))


def _speeds(case: Case, car: CarView) -> tuple[float, float]:
    return case.vehicle.max_speed_kmh, car.front.conditions.law_speed_kmh


def _alike(one: Fitment, other: Fitment) -> bool:
    """Return whether tyre and rim have the same designations and stand alike."""
    now, then = ((each.tyre.designation, each.rim.designation, each.spacer_mm) for each in (one, other))
    return now == then


def _settled(
    case: Case, car: CarView, way: Way, wanted: Container[Place], findings: Sequence[Finding]
) -> set[Place] | None:
    """Return what is met with this car; None where what is wanted is not, or any outcome is worse than it may be."""
    if any(grade.outcome != MET for code, where, grade in graded(case, car, wanted) if (code, where) in wanted):
        return None
    most = findings[0].outcome
    # What was asked of the other axle alone comes out as it did.
    known_already = {_place(each): each.outcome for each in findings if _is_of_another(each, way)}
    asked = graded(case, car, _AllBut(known_already))
    outcomes = known_already | {(code, where): grade.outcome for code, where, grade in asked}
    for (code, where), outcome in outcomes.items():
        if outcome > (min(most, OPEN) if way.must_stand(code, where) else most):
            return None
    return {place for place, outcome in outcomes.items() if outcome == MET}


class _AllBut:
    """All questions but these."""

    def __init__(self, these: Mapping[Place, int]) -> None:
        self._these = these

    def __contains__(self, place: object) -> bool:
        """Return whether a question is none of them."""
        return place not in self._these


def _is_of_another(finding: Finding, way: Way) -> bool:
    """Return whether a finding speaks of the axle that this way leaves as proposed, and of no more."""
    return finding.axle not in (way.axle, "vehicle") and finding.code not in _OF_THE_CAR
