"""Lines of the log on their way out: whoever reads them slowly, or not at all, does not hold up an answer.

A line is written only while the system takes it at once; else it waits, and beyond the most that may wait it is
dropped and counted. No thread does this: a line costs one question to the system more.
"""

from __future__ import annotations

import logging
import os
import select
from collections import deque
from threading import Lock
from time import monotonic
from typing import Final

import orjson
from typing_extensions import override

# As much as a pipe that is ready takes without waiting (PIPE_BUF of Linux, pipe(7)).
_PIECE: Final = 4096
STDOUT: Final = 1
MOST_WAITING: Final = 1000
# How long the lines that wait at the end are offered.
_LAST_S: Final = 1.0


class LogLines:
    """What is still to be written to one file."""

    def __init__(self, file: int, most_waiting: int = MOST_WAITING) -> None:
        self._file = file
        self._most = most_waiting
        self._waiting: deque[bytes] = deque()
        # What of the line under way is not out yet.
        self._rest = b""
        self._unreported = 0
        self._lock = Lock()
        self.dropped = 0

    def write(self, line: bytes) -> None:
        """Write a line, its end included, or keep it for later, or drop it."""
        with self._lock:
            self._offer()
            if len(self._waiting) >= self._most:
                self.dropped += 1
                self._unreported += 1
                return
            if self._unreported:
                self._waiting.append(_told(self._unreported))
                self._unreported = 0
            self._waiting.append(line)
            self._offer()

    def msg(self, line: bytes) -> None:
        """Write a line, as structlog has it."""
        self.write(line + b"\n")

    debug = info = warning = error = msg

    def finish(self) -> None:
        """Offer what waits for a moment, at the end."""
        until = monotonic() + _LAST_S
        with self._lock:
            if self._unreported:
                self._waiting.append(_told(self._unreported))
            while (self._rest or self._waiting) and monotonic() < until:
                if not self._offer():
                    select.select([], [self._file], [], until - monotonic())

    def _offer(self) -> bool:
        """Write as much as is taken at once; return whether that was all."""
        while self._rest or self._waiting:
            if not self._rest:
                self._rest = self._waiting.popleft()
            if not select.select([], [self._file], [], 0)[1]:
                return False
            try:
                self._rest = self._rest[os.write(self._file, self._rest[:_PIECE]) :]
            except OSError:
                # Nobody will read any more; the service goes on without its log.
                self.dropped += 1
                self._rest = b""
        return True


def _told(count: int) -> bytes:
    return orjson.dumps({"event": "log lines dropped", "count": count, "level": "warning"}) + b"\n"


class LinesHandler(logging.Handler):
    """Sends what libraries log the same way."""

    def __init__(self, lines: LogLines) -> None:
        super().__init__()
        self._lines = lines

    @override
    def emit(self, record: logging.LogRecord) -> None:
        """Write a record."""
        self._lines.msg(self.format(record).encode())
