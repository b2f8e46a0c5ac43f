"""A log that nobody reads: no line waits for it, those that are lost are counted.

Reference: pipe(7) of Linux (a pipe holds 64 KiB; a write beyond what fits waits).
"""

import json
import os
from collections.abc import Iterator
from contextlib import suppress

import pytest

from service.api.transport.log_lines import LogLines
from service.api.transport.observability import make_logger

LINE = b'{"event":"request"}'


@pytest.fixture
def pipe() -> Iterator[tuple[int, int]]:
    reading, writing = os.pipe()
    yield reading, writing
    for file in (reading, writing):
        with suppress(OSError):
            os.close(file)


def read(reading: int) -> list[dict[str, object]]:
    os.set_blocking(reading, False)
    text = b""
    with suppress(BlockingIOError):
        while piece := os.read(reading, 65536):
            text += piece
    return [json.loads(line) for line in text.splitlines()]


def test_lines_that_nobody_reads_are_kept_up_to_a_bound_then_dropped_and_told(pipe: tuple[int, int]) -> None:
    reading, writing = pipe
    lines = LogLines(writing, most_waiting=10)
    # Several times what the pipe holds: without the question first, this would never end.
    for _ in range(10_000):
        lines.msg(LINE)
    assert lines.dropped > 5000
    first = len(read(reading))
    lines.msg(LINE)
    told = read(reading)
    assert {"event": "log lines dropped", "count": lines.dropped, "level": "warning"} in told
    assert first + len(told) - 1 == 10_001 - lines.dropped


def test_a_line_longer_than_the_pipe_comes_in_pieces_and_whole(pipe: tuple[int, int]) -> None:
    reading, writing = pipe
    lines = LogLines(writing)
    long = b'{"event":"' + b"x" * 200_000 + b'"}'
    lines.msg(long)
    os.set_blocking(reading, False)
    got = os.read(reading, 1_000_000)
    while len(got) < len(long) + 1:
        lines.finish()
        got += os.read(reading, 1_000_000)
    assert got == long + b"\n"


def test_a_log_that_was_closed_ends_nothing(pipe: tuple[int, int]) -> None:
    reading, writing = pipe
    os.close(reading)
    lines = LogLines(writing)
    lines.msg(LINE)
    lines.msg(LINE)
    lines.finish()
    assert lines.dropped == 2


LEVELS = ("debug", "info", "warning", "error")


@pytest.mark.parametrize("level", LEVELS)
def test_a_line_is_written_from_its_level_on(pipe: tuple[int, int], level: str) -> None:
    reading, writing = pipe
    logger = make_logger(level, LogLines(writing))
    for each in LEVELS:
        getattr(logger, each)("said")
    assert [line["level"] for line in read(reading)] == list(LEVELS[LEVELS.index(level) :])
