"""Where dimensions, names and values of a section stand: at what they speak of, in line, in the middle of their panel.

Distances are in drawing units, 0.2 mm of paper; those that are no consequence of geometry are the project's choice.
"""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing.section import draw_section
from tests.unit.drawing.drawn import AXLES, OVERLAPS
from tests.unit.drawing.reading import ends
from tests.unit.drawing.sheet import Sheet

NEAR = 0.01
HALF_UNIT = 0.5


def middle(line, axis):
    return sum(point[axis] for point in line.points) / len(line.points)


def at(box):
    return 0.5 * (box.left + box.right), 0.5 * (box.top + box.bottom)


def only(words, start):
    (found,) = (each for each in words if each.text.startswith(start))
    return found


def test_what_a_panel_shows_stands_in_its_middle(case):
    """The dimensions that stand furthest out are as far from the edges of the panel: 24 units of each are left.

    62 units are kept outboard, the diameter's dimension stands at 38 of them; 74 inboard, the loaded radius's at 50.
    """
    for axle in AXLES:
        sheet = Sheet(fromstring(draw_section(case.found, axle)))
        unit = sheet.unit
        left = sheet.named(f"{axle}-overall-diameter").points[0][0] - 16.0 * unit
        assert left >= 24.0 * unit - NEAR
        if f"{axle}-loaded-radius" in case.ids:
            right = sheet.width - 16.0 * unit - sheet.named(f"{axle}-loaded-radius").points[0][0]
            assert left == pytest.approx(right, abs=NEAR)
        # Between 400 and 420 units for one axle, with a margin on both sides: to be read 340 pixels wide.
        assert 400.0 - HALF_UNIT <= sheet.width / unit - 2 * 16.0 <= 420.0 + HALF_UNIT


def test_both_panels_are_as_wide_and_side_by_side(case):
    unit = case.sheet.unit
    names = [case.sheet.says(name) for name in ("Front axle", "Rear axle")]
    assert names[0].box.left == pytest.approx(16.0 * unit, abs=NEAR)
    panel = 0.5 * (case.sheet.width - 3 * 16.0 * unit)
    assert names[1].box.left - names[0].box.left == pytest.approx(panel + 16.0 * unit, abs=NEAR)
    assert names[0].box.bottom == names[1].box.bottom


def test_the_dimensions_at_the_sides_stand_clear_of_everything_that_is_drawn(case):
    unit = case.sheet.unit
    for axle in AXLES:
        drawn = [
            line
            for line in case.sheet.lines
            if line.name.startswith(tuple(f"{axle}-{each}" for each in ("present", "proposed", "strut", "wing")))
            and "ground" not in line.name
        ]
        xs = [x for line in drawn for x, _ in line.points]
        diameter = case.sheet.named(f"{axle}-overall-diameter").points[0][0]
        # The tyre may reach further in service than it is drawn: some millimetres.
        assert 38.0 * unit - NEAR <= min(xs) - diameter <= 38.0 * unit + 8.0
        if f"{axle}-loaded-radius" in case.ids:
            radius = case.sheet.named(f"{axle}-loaded-radius").points[0][0]
            assert 50.0 * unit - NEAR <= radius - max(xs) <= 50.0 * unit + 8.0
        words = only(case.panel(axle), "⌀")
        assert words.upright
        assert 0.0 < diameter - words.box.right < words.size
        assert at(words.box)[1] == pytest.approx(middle(case.sheet.named(f"{axle}-axis"), 1), abs=HALF_UNIT * unit)


def test_words_of_the_section_width_stand_beneath_the_middle_of_its_line(case):
    for axle in AXLES:
        line, words = case.sheet.named(f"{axle}-section-width"), only(case.panel(axle), "section width")
        assert at(words.box)[0] == pytest.approx(middle(line, 0), abs=NEAR)
        # Clear of the extension lines, which go on six units beyond.
        assert 6.0 * case.sheet.unit < words.box.top - middle(line, 1) < 6.0 * case.sheet.unit + words.size


