"""The stop: nothing that a client sent on a connection that was taken is lost.

Reference: RFC 9112, 9.6 (a server that closes says so, and a client must know what was answered).
"""

import os
import signal
import socket
import threading
import time

import pytest

from service.api.transport.listening import take_no_more
from tests.contract.http_wire import VALID, Server, head, is_closed, post, receive, wait_until

LIVE = head("GET", "/health/live")


def test_clients_that_connect_until_they_are_refused_get_every_answer() -> None:
    lost: list[str] = []
    answered = [0]

    def ask(server: Server) -> None:
        while True:
            try:
                connection = server.connect()
            except OSError:
                return
            try:
                with connection:
                    connection.sendall(post("/v1/echo", VALID))
                    assert receive(connection).status == 200
                    answered[0] += 1
            except OSError as error:
                lost.append(repr(error))

    with Server(drain_s=0, access_log=False) as server:
        clients = [threading.Thread(target=ask, args=(server,)) for _ in range(8)]
        for client in clients:
            client.start()
        wait_until(lambda: answered[0] >= 200 or bool(lost))
        server.process.send_signal(signal.SIGTERM)
        for client in clients:
            client.join()
        assert server.ended()[0] == 0
    assert lost == []


def test_a_new_connection_may_still_ask_its_question_at_the_stop() -> None:
    with Server(drain_s=0) as server, server.connect() as connection:
        # Another answer tells that this connection was taken before.
        assert server.get("/health/live").status == 200
        server.process.send_signal(signal.SIGTERM)
        connection.sendall(LIVE)
        assert receive(connection).status == 200
        assert is_closed(connection)
        assert server.ended()[0] == 0


def test_a_head_that_comes_to_its_end_after_the_listener_closed_is_answered_and_the_connection_ended() -> None:
    with Server(drain_s=0) as server, server.connect() as connection:
        connection.sendall(LIVE[:20])
        # Another answer tells that this connection was taken before.
        assert server.get("/health/live").status == 200
        server.process.send_signal(signal.SIGTERM)
        wait_until(lambda: not is_listening(server))
        connection.sendall(LIVE[20:])
        answer = receive(connection)
        assert (answer.status, answer.headers["connection"]) == (200, "close")
        assert is_closed(connection)
        assert server.ended()[0] == 0


def is_listening(server: Server) -> bool:
    with socket.socket() as probe:
        probe.settimeout(0.1)
        try:
            probe.connect(("127.0.0.1", server.port))
        except TimeoutError:
            return True
        except ConnectionRefusedError:
            return False
        return True


def test_connections_that_ask_nothing_do_not_hold_up_the_stop() -> None:
    with Server(drain_s=0) as server:
        connections = [server.connect() for _ in range(50)]
        for connection in connections:
            connection.sendall(LIVE)
            assert receive(connection).status == 200
        began = time.monotonic()
        assert server.stop()[0] == 0
        # Far from the ten seconds that requests in flight may take.
        assert time.monotonic() - began < 5.0
        assert all(is_closed(connection) for connection in connections)
        for connection in connections:
            connection.close()


def test_a_listener_that_takes_no_more_still_hands_out_what_it_has() -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener, socket.create_connection(listener.getsockname()) as before:
        assert take_no_more(listener.fileno())
        with socket.socket() as after:
            after.settimeout(0.3)
            with pytest.raises(TimeoutError):
                after.connect(listener.getsockname())
        taken, _ = listener.accept()
        with taken:
            before.sendall(b"x")
            assert taken.recv(1) == b"x"


def test_where_the_system_takes_no_filter_that_is_said() -> None:
    reading, writing = os.pipe()
    try:
        assert not take_no_more(reading)
    finally:
        os.close(reading)
        os.close(writing)
