"""Keys, hosts, request ids, the work pool and cleaning, each by itself."""

import asyncio
import hashlib
import re
import sys
import time
from types import SimpleNamespace

import pytest
from fastapi import Request
from pydantic import SecretStr, ValidationError
from starlette.testclient import TestClient
from starlette.types import Message, Scope

from service.api.errors.problem import HttpProblem, clean
from service.api.transport.api_keys import LONGEST_WAIT_S, ApiKeys
from service.api.transport.observability import Metrics, RequestIds
from service.api.transport.request_body import BODY_ARRIVED, BodySpace, ClientGone, let_go_of_body, read_body
from service.api.transport.security import TrustedHosts
from service.api.transport.work_pool import WorkPool
from service.app import create_app
from service.settings import BadSettings, Settings


def request(*, left: bool) -> Request:
    async def receive() -> dict[str, str]:
        if not left:
            await asyncio.Event().wait()
        return {"type": "http.disconnect"}

    return Request({"type": "http"}, receive)


def status_of(keys: ApiKeys, presented: bytes | None) -> int:
    try:
        asyncio.run(keys.admit(keys.owner(presented)))
    except HttpProblem as problem:
        return problem.status
    return 200


@pytest.mark.parametrize(
    ("presented", "status"), [(b"one", 200), (b"two", 200), (b"three", 401), (b"", 401), (None, 401)]
)
def test_only_known_keys_are_let_in(presented: bytes | None, status: int) -> None:
    entries = [f"{name}:{hashlib.sha256(name.encode()).hexdigest()}" for name in ("one", "two")]
    assert status_of(ApiKeys(entries, "10/second", "memory://", pytest.fail), presented) == status


ENTRY = f"one:{hashlib.sha256(b'one').hexdigest()}"


def test_a_store_that_cannot_be_reached_leaves_the_counting_to_the_process_and_is_noted() -> None:
    noted: list[bool] = []
    # Nothing listens on port 1 (assigned to a service that is extinct).
    keys = ApiKeys([ENTRY], "2/day", "redis://127.0.0.1:1/0", lambda: noted.append(True))
    assert [status_of(keys, b"one") for _ in range(3)] == [200, 200, 429]
    # It is left alone for a while, else every request would wait for it.
    assert noted == [True]


def test_no_burst_passes_where_one_window_follows_another(monkeypatch: pytest.MonkeyPatch) -> None:
    keys = ApiKeys([ENTRY], "10/minute", "memory://", pytest.fail)
    # A whole number of minutes: windows that begin anew would let ten pass before and ten behind it.
    seconds = 29_000_000.0 * 60.0
    monkeypatch.setattr(time, "time", lambda: seconds - 1.0)
    assert [status_of(keys, b"one") for _ in range(11)] == [200] * 10 + [429]
    monkeypatch.setattr(time, "time", lambda: seconds + 1.0)
    # The ten are taken as evenly spread over their minute, of which a second is over.
    assert [status_of(keys, b"one") for _ in range(2)] == [200, 429]
    # Half a minute on, half of them are over.
    monkeypatch.setattr(time, "time", lambda: seconds + 30.0)
    assert [status_of(keys, b"one") for _ in range(5)] == [200] * 4 + [429]


def test_nobody_is_sent_away_for_a_day() -> None:
    keys = ApiKeys([ENTRY], "1/day", "memory://", pytest.fail)
    assert status_of(keys, b"one") == 200
    with pytest.raises(HttpProblem) as refused:
        asyncio.run(keys.admit(keys.owner(b"one")))
    assert refused.value.headers is not None
    assert 0 < int(refused.value.headers["Retry-After"]) <= LONGEST_WAIT_S


def test_where_keys_are_required_none_is_a_fault() -> None:
    with pytest.raises(ValidationError, match="FITMENT_API_KEYS"):
        Settings(keys_required=True)
    with TestClient(create_app(Settings(keys_required=True, api_keys=(SecretStr(ENTRY),), access_log=False))) as client:
        assert client.get("/v1/rule-packs").status_code == 401
        answer = client.get("/v1/rule-packs", headers={"X-API-Key": "one"})
        # A cache that others share must not hand it to somebody without a key.
        assert (answer.status_code, answer.headers["cache-control"]) == (200, "private, max-age=3600")


def test_the_place_of_the_rates_is_looked_at_before_there_is_a_key() -> None:
    with pytest.raises(BadSettings, match=r"^FITMENT_RATE_STORAGE: memory:// or an address redis://"):
        create_app(Settings(rate_storage=SecretStr("foo://user:hidden@x")))


def test_an_address_of_rates_that_cannot_be_read_is_told_without_it() -> None:
    # A port is a number (RFC 3986, 3.2.3).
    with pytest.raises(BadSettings, match=r"^FITMENT_RATE_STORAGE: ") as refused:
        create_app(Settings(rate_storage=SecretStr("redis://:hidden@redis.example:many")))
    assert "hidden" not in str(refused.value)


