"""The case to assess as plain data: vehicle, axles, tyres, rims, fitments.

A number that the caller did not give is NaN (`core.numeric.UNKNOWN`), a text None. Named tuples, because a dozen
of them are made for every request.
"""

from __future__ import annotations

from typing import Generic, Literal, NamedTuple

from service.core.findings import AxleName
from service.core.numeric import UNKNOWN, Num, Num_co, known_or, larger
from service.core.ranges import AXLE_MASS_KG, SPEED_KMH
from service.core.saying import Amount, say
from service.designation.bolt_circle import BoltCircle
from service.designation.rim import RimDesignation
from service.designation.tyre import TyreDesignation
from service.physics.tyre_label import LabelClass
from service.rules.pack import RulePack

DrivenAxle = Literal["front", "rear", "all"]
Season = Literal["summer", "winter"]
TyreTolerance = Literal["design", "standard"]


class Measured(NamedTuple):
    """What the maker's data or a measurement say of a tyre; each replaces the computed value."""

    overall_diameter_mm: float = UNKNOWN
    section_width_mm: float = UNKNOWN
    rolling_circumference_mm: float = UNKNOWN
    approved_min_in: float = UNKNOWN
    approved_max_in: float = UNKNOWN
    reference_pressure_kpa: float = UNKNOWN
    mass_kg: float = UNKNOWN


class TyreLabel(NamedTuple):
    """The classes of a tyre's label; None or NaN: not given."""

    rolling_resistance_class: LabelClass | None = None
    wet_grip_class: LabelClass | None = None
    noise_db: float = UNKNOWN


class Tyre(NamedTuple):
    """One tyre: its designation, its tread depth, and what was measured of it (None: nothing)."""

    designation: TyreDesignation
    tread_depth_mm: float = UNKNOWN
    measured: Measured | None = None
    label: TyreLabel | None = None


class Rim(NamedTuple):
    """One wheel's rim and disc."""

    designation: RimDesignation
    bolt_circle: BoltCircle | None = None
    centre_bore_mm: float = UNKNOWN
    load_rating_kg: float = UNKNOWN
    mass_kg: float = UNKNOWN


class Fitment(NamedTuple):
    """Tyre, rim and cold pressure of one axle."""

    tyre: Tyre
    rim: Rim
    pressure_kpa: float = UNKNOWN
    spacer_mm: float = 0.0
    """Between hub and wheel; it moves the wheel out by its thickness."""

    @property
    def rim_in_words(self) -> str:
        """Return the rim's designation, and its spacer where it has one."""
        rim = self.rim.designation.canonical
        if not self.spacer_mm:
            return rim
        return say("{rim}, {thickness} spacer", rim=rim, thickness=Amount(self.spacer_mm, "mm", 2))


def _sure_room_mm(measured_mm: Num, tolerance_mm: Num) -> Num:
    none: Num = 0.0
    # The present wheel turns, so there is no less room than none.
    return larger(measured_mm - tolerance_mm, none)


