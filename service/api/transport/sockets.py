"""What the system holds of a connection, and how to bound it and let it go; without the system's help, nothing."""

from __future__ import annotations

import array
import asyncio
import socket
import struct
import sys
from typing import Any, Final

if sys.platform != "win32":
    import fcntl
    import resource
    import termios

# What the system keeps of an answer that is not taken, and as much again for its own accounts.
SEND_BUFFER_BYTES: Final = 64 * 1024
# What the process keeps of one, beyond which it makes no further answer for that connection.
WRITE_BUFFER_BYTES: Final = 16 * 1024
# How long the system keeps an answer of which nothing is taken; it does so for closed connections too.
UNTAKEN_S: Final = 30
# Files beside connections: listeners, logs, the loop's own, and what a connection opens meanwhile.
SPARE_FILES: Final = 128
# Of <linux/tcp.h>: where `tcp_info` has `tcpi_bytes_acked`.
_ACKED_AT: Final = 120
_NO_LINGER: Final = struct.pack("ii", 1, 0)


def bound_answers(listener: Any) -> None:  # noqa: ANN401 - the loop's own kind of socket
    """Bound how much the system keeps of each answer and how long; connections inherit it from their listener."""
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_SNDBUF, SEND_BUFFER_BYTES)
    if sys.platform == "linux":
        listener.setsockopt(socket.IPPROTO_TCP, socket.TCP_USER_TIMEOUT, UNTAKEN_S * 1000)


def unread_bytes(transport: asyncio.BaseTransport) -> int:
    """Return how much the system holds of what the client sent."""
    return 0 if sys.platform == "win32" else _asked(transport, termios.FIONREAD)


def unsent_bytes(transport: asyncio.WriteTransport) -> int:
    """Return how much of what was answered the client has not taken."""
    held = transport.get_write_buffer_size()
    return held if sys.platform == "win32" else held + _asked(transport, termios.TIOCOUTQ)


def taken_bytes(transport: asyncio.WriteTransport) -> int:
    """Return a count that rises by what the client takes of its answers."""
    if sys.platform == "linux":
        info = _socket(transport).getsockopt(socket.IPPROTO_TCP, socket.TCP_INFO, 256)
        if len(info) >= _ACKED_AT + 8:
            count: int = struct.unpack_from("Q", info, _ACKED_AT)[0]
            return count
    return -unsent_bytes(transport)


def reset(transport: asyncio.WriteTransport) -> None:
    """End a connection and drop what was not taken: a mere close leaves that with the system for minutes."""
    _socket(transport).setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, _NO_LINGER)
    transport.abort()


def most_connections(wanted: int) -> int:
    """Return how many connections the process can hold, as many as wanted at most, and take the files that it may."""
    if sys.platform == "win32":
        return wanted
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    if soft != resource.RLIM_INFINITY and soft < wanted + SPARE_FILES:
        soft = wanted + SPARE_FILES if hard == resource.RLIM_INFINITY else min(hard, wanted + SPARE_FILES)
        resource.setrlimit(resource.RLIMIT_NOFILE, (soft, hard))
    return wanted if soft == resource.RLIM_INFINITY else min(wanted, soft - SPARE_FILES)


def _socket(transport: asyncio.BaseTransport) -> Any:  # noqa: ANN401 - the loop's own kind of socket
    return transport.get_extra_info("socket")


def _asked(transport: asyncio.BaseTransport, question: int) -> int:
    count = array.array("i", [0])
    fcntl.ioctl(_socket(transport).fileno(), question, count)
    return count[0]
