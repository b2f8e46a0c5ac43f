"""Where a legal number comes from, and the basis that a finding may state for it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated

from pydantic import AfterValidator, Field, ValidationInfo

from service.core.findings import Basis, BasisKind, BasisStatus
from service.core.saying import say
from service.core.sources import SOURCES
from service.rules.written import CLOSED, Day, Text, fault, nearest

CHECK_THE_TEXT = "check the official text"

# Somebody held the number against these on a day that can be named.
_COMPARED: tuple[BasisStatus, ...] = ("read", "second_hand")


def _known_source(source: str) -> str:
    if source not in SOURCES:
        raise fault(f"unknown {{key}} {source[:60]!r}{nearest(source, SOURCES)}")
    return source


def _fits_the_status(checked: str | None, info: ValidationInfo) -> str | None:
    status = info.data.get("status")
    if status in _COMPARED and checked is None:
        raise fault(f"{{key}} is missing: a {status} number has a day of comparison")
    if status in ("memory", "own") and checked is not None:
        raise fault(f"{{key}} is given, but status {status} says that no text was read")
    return checked


# Equality is left to what comes from here: a rule is equal by all that it says, a speedometer rule is itself alone.
@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Provenance:
    """Article, the document's key in `core/sources.py`, how far it was read, and the day it was compared (ISO)."""

    __pydantic_config__ = CLOSED

    article: Text
    source: Annotated[str, AfterValidator(_known_source)]
    status: BasisStatus
    checked: Annotated[Day | None, Field(validate_default=True), AfterValidator(_fits_the_status)] = None
    basis: Basis = field(init=False)
    note: Text = ""

    def __post_init__(self) -> None:
        """Make the basis once; findings ask for it at every answer."""
        object.__setattr__(self, "basis", basis_of(self))

    @property
    def was_read(self) -> bool:
        """Return whether the text itself was read."""
        return self.status == "read"

    @property
    def can_forbid(self) -> bool:
        """Return whether breaking what rests on this is `not_met`, not merely an advisory."""
        return self.was_read


def basis_of(provenance: Provenance) -> Basis:
    """Return the basis that names document, article and day checked.

    What is known only from memory is called common practice, never a regulation: nobody has seen
    the text say so.
    """
    source = SOURCES[provenance.source]
    kind: BasisKind = source.kind
    if provenance.status == "memory" and kind in ("regulation", "standard"):
        kind = "common_practice"
    says_it_all = source.kind == "common_practice" or provenance.article in source.title
    joint = ": " if kind == "project_estimate" else ", "
    place = source.title if says_it_all else f"{source.title}{joint}{provenance.article}"
    words = place
    if provenance.checked is not None:
        words = say("{document}; checked {day}", document=place, day=provenance.checked)
    elif provenance.status != "own" and source.kind != "common_practice":
        words = say("{document}; text not read, check the official text", document=place)
    return Basis(kind, source.key, "" if says_it_all else provenance.article, provenance.status, words)
