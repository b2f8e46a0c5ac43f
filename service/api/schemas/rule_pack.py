"""The law of a place as the service holds it, with the status of each rule in the open."""

from __future__ import annotations

from typing import Any, Literal

from service.api.schemas.assessment import ANY, Basis, Told
from service.api.schemas.base import number, part, text, whole

Status = Literal["read", "second_hand", "memory", "derived", "own"]


class PackSummary(Told):
    """A rule pack in one line."""

    id: str = text("Id, as `rule_pack` of a request takes it.", 20, "nl")
    title: str = text("Title.", 200, "Netherlands")
    edition: str = text("Edition.", 20, "2026-11")
    inherits: list[str] = part("The packs it builds on.", ["unece"], max_length=10)
    rule_count: int = whole("How many rules it has, inherited ones included", "1", (0, 1000), 6)


class PackList(Told):
    """All rule packs."""

    rule_packs: list[PackSummary] = part("One for each place, by id.", max_length=200)


class Bound(Told):
    """One bound on one quantity."""

    quantity: str = text("What is limited.", 80, "track_change_percent")
    comparison: Literal["at_most", "at_least", "equals"] = part("How.", "at_most")
    value: float = number("The bound", "in `unit`", ANY, 2.0)
    unit: str = text("Its unit.", 20, "%")


class Applies(Told):
    """For whom a rule is written; what is absent does not matter."""

    categories: list[str] = part("Vehicle categories; empty: all.", ["M1"], max_length=20)
    axle: Literal["any", "front", "rear", "vehicle"] = part("Which axle, or the vehicle.", "any")
    driven: bool = part("Only driven (true) or not driven (false) axles.", example=True, default=None)
    over_mass_kg: float = number("Only vehicles heavier than this", "kg", ANY, 3500.0, None)
    max_mass_kg: float = number("Only vehicles up to this mass", "kg", ANY, 3500.0, None)
    built_from: str = text("Only vehicles built from this day.", 10, "2007-01-01", default=None)
    built_to: str = text("Only vehicles built up to this day.", 10, "2006-12-31", default=None)


class Rule(Told):
    """One rule; where it has several bounds, keeping one of them suffices."""

    code: str = text("The code of its findings.", 60, "law.track_change")
    title: str = text("Title.", 200, "Track")
    message: str = text("What it says, in a sentence.", 600, "The track may grow by 2 % at most.")
    bounds: list[Bound] = part("What is limited.", max_length=10)
    applies: Applies = part("For whom.")
    article: str = text("Article.", 200, "5.2.23")
    basis: Basis = part("Document and day checked.")
    status: Status = part("How far the text was read.", "read")
    checked: str = text("The day it was checked.", 10, "2026-11-24", default=None)
    can_forbid: bool = part("Whether breaking it is not_met; what was not read only advises.", example=True)
    valid_from: str = text("In force from.", 10, "2020-01-01", default=None)
    valid_to: str = text("In force up to.", 10, "2030-12-31", default=None)
    note: str = text("What a user must know.", 1000, "Only an increase is limited.", default=None)
    pack: str = text("The pack that the rule comes from.", 20, "nl")


class PackLimit(Told):
    """One limit of the service's own checks in this place."""

    name: str = text("Name.", 80, "overall_diameter_met_percent")
    value: float = number("The limit", "in `unit`", ANY, 1.5)
    unit: str = text("Its unit.", 20, "%")
    basis: Basis = part("What it rests on.")
    note: str = text("What a user must know.", 1000, "The usual legal minimum for cars.", default=None)


class RulePackShown(Told):
    """A rule pack, whole."""

    id: str = text("Id.", 20, "nl")
    title: str = text("Title.", 200, "Netherlands")
    edition: str = text("Edition.", 20, "2026-11")
    inherits: list[str] = part("The packs it builds on.", ["unece"], max_length=10)
    notes: list[str] = part("What it leaves out, in sentences.", ["No UN Regulation limits the track."], max_length=50)
    rules: list[Rule] = part("Its rules, inherited ones included.", max_length=200)
    limits: list[PackLimit] = part("The limits of the service's own checks here.", max_length=100)
    speedometer: list[dict[str, Any]] = part(
        "Its speedometer rules; the first that applies counts.", [[]], max_length=10
    )
    winter: dict[str, Any] = part("When a winter tyre may be slower than the vehicle.", {"label_required": True}, None)
    allowances: list[dict[str, Any]] = part("Reliefs for named vehicles.", [[]], max_length=20)
