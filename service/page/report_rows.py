"""The findings of a report in rows: alike ones of both axles together, in the reader's words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Final, NamedTuple

from service.assessment.answer.verdict_words import OUTCOME_WORDS, TODAY
from service.core.findings import Basis, Finding, Where
from service.core.saying import MINUS, Amount, say
from service.locales.speech import Say

# Say: in the column "Axle" of a table
BOTH: Final = say("Both axles")
# Say: in the column "Axle" of a table
FRONT: Final = say("Front")
# Say: in the column "Axle" of a table
REAR: Final = say("Rear")
# Say: in the column "Axle" of a table, for what concerns the whole vehicle
CAR: Final = say("Car")
PLACES: Final[Mapping[Where, str]] = MappingProxyType({"front": FRONT, "rear": REAR, "vehicle": CAR})
BARE_UNITS: Final = ("1", "index")


class Row(NamedTuple):
    """Findings of one question that came out the same on the axles named."""

    where: str
    code: str
    message: str
    measured: str
    limit: str
    remedy: str
    today: str
    source: int

    @property
    def is_told(self) -> bool:
        """Return whether the message says number and limit."""
        numbers = [each.partition(" ")[0].lstrip(MINUS) for each in (self.measured, self.limit) if each]
        return all(number in self.message for number in numbers)


class Group(NamedTuple):
    """The rows of one outcome."""

    style: str
    title: str
    rows: list[Row]
    counted: str

    @property
    def by_code(self) -> list[list[Row]]:
        """Return the rows of one question together."""
        together: dict[str, list[Row]] = {}
        for row in self.rows:
            together.setdefault(row.code, []).append(row)
        return list(together.values())


def groups(findings: Sequence[Finding], numbers: Mapping[Basis, int], said: Say) -> Iterator[Group]:
    """Yield the findings by outcome, worst first; `numbers` are those of the places that they rest on."""
    for outcome, name, title in OUTCOME_WORDS:
        chosen = [each for each in findings if each.outcome == outcome]
        if chosen:
            # What the change brings before what the car has today already.
            chosen.sort(key=lambda each: each.already)
            count = len(chosen)
            counted = say("1 finding") if count == 1 else say("{count} findings", count=Amount(count))
            yield Group(name, said(title), list(_rows(chosen, numbers, said)), said(counted))


def _rows(findings: Sequence[Finding], numbers: Mapping[Basis, int], said: Say) -> Iterator[Row]:
    """Yield a row for each answer; both axles share one where they got the same."""
    places: dict[tuple[str, str, str, str, str, str], list[Where]] = {}
    grounds: dict[tuple[str, str, str, str, str, str], int] = {}
    for each in findings:
        key = (
            each.code,
            said(each.message),
            said(_number(each.measured, each.unit)),
            said(_number(each.limit, each.unit)),
            "" if each.remedy is None else said(each.remedy.text),
            said(TODAY) if each.already else "",
        )
        places.setdefault(key, []).append(each.axle)
        grounds.setdefault(key, numbers[each.basis])
    for key, axles in places.items():
        yield Row(said(BOTH if len(axles) > 1 else PLACES[axles[0]]), *key, grounds[key])


def _number(value: float | None, unit: str | None) -> str:
    if value is None or unit is None:
        # A yes or no has no unit, and its 1 or 0 would tell nobody anything.
        return ""
    digits = 2 if abs(value) < 1 else 1 if abs(value) < 100 else 0  # noqa: PLR2004 - two to three figures, as messages have
    return Amount(value, "" if unit in BARE_UNITS else unit, digits)
