"""Who asks, as far as sharing goes: the name of the key, else the address."""

from __future__ import annotations

from ipaddress import IPv4Address, IPv6Network, ip_address
from typing import Final

from starlette.types import Scope

# Where the outermost layer leaves the caller in the scope.
CALLER: Final = "fitment.caller"
# A host takes any address of its link's network, which ends there (RFC 4291, 2.5.1, from memory).
_NETWORK_BITS: Final = 64
# Longer than any address is written; what a proxy passed on may be anything.
_LONGEST: Final = 64


def caller_of(scope: Scope) -> str:
    """Return who sent the request, or nothing where no layer said so."""
    caller: str = scope.get(CALLER, "")
    return caller


def address_of(scope: Scope, proxy_count: int) -> str:
    """Return the address that stands for the caller: the connection's, or what the first of the known proxies saw.

    What others wrote into `X-Forwarded-For` does not count: each proxy appends, so the last ones are the known ones'.
    """
    client = scope.get("client")
    address: str = "" if client is None else client[0]
    if proxy_count:
        lines = [value.decode("latin-1") for name, value in scope["headers"] if name == b"x-forwarded-for"]
        seen = ",".join(lines).split(",")
        # With fewer entries it did not come by way of all of them.
        if len(seen) >= proxy_count and seen[-proxy_count].strip():
            address = seen[-proxy_count].strip()[:_LONGEST]
    return _network(address) if ":" in address else address


def _network(address: str) -> str:
    """Return what all addresses of one host share."""
    try:
        read = ip_address(address)
    except ValueError:
        return address
    if isinstance(read, IPv4Address):
        return address
    return str(read.ipv4_mapped or IPv6Network((read, _NETWORK_BITS), strict=False))
