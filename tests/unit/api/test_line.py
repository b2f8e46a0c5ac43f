"""The line for work: bounded, and fair among callers. Nothing outside describes it; the rule stands in its module."""

import asyncio
from collections.abc import Callable, Coroutine
from typing import Any

import pytest
from starlette.types import Scope

from service.api.errors.problem import HttpProblem
from service.api.transport.callers import CALLER, address_of
from service.api.transport.line import Line
from service.api.transport.work_pool import ShortWork


class Shop:
    """A line of which each request is told when to end, and who was served in which order."""

    def __init__(self, length: int) -> None:
        self.line = Line(1, length, 7)
        self.served: list[str] = []
        self.refused: list[str] = []
        self.problem: HttpProblem
        self.closing = asyncio.Event()

    async def ask(self, name: str) -> None:
        """Hold a place and a seat as caller of the first letter."""
        try:
            with self.line.place(name[0]) as place:
                await self.line.sit(place)
                self.served.append(name)
                await self.closing.wait()
                self.line.stand()
        except HttpProblem as problem:
            self.refused.append(name)
            self.problem = problem


def run(length: int, names: str, cancel: str = "") -> Shop:
    """Return the shop after these requests came in this order and all were served or refused."""

    async def day() -> Shop:
        shop = Shop(length)
        asked = {}
        for name in names.split():
            asked[name] = asyncio.create_task(shop.ask(name))
            await asyncio.sleep(0)
        for name in cancel.split():
            asked[name].cancel()
        await asyncio.sleep(0)
        shop.closing.set()
        await asyncio.wait(asked.values())
        assert shop.line.pending == 0
        return shop

    return asyncio.run(day())


def test_callers_take_turns_and_each_keeps_the_order_of_its_own() -> None:
    assert run(9, "a1 a2 a3 a4 b1 b2 c1").served == ["a1", "a2", "b1", "c1", "a3", "b2", "a4"]


def test_one_caller_alone_may_fill_the_line_and_no_more() -> None:
    shop = run(3, "a1 a2 a3 a4 a5")
    assert (shop.served, shop.refused) == (["a1", "a2", "a3", "a4"], ["a5"])
    assert (shop.problem.status, shop.problem.headers) == (503, {"Retry-After": "7"})


def test_a_full_line_makes_room_for_a_caller_who_holds_less() -> None:
    shop = run(3, "a1 a2 a3 a4 b1 b2 b3")
    # The newest of the greediest go, until both hold the same; then the newcomer is refused as anybody.
    assert (shop.served, shop.refused) == (["a1", "a2", "b1", "b2"], ["a4", "a3", "b3"])


def test_nobody_who_holds_as_much_is_displaced() -> None:
    assert run(1, "a1 b1 c1").refused == ["c1"]


def test_work_that_has_begun_is_not_thrown_away() -> None:
    async def day() -> list[str]:
        line, done = Line(1, 1, 1), []
        with line.place("a") as first:
            await line.sit(first)
            line.stand()
            with line.place("a") as second:
                await line.sit(second)
                # Between two parts of its work, the first waits for its next turn.
                again = asyncio.create_task(line.sit(first))
                await asyncio.sleep(0)
                with pytest.raises(HttpProblem), line.place("b"):
                    pass
                line.stand()
                await again
                done.append("first")
        return done

    assert asyncio.run(day()) == ["first"]


@pytest.mark.parametrize("gone", ["a2", "b1", "a2 b1"])
def test_a_place_is_free_again_when_its_request_is_cancelled(gone: str) -> None:
    shop = run(9, "a1 a2 b1 a3", cancel=gone)
    assert set(shop.served) == {"a1", "a2", "a3", "b1"} - set(gone.split())


def test_a_seat_given_in_the_moment_of_a_cancellation_is_passed_on() -> None:
    async def day() -> int:
        line = Line(1, 9, 1)
        with line.place("a") as first, line.place("b") as second:
            await line.sit(first)
            waiting = asyncio.create_task(line.sit(second))
            await asyncio.sleep(0)
            line.stand()
            waiting.cancel()
            with pytest.raises(asyncio.CancelledError):
                await waiting
        with line.place("c") as third:
            await asyncio.wait_for(line.sit(third), 1)
        return line.pending

    assert asyncio.run(day()) == 0


def order_of(work: Callable[[list[str]], list[Coroutine[Any, Any, None]]]) -> list[str]:
    """Return in which order things that were ready together came about."""

    async def day() -> list[str]:
        seen: list[str] = []
        await asyncio.gather(*work(seen))
        return seen

    return asyncio.run(day())


def test_short_work_lets_what_is_ready_meanwhile_through() -> None:
    short = ShortWork(100, 1)

    def work(seen: list[str]) -> list[Coroutine[Any, Any, None]]:
        async def check() -> None:
            async with short.turn({CALLER: "a"}):
                seen.append("check")

        async def probe() -> None:
            seen.append("probe")

        return [*(check() for _ in range(40)), probe()]

    # All were ready at once, the probe last; without turns it would come behind the fortieth.
    assert order_of(work).index("probe") == 4
    assert order_of(work).count("check") == 40


def scope(client: str, *forwarded: bytes) -> Scope:
    return {"client": (client, 1), "headers": [(b"x-forwarded-for", value) for value in forwarded]}


@pytest.mark.parametrize(
    ("proxies", "forwarded", "caller"),
    [
        (0, [b"203.0.113.7"], "192.0.2.1"),
        (1, [], "192.0.2.1"),
        (1, [b"203.0.113.7"], "203.0.113.7"),
        # What the client itself sent stands before what the proxy saw, in the same line or in one of its own.
        (1, [b"198.51.100.9, 203.0.113.7"], "203.0.113.7"),
        (1, [b"198.51.100.9", b"203.0.113.7"], "203.0.113.7"),
        (2, [b"198.51.100.9, 203.0.113.7, 192.0.2.2"], "203.0.113.7"),
        (2, [b"203.0.113.7"], "192.0.2.1"),
        (1, [b"203.0.113.7, "], "192.0.2.1"),
        (1, [b"2001:db8:1:2:3:4:5:6"], "2001:db8:1:2::/64"),
        (1, [b"::ffff:203.0.113.7"], "203.0.113.7"),
        (1, [b"not:an:address"], "not:an:address"),
    ],
)
def test_an_address_counts_as_far_as_known_proxies_wrote_it(proxies: int, forwarded: list[bytes], caller: str) -> None:
    # Addresses for documentation: RFC 5737 and RFC 3849.
    assert address_of(scope("192.0.2.1", *forwarded), proxies) == caller


def test_the_addresses_of_one_host_are_one_caller() -> None:
    assert address_of(scope("2001:db8::1"), 0) == address_of(scope("2001:db8::2"), 0)
    assert address_of(scope("2001:db8:0:1::1"), 0) != address_of(scope("2001:db8::1"), 0)
