"""What `check` answers. A number that cannot be known is absent, and a finding `not_assessed` says why."""

from __future__ import annotations

from typing import Any

from service.api.schemas.base import ANY, MAX_ID, AnswerPart, maybe, number, part, whole
from service.api.schemas.base import text as words
from service.api.schemas.finding_answer import CITED, Basis, Finding, Sources
from service.api.schemas.finding_counts import FindingCounts
from service.api.schemas.job_card import Action
from service.api.schemas.on_the_road import DryBalance, LabelEffects, MeasureFirst, TurnIn, WetBalance
from service.api.schemas.quantity_bands import Band, Estimate
from service.api.schemas.vocabulary import Verdict, Where
from service.assessment.answer.trade_offs import TradeCode, TradeDirection
from service.assessment.checks.balance import Degree, Direction


def _value(description: str, unit: str, example: float, default: Any = ...) -> Any:  # noqa: ANN401 - as pydantic's Field
    return number(description, unit, ANY, example, default)


class ContactPatch(AnswerPart):
    """Where the tyre meets the road, under the estimate load; gross, grooves included."""

    length_mm: Estimate = part("Length along the car [mm].")
    width_mm: Estimate = part("Width across the car [mm].")
    area_cm2: Estimate = part("Area [cm2].")


class WheelFigures(AnswerPart):
    """The figures of one wheel, present or proposed."""

    tyre: str = words("Canonical spelling of the tyre's designation.", 100, "235/40 R18 95Y XL")
    rim: str = words("Canonical spelling of the rim's designation.", 100, "8J x 18 H2 ET45")
    spacer_mm: float = maybe("Thickness of the spacer beneath it; absent: none", "mm", 5.0)
    section_width_mm: float = maybe("Section width on this rim", "mm", 241.0)
    section_height_mm: float = maybe("Section height", "mm", 94.0)
    overall_diameter_mm: float = maybe("Overall diameter of the new tyre", "mm", 645.0)
    rolling_circumference_mm: float = maybe("Rolling circumference of the new tyre", "mm", 1967.2)
    rolling_circumference_band_mm: Band = part(
        "Band of the rolling circumference [mm]; absent when it was measured or is not known.", default=None
    )
    revolutions_per_km: float = maybe("Turns of the wheel on a kilometre", "1/km", 508.3)
    static_loaded_radius_mm: Estimate = part("Static loaded radius [mm]; absent when not known.", default=None)
    load_capacity_kg: float = maybe("Load that one tyre carries at the vehicle's top speed", "kg", 690.0)
    load_required_kg: float = maybe("Load that one tyre must carry", "kg", 480.0)
    speed_capability_kmh: float = maybe("Speed that the tyre may run", "km/h", 300.0)
    minimum_pressure_kpa: float = maybe("Least cold pressure that carries the axle", "kPa", 214.0)
    pressure_kpa: float = maybe("Pressure that the estimates hold for", "kPa", 250.0)
    set_pressure_kpa: float = maybe("Cold pressure to set; with `short` only", "kPa", 250.0)
    contact_patch: ContactPatch = part("Contact patch; absent when not known.", default=None)
    cornering_stiffness_n_per_deg: Estimate = part(
        "Cornering stiffness of one tyre; absent when not known.", default=None
    )
    aquaplaning_onset_kmh: Estimate = part(
        "Speed at which the tyre floats on a 2 mm film of water; absent when not known.", default=None
    )
    wet_reserve_percent: Estimate = part(
        "Share of its load that still rests on the road at 80 km/h in 2 mm of water, with the tread as stated; absent "
        "when not known.",
        default=None,
    )
    wheel_mass_kg: Estimate = part("Mass of tyre and rim [kg]; absent when the rim's is not given.", default=None)
    wheel_inertia_kg_m2: Estimate = part("Moment of inertia about the axle [kg m2]; absent likewise.", default=None)


class KeyChange(AnswerPart):
    """What changes most tellingly on one axle, proposed minus present; absent numbers are not known."""

    overall_diameter_percent: float = maybe("Change of overall diameter", "%", -0.15)
    section_width_mm: float = maybe("Change of section width", "mm", 20.0)
    inboard_edge_mm: float = maybe("Shift of the inner edge; positive is less room", "mm", 10.4)
    outboard_edge_mm: float = maybe("Shift of the outer edge; positive is less room", "mm", 10.4)
    cornering_stiffness_percent: Estimate = part(
        "Change of cornering stiffness [%]; absent when not known.", default=None
    )
    aquaplaning_onset_percent: Estimate = part(
        "Change of the aquaplaning onset [%]; absent when not known.", default=None
    )


