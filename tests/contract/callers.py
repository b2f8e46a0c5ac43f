"""What every caller of a live service does: ask in JSON, and come back when it is told to."""

import json
import sys
import time
from typing import Any, ClassVar

from tests.contract.http_wire import Answer, Server

Json = dict[str, Any]
# The service asks for a second at a time here; nobody waits longer than this for an answer.
MOST_ATTEMPTS = 20


class Service(Server):
    """The service itself, as an operator starts it."""

    program: ClassVar[tuple[object, ...]] = (sys.executable, "-m", "service", "serve")


def asked(service: Server, path: str, body: object, *headers: bytes) -> Answer:
    """Return the answer to this question, whatever it is."""
    return service.post(path, json.dumps(body).encode(), *headers)


def answered(service: Server, path: str, body: object, *headers: bytes) -> Any:
    """Return what a question is answered; it must be."""
    answer = asked(service, path, body, *headers)
    assert answer.status == 200, answer.body
    return json.loads(answer.body)


def patiently(service: Server, path: str, body: object, *headers: bytes) -> tuple[Answer, list[Answer]]:
    """Return the answer that comes in the end, and every refusal before it: after each the time it names is waited."""
    refused: list[Answer] = []
    for _ in range(MOST_ATTEMPTS):
        answer = asked(service, path, body, *headers)
        if answer.status not in (429, 503):
            return answer, refused
        refused.append(answer)
        # To come back earlier is what the header forbids.
        time.sleep(int(answer.headers["retry-after"]))
    raise AssertionError(f"refused {len(refused)} times: {refused[-1].body!r}")
