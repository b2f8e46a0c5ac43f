"""Errors that the domain raises; `api/errors/problem.py` alone turns them into HTTP."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from service.core.saying import Amount, Said, say

DesignationKind = Literal["tyre", "rim", "bolt circle"]
NamedKind = Literal["table", "rule pack"]


class DomainError(Exception):
    """A request that cannot be answered: says where (RFC 6901 pointer), why, and a stable code."""

    code = "invalid"

    def __init__(self, detail: Said, pointer: str = "") -> None:
        super().__init__(detail)
        self.detail = detail
        self.pointer = pointer

    def at(self, pointer: str) -> DomainError:
        """Return this error with the pointer of the field that caused it."""
        self.pointer = pointer
        return self


class RefusedRequest(ValueError):
    """A request that `service.assess` cannot answer; `faults` has a pointer (RFC 6901) and a sentence each."""

    def __init__(self, faults: tuple[tuple[str, str], ...]) -> None:
        super().__init__("\n".join(f"{pointer}: {detail}" if pointer else detail for pointer, detail in faults))
        self.faults = faults


class UnreadableDesignation(DomainError):
    """A designation that cannot be read: the position in the text and what was expected there."""

    code = "unreadable_designation"
    did_you_mean: str | None = None
    """The canonical spelling of what may have been meant, if any is near."""

    def __init__(self, kind: DesignationKind, position: int, expected: Said) -> None:
        super().__init__(_unreadable(kind, Amount(position), expected))
        self.kind = kind
        self.position = position
        self.expected = expected


class UnknownName(DomainError):
    """A name (of a table, a rule pack) that the service does not have."""

    code = "unknown_name"

    def __init__(self, kind: NamedKind, known: tuple[str, ...], pointer: str = "") -> None:
        super().__init__(unknown_name(kind, known), pointer)
        self.kind = kind
        self.known = known


def _unreadable(kind: DesignationKind, position: Amount, expected: Said) -> Said:
    if kind == "tyre":
        # Say: {expected} is a thing with its article, as a list of what is expected would name it; so below.
        return say(
            "This tyre designation cannot be read at position {position}: expected {expected}.",
            position=position,
            expected=expected,
        )
    if kind == "rim":
        return say(
            "This rim designation cannot be read at position {position}: expected {expected}.",
            position=position,
            expected=expected,
        )
    return say(
        "This bolt circle cannot be read at position {position}: expected {expected}.",
        position=position,
        expected=expected,
    )


def unknown_name(kind: NamedKind, known: Iterable[str]) -> Said:
    """Return that there is no such name, with those that there are."""
    names = ", ".join(known)
    if kind == "table":
        return say("There is no table of this name. Known: {names}.", names=names)
    return say("There is no rule pack of this name. Known: {names}.", names=names)