class AxleChange(KeyChange):
    """What changes on one axle, proposed minus present; absent numbers are not known."""

    overall_diameter_mm: float = maybe("Change of overall diameter", "mm", -1.0)
    rolling_circumference_percent: float = maybe("Change of rolling circumference", "%", -0.15)
    track_mm: float = maybe("Change of track", "mm", 0.0)
    scrub_radius_mm: float = maybe("Change of scrub radius; positive is outboard", "mm", 0.0)
    ride_height_mm: float = maybe("Change of ride height, from the loaded radii", "mm", -0.3)
    load_capacity_percent: float = maybe("Change of what the axle's tyres carry", "%", 6.2)
    heat_reserve_percent: float = maybe(
        "By how much more friction work warms the tread as much as before; for hard or track use", "%", 16.2
    )
    peak_grip_percent: Estimate = part(
        "Change of the grip at the limit in the dry [%], same make and compound; absent when not known.", default=None
    )
    wheel_mass_kg: Estimate = part(
        "Change of the mass of a wheel [kg]; absent unless both rims' are given.", default=None
    )
    wheel_inertia_percent: Estimate = part("Change of a wheel's moment of inertia [%]; absent likewise.", default=None)


class AxleAnswer(AnswerPart):
    """One axle: present, proposed, and the change."""

    present: WheelFigures = part("As fitted now; absent with `short`.", default=None)
    proposed: WheelFigures = part("As proposed.")
    change: AxleChange = part("Proposed minus present.")


class Axles(AnswerPart):
    """Both axles."""

    front: AxleAnswer = part("The front axle.")
    rear: AxleAnswer = part("The rear axle.")


class SpeedometerReading(AnswerPart):
    """The speedometer at one test speed."""

    true_kmh: float = _value("True speed", "km/h", 80.0)
    displayed_before_kmh: float = maybe("What it shows with the present tyres", "km/h", 82.5)
    displayed_after_kmh: float = maybe("What it shows with the proposed tyres", "km/h", 82.6)
    least_lawful_kmh: float = _value("Least it may show", "km/h", 80.0)
    greatest_lawful_kmh: float = _value("Most it may show", "km/h", 92.0)


class SpeedometerAnswer(AnswerPart):
    """Displayed against true speed at the test speeds of UN R39, before and after."""

    circumference_ratio: float = maybe("Proposed over present circumference of the driven axle", "1", 0.998)
    lead_percent: float = maybe("By how much it reads above the true speed now", "%", 3.1)
    least_lead_percent: float = maybe("Least lead that it must have now to stay lawful", "%", -0.2)
    greatest_lead_percent: float = maybe("Greatest lead that it may have now to stay lawful", "%", 13.1)
    readings: list[SpeedometerReading] = part("One for each test speed; with `full` only.", default=None, max_length=8)


class Balance(AnswerPart):
    """The change of balance."""

    understeer_gradient_change_deg_per_g: Estimate = part(
        "Change of the understeer gradient [deg/g]; positive is towards understeer; absent when not known.",
        default=None,
    )
    direction: Direction = part("Which way the balance goes.", "neutral")
    degree: Degree = part("How far the balance goes.", "negligible")
    direction_certain: bool = part("Whether the whole band speaks for the direction.", example=True)
    warning: str = words(
        "What the driver must expect; absent when nothing is.", 300, "Towards understeer.", default=None
    )
    text: str = words("The change of balance in a sentence.", 300, "The balance stays as it is.")
    dry: DryBalance = part("The balance in the dry and below the limit.")
    wet: WetBalance = part("The balance in standing water; absent when not known.", default=None)


