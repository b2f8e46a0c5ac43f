"""Plans to look at: sizes on the invented saloon of the stories, front and rear."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from service.api.inbound import translate
from service.api.inbound.plan_question import plan_asked
from service.api.schemas.planned import PlanRequest
from service.assessment.batch.plan import Plan, plan
from service.assessment.batch.plan_effects import EffectName
from service.assessment.case import Case
from service.core.findings import Estimate

Json = dict[str, Any]
STORY = Path(__file__).parents[2] / "demo_requests" / "five-combinations.plan.json"
F225, F255, F285 = "225/40 R19 93Y XL", "255/35 R19 96Y XL", "285/30 R19 98Y XL"


def wheel(tyre: str, rim: str | None = None) -> Json:
    """Return a planned wheel."""
    made: Json = {"tyre": {"size": tyre, "tread_depth_mm": 8}}
    if rim is not None:
        made["rim"] = {"size": rim, "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 700}
    return made


def request(*combinations: tuple[str | None, str | None], **more: object) -> Json:
    """Return a plan of these front and rear tyres on the saloon of the story; None: the axle stays as it is."""
    story: Json = json.loads(STORY.read_text(encoding="utf-8"))
    made = [
        {name: wheel(tyre) for name, tyre in zip(("front", "rear"), pair, strict=True) if tyre is not None}
        for pair in combinations
    ]
    return {"rule_pack": story["rule_pack"], "vehicle": story["vehicle"], "combinations": made, **more}


def asked(made: Json) -> tuple[Case, Plan]:
    """Return case and plan of a request."""
    question = PlanRequest.model_validate(made)
    case = translate.question(question)
    return case, plan(case, plan_asked(question))


def planned(*combinations: tuple[str | None, str | None], **more: object) -> Plan:
    """Return the plan of these tyres."""
    return asked(request(*combinations, **more))[1]


def effect(found: Plan, name: EffectName, place: int = 0) -> Estimate[float]:
    """Return what is expected of a combination."""
    return found.bands[name][place]
