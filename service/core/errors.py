"""Errors that the domain raises; `api/errors/problem.py` alone turns them into HTTP."""

from __future__ import annotations


class DomainError(Exception):
    """A request that cannot be answered: says where (RFC 6901 pointer), why, and a stable code."""

    code = "invalid"

    def __init__(self, detail: str, pointer: str = "") -> None:
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

    def __init__(self, kind: str, position: int, expected: str) -> None:
        super().__init__(f"This {kind} designation cannot be read at position {position}: expected {expected}.")
        self.kind = kind
        self.position = position
        self.expected = expected


class UnknownName(DomainError):
    """A name (of a table, a rule pack) that the service does not have."""

    code = "unknown_name"

    def __init__(self, kind: str, known: tuple[str, ...], pointer: str = "") -> None:
        super().__init__(f"There is no {kind} of this name. Known: {', '.join(known)}.", pointer)
        self.kind = kind
        self.known = known
