"""Comparisons to plot, and reading values back from an axis by its own ticks."""

from __future__ import annotations

import re
from xml.etree.ElementTree import Element

from service.api.routers.many import compared
from service.api.schemas.comparison import CompareRequest
from service.drawing.plot_sheet import LETTERS, Plotted
from service.locales.speech import ENGLISH
from tests.support.cases import Json, answer, changed, check, saloon
from tests.unit.drawing.reading import SVG, element

NOW = ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
WIDER = ("245/40 R18 97Y XL", "8J x 18 H2 ET38")
WIDEST = ("255/40 R18 99Y XL", "8.5J x 18 H2 ET41")
NARROWER = ("205/50 R17 93W XL", "7J x 17 H2 ET48")
TALLER = ("225/50 R17 98W XL", "7.5J x 17 H2 ET43")
STRONGER = ("235/45 R17 97W XL", "8J x 17 H2 ET35")
# What stands at front and rear of each candidate; the first is what the car has.
FITMENTS = (
    (NOW, NOW),
    (WIDER, WIDEST),
    (WIDEST, WIDER),
    (NARROWER, NARROWER),
    (NOW, WIDEST),
    (TALLER, NOW),
    (STRONGER, STRONGER),
    (NARROWER, WIDEST),
)
PLACES = range(len(FITMENTS))


def question(place: int) -> Json:
    """Return a candidate as a check is asked of it, with a label."""
    return changed(saloon(*FITMENTS[place]), {"/candidate/label": f"set no. {place}"})


def plotted(*questions: Json) -> list[Plotted]:
    """Return candidates as a plot takes them, in this order."""
    return [Plotted(LETTERS[place], check(each)) for place, each in enumerate(questions)]


def rows() -> list[Json]:
    """Return the rows with which `compare` answers for the same candidates, in the order of the request."""
    asked = {"vehicle": saloon()["vehicle"], "candidates": [question(place)["candidate"] for place in PLACES]}
    told, _ = compared(CompareRequest.model_validate(asked | {"explain_first": 0}), ENGLISH)
    return sorted(told["rows"], key=lambda row: row["index"])


def checked(place: int) -> Json:
    """Return the answer to a check of the same candidate."""
    return answer(check(question(place)))


class Axis:
    """An axis as a reader sees it: what a place on it means follows from its first and its last tick."""

    def __init__(self, drawing: Element, name: str, end: str) -> None:
        ticks = []
        for parent in drawing.iter():
            for line, words in zip(parent, list(parent)[1:], strict=False):
                if re.fullmatch(rf"{name}-\d+", line.get("id", "")):
                    assert words.tag == f"{SVG}text"
                    value = float((words.text or "").replace("\N{MINUS SIGN}", "-"))
                    ticks.append((float(line.attrib[end]), value))
        (self._start, self._low), *_, (stop, high) = ticks
        self._step = (high - self._low) / (stop - self._start)

    def value(self, place: float) -> float:
        """Return what stands at a place."""
        return self._low + (place - self._start) * self._step


def middle(drawing: Element, name: str) -> tuple[float, float]:
    """Return the middle of a mark, whose square has 20 units before it is scaled."""
    x, y, scale = map(float, re.findall(r"-?[0-9.]+", element(drawing, name).attrib["transform"]))
    return x + 10 * scale, y + 10 * scale
