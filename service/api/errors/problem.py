"""The one map from error to answer: every refusal and failure leaves as RFC 9457 problem+json.

`type` is `/problems/NAME`, with the names of `KINDS`: stable words to compare, and a page that says what each means.
`instance` is `urn:fitment:request:ID` with the value of X-Request-ID.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from http import HTTPStatus
from typing import Any, NamedTuple

import orjson
from fastapi import FastAPI, Request, Response
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.routing import Match
from starlette.types import Scope

from service.api.errors.request_faults import RequestFault, domain_fault, validation_faults
from service.core.errors import DomainError, UnknownName
from service.core.saying import Amount, Said, say, sentences
from service.locales.speech import ENGLISH, Speech

MEDIA_TYPE = "application/problem+json"
MAX_FAULTS = 20
MAX_ECHO = 200
MAX_DETAIL = 400


class Kind(NamedTuple):
    """The name, the title and the usual advice of one kind of problem."""

    name: str
    title: Said
    detail: Said


KINDS: Mapping[int, Kind] = {
    400: Kind("malformed", say("The request cannot be read"), say("Send a well-formed request.")),
    401: Kind("unauthorized", say("A valid API key is needed"), say("Send a valid key in the header X-API-Key.")),
    403: Kind("forbidden", say("This is not allowed"), say("The origin or the key does not permit this.")),
    404: Kind("not-found", say("There is nothing here"), say("GET /openapi.json lists what there is.")),
    405: Kind(
        "method-not-allowed", say("The method does not suit this path"), say("The header Allow lists the methods.")
    ),
    406: Kind(
        "not-acceptable", say("The answer has no such form"), say("Ask for a media type that the route documents.")
    ),
    408: Kind("timeout", say("The request did not arrive in time"), say("Send head and body without pausing.")),
    413: Kind("too-large", say("The body is too large"), say("Send fewer bytes.")),
    415: Kind(
        "unsupported-media-type",
        say("The body has the wrong form"),
        say("Send uncompressed application/json in UTF-8."),
    ),
    422: Kind(
        "validation",
        say("The request has faults"),
        say("The list errors says what is wrong, and where."),
    ),
    429: Kind("too-many-requests", say("Too many requests with this key"), say("Wait as long as Retry-After says.")),
    431: Kind("head-too-large", say("The head of the request is too large"), say("Send fewer or shorter headers.")),
    500: Kind(
        "failure", say("The service failed"), say("This is the service's fault; report X-Request-ID to its operator.")
    ),
    503: Kind("busy", say("The service is busy"), say("Wait as long as Retry-After says.")),
}

_PARAMETERS = ("query", "path")
# Also what turns the direction of the text around it, or hides.
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ud800-\udfff\ufeff]")


class HttpProblem(Exception):
    """A refusal decided by the HTTP room itself: status, advice, headers, faults."""

    def __init__(
        self,
        status: int,
        detail: Said | None = None,
        *,
        headers: Mapping[str, str] | None = None,
        faults: Sequence[RequestFault] = (),
    ) -> None:
        super().__init__(detail)
        self.status = status
        self.detail = detail
        self.headers = headers
        self.faults = faults

    @property
    def words(self) -> Said:
        """Return what is wrong here, or the usual advice for such a problem."""
        return self.detail or kind_of(self.status).detail


def kind_of(status: int) -> Kind:
    """Return the kind of problem that a status stands for."""
    return KINDS.get(status) or KINDS[500 if status >= HTTPStatus.INTERNAL_SERVER_ERROR else 400]


def clean(text: str, limit: int = MAX_ECHO) -> str:
    """Return the text cut to the limit, with every control character and lone surrogate replaced."""
    cut = text if len(text) <= limit else f"{text[: limit - 1]}…"
    return _CONTROL.sub("\N{REPLACEMENT CHARACTER}", cut)


def body(
    status: int,
    detail: Said | None,
    request_id: str,
    faults: Sequence[RequestFault] = (),
    *,
    count: int = 0,
    said: Speech = ENGLISH,
) -> bytes:
    """Return the bytes of a problem in the caller's language; the same for the application and the server beneath."""
    kind = kind_of(status)
    return orjson.dumps(
        {
            "type": f"/problems/{kind.name}",
            "title": said.say(kind.title),
            "status": status,
            "detail": clean(said.say(kind.detail if detail is None else detail), MAX_DETAIL),
            "instance": f"urn:fitment:request:{request_id}",
            "errors": [member(fault, said) for fault in faults[:MAX_FAULTS]],
            "error_count": max(count, len(faults)),
        }
    )


