"""The sheets of plots can be read: ticks, caps, samples, leaders and words stand where they belong, none on another."""

from __future__ import annotations

import math
import re
from itertools import combinations, pairwise
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing.plot_sheet import LETTERS
from service.drawing.plots import PLOTS
from tests.unit.drawing.plotting import PLACES, middle, plotted, question
from tests.unit.drawing.reading import SVG, element, ends
from tests.unit.drawing.sheet import Box, Sheet

NEAR = 0.003
# The height of capitals as a share of their size (common practice, no source).
CAPITALS = 0.72


@pytest.fixture(scope="module")
def candidates():
    return plotted(*map(question, PLACES))


@pytest.fixture(scope="module", params=PLOTS)
def plot(request, candidates):
    return request.param, fromstring(PLOTS[request.param](candidates))


@pytest.fixture(scope="module")
def grip(candidates):
    return fromstring(PLOTS["grip"](candidates))


@pytest.fixture(scope="module")
def balance(candidates):
    return fromstring(PLOTS["balance"](candidates))


@pytest.fixture(scope="module")
def outlines(candidates):
    return fromstring(PLOTS["outlines"](candidates))


def marks(drawing):
    """Return the squares of the marks by their names; a mark has 20 units before it is scaled."""
    found = {}
    for each in drawing.iter(f"{SVG}g"):
        if each.get("class", "").startswith("mark"):
            x, y, scale = map(float, re.findall(r"-?[0-9.]+", each.attrib["transform"]))
            found[each.attrib["id"]] = Box(x, y, x + 20 * scale, y + 20 * scale)
    return found


def test_no_words_stand_on_other_words_or_on_a_mark(plot):
    name, drawing = plot
    sheet, squares = Sheet(drawing), marks(drawing)
    # Letters of a grip plot may have to touch a mark or each other where many points stand together.
    crowded = [each for each in sheet.words if name == "grip" and each.text in LETTERS]
    pairs = ((one, other) for one, other in combinations(sheet.words, 2) if one not in crowded or other not in crowded)
    assert [(one.text, other.text) for one, other in pairs if one.box.meets(other.box)] == []
    squares = {key: box for key, box in squares.items() if name == "balance" or key.endswith("-sample")}
    assert [(each.text, key) for each in sheet.words for key, box in squares.items() if each.box.meets(box)] == []


def test_the_sheet_ends_where_its_words_do(plot):
    _, drawing = plot
    sheet = Sheet(drawing)
    xs = [x for each in sheet.words for x in (each.box.left, each.box.right)]
    ys = [y for each in sheet.words for y in (each.box.top, each.box.bottom)]
    # 16 units beside, 8 mm of paper above and beneath at most.
    assert min(xs) == pytest.approx(16.0 * sheet.unit, abs=NEAR)
    assert max(xs) <= sheet.width - 16.0 * sheet.unit + NEAR
    assert 0.0 <= min(ys) <= 40.0 * sheet.unit
    assert 4.0 * sheet.unit <= sheet.height - max(ys) <= 40.0 * sheet.unit


def test_each_entry_has_its_sample_its_letter_its_name_and_its_lines_in_this_order(plot):
    name, drawing = plot
    sheet, squares = Sheet(drawing), marks(drawing)
    unit = sheet.unit
    starts = []
    for place, letter in enumerate(LETTERS[: len(PLACES)]):
        named = sheet.says(f"set no. {place}")
        ((at, mine),) = (
            (index, each)
            for index, each in enumerate(sheet.words)
            if each.text == letter and sheet.words[index + 1] is named
        )
        # On one line, the name beside the letter.
        assert mine.box.bottom == pytest.approx(named.box.bottom, abs=2.0 * unit)
        assert mine.box.right < named.box.left < mine.box.right + 14.0 * unit
        if name == "outlines":
            left, y, right, _ = ends(drawing, f"outlines-{letter}-sample")
            assert mine.box.top < y < mine.box.bottom
        else:
            left, top, right, bottom = squares[f"{name}-{letter}-sample"]
            assert 0.5 * (top + bottom) == pytest.approx(0.5 * (mine.box.top + mine.box.bottom), abs=3.0 * unit)
            assert right - left == pytest.approx(18.0 * unit, rel=0.001)
        assert left == pytest.approx(16.0 * unit, abs=NEAR)
        assert 0.0 < mine.box.left - right < 16.0 * unit
        told = [each for each in sheet.words[at + 2 :] if each.style.endswith("soft")]
        assert 0.0 < told[0].box.top - named.box.bottom < told[0].size
        assert told[0].box.left == pytest.approx((16.0 + 28.0) * unit, abs=NEAR)
        starts.append(mine.box.top)
    assert starts == sorted(starts)


