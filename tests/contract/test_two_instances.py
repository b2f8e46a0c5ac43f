"""Two instances behind HAProxy: one is taken away under load, and no caller notices.

The balancer does what its manual says and nothing to help: it asks for readiness, and it repeats no request (`retries
0`), so that each one lost would show.
"""

import itertools
import os
import shutil
import signal
import socket
import subprocess
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from http.client import HTTPException
from pathlib import Path
from typing import Self

import pytest

from tests.contract.http_wire import PATIENCE_S, VALID, Server, head, post, receive

BALANCER = shutil.which("haproxy", path=os.environ.get("PATH", "") + ":/usr/sbin") or "haproxy"
CONFIGURATION = """
global
    maxconn 100
defaults
    mode http
    retries 0
    timeout connect 5s
    timeout client 20s
    timeout server 20s
    timeout check 2s
frontend callers
    bind fd@{listener}
    default_backend instances
backend instances
    balance roundrobin
    option httpchk
    http-check send meth GET uri /health/ready ver HTTP/1.1 hdr Host localhost
    http-check expect status 200
    default-server check inter 100ms fall 1 rise 1
    server first 127.0.0.1:{first}
    server second 127.0.0.1:{second}
"""
# Far more than the balancer's checks need to see it, on a busy machine too.
DRAIN_S = 2.5
REQUESTS = {
    "GET": head("GET", "/v1/rule-packs"),
    "POST": post("/v1/echo", VALID),
    # Two hundredths of a second on the worker.
    "POST of work": post("/v1/toil", VALID.replace(b"120.5", b"2")),
}


class Callers:
    """Threads that ask through the balancer until they are told to stop, and what they saw."""

    def __init__(self, port: int) -> None:
        self._port = port
        self._finished = threading.Event()
        self._count = itertools.count()
        self.answered = 0
        self.lost: list[str] = []
        self._threads = [
            threading.Thread(target=self._ask, args=(name, keep))
            for name in REQUESTS
            for keep in (True, False, True, False)
        ]

    def __enter__(self) -> Self:
        for thread in self._threads:
            thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._finished.set()
        for thread in self._threads:
            thread.join(PATIENCE_S)

    def _ask(self, name: str, keep: bool) -> None:
        while not self._finished.is_set():
            try:
                with socket.create_connection(("127.0.0.1", self._port), PATIENCE_S) as connection:
                    self._ask_on(connection, name, keep)
            except (OSError, HTTPException) as error:
                self.lost.append(f"{name}, {'kept' if keep else 'fresh'} connection: {error!r}")
                return

    def _ask_on(self, connection: socket.socket, name: str, keep: bool) -> None:
        while not self._finished.is_set():
            connection.sendall(REQUESTS[name])
            answer = receive(connection)
            if answer.status != 200:
                self.lost.append(f"{name}, {'kept' if keep else 'fresh'} connection: {answer.status} {answer.body!r}")
            self.answered = next(self._count)
            # The service lets go of connections while it drains, and the balancer may pass that on.
            if not keep or answer.headers["connection"] == "close":
                return

    def wait_for(self, more: int, busy: Callable[[], bool] = lambda: False) -> None:
        """Wait until that many more requests are answered, and longer while something is going on."""
        goal = self.answered + more
        while (self.answered < goal or busy()) and not self.lost:
            assert any(thread.is_alive() for thread in self._threads)
            self._finished.wait(0.02)


@contextmanager
def balancer(folder: Path, first: int, second: int) -> Iterator[int]:
    """Run the balancer before two ports; give the port that it listens on."""
    with socket.create_server(("127.0.0.1", 0), backlog=100) as listener:
        configuration = folder / "balancer.cfg"
        configuration.write_text(CONFIGURATION.format(listener=listener.fileno(), first=first, second=second))
        process = subprocess.Popen(
            [BALANCER, "-db", "-f", str(configuration)],
            pass_fds=(listener.fileno(),),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            yield listener.getsockname()[1]
        finally:
            process.kill()
            process.wait(PATIENCE_S)


def answered_by(server: Server) -> float:
    """Return how many requests for the echo an instance has answered."""
    text = server.get("/metrics").body.decode()
    lines = (line for line in text.splitlines() if line.startswith("http_requests_total") and '"/v1/echo"' in line)
    return sum(float(line.rsplit(" ", 1)[1]) for line in lines)


@pytest.mark.parametrize("leaving", [0, 1], ids=["the first goes", "the second goes"])
def test_an_instance_is_taken_away_under_load_and_nothing_is_lost(tmp_path: Path, leaving: int) -> None:
    with ExitStack() as stack:
        servers = [stack.enter_context(Server(drain_s=DRAIN_S, access_log=False)) for _ in range(2)]
        port = stack.enter_context(balancer(tmp_path, servers[0].port, servers[1].port))
        with Callers(port) as callers:
            callers.wait_for(150)
            taken, left = [answered_by(server) for server in servers]
            servers[leaving].process.send_signal(signal.SIGTERM)
            callers.wait_for(100, busy=lambda: servers[leaving].process.poll() is None)
            callers.wait_for(150)
        assert callers.lost == []
        assert servers[leaving].ended()[0] == 0
    # Both took part, else nothing would have been taken away.
    assert min(taken, left) > 10
