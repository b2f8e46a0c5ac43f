"""What is drawn can be read: no label crosses another label or a line, all stand on the sheet, none is too small.

Sizes: 7 points are the least that is printed, where two axles take the 188 mm of text of an A4 page; a page of 360
pixels shows one axle 340 pixels wide. Both are the project's choice.
"""

from __future__ import annotations

from itertools import combinations, pairwise
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from service.locales.speech import speech
from tests.support.cases import changed, check, saloon
from tests.unit.drawing.drawn import AXLES
from tests.unit.drawing.fitments import REQUESTS
from tests.unit.drawing.sheet import Sheet

POINT_MM = 25.4 / 72
A4_TEXT_MM, LEAST_POINTS = 188.0, 7.0
PHONE_PX, LEAST_PX, USUAL_PX = 340.0, 9.0, 11.0
LANGUAGES = ("en", "de", "fr", "es", "nl")


# Longer words matter where the most of them stand; a sheet of one axle where the wheel is at its widest.
FULLEST = ("into everything", "twins that touch", "outboard of the hub")
VIEWS = {"section": draw_section, "patches": draw_patches}
SHEETS = [
    *((name, "section", "both", "en") for name in sorted(REQUESTS)),
    *((name, "patches", "both", "en") for name in FULLEST),
    *((name, view, axle, "en") for name in FULLEST for view in VIEWS for axle in AXLES),
    *((name, "section", axle, language) for name in FULLEST for axle in AXLES for language in LANGUAGES[1:]),
    *((FULLEST[0], view, "both", language) for view in VIEWS for language in LANGUAGES[1:]),
]


@pytest.fixture(params=SHEETS, ids=" ".join, scope="module")
def asked(request):
    return request.param


@pytest.fixture(scope="module")
def sheet(asked):
    name, view, axles, language = asked
    return Sheet(fromstring(VIEWS[view](check(REQUESTS[name]), axles, speech(language))))


def test_no_label_crosses_another(sheet):
    assert [(one.text, other.text) for one, other in combinations(sheet.words, 2) if one.box.meets(other.box)] == []


def test_no_label_is_crossed_by_a_line_or_an_outline(sheet):
    crossed = {
        (words.text, line.name or line.style)
        for one, other, line in sheet.ink()
        for words in sheet.words
        if words.box.crossed_by(one, other)
    }
    assert crossed == set()


def test_everything_stands_on_the_sheet_and_the_sheet_is_no_larger_than_that(sheet):
    boxes = [each.box for each in sheet.words]
    pieces = [place for one, other, _ in sheet.ink() for place in (one, other)]
    xs = [x for each in boxes for x in (each.left, each.right)] + [x for x, _ in pieces]
    ys = [y for each in boxes for y in (each.top, each.bottom)] + [y for _, y in pieces]
    assert (min(xs) >= 0.0, max(xs) <= sheet.width, min(ys) >= 0.0, max(ys) <= sheet.height) == (True,) * 4
    # A margin of 8 mm of paper at most above and beneath.
    assert (min(ys) <= 40.0 * sheet.unit, max(ys) >= sheet.height - 40.0 * sheet.unit) == (True, True)


def test_no_words_are_too_small(asked, sheet):
    smallest = min(each.size for each in sheet.words) / sheet.width
    usual = sorted(each.size for each in sheet.words)[len(sheet.words) // 2] / sheet.width
    if asked[2] == "both":
        assert smallest * A4_TEXT_MM / POINT_MM >= LEAST_POINTS
    else:
        assert (smallest * PHONE_PX >= LEAST_PX, usual * PHONE_PX >= USUAL_PX) == (True, True)


def test_lines_of_a_paragraph_stand_close_and_apart(sheet):
    """Left-aligned lines of one size: 1.35 of it from one to the next (common practice, no source)."""
    notes = [each for each in sheet.words if each.style.endswith("soft") and each.box.left < 20.0 * sheet.unit]
    notes = [each for each in notes if each.box.top > sheet.height / 2]
    steps = [other.box.top - one.box.top for one, other in pairwise(notes)]
    assert steps
    assert steps == [pytest.approx(1.35 * notes[0].size, rel=0.02)] * len(steps)


@pytest.mark.parametrize("name", ["wide", "narrow and small", "into everything", "as it is", "twins that touch"])
def test_patches_of_all_candidates_are_drawn_at_one_scale(name):
    """Whatever the candidate: as wide a sheet, for as many millimetres."""
    sizes = {Sheet(fromstring(draw_patches(check(REQUESTS[each]), "front"))).width for each in (name, "staggered")}
    assert len(sizes) == 1


def test_a_patch_that_the_usual_space_does_not_hold_has_more():
    large = changed(
        saloon(), {"/candidate/front/tyre/size": "500/100 R30C 200/200P", "/candidate/front/rim/size": "16J x 30 ET0"}
    )
    one, other = (Sheet(fromstring(draw_patches(check(each)))) for each in (saloon(), large))
    assert other.width > one.width