def test_a_missing_extra_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    # None in its place makes Python's import fail as it does where the package is not there.
    monkeypatch.setitem(sys.modules, "redis", None)
    with pytest.raises(BadSettings, match=r"pip install 'fitment-service\[redis\]'"):
        create_app(Settings(rate_storage=SecretStr("redis://redis.example")))


def test_without_keys_shared_caches_may_keep_the_tables() -> None:
    with TestClient(create_app(Settings(access_log=False))) as client:
        assert client.get("/v1/rule-packs").headers["cache-control"] == "public, max-age=3600"


@pytest.mark.parametrize(
    ("host", "known"),
    [
        (b"a.example", True),
        (b"A.Example:8080", True),
        (b"x.b.example", True),
        (b"b.example", False),
        (b"a.example.evil", False),
        (b"[::1]:80", True),
        (b"[::2]", False),
        (None, False),
    ],
)
def test_hosts_are_known_by_name_without_their_port(host: bytes | None, *, known: bool) -> None:
    hosts = TrustedHosts(["a.example", "*.b.example", "[::1]"])
    if known:
        hosts.refuse_unknown(host)
    else:
        with pytest.raises(HttpProblem):
            hosts.refuse_unknown(host)


def test_request_ids_of_two_processes_differ() -> None:
    assert len({RequestIds().take(None) for _ in range(100)}) == 100


def test_request_ids_of_one_process_differ() -> None:
    ids = RequestIds()
    assert len({ids.take(None) for _ in range(100)}) == 100


def test_text_is_cut_to_the_limit() -> None:
    assert len(clean("a" * 1000)) == 200


@pytest.mark.parametrize("character", ["\x00", "\x1b", "\x7f", "\x85", "\u2028", "\ud800", "\ufeff", "\u202e"])
def test_characters_that_could_do_harm_where_they_are_shown_are_replaced(character: str) -> None:
    assert clean(f"a{character}b") == "a\ufffdb"


def test_a_large_body_holds_its_space_until_its_request_ends() -> None:
    app = SimpleNamespace(state=SimpleNamespace(body_space=BodySpace(1_000_000, 7)))

    def scope() -> Scope:
        return {"app": app, "headers": [(b"content-type", b"application/json")], BODY_ARRIVED: True}

    def read(scope: Scope) -> int:
        halves = iter([{"body": b" " * 300_000, "more_body": True}, {"body": b" " * 300_000}])

        async def receive() -> Message:
            return {"type": "http.request", **next(halves)}

        return len(asyncio.run(read_body(scope, receive, 1_000_000)))

    first, second = scope(), scope()
    assert read(first) == 600_000
    with pytest.raises(HttpProblem) as refused:
        read(second)
    assert (refused.value.status, refused.value.headers) == (503, {"Retry-After": "7"})
    # What the refused one took before it was too much goes back with it.
    let_go_of_body(second)
    let_go_of_body(first)
    assert read(scope()) == 600_000


def test_the_pool_gives_back_what_the_function_returns() -> None:
    async def ask() -> int:
        return await WorkPool(1, 1).run(request(left=False), max, 2, 3)

    assert asyncio.run(ask()) == 3


def test_the_pool_does_no_work_for_a_client_that_left() -> None:
    done: list[int] = []
    with pytest.raises(ClientGone):
        asyncio.run(WorkPool(1, 1).run(request(left=True), done.append, 1))
    assert done == []


def test_a_place_in_the_queue_is_free_again_after_a_failure() -> None:
    pool = WorkPool(0, 1)
    with pytest.raises(ZeroDivisionError):
        asyncio.run(pool.run(request(left=False), divmod, 1, 0))
    assert pool.pending == 0


def test_made_up_methods_share_one_series() -> None:
    metrics = Metrics(lambda: 0.0, lambda: 0.0)
    for method in ("BREW", "WHEN", "PROPFIND"):
        metrics.observe_request("unmatched", method, 404, 0.001)
    assert b'http_requests_total{method="other",outcome="refused",route="unmatched",status="404"} 3.0' in (
        metrics.exposition()
    )


def test_times_are_counted_in_round_steps_from_half_a_millisecond_to_ten_seconds() -> None:
    """1, 2.5 and 5 of each power of ten, as the client libraries of Prometheus have it (from memory)."""
    metrics = Metrics(lambda: 0.0, lambda: 0.0)
    metrics.observe_request("unmatched", "GET", 200, 0.3)
    found = re.findall(rb'http_request_duration_seconds_bucket\{le="([^"]+)".*\} (.+)', metrics.exposition())
    steps = {float(end): float(count) for end, count in found}
    assert list(steps)[:1] + list(steps)[-2:] == [0.0005, 10.0, float("inf")]
    assert {f"{end:.3e}"[:5] for end in list(steps)[:-1]} == {"1.000", "2.500", "5.000"}
    assert [end for end, count in steps.items() if count] == [end for end in steps if end >= 0.3]