def test_a_room_is_named_above_its_value_and_both_stand_above_its_line(case):
    unit = case.sheet.unit
    for axle in AXLES:
        for side, solid in (("inboard", "strut"), ("outboard", "wing edge"), ("radial", "arch, at full bump")):
            if f"{axle}-room-{side}" not in case.ids:
                continue
            named = {solid, f"overlap with {OVERLAPS[side]}"}
            panel = case.panel(axle)
            (index,) = (place for place, each in enumerate(panel) if each.text in named)
            name, value = sorted(panel[index - 1 : index + 1], key=lambda each: each.box.bottom)
            assert name.text in named
            assert value.text[0] in "−0123456789"
            assert _base(value) - _base(name) == pytest.approx(19.0 * unit, abs=NEAR)
            line = case.sheet.named(f"{axle}-room-{side}")
            if side == "radial":
                assert at(value.box)[0] == pytest.approx(middle(line, 0), abs=NEAR)
                assert at(name.box)[0] == pytest.approx(middle(line, 0), abs=NEAR)
                continue
            assert middle(line, 1) - _base(value) == pytest.approx(11.0 * unit, abs=NEAR)
            # In line with each other on the side of the wheel, and further out than the line to the arch.
            inner = [each.box.left if side == "inboard" else -each.box.right for each in (name, value)]
            assert inner[0] == pytest.approx(inner[1], abs=NEAR)
            way, leader = 1 if side == "inboard" else -1, -1e9
            if f"{axle}-room-radial" in case.ids:
                leader = way * case.sheet.named(f"{axle}-room-radial").points[0][0]
                assert inner[0] >= leader + 8.0 * unit - NEAR
            starts = min(way * x for x, _ in line.points) - 26.0 * unit
            assert inner[0] <= max(starts, leader + 8.0 * unit) + NEAR


def _base(words):
    """Return the line on which words stand: 0.2 of their size above the box that is reckoned for them."""
    return words.box.bottom - 0.2 * words.size


def test_the_edge_in_service_is_marked_where_the_tyre_is_widest(case):
    unit = case.sheet.unit
    for axle in AXLES:
        for side in ("inboard", "outboard"):
            name = f"{axle}-{side}-edge"
            width = case.numbers(axle)["section_width_mm"]
            if name not in case.ids or case.rim_width(axle, "proposed") > width:
                continue
            wheel = "-outer" if case.twin(axle) and side == "outboard" else ""
            tyre = case.sheet.named(f"{axle}-proposed{wheel}-tyre").points
            widest = [y for x, y in tyre if abs(x - (max if side == "inboard" else min)(x for x, _ in tyre)) < NEAR]
            edge = case.sheet.named(name)
            assert middle(edge, 1) == pytest.approx(sum(widest) / len(widest), abs=NEAR)
            x1, y1, x2, y2 = ends(case.section, name)
            assert (x1, abs(y2 - y1)) == (x2, pytest.approx(32.0 * unit, abs=NEAR))


def test_designations_stand_in_two_columns_of_even_lines(case):
    unit = case.sheet.unit
    for axle in AXLES:
        panel = case.panel(axle)
        labels = [next(each for each in panel if each.text == which) for which in ("proposed", "present")]
        rows = [panel[panel.index(each) + 1] for each in labels]
        assert all(" · " in each.text for each in rows)
        heading = next(each for each in panel if each.text.endswith(" axle"))
        assert heading.style == "words strong"
        assert [each.box.left for each in labels] == [heading.box.left] * 2
        assert rows[0].box.left == rows[1].box.left
        assert [_base(each) for each in labels] == [pytest.approx(_base(each), abs=NEAR) for each in rows]
        assert _base(labels[1]) - _base(labels[0]) == pytest.approx(21.0 * unit, abs=NEAR)
        assert all(one.box.right < other.box.left for one, other in zip(labels, rows, strict=True))


