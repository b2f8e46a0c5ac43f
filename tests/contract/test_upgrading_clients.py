"""Clients that ask for HTTP/2 by themselves, as they come: the Java platform's own and curl.

`make test` installs both. References: RFC 9110, 7.8 (a server may ignore the wish).
"""

import subprocess
from pathlib import Path

from tests.contract.http_wire import PATIENCE_S, VALID, Server

CLIENT = Path(__file__).parent / "clients" / "AskByDefault.java"


def test_the_java_client_gets_one_right_answer_to_each_question(server: Server) -> None:
    address = f"http://127.0.0.1:{server.port}/v1/echo"
    done = subprocess.run(
        ["java", CLIENT, address, VALID.decode()], capture_output=True, text=True, check=False, timeout=5 * PATIENCE_S
    )
    assert done.stderr == ""
    right = server.post("/v1/echo", VALID).body.decode()
    assert done.stdout.splitlines() == [f"HTTP_1_1 200 {right}"] * 12


def test_curl_asking_for_http_2_gets_one_right_answer(server: Server) -> None:
    address = f"http://127.0.0.1:{server.port}/v1/echo"
    # Two addresses, so that the second question goes over a connection that was asked to change.
    done = subprocess.run(
        ["curl", "-sS", "--http2", "-w", " %{http_code}\n", "--json", VALID.decode(), address, address],
        capture_output=True,
        text=True,
        check=True,
        timeout=PATIENCE_S,
    )
    right = server.post("/v1/echo", VALID).body.decode()
    assert done.stdout.splitlines() == [f"{right} 200"] * 2