@pytest.mark.parametrize(("name", "axis"), [("grip", "across"), ("grip", "up"), ("balance", "across")])
def test_ticks_stand_a_round_step_apart_with_zero_among_them_and_their_values_beside_them(request, name, axis):
    """Steps of 1, 2 or 5 times a power of ten (common practice, no source), and no more than six of them."""
    drawing = request.getfixturevalue(name)
    unit, found = Sheet(drawing).unit, []
    for parent in drawing.iter():
        for line, words in zip(parent, list(parent)[1:], strict=False):
            if re.fullmatch(rf"{name}-{axis}-\d+", line.get("id", "")):
                x1, y1, x2, y2 = (float(line.attrib[key]) for key in ("x1", "y1", "x2", "y2"))
                found.append((words, (x1, y1), (x2, y2)))
    values = [float(words.text.replace("\N{MINUS SIGN}", "-")) for words, _, _ in found]
    digits = {len(words.text.partition(".")[2]) for (words, _, _), value in zip(found, values, strict=True) if value}
    step = values[1] - values[0]
    assert 0.0 in values
    assert [other - one for one, other in pairwise(values)] == [pytest.approx(step)] * (len(values) - 1)
    assert 2 <= len(values) - 1 <= 6
    power = 10.0 ** math.floor(math.log10(step) + 1e-9)
    assert round(step / power, 6) in (1.0, 2.0, 5.0)
    # A whole number is said without decimals.
    assert max(digits) == max(0, -round(math.log10(power)))
    along = 1 if axis == "up" else 0
    places = [start[along] for _, start, _ in found]
    each_mm = (places[-1] - places[0]) / (len(places) - 1)
    assert places == [pytest.approx(places[0] + each_mm * index, abs=NEAR) for index in range(len(places))]
    assert (each_mm < 0) == (axis == "up")
    for words, start, stop in found:
        x, y, size = float(words.attrib["x"]), float(words.attrib["y"]), float(words.attrib["font-size"])
        assert abs(stop[1 - along] - start[1 - along]) == pytest.approx(7.0 * unit, abs=NEAR)
        if axis == "up":
            # Capitals centred on the tick, left of it.
            assert (start[1], words.get("text-anchor")) == (stop[1], "end")
            assert y - 0.5 * CAPITALS * size == pytest.approx(start[1], abs=0.05 * size)
            assert 0.0 < start[0] - x < size
        else:
            assert (start[0], words.get("text-anchor"), x) == (stop[0], "middle", pytest.approx(start[0], abs=NEAR))
            # On the other side of the axis than the tick, and close to it.
            edges = sorted((start[1] - each) * (stop[1] - start[1]) / (7.0 * unit) for each in (y, y - CAPITALS * size))
            assert 0.0 < edges[0] < edges[1] < 1.5 * size


def test_every_bar_of_a_band_ends_in_caps_and_what_has_no_band_in_none(grip, balance):
    lines = {name: Sheet(drawing).lines for name, drawing in (("grip", grip), ("balance", balance))}
    for letter in LETTERS[: len(PLACES)]:
        for name, bar, half_units in (("grip", "grip", 5.0), ("grip", "wet", 5.0), ("balance", "band", 6.0)):
            drawn = grip if name == "grip" else balance
            unit = Sheet(drawn).unit
            x1, y1, x2, y2 = ends(drawn, f"{name}-{letter}-{bar}")
            along = 1 if bar == "wet" else 0
            half = half_units * unit
            for x, y in ((x1, y1), (x2, y2)):
                cap = [(x, y - half), (x, y + half)] if along == 0 else [(x - half, y), (x + half, y)]
                found = [
                    line
                    for line in lines[name]
                    if len(line.points) == 2
                    and all(each == pytest.approx(end, abs=NEAR) for each, end in zip(line.points, cap, strict=True))
                ]
                assert bool(found) == ((x1, y1) != (x2, y2)), (name, letter, bar)


def test_bars_cross_at_the_mark_and_a_strip_stands_beneath_its_entry(grip, balance):
    unit = Sheet(grip).unit
    for letter in LETTERS[: len(PLACES)]:
        x, y = middle(grip, f"grip-{letter}")
        assert ends(grip, f"grip-{letter}-grip")[1::2] == pytest.approx((y, y), abs=NEAR)
        assert ends(grip, f"grip-{letter}-wet")[::2] == pytest.approx((x, x), abs=NEAR)
        band = ends(balance, f"balance-{letter}-band")
        assert middle(balance, f"balance-{letter}")[1] == pytest.approx(band[1], abs=NEAR)
        present = ends(balance, f"balance-{letter}-present")
        assert 0.5 * (present[1] + present[3]) == pytest.approx(band[1], abs=NEAR)
        assert present[3] - present[1] == pytest.approx(22.0 * unit, abs=NEAR)
    sheet = Sheet(balance)
    for place, letter in enumerate(LETTERS[: len(PLACES)]):
        y = ends(balance, f"balance-{letter}-band")[1]
        above = [each for each in sheet.words if each.box.bottom < y]
        assert any(each.text == f"set no. {place}" for each in above)
        assert not any(each.text == f"set no. {place + 1}" for each in above)


