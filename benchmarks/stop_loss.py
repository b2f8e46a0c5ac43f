"""Requests lost when a service is stopped under load, by kind of server, connection and request.

`python -m benchmarks.stop_loss [--repeat N]`. Eight callers ask without pause; the server gets SIGTERM. A request is
lost when its connection was taken and no complete answer came, or one that is no 200. A caller stops when it is let
go (`Connection: close`), as a balancer would turn to another instance, or when its connection is refused: then nothing
was sent, and a balancer sends it elsewhere.
"""

from __future__ import annotations

import argparse
import http.client
import os
import signal
import socket
import subprocess
import sys
import threading
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from fastapi import FastAPI

from service.app import create_app
from service.settings import load_settings
from tests.contract.http_wire import PATIENCE_S, head, post, receive

ROOT = Path(__file__).parents[1]
CALLERS = 8
LOAD_S = 0.7
BODY = (ROOT / "demo_requests" / "plus-one-inch.check.json").read_bytes()
REQUESTS = {"GET": head("GET", "/v1/rule-packs"), "POST": post("/v1/fitments/check", BODY)}
PLAIN = ("-m", "uvicorn", "benchmarks.stop_loss:application", "--factory", "--log-level", "critical")
SERVERS: dict[str, tuple[tuple[str, ...], dict[str, str]]] = {
    "service, drain 2 s": (("-m", "service", "serve"), {"FITMENT_DRAIN_S": "2"}),
    "service, no drain": (("-m", "service", "serve"), {"FITMENT_DRAIN_S": "0"}),
    "plain uvicorn, 1 process": (PLAIN, {}),
    "plain uvicorn, 2 workers": ((*PLAIN, "--workers", "2"), {}),
}


def application() -> FastAPI:
    """Return the application for a server that is not ours."""
    return create_app(load_settings(os.environ))


def main() -> int:
    """Measure all, write the table, return 0."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--repeat", type=int, default=1, help="how often each case is stopped")
    asked = parser.parse_args()
    print(f"{'server':26} {'connections':12} {'request':8} {'answered':>9} {'lost':>5}  how; exit code")
    for name, (command, environ) in SERVERS.items():
        for kept in (True, False):
            for method, request in REQUESTS.items():
                seen: Counter[str] = Counter()
                for _ in range(asked.repeat):
                    seen += measure(command, environ, request, kept=kept)
                answered = seen.pop("answered", 0)
                exits = [key for key in list(seen) if key.startswith("exit")]
                codes = ", ".join(f"{key} ×{seen.pop(key)}" for key in exits)
                lost = sum(count for key, count in seen.items() if key != "refused")
                how = ", ".join(f"{count} {key}" for key, count in sorted(seen.items()))
                kind = "kept" if kept else "fresh"
                print(f"{name:26} {kind:12} {method:8} {answered:9} {lost:5}  {how}; {codes}", flush=True)
    return 0


def measure(command: tuple[str, ...], environ: dict[str, str], request: bytes, *, kept: bool) -> Counter[str]:
    """Return what became of the requests of one run."""
    with socket.create_server(("127.0.0.1", 0)) as chosen:
        port = chosen.getsockname()[1]
    process = subprocess.Popen(
        [sys.executable, *command, "--port", str(port)],
        cwd=ROOT,
        env=os.environ | environ | {"FITMENT_ACCESS_LOG": "false"},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        wait_until_ready(port)
        seen: Counter[str] = Counter()
        ask = ask_on_one_connection if kept else ask_on_fresh_connections
        callers = [threading.Thread(target=ask, args=(port, request, seen, process.poll)) for _ in range(CALLERS)]
        for caller in callers:
            caller.start()
        time.sleep(LOAD_S)
        process.send_signal(signal.SIGTERM)
        for caller in callers:
            caller.join(PATIENCE_S)
        code = process.wait(PATIENCE_S)
    finally:
        process.kill()
    return seen + Counter({f"exit {code}": 1})


def wait_until_ready(port: int) -> None:
    """Return when the server on the port says that it is ready."""
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        try:
            with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as connection:
                connection.sendall(head("GET", "/health/ready"))
                if receive(connection).status == http.client.OK:
                    return
        except OSError:
            time.sleep(0.05)
    raise TimeoutError("the server did not start")


def ask_on_one_connection(port: int, request: bytes, seen: Counter[str], ended: Callable[[], int | None]) -> None:
    """Ask again and again on a connection until it is let go."""
    with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as connection:
        while ended() is None and ask_once(connection, request, seen):
            pass


def ask_on_fresh_connections(port: int, request: bytes, seen: Counter[str], ended: Callable[[], int | None]) -> None:
    """Ask again and again, each time on a new connection, until told to go elsewhere."""
    going = True
    while ended() is None and going:
        try:
            connection = socket.create_connection(("127.0.0.1", port), PATIENCE_S)
        except ConnectionRefusedError:
            seen["refused"] += 1
            return
        except OSError as error:
            # Taken by the system into the queue of a listener that then closed.
            seen[type(error).__name__] += 1
            return
        with connection:
            going = ask_once(connection, request, seen)


def ask_once(connection: socket.socket, request: bytes, seen: Counter[str]) -> bool:
    """Ask, note what came of it, and return whether to go on."""
    try:
        connection.sendall(request)
        answer = receive(connection)
    except (OSError, http.client.HTTPException) as error:
        seen[type(error).__name__] += 1
        return False
    seen["answered" if answer.status == http.client.OK else str(answer.status)] += 1
    return answer.headers["connection"] != "close"


if __name__ == "__main__":
    sys.exit(main())
