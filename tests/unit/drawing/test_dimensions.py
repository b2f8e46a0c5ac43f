"""A dimension has an arrow at each end and lines that lead to it; every line has the type of what it stands for."""

from __future__ import annotations

import pytest

from service.drawing.scene import scenes
from tests.support.cases import changed, check, on_both_axles, saloon
from tests.unit.drawing.drawn import AXLES
from tests.unit.drawing.reading import ends

# Paper: a drawing unit is 0.2 mm; arrows of 13 units where their line has room for three of them.
ARROW_UNITS, NEAR = 13.0, 0.01
SOLID_STYLES = {"strut": "narrow", "wing": "narrow", "arch": "narrow", "proposed-ground": "wide", "hub-face": "wide"}
DIMENSIONS = ("overall-diameter", "section-width", "loaded-radius", "rim-width", "offset", "twin-gap")
ROOMS = ("room-inboard", "room-outboard", "room-radial")


def dimension_names(case):
    return [f"{axle}-{name}" for axle in AXLES for name in DIMENSIONS + ROOMS if f"{axle}-{name}" in case.ids]


def joins(line, one, other):
    """Return whether a line leads straight from one point to another, whichever way."""
    ways = (line[0], line[-1]), (line[-1], line[0])
    return len(line) == 2 and any(near(first, one) and near(last, other) for first, last in ways)


def near(one, other):
    return abs(one[0] - other[0]) < NEAR and abs(one[1] - other[1]) < NEAR


def test_each_end_of_a_dimension_has_an_arrow(case):
    for name in dimension_names(case):
        for end in case.sheet.named(name).points:
            assert [tip for tip, _ in case.sheet.arrows if near(tip, end)], name


def test_arrows_point_outwards_where_there_is_room_and_inwards_where_not(case):
    for name in dimension_names(case):
        one, other = case.sheet.named(name).points
        axis = 0 if abs(one[0] - other[0]) > abs(one[1] - other[1]) else 1
        long = abs(one[axis] - other[axis])
        if long < NEAR:
            continue
        outside = any(part in name for part in ("room", "twin-gap")) or long < 3 * ARROW_UNITS * case.sheet.unit
        ways = [
            way[axis] * (1 if end[axis] > min(one[axis], other[axis]) + NEAR else -1)
            for end in (one, other)
            for tip, way in case.sheet.arrows
            if near(tip, end)
        ]
        assert ways == [pytest.approx(-1.0 if outside else 1.0, abs=0.01)] * 2, name


def test_outside_arrows_have_a_tail_to_point_along(case):
    """From each end 26 units outwards: two arrow lengths (common practice, no source)."""
    for name in dimension_names(case):
        if "room" in name or "twin-gap" in name:
            one, other = case.sheet.named(name).points
            axis = 1 if "radial" in name else 0
            low, high = sorted((one, other), key=lambda point: point[axis])
            for end, way in ((low, -1), (high, 1)):
                far = list(end)
                far[axis] += way * 2 * ARROW_UNITS * case.sheet.unit
                tails = [line for line in case.sheet.lines if joins(line.points, end, far)]
                assert tails, name


def test_each_end_of_a_dimension_meets_a_line_that_leads_to_it(case):
    """A line across the dimension passes through its end, but for the hub face and the centre line, which are there."""
    for name in dimension_names(case):
        if name.endswith("offset") and case.sheet.named(name).points[0] == case.sheet.named(name).points[1]:
            continue
        line = case.sheet.named(name)
        axis = 1 if line.points[0][0] == line.points[1][0] else 0
        for end in line.points:
            leading = [each for one, other, each in case.sheet.ink() if passes(one, other, end, axis)]
            assert leading, (name, end)


def passes(one, other, end, axis):
    """Return whether a straight line square to an axis passes through a point or ends at it."""
    across = 1 - axis
    low, high = sorted((one[across], other[across]))
    square = abs(one[axis] - other[axis]) < NEAR and high - low > NEAR
    return square and abs(one[axis] - end[axis]) < NEAR and low - NEAR <= end[across] <= high + NEAR


