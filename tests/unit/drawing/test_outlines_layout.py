"""The outlines of unlike wheels: each panel as high and as wide as what stands in it, all of it named."""

from __future__ import annotations

import re
from itertools import combinations
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing.outlines_plot import draw_outlines
from service.drawing.plot_sheet import LETTERS
from tests.unit.drawing.drawn import AXLES
from tests.unit.drawing.fitments import REQUESTS, TWINS
from tests.unit.drawing.plotting import plotted
from tests.unit.drawing.reading import box, element, ends
from tests.unit.drawing.sheet import Sheet

NEAR = 0.01
SETS = {
    "rims of all sizes": ("large rim", "narrow and small", "rim wider than tyre", "outboard of the hub", "wide"),
    "twins": tuple(TWINS),
    "one": ("into everything",),
}


@pytest.fixture(scope="module", params=SETS)
def drawn(request):
    names = SETS[request.param]
    root = fromstring(draw_outlines(plotted(*(REQUESTS[name] for name in names))))
    return root, Sheet(root), LETTERS[: len(names)]


def moved(root, axle):
    x, y = re.findall(r"-?[\d.]+", element(root, f"outlines-{axle}").attrib["transform"])
    return float(x), float(y)


def wheels(sheet, axle, part=""):
    return [each for each in sheet.lines if re.match(rf"outlines-{axle}-(present|[A-L])-.*{part}", each.name)]


def test_no_words_stand_on_others_or_are_crossed(drawn):
    _, sheet, _ = drawn
    assert [(one.text, other.text) for one, other in combinations(sheet.words, 2) if one.box.meets(other.box)] == []
    names = {"strut", "wing edge", "arch, at full bump", "Front axle", "Rear axle", "present"}
    crossed = {
        (words.text, line.name)
        for one, other, line in sheet.ink()
        for words in sheet.words
        if words.text in names and words.box.crossed_by(one, other)
    }
    assert crossed == set()


def test_a_panel_ends_beneath_every_rim_and_begins_above_every_tyre(drawn):
    _, sheet, _ = drawn
    headings = [sheet.says(name) for name in ("Front axle", "Rear axle")]
    # The sample of the present wheel stands beneath both.
    present = sheet.says("present")
    for axle, heading, beneath in zip(AXLES, headings, (headings[1], present), strict=True):
        ys = [y for line in wheels(sheet, axle) for _, y in line.points]
        lowest = max(y for line in wheels(sheet, axle, "rim") for _, y in line.points)
        face = [y for _, y in sheet.named(f"outlines-{axle}-hub-face").points]
        # 60 mm of the hub's face end at the well of the smallest rim at the highest.
        assert max(face) - min(face) == pytest.approx(60.0, abs=NEAR)
        assert min(face) >= lowest - NEAR
        assert max(face) < beneath.box.top
        assert beneath.box.top - max(face) < 40.0 * sheet.unit
        assert heading.box.bottom < min(ys)
        # Above the tallest: the arch, and two lines of names.
        names = [each for each in sheet.words if heading.box.bottom < each.box.bottom < min(ys)]
        assert {each.text for each in names} <= {"strut", "wing edge", "arch, at full bump"}
        top = min(each.box.top for each in names)
        assert 0.0 < top - heading.box.bottom < 40.0 * sheet.unit


def test_a_panel_stands_in_the_middle_of_the_sheet_and_on_it(drawn):
    root, sheet, _ = drawn
    # A unit is 0.2 mm of paper at a round scale, or so much larger that the widest fits 388 of 480 units.
    assert sheet.width == pytest.approx(480.0 * sheet.unit, rel=1e-5)
    for axle in AXLES:
        names = (f"outlines-{axle}-present", f"{axle}-strut", f"{axle}-wing")
        names += tuple(f"outlines-{axle}-{letter}-" for letter in LETTERS)
        xs = [x for line in sheet.lines if line.name.startswith(names) for x, _ in line.points]
        assert max(xs) - min(xs) <= 388.0 * sheet.unit + NEAR
        hub = ends(root, f"outlines-{axle}-hub-face")[0] + moved(root, axle)[0]
        assert min(xs) < hub + 1.0 < max(xs)
        # Room is kept for tyres grown in service, a few millimetres on one side more than on the other.
        assert 0.5 * (min(xs) + max(xs)) == pytest.approx(0.5 * sheet.width, abs=8.0)


def test_a_solid_is_named_above_itself_and_the_arch_above_the_middle(drawn):
    _, sheet, _ = drawn
    for axle, text in zip(AXLES, ("Front axle", "Rear axle"), strict=True):
        heading = sheet.says(text)
        below = [each for each in sheet.words if each.box.top > heading.box.bottom]
        strut, wing, arch = (
            next(each for each in below if each.text == name) for name in ("strut", "wing edge", "arch, at full bump")
        )
        # Words stand on a line 0.2 of their size above the box that is reckoned for them.
        lines = [each.box.bottom - 0.2 * each.size for each in (strut, wing, arch)]
        assert lines[0] == pytest.approx(lines[1], abs=NEAR)
        assert lines[0] - lines[2] == pytest.approx(19.0 * sheet.unit, abs=NEAR)
        assert wing.box.right < strut.box.left
        middle = 0.5 * (arch.box.left + arch.box.right)
        assert wing.box.right <= middle - 6.0 * sheet.unit + NEAR
        assert strut.box.left >= middle + 6.0 * sheet.unit - NEAR
        # Above what they name: their own middle, unless the arch or the edge of the sheet is in the way.
        place = sheet.named(f"{axle}-strut").points[0][0]
        assert strut.box.left <= max(place, middle + 6.0 * sheet.unit) + NEAR
        place = sheet.named(f"{axle}-wing").points[0][0]
        assert wing.box.right >= min(place, middle - 6.0 * sheet.unit) - NEAR
        high = min(y for line in wheels(sheet, axle) for _, y in line.points)
        assert strut.box.bottom < high


def test_every_wheel_stands_in_its_own_panel_about_its_hub(drawn):
    root, sheet, letters = drawn
    for axle in AXLES:
        names = {each.name for each in wheels(sheet, axle, "tyre$")}
        assert f"outlines-{axle}-present-tyre" in names
        assert names <= {f"outlines-{axle}-{each}-tyre" for each in (*letters, "present")}
        left, top, right, bottom = box(root, f"outlines-{axle}-present-tyre")
        assert top < bottom < 0.0
        assert left < right


def test_the_sample_of_the_present_wheel_stands_before_its_word(drawn):
    root, sheet, letters = drawn
    words = sheet.says("present")
    for letter in letters:
        left, _, right, _ = ends(root, f"outlines-{letter}-sample")
        assert right - left == pytest.approx(110.0 * sheet.unit, abs=NEAR)
    (sample,) = (line.points for line in sheet.lines if not line.name and line.style == "phantom")
    assert sample[0][0] == pytest.approx(16.0 * sheet.unit, abs=NEAR)
    assert sample[1][0] - sample[0][0] == pytest.approx(110.0 * sheet.unit, abs=NEAR)
    assert words.box.left - sample[1][0] == pytest.approx(14.0 * sheet.unit, abs=NEAR)
    assert words.box.top < sample[0][1] < words.box.bottom
