"""Whose request it is by its address: behind proxies, and of hosts that take any address of their network."""

from __future__ import annotations

import pytest

from service.api.transport.callers import address_of


def scope(client: str | None, *forwarded: str) -> dict[str, object]:
    headers = [(b"x-forwarded-for", each.encode("latin-1")) for each in forwarded]
    return {"client": None if client is None else (client, 50000), "headers": headers}


@pytest.mark.parametrize(
    ("client", "forwarded", "proxies", "address"),
    # Addresses for documentation: RFC 5737 and RFC 3849.
    [
        ("192.0.2.1", (), 0, "192.0.2.1"),
        (None, (), 0, ""),
        # What a caller writes does not count where no proxy is known.
        ("192.0.2.1", ("198.51.100.7",), 0, "192.0.2.1"),
        # Each proxy appends whom it saw: the last is the nearest proxy's word.
        ("192.0.2.1", ("198.51.100.7",), 1, "198.51.100.7"),
        ("192.0.2.1", ("203.0.113.9, 198.51.100.7",), 1, "198.51.100.7"),
        ("192.0.2.1", ("203.0.113.9, 198.51.100.7",), 2, "203.0.113.9"),
        ("192.0.2.1", ("203.0.113.9", "198.51.100.7"), 2, "203.0.113.9"),
        # With fewer entries than proxies it came another way.
        ("192.0.2.1", ("198.51.100.7",), 2, "192.0.2.1"),
        ("192.0.2.1", (), 1, "192.0.2.1"),
        ("192.0.2.1", ("198.51.100.7, ",), 1, "192.0.2.1"),
        # RFC 4291, 2.5.1: the last 64 bits are the host's own to choose.
        ("2001:db8:1:2:aaaa::1", (), 0, "2001:db8:1:2::/64"),
        ("2001:db8:1:2:ffff:ffff:ffff:ffff", (), 0, "2001:db8:1:2::/64"),
        ("2001:db8:1:3::1", (), 0, "2001:db8:1:3::/64"),
        # RFC 4291, 2.5.5.2: an address of the older kind in the newer form.
        ("::ffff:192.0.2.1", (), 0, "192.0.2.1"),
        ("192.0.2.1", ("no: address",), 1, "no: address"),
    ],
)
def test_the_address_that_stands_for_a_caller(client, forwarded, proxies, address):
    assert address_of(scope(client, *forwarded), proxies) == address


def test_what_no_address_is_as_long_as_is_cut():
    told = address_of(scope("192.0.2.1", "a" * 500), 1)
    assert told == "a" * len(told)
    # 45 characters are the longest that an address is written in (INET6_ADDRSTRLEN of POSIX less its end).
    assert 45 <= len(told) < 100