class Axle(NamedTuple, Generic[Num_co]):
    """One axle of the vehicle with what is fitted now; of many vehicles the numbers are arrays."""

    name: AxleName
    max_axle_mass_kg: Num_co
    fitted: Fitment
    kerb_axle_mass_kg: Num_co = UNKNOWN
    track_mm: Num_co = UNKNOWN
    wheels_per_side: int = 1
    hub_bolt_circle: BoltCircle | None = None
    hub_centre_bore_mm: Num_co = UNKNOWN
    clearance_inboard_mm: Num_co = UNKNOWN
    clearance_outboard_mm: Num_co = UNKNOWN
    clearance_radial_mm: Num_co = UNKNOWN
    min_rim_diameter_in: Num_co = UNKNOWN
    clearance_tolerance_mm: Num_co = 0.0
    """To within how much each room was measured; a tolerance of 0 stands for a number that is taken as exact."""
    track_tolerance_mm: Num_co = 0.0
    mass_assumed: bool = False
    """Whether nobody gave the maximum mass: then it is the most for which the present fitment is right."""
    todays_mass_kg: Num_co = UNKNOWN
    """What the present tyres carry at today's pressure; only where mass or top speed is assumed."""

    @property
    def mass_unbounded(self) -> bool:
        """Return whether neither the caller nor the present wheels tell of the maximum mass."""
        return self.mass_assumed and bool(self.max_axle_mass_kg == AXLE_MASS_KG[1])

    @property
    def sure_inboard_mm(self) -> Num_co:
        """Return the room to the strut that is there at the worse end of its tolerance."""
        return _sure_room_mm(self.clearance_inboard_mm, self.clearance_tolerance_mm)

    @property
    def sure_outboard_mm(self) -> Num_co:
        """Return the same to the edge of the wing."""
        return _sure_room_mm(self.clearance_outboard_mm, self.clearance_tolerance_mm)

    @property
    def sure_radial_mm(self) -> Num_co:
        """Return the same to the arch."""
        return _sure_room_mm(self.clearance_radial_mm, self.clearance_tolerance_mm)

    @property
    def sure_track_mm(self) -> Num_co:
        """Return the track at the end of its tolerance where a change is the greater share of it."""
        return self.track_mm - self.track_tolerance_mm

    @property
    def tyres(self) -> int:
        """Return how many tyres the axle has."""
        return 2 * self.wheels_per_side

    @property
    def estimate_mass_kg(self) -> Num_co:
        """Return the axle mass for estimates of behaviour: kerb mass where given, else the maximum."""
        if self.mass_unbounded:
            return self.kerb_axle_mass_kg
        return known_or(self.kerb_axle_mass_kg, self.max_axle_mass_kg)


class Vehicle(NamedTuple, Generic[Num_co]):
    """The vehicle; the fields after `rear` are facts that only some rules need (None or NaN: not given).

    What decides which rules apply is one value, also where the other numbers are arrays of many vehicles.
    """

    max_speed_kmh: Num_co
    front: Axle[Num_co]
    rear: Axle[Num_co]
    category: str = "M1"
    driven_axle: DrivenAxle | None = None
    wheelbase_mm: Num_co = UNKNOWN
    centre_of_gravity_height_mm: Num_co = UNKNOWN
    displayed_kmh: Num_co = UNKNOWN
    true_kmh: Num_co = UNKNOWN
    built: str | None = None
    max_mass_kg: float = UNKNOWN
    seats_standing: bool | None = None
    speed_limited_kmh: float = UNKNOWN
    towing: bool | None = None
    speedometer_tolerance_percent: Num_co = 0.0
    """To within how many per cent of the true speed the speedometer was read."""
    speed_assumed: bool = False
    """Whether nobody gave the top speed: then it is the most for which the present fitment is right."""

    @property
    def assumes(self) -> bool:
        """Return whether the top speed or a maximum axle mass is assumed."""
        return self.speed_assumed or self.front.mass_assumed or self.rear.mass_assumed

    @property
    def speed_unbounded(self) -> bool:
        """Return whether neither the caller nor the present tyres tell of the top speed."""
        return self.speed_assumed and bool(self.max_speed_kmh == SPEED_KMH[1])

    @property
    def is_trailer(self) -> bool:
        """Return whether it is a trailer, which is not steered and has no speedometer of its own."""
        return self.category.startswith("O")


class Candidate(NamedTuple):
    """What shall be fitted, per axle."""

    front: Fitment
    rear: Fitment
    label: str = ""
    id: str = ""


class Case(NamedTuple, Generic[Num_co]):
    """One question: this candidate on this vehicle under this rule pack, in this season, on this day."""

    vehicle: Vehicle[Num_co]
    candidate: Candidate
    pack: RulePack
    season: Season | None = None
    date: str | None = None
    tyre_tolerance: TyreTolerance = "design"
    """Whether a speedometer that was read is judged for tyres as designed, or as the standard lets them differ."""
