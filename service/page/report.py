"""The printable report: question, verdict, drawings, findings with their sources, actions, cautions."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import chain, takewhile
from typing import Any, Final, NamedTuple

from markupsafe import Markup

from service.assessment.answer.action import Action
from service.assessment.answer.assess import Assessment
from service.assessment.answer.trade_offs import trade_offs_text
from service.assessment.answer.verdict_words import OUTCOME_WORDS, TODAY, VERDICT_WORDS
from service.assessment.case import Axle, Fitment
from service.assessment.checks.balance import balance
from service.core.findings import Basis, Finding
from service.core.numeric import known
from service.core.sources import UNPUBLISHED
from service.core.version import VERSION
from service.drawing import paper
from service.drawing.lettering import clean, plain
from service.drawing.marks import MARKS
from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from service.page.rendering import asset, environment, source_of

STATUS_WORDS: Final = {
    "read": "read",
    "second_hand": "second-hand",
    "memory": "memory",
    "derived": "derived",
    "own": "own",
}
PLACES: Final = {"front": "Front", "rear": "Rear", "vehicle": "Car"}
# How a reference ends: what its status already says, and the day on which the text was looked at.
NOT_READ: Final = "; text not read"
PLACE_MARK: Final = re.compile(", |: ")
CHECKED: Final = "; checked "
DAY_LENGTH: Final = len("2026-11-24")
MOST_LABEL: Final = 80
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
    def told(self) -> str:
        """Return number and limit, unless the message says both."""
        numbers = [each.partition(" ")[0].lstrip("−") for each in (self.measured, self.limit) if each]
        if all(number in self.message for number in numbers):
            return ""
        return f"{self.measured}, limit {self.limit}" if self.limit else self.measured


class Group(NamedTuple):
    """The rows of one outcome."""

    style: str
    title: str
    rows: list[Row]
    found: int

    @property
    def by_code(self) -> list[list[Row]]:
        """Return the rows of one question together."""
        together: dict[str, list[Row]] = {}
        for row in self.rows:
            together.setdefault(row.code, []).append(row)
        return list(together.values())


class Document(NamedTuple):
    """A document that findings rest on: its places by number, in words, and how far it was read."""

    title: str
    status: str
    places: list[tuple[int, str]]


@cache
def style() -> str:
    """Return the style of the report and of the drawings in it."""
    return asset("report.css") + paper.STYLE


@cache
def policy() -> str:
    """Return the content security policy of the report: its own style and nothing else."""
    return f"default-src 'none'; style-src {source_of(style())}; frame-ancestors 'none'; base-uri 'none'"


def render_report(found: Assessment) -> str:
    """Return the report as a page that needs no other file."""
    case, pack = found.case, found.case.pack
    documents, numbers = _documents(found.findings)
    return (
        environment()
        .get_template("report.html.j2")
        .render(
            style=Markup(style()),  # noqa: S704 - the project's own files, nothing from a caller
            section=Markup(draw_section(found, styled=False)),  # noqa: S704 - the XML writer has escaped every text in it
            patches=Markup(draw_patches(found, styled=False)),  # noqa: S704 - the same
            label=clean(case.candidate.label, MOST_LABEL),
            verdict=found.verdict.replace("_", "-"),
            verdict_words=VERDICT_WORDS[found.verdict],
            summary=_without_words(found.summary, VERDICT_WORDS[found.verdict]),
            vehicle=_vehicle_words(found),
            wheels=list(_wheels(found)),
            trade_offs=trade_offs_text(found.trade_offs),
            balance=balance(found.car).text,
            groups=list(_groups(found.findings, numbers)),
            documents=documents,
            actions=[(each.text, _weight(each)) for each in found.actions],
            marks=MARKS,
            assumptions=found.assumptions,
            cautions=tuple(found.cautions.values()),
            version=VERSION,
            pack=pack,
            law=_law_words(found),
        )
    )


def _weight(action: Action) -> str:
    """Return how a line of the job card is set: danger, a pressure, or nothing special."""
    if action.code in ("do_not_fit", "would_not_fit", "settle_first"):
        return "danger"
    return "pressure" if action.code.startswith("set_pressure") else ""


def _law_words(found: Assessment) -> str:
    """Return how many rules of the place are held, apply and are met, and what is not held."""
    held, applied, met = found.law
    rules = "1 rule is" if held == 1 else f"{held} rules are"
    words = f"{rules} held; {applied or 'none'} of them {'applies' if applied <= 1 else 'apply'} to this vehicle"
    words += f", {met} {'is' if met == 1 else 'are'} met." if applied else "."
    not_held = found.case.pack.not_held
    return f"{words} Not held: {' '.join(not_held)}" if not_held else words


def _without_words(summary: str, words: str) -> str:
    """Return the summary without the verdict, which the heading has said already."""
    rest = summary.removeprefix(words).lstrip(":. ")
    return rest[:1].upper() + rest[1:]


def _vehicle_words(found: Assessment) -> str:
    vehicle, case = found.case.vehicle, found.case
    words = [f"Category {vehicle.category}", f"up to {plain(vehicle.max_speed_kmh)} km/h"]
    if vehicle.driven_axle is not None:
        words.append(f"{vehicle.driven_axle}-wheel drive")
    words += [f"{axle.name} axle up to {plain(axle.max_axle_mass_kg)} kg" for axle in (vehicle.front, vehicle.rear)]
    if case.season is not None:
        words.append(f"{case.season} use")
    if case.date is not None:
        words.append(f"on {case.date}")
    return ", ".join(words)


def _wheels(found: Assessment) -> Iterator[dict[str, Any]]:
    candidate = found.case.candidate
    for view, proposed in ((found.car.front, candidate.front), (found.car.rear, candidate.rear)):
        axle: Axle = view.axle
        yield {
            "axle": view.name,
            "present": _wheel(axle.fitted),
            "proposed": _wheel(proposed),
        }


def _wheel(fitment: Fitment) -> dict[str, str]:
    pressure = fitment.pressure_kpa
    return {
        "tyre": fitment.tyre.designation.canonical,
        "rim": fitment.rim_in_words,
        "pressure": f"{plain(pressure)} kPa" if known(pressure) else "not given",
    }


def _documents(findings: Sequence[Finding]) -> tuple[list[Document], dict[Basis, int]]:
    """Return the documents that the findings rest on, and the number of each place in them."""
    found: dict[tuple[str, str, str], list[tuple[Basis, list[str]]]] = {}
    for ground in dict.fromkeys(each.basis for each in findings):
        words, _, tail = ground.reference.partition(CHECKED)
        day, more = tail[:DAY_LENGTH], tail[DAY_LENGTH:].strip("; ")
        # What is said after a colon (practice, the project's own) or a comma is a place in the document.
        parts = [*PLACE_MARK.split(words.removesuffix(NOT_READ)), *([more] if more else [])]
        found.setdefault((parts[0], ground.status, day), []).append((ground, parts))
    numbers = {ground: n for n, (ground, _) in enumerate(chain.from_iterable(found.values()), 1)}
    documents = []
    for (title, status, day), grounds in found.items():
        shared = _shared([parts for _, parts in grounds])
        places = [(numbers[ground], ", ".join(parts[len(shared) :]) or _whole(ground)) for ground, parts in grounds]
        said = f"{STATUS_WORDS[status]}, checked {day}" if day else STATUS_WORDS[status]
        documents.append(Document(", ".join(shared) or title, said, places))
    return documents, numbers


def _whole(ground: Basis) -> str:
    return "the limit itself" if ground.kind in UNPUBLISHED else "as a whole"


def _shared(lists: list[list[str]]) -> list[str]:
    """Return what all lists begin with; of a single one its first part."""
    if len(lists) == 1:
        return lists[0][:1]
    return [same[0] for same in takewhile(lambda same: len(set(same)) == 1, zip(*lists, strict=False))]


def _groups(findings: Sequence[Finding], numbers: dict[Basis, int]) -> Iterator[Group]:
    for outcome, name, title in OUTCOME_WORDS:
        chosen = [each for each in findings if each.outcome == outcome]
        if chosen:
            # What the change brings before what the car has today already.
            chosen.sort(key=lambda each: each.already)
            yield Group(name, title, list(_rows(chosen, numbers)), len(chosen))


def _rows(findings: Sequence[Finding], numbers: dict[Basis, int]) -> Iterator[Row]:
    """Yield a row for each answer; both axles share one where they got the same."""
    places: dict[tuple[str, str, str, str, str, str], list[str]] = {}
    grounds: dict[tuple[str, str, str, str, str, str], int] = {}
    for each in findings:
        key = (
            each.code,
            each.message,
            _number(each.measured, each.unit),
            _number(each.limit, each.unit),
            _remedy(each),
            TODAY if each.already else "",
        )
        places.setdefault(key, []).append(each.axle)
        grounds.setdefault(key, numbers[each.basis])
    for key, axles in places.items():
        yield Row("Both" if len(axles) > 1 else PLACES[axles[0]], *key, grounds[key])


def _number(value: float | None, unit: str | None) -> str:
    if value is None or unit is None:
        # A yes or no has no unit, and its 1 or 0 would tell nobody anything.
        return ""
    digits = 2 if abs(value) < 1 else 1 if abs(value) < 100 else 0  # noqa: PLR2004 - two to three figures, as messages have
    return f"{plain(value, digits)} {'' if unit in BARE_UNITS else unit}".strip()


def _remedy(finding: Finding) -> str:
    return "" if finding.remedy is None else finding.remedy.text
