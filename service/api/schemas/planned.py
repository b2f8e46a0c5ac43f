"""What `plan` is asked and what it answers."""

from __future__ import annotations

from typing import Any

from service.api.schemas.assessment import RulePackName
from service.api.schemas.base import ANY, MAX_ID, AnswerPart, identity, maybe, number, part, text, whole
from service.api.schemas.quantity_bands import Estimate
from service.api.schemas.request import FitmentRequest, RequestPart, Rim, Tyre
from service.api.schemas.vocabulary import (
    AxleName,
    CoverMethod,
    EffectBetter,
    EffectName,
    PressureRule,
    RimOrigin,
    Verdict,
)
from service.assessment.batch.plan_case import MOST_COMBINATIONS
from service.core.numeric import UNKNOWN
from service.physics.repeats import CONFIDENCE, POWER

MAX_PAIRS = MOST_COMBINATIONS * (MOST_COMBINATIONS + 1) // 2
MAX_EFFECTS = 20
SCATTER = (0.0001, 1000.0)
SHARE = (0.5, 0.9999)
_PLACE = (0, MOST_COMBINATIONS - 1)


class PlannedWheel(RequestPart):
    """A tyre, and its rim where it is settled."""

    tyre: Tyre = part("The tyre.")
    rim: Rim = part("The rim; absent: one that does is found, the present one where it does.", default=None)


class Combination(RequestPart):
    """What is to be driven, front and rear."""

    id: str = identity("The caller's own name of the combination; comes back.")
    label: str = text("A name to be read, repeated in the answer.", 80, "255 and 285", default="")
    front: PlannedWheel = part("The front wheels; absent: the axle stays as it is.", default=None)
    rear: PlannedWheel = part("The rear wheels; absent: the axle stays as it is.", default=None)


def _scatter(description: str, unit: str, example: float) -> Any:  # noqa: ANN401 - as pydantic's Field
    return number(f"{description}: standard deviation of repeated tests", unit, SCATTER, example, UNKNOWN)


class Repeatability(RequestPart):
    """How far repeated tests of one and the same combination scatter; what is absent gets no number of repeats."""

    braking_distance_percent: float = _scatter("Braking distance in the dry", "%", 0.8)
    front_peak_grip_percent: float = _scatter("Peak grip of the front", "%", 1.0)
    rear_peak_grip_percent: float = _scatter("Peak grip of the rear", "%", 1.0)
    balance_deg_per_g: float = _scatter("Understeer gradient", "deg/g", 0.1)
    front_aquaplaning_onset_percent: float = _scatter("Speed at which the front floats", "%", 3.0)
    rear_aquaplaning_onset_percent: float = _scatter("Speed at which the rear floats", "%", 3.0)
    front_wet_reserve_points: float = _scatter("Wet reserve of the front", "points", 3.0)
    rear_wet_reserve_points: float = _scatter("Wet reserve of the rear", "points", 3.0)
    wet_balance_points: float = _scatter("Rear wet reserve beside the front's", "points", 4.0)


class PlanRequest(FitmentRequest):
    """Combinations to be compared on one vehicle."""

    combinations: list[Combination] = part(
        "What is to be driven beside the present wheels, 1 to 12.", min_length=1, max_length=MOST_COMBINATIONS
    )
    pressure_rule: PressureRule = part(
        "By what the pressures are made comparable.", "share_of_load_index", default="share_of_load_index"
    )
    repeatability: Repeatability = part("How far repeated tests scatter.", default=Repeatability())
    confidence: float = number(
        "One less the risk of seeing a difference where there is none, both sides",
        "1",
        SHARE,
        0.95,
        CONFIDENCE,
    )
    power: float = number("Chance of seeing the difference when it is there", "1", SHARE, 0.8, POWER)


