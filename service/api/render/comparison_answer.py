"""The answer to `compare`, as an object and as a table."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from service.api.errors.problem import member
from service.api.inbound.candidate_lists import Read, Refused
from service.api.render.assessment_answer import told_in
from service.api.render.csv_cells import written
from service.api.render.numbers import Json
from service.api.render.rows import explain, rows
from service.api.schemas.comparison import CompareRequest
from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.on_assumption import taken
from service.assessment.answer.verdict import VERDICTS, Verdict
from service.assessment.batch.compare import Compared, explained
from service.assessment.case import Case
from service.core.saying import Amount, Said, joined, say
from service.locales.speech import Speech

CSV_MEDIA_TYPE = "text/csv"
# The columns of the table, in their order; a column that no row has stays empty.
_NUMBERS = ("value", "low", "high")
_AXLE_COLUMNS = (
    "overall_diameter_percent",
    "section_width_mm",
    "inboard_edge_mm",
    "outboard_edge_mm",
    "load_margin_percent",
    *(f"cornering_stiffness_percent.{end}" for end in _NUMBERS),
    *(f"aquaplaning_onset_percent.{end}" for end in _NUMBERS),
)
COLUMNS = (
    *("rank", "index", "id", "label", "verdict", "changed", "change"),
    *("set_pressure_kpa.front", "set_pressure_kpa.rear", "reason", "first_remedy"),
    *("not_bettered", "gains", "losses"),
    *(
        f"measures.{name}"
        for name in (
            "dry_grip_percent",
            "braking_distance_percent",
            "wet_margin_percent",
            "balance_deg_per_g",
            "load_margin_percent",
            "diameter_deviation_percent",
        )
    ),
    *(f"axles.{axle}.{name}" for axle in ("front", "rear") for name in _AXLE_COLUMNS),
    *(f"vehicle.understeer_gradient_change_deg_per_g.{end}" for end in _NUMBERS),
    *("vehicle.direction", "vehicle.degree"),
    *("vehicle.axle_circumference_ratio_change_percent", "vehicle.speedometer_lead_percent"),
    *("findings", "summary", "actions", "errors"),
)


def comparison(case: Case, read: Read, found: Compared | None, asked: CompareRequest, said: Speech) -> Json:
    """Return the answer to a comparison; `found` is None where no candidate could be read."""
    shown, cited = ([], {}) if found is None else _rows(case, read, found, asked)
    left_out = len(read.indices) - len(shown)
    none = {"why_none": _why_none(found, left_out)} if found is not None and not shown else {}
    return {
        "rule_pack": {"id": case.pack.id, "edition": case.pack.edition},
        "rank_by": asked.rank_by,
        "compared": len(read.indices),
        "refused_count": len(read.refused),
        "left_out": left_out,
        **none,
        "rows": shown,
        "refused": [_refused(each, said) for each in read.refused],
        **cited,
        **({"notes": list(taken(case.vehicle))} if case.vehicle.assumes else {}),
        "cautions": tuple(CAUTIONS.values()),
    }


def _why_none(found: Compared, left_out: int) -> Said:
    counts = np.bincount(found.graded.verdicts, minlength=len(VERDICTS)).tolist()
    told = joined(_of_verdict(name, count) for name, count in zip(VERDICTS, counts, strict=True) if count)
    return say(
        "The verdicts asked for leave out every candidate: of {total}, {told}.", total=Amount(left_out), told=told
    )


def _of_verdict(verdict: Verdict, count: int) -> Said:
    """Return how many candidates came out like this, behind the number of all."""
    number = Amount(count)
    if verdict == "suitable":
        return say("{count} fit", count=number)
    if verdict == "suitable_with_conditions":
        return say("{count} fit with conditions", count=number)
    if verdict == "undetermined":
        return say("{count} are not known yet", count=number)
    if verdict == "not_recommended":
        return say("{count} are advised against", count=number)
    return say("{count} do not fit", count=number)


def _rows(case: Case, read: Read, found: Compared, asked: CompareRequest) -> tuple[list[Json], Json]:
    """Return the rows, and the documents that they name where they do."""
    made = rows(found, asked.detail)
    cited: Json = {}
    order: list[int] = [at for at in found.order.tolist() if made[at]["verdict"] in asked.verdicts]
    first = order[: asked.explain_first]
    for at, whole in zip(
        first, explained(case, [read.candidates[at] for at in first], told_in(asked.detail)), strict=True
    ):
        cited |= explain(made[at], whole, f"/candidates/{read.indices[at]}", asked.detail)
    shown = [
        {"index": read.indices[at], **_id(read.ids[at]), "label": read.candidates[at].label, **made[at]} for at in order
    ]
    return shown, {"sources": cited} if cited else {}


def _id(name: str) -> Json:
    return {"id": name} if name else {}


def _refused(each: Refused, said: Speech) -> Json:
    return {
        "index": each.place,
        **_id(each.id),
        "label": each.label,
        "errors": [member(fault, said) for fault in each.faults],
        "error_count": each.fault_count,
    }


def table(answer: Json) -> str:
    """Return the rows of a comparison as CSV (RFC 4180) with a header line."""
    return written(COLUMNS, (dict(_cells(row, "")) for row in (*answer["rows"], *answer["refused"])))


def _cells(part: Mapping[str, object], prefix: str) -> Iterator[tuple[str, object]]:
    for name, value in part.items():
        if isinstance(value, dict):
            yield from _cells(value, f"{prefix}{name}.")
        elif isinstance(value, list):
            yield prefix + name, "; ".join(_words(each) for each in value)
        elif isinstance(value, bool):
            yield prefix + name, str(value).lower()
        else:
            yield prefix + name, value


def _words(item: object) -> str:
    """Return one finding, fault or word of a list in words."""
    if not isinstance(item, dict):
        return str(item)
    if "pointer" in item:
        return f"{item['pointer']}: {item['detail']}"
    if "text" in item:
        return str(item["text"])
    numbers = "".join(f" {name} {item[name]}" for name in ("measured", "limit") if name in item)
    unit = f" {item['unit']}" if "unit" in item else ""
    return f"{item['axle']} {item['code']} {item['outcome']}{numbers}{unit}"
