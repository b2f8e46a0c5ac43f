"""The law of a place as the service holds it, with the status of each rule in the open."""

from __future__ import annotations

from service.api.schemas.base import ANY, AnswerPart, number, part, text, whole
from service.api.schemas.finding_answer import Ground
from service.api.schemas.vocabulary import Status
from service.rules.rule import Comparison, RuleAxle
from service.rules.sections import AllowanceKind, SpeedometerKind, TestSpeedIs, WinterMark


class PackSummary(AnswerPart):
    """A rule pack in one line."""

    id: str = text("Id, as `rule_pack` of a request takes it.", 20, "nl")
    title: str = text("What it is called.", 200, "Netherlands")
    edition: str = text("Year and month of its last change.", 20, "2026-11")
    inherits: list[str] = part("The packs it builds on.", ["unece"], max_length=10)
    rule_count: int = whole(
        "How many rules it has, inherited ones and those on the speedometer included", "1", (0, 1000), 7
    )


class PackList(AnswerPart):
    """All rule packs."""

    rule_packs: list[PackSummary] = part("One for each place, by id.", max_length=200)


class Bound(AnswerPart):
    """One bound on one quantity."""

    quantity: str = text("What is limited.", 80, "track_change_percent")
    comparison: Comparison = part("How the quantity is held against the value.", "at_most")
    value: float = number("The bound", "in `unit`", ANY, 2.0)
    unit: str = text("Unit of the value.", 20, "%")


class Applies(AnswerPart):
    """For whom a rule is written; what is absent does not matter."""

    categories: list[str] = part("Vehicle categories; empty: all.", ["M1"], max_length=20)
    axle: RuleAxle = part("Which axle, or the vehicle.", "any")
    driven: bool = part("Only driven (true) or not driven (false) axles.", example=True, default=None)
    over_mass_kg: float = number("Only vehicles heavier than this", "kg", ANY, 3500.0, None)
    max_mass_kg: float = number("Only vehicles up to this mass", "kg", ANY, 3500.0, None)
    built_from: str = text("Only vehicles built from this day.", 10, "2007-01-01", default=None)
    built_to: str = text("Only vehicles built up to this day.", 10, "2006-12-31", default=None)


class Provenance(AnswerPart):
    """Where a legal rule stands, and how far it was read."""

    article: str = text("The place in the document.", 200, "5.2.23")
    basis: Ground = part("Document and day checked.")
    status: Status = part("How far the text was read.", "read")
    checked: str = text("The day it was checked.", 10, "2026-11-24", default=None)
    note: str = text("What a user must know.", 1000, "Only an increase is limited.", default=None)


class Rule(Provenance):
    """One rule; where it has several bounds, keeping one of them suffices."""

    code: str = text("The code of its findings.", 60, "law.track_change")
    title: str = text("What it is called.", 200, "Track")
    message: str = text(
        "What it says, in a sentence.", 600, "The track may be at most 2 % wider than the registered track."
    )
    bounds: list[Bound] = part("What is limited.", max_length=10)
    applies: Applies = part("For whom it is written.")
    can_forbid: bool = part("Whether breaking it is not_met; what was not read only advises.", example=True)
    valid_from: str = text("First day on which it is in force.", 10, "2020-01-01", default=None)
    valid_to: str = text("Last day on which it is in force.", 10, "2030-12-31", default=None)
    pack: str = text("The pack that the rule comes from.", 20, "nl")


class PackLimit(AnswerPart):
    """One limit of the service's own checks in this place."""

    name: str = text("Name of the limit.", 80, "overall_diameter_met_percent")
    value: float = number("The limit", "in `unit`", ANY, 1.5)
    unit: str = text("Unit of the value.", 20, "%")
    basis: Ground = part("What it rests on.")
    note: str = text("What a user must know.", 1000, "The usual legal minimum for cars.", default=None)


class TestSpeeds(AnswerPart):
    """The test speeds of vehicles faster than a speed; the first row that applies counts."""

    above_kmh: float = number("For vehicles faster than this", "km/h", (0.0, 450.0), 150.0)
    speeds_kmh: list[float] = part("Speeds to test at [km/h].", [40.0, 80.0, 120.0], max_length=10)
    share_of_max: float = number("One more test speed, as a share of the maximum speed", "1", (0.0, 1.0), 0.8, None)


