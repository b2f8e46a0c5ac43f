"""The route class: a request is refused or read strictly before anything is parsed or validated.

FastAPI reads, parses and validates a body before dependencies and handlers run, so this is the place. For
the plain case, one body and at most the request itself, the route also calls the endpoint: FastAPI's way
through dependencies costs more than the answer. The OpenAPI document stays FastAPI's in both cases.

Of such endpoints a plain `def` is long work: it runs in the bounded pool, and so do the parsing and the validation of
its body, which would hold up every other request. The body is read before, so that slow senders hold no place in line.
A plain `def` that asks for more is refused when its route is made: it would run where nothing bounds it.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Coroutine, Sequence
from typing import Any, Final, TypeVar
from urllib.parse import parse_qsl

import orjson
from fastapi import Request, Response
from fastapi.exceptions import RequestValidationError
from fastapi.routing import APIRoute
from pydantic import BaseModel, TypeAdapter, ValidationError
from starlette.routing import Match
from starlette.types import Receive, Scope, Send

from service.api.errors.fault_words import unknown_parameter
from service.api.errors.problem import HttpProblem, allowed_methods
from service.api.errors.request_faults import RequestFault
from service.api.transport import strict_json
from service.api.transport.language import heed_body, speech_of, spoken
from service.api.transport.request_body import parse, read_body, read_json
from service.api.transport.work_pool import ShortWork, run_bounded
from service.core.saying import say

Endpoint = TypeVar("Endpoint", bound=Callable[..., Any])
Handler = Callable[[Request], Coroutine[Any, Any, Response]]

DEFAULT_MAX_BODY_BYTES: Final = 64 * 1024


def body_limit(max_bytes: int) -> Callable[[Endpoint], Endpoint]:
    """Return a mark for an endpoint: the largest body its route reads. Put it beneath the route's decorator."""

    def mark(endpoint: Endpoint) -> Endpoint:
        endpoint.max_body_bytes = max_bytes  # type: ignore[attr-defined] # a function takes attributes, its type knows none
        return endpoint

    return mark


