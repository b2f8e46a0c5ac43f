"""Where a legal number comes from, and the basis that a finding may state for it."""

from __future__ import annotations

from typing import NamedTuple

from service.core.findings import Basis, BasisKind, BasisStatus
from service.core.sources import SOURCES

CHECK_THE_TEXT = "check the official text"


class Provenance(NamedTuple):
    """The article, the document's key in `core/sources.py`, how far it was read, and the day it was compared (ISO)."""

    article: str
    source: str
    status: BasisStatus
    checked: str | None
    note: str = ""


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
    if provenance.checked is not None:
        return Basis(kind, f"{place}; checked {provenance.checked}", provenance.status)
    if provenance.status == "own" or source.kind == "common_practice":
        return Basis(kind, place, provenance.status)
    return Basis(kind, f"{place}; text not read, {CHECK_THE_TEXT}", provenance.status)
