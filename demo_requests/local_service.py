"""The service, started on a free port of this machine, asked, and stopped; and the requests of this folder."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from http import HTTPStatus
from pathlib import Path
from typing import Any, NamedTuple

HERE = Path(__file__).parent
START_PATIENCE_S = 30.0
ANSWER_PATIENCE_S = 20.0

Json = dict[str, Any]


class Answer(NamedTuple):
    """What came back."""

    status: int
    media_type: str
    body: bytes

    @property
    def data(self) -> Json:
        """Return the body as plain data."""
        found: Json = json.loads(self.body)
        return found


class Service:
    """The running service."""

    def __init__(self, port: int) -> None:
        self._root = f"http://127.0.0.1:{port}"

    def ask(self, path: str, body: object = None) -> Answer:
        """Return the answer to a POST of the body, or to a GET without one."""
        content = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self._root + path, content, {"Content-Type": "application/json"})
        try:
            with urllib.request.urlopen(request, timeout=ANSWER_PATIENCE_S) as got:
                return Answer(got.status, got.headers.get_content_type(), got.read())
        except urllib.error.HTTPError as error:
            return Answer(error.code, error.headers.get_content_type(), error.read())


@contextmanager
def running() -> Iterator[Service]:
    """Give the service, ready; it is stopped however the block ends."""
    environ = {name: value for name, value in os.environ.items() if not name.startswith(("FITMENT_", "PORT"))}
    process = subprocess.Popen(
        [sys.executable, "-m", "service", "serve", "--port", "0"],
        cwd=HERE.parent,
        env=environ | {"FITMENT_ACCESS_LOG": "false", "FITMENT_DRAIN_S": "0"},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        service = Service(_port(process))
        _wait(service)
        yield service
    finally:
        process.send_signal(signal.SIGTERM)
        try:
            process.communicate(timeout=ANSWER_PATIENCE_S)
        except subprocess.TimeoutExpired:
            process.kill()


def _port(process: subprocess.Popen[str]) -> int:
    """Return the port that the service says it listens on."""
    for line in process.stdout or ():
        logged = json.loads(line)
        if logged["event"] == "serving":
            return int(logged["port"])
    sys.exit("the service did not start")


def _wait(service: Service) -> None:
    end = time.monotonic() + START_PATIENCE_S
    while time.monotonic() < end:
        try:
            if service.ask("/health/ready").status == HTTPStatus.OK:
                return
        except urllib.error.URLError:
            pass
        time.sleep(0.05)
    sys.exit("the service did not become ready")


def read(story: str, operation: str = "check") -> Json:
    """Return the request of a story."""
    asked: Json = json.loads((HERE / f"{story}.{operation}.json").read_text(encoding="utf-8"))
    return asked
