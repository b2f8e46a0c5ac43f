"""What the service overrides of the server still exists there and is called by it.

The server promises nothing about these names: an override that nobody calls any more would be a guard that fell silent.
"""

import signal
import sys
from inspect import isfunction
from typing import ClassVar

import pytest
import uvicorn
from uvicorn.protocols.http.httptools_impl import HttpToolsProtocol

from tests.contract import overridden_app
from tests.contract.http_wire import PATIENCE_S, VALID, Server, head, receive

BASES = dict(zip(overridden_app.CLASSES, (HttpToolsProtocol, HttpToolsProtocol, uvicorn.Server), strict=True))
H2C = (b"Connection: Upgrade", b"Upgrade: h2c")


class CountingServer(Server):
    """The test application that counts."""

    program: ClassVar[tuple[object, ...]] = (sys.executable, "-m", "tests.contract.overridden_app")


@pytest.mark.parametrize("cls", BASES)
def test_every_name_that_the_base_has_is_marked_as_overridden(cls: type) -> None:
    own = {name for name, member in vars(cls).items() if isfunction(member) and name != "__init__"}
    assert set(overridden_app.overridden(cls)) == own & set(dir(BASES[cls]))
    assert overridden_app.overridden(cls)


def test_the_server_calls_every_overridden_name() -> None:
    with CountingServer(drain_s=0) as server:
        assert server.post("/v1/echo", VALID, *H2C).status == 200
        with server.connect() as connection:
            # More than the sockets hold, so that the server has to wait until some of it is taken.
            connection.sendall(head("GET", "/v1/echo?text=abcdefgh&limit=4000000"))
            assert len(receive(connection).body) > 32_000_000
        # Open at the stop, so that it has to be let go of.
        with server.connect():
            assert server.get("/health/live").status == 200
            server.process.send_signal(signal.SIGTERM)
            server.process.wait(PATIENCE_S)
        _, logged = server.ended()
    names = next(line["names"] for line in logged if line["event"] == "called")
    assert set(names) == {f"{cls.__name__}.{name}" for cls in BASES for name in overridden_app.overridden(cls)}
