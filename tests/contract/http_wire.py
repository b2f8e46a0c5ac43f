"""Talking to a live server on the loopback address in raw bytes, bounded in time."""

import http.client
import json
import os
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, ClassVar, NamedTuple, Self

ROOT = Path(__file__).parents[2]
# Longer than anything here may take, shorter than anybody would wait for a hung test.
PATIENCE_S = 20.0
VALID = b'{"inner": {"speed_kmh": 120.5, "wheel_count": 4}}'


class Answer(NamedTuple):
    """What came back."""

    status: int
    headers: http.client.HTTPMessage
    body: bytes

    @property
    def problem(self) -> dict[str, Any]:
        """Return the problem in the answer, which must be one: by its media type and by its members (RFC 9457)."""
        assert self.headers["content-type"] == "application/problem+json"
        problem: dict[str, Any] = json.loads(self.body)
        assert problem["status"] == self.status
        assert set(problem) == {"type", "title", "status", "detail", "instance", "errors", "error_count"}
        return problem


class Server:
    """The test application in a process of its own, on a port that the system chose."""

    program: ClassVar[tuple[object, ...]] = (sys.executable, "-m", "tests.contract.http_app")
    folder: ClassVar[Path] = ROOT

    def __init__(
        self, variables: Mapping[str, str] | None = None, *, read_log: bool = True, **settings: object
    ) -> None:
        environ = {name: value for name, value in os.environ.items() if not name.startswith(("FITMENT_", "PORT"))}
        # Nobody here has to be told of the stop first, but where the drain is what is tried.
        settings = {"drain_s": 0, **settings}
        environ |= {f"FITMENT_{name.upper()}": str(value) for name, value in settings.items()}
        self.process = subprocess.Popen(
            self.program,
            cwd=self.folder,
            env={**environ, **(variables or {}), "FITMENT_PORT": "0"},
            stdout=subprocess.PIPE,
        )
        first = json.loads(self.process.stdout.readline())
        assert first["event"] == "serving"
        self.serving: dict[str, Any] = first
        self.port: int = first["port"]
        # Somebody has to read what the service logs, or lines are lost; at the end there is no more to read.
        self._logged: list[bytes] = []
        self._reader = threading.Thread(target=self._logged.extend, args=(self.process.stdout,))
        if read_log:
            self._reader.start()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.stop()

    def stop(self) -> tuple[int, list[dict[str, Any]]]:
        """Ask the process to end; return its exit code and what it logged."""
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGTERM)
        return self.ended()

    def ended(self) -> tuple[int, list[dict[str, Any]]]:
        """Wait for the end of a process that was asked to; return its exit code and what it logged."""
        try:
            self.process.wait(PATIENCE_S)
        finally:
            self.process.kill()
            if self._reader.ident is not None:
                self._reader.join()
            self.process.stdout.close()
        return self.process.returncode, [json.loads(line) for line in self._logged]

    def connect(self) -> socket.socket:
        """Return a new connection."""
        return socket.create_connection(("127.0.0.1", self.port), PATIENCE_S)

    def send(self, raw: bytes) -> Answer:
        """Return the answer to these bytes on a connection of their own."""
        with self.connect() as connection:
            connection.sendall(raw)
            return receive(connection)

    def get(self, path: str, *headers: bytes) -> Answer:
        """Return the answer to a GET."""
        return self.send(head("GET", path, *headers))

    def post(self, path: str, body: bytes, *headers: bytes) -> Answer:
        """Return the answer to a POST of JSON."""
        return self.send(post(path, body, *headers))


def head(method: str, path: str, *headers: bytes) -> bytes:
    """Return the bytes of a request without a body."""
    lines = [f"{method} {path} HTTP/1.1".encode("latin-1"), *headers]
    if not any(line.lower().startswith(b"host:") for line in headers):
        lines.insert(1, b"Host: localhost")
    return b"\r\n".join(lines) + b"\r\n\r\n"


def post(path: str, body: bytes, *headers: bytes, media_type: bytes = b"application/json") -> bytes:
    """Return the bytes of a POST."""
    return head("POST", path, b"Content-Type: " + media_type, b"Content-Length: %d" % len(body), *headers) + body


def receive(connection: socket.socket, method: str = "GET") -> Answer:
    """Return the next answer on the connection."""
    response = http.client.HTTPResponse(connection, method=method)
    try:
        response.begin()
        return Answer(response.status, response.headers, response.read())
    finally:
        response.close()


def wait_until(holds: Callable[[], bool]) -> None:
    """Look until it holds, now and then: looking all the time takes the server's time from what it is to come to."""
    deadline = time.monotonic() + PATIENCE_S
    while not holds():
        assert time.monotonic() < deadline, "waited in vain"
        time.sleep(0.01)


def is_closed(connection: socket.socket) -> bool:
    """Wait until the server has closed the connection; whatever it still sent does not matter."""
    try:
        while connection.recv(65536):
            pass
    except ConnectionResetError:
        pass
    return True
