"""Long work, vanished clients and stopping, against a live server."""

import json
import signal
import socket
import threading
import time
from contextlib import ExitStack

import pytest

from tests.contract.http_wire import VALID, Server, head, is_closed, post, receive, wait_until

# Hundredths of a second of work, see the test application.
SHORT = post("/v1/toil", VALID.replace(b"120.5", b"10"))
LONG = post("/v1/toil", VALID.replace(b"120.5", b"100"))


def number(server: Server, series: str) -> float:
    lines = server.get("/metrics").body.decode().splitlines()
    return next((float(line.split()[1]) for line in lines if line.startswith(series)), 0.0)


def cpu_seconds(server: Server) -> float:
    return number(server, "process_cpu_seconds_total")


def queue_length(server: Server) -> float:
    return number(server, "work_queue_length")


def left(server: Server) -> float:
    return number(server, 'http_requests_total{method="POST",outcome="left",route="/v1/toil",status="499"}')


def wait_until_queued(server: Server, length: int) -> None:
    wait_until(lambda: queue_length(server) == length)


def test_work_beyond_the_queue_is_refused_with_503_and_a_time_to_come_back() -> None:
    with Server(queue_length=2, retry_after_s=7) as server, ExitStack() as stack:
        connections = [stack.enter_context(server.connect()) for _ in range(3)]
        for connection in connections:
            connection.sendall(LONG)
        wait_until_queued(server, 3)
        refused = server.send(SHORT)
        assert (refused.status, refused.headers["retry-after"]) == (503, "7")
        assert refused.problem["type"] == "/problems/busy"
        # A client that is still sending would see a reset instead of the answer.
        assert refused.headers["connection"] is None
        assert [receive(connection).status for connection in connections] == [200, 200, 200]


def test_probes_do_not_wait_behind_work() -> None:
    with Server() as server, ExitStack() as stack:
        for _ in range(8):
            stack.enter_context(server.connect()).sendall(LONG)
        wait_until_queued(server, 8)
        started = time.monotonic()
        assert [server.get("/health/ready").status for _ in range(20)] == [200] * 20
        # One piece of work takes a second: twenty probes behind it, or behind each other's turns, would take longer.
        assert time.monotonic() - started < 1.0


def test_work_for_clients_that_left_is_not_done_and_takes_no_place_in_the_queue() -> None:
    with Server(queue_length=12) as server:
        with server.connect() as first:
            first.sendall(post("/v1/toil", VALID.replace(b"120.5", b"300")))
            wait_until_queued(server, 1)
            for _ in range(12):
                with server.connect() as connection:
                    connection.sendall(LONG)
            # While the first one's work still goes on.
            wait_until(lambda: left(server) == 12)
            assert queue_length(server) == 1
            assert receive(first).status == 200
        # Fifteen seconds of work were asked for, three were wanted.
        assert cpu_seconds(server) < 8.0


def test_an_answer_that_its_client_did_not_wait_for_does_not_count_as_given() -> None:
    with Server() as server:
        with server.connect() as first:
            first.sendall(LONG)
            wait_until_queued(server, 1)
        wait_until(lambda: left(server) == 1)


def test_a_stop_that_takes_too_long_tells_whoever_waits_and_logs_no_fault() -> None:
    with Server(drain_s=0, stop_timeout_s=1) as server, server.connect() as connection:
        connection.sendall(post("/v1/toil", VALID.replace(b"120.5", b"300")))
        wait_until_queued(server, 1)
        server.process.send_signal(signal.SIGTERM)
        refused = receive(connection)
        assert (refused.status, refused.headers["retry-after"]) == (503, "1")
        assert refused.problem["detail"] == "The service is stopping."
        code, logged = server.ended()
    assert (code, len(unusual := [line["event"] for line in logged if line["level"] != "info"])) == (0, 1)
    # By the server beneath, in its own words.
    assert unusual[0].startswith("Cancel 1 running task")