def test_the_lines_have_the_types_of_what_they_are(case):
    for line in case.sheet.lines:
        for axle in AXLES:
            kind = line.name.removeprefix(f"{axle}-")
            if kind == line.name:
                continue
            expected = SOLID_STYLES.get(kind)
            if kind.startswith("present"):
                expected = "phantom"
            elif kind.startswith("proposed"):
                expected = "wide"
            elif kind in DIMENSIONS + ROOMS or kind.endswith("-edge"):
                expected = "narrow"
            elif kind in ("axis", "centre", "centre-outer", "bolt-upper", "bolt-lower"):
                expected = "chain"
            elif kind.startswith("overlap"):
                expected = "overlap"
            if expected:
                assert (line.name, line.style) == (line.name, expected)


def test_every_solid_is_hatched_on_its_far_side(case):
    for axle in AXLES:
        for name, axis, way in (("strut", 0, 1), ("wing", 0, -1), ("arch", 1, -1), ("proposed-ground", 1, 1)):
            if f"{axle}-{name}" not in case.ids:
                continue
            one, other = case.sheet.named(f"{axle}-{name}").points
            sides = sorted((one[axis], one[axis] + way * 9.0 * case.sheet.unit))
            along = sorted((one[1 - axis], other[1 - axis]))
            expected = [pytest.approx(each, abs=NEAR) for each in (*sides, *along)]
            boxes = []
            for hatched in (each for each in case.sheet.lines if each.style == "hatched"):
                ranges = [(min(each), max(each)) for each in zip(*hatched.points, strict=True)]
                boxes.append([*ranges[axis], *ranges[1 - axis]])
            assert any(each == expected for each in boxes), f"{axle}-{name}"


def test_the_hub_is_a_plate_about_its_bolts_and_reaches_inboard_of_its_face(case):
    for axle in AXLES:
        _, top, _, bottom = ends(case.section, f"{axle}-hub-face")
        bolts = [ends(case.section, f"{axle}-bolt-{which}")[1] for which in ("upper", "lower")]
        circle = float(case.request["vehicle"][axle]["hub"]["bolt_circle"].split("x")[1])
        assert bolts == [pytest.approx(-circle / 2), pytest.approx(circle / 2)]
        # A flange 16 mm beyond the centres of the bolts, 12 mm thick: the project's choice, told as indicative.
        assert (top, bottom) == (pytest.approx(-circle / 2 - 16), pytest.approx(circle / 2 + 16))
        xs = [x for x, _ in case.sheet.named(f"{axle}-hub-flange").points]
        face = case.sheet.named(f"{axle}-hub-face").points[0][0]
        assert (min(xs), max(xs)) == (pytest.approx(face), pytest.approx(face + 12))


def test_no_hub_is_drawn_larger_than_its_rim_has_room_for():
    """At most 0.4 of the rim's diameter on both sides of the axis (the project's choice); a rim of 17 has 432 mm."""
    bolts = on_both_axles({"/vehicle/{axle}/hub/bolt_circle": "10x335", "/candidate/{axle}/rim/bolt_circle": "10x335"})
    for scene in scenes(check(changed(saloon(), bolts)), "both"):
        assert scene.then.rim_diameter_mm == pytest.approx(432.0, abs=0.3)
        assert scene.hub_radius_mm == pytest.approx(0.4 * scene.then.rim_diameter_mm)


def test_centre_lines_pass_through_the_wheels_and_the_axis(case):
    for axle in AXLES:
        tyre, centre = case.sheet.named(f"{axle}-proposed-tyre"), case.sheet.named(f"{axle}-centre")
        xs, ys = zip(*tyre.points, strict=True)
        middle = pytest.approx((min(xs) + max(xs)) / 2, abs=NEAR)
        assert [x for x, _ in centre.points] == [middle, middle]
        upper, lower = centre.points
        assert upper[1] < min(ys) < max(ys) < lower[1]
        axis, face = case.sheet.named(f"{axle}-axis"), case.sheet.named(f"{axle}-hub-face")
        assert axis.points[0][1] == pytest.approx(sum(y for _, y in face.points) / 2)
        assert axis.points[0][0] < min(xs) < max(xs) < axis.points[1][0]
