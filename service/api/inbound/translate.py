"""From the wire to the domain: a request that was validated becomes a case, without a second look at it."""

from __future__ import annotations

from service.api.schemas import request as wire
from service.api.schemas.base import read_as
from service.api.schemas.rims import RimsRequest
from service.api.schemas.search import SearchRequest
from service.assessment.answer.as_present import as_present
from service.assessment.batch.rim_search import RimsAsked, TyrePair
from service.assessment.batch.search_axle import AxleLimits
from service.assessment.batch.size_search import Wanted
from service.assessment.case import Axle, Candidate, Case, Fitment, Measured, Rim, Tyre, TyreLabel, Vehicle
from service.core.errors import DomainError
from service.core.findings import AxleName
from service.core.numeric import UNKNOWN
from service.core.saying import say
from service.designation.bolt_circle import parse_bolt_circle
from service.rules.reader import pack_named

_MEASURED = frozenset(
    {
        "overall_diameter_mm",
        "section_width_mm",
        "rolling_circumference_mm",
        "approved_rim_widths_in",
        "reference_pressure_kpa",
        "mass_kg",
    }
)


def tyre(asked: wire.Tyre) -> Tyre:
    """Return the tyre of a request."""
    measured = None
    if not _MEASURED.isdisjoint(asked.model_fields_set):
        measured = Measured(
            overall_diameter_mm=asked.overall_diameter_mm,
            # Without a designation it is the nominal width, and nothing measured.
            section_width_mm=asked.section_width_mm if asked.size else UNKNOWN,
            rolling_circumference_mm=asked.rolling_circumference_mm,
            approved_min_in=asked.approved_rim_widths_in.min,
            approved_max_in=asked.approved_rim_widths_in.max,
            reference_pressure_kpa=asked.reference_pressure_kpa,
            mass_kg=asked.mass_kg,
        )
    label = None
    if "label" in asked.model_fields_set:
        label = TyreLabel(
            rolling_resistance_class=asked.label.rolling_resistance_class,
            wet_grip_class=asked.label.wet_grip_class,
            noise_db=asked.label.noise_db,
        )
    return Tyre(asked.designation(), tread_depth_mm=asked.tread_depth_mm, measured=measured, label=label)


def rim(asked: wire.Rim) -> Rim:
    """Return the rim of a request."""
    circle = read_as(asked.bolt_circle, parse_bolt_circle) if asked.bolt_circle else None
    return Rim(
        asked.designation(),
        bolt_circle=circle,
        centre_bore_mm=asked.centre_bore_mm,
        load_rating_kg=asked.load_rating_kg,
        mass_kg=asked.mass_kg,
    )


def fitment(asked: wire.Fitment) -> Fitment:
    """Return tyre, rim and pressure of one axle."""
    return Fitment(tyre(asked.tyre), rim(asked.rim), asked.pressure_kpa, asked.spacer_mm)


def axle(name: AxleName, asked: wire.Axle) -> Axle:
    """Return one axle of the vehicle."""
    hub, room = asked.hub, asked.clearance
    _refuse_spaced_twins(asked.fitted, asked.wheels_per_side, f"/vehicle/{name}/fitted")
    return Axle(
        name=name,
        max_axle_mass_kg=asked.max_axle_mass_kg,
        fitted=fitment(asked.fitted),
        kerb_axle_mass_kg=asked.kerb_axle_mass_kg,
        track_mm=asked.track_mm,
        wheels_per_side=asked.wheels_per_side,
        hub_bolt_circle=read_as(hub.bolt_circle, parse_bolt_circle) if hub.bolt_circle else None,
        hub_centre_bore_mm=hub.centre_bore_mm,
        clearance_inboard_mm=room.inboard_mm,
        clearance_outboard_mm=room.outboard_mm,
        clearance_radial_mm=room.radial_mm,
        min_rim_diameter_in=asked.min_rim_diameter_in,
        clearance_tolerance_mm=room.tolerance_mm,
        track_tolerance_mm=asked.track_tolerance_mm,
    )


