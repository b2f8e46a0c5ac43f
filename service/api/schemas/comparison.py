"""What `compare` is asked and what it answers."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import GetJsonSchemaHandler, GetPydanticSchema
from pydantic_core import CoreSchema

from service.api.schemas.assessment import KeyChange, RulePackName
from service.api.schemas.base import MAX_ID, AnswerPart, maybe, part, text, whole
from service.api.schemas.error_answer import Fault
from service.api.schemas.finding_answer import CITED, FILLED, Basis, FindingHead, Parameters, Remedy, Sources
from service.api.schemas.finding_counts import FindingCounts
from service.api.schemas.job_card import Action
from service.api.schemas.quantity_bands import Estimate
from service.api.schemas.request import Candidate, FitmentRequest
from service.api.schemas.vocabulary import AxleName, Detail, RankBy, Trade, Verdict
from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.comparison_measures import MEANING
from service.assessment.checks.balance import Degree, Direction
from service.drawing.plot_sheet import MOST_PLOTTED

MAX_CANDIDATES = 500
MAX_FAULTS_PER_ROW = 5


def _candidate(_: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
    return handler(Candidate.__pydantic_core_schema__)


# Looked at one by one later on: one that cannot be read is listed as refused and is not the end of the others.
LooseCandidate = Annotated[dict[str, Any], GetPydanticSchema(get_pydantic_json_schema=_candidate)]


def measure(name: str, unit: str, example: float) -> Any:  # noqa: ANN401 - as pydantic's Field
    """Return a field for a measure, with the meaning that its own file gives it."""
    return maybe(MEANING[name], unit, example)


class CompareRequest(FitmentRequest):
    """Many candidates on one vehicle."""

    candidates: list[LooseCandidate] = part(
        "What could be fitted, 1 to 500 candidates; one that cannot be read is listed as refused, the others stand.",
        min_length=1,
        max_length=MAX_CANDIDATES,
    )
    detail: Detail = part("How much is answered of each row.", "short", default="standard")
    rank_by: RankBy = part(
        "What the rows are ranked by, after the verdict and what speaks against them.",
        "closest_to_present",
        default="closest_to_present",
    )
    verdicts: list[Verdict] = part(
        "The verdicts whose rows are listed; absent: all of them.",
        ["suitable", "suitable_with_conditions"],
        default=list(VERDICTS),
        min_length=1,
        max_length=len(VERDICTS),
    )
    explain_first: int = whole(
        "How many of the best rows say their findings in sentences with remedies; each costs as much as a check",
        "1",
        (0, MAX_CANDIDATES),
        3,
        3,
    )


class PlotRequest(CompareRequest):
    """A few candidates on one vehicle, to be drawn; what asks for more or less of the answer in words has no effect."""

    candidates: list[LooseCandidate] = part(
        "What could be fitted, 1 to 12 candidates; one that cannot be read is named in a note.",
        min_length=1,
        max_length=MOST_PLOTTED,
    )


class Measures(AnswerPart):
    """What a candidate is worth; absent when not known."""

    dry_grip_percent: float = measure("dry_grip_percent", "%", 3.1)
    braking_distance_percent: float = measure("braking_distance_percent", "%", -1.6)
    wet_margin_percent: float = measure("wet_margin_percent", "%", -4.4)
    balance_deg_per_g: float = measure("balance_deg_per_g", "deg/g", 0.05)
    load_margin_percent: float = measure("load_margin_percent", "%", 18.5)
    diameter_deviation_percent: float = measure("diameter_deviation_percent", "%", 0.47)


class ComparedAxle(KeyChange):
    """Key numbers of one axle, proposed minus present."""

    load_margin_percent: float = maybe("By how much the tyres carry more than the maximum axle mass", "%", 18.5)


class ComparedAxles(AnswerPart):
    """Both axles."""

    front: ComparedAxle = part("The front axle.")
    rear: ComparedAxle = part("The rear axle.")


class ComparedVehicle(AnswerPart):
    """Key numbers of the vehicle as a whole."""

    understeer_gradient_change_deg_per_g: Estimate = part(
        "Change of the understeer gradient [deg/g]; positive is towards understeer; absent when not known.",
        default=None,
    )
    direction: Direction = part("Which way the balance goes; absent when not known.", "neutral", default=None)
    degree: Degree = part("How much; absent likewise.", "negligible", None)
    axle_circumference_ratio_change_percent: float = maybe("Change of the front to rear ratio", "%", 0.0)
    speedometer_lead_percent: float = maybe("By how much the speedometer reads too high afterwards", "%", 3.3)


class ComparedFinding(FindingHead):
    """One of the worst findings of a candidate; `check` tells what it rests on."""

    already: bool = part("Whether the present fitment has it too, and no less.", example=False)
    decides: bool = part(
        "Only with `not_assessed`: whether the verdict waits for it; else it is open and decides nothing.",
        example=True,
        default=None,
    )
    message: str = text(
        "The answer in a sentence; in explained rows only.", 600, "The tyre may run 210 km/h.", default=None
    )
    parameters: Parameters = part(
        "What fills `message`, by name; in explained rows only, absent where nothing does.", FILLED, default=None
    )
    template: str = text(
        "English template of `message`; in explained rows and with `full` only.",
        2000,
        "The tyre may run {speed}.",
        default=None,
    )
    remedy: Remedy = part("What would settle it; in explained rows only.", default=None)
    basis: Basis = part("What it rests on; in explained rows and with `full` only.", default=None)


class PressuresToSet(AnswerPart):
    """Cold pressures to set; absent where only the sidewall tells one."""

    front: float = maybe("Front tyres", "kPa", 250.0)
    rear: float = maybe("Rear tyres", "kPa", 230.0)


class Weighed(AnswerPart):
    """What is said of any candidate, one of the caller's or one that was found."""

    rank: int = whole("Place, 1 is the best", "1", (1, MAX_CANDIDATES), 1)
    verdict: Verdict = part("The verdict.", "suitable_with_conditions")
    changed: list[AxleName] = part(
        "The axles that get another tyre or rim, or tyres with another tread; the others stay as they are.",
        ["rear"],
        max_length=2,
    )
    change: str = text(
        "The same in words.",
        400,
        "Two of four: rear 255/35 R19 96Y XL; the front stays as it is.",
    )
    set_pressure_kpa: PressuresToSet = part("What to set; absent for what is unsuitable.", default=None)
    reason: str = text(
        "The worst finding in a sentence; absent for what is suitable.",
        600,
        "The tyre may run 210 km/h.",
        default=None,
    )
    first_remedy: str = text(
        "What would settle the worst finding that can be settled; absent where none has to or can be.",
        400,
        "set 250 kPa (2.5 bar), cold",
        default=None,
    )
    not_bettered: bool = part(
        "Whether no other candidate that may be fitted is at least as good in every measure and better in one; always "
        "false for what is unsuitable.",
        example=True,
    )
    measures: Measures = part("By what it can be ranked.")
    gains: list[Trade] = part("What is better than with the present fitment.", ["dry_grip"], max_length=7)
    losses: list[Trade] = part("What is worse than with the present fitment.", ["wet_margin"], max_length=7)
    axles: ComparedAxles = part("Key numbers, per axle; absent with `short`.", default=None)
    vehicle: ComparedVehicle = part("Key numbers, for the vehicle; absent with `short`.", default=None)
    findings: list[ComparedFinding] = part(
        "The worst findings, worst first; none that is met; absent with `short`.", default=None, max_length=5
    )
    finding_counts: FindingCounts = part("How many findings there are of each kind.")
    summary: str = text(
        "The verdict in a few sentences; in explained rows only.", 1500, "It fits, with conditions.", default=None
    )
    actions: list[Action] = part("What the workshop must do; in explained rows only.", default=None, max_length=30)


