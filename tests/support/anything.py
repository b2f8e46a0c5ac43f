"""Any request that the wire model admits, its extremes first: made from the model itself, field by field."""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args, get_origin

from annotated_types import Ge, Le
from hypothesis import strategies as st
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from service.api.schemas.by_numbers import RimByNumbers, TyreByNumbers
from service.api.schemas.request import CheckRequest
from service.rules.reader import pack_ids
from tests.support.cases import Json
from tests.support.stories import PLAUSIBLE_RIMS, PLAUSIBLE_TYRES

EXTREME_TYRES = (
    "54x4.00 R8 120/110A8",
    "24x19.99 D20LT",
    "31x10.50 R15LT 109R C",
    "60/15 R8 0B",
    "60/100 D30 279Y",
    "500/100 R30C 200/200P (279/0A1)",
    "500/15 B8.5",
    "60 R30",
    "500 D8 200A1",
    "155 R13 78S",
    "T500/100 R8 200Y",
    "HL60/15 ZRF30 (200Y)",
    "LT500/100-30 E",
    "205/55 ZR16 (91Y) XL M+S 3PMSF",
    "225/70 R15CP 112/110R",
    "185 R14C 102/100Q 8PR",
)
EXTREME_RIMS = (
    "3 x 8",
    "16J x 30 H2 ET150",
    "16P - 16.5 ET-150",
    "3B x 30 EH2+ ET0",
    "8.25 x 9",
    "30 x 3.5 J CH ET-99.99",
)
# Stands among the numbers of a tyre, and beside a designation is what was measured.
MEASURED = {"section_width_mm"}
BOLT_CIRCLES = ("5x112", "4/100", "3x98", "10x225", "5x114.3", "10x100")
DAYS = ("1900-01-01", "2006-12-31", "2024-09-30", "2026-11-24", "2099-12-31")


def any_requests() -> st.SearchStrategy[Json]:
    """Return requests of every shape, any optional field there or not."""
    return _model(CheckRequest)


def _model(model: type[BaseModel]) -> st.SearchStrategy[Json]:
    required = {name: _field(name, field) for name, field in model.model_fields.items() if field.is_required()}
    optional = {name: _field(name, field) for name, field in model.model_fields.items() if not field.is_required()}
    for numbers in (TyreByNumbers, RimByNumbers):
        if issubclass(model, numbers):
            # Any designation, as no number at random agrees with another; numbers have tests of their own.
            optional = {name: made for name, made in optional.items() if name not in set(numbers.model_fields)}
            optional |= {name: _field(name, model.model_fields[name]) for name in MEASURED & set(model.model_fields)}
            required["size"] = _field("size", model.model_fields["size"])
    return st.fixed_dictionaries(required, optional=optional)


def _field(name: str, field: FieldInfo) -> st.SearchStrategy[Any]:
    kind = getattr(field.annotation, "__value__", field.annotation)
    if get_origin(kind) is Annotated:
        kind = get_args(kind)[0]
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return _model(kind)
    if get_origin(kind) is Literal:
        return st.sampled_from(get_args(kind))
    if kind is bool:
        return st.booleans()
    if kind is str:
        return _text(name, field)
    low = next(rule.ge for rule in field.metadata if isinstance(rule, Ge))
    high = next(rule.le for rule in field.metadata if isinstance(rule, Le))
    if kind is int:
        return st.integers(low, high)
    return st.one_of(st.sampled_from((low, high)), st.floats(low, high), st.integers(round(low), round(high)))


def _text(name: str, field: FieldInfo) -> st.SearchStrategy[str]:
    examples = str(field.examples)
    if name in ("date", "built"):
        return st.sampled_from(DAYS)
    if name == "rule_pack":
        return st.sampled_from(pack_ids())
    if name == "bolt_circle":
        return st.sampled_from(BOLT_CIRCLES)
    if name == "label":
        return st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), max_size=80)
    if " x " in examples:
        return st.sampled_from((*EXTREME_RIMS, *PLAUSIBLE_RIMS))
    return st.sampled_from((*EXTREME_TYRES, *PLAUSIBLE_TYRES))