def member(fault: RequestFault, said: Speech = ENGLISH) -> dict[str, object]:
    """Return a fault as plain data, in the caller's language, cut and cleaned."""
    # No member of a body is called query or path, so what begins so is a parameter.
    _, where, *name = fault.pointer.split("/", 2)[:3] if fault.pointer else ("", "")
    place = {"parameter": clean(name[0])} if where in _PARAMETERS and name else {"pointer": clean(fault.pointer)}
    shown: dict[str, object] = {**place, "detail": clean(said.say(fault.detail), MAX_DETAIL), "code": fault.code}
    if fault.position is not None:
        shown |= {"position": fault.position, "expected": clean(said.say(fault.expected)) if fault.expected else ""}
    if fault.did_you_mean is not None:
        shown["did_you_mean"] = clean(fault.did_you_mean)
    return shown


def refusal(error: Exception, route: object) -> tuple[HttpProblem, int]:
    """Return an error that a request can be blamed for as a problem, and how many faults were found.

    `route` is who read the request; any other error is raised again.
    """
    if isinstance(error, DomainError):
        # A name without a pointer came in the path: the thing asked for is not there.
        missing = isinstance(error, UnknownName) and not error.pointer
        return HttpProblem(404 if missing else 422, error.detail, faults=[domain_fault(error)]), 0
    if isinstance(error, RequestValidationError):
        found = error.errors()
        count = len(found)
        faults = validation_faults(found[:MAX_FAULTS], error.body, route)
        return HttpProblem(422, faults[0].detail if count == 1 else _counted(count, len(faults)), faults=faults), count
    if not isinstance(error, HttpProblem):
        raise error
    return error, 0


async def answer(request: Request, error: Exception) -> Response:
    """Return the answer for any known kind of error."""
    if isinstance(error, HTTPException):
        # The framework's own words for a status are dropped: `KINDS` has better ones.
        hint = _without_slash(request) if error.status_code == HTTPStatus.NOT_FOUND else None
        error = HttpProblem(error.status_code, hint, headers=error.headers)
    problem, count = refusal(error, request.scope.get("route"))
    headers = dict(problem.headers or {})
    if problem.status == HTTPStatus.METHOD_NOT_ALLOWED:
        headers["Allow"] = ", ".join(allowed_methods(request.app, request.scope))
    said: Speech = request.scope.get("speech", ENGLISH)
    content = body(
        problem.status, problem.detail, request.scope.get("request_id", ""), problem.faults, count=count, said=said
    )
    return Response(content, problem.status, headers, MEDIA_TYPE)


def _counted(count: int, listed: int) -> Said:
    if count == listed:
        return say("{count} faults were found; see errors.", count=Amount(count))
    return say(
        "{count} faults were found; errors lists the first {listed}.", count=Amount(count), listed=Amount(listed)
    )


def _without_slash(request: Request) -> Said | None:
    """Return where to ask instead when a path has nothing but a slash too many at its end; None otherwise."""
    path: str = request.scope["path"]
    plain = path.rstrip("/")
    if plain in ("", path):
        return None
    scope = {**request.scope, "path": plain}
    if all(route.matches(scope)[0] is Match.NONE for route in request.app.router.routes):
        return None
    hint = say(
        "There is nothing at {path}; ask for {better}, without the slash at the end.",
        path=clean(path),
        better=clean(plain),
    )
    return sentences(hint, KINDS[404].detail)


def allowed_methods(app: FastAPI, scope: Scope) -> list[str]:
    """Return every method that some route offers on the path of the request, not the first route's alone."""
    methods: set[str] = set()
    for route in app.router.routes:
        if route.matches(scope)[0] is not Match.NONE:
            methods |= getattr(route, "methods", None) or set()
    if "GET" in methods:
        methods.add("HEAD")
    return sorted(methods)


def install(app: FastAPI) -> None:
    """Make the app answer every known kind of error through this file; the envelope sees to unknown ones."""
    for kind in (HttpProblem, DomainError, RequestValidationError, HTTPException):
        app.add_exception_handler(kind, answer)


def problem_responses(*statuses: int) -> dict[int | str, dict[str, Any]]:
    """Return the `responses` argument of a route that may answer these statuses with a problem."""
    schema = {"$ref": "#/components/schemas/Problem"}
    documented: dict[int | str, dict[str, Any]] = {}
    for status in sorted(statuses):
        documented[status] = {"description": str(KINDS[status].title), "content": {MEDIA_TYPE: {"schema": schema}}}
        if status in HEADERS:
            documented[status]["headers"] = HEADERS[status]
    return documented


def _header(description: str, kind: str = "string") -> dict[str, object]:
    return {"description": description, "schema": {"type": kind}}


HEADERS: Mapping[int, dict[str, object]] = {
    401: {"WWW-Authenticate": _header("The scheme of the key.")},
    405: {"Allow": _header("Every method of this path.")},
    415: {"Accept": _header("What is taken."), "Accept-Post": _header("What is taken.")},
    429: {"Retry-After": _header("Seconds to wait.", "integer")},
    503: {"Retry-After": _header("Seconds to wait.", "integer")},
}

# What any route with a body may answer, whatever else it may answer.
BODY_PROBLEMS = (400, 405, 408, 413, 415, 422, 500, 503)
