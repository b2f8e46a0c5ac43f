"""Reading of many candidates: all at once where they are well, one by one where some are not."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from typing import Any, NamedTuple

from pydantic import TypeAdapter, ValidationError

from service.api.errors.problem import clean
from service.api.errors.request_faults import RequestFault, domain_fault, validation_faults
from service.api.inbound import translate
from service.api.schemas import request as wire
from service.api.schemas.comparison import MAX_FAULTS_PER_ROW
from service.assessment.case import Candidate
from service.core.errors import DomainError
from service.designation.tyre import TyreDesignation, parse_tyre

MAX_LABEL = 80
_MANY = TypeAdapter(list[wire.Candidate]).validator


class Refused(NamedTuple):
    """A candidate that cannot be read: its place, its label, the first of its faults, and how many there are."""

    place: int
    label: str
    faults: list[RequestFault]
    fault_count: int


class Read(NamedTuple):
    """What was read: candidates with their places in the request, and those refused."""

    indices: list[int]
    candidates: list[Candidate]
    refused: list[Refused]


def read_candidates(items: Sequence[dict[str, Any]]) -> Read:
    """Return the candidates of a request, the bad ones apart; pointers of faults lead into the request."""
    try:
        return _translated(range(len(items)), _MANY.validate_python(items), [])
    except ValidationError as error:
        found = error.errors(include_url=False)
    by_place: dict[int, list[Any]] = defaultdict(list)
    for each in found:
        place, *rest = each["loc"]
        by_place[int(place)].append({**each, "loc": ("body", *rest)})
    refused = [
        Refused(
            index,
            _label(items[index]),
            [
                fault._replace(pointer=f"/candidates/{index}{fault.pointer}")
                for fault in validation_faults(errors[:MAX_FAULTS_PER_ROW], items[index], wire.Candidate)
            ],
            len(errors),
        )
        for index, errors in by_place.items()
    ]
    rest_of_them = [index for index in range(len(items)) if index not in by_place]
    return _translated(rest_of_them, _MANY.validate_python([items[index] for index in rest_of_them]), refused)


def _translated(indices: Sequence[int], asked: Sequence[wire.Candidate], refused: list[Refused]) -> Read:
    kept: list[int] = []
    candidates: list[Candidate] = []
    for index, each in zip(indices, asked, strict=True):
        try:
            candidates.append(translate.candidate(each))
            kept.append(index)
        except DomainError as error:
            fault = domain_fault(error)
            fault = fault._replace(pointer=f"/candidates/{index}{fault.pointer}")
            refused.append(Refused(index, each.label, [fault], 1))
    return Read(kept, candidates, sorted(refused))


def _label(item: dict[str, Any]) -> str:
    label = item.get("label", "")
    return clean(label, MAX_LABEL) if isinstance(label, str) else ""


class ReadStock(NamedTuple):
    """The sizes of a stock that were read, with their places in the request, and the faults of the others."""

    indices: list[int]
    designations: list[TyreDesignation]
    faults: list[RequestFault]


def read_stock(texts: Sequence[str]) -> ReadStock:
    """Return the designations of a stock, the bad ones apart."""
    found = ReadStock([], [], [])
    for index, each in enumerate(texts):
        try:
            found.designations.append(parse_tyre(each))
            found.indices.append(index)
        except DomainError as error:
            found.faults.append(domain_fault(error)._replace(pointer=f"/stock/{index}"))
    return found
