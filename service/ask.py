"""One question answered in this process, without a server: for notebooks, jobs and the command line."""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any, Final, NamedTuple, cast

import numpy as np
import orjson
from fastapi.exceptions import RequestValidationError
from starlette.types import Scope

from service.api.errors.problem import MAX_FAULTS, HttpProblem, member
from service.api.errors.request_faults import RequestFault, domain_fault, pointer_of, validation_faults
from service.api.render.plan_answer import plan_result
from service.api.routers import fitments, many, planning
from service.api.transport.language import speech_of, spoken
from service.api.transport.routes import StrictRoute
from service.api.transport.strict_json import MAX_DEPTH
from service.core.errors import DomainError, RefusedRequest
from service.locales.speech import Speech

Json = dict[str, Any]


class Operation(NamedTuple):
    """What may be asked: the route that reads the question, and the function that answers it."""

    route: StrictRoute
    answer: Callable[[Any, Speech], Json]


def _operation(name: str, answer: Callable[[Any, Speech], Json]) -> Operation:
    routes = [*fitments.router.routes, *many.router.routes, *planning.router.routes]
    return Operation(next(r for r in routes if isinstance(r, StrictRoute) and r.path.endswith(f"/{name}")), answer)


OPERATIONS: Final[Mapping[str, Operation]] = {
    "check": _operation("check", lambda asked, _: fitments.checked(asked)),
    "compare": _operation("compare", lambda asked, said: many.compared(asked, said)[0]),
    "search": _operation("search", lambda asked, said: many.searched(asked, said)[0]),
    "rims": _operation("rims", lambda asked, _: many.rims(asked)),
    "plan": _operation("plan", lambda asked, _: plan_result(*planning.planned(asked))),
}


def assess(request: Mapping[str, Any]) -> Json:
    """Return the answer to `POST /v1/fitments/check` for a request as plain data; see `service.assess`."""
    faults: list[tuple[str, str]] = []
    plain = _plain(request, (), faults)
    if faults:
        raise RefusedRequest(tuple(faults[:MAX_FAULTS]))
    return answer("check", json.dumps(plain).encode("ascii"))


def answer(name: str, question: bytes) -> Json:
    """Return the answer to a question in JSON, the same that the service gives over HTTP.

    Raises
    ------
    RefusedRequest
        When the question cannot be read or does not match the contract.
    """
    route, answered = OPERATIONS[name]
    if len(question) > route.max_body_bytes:
        raise RefusedRequest((("", f"A question may have {route.max_body_bytes} bytes at most here."),))
    scope: Scope = {}
    try:
        asked = route.read(question, scope)
        said = speech_of(scope)
        return cast("Json", orjson.loads(orjson.dumps(spoken(answered(asked, said), said))))
    except HttpProblem as problem:
        raise RefusedRequest((("", speech_of(scope).say(problem.words)),)) from None
    except DomainError as error:
        raise _refused([domain_fault(error)], speech_of(scope)) from None
    except RequestValidationError as error:
        raise _refused(validation_faults(error.errors()[:MAX_FAULTS], error.body, route), speech_of(scope)) from None


def _refused(faults: list[RequestFault], said: Speech) -> RefusedRequest:
    shown = [member(fault, said) for fault in faults]
    return RefusedRequest(tuple((str(each["pointer"]), str(each["detail"])) for each in shown))


def _plain(value: object, path: tuple[int | str, ...], faults: list[tuple[str, str]]) -> object:
    """Return the value as JSON has it: dates as text, the numbers of arrays as numbers; note what has no such form."""
    if len(path) > MAX_DEPTH:
        faults.append((pointer_of(path), f"The request is nested deeper than {MAX_DEPTH} levels."))
        return None
    if isinstance(value, Mapping):
        return {str(key): _plain(item, (*path, str(key)), faults) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(item, (*path, index), faults) for index, item in enumerate(value)]
    if isinstance(value, date):
        return value.isoformat()
    # What arrays and data frames hold stands for a number of Python's own.
    value = value.item() if isinstance(value, np.generic) else value
    if isinstance(value, float) and not math.isfinite(value):
        faults.append((pointer_of(path), "A finite number is expected here; leave out what is not known."))
    elif not isinstance(value, str | int | float | None):
        faults.append((pointer_of(path), f"A value of the type {type(value).__name__} has no form in JSON."))
    return value
