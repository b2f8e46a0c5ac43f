"""Requests and answers that the OpenAPI document shows: invented vehicles, and what the service really answers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final, NamedTuple

import orjson

from service.api.inbound import translate
from service.api.inbound.candidate_lists import read_candidates, read_stock
from service.api.inbound.plan_question import plan_asked
from service.api.render import assessment_answer as render
from service.api.render import comparison_answer as render_comparison
from service.api.render import plan_answer as render_plan
from service.api.render import reference as render_reference
from service.api.render import rims_answer as render_rims
from service.api.render import search_answer as render_search
from service.api.render.numbers import Json
from service.api.schemas.comparison import CompareRequest
from service.api.schemas.planned import PlanRequest
from service.api.schemas.request import CheckRequest
from service.api.schemas.rims import RimsRequest
from service.api.schemas.search import SearchRequest
from service.api.transport.request_body import NDJSON_MEDIA_TYPE
from service.assessment.answer.assess import assess
from service.assessment.batch.compare import compare
from service.assessment.batch.plan import plan
from service.assessment.batch.rim_search import rims_for
from service.assessment.batch.size_search import search
from service.assessment.batch.sizes import stock as sizes_of
from service.core.version import VERSION
from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre
from service.locales.speech import ENGLISH
from service.rules.reader import default_packs, pack_named
from service.standards import catalogue

JSON: Final = "application/json"
SVG: Final = "image/svg+xml"
HTML: Final = "text/html"
TYRE: Final = "225/70R15C 112/110R (115N)"
RIM: Final = "8J x 18 H2 ET45"
# Short ones: an example shall be read, not scrolled.
TABLE: Final = "rim-width"
PACK: Final = "nz"


class Example(NamedTuple):
    """What an operation may be sent, and the media type and content of its answer."""

    request: Json | str | None
    answer: object
    media_type: str = JSON


def _fitment(tyre: str, rim: str, pressure_kpa: float, tread_depth_mm: float) -> Json:
    return {
        "tyre": {"size": tyre, "tread_depth_mm": tread_depth_mm},
        "rim": {"size": rim, "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 690},
        "pressure_kpa": pressure_kpa,
    }


def _axle(max_mass_kg: float, kerb_mass_kg: float) -> Json:
    return {
        "max_axle_mass_kg": max_mass_kg,
        "kerb_axle_mass_kg": kerb_mass_kg,
        "track_mm": 1548,
        "hub": {"bolt_circle": "5x112", "centre_bore_mm": 66.6},
        "clearance": {"inboard_mm": 18, "outboard_mm": 20, "radial_mm": 25},
        "min_rim_diameter_in": 17,
        "fitted": _fitment("215/45 R18 93W XL", "7.5J x 18 H2 ET45", 240, 6),
    }


def vehicle() -> Json:
    """Return the saloon of the examples."""
    return {
        "category": "M1",
        "max_speed_kmh": 228,
        "driven_axle": "rear",
        "wheelbase_mm": 2760,
        "centre_of_gravity_height_mm": 540,
        "speedometer": {"displayed_kmh": 100, "true_kmh": 97},
        "front": _axle(960, 790),
        "rear": _axle(1040, 760),
    }


def candidate() -> Json:
    """Return a candidate for it, one step wider."""
    proposed = _fitment("235/40 R18 95Y XL", "8J x 18 H2 ET45", 250, 8)
    return {"label": "one step wider", "front": proposed, "rear": proposed}


def _check() -> Example:
    asked = {"rule_pack": "unece", "vehicle": vehicle(), "candidate": candidate()}
    answer = render.assessment(assess(translate.case(CheckRequest.model_validate(asked))))
    # There and back: parts of an answer are ready to be sent and no plain data any more.
    return Example(asked, orjson.loads(orjson.dumps(answer)))


def _check_lines() -> Example:
    """Return one line: a text is hard enough to read."""
    asked = {"vehicle": vehicle(), "candidate": candidate(), "detail": "short"}
    answer = render.assessment(assess(translate.case(CheckRequest.model_validate(asked))), "short")
    return Example(_line(asked), _line({"line": 1, "status": 200, "assessment": answer}), NDJSON_MEDIA_TYPE)


def _line(value: Json) -> str:
    return f"{orjson.dumps(value).decode()}\n"


def _compare() -> Example:
    narrower = _fitment("215/45 R18 93W XL", "8J x 18 H2 ET45", 250, 8)
    candidates = [candidate(), {"label": "the same tyre, a wider rim", "front": narrower, "rear": narrower}]
    asked = {"rule_pack": "unece", "vehicle": vehicle(), "candidates": candidates, "explain_first": 1}
    question = CompareRequest.model_validate(asked)
    case = translate.question(question)
    read = read_candidates(question.candidates, case.vehicle)
    found = compare(case, read.candidates, question.rank_by)
    answer = render_comparison.comparison(case, read, found, question, ENGLISH)
    return Example(asked, answer)


def _compare_csv() -> Example:
    asked, answer, _ = _compare()
    shown = orjson.loads(orjson.dumps(answer))
    return Example(asked, render_comparison.table(shown), render_comparison.CSV_MEDIA_TYPE)


def _compare_svg() -> Example:
    return _drawing()._replace(request=_compare().request)


def _search() -> Example:
    rim = candidate()["front"]["rim"]
    asked = {
        "rule_pack": "unece",
        "vehicle": vehicle(),
        "rims": {"front": [rim]},
        "stock": [
            {"id": "A-1042", "size": "235/40 R18 95Y XL"},
            {"id": "A-1043", "size": "225/45 R18 95Y XL"},
            {"id": "A-1044", "size": "215/45 R18 89W"},
        ],
        "max_results": 1,
    }
    question = SearchRequest.model_validate(asked)
    stock, rims = read_stock(question.stock), [translate.rim(each) for each in question.rims.front]
    case = translate.question(question)
    found = search(case, sizes_of(stock.designations), (rims, rims), translate.wanted(question))
    return Example(asked, render_search.search_result(question, case, found, stock.indices, stock.refused, ENGLISH))


def _plan() -> Example:
    asked = {
        "rule_pack": "unece",
        "vehicle": vehicle(),
        "combinations": [
            {"id": "A", "label": "one step wider", "front": _planned(), "rear": _planned()},
            {"id": "B", "label": "one step wider at the rear", "rear": _planned()},
        ],
        "repeatability": {"braking_distance_percent": 0.8},
    }
    question = PlanRequest.model_validate(asked)
    case = translate.question(question)
    return Example(asked, render_plan.plan_result(case, plan(case, plan_asked(question))))


def _plan_csv() -> Example:
    asked, answer, _ = _plan()
    shown = orjson.loads(orjson.dumps(answer))
    return Example(asked, render_plan.plan_table(shown), render_comparison.CSV_MEDIA_TYPE)


def _plan_page() -> Example:
    return _report()._replace(request=_plan().request)


def _planned() -> Json:
    return {"tyre": {"size": "235/40 R18 95Y XL", "tread_depth_mm": 8}}


def _rims() -> Example:
    tyre = candidate()["front"]["tyre"]["size"]
    asked = {"rule_pack": "unece", "vehicle": vehicle(), "tyres": {"front": [{"size": tyre}]}}
    question = RimsRequest.model_validate(asked)
    case = translate.question(question)
    return Example(asked, render_rims.rims_result(case, rims_for(case, translate.rims_asked(question))))


def _drawing() -> Example:
    return Example(_check().request, '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1200 800">…</svg>', SVG)


def _report() -> Example:
    return Example(_check().request, "<!doctype html><html>…</html>", HTML)


def _health() -> Example:
    return Example(None, {"status": "ok", "version": VERSION})


def _metrics() -> Example:
    return Example(None, 'fitment_verdicts_total{verdict="suitable"} 12.0\n', "text/plain")


# By operation id; made when the document is, and not before.
EXAMPLES: Final[Mapping[str, Callable[[], Example]]] = {
    "check_fitment": _check,
    "check_fitment_lines": _check_lines,
    "compare_fitments": _compare,
    "compare_fitments_csv": _compare_csv,
    "compare_fitments_svg": _compare_svg,
    "search_fitments": _search,
    "find_rims": _rims,
    "plan_fitments": _plan,
    "plan_fitments_csv": _plan_csv,
    "plan_fitments_page": _plan_page,
    "draw_fitment": _drawing,
    "report_fitment": _report,
    "read_tyre_designation": lambda: Example(None, render_reference.designation(parse_tyre(TYRE))),
    "read_rim_designation": lambda: Example(None, render_reference.designation(parse_rim(RIM))),
    "read_table": lambda: Example(None, render_reference.table(catalogue.table(TABLE))),
    "list_rule_packs": lambda: Example(None, render_reference.rule_packs(default_packs())),
    "read_rule_pack": lambda: Example(None, render_reference.rule_pack(pack_named(PACK))),
    "read_liveness": _health,
    "read_readiness": _health,
    "read_metrics": _metrics,
}
