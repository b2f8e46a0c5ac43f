"""A bounded line for work, in which callers take turns however many requests each of them sends.

Whoever is alone may fill it. When it is full and a caller comes who holds less of it, the newest request of whoever
holds most gives up its place, so that nobody is shut out by another's zeal.
"""

from __future__ import annotations

import asyncio
from collections import Counter, OrderedDict, deque
from collections.abc import Iterator
from contextlib import contextmanager

from service.api.errors.problem import HttpProblem
from service.api.transport.request_body import ClientGone


class Stay:
    """One request's place in the line, from its arrival to its end."""

    __slots__ = ("caller", "has_begun", "is_held", "seated")

    def __init__(self, caller: str) -> None:
        self.caller = caller
        self.is_held = True
        # Work that has begun is not thrown away for another's.
        self.has_begun = False
        # Done when the seat is there, or when the place is lost.
        self.seated: asyncio.Future[None] | None = None


class Line:
    """The seats, and the line before them."""

    def __init__(self, seats: int, length: int, retry_after_s: int) -> None:
        self._free = seats
        self._most = seats + length
        self._retry_after_s = retry_after_s
        # Who is served next stands first; each caller's own requests keep their order.
        self._waiting: OrderedDict[str, deque[Stay]] = OrderedDict()
        self._held: Counter[str] = Counter()
        self.pending = 0

    @contextmanager
    def place(self, caller: str) -> Iterator[Stay]:
        """Hold a place, or refuse with 503."""
        if self.pending >= self._most and not self._make_room(caller):
            raise self._refusal()
        place = Stay(caller)
        self._held[caller] += 1
        self.pending += 1
        try:
            yield place
        finally:
            self._give_back(place)

    async def sit(self, place: Stay) -> None:
        """Wait for a seat; 503 when the place goes to a caller who holds less of the line."""
        if self._free and not self._waiting:
            self._free -= 1
        else:
            seated = place.seated = asyncio.get_running_loop().create_future()
            self._waiting.setdefault(place.caller, deque()).append(place)
            try:
                await seated
            except asyncio.CancelledError:
                if not seated.cancelled() and seated.exception() is None:
                    # The seat came in the same moment and nobody will take it.
                    self.stand()
                raise
        place.has_begun = True

    def leave(self, place: Stay) -> None:
        """Give up a place that waits: nobody is there to be answered any more."""
        self._lose(place, ClientGone())

    def stand(self) -> None:
        """Leave a seat to whoever is next."""
        while self._waiting:
            caller, places = next(iter(self._waiting.items()))
            seated = places.popleft().seated
            if places:
                self._waiting.move_to_end(caller)
            else:
                del self._waiting[caller]
            if seated is not None and not seated.done():
                seated.set_result(None)
                return
        self._free += 1

    def _make_room(self, caller: str) -> bool:
        """Take the newest place from whoever holds most, if this caller then still holds no more; say whether."""
        greediest = max(self._held, key=self._held.__getitem__, default=caller)
        if self._held[greediest] <= self._held[caller] + 1:
            return False
        for place in reversed(self._waiting.get(greediest, ())):
            if not place.has_begun and self._lose(place, self._refusal()):
                return True
        return False

    def _lose(self, place: Stay, reason: Exception) -> bool:
        """Take a place that waits from its request, for this reason; return whether it waited."""
        if place.seated is None or place.seated.done():
            return False
        place.seated.set_exception(reason)
        self._give_back(place)
        return True

    def _give_back(self, place: Stay) -> None:
        if not place.is_held:
            return
        place.is_held = False
        self.pending -= 1
        self._held[place.caller] -= 1
        if not self._held[place.caller]:
            del self._held[place.caller]

    def _refusal(self) -> HttpProblem:
        return HttpProblem(503, headers={"Retry-After": str(self._retry_after_s)})
