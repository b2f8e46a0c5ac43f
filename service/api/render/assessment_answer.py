"""The answer to a check, with as much of it as was asked for. Nothing is computed here.

`short` is what a shop shows, `standard` leaves out what stands in another place of the answer or what few look at,
`full` has everything.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from service.api.render.driving_answer import add_driving
from service.api.render.figures_answer import axle_figures, key_figures, vehicle_figures
from service.api.render.findings_answer import action, brief, finding, head, line, sources, trade_off
from service.api.render.numbers import Json
from service.api.schemas.vocabulary import DetailName
from service.assessment.answer.assess import EVERYTHING, Assessment, Told
from service.assessment.answer.told import RETOLD
from service.assessment.answer.trade_offs import trade_offs_text
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, OPEN, OUTCOME_NAMES, Finding

# What a check may be asked for whatever it shows of the findings.
_NO_FINDINGS: dict[str, int] = dict.fromkeys(OUTCOME_NAMES, 0)
# What `standard` leaves out of the figures of a wheel and of the vehicle.
_OF_A_WHEEL = (
    "section_height_mm",
    "revolutions_per_km",
    "rolling_circumference_band_mm",
    "static_loaded_radius_mm",
    "wheel_mass_kg",
    "wheel_inertia_kg_m2",
)
_OF_THE_SPEEDOMETER = "readings"


def told_in(detail: DetailName) -> Told:
    """Return the mildest outcomes of which an answer in this detail has the sentence, and the remedy."""
    return {"short": Told(ADVISORY, NOT_ASSESSED), "standard": Told(OPEN, ADVISORY), "full": EVERYTHING}[detail]


def assessment(found: Assessment, detail: DetailName = "full") -> Json:
    """Return the answer to a check as plain data."""
    if detail == "short":
        return _short(found)
    case, counted = found.case, found.findings
    told = [each for each in counted if each.outcome != MET]
    whole = detail == "full"
    axles, vehicle = _figures(found, whole=whole)
    shown: Json = {
        "verdict": found.verdict,
        "summary": found.summary,
        **({"id": case.candidate.id} if case.candidate.id else {}),
        "label": case.candidate.label,
        "rule_pack": _rule_pack(found),
        "findings": [finding(each, whole=whole) if whole or each.outcome != MET else head(each) for each in counted],
        "finding_counts": _counts(counted),
        "axles": axles,
        "vehicle": vehicle,
        "trade_offs_text": trade_offs_text(found.trade_offs),
        "actions": [action(each, whole=whole) for each in found.actions],
        "assumptions": found.assumptions,
        "cautions": tuple(found.cautions.values()),
        "sources": sources(each.basis for each in (counted if whole else told)),
    }
    if whole:
        shown["trade_offs"] = list(map(trade_off, found.trade_offs))
        shown["sources"] |= sources(each.basis for each in found.trade_offs)
    return shown


def _short(found: Assessment) -> Json:
    pack = found.case.pack
    return {
        "verdict": found.verdict,
        "summary": found.summary,
        **({"id": found.case.candidate.id} if found.case.candidate.id else {}),
        "label": found.case.candidate.label,
        "rule_pack": {"id": pack.id, "edition": pack.edition},
        "findings": [brief(each) for each in found.findings if each.outcome not in (MET, OPEN)],
        "finding_counts": _counts(found.findings),
        "axles": {
            "front": key_figures(found.car.front, found.case.candidate.front),
            "rear": key_figures(found.car.rear, found.case.candidate.rear),
        },
        "actions": [line(each) for each in found.actions if not each.code.startswith(RETOLD)],
        "caution_codes": tuple(found.cautions),
    }


def _figures(found: Assessment, *, whole: bool) -> tuple[Json, Json]:
    """Return the figures of the axles and of the vehicle."""
    case, car = found.case, found.car
    patch_mm = car.front.now.behaviour.patch_width_mm
    axles = {
        "front": axle_figures(car.front, case.candidate.front, patch_mm),
        "rear": axle_figures(car.rear, case.candidate.rear, patch_mm),
    }
    vehicle = vehicle_figures(car)
    add_driving(axles, vehicle, found)
    if not whole:
        for axle in axles.values():
            for wheel in (axle["present"], axle["proposed"]):
                for name in _OF_A_WHEEL:
                    wheel.pop(name, None)
        vehicle["speedometer"].pop(_OF_THE_SPEEDOMETER)
    return axles, vehicle


def _counts(findings: Sequence[Finding]) -> Json:
    return _NO_FINDINGS | Counter(OUTCOME_NAMES[each.outcome] for each in findings)


def _rule_pack(found: Assessment) -> Json:
    pack, law = found.case.pack, found.law
    return {
        "id": pack.id,
        "edition": pack.edition,
        "rules_held": law.held,
        "rules_applied": law.applied,
        "rules_met": law.met,
        "not_held": pack.not_held,
    }
