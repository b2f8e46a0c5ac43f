"""From the form of the page, sent by a browser without its script, to the body of a check."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any, Final

from service.core.saying import Said
from service.core.units import KG_PER_POUND, KMH_PER_MPH, KPA_PER_BAR, KPA_PER_PSI
from service.page.fields import AXLES, every_field

UNITS: Final[Mapping[str, Mapping[str, float]]] = MappingProxyType(
    {
        "metric": {},
        "bar": {"_kpa": KPA_PER_BAR},
        "imperial": {"_kpa": KPA_PER_PSI, "_kg": KG_PER_POUND, "_kmh": KMH_PER_MPH},
    }
)
_NUMBER: Final = re.compile(r"\d{1,9}(?:[.,]\d{1,9})?", re.ASCII)
# Nobody states a mass or a length to a thousandth: 1,050 and 1.050 are a thousand and fifty.
_GROUPED: Final = re.compile(r"\d{1,3}(?:[.,' \u00a0\u202f]\d{3})+", re.ASCII)
_WITHOUT_THOUSANDTHS: Final = ("_kg", "_mm")
# No gauge reads a road tyre above this many bar, or below as many kPa or psi.
_LEAST_IN_NO_BAR: Final = 15.0
_IS_NUMBER: Final = re.compile(r"(_kpa|_kg|_kmh|_mm|_in|/wheels_per_side)$")
# What goes along when an empty cell follows another: a rim brings its bolt circle and its spacer.
_PARTS: Final = (("/tyre/size", "/tyre/"), ("/rim/size", "/rim/"), ("/rim/size", "/spacer_mm"))

Texts = dict[str, str]


def body_of(entries: Iterable[tuple[str, str]], language: str) -> dict[str, Any]:
    """Return the body of a check; an empty cell follows the front axle or the present wheels, as the page says.

    A name that is no pointer stays a member of the body, where a check refuses it.
    """
    texts = {name: text.strip() for name, text in entries if text.strip()}
    system = texts.pop("units", "metric")
    texts = _filled(texts)
    body: dict[str, Any] = {
        "language": language,
        "units": "imperial" if system == "imperial" else "metric",
        # What stays empty is asked for at its place.
        "vehicle": {axle: {"fitted": {"tyre": {}, "rim": {}}} for axle in AXLES},
        "candidate": {axle: {"tyre": {}, "rim": {}} for axle in AXLES},
    }
    for name, text in texts.items():
        _put(body, name, _value(name, text, UNITS.get(system, {})))
    return body


def _filled(texts: Texts) -> Texts:
    """Return the texts with those that empty cells stand for."""
    now = {axle: f"/vehicle/{axle}/fitted" for axle in AXLES}
    then = {axle: f"/candidate/{axle}" for axle in AXLES}
    square = {lead: _alike(texts.get(now["front"] + lead), texts.get(now["rear"] + lead)) for lead, _ in _PARTS}
    given = set(texts)
    for lead, part in _PARTS:
        if now["rear"] + lead not in given:
            _follow(texts, part, now["rear"], now["front"])
        for axle in AXLES:
            front = axle == "rear" and square[lead] and then["front"] + lead in given
            if then[axle] + lead not in given:
                _follow(texts, part, then[axle], then["front"] if front else now[axle])
    if square["/tyre/size"]:
        _follow(texts, "/pressure_kpa", now["rear"], now["front"])
    return texts


def _alike(front: str | None, rear: str | None) -> bool:
    return rear is None or "".join(rear.split()).lower() == "".join((front or "").split()).lower()


def _follow(texts: Texts, part: str, to: str, source: str) -> None:
    for name in [each for each in texts if each.startswith(source + part)]:
        texts.setdefault(to + name.removeprefix(source), texts[name])


def _value(name: str, text: str, sizes: Mapping[str, float]) -> str | float:
    """Return the number that a text states, in the API's unit; what is no number stays, for the check to refuse."""
    if name.endswith(_WITHOUT_THOUSANDTHS) and _GROUPED.fullmatch(text):
        text = re.sub(r"\D", "", text)
    if not _IS_NUMBER.search(name) or not _NUMBER.fullmatch(text):
        return text
    typed = float(text.replace(",", "."))
    size = next((each for end, each in sizes.items() if name.endswith(end)), 1.0)
    if name.endswith("_kpa") and 0.0 < typed < _LEAST_IN_NO_BAR:
        size = KPA_PER_BAR
    number = round(typed * size, 3)
    return int(number) if number.is_integer() else number


def _put(body: dict[str, Any], name: str, value: str | float) -> None:
    known = name in _LABELS
    *path, last = name.split("/")[1:] if known else [name]
    place = body
    for step in path:
        place = place.setdefault(step, {})
    place[last] = value


_LABELS: Final = MappingProxyType({each.pointer: each.label for each in every_field()})


def label_of(pointer: str) -> Said:
    """Return the words for a pointer: "Front axle, present: Tyre"; the pointer where no field has it."""
    return _LABELS.get(pointer, _LABELS.get(f"{pointer}/size", Said(pointer, {})))


def is_followed(pointer: str) -> bool:
    """Return whether what is missing at a pointer would follow front or present, so that it is asked for there."""
    return pointer.startswith(("/vehicle/rear/fitted", "/candidate/"))
