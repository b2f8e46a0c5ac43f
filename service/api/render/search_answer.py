"""The answer to `search`."""

from __future__ import annotations

from collections.abc import Sequence

from service.api.errors.problem import member
from service.api.inbound.candidate_lists import UnreadLine
from service.api.render.assessment_answer import told_in
from service.api.render.needs_answer import both_needs
from service.api.render.numbers import Json
from service.api.render.rows import explain, rows
from service.api.schemas.search import MAX_STOCK_FAULTS, OfferedRim, SearchRequest
from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.on_assumption import taken
from service.assessment.batch.compare import explained
from service.assessment.batch.left_out import Sieve, reason_in_words
from service.assessment.batch.size_search import GRID_NOTE, NEW_NOTE, Found
from service.assessment.case import Case, Fitment
from service.core.numeric import known
from service.locales.speech import Speech


def search_result(
    asked: SearchRequest,
    case: Case,
    found: Found,
    read: Sequence[int] | None,
    refused: Sequence[UnreadLine],
    said: Speech,
) -> Json:
    """Return the answer to a search; `read` names the places in the stock that were read, None for the grid."""
    listed, cited = _rows(asked, case, found, read)
    return {
        "rule_pack": {"id": case.pack.id, "edition": case.pack.edition},
        "rank_by": asked.rank_by,
        "rows": listed,
        **({"why_none": found.why_none} if found.why_none else {}),
        "needs": both_needs(case, found.needs),
        "sieves": {
            "front": _sieve(found.front, found.defaults),
            "rear": _sieve(found.rear, found.defaults),
            "pairs": _sieve(found.pairs, found.defaults),
        },
        "refused": [_refused(each, said) for each in refused[:MAX_STOCK_FAULTS]],
        "refused_count": len(refused),
        "notes": [*([] if read is not None else [GRID_NOTE]), NEW_NOTE, *taken(case.vehicle)],
        **({"sources": cited} if cited else {}),
        "cautions": tuple(CAUTIONS.values()),
    }


def _rows(asked: SearchRequest, case: Case, found: Found, read: Sequence[int] | None) -> tuple[list[Json], Json]:
    """Return the rows, and the documents that they name where they do."""
    cited: Json = {}
    if found.compared is None:
        return [], cited
    offered = asked.rims.front, asked.rims.rear or asked.rims.front
    # The check knows no `id` of a rim.
    front_rims, rear_rims = ([each.model_dump(exclude_unset=True, exclude={"id"}) for each in axle] for axle in offered)
    made = rows(found.compared, asked.detail)
    for row, candidate, hit in zip(made, found.candidates, found.hits, strict=True):
        front, rear = candidate.front, candidate.rear
        row["fitment"] = {
            "front": _axle(front, hit.front_rim, offered[0]) | _line(asked, read, hit.front_size),
            "rear": _axle(rear, hit.rear_rim, offered[1]) | _line(asked, read, hit.rear_size),
        }
        row["candidate"] = {
            "front": _candidate(front, front_rims[hit.front_rim]),
            "rear": _candidate(rear, rear_rims[hit.rear_rim]),
        }
    order: list[int] = found.compared.order.tolist()
    first = order[: asked.explain_first]
    for at, whole in zip(
        first, explained(case, [found.candidates[at] for at in first], told_in(asked.detail)), strict=True
    ):
        cited |= explain(made[at], whole, "/candidate", asked.detail)
    return [made[at] for at in order], cited


def _axle(fitted: Fitment, rim_index: int, rims: Sequence[OfferedRim]) -> Json:
    shown: Json = {"tyre": fitted.tyre.designation.canonical, "rim_index": rim_index, **_pressure(fitted)}
    return shown | _id("rim_id", rims[rim_index].id)


def _line(asked: SearchRequest, read: Sequence[int] | None, size: int) -> Json:
    """Return which line of the stock a size comes from; nothing for the grid."""
    return {} if read is None else {"stock_index": read[size], **_id("stock_id", asked.stock[read[size]].id)}


def _id(name: str, value: str) -> Json:
    return {name: value} if value else {}


def _refused(line: UnreadLine, said: Speech) -> Json:
    return member(line.fault, said) | _id("id", line.id)


def _candidate(fitted: Fitment, rim: Json) -> Json:
    return {
        "tyre": {"size": fitted.tyre.designation.canonical, "tread_depth_mm": fitted.tyre.tread_depth_mm},
        "rim": rim,
        **_pressure(fitted),
    }


def _pressure(fitted: Fitment) -> Json:
    """Return the pressure to set; absent where only the sidewall tells it."""
    return {"pressure_kpa": fitted.pressure_kpa} if known(fitted.pressure_kpa) else {}


def _sieve(found: Sieve, defaults: frozenset[str]) -> Json:
    return {
        "tried": found.tried,
        "kept": found.kept,
        "removed_by": [
            {"code": code, "count": count, "text": reason_in_words(code), "by_default": code in defaults}
            for code, count in found.removed.most_common()
            if count
        ],
    }