class PlanWheel(AnswerPart):
    """One axle of a combination."""

    tyre: str = text("Canonical spelling of the tyre's designation.", 100, "255/35 R19 96Y XL")
    rim: str = text("Canonical spelling of the rim's designation.", 100, "8.5J x 19 H2 ET44")
    rim_origin: RimOrigin = part("Where the rim comes from.", "found")
    rim_load_rating_kg: float = maybe("Load rating that the rim has or must have", "kg", 540.0)
    stays: bool = part("Whether the axle stays as it is.", example=False)
    set_pressure_kpa: float = maybe("Cold pressure to set", "kPa", 250.0)
    share_percent: float = maybe("What the rule makes alike, at this pressure", "%", 88.8)
    pressure_held: bool = part(
        "Whether the pressure is not the rule's: the axle needs more, or the tyre usually gets less.", example=False
    )


class PlanEffects(AnswerPart):
    """What is expected against the present wheels; absent where it is not known."""

    braking_distance_percent: Estimate = part("Braking distance in the dry [%].", default=None)
    front_peak_grip_percent: Estimate = part("Peak grip of the front [%].", default=None)
    rear_peak_grip_percent: Estimate = part("Peak grip of the rear [%].", default=None)
    balance_deg_per_g: Estimate = part("Understeer gradient [deg/g]; more is towards understeer.", default=None)
    front_aquaplaning_onset_percent: Estimate = part("Speed at which the front floats [%].", default=None)
    rear_aquaplaning_onset_percent: Estimate = part("Speed at which the rear floats [%].", default=None)
    front_wet_reserve_points: Estimate = part("Wet reserve of the front [percentage points].", default=None)
    rear_wet_reserve_points: Estimate = part("Wet reserve of the rear [percentage points].", default=None)
    wet_balance_points: Estimate = part(
        "By how many points the rear's wet reserve gains more than the front's; its band combines both axles as "
        "independent, the root of the sum of squares.",
        default=None,
    )


class PlanCombination(AnswerPart):
    """What is said of one combination."""

    index: int = whole("Its place in the request, from 0", "1", _PLACE, 0)
    id: str = text("Its `id`, where it has one.", MAX_ID, "C", default=None)
    label: str = text("Its label, as sent.", 80, "255 and 285")
    change: str = text("What it changes.", 400, "Front: 255/35 R19 96Y XL. Rear: 285/30 R19 98Y XL.")
    verdict: Verdict = part("The verdict with these rims and pressures.", "suitable_with_conditions")
    reason: str = text(
        "Its worst finding in a sentence; absent for what is suitable.", 600, "It touches.", default=None
    )
    first_remedy: str = text(
        "What would settle it; absent where nothing has to.", 400, "fit rims with ET 44", default=None
    )
    front: PlanWheel = part("The front wheels.")
    rear: PlanWheel = part("The rear wheels.")
    effects: PlanEffects = part("What is expected against the present wheels, at these pressures.")


class PlanEffect(AnswerPart):
    """One thing that a test may measure."""

    effect: EffectName = part("Its name.", "braking_distance_percent")
    unit: str = text("Its unit.", 20, "%")
    text: str = text("What it is.", 100, "braking distance in the dry")
    better: EffectBetter = part("What is better.", "less")
    least: float = number("A smaller difference is not worth a test", "in `unit`", ANY, 0.5)


class PlanDifference(AnswerPart):
    """An effect in which two combinations differ by what a test may show."""

    effect: EffectName = part("Which.", "braking_distance_percent")
    difference: Estimate = part(
        "The second less the first, in the effect's unit; what both have in common is counted once."
    )
    repeats: float = maybe("Tests of each that it takes", "1", 6.0)


class PlanPair(AnswerPart):
    """Two combinations: in what a test may tell them apart, and in what hardly."""

    first: int = whole("Place of the one; absent: the present wheels", "1", _PLACE, 0, None)
    second: int = whole("Place of the other", "1", _PLACE, 1)
    apart: list[PlanDifference] = part("Effects whose bands do not overlap.", max_length=MAX_EFFECTS)
    alike: list[EffectName] = part(
        "Effects whose bands overlap, or whose difference is too small to look for.", max_length=MAX_EFFECTS
    )
    text: str = text("The same in words.", 1500, "A test will hardly tell B from A.")