class StrictRoute(APIRoute):
    """A route that reads strictly: media type, size, time, JSON, names of query parameters."""

    def __init__(self, path: str, endpoint: Callable[..., Any], **options: Any) -> None:
        super().__init__(path, endpoint, **options)
        self.max_body_bytes: int = getattr(endpoint, "max_body_bytes", DEFAULT_MAX_BODY_BYTES)
        self._query_names = _query_names(self)
        # HEAD goes where GET goes: the server drops the body of its answer.
        methods = self.methods or set()
        self._methods = methods | {"HEAD"} if "GET" in methods else methods
        plain = _plain_parameters(self)
        if plain is not None:
            self._body_name, self._request_name, model = plain
            self._is_long = not inspect.iscoroutinefunction(endpoint)
            adapter: TypeAdapter[Any] = TypeAdapter(model)
            self._validate = adapter.validator.validate_python
            self.app = self._answer
        elif not inspect.iscoroutinefunction(endpoint):
            # The framework would run it on one of its own forty threads, beside the pool and past its bounds.
            raise TypeError(f"{path}: long work takes a body and at most the request, or it cannot be bounded.")

    def matches(self, scope: Scope) -> tuple[Match, Scope]:
        """Return whether the route suits the request."""
        # Most routes are another's: without parameters and mount point a comparison tells, no pattern is needed.
        if not self.param_convertors and scope["path"] != self.path and not scope.get("root_path"):
            return Match.NONE, {}
        match, child_scope = super().matches(scope)
        if match is Match.PARTIAL and scope["method"] in (*self._methods, "OPTIONS"):
            return Match.FULL, child_scope
        return match, child_scope

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer the request, or refuse its method."""
        if scope["method"] == "OPTIONS":
            methods = ", ".join(["OPTIONS", *allowed_methods(scope["app"], scope)])
            await Response(status_code=204, headers={"Allow": methods})(scope, receive, send)
            return
        if scope["method"] not in self._methods:
            raise HttpProblem(405)
        await self.app(scope, receive, send)

    def get_route_handler(self) -> Handler:
        """Return FastAPI's handler with the strict reading before it, for endpoints with more than a body."""
        framework = super().get_route_handler()

        async def handler(request: Request) -> Response:
            self._check_query(request.scope)
            if self.body_field is None:
                return await framework(request)
            value = await read_json(request.scope, request.receive, self.max_body_bytes)
            heed_body(request.scope, value)
            # FastAPI asks the one only for being there and takes the other as the body read.
            request._body = b"{}"  # noqa: SLF001 - Starlette has no public way to hand over a body that was read
            request._json = value  # noqa: SLF001 - the same
            try:
                return await framework(request)
            except RequestValidationError as error:
                if not _blames_whole_float(error.errors()):
                    raise
            request._json = strict_json.whole_numbers_as_integers(value)  # noqa: SLF001 - the same
            return await framework(request)

        return handler

    async def _answer(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Read, validate, call the endpoint and send, without FastAPI's way through dependencies."""
        if scope["query_string"]:
            self._check_query(scope)
        raw = await read_body(scope, receive, self.max_body_bytes)
        result: Response | bytes
        if self._is_long:
            request = Request(scope, receive, send)
            result = await run_bounded(request, self._work, raw, request)
        else:
            short: ShortWork = scope["app"].state.short_work
            async with short.turn(scope):
                result = await self.endpoint(**self._arguments(self.read(raw, scope), Request(scope, receive, send)))
                result = _sendable(result, scope)
        if isinstance(result, Response):
            await result(scope, receive, send)
            return
        headers = [(b"content-type", b"application/json"), (b"content-length", b"%d" % len(result))]
        await send({"type": "http.response.start", "status": self.status_code or 200, "headers": headers})
        await send({"type": "http.response.body", "body": result})

    def _work(self, raw: bytes, request: Request) -> Response | bytes:
        """Return the answer to long work, from the bytes of the body to those of the answer."""
        result = self.endpoint(**self._arguments(self.read(raw, request.scope), request))
        return _sendable(result, request.scope)

    def _arguments(self, asked: object, request: Request) -> dict[str, object]:
        """Return what the endpoint is called with: the body and, if it takes that, the request."""
        arguments = {self._body_name: asked}
        if self._request_name is not None:
            arguments[self._request_name] = request
        return arguments

    def read(self, raw: bytes, scope: Scope) -> object:
        """Return the model that a body spells, for a route that takes a body and at most the request.

        The scope learns in which language and units the body wants its answer.

        Raises
        ------
        HttpProblem
            When it is no strict JSON.
        RequestValidationError
            When it does not match the contract.
        """
        value = parse(raw)
        heed_body(scope, value)
        try:
            return self._validate(value, context={})
        except ValidationError as error:
            return self._second_look(value, error)

    def _second_look(self, value: object, error: ValidationError) -> object:
        """Return the model after all where `200.0` was sent for a whole number; JSON knows no difference."""
        errors = error.errors(include_url=False)
        if _blames_whole_float(errors):
            value = strict_json.whole_numbers_as_integers(value)
            try:
                return self._validate(value, context={})
            except ValidationError as second:
                errors = second.errors(include_url=False)
        raise RequestValidationError([{**item, "loc": ("body", *item["loc"])} for item in errors], body=value)

    def _check_query(self, scope: Scope) -> None:
        """Refuse query parameters that the route does not know or that come twice."""
        if not scope["query_string"] or self._query_names is None:
            return
        names = [name for name, _ in parse_qsl(scope["query_string"].decode("latin-1"), keep_blank_values=True)]
        known, several = self._query_names
        faults = [
            RequestFault(f"/query/{name}", unknown_parameter(name, sorted(known)), "unknown_field")
            for name in dict.fromkeys(names)
            if name not in known
        ]
        faults += [
            RequestFault(f"/query/{name}", say("This query parameter came more than once; send it once."), "repeated")
            for name in known - several
            if names.count(name) > 1
        ]
        if faults:
            raise HttpProblem(422, faults[0].detail if len(faults) == 1 else None, faults=faults)


def _sendable(result: object, scope: Scope) -> Response | bytes:
    """Return an answer in the caller's language: a wire model by its own serializer, plain data by orjson."""
    if isinstance(result, Response):
        return result
    answer = spoken(result, speech_of(scope))
    if isinstance(answer, BaseModel):
        return answer.__pydantic_serializer__.to_json(answer)
    return orjson.dumps(answer)


def _blames_whole_float(errors: Sequence[Any]) -> bool:
    return any(
        item["type"] == "int_type" and isinstance(item["input"], float) and item["input"].is_integer()
        for item in errors
    )


def _plain_parameters(route: APIRoute) -> tuple[str, str | None, Any] | None:
    """Return the names of body and request parameter and the body's type; nothing where there are others."""
    dependant = route.dependant
    others = (
        dependant.path_params,
        dependant.query_params,
        dependant.header_params,
        dependant.cookie_params,
        dependant.dependencies,
        dependant.response_param_name,
        dependant.background_tasks_param_name,
        dependant.security_scopes_param_name,
        dependant.http_connection_param_name,
        dependant.websocket_param_name,
    )
    body = dependant.body_params
    if any(others) or len(body) != 1:
        return None
    return body[0].name, dependant.request_param_name, body[0].field_info.annotation


def _query_names(route: APIRoute) -> tuple[frozenset[str], frozenset[str]] | None:
    """Return the known query parameters and those that may repeat; nothing where a closed model checks them."""
    parameters = route.dependant.query_params
    if any(_is_model(parameter.field_info.annotation) for parameter in parameters):
        return None
    several = (p.alias for p in parameters if getattr(p.field_info.annotation, "__origin__", None) in (list, tuple))
    return frozenset(parameter.alias for parameter in parameters), frozenset(several)


def _is_model(annotation: object) -> bool:
    return isinstance(annotation, type) and issubclass(annotation, BaseModel)
