"""Reading of many candidates: all at once where they are well, one by one where some are not."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from typing import Any, NamedTuple

from pydantic import TypeAdapter, ValidationError

from service.api.errors.problem import clean
from service.api.errors.request_faults import RequestFault, domain_fault, validation_faults
from service.api.inbound import translate
from service.api.schemas.base import MAX_ID
from service.api.schemas.comparison import MAX_FAULTS_PER_ROW
from service.api.schemas.request import Candidate as AskedCandidate
from service.api.schemas.search import StockLine
from service.assessment.case import Candidate, Vehicle
from service.core.errors import DomainError
from service.designation.tyre import TyreDesignation

MAX_LABEL = 80
_MANY = TypeAdapter(list[AskedCandidate]).validator


class Refused(NamedTuple):
    """A candidate that cannot be read: place, id and label (empty: none), its first faults, and how many there are."""

    place: int
    id: str
    label: str
    faults: list[RequestFault]
    fault_count: int


class Read(NamedTuple):
    """What was read: candidates with their places in the request and ids (empty: none), and those refused."""

    indices: list[int]
    ids: list[str]
    candidates: list[Candidate]
    refused: list[Refused]


def read_candidates(items: Sequence[dict[str, Any]], vehicle: Vehicle) -> Read:
    """Return the candidates of a request, the bad ones apart; pointers of faults lead into the request."""
    # Of many candidates most have a designation in common with others.
    seen: dict[object, object] = {}
    try:
        return _translated(range(len(items)), _MANY.validate_python(items, context=seen), vehicle)
    except ValidationError as error:
        found = error.errors(include_url=False)
    by_place: dict[int, list[Any]] = defaultdict(list)
    for each in found:
        place, *rest = each["loc"]
        by_place[int(place)].append({**each, "loc": ("body", *rest)})
    refused = [
        Refused(
            index,
            _named(items[index], "id", MAX_ID),
            _named(items[index], "label", MAX_LABEL),
            [
                fault._replace(pointer=f"/candidates/{index}{fault.pointer}")
                for fault in validation_faults(errors[:MAX_FAULTS_PER_ROW], items[index], AskedCandidate)
            ],
            len(errors),
        )
        for index, errors in by_place.items()
    ]
    rest_of_them = [index for index in range(len(items)) if index not in by_place]
    read = _translated(
        rest_of_them, _MANY.validate_python([items[index] for index in rest_of_them], context=seen), vehicle
    )
    return read._replace(refused=sorted([*refused, *read.refused]))


def _translated(indices: Sequence[int], asked: Sequence[AskedCandidate], vehicle: Vehicle) -> Read:
    refused: list[Refused] = []
    kept: list[int] = []
    ids: list[str] = []
    candidates: list[Candidate] = []
    for index, each in zip(indices, asked, strict=True):
        try:
            candidates.append(translate.candidate(each, vehicle))
            kept.append(index)
            ids.append(each.id)
        except DomainError as error:
            fault = domain_fault(error)
            fault = fault._replace(pointer=f"/candidates/{index}{fault.pointer}")
            refused.append(Refused(index, each.id, each.label, [fault], 1))
    return Read(kept, ids, candidates, refused)


def _named(item: dict[str, Any], name: str, longest: int) -> str:
    """Return what the caller calls an entry that cannot be read; empty where that is at fault."""
    value = item.get(name, "")
    return clean(value, longest) if isinstance(value, str) else ""


class UnreadLine(NamedTuple):
    """A line of a stock that cannot be read: its id (empty: none) and its fault."""

    id: str
    fault: RequestFault


class ReadStock(NamedTuple):
    """The tyres of a stock that were read, with their places in the request, and the lines that were not."""

    indices: list[int]
    designations: list[TyreDesignation]
    refused: list[UnreadLine]


def read_stock(lines: Sequence[StockLine]) -> ReadStock:
    """Return the designations of a stock, the bad ones apart."""
    found = ReadStock([], [], [])
    for index, each in enumerate(lines):
        try:
            found.designations.append(each.designation())
            found.indices.append(index)
        except DomainError as error:
            fault = domain_fault(error)
            place = fault.pointer or "/size"
            found.refused.append(UnreadLine(each.id, fault._replace(pointer=f"/stock/{index}{place}")))
    return found
