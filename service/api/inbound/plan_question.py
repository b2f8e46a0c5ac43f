"""From the wire to the domain: what a plan is asked."""

from __future__ import annotations

from service.api.inbound import translate
from service.api.schemas import planned as wire
from service.assessment.batch.plan_case import Combination, PlanAsked, PlannedWheel


def plan_asked(asked: wire.PlanRequest) -> PlanAsked:
    """Return the combinations of a plan, and by what they are compared."""
    spread = asked.repeatability
    return PlanAsked(
        combinations=tuple(
            Combination(
                _wheel(each.front) if "front" in each.model_fields_set else None,
                _wheel(each.rear) if "rear" in each.model_fields_set else None,
                each.label,
                each.id,
            )
            for each in asked.combinations
        ),
        pressure_rule=asked.pressure_rule,
        repeatability={name: getattr(spread, name) for name in sorted(spread.model_fields_set)},
        confidence=asked.confidence,
        power=asked.power,
    )


def _wheel(asked: wire.PlannedWheel) -> PlannedWheel:
    rim = translate.rim(asked.rim) if "rim" in asked.model_fields_set else None
    return PlannedWheel(translate.tyre(asked.tyre), rim)