class ComparedRow(Weighed):
    """One candidate."""

    index: int = whole("Its place in the request, from 0", "1", (0, MAX_CANDIDATES - 1), 0)
    id: str = text("Its `id`, where it has one.", MAX_ID, "A-1042", default=None)
    label: str = text("Its label, as sent.", 80, "one step wider")


class RefusedCandidate(AnswerPart):
    """One candidate that cannot be read."""

    index: int = whole("Its place in the request, from 0", "1", (0, MAX_CANDIDATES - 1), 3)
    id: str = text("Its `id`, where it has one that can be read.", MAX_ID, "A-1042", default=None)
    label: str = text("Its label, as sent; empty where that is at fault.", 80, "misspelt")
    errors: list[Fault] = part(
        "Its faults, the first five of them; pointers lead into the request.",
        min_length=1,
        max_length=MAX_FAULTS_PER_ROW,
    )
    error_count: int = whole("How many faults there were, listed or not", "1", (1, 10_000_000), 1)


class Comparison(AnswerPart):
    """The candidates, best first."""

    rule_pack: RulePackName = part("The rules they were held against.")
    rank_by: RankBy = part("What they are ranked by, after the verdict.", "closest_to_present")
    compared: int = whole("How many candidates were compared", "1", (0, MAX_CANDIDATES), 12)
    refused_count: int = whole("How many could not be read", "1", (0, MAX_CANDIDATES), 0)
    left_out: int = whole("How many were compared but have a verdict that is not listed", "1", (0, MAX_CANDIDATES), 0)
    why_none: str = text(
        "Why no candidate is listed; absent where one is.",
        400,
        "All 12 candidates have a verdict that was not asked for: 12 unsuitable.",
        default=None,
    )
    rows: list[ComparedRow] = part(
        "One for each candidate that is listed: by verdict, then by what speaks against it and is not so today, then "
        "by the measure, then by closeness to the present fitment.",
        max_length=MAX_CANDIDATES,
    )
    refused: list[RefusedCandidate] = part(
        "The candidates that cannot be read, in the order of the request.", max_length=MAX_CANDIDATES
    )
    sources: Sources = part("The documents that the bases name, by key; with `full` only.", CITED, default=None)
    notes: list[str] = part(
        "What was taken where the vehicle's top speed or an axle's mass was left out; absent where both are given.",
        max_length=10,
        default=None,
    )
    cautions: list[str] = part("What this answer does not replace; always present.", max_length=20)
