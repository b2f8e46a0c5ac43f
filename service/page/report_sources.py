"""The documents that a report's findings rest on: what their references share is printed once."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import chain, takewhile
from types import MappingProxyType
from typing import Final, NamedTuple

from service.core.findings import Basis, BasisStatus, Finding
from service.core.saying import Said, say
from service.core.sources import UNPUBLISHED

STATUS_WORDS: Final[Mapping[BasisStatus, Said]] = MappingProxyType(
    {
        # Say: how far a source is known: its text was read
        "read": say("read"),
        # Say: how far a source is known: somebody's quotation of it was read
        "second_hand": say("second-hand"),
        # Say: how far a source is known: from the trade's memory
        "memory": say("memory"),
        # Say: how far a source is known: computed from numbers that were read
        "derived": say("derived"),
        # Say: how far a source is known: the project's own judgement
        "own": say("own"),
    }
)
STATUS_KEY: Final = say(
    "[{memory}]: known in the trade, no text seen; [{second_hand}]: a quotation was seen; "
    "[{own}]: this project's judgement.",
    memory=STATUS_WORDS["memory"],
    second_hand=STATUS_WORDS["second_hand"],
    own=STATUS_WORDS["own"],
)
THE_LIMIT: Final = say("the limit itself")
AS_A_WHOLE: Final = say("as a whole")
# How a reference ends: what its status already says, and the day on which the text was looked at.
NOT_READ: Final = "; text not read"
PLACE_MARK: Final = re.compile(", |: ")
CHECKED: Final = "; checked "
DAY_LENGTH: Final = len("2026-11-24")


class Place(NamedTuple):
    """A place in a document by its number: in the document's words, or in ours where it is the whole."""

    number: int
    words: str
    whole: Said | None


class Document(NamedTuple):
    """A document that findings rest on, how far it was read, and its places."""

    title: str
    status: Said
    places: list[Place]


def documents(findings: Sequence[Finding]) -> tuple[list[Document], dict[Basis, int]]:
    """Return the documents that the findings rest on, and the number of each place in them."""
    found: dict[tuple[str, BasisStatus, str], list[tuple[Basis, list[str]]]] = {}
    for ground in dict.fromkeys(each.basis for each in findings):
        words, _, tail = ground.reference.partition(CHECKED)
        day, more = tail[:DAY_LENGTH], tail[DAY_LENGTH:].strip("; ")
        # What is said after a colon (practice, the project's own) or a comma is a place in the document.
        parts = [*PLACE_MARK.split(words.removesuffix(NOT_READ)), *([more] if more else [])]
        found.setdefault((parts[0], ground.status, day), []).append((ground, parts))
    numbers = {ground: n for n, (ground, _) in enumerate(chain.from_iterable(found.values()), 1)}
    told = []
    for (title, status, day), grounds in found.items():
        shared = _shared([parts for _, parts in grounds])
        places = [Place(numbers[ground], ", ".join(parts[len(shared) :]), _whole(ground)) for ground, parts in grounds]
        words = STATUS_WORDS[status]
        read = say("{status}, checked {day}", status=words, day=day) if day else words
        told.append(Document(", ".join(shared) or title, read, places))
    return told, numbers


def _whole(ground: Basis) -> Said:
    return THE_LIMIT if ground.kind in UNPUBLISHED else AS_A_WHOLE


def _shared(lists: list[list[str]]) -> list[str]:
    """Return what all lists begin with; of a single one its first part."""
    if len(lists) == 1:
        return lists[0][:1]
    return [same[0] for same in takewhile(lambda same: len(set(same)) == 1, zip(*lists, strict=False))]