def test_large_bodies_on_their_way_in_do_not_fill_the_memory() -> None:
    large = post("/v1/fitments/search", b" " * 4_000_000)
    with Server(body_space_mib=8, retry_after_s=7, body_timeout_s=4) as server, ExitStack() as stack:
        connections = [stack.enter_context(server.connect()) for _ in range(3)]
        for connection in connections:
            connection.sendall(large[:-1])
        # What is no larger than the server beneath holds of each connection anyway is taken all the same.
        assert server.post("/v1/echo", VALID).status == 200
        # Two fit in, and their last byte never comes.
        answers = sorted((receive(connection) for connection in connections), key=lambda answer: answer.status)
        assert [answer.status for answer in answers] == [408, 408, 503]
        assert answers[2].headers["retry-after"] == "7"
        assert answers[2].problem["type"] == "/problems/busy"


def test_the_memory_for_large_bodies_is_given_back() -> None:
    large = post("/v1/fitments/search", b" " * 16_000_000)
    with Server(body_space_mib=24) as server:
        # Far more than fits at once: whole, left half-way, and beyond the limit.
        for _ in range(4):
            assert server.send(large).status == 400
            with server.connect() as connection:
                connection.sendall(large[:-1])
            assert server.post("/v1/fitments/search", b" " * 17_000_000).status == 413
        assert server.send(large).status == 400


def test_the_signal_turns_readiness_off_and_lets_connections_go_while_requests_are_still_taken() -> None:
    with Server(drain_s=1.5) as server:
        with server.connect() as connection:
            connection.sendall(head("GET", "/health/live"))
            assert receive(connection).headers["connection"] is None
            server.process.send_signal(signal.SIGTERM)
            wait_until(lambda: server.get("/health/ready").status != 200)
            connection.sendall(head("GET", "/health/live"))
            answer = receive(connection)
            assert (answer.status, answer.headers["connection"]) == (200, "close")
            assert is_closed(connection)
        assert server.ended()[0] == 0


def test_a_request_in_flight_at_the_signal_is_answered() -> None:
    with Server(drain_s=0) as server:
        with server.connect() as connection:
            connection.sendall(LONG)
            wait_until_queued(server, 1)
            server.process.send_signal(signal.SIGTERM)
            assert receive(connection).status == 200
        assert server.ended()[0] == 0


def test_half_a_body_does_not_hold_up_the_stop() -> None:
    with Server(drain_s=0, stop_timeout_s=1) as server, server.connect() as connection:
        connection.sendall(post("/v1/echo", VALID)[:-5])
        # Another answer tells that the half one was seen.
        assert server.get("/health/live").status == 200
        code, logged = server.stop()
        assert (code, logged[-1]["event"]) == (0, "stopped")


@pytest.mark.parametrize("keep_alive", [True, False], ids=["kept connections", "fresh connections"])
def test_no_request_is_lost_when_stopped_under_load(keep_alive: bool) -> None:
    lost: list[str] = []
    answered = [0]
    with Server(drain_s=1.5, access_log=False) as server:

        def ask() -> None:
            let_go = False
            try:
                # Once the service lets go, a balancer turns to another instance.
                while not let_go:
                    with server.connect() as connection:
                        let_go = ask_on(connection)
            except OSError as error:
                lost.append(repr(error))

        def ask_on(connection: socket.socket) -> bool:
            while True:
                connection.sendall(post("/v1/echo", VALID))
                let_go = receive(connection).headers["connection"] == "close"
                answered[0] += 1
                if let_go or not keep_alive:
                    return let_go

        clients = [threading.Thread(target=ask) for _ in range(8)]
        for client in clients:
            client.start()
        wait_until(lambda: answered[0] >= 200 or bool(lost))
        server.process.send_signal(signal.SIGTERM)
        for client in clients:
            client.join()
        assert server.ended()[0] == 0
    assert lost == []


def test_the_log_of_a_stop_is_json_to_the_end() -> None:
    with Server() as server:
        _, logged = server.stop()
    assert json.dumps(logged[-1]["event"]) == '"stopped"'
