"""The bounded pool for long work: one job at a time, a short queue, refusal beyond it.

A job on the event loop would hold up every other request, and two at once only share one core. A single
worker thread with a short switch interval (`server.py` sets it) keeps probes answered within milliseconds.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import TypeVar, TypeVarTuple

import anyio
import anyio.to_thread
from fastapi import Request

from service.api.errors.problem import HttpProblem
from service.api.transport.request_body import ClientGone

Argument = TypeVar("Argument")
Result = TypeVar("Result")
Arguments = TypeVarTuple("Arguments")


class WorkPool:
    """One worker and the queue before it."""

    def __init__(self, queue_length: int, retry_after_s: int) -> None:
        self._queue_length = queue_length
        self._retry_after_s = retry_after_s
        self._turn = anyio.Lock()
        self.pending = 0

    async def run(self, request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments) -> Result:
        """Return what the function returns; 503 when the queue is full, no work for a client that left meanwhile."""
        with self._place():
            return await self._one_turn(request, function, *arguments)

    async def run_in_turns(
        self, request: Request, function: Callable[[Argument], Result], parts: Iterable[Argument]
    ) -> list[Result]:
        """Return what the function makes of each part; between two of them whoever waits has a turn."""
        with self._place():
            return [await self._one_turn(request, function, part) for part in parts]

    @contextmanager
    def _place(self) -> Iterator[None]:
        """Hold a place in the queue, or refuse with 503."""
        if self.pending > self._queue_length:
            raise HttpProblem(503, headers={"Retry-After": str(self._retry_after_s)})
        self.pending += 1
        try:
            yield
        finally:
            self.pending -= 1

    async def _one_turn(
        self, request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments
    ) -> Result:
        async with self._turn:
            if await request.is_disconnected():
                raise ClientGone
            # The turn is the limiter; the thread is not left before it has finished, so neither is the turn.
            return await anyio.to_thread.run_sync(function, *arguments)


async def run_bounded(request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments) -> Result:
    """Return what the function returns, run in the app's bounded pool."""
    pool: WorkPool = request.app.state.work_pool
    return await pool.run(request, function, *arguments)
