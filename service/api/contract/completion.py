"""What the framework leaves out of the OpenAPI document: examples, every error, keys, headers, tags, links."""

from __future__ import annotations

from collections.abc import Iterator
from http import HTTPStatus
from typing import Final

import orjson

from service.api.contract.examples import EXAMPLES
from service.api.errors.problem import HEADERS, KINDS, MEDIA_TYPE, body
from service.api.errors.request_faults import domain_fault
from service.api.render.numbers import Json
from service.api.transport.security import PROTECTED_PREFIX
from service.core.errors import UnreadableDesignation
from service.core.saying import Amount, say

TAGS: Final = {
    "fitments": "Questions about candidate fitments on a vehicle.",
    "designations": "Tyre and rim designations taken apart.",
    "tables and rules": "The printed tables and the law of each place, with sources.",
    "operation": "For whoever runs the service.",
}
# Whatever it is asked, the service may answer these: a bad head or host, an unknown query parameter, a stop.
_ANYWHERE: Final = (400, 405, 408, 422, 431, 500, 503)
_WITH_KEY: Final = (401, 429)
_KEY: Final = "ApiKey"
_EXAMPLE_ID: Final = "7c1f0f4a9d3e4b5c8a6b2d1e0f9a8b7c"
_FAULT: Final = domain_fault(
    UnreadableDesignation(
        "tyre", 7, say("an aspect ratio from {low} to {high} per cent", low=Amount(15), high=Amount(100))
    ).at("/candidate/front/tyre/size")
)
_REQUEST_ID: Final = "X-Request-ID"
_RATE_HEADERS: Final = {
    "RateLimit-Policy": {
        "description": "Where keys are used: the quota q of requests with this key in a window of w seconds.",
        "schema": {"type": "string", "maxLength": 80},
        "example": '"key";q=50;w=1',
    },
    "RateLimit": {
        "description": "Where keys are used: how many requests remain (r), and in how many seconds there are more (t).",
        "schema": {"type": "string", "maxLength": 80},
        "example": '"key";r=49;t=1',
    },
}
_RATES: Final = {name: {"$ref": f"#/components/headers/{name}"} for name in _RATE_HEADERS}
# What a caller may follow: from the list of packs to one of them.
_LINKS: Final = {
    "list_rule_packs": {
        "first_pack": {
            "operationId": "read_rule_pack",
            "parameters": {"pack_id": "$response.body#/rule_packs/0/id"},
            "description": "The id of a pack leads to its rules.",
        }
    }
}
_CACHE_HEADERS: Final = {
    "ETag": {"description": "Send it as If-None-Match to be told when nothing changed.", "schema": {"type": "string"}},
    "Cache-Control": {"description": "How long a copy may be used.", "schema": {"type": "string"}},
}


def complete(document: Json) -> None:
    """Add to the framework's document what it does not know."""
    document["info"]["contact"] = {"name": "The operator of this service"}
    document["servers"] = [{"url": "/", "description": "The service that this document came from."}]
    document["tags"] = [{"name": name, "description": text} for name, text in TAGS.items()]
    # The empty object first: a service without keys in its settings is open.
    document["security"] = [{}, {_KEY: []}]
    components = document["components"]
    components["securitySchemes"] = {
        _KEY: {"type": "apiKey", "in": "header", "name": "X-API-Key", "description": "Where the operator asks for one."}
    }
    components["headers"] = {
        _REQUEST_ID: {
            "description": "Names this answer: the caller's own id where one was sent, else a new one.",
            "schema": {"type": "string", "maxLength": 128},
        }
    }
    used: set[int] = set()
    components["headers"] |= _RATE_HEADERS
    for path, operation in _operations(document):
        used |= _errors(path, operation)
        _answers(operation)
        if path.startswith(PROTECTED_PREFIX):
            operation["responses"]["200"]["headers"] |= _RATES
    components["responses"] = {_component(status): _problem(status) for status in sorted(used)}


def _operations(document: Json) -> Iterator[tuple[str, Json]]:
    for path, methods in document["paths"].items():
        for operation in methods.values():
            yield path, operation


def _component(status: int) -> str:
    return "".join(word.capitalize() for word in KINDS[status].name.split("-"))


def _problem(status: int) -> Json:
    """Return the documented form of a problem: its words, its headers, an example made like the real one."""
    kind = KINDS[status]
    faults = [_FAULT] if kind.name == "validation" else []
    detail = _FAULT.detail if faults else None
    rates = _RATES if status == HTTPStatus.TOO_MANY_REQUESTS else {}
    return {
        "description": f"{kind.title}.",
        "headers": HEADERS.get(status, {}) | rates | {_REQUEST_ID: {"$ref": f"#/components/headers/{_REQUEST_ID}"}},
        "content": {
            MEDIA_TYPE: {
                "schema": {"$ref": "#/components/schemas/Problem"},
                "example": orjson.loads(body(status, detail, _EXAMPLE_ID, faults)),
            }
        },
    }


def _errors(path: str, operation: Json) -> set[int]:
    """Refer to every problem that the operation may answer, and return their statuses."""
    responses = operation["responses"]
    documented = {int(status) for status in responses if status >= "400"} | set(_ANYWHERE)
    if path.startswith(PROTECTED_PREFIX):
        documented |= set(_WITH_KEY)
    else:
        operation["security"] = []
    for status in sorted(documented):
        responses[str(status)] = {"$ref": f"#/components/responses/{_component(status)}"}
    return documented


def _answers(operation: Json) -> None:
    """Give the operation's request and answer their examples, headers and links."""
    for parameter in operation.get("parameters", []):
        # Forms are filled in from here: they do not look for examples inside a schema.
        for example in parameter["schema"].get("examples", ())[:1]:
            parameter.setdefault("example", example)
    name = operation["operationId"]
    answer = operation["responses"]["200"]
    answer["description"] = "The answer."
    headers: Json = {_REQUEST_ID: {"$ref": f"#/components/headers/{_REQUEST_ID}"}}
    if "304" in operation["responses"]:
        headers = _CACHE_HEADERS | headers
        operation["responses"]["304"]["headers"] = headers
    answer["headers"] = answer.get("headers", {}) | headers
    if name in _LINKS:
        answer["links"] = _LINKS[name]
    if name in EXAMPLES:
        example = EXAMPLES[name]()
        answer["content"][example.media_type].setdefault("example", orjson.loads(orjson.dumps(example.answer)))
        if example.request is not None:
            (taken,) = operation["requestBody"]["content"].values()
            taken.setdefault("example", example.request)