class VehicleAnswer(AnswerPart):
    """The vehicle as a whole."""

    speedometer: SpeedometerAnswer = part("The speedometer.")
    balance: Balance = part("Understeer and oversteer.")
    axle_circumference_ratio_change_percent: float = maybe("Change of the front to rear ratio", "%", 0.0)
    engine_speed_change_percent: float = maybe("Change of engine speed at a given speed", "%", 0.2)
    odometer_change_percent: float = maybe("Change of the distance counted", "%", 0.2)
    braking_distance_percent: Estimate = part(
        "Change of the braking distance in the dry [%], every wheel at its limit; absent when not known.", default=None
    )
    label_effects: LabelEffects = part(
        "What the tyres' labels tell of, beside the size; absent where no label is given.", default=None
    )
    turn_in: TurnIn = part("How the car turns in; absent for a trailer and when not known.", default=None)


class TradeOff(AnswerPart):
    """One thing that is gained, lost or stays alike."""

    code: TradeCode = part("What it is about.", "peak_grip")
    axle: Where = part("Where.", "front")
    direction: TradeDirection = part("Whether it is a gain, a loss or alike.", "gain")
    value: float = maybe("Change, proposed minus present", "in `unit`", 1.8)
    unit: str = words("Unit of the value; absent where there is none.", 20, "%", default=None)
    text: str = words("The same in one sentence.", 300, "Front: the tyres grip about 1.8 % more on a dry road.")
    basis: Basis = part("What it rests on.")


class RulePackName(AnswerPart):
    """The rules it was held against."""

    id: str = words("Id of the pack.", 20, "unece")
    edition: str = words("Edition of the pack.", 20, "2026-11")


class RulePackHeld(RulePackName):
    """The rules it was held against and, but for `short`, how many of them spoke and what of the law is not held.

    Rules on the speedometer are counted, reliefs for winter tyres, towing and trailers are not.
    """

    rules_held: int = whole("How many rules the pack has, inherited ones included", "1", (0, 1000), 7, None)
    rules_applied: int = whole("How many of them apply to this vehicle on this day", "1", (0, 1000), 4, None)
    rules_met: int = whole("How many of those are met, on both axles", "1", (0, 1000), 3, None)
    not_held: list[str] = part(
        "What of the law of the place was not found or is not asked, in sentences.",
        ["No federal rule on the speedometer of passenger cars was found."],
        default=None,
        max_length=50,
    )


class Assessment(AnswerPart):
    """The answer to one question; how much of it, `detail` of the request says."""

    verdict: Verdict = part("The verdict.", "suitable_with_conditions")
    summary: str = words("The verdict in a few sentences.", 1500, "It fits, with conditions: 1 point needs attention.")
    id: str = words("The candidate's id, as sent; absent where none was.", MAX_ID, "A-1042", default=None)
    label: str = words("The candidate's label, as sent.", 80, "one step wider")
    rule_pack: RulePackHeld = part("The rules it was held against.")
    findings: list[Finding] = part(
        "One for each question, worst first; with `short` only those that speak against it or hold the verdict.",
        max_length=200,
    )
    finding_counts: FindingCounts = part("How many findings came out how, listed or not.")
    axles: Axles = part("The numbers, per axle; with `short` the few that a shop shows.")
    vehicle: VehicleAnswer = part("The numbers, for the vehicle; absent with `short`.", default=None)
    trade_offs: list[TradeOff] = part(
        "With `full` only: what is gained, lost and stays alike, front, rear, then the vehicle; empty where nothing "
        "could be felt. What is not known is absent.",
        default=None,
        max_length=30,
    )
    trade_offs_text: str = words(
        "The sentences of the gains and losses as one paragraph; absent with `short`.",
        4000,
        "Front: the tyres grip about 1.8 % more on a dry road.",
        default=None,
    )
    actions: list[Action] = part(
        "The job card in the order of work: what is dangerous first. Every finding that is advisory or not recommended "
        "has a line that names it; with `short`, lines that say again what a finding says are left out.",
        max_length=60,
    )
    measure_first: list[MeasureFirst] = part(
        "What to measure first, the most telling first; only when it was asked for.", default=None, max_length=8
    )
    assumptions: list[str] = part(
        "What was assumed where the request said nothing; absent with `short`.", default=None, max_length=60
    )
    cautions: list[str] = part(
        "What this answer does not replace; with `short`, `caution_codes` instead.", default=None, max_length=20
    )
    caution_codes: list[str] = part("The same by code; with `short` only.", ["trial_fit"], default=None, max_length=20)
    sources: Sources = part("The documents that the bases name, by key; absent with `short`.", CITED, default=None)