def test_the_legend_shows_each_line_before_its_word_and_ticks_the_ends_and_the_middle_of_its_bar(case):
    unit = case.sheet.unit
    bar = case.sheet.named("section-scale-bar")
    (x1, y), (x2, _) = bar.points
    words = [each for each in case.sheet.words if abs(at(each.box)[1] - y) < 4.0 * unit]
    assert [each.text for each in words] == ["proposed", "present", "100 mm"]
    # Capitals centred on the line, beginning 7 units to the right of its end.
    samples = [line for line in case.sheet.lines if len(line.points) == 2 and abs(middle(line, 1) - y) < NEAR]
    samples = [line for line in samples if line.style in ("wide", "phantom") or line is bar]
    assert [line.style for line in samples] == ["wide", "phantom", "narrow"]
    for line, each in zip(samples, words, strict=True):
        assert each.box.left - line.points[1][0] == pytest.approx(7.0 * unit, abs=NEAR)
    assert [line.points[1][0] - line.points[0][0] for line in samples[:2]] == [pytest.approx(56.0 * unit, abs=NEAR)] * 2
    assert all(one.box.right < line.points[0][0] for one, line in zip(words, samples[1:], strict=False))
    ticks = [line.points for line in case.sheet.lines if not line.name and abs(middle(line, 1) - y) < NEAR]
    ticks = sorted(points[0][0] for points in ticks if points[0][0] == points[1][0])
    assert ticks == [pytest.approx(each, abs=NEAR) for each in (x1, 0.5 * (x1 + x2), x2)]


def test_entries_of_the_legend_go_on_beneath_where_the_sheet_is_narrow(case):
    sheet = Sheet(fromstring(draw_section(case.found, "front")))
    bar = sheet.named("section-scale-bar").points
    words = [
        sheet.says(text) if text.startswith("100") else [each for each in sheet.words if each.text == text][-1]
        for text in ("proposed", "present", "100 mm")
    ]
    bases = [_base(each) for each in words]
    for one, other in pairwise(bases):
        assert other - one == pytest.approx(0.0, abs=NEAR) or other - one == pytest.approx(26.0 * sheet.unit, abs=NEAR)
    assert bar[1][0] <= sheet.width - 16.0 * sheet.unit
    assert words[2].box.right <= sheet.width - 16.0 * sheet.unit


@pytest.mark.parametrize("name", ["as it is", "plus one", "staggered", "wide"])
def test_words_that_have_room_have_their_usual_size(cases, name):
    """Names and designations of 15 units, values of 16 (the project's choice: 7 points where two axles are printed)."""
    sheet = cases[name].sheet
    usual = {"strut": 15, "wing edge": 15, "arch, at full bump": 15, "hub face": 15, "proposed": 15, "present": 15}
    for each in sheet.words:
        size = each.size / sheet.unit
        if each.text in usual:
            assert size == pytest.approx(usual[each.text], abs=0.01), each.text
        elif (
            each.text.startswith(("⌀", "section width", "loaded radius", "rim ", "ET "))
            or each.text[0] in "−0123456789"
        ):
            assert size == pytest.approx(15 if "·" in each.text or each.text == "100 mm" else 16, abs=0.01), each.text


def test_the_mark_of_the_verdict_stands_beside_its_words(case):
    """22 units square, the words of 18 nine units beside it, centred on it (the project's choice)."""
    unit, words = case.sheet.unit, next(each for each in case.sheet.words if "strong tone" in each.style)
    mark = next(each for each in case.section.iter() if each.get("id") == "verdict")
    x, y, scale = map(float, re.findall(r"-?[0-9.]+", mark.attrib["transform"]))
    side = 20.0 * scale
    assert (x, side) == (pytest.approx(16.0 * unit, abs=NEAR), pytest.approx(22.0 * unit, rel=0.001))
    assert words.box.left == pytest.approx(x + side + 9.0 * unit, abs=NEAR)
    capitals = _base(words) - 0.5 * 0.72 * words.size
    assert capitals == pytest.approx(y + 0.5 * side, abs=1.0 * unit)


def test_the_gap_of_twins_is_told_left_of_its_line_in_two_lines(case):
    unit = case.sheet.unit
    for axle in AXLES:
        if f"{axle}-twin-gap" not in case.ids:
            continue
        line = case.sheet.named(f"{axle}-twin-gap")
        named = next(each for each in case.panel(axle) if each.text in ("twin gap", "overlap of the twins"))
        value = case.panel(axle)[case.panel(axle).index(named) + 1]
        # Beyond the arrow's tail of 26 units and 5 more.
        end = min(x for x, _ in line.points) - 31.0 * unit
        assert [each.box.right for each in (named, value)] == [pytest.approx(end, abs=NEAR)] * 2
        assert _base(value) - _base(named) == pytest.approx(19.0 * unit, abs=NEAR)
        assert _base(named) < middle(line, 1) < _base(value)