def vehicle(asked: wire.Vehicle) -> Vehicle:
    """Return the vehicle of a request."""
    return Vehicle(
        max_speed_kmh=asked.max_speed_kmh,
        front=axle("front", asked.front),
        rear=axle("rear", asked.rear),
        category=asked.category,
        driven_axle=asked.driven_axle,
        wheelbase_mm=asked.wheelbase_mm,
        centre_of_gravity_height_mm=asked.centre_of_gravity_height_mm,
        displayed_kmh=asked.speedometer.displayed_kmh,
        true_kmh=asked.speedometer.true_kmh,
        built=asked.built or None,
        max_mass_kg=asked.max_mass_kg,
        seats_standing=asked.seats_standing,
        speed_limited_kmh=asked.speed_limited_kmh,
        towing=asked.towing,
        speedometer_tolerance_percent=asked.speedometer.tolerance_percent,
    )


class SpacedTwins(DomainError):
    """A spacer where it is not reckoned with."""

    code = "out_of_scope"

    def __init__(self, pointer: str) -> None:
        super().__init__(
            say("Spacers are not reckoned with on an axle with twin wheels: leave the field out."), pointer
        )


def _refuse_spaced_twins(asked: wire.Fitment, wheels_per_side: int, pointer: str) -> None:
    if asked.spacer_mm and wheels_per_side > 1:
        raise SpacedTwins(f"{pointer}/spacer_mm")


def candidate(asked: wire.Candidate, vehicle: Vehicle) -> Candidate:
    """Return the candidate of a request; an axle that is left out stays as it is.

    Raises
    ------
    SpacedTwins
        With a pointer from the candidate on.
    """
    front, rear = vehicle.front.fitted, vehicle.rear.fitted
    if "front" in asked.model_fields_set:
        _refuse_spaced_twins(asked.front, vehicle.front.wheels_per_side, "/front")
        front = fitment(asked.front)
    if "rear" in asked.model_fields_set:
        _refuse_spaced_twins(asked.rear, vehicle.rear.wheels_per_side, "/rear")
        rear = fitment(asked.rear)
    return Candidate(front, rear, asked.label, asked.id)


def case(asked: wire.CheckRequest) -> Case:
    """Return the case that a check asks about."""
    asked_of = vehicle(asked.vehicle)
    try:
        return _case(asked, asked_of, candidate(asked.candidate, asked_of))
    except SpacedTwins as error:
        raise error.at(f"/candidate{error.pointer}") from None


def question(asked: wire.FitmentRequest) -> Case:
    """Return the case of a question about many candidates: in their stead stands the present fitment."""
    asked_of = vehicle(asked.vehicle)
    return _case(asked, asked_of, Candidate(asked_of.front.fitted, asked_of.rear.fitted))


def _case(asked: wire.FitmentRequest, asked_of: Vehicle, proposed: Candidate) -> Case:
    return as_present(
        Case(
            asked_of,
            proposed,
            pack_named(asked.rule_pack),
            asked.season,
            asked.date or None,
            asked.tyre_tolerance,
        )
    )


def wanted(asked: SearchRequest) -> Wanted:
    """Return what a search asks of the sizes."""
    limits = asked.limits
    return Wanted(
        AxleLimits(
            limits.overall_diameter_percent,
            limits.min_section_width_mm,
            limits.max_section_width_mm,
            limits.load_margin_percent,
            limits.room_mm,
        ),
        limits.stagger,
        limits.axle_ratio_percent,
        limits.balance_deg_per_g,
        limits.mixed,
        tuple(asked.verdicts),
        asked.rank_by,
        asked.max_results,
    )


def rims_asked(asked: RimsRequest) -> RimsAsked:
    """Return the tyres that rims are asked for."""
    tyres = asked.tyres
    return RimsAsked(
        tuple(map(tyre, tyres.front)),
        tuple(map(tyre, tyres.rear)),
        tuple(
            TyrePair(
                tyre(each.front) if "front" in each.model_fields_set else None,
                tyre(each.rear) if "rear" in each.model_fields_set else None,
                each.label,
            )
            for each in asked.combinations
        ),
    )
