"""Questions of every kind by a seed: each place, odd days, numbers at the ends of what is allowed, parts left out.

Made from the wire models field by field, as `anything.py` does, but by a seed alone, so that a hundred thousand of them
are made in a moment.
"""

from __future__ import annotations

from functools import cache
from random import Random
from typing import Annotated, Any, Literal, get_args, get_origin

from annotated_types import Ge, Le
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from service.api.schemas.by_numbers import RimByNumbers, TyreByNumbers
from service.api.schemas.request import CheckRequest
from service.locales.speech import LANGUAGES
from service.rules.reader import pack_ids
from tests.support.anything import BOLT_CIRCLES, EXTREME_RIMS, EXTREME_TYRES, MEASURED
from tests.support.cases import Json
from tests.support.stories import PLAUSIBLE_RIMS, PLAUSIBLE_TYRES

# The dear ones less often.
ROUTES = (*("check",) * 14, *("compare",) * 6, *("rims",) * 4, *("drawing",) * 6, *("report",) * 6, "search", "plan")
TYRES_BY_NUMBERS: tuple[Json, ...] = (
    {"section_width_mm": 225, "aspect_ratio": 45, "rim_diameter_in": 17},
    {"section_width_mm": 205, "aspect_ratio": 55, "rim_diameter_in": 16, "load_index": 91, "speed_symbol": "V"},
    {
        "section_width_mm": 195,
        "rim_diameter_in": 14,
        "commercial": "C",
        "load_index": 106,
        "load_index_twin": 104,
        "speed_symbol": "R",
    },
    {"overall_diameter_in": 31, "section_width_in": 10.5, "rim_diameter_in": 15, "commercial": "LT"},
    {"section_width_mm": 500, "aspect_ratio": 15, "rim_diameter_in": 30, "load_index": 0, "speed_symbol": "B"},
)
RIMS_BY_NUMBERS: tuple[Json, ...] = (
    {"width_in": 7.5, "diameter_in": 17},
    {"width_in": 3, "diameter_in": 8, "offset_mm": -150},
    {"width_in": 16, "diameter_in": 30, "offset_mm": 150, "one_piece": False},
    {"width_in": 6, "diameter_in": 16, "flange": "J", "hump": "H2", "offset_mm": 45},
)
MOST_CANDIDATES = 3
# What takes long is asked now and then.
MOSTLY = 0.9


def asked(seed: int) -> tuple[str, Json]:
    """Return the route of a question and the question itself."""
    chance = Random(seed)
    route = ROUTES[seed % len(ROUTES)]
    question: Json = _part(CheckRequest, chance)
    candidate = question.pop("candidate")
    _take_spacers_off_twins(question["vehicle"], candidate)
    question.setdefault("language", chance.choice((LANGUAGES[0], *LANGUAGES)))
    if route != "check" or chance.random() < MOSTLY:
        question.pop("measure_first", None)
    if route in ("check", "drawing", "report"):
        if route != "check":
            question.pop("detail", None)
        return route, {**question, "candidate": candidate}
    question.pop("detail", None)
    return route, {**question, **_OF_MANY[route](chance, question)}


def _take_spacers_off_twins(vehicle: Json, *candidates: Json) -> None:
    """Leave out what a question refuses in words, and leave it in now and then."""
    for axle in ("front", "rear"):
        if vehicle[axle].get("wheels_per_side") == 2 and vehicle[axle].get("kerb_axle_mass_kg") != 20.0:
            for part in (vehicle[axle]["fitted"], *(each.get(axle, {}) for each in candidates)):
                part.pop("spacer_mm", None)


def _compared(chance: Random, question: Json) -> Json:
    model = CheckRequest.model_fields["candidate"].annotation
    candidates = [_part(model, chance) for _ in range(chance.randint(1, MOST_CANDIDATES))]
    _take_spacers_off_twins(question["vehicle"], *candidates)
    return {"candidates": candidates, "explain_first": chance.choice((0, 1))}


