"""The OpenAPI document: the framework's, completed, without the framework's leftovers."""

from __future__ import annotations

from typing import Any, Final

import orjson
from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from service.api.contract.completion import complete
from service.api.contract.openness import name_words, open_answers, without_titles
from service.api.contract.places import tell_places
from service.api.schemas.error_answer import Fault, Problem

SUMMARY: Final = "Says whether candidate tyres and rims fit a vehicle's axles, and what the change does."
_DESCRIPTION: Final = """\
**The first minute.** Open `POST /v1/fitments/check`, send its example and read `verdict`, `summary` and `actions`.
Then put in your car: for each axle its greatest permitted mass and what is fitted now, the top speed, and the tyre
and rim you want. Leave out what you do not know: it comes back as a finding `not_assessed` that names the field.
The routes stand below in the order in which most callers need them.

**Where the numbers stand.** Field descriptions say where a number is found: letters such as F, J, M, N and T are
the codes of the harmonised registration certificate (Directive 1999/37/EC), the rest stands in the certificate of
conformity, on the plate on the door pillar, on the sidewall or on the back of the wheel, or is measured. These
places are told from memory and differ between countries and makers.

**Good to know.** Nothing is stored and nothing is looked up: the same request, version and edition of the rules
give the same bytes, so a `POST` is safe to repeat, after a timeout as well. Bodies are strict JSON in UTF-8: no
repeated keys, no unknown fields; `null` is read as absent. Answers may gain members and words in a later version:
ignore what you do not know. Every error is `application/problem+json` (RFC 9457), every answer carries
`X-Request-ID`. The service compresses nothing: that is left to the proxy in front of it.
"""


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
    tell_places(made)
    open_answers(made)
    name_words(made)
    without_titles(made)
    return made


def document_bytes(app: FastAPI) -> bytes:
    """Return the document as kept in the repository: keys sorted but for the paths, two spaces, newline at the end."""
    made = {name: part if name == "paths" else _sorted(part) for name, part in sorted(app.openapi().items())}
    # Readers show the paths as they come, in the order of use.
    made["paths"] = {path: _sorted(operations) for path, operations in made["paths"].items()}
    return orjson.dumps(made, option=orjson.OPT_INDENT_2 | orjson.OPT_APPEND_NEWLINE)


def _sorted(part: Any) -> Any:  # noqa: ANN401 - any value of JSON
    """Return the part with the keys of every object sorted."""
    if isinstance(part, dict):
        return {name: _sorted(part[name]) for name in sorted(part)}
    return [_sorted(each) for each in part] if isinstance(part, list) else part