class SpeedometerRule(Provenance):
    """A band for the displayed speed V1 around the true speed V2.

    least_gain V2 + least_constant_kmh <= V1 <= most_gain V2 + most_constant_kmh; without most_gain no upper edge.
    """

    kind: SpeedometerKind = part("`r39`: the inequality of UN R39; `band`: another one.", "r39")
    title: str = text("What it is called.", 200, "Speedometer, UN R39")
    least_gain: float = number("Gain of the lower edge", "1", (0.0, 2.0), 1.0)
    least_constant_kmh: float = number("Constant of the lower edge", "km/h", (-50.0, 50.0), 0.0)
    most_gain: float = number("Gain of the upper edge; absent: no upper edge", "1", (0.0, 2.0), 1.1, None)
    most_constant_kmh: float = number("Constant of the upper edge", "km/h", (-50.0, 50.0), 4.0)
    test_speed_is: TestSpeedIs = part("Which of the two speeds the test speeds are.", "true")
    test_speeds: list[TestSpeeds] = part("The test speeds, by the vehicle's maximum speed.", max_length=10)
    test_speeds_basis: Ground = part("What the test speeds rest on.")
    applies: Applies = part("For whom it is written.")
    valid_from: str = text("First day on which it is in force.", 10, "2020-01-01", default=None)
    valid_to: str = text("Last day on which it is in force.", 10, "2030-12-31", default=None)
    pack: str = text("The pack that the rule comes from.", 20, "unece")


class WinterMarking(Provenance):
    """A marking that makes a winter tyre here."""

    marking: WinterMark = part("The marking on the sidewall.", "3PMSF")
    built_to: str = text("Only tyres built up to this day.", 10, "2017-12-31", default=None)
    used_to: str = text("Only up to this day of use.", 10, "2024-09-30", default=None)


class WinterRule(Provenance):
    """When a winter tyre may have a lower speed symbol than the vehicle's maximum speed asks for."""

    label_required: bool = part("Whether a label in the driver's view must state the speed.", example=True)
    markings: list[WinterMarking] = part("The markings that count.", max_length=5)
    speed_floor: PackLimit = part("The least speed that the tyre must be made for.")


class Allowance(Provenance):
    """A relief that the law gives to named vehicles."""

    code: str = text("A stable code.", 60, "relief.trailer_speed")
    title: str = text("What it is called.", 200, "Trailers above 750 kg: load at 100 km/h")
    kind: AllowanceKind = part(
        "`axle_mass_percent` lowers the axle mass to be carried; `load_at_speed_kmh` takes the load at this speed "
        "instead of the vehicle's own.",
        "load_at_speed_kmh",
    )
    value: float = number("The value", "in `unit`", ANY, 100.0)
    unit: str = text("Unit of the value.", 20, "km/h")
    applies: Applies = part("For whom it is written.")
    seats_standing: bool = part("Only vehicles with (true) or without standing passengers.", example=True, default=None)
    speed_limited_kmh: float = number("Only with a limiter set to this or less", "km/h", (0.0, 450.0), 90.0, None)
    pack: str = text("The pack that it comes from.", 20, "nl")


class RulePack(AnswerPart):
    """A rule pack, whole."""

    id: str = text("Id of the pack.", 20, "nl")
    title: str = text("What it is called.", 200, "Netherlands")
    edition: str = text("Year and month of its last change.", 20, "2026-11")
    inherits: list[str] = part("The packs it builds on.", ["unece"], max_length=10)
    notes: list[str] = part("What a user must know.", ["No UN Regulation limits the track."], max_length=50)
    not_held: list[str] = part(
        "What of the law of the place was not found or is not asked, in sentences.",
        ["No federal rule on the speedometer of passenger cars was found."],
        max_length=50,
    )
    rules: list[Rule] = part("Its rules, inherited ones included.", max_length=200)
    limits: list[PackLimit] = part("The limits of the service's own checks here.", max_length=100)
    speedometer: list[SpeedometerRule] = part(
        "Its speedometer rules; the first that applies counts, and there may be none.", max_length=10
    )
    winter: WinterRule = part("When a winter tyre may be slower than the vehicle; absent: never.", default=None)
    allowances: list[Allowance] = part("Reliefs for named vehicles.", max_length=20)
