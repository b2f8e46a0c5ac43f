"""The printed tables, cacheable: they change with the service's version only."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Annotated, Any

import orjson
from fastapi import APIRouter, Path, Request, Response

from service.api.errors.problem import HttpProblem, problem_responses
from service.api.render import reference as render
from service.api.schemas.printed_table import Table
from service.api.schemas.rule_pack import PackList, RulePack
from service.api.transport.routes import StrictRoute
from service.api.transport.validators import cacheable, entity_tag
from service.core.errors import unknown_name
from service.rules.reader import default_packs, pack_ids, pack_named
from service.standards import catalogue

router = APIRouter(prefix="/v1", route_class=StrictRoute, tags=["tables and rules"])

MAX_AGE_S = 3600


@cache
def _document(kind: str, name: str) -> tuple[bytes, str]:
    """Return a document's bytes and its entity tag; made once, for there are a few dozen."""
    if kind == "table":
        shown = render.table(catalogue.table(name))
    elif kind == "pack":
        shown = render.rule_pack(pack_named(name))
    else:
        shown = render.rule_packs(default_packs())
    content = orjson.dumps(shown)
    return content, entity_tag(content)


def _cacheable(request: Request, kind: str, name: str = "") -> Response:
    content, tag = _document(kind, name)
    return cacheable(request, content, "application/json", {"Cache-Control": f"public, max-age={MAX_AGE_S}"}, tag)


def _name_tables(schema: dict[str, Any]) -> None:
    _choose(schema, catalogue.TABLE_NAMES)


def _name_packs(schema: dict[str, Any]) -> None:
    _choose(schema, pack_ids())


def _choose(schema: dict[str, Any], names: Iterable[str]) -> None:
    """Let the document name what there is, without a greatest length, beside which Go clients do not compile."""
    schema["enum"] = list(names)
    del schema["maxLength"]


NOT_MODIFIED: dict[int | str, dict[str, Any]] = {304: {"description": "The caller's copy is still right."}}


@router.get(
    "/tables/{name}",
    summary="Give a printed table with its source and status",
    operation_id="read_table",
    response_model=Table,
    responses={**NOT_MODIFIED, **problem_responses(404, 405, 422, 500)},
)
async def table(
    request: Request,
    name: Annotated[
        str,
        Path(description="Name of the table.", max_length=40, examples=["load-index"], json_schema_extra=_name_tables),
    ],
) -> Response:
    """Give a table; cacheable by its entity tag."""
    if name not in catalogue.TABLE_NAMES:
        raise HttpProblem(404, unknown_name("table", catalogue.TABLE_NAMES))
    return _cacheable(request, "table", name)


@router.get(
    "/rule-packs",
    summary="List the places whose rules are known",
    operation_id="list_rule_packs",
    response_model=PackList,
    responses={**NOT_MODIFIED, **problem_responses(405, 422, 500)},
)
async def packs(request: Request) -> Response:
    """Give the list; cacheable by its entity tag."""
    return _cacheable(request, "packs")


@router.get(
    "/rule-packs/{pack_id}",
    summary="Give the rules of a place",
    operation_id="read_rule_pack",
    response_model=RulePack,
    responses={**NOT_MODIFIED, **problem_responses(404, 405, 422, 500)},
)
async def pack(
    request: Request,
    pack_id: Annotated[
        str, Path(description="Id of the pack.", max_length=20, examples=["nl"], json_schema_extra=_name_packs)
    ],
) -> Response:
    """Give every rule with value, unit, article, validity, day checked and status; cacheable by its entity tag."""
    if pack_id not in pack_ids():
        raise HttpProblem(404, unknown_name("rule pack", pack_ids()))
    return _cacheable(request, "pack", pack_id)
