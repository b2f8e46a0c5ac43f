"""Where work waits for its turn: long work before one thread, short work before the event loop.

A long job on the event loop would hold up every other request, and two at once only share one core. A single
worker thread with a short switch interval (`server.py` sets it) keeps probes answered within milliseconds. Short work
stays on the loop, a few at a time between two looks at the sockets.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Iterable
from contextlib import asynccontextmanager
from typing import Final, TypeVar, TypeVarTuple

import anyio.to_thread
from fastapi import Request
from starlette.types import Scope

from service.api.transport.callers import caller_of
from service.api.transport.line import Line, Stay
from service.api.transport.request_body import ClientGone

Argument = TypeVar("Argument")
Result = TypeVar("Result")
Arguments = TypeVarTuple("Arguments")

# A few milliseconds of work; a probe that comes meanwhile waits no longer.
SHORT_AT_ONCE: Final = 4


class WorkPool:
    """One worker, and the line before it."""

    def __init__(self, queue_length: int, retry_after_s: int) -> None:
        self._line = Line(1, queue_length, retry_after_s)

    @property
    def pending(self) -> int:
        """Return how many jobs wait or run."""
        return self._line.pending

    async def run(self, request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments) -> Result:
        """Return what the function returns; 503 when the queue is full, no work for a client that left meanwhile."""
        with self._line.place(caller_of(request.scope)) as place:
            return await self._one_turn(place, request, function, *arguments)

    async def run_in_turns(
        self, request: Request, function: Callable[[Argument], Result], parts: Iterable[Argument]
    ) -> list[Result]:
        """Return what the function makes of each part; between two of them whoever waits has a turn."""
        with self._line.place(caller_of(request.scope)) as place:
            return [await self._one_turn(place, request, function, part) for part in parts]

    async def _one_turn(
        self, place: Stay, request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments
    ) -> Result:
        watching = asyncio.create_task(self._leave_with(request, place))
        try:
            await self._line.sit(place)
        finally:
            watching.cancel()
        try:
            await _be_there(request)
            # The seat is the limiter; the thread is not left before it has finished, so neither is the seat.
            result = await anyio.to_thread.run_sync(function, *arguments)
            await _be_there(request)
            return result
        finally:
            self._line.stand()

    async def _leave_with(self, request: Request, place: Stay) -> None:
        """Give up the place when the client leaves: jobs that nobody waits for would keep others out."""
        while (await request.receive())["type"] != "http.disconnect":
            pass
        self._line.leave(place)


async def _be_there(request: Request) -> None:
    if await request.is_disconnected():
        raise ClientGone


class ShortWork:
    """The event loop, and the line before it."""

    def __init__(self, queue_length: int, retry_after_s: int) -> None:
        self._line = Line(SHORT_AT_ONCE, queue_length, retry_after_s)

    @asynccontextmanager
    async def turn(self, scope: Scope) -> AsyncIterator[None]:
        """Wait for a turn on the loop; 503 when too many wait already."""
        with self._line.place(caller_of(scope)) as place:
            await self._line.sit(place)
            # The next one sits down when the loop has looked at the sockets again: work without a pause never lets it.
            asyncio.get_running_loop().call_soon(self._line.stand)
            yield


async def run_bounded(request: Request, function: Callable[[*Arguments], Result], *arguments: *Arguments) -> Result:
    """Return what the function returns, run in the app's bounded pool."""
    pool: WorkPool = request.app.state.work_pool
    return await pool.run(request, function, *arguments)
