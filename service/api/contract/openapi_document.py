"""The OpenAPI document: the framework's, completed, without the framework's leftovers."""

from __future__ import annotations

from typing import Any, Final

import orjson
from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from service.api.contract.completion import complete
from service.api.contract.openness import name_words, open_answers, without_titles
from service.api.schemas.error_answer import Fault, Problem

SUMMARY: Final = "Says whether candidate tyres and rims fit a vehicle's axles, and what the change does."
_DESCRIPTION: Final = (
    "Every error is `application/problem+json` (RFC 9457). Bodies are strict JSON in UTF-8: no repeated keys, no "
    "unknown fields. Nothing is stored. Every answer carries `X-Request-ID`."
)


def document(app: FastAPI) -> dict[str, Any]:
    """Return the OpenAPI document of the app's routes, with the models of an error and no framework leftovers."""
    made = get_openapi(
        title="Fitment service",
        version=app.version,
        summary=SUMMARY,
        description=_DESCRIPTION,
        routes=app.routes,
        license_info={"name": "Apache-2.0", "identifier": "Apache-2.0"},
    )
    schemas: dict[str, Any] = made.setdefault("components", {}).setdefault("schemas", {})
    for leftover in ("HTTPValidationError", "ValidationError"):
        schemas.pop(leftover, None)
    for model in (Problem, Fault):
        schema = model.model_json_schema(mode="serialization", ref_template="#/components/schemas/{model}")
        schema.pop("$defs", None)
        schemas[model.__name__] = schema
    complete(made)
    open_answers(made)
    name_words(made)
    without_titles(made)
    return made


def document_bytes(app: FastAPI) -> bytes:
    """Return the document as kept in the repository: keys sorted, two spaces, newline at the end."""
    return orjson.dumps(app.openapi(), option=orjson.OPT_INDENT_2 | orjson.OPT_SORT_KEYS | orjson.OPT_APPEND_NEWLINE)
