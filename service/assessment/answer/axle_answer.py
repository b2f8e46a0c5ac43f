"""The answer on one axle, kept: callers ask about the same cars and the same few sizes again and again.

It depends on the axle, on what is proposed for it, on what of the vehicle counts on an axle, on the place and on the
conditions, and on nothing else: neither on the other axle nor on what was asked before.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Generic, NamedTuple, TypeVar

from service.assessment.answer.actions import AxleTasks, axle_tasks
from service.assessment.answer.assumptions import axle_assumptions
from service.assessment.answer.trade_offs import axle_words
from service.assessment.case import Axle, Chassis, Fitment
from service.assessment.checks import AXLE_CHECKS
from service.assessment.kept import Kept
from service.assessment.law import law_findings as law
from service.assessment.view.conditions import Conditions
from service.assessment.view.facts import wheel_facts
from service.assessment.view.views import AxleView, axle_view
from service.core.findings import Finding
from service.rules.pack import RulePack

T = TypeVar("T")

# Some 10 KiB each, and 25 KiB of what is made of each for the wire.
KEPT_AXLES = 512


class Asked(NamedTuple, Generic[T]):
    """One thing for each question at a place: those that are asked everywhere, and those of the rule pack."""

    checks: Sequence[T]
    law: Sequence[T]


def in_turn(front: Asked[T], rear: Asked[T], vehicle: Asked[T]) -> list[T]:
    """Return the things of all places in the order of the questions: each question at the front, then at the rear."""
    found = [*front.checks, *rear.checks]
    found[::2], found[1::2] = front.checks, rear.checks
    return [*found, *vehicle.checks, *front.law, *rear.law, *vehicle.law]


# Itself and no other (eq=False), which makes it a cheap key for what is made of it.
@dataclass(frozen=True, slots=True, eq=False)
class AxleAnswer:
    """Present against proposed on one axle, its findings, and what they mean in words."""

    view: AxleView
    proposed: Fitment
    findings: Asked[Finding]
    tasks: AxleTasks
    assumptions: tuple[str, ...]
    trade_offs: str


def _answer(axle: Axle, proposed: Fitment, vehicle: Chassis, pack: RulePack, conditions: Conditions) -> AxleAnswer:
    """Return the answer on one axle."""
    facts = wheel_facts(proposed, axle, vehicle.max_speed_kmh, conditions.law_speed_kmh)
    view = axle_view(axle, facts, vehicle, pack, conditions)
    findings = [check.explain(view, check.grade(view)) for check in AXLE_CHECKS]
    return AxleAnswer(
        view,
        proposed,
        Asked(findings, law.findings_on_axle(view)),
        axle_tasks(view, findings),
        axle_assumptions(view, proposed),
        axle_words(view),
    )


axle_answer = Kept(_answer, KEPT_AXLES)