class PlanRepeats(AnswerPart):
    """How many tests of each combination an effect takes."""

    effect: EffectName = part("Which.", "braking_distance_percent")
    standard_deviation: float = number("How far repeated tests scatter, as stated", "in the effect's unit", ANY, 0.8)
    pairs_apart: int = whole("How many pairs may be told apart by it", "1", (0, MAX_PAIRS), 7)
    for_greatest: float = maybe("Tests of each for the greatest difference", "1", 5.0)
    for_all: float = maybe("Tests of each for the least of these differences", "1", 31.0)
    text: str = text("The same in words.", 300, "Braking distance in the dry: 5 tests of each.")


class PlanOrder(AnswerPart):
    """In which order to drive."""

    runs: list[str] = part("One block, by name.", ["present wheels", "255 and 285", "present wheels"], max_length=30)
    blocks: float = maybe("How often to drive it", "1", 5.0)
    text: str = text("How to drive it.", 600, "Drive the present wheels before and after each combination.")


class PlanMeasurement(AnswerPart):
    """A fact worth measuring before the first run."""

    pointer: str = text("RFC 6901 pointer into the request: where to state it.", 200, "/vehicle/wheelbase_mm")
    text: str = text("What to measure.", 400, "measure the wheelbase")
    settles: list[str] = part("Codes of the findings that it decides.", ["clearance.inboard"], max_length=60)
    narrows: list[EffectName] = part("Effects that it narrows.", ["braking_distance_percent"], max_length=MAX_EFFECTS)
    combinations: int = whole("Of how many combinations", "1", (0, MOST_COMBINATIONS), 3)


class PlanRim(AnswerPart):
    """A rim to buy; bolt circle, bore and rating are those that the axle asks for."""

    axle: AxleName = part("For which axle.", "front")
    rim: str = text("Width, diameter and offset.", 40, "9J x 19 ET44")
    serves: list[str] = part(
        "Canonical spelling of the tyres that it serves there.", ["255/35 R19 96Y XL"], max_length=MOST_COMBINATIONS
    )


class PlanReference(AnswerPart):
    """The present wheels, at the pressures that the rule begins from."""

    front: PlanWheel = part("The front wheels.")
    rear: PlanWheel = part("The rear wheels.")


class PlanResult(AnswerPart):
    """The plan."""

    rule_pack: RulePackName = part("The rules that the combinations were held against.")
    pressure_rule: PressureRule = part("By what the pressures are made comparable.", "share_of_load_index")
    pressure_rule_text: str = text("The same in words.", 400, "Each tyre may carry the same share of its load index.")
    reference: PlanReference = part("The present wheels.")
    rims_to_buy: list[PlanRim] = part(
        "The fewest rims for the tyres that the present rims do not take and for which none is given.",
        max_length=2 * MOST_COMBINATIONS,
    )
    rims_method: CoverMethod = part("How they were found.", "exact")
    combinations: list[PlanCombination] = part("In the order of the request.", max_length=MOST_COMBINATIONS)
    effects: list[PlanEffect] = part("What the names of the effects stand for.", max_length=MAX_EFFECTS)
    pairs: list[PlanPair] = part("Every two of them, those with the present wheels first.", max_length=MAX_PAIRS)
    repeats: list[PlanRepeats] = part(
        "How many tests it takes; empty where no repeatability is stated.", max_length=MAX_EFFECTS
    )
    order: PlanOrder = part("In which order to drive.")
    measure_first: list[PlanMeasurement] = part(
        "What to measure before, what settles most verdicts first; empty where everything is stated.", max_length=20
    )
    notes: list[str] = part(
        "What was taken where the vehicle's top speed or an axle's mass was left out; absent where both are given.",
        max_length=10,
        default=None,
    )
    cautions: list[str] = part("What this answer does not replace; always present.", max_length=20)