def test_outlines_stand_in_the_middle_of_their_panel(outlines):
    sheet = Sheet(outlines)
    for axle in ("front", "rear"):
        moved = element(outlines, f"outlines-{axle}").attrib["transform"]
        hub_x = float(re.findall(r"-?[\d.]+", moved)[0])
        names = f"outlines-{axle}-", f"{axle}-strut", f"{axle}-wing"
        xs = [x for line in sheet.lines if line.name.startswith(names) for x, _ in line.points]
        # Room is kept for tyres grown in service, a few millimetres on one side more than on the other.
        assert 0.5 * (min(xs) + max(xs)) == pytest.approx(0.5 * sheet.width, abs=3.0)
        assert min(xs) < hub_x < max(xs)


def test_a_letter_that_stands_away_from_its_point_is_led_to(grip):
    """Along the straight line between them: from the edge of the mark to where the letter begins."""
    unit, sheet = Sheet(grip).unit, Sheet(grip)
    slanted = [
        line.points
        for line in sheet.lines
        if not line.name and len(line.points) == 2 and len({x for x, _ in line.points} & {line.points[0][0]}) == 1
    ]
    slanted = [(one, other) for one, other in slanted if one[0] != other[0] and one[1] != other[1]]
    led, foot = set(), ends(grip, "grip-across-0")[1]
    for each in sheet.words:
        # Beneath the square the list has the same letters.
        if each.text not in LETTERS[: len(PLACES)] or each.box.bottom > foot:
            continue
        point = middle(grip, f"grip-{each.text}")
        # A letter's capitals stand 0.36 of its size above and beneath its middle.
        at = 0.5 * (each.box.left + each.box.right), each.box.bottom - (0.2 + 0.36) * each.size
        far = math.dist(point, at)
        size = 0.8 * each.size
        leaders = [
            (one, other) for one, other in slanted if math.dist(point, one) == pytest.approx(9.0 * unit, abs=0.01)
        ]
        leaders = [pair for pair in leaders if math.dist(pair[1], at) == pytest.approx(0.5 * size, abs=0.05 * size)]
        assert bool(leaders) == (far > 1.9 * (9.0 * unit + 0.5 * size)), each.text
        for one, other in leaders:
            assert math.dist(one, other) == pytest.approx(far - 9.0 * unit - 0.5 * size, abs=0.02)
            led.add(each.text)
    assert led
    assert len(slanted) in (len(led), len(led) + 1)


def test_lines_of_an_entry_follow_at_one_distance_and_the_next_entry_a_little_further_on(plot):
    """1.35 of their size from line to line; 16 units between entries, more where a strip stands there."""
    name, drawing = plot
    sheet, lines = Sheet(drawing), []
    first = sheet.words.index(sheet.says("set no. 0")) - 1
    for each in sheet.words[first:]:
        if each.size == pytest.approx(14.5 * sheet.unit, abs=0.01):
            # The notes of the sheet.
            break
        lines.append((each.text, (each.box.bottom - 0.2 * each.size) / sheet.unit))
    steps = {}
    for (one, y1), (other, y2) in pairwise(lines):
        kind = "next" if other in LETTERS else "name" if one in LETTERS else "first" if "set no." in one else "told"
        steps.setdefault(kind, []).append(y2 - y1)
    strip = 34.0 if name == "balance" else 0.0
    # Names of 17 units, what is told of 15.5; a line stands 0.35 of its size above the foot of its place.
    expected = {
        "told": 1.35 * 15.5,
        "first": 1.35 * 15.5 + 0.35 * (17.0 - 15.5),
        "name": 1.35 * 17.0 - 17.0 - 0.35 * 17.0,
        "next": 0.35 * 15.5 + 16.0 + strip + 17.0,
    }
    for kind, far in expected.items():
        assert steps[kind] == [pytest.approx(far, abs=0.05)] * len(steps[kind]), kind


def test_letters_keep_clear_of_each_other(grip):
    """A bold capital of 17 units takes 0.63 of that across and 0.8 upwards with the space about it."""
    sheet = Sheet(grip)
    foot = ends(grip, "grip-across-0")[1]
    places = [
        (0.5 * (each.box.left + each.box.right), each.box.bottom)
        for each in sheet.words
        if each.text in LETTERS[: len(PLACES)] and each.box.bottom < foot
    ]
    assert len(places) == len(PLACES)
    wide, high = (share * 17.0 * sheet.unit - NEAR for share in (0.63, 0.8))
    assert all(abs(x1 - x2) >= wide or abs(y1 - y2) >= high for (x1, y1), (x2, y2) in combinations(places, 2))