def _searched(chance: Random, _: Json) -> Json:
    rims = [_rim(chance) for _ in range(chance.randint(1, 2))]
    found: Json = {"rims": {"front": rims}, "max_results": chance.choice((1, 5))}
    if chance.random() < 0.7:
        found["stock"] = [{"size": size} for size in chance.sample((*EXTREME_TYRES, *PLAUSIBLE_TYRES), 6)]
    return found


def _rims(chance: Random, _: Json) -> Json:
    return {"tyres": {axle: [_tyre(chance)] for axle in ("front", "rear") if chance.random() < 0.8}}


def _planned(chance: Random, _: Json) -> Json:
    wheels = [{"tyre": _tyre(chance)} for _ in range(4)]
    return {"combinations": [{"front": wheels[0], "rear": wheels[1]}, {"rear": wheels[2]}, {"front": wheels[3]}]}


_OF_MANY = {"compare": _compared, "search": _searched, "rims": _rims, "plan": _planned}


def _part(model: Any, chance: Random) -> Json:
    """Return a part of a request, each optional field there or not."""
    likely = chance.choice((0.1, 0.5, 0.9))
    made: Json = {}
    for name, field, kind in _fields(model):
        if field.is_required() or chance.random() < likely:
            made[name] = _value(name, field, kind, chance)
    if issubclass(model, TyreByNumbers):
        return _designated(made, EXTREME_TYRES, PLAUSIBLE_TYRES, TYRES_BY_NUMBERS, chance)
    if issubclass(model, RimByNumbers):
        return _designated(made, EXTREME_RIMS, PLAUSIBLE_RIMS, RIMS_BY_NUMBERS, chance)
    return made


def _designated(
    made: Json, strange: tuple[str, ...], plausible: tuple[str, ...], numbers: tuple[Json, ...], chance: Random
) -> Json:
    if chance.random() < 0.1:
        return {**{name: value for name, value in made.items() if name not in MEASURED}, **chance.choice(numbers)}
    return {**made, "size": chance.choice(strange if chance.random() < 0.3 else plausible)}


def _tyre(chance: Random) -> Json:
    return _part(_wheel_model("tyre"), chance)


def _rim(chance: Random) -> Json:
    return _part(_wheel_model("rim"), chance)


@cache
def _wheel_model(name: str) -> Any:
    axle = CheckRequest.model_fields["vehicle"].annotation.model_fields["front"].annotation
    return axle.model_fields["fitted"].annotation.model_fields[name].annotation


@cache
def _fields(model: Any) -> tuple[tuple[str, FieldInfo, Any], ...]:
    """Return name, field and kind of what is put into a part; designations are put in by themselves."""
    skipped: set[str] = set()
    for numbers in (TyreByNumbers, RimByNumbers):
        if issubclass(model, numbers):
            skipped = set(numbers.model_fields) - MEASURED | {"size"}
    return tuple((name, field, _kind(field)) for name, field in model.model_fields.items() if name not in skipped)


def _kind(field: FieldInfo) -> Any:
    kind = getattr(field.annotation, "__value__", field.annotation)
    return get_args(kind)[0] if get_origin(kind) is Annotated else kind


def _value(name: str, field: FieldInfo, kind: Any, chance: Random) -> Any:
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return _part(kind, chance)
    if get_origin(kind) is Literal:
        return chance.choice(get_args(kind))
    if kind is bool:
        return chance.random() < 0.5
    if kind is str:
        return _text(name, chance)
    low = next(rule.ge for rule in field.metadata if isinstance(rule, Ge))
    high = next(rule.le for rule in field.metadata if isinstance(rule, Le))
    if kind is int:
        return chance.randint(low, high)
    example = field.examples[0] if field.examples else low
    return chance.choice((low, high, example, example, chance.uniform(low, high)))


def _text(name: str, chance: Random) -> str:
    if name in ("date", "built"):
        return f"{chance.randint(1950, 2030)}-{chance.randint(1, 12):02}-{chance.randint(1, 28):02}"
    if name == "rule_pack":
        return chance.choice(pack_ids())
    if name == "bolt_circle":
        return chance.choice(BOLT_CIRCLES)
    return chance.choice(("A", "=1+1", "<b>\N{GREEK SMALL LETTER OMEGA}</b>", "x" * 60))
