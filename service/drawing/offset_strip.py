"""The offsets that do, as a strip beneath a section: where the wheel's centre line may stand across the car."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from service.assessment.answer.assess import Assessment
from service.assessment.batch.one_window import window_of
from service.assessment.batch.rim_windows import RimWindows, Window
from service.core.findings import AxleName
from service.core.saying import Amount, Said, joined, say
from service.drawing.canvas import Canvas, points
from service.drawing.lettering import against, labelled
from service.drawing.lines import CHAIN, NARROW
from service.drawing.scene import AxleScene
from service.drawing.section_dimensions import width_down_units
from service.drawing.terms import on_axle

Windows = dict[AxleName, RimWindows | None]

# The strip stands beneath the dimension of the section width; a drawing with it is taller by so much.
TALLER_UNITS: Final = 56.0
DOWN_UNITS: Final = 46.0
HEIGHT_UNITS: Final = 10.0
WORDS_DOWN_UNITS: Final = 20.0
WORDS_SIZE: Final = 16.0
ROOM_UNITS: Final = 300.0
MEANING: Final = say(
    "Strip beneath a wheel: where its centre line may stand with this tyre and this width of rim, the other axle "
    "staying as it is. Hatched: suitable. Outlined: with conditions."
)


def windows_of_axles(found: Assessment) -> Windows:
    """Return the window of each proposed wheel."""
    case = found.case
    pairs = ((case.vehicle.front, case.candidate.front), (case.vehicle.rear, case.candidate.rear))
    return {axle.name: window_of(case, axle, fitted) for axle, fitted in pairs}


def draw_strip(canvas: Canvas, scene: AxleScene, found: RimWindows | None) -> None:
    """Draw the strip of an axle; nothing where no offset does or where the wheel stands is not known."""
    if found is None or found.with_conditions is None or not scene.placed:
        return
    unit = canvas.unit_mm
    y = scene.reach_down_mm + (width_down_units(scene) + DOWN_UNITS) * unit
    foot = y + HEIGHT_UNITS * unit
    for low, high in _runs(found.suitable):
        canvas.hatched(_box(low, high, y, foot), f"{scene.name}-offsets-suitable")
    for low, high in _runs(found.with_conditions):
        canvas.path(_box(low, high, y, foot), NARROW, f"{scene.name}-offsets-with-conditions")
    # The centre line of the proposed wheel goes on, so that it is seen whether it stands in the strip.
    centre = scene.then.centre_mm
    canvas.line((centre, y - 6 * unit), (centre, foot + 4 * unit), CHAIN, f"{scene.name}-offset-proposed")
    words = _words(found.suitable, found.with_conditions)
    middle = 0.5 * (found.with_conditions.from_mm + found.with_conditions.to_mm)
    size = canvas.fitted(words, WORDS_SIZE, ROOM_UNITS)
    canvas.text((middle, foot + WORDS_DOWN_UNITS * unit), words, size)


def strip_sentences(scene: AxleScene, found: RimWindows | None) -> Iterator[Said]:
    """Yield what the strip of an axle says, for those who do not see it and where there is none."""
    if found is None:
        yield on_axle(scene.name, say("No strip of offsets: the tyre does not take this width of rim."))
    elif not scene.placed:
        yield on_axle(scene.name, say("No strip of offsets: the proposed rim states no offset (ET)."))
    elif found.with_conditions is None:
        yield on_axle(scene.name, say("No strip of offsets: none does on this width of rim."))
    elif found.suitable is None:
        some = _listed(found.with_conditions)
        yield on_axle(scene.name, say("Offsets (ET) {offsets} do with conditions, none without.", offsets=some))
    else:
        suitable, some = _listed(found.suitable), _listed(found.with_conditions)
        told = say("Offsets (ET) {suitable} are suitable, {offsets} with conditions.", suitable=suitable, offsets=some)
        yield on_axle(scene.name, told)


def _words(suitable: Window | None, with_conditions: Window) -> Said:
    """Return the suitable offsets, in brackets those with conditions."""
    some = _listed(with_conditions)
    if suitable is None:
        # Say: offsets (ET), beneath a strip that shows them
        return say("ET {offsets}, with conditions", offsets=some)
    return labelled("ET", against(_listed(suitable), some))


def _runs(window: Window | None) -> tuple[tuple[float, float], ...]:
    return () if window is None else ((window.from_mm, window.to_mm), *window.further)


def _listed(window: Window) -> Said:
    """Return the runs of offsets; everywhere in millimetres, as rims are stamped."""
    return joined(
        [say("{low} to {high}", low=Amount(low), high=Amount(high)) for low, high in _runs(window)],
        "; ",
    )


def _box(low: float, high: float, y1: float, y2: float) -> str:
    return points("M", low, y1, "H", high, "V", y2, "H", low, "Z")
