"""What a section shows of an assessment, as plain lengths; the hub face is the origin, inboard is positive."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.case import Fitment
from service.assessment.view.change import Wheel
from service.assessment.view.estimates import loaded_radius_mm
from service.assessment.view.views import AxleView
from service.core.findings import AxleName
from service.core.numeric import UNKNOWN, known, known_or, unknown
from service.core.saying import Amount, Said, say
from service.core.units import MM_PER_INCH
from service.drawing.lettering import clean
from service.physics.contact_patch import tread_width_mm
from service.physics.wheel_position import rim_overall_width_mm
from service.standards import rim_diameter

AxleChoice = Literal["both", "front", "rear"]
MOST_DESIGNATION = 44
# The tread is narrower than the section; where the designation gives no aspect ratio, by this much (project's choice).
WIDEST_TREAD = 0.96
USUAL_TREAD = 0.84


class MissingNotes(NamedTuple):
    """What is said of a wheel of which something is not known."""

    no_size: Said
    no_ground: Said
    no_offset: Said


PRESENT_NOTES = MissingNotes(
    say("The present tyre is not drawn: its size is not known."),
    say("The ground under the present tyre is not drawn: its loaded radius is not known."),
    say("The present rim states no offset (ET): it is drawn about the other one's centre."),
)
PROPOSED_NOTES = MissingNotes(
    say("The proposed tyre is not drawn: its size is not known."),
    say("The ground under the proposed tyre is not drawn: its loaded radius is not known."),
    say("The proposed rim states no offset (ET): it is drawn about the other one's centre."),
)
TWIN_NOTE = say("Twin wheels: one of the two is drawn, as no rim states its offset (ET).")
PLAIN_HUB_NOTE = say("The bolt circle is not stated: the hub is drawn as a plain line.")
# How far the flange of a hub reaches beyond the centres of its bolts: indicative, its shape is not known.
BEYOND_BOLTS_MM = 16.0
# A hub whose bolts are not stated is a line of this share of the rim's diameter, on both sides of the axis.
PLAIN_HUB_SHARE = 0.15
# No hub is drawn larger than this share of the rim's diameter on both sides of the axis.
LARGEST_HUB_SHARE = 0.4


class WheelShape(NamedTuple):
    """The lengths of one wheel; NaN where not known."""

    tyre: str
    rim: str
    offset_mm: float
    centre_mm: float
    overall_diameter_mm: float
    bead_diameter_mm: float
    section_width_mm: float
    tread_width_mm: float
    rim_diameter_mm: float
    rim_width_mm: float
    loaded_radius_mm: float
    inner_edge_mm: float
    outer_edge_mm: float
    clear_radius_mm: float
    """How far from the axis must be clear; like the edges of a proposed wheel, with the growth that it may have."""
    twin_gap_mm: float
    """Between the two grown tyres of a twin; NaN for a single wheel and where no offset is known."""
    twin: bool = False
    facing: int = 1
    """1 as a wheel is mounted, -1 turned round, as the outer one of a twin."""

    @property
    def has_tyre(self) -> bool:
        """Return whether enough is known to draw the tyre."""
        return self.overall_diameter_mm > self.bead_diameter_mm and self.section_width_mm > 0.0

    @property
    def radius_mm(self) -> float:
        """Return how far the wheel reaches from its axis."""
        return 0.5 * (self.overall_diameter_mm if self.has_tyre else self.rim_diameter_mm)

    @property
    def lowest_mm(self) -> float:
        """Return how far it reaches down: to the ground, where that is known."""
        return known_or(self.loaded_radius_mm, self.radius_mm)

    @property
    def outer(self) -> WheelShape:
        """Return the wheel that is furthest outboard: itself, or the other one of a twin, turned round."""
        return self._replace(centre_mm=-self.centre_mm, facing=-1) if self.twin else self

    @property
    def both(self) -> tuple[tuple[str, WheelShape], ...]:
        """Return the wheel, and with a twin the outer one, with what is added to the names of their lines."""
        return (("", self), ("-outer", self.outer)) if self.twin else (("", self),)

    @property
    def half_outboard_mm(self) -> float:
        """Return half the width that the room outboard is reckoned with."""
        return self.outer_edge_mm + self.outer.centre_mm

    @property
    def half_inboard_mm(self) -> float:
        """Return half the width that the room inboard is reckoned with."""
        return self.inner_edge_mm - self.centre_mm

    def reaches(self) -> Iterator[tuple[float, float]]:
        """Yield pairs of how far it reaches outboard and inboard of the hub face."""
        for width in (self.section_width_mm, rim_overall_width_mm(self.rim_width_mm)):
            if known(width):
                yield 0.5 * width - self.outer.centre_mm, 0.5 * width + self.centre_mm
        if known(self.offset_mm) and known(self.inner_edge_mm):
            yield self.outer_edge_mm, self.inner_edge_mm


class AxleScene(NamedTuple):
    """One axle: both wheels, and the places of strut, wing edge and arch, NaN where no room was given."""

    name: AxleName
    now: WheelShape
    then: WheelShape
    strut_mm: float
    wing_mm: float
    arch_radius_mm: float
    bolt_circle_mm: float
    hub_radius_mm: float
    notes: tuple[Said, ...]

    @property
    def placed(self) -> bool:
        """Return whether the proposed wheel's place at the hub is known."""
        return known(self.then.offset_mm)

    @property
    def lowest_rim_mm(self) -> float:
        """Return the radius of the smaller of both rims: within it there is nothing but hub and disc."""
        return 0.5 * min(self.now.rim_diameter_mm, self.then.rim_diameter_mm)

    @property
    def reach_outboard_mm(self) -> float:
        """Return how far anything reaches outboard of the hub face."""
        return max(0.0, known_or(self.wing_mm, 0.0), *(out for w in (self.now, self.then) for out, _ in w.reaches()))

    @property
    def reach_inboard_mm(self) -> float:
        """Return how far anything reaches inboard of the hub face."""
        return max(0.0, known_or(self.strut_mm, 0.0), *(into for w in (self.now, self.then) for _, into in w.reaches()))

    @property
    def reach_up_mm(self) -> float:
        """Return how far anything reaches above the axis."""
        return max(self.now.radius_mm, self.then.radius_mm, known_or(self.arch_radius_mm, 0.0))

    @property
    def reach_down_mm(self) -> float:
        """Return how far anything reaches below the axis; the dimension of the diameter ends below the ground."""
        return max(self.now.radius_mm, self.then.radius_mm)


