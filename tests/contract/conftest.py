"""Live servers on the loopback address for the tests of this folder."""

from collections.abc import Iterator

import pytest

from tests.contract.http_wire import Server


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """A server with the settings that it has by itself."""
    with Server() as running:
        yield running


@pytest.fixture(scope="session")
def impatient_server() -> Iterator[Server]:
    """A server that waits for a head and a body half a second each, for the next request a second."""
    with Server(head_timeout_s=0.5, body_timeout_s=0.5, keep_alive_s=1) as running:
        yield running