def scenes(found: Assessment, axles: AxleChoice) -> list[AxleScene]:
    """Return the scene of each chosen axle."""
    candidate = found.case.candidate
    both = ((found.car.front, candidate.front), (found.car.rear, candidate.rear))
    return [_scene(view, fitment) for view, fitment in both if axles in ("both", view.name)]


def _scene(view: AxleView, proposed: Fitment) -> AxleScene:
    axle, now, then = view.axle, view.now, view.then
    # A wheel without an offset is drawn about the other one's centre: it has to stand somewhere, a note says so.
    centre_now = known_or(now.facts.offset_mm, known_or(then.facts.offset_mm, 0.0))
    centre_then = known_or(then.facts.offset_mm, centre_now)
    shape_now, shape_then = _shape(now, axle.fitted, centre_now), _shape(then, proposed, centre_then)
    stated = known(now.facts.offset_mm) or known(then.facts.offset_mm)
    if axle.wheels_per_side > 1 and stated:
        shape_now, shape_then = shape_now._replace(twin=True), shape_then._replace(twin=True)
    circle = known_or(then.facts.bolt_circle_mm, known_or(now.facts.bolt_circle_mm, UNKNOWN))
    if axle.hub_bolt_circle is not None:
        circle = axle.hub_bolt_circle.diameter_mm
    spacers = _spacers(axle.fitted, proposed)
    return AxleScene(
        view.name,
        shape_now,
        _grown(view, shape_then),
        now.geometry.inner_edge_mm + axle.clearance_inboard_mm,
        now.geometry.outer_edge_mm + axle.clearance_outboard_mm,
        0.5 * now.geometry.overall_diameter_mm + axle.clearance_radial_mm,
        circle,
        _hub_radius_mm(circle, shape_then.rim_diameter_mm),
        (*_notes(shape_now, shape_then), *_of_hub(axle.wheels_per_side, shape_then, circle), *spacers),
    )


def _hub_radius_mm(circle_mm: float, rim_mm: float) -> float:
    return min(known_or(0.5 * circle_mm + BEYOND_BOLTS_MM, PLAIN_HUB_SHARE * rim_mm), LARGEST_HUB_SHARE * rim_mm)


def _shape(wheel: Wheel, fitment: Fitment, centre_mm: float) -> WheelShape:
    facts, shape = wheel.facts, wheel.geometry
    rim_mm = known_or(rim_diameter.nominal_mm(facts.rim_code), facts.rim_code * MM_PER_INCH)
    width = shape.section_width_mm
    tread = tread_width_mm(facts.nominal_width_mm, facts.aspect_percent)
    return WheelShape(
        clean(fitment.tyre.designation.canonical, MOST_DESIGNATION),
        clean(fitment.rim_in_words, MOST_DESIGNATION),
        facts.offset_mm,
        centre_mm,
        shape.overall_diameter_mm,
        facts.rim_diameter_mm,
        width,
        min(known_or(tread, USUAL_TREAD * width), WIDEST_TREAD * width),
        rim_mm,
        facts.rim_width_in * MM_PER_INCH,
        loaded_radius_mm(wheel).value,
        shape.inner_edge_mm,
        shape.outer_edge_mm,
        0.5 * shape.overall_diameter_mm,
        shape.twin_gap_mm,
    )


def _grown(view: AxleView, then: WheelShape) -> WheelShape:
    """Return the proposed wheel with its edges where the findings on room reckon them."""
    now, change = view.now.geometry, view.change
    return then._replace(
        inner_edge_mm=now.inner_edge_mm + change.inboard_edge_mm + change.growth_sideways_mm,
        outer_edge_mm=now.outer_edge_mm + change.outboard_edge_mm + change.growth_sideways_mm,
        clear_radius_mm=0.5 * now.overall_diameter_mm + change.radial_edge_mm + change.growth_radial_mm,
    )


def _spacers(now: Fitment, then: Fitment) -> Iterator[Said]:
    if now.spacer_mm:
        yield say(
            "The present wheel stands on a spacer of {thickness}: its ET is drawn less that.",
            thickness=Amount(now.spacer_mm, "mm", 1),
        )
    if then.spacer_mm:
        yield say(
            "The proposed wheel stands on a spacer of {thickness}: its ET is drawn less that.",
            thickness=Amount(then.spacer_mm, "mm", 1),
        )


def _of_hub(wheels_per_side: int, then: WheelShape, circle_mm: float) -> Iterator[Said]:
    if wheels_per_side > 1 and not then.twin:
        yield TWIN_NOTE
    if known(then.offset_mm) and unknown(circle_mm):
        yield PLAIN_HUB_NOTE


def _notes(now: WheelShape, then: WheelShape) -> Iterator[Said]:
    for wheel, words in ((now, PRESENT_NOTES), (then, PROPOSED_NOTES)):
        if not wheel.has_tyre:
            yield words.no_size
        elif unknown(wheel.loaded_radius_mm):
            yield words.no_ground
        if unknown(wheel.offset_mm):
            yield words.no_offset
