"""The section of twenty-four fitments measures what the answer to the same check says in numbers.

Lengths are read from the drawing, whose unit is a real millimetre and whose origin at each axle is the hub face on the
axis; the numbers are those that a caller receives. Tolerance: half the last digit that the answer prints, with the
drawing's own thousandths: 0.06 mm for tenths, 0.51 mm for whole millimetres, 0.006 mm for the hundredths of a finding.
"""

from __future__ import annotations

import pytest

from tests.unit.drawing.drawn import AXLES, HUNDREDTH, OVERLAPS, SIDES, TENTH, WHOLE
from tests.unit.drawing.fitments import REQUESTS
from tests.unit.drawing.reading import box, ends, length, words


def places(case):
    """Yield axle, which and the sign of each wheel's place: the outer one of a twin is mirrored."""
    for axle in AXLES:
        for which in ("present", "proposed"):
            yield axle, which, "", 1
            if case.twin(axle):
                yield axle, which, "-outer", -1


def test_there_are_twenty_and_more():
    assert len(REQUESTS) >= 20


def test_every_tyre_is_as_high_and_as_wide_as_the_answer_says_and_stands_at_its_offset(case):
    for axle, which, wheel, side in places(case):
        numbers, (left, top, right, _) = case.numbers(axle, which), box(case.section, f"{axle}-{which}{wheel}-tyre")
        assert -2 * top == pytest.approx(numbers["overall_diameter_mm"], abs=TENTH)
        assert right - left == pytest.approx(numbers["section_width_mm"], abs=WHOLE)
        assert (left + right) / 2 == pytest.approx(side * case.offset(axle, which), abs=HUNDREDTH)


def test_every_rim_is_a_flange_wider_than_its_designation_about_the_same_centre(case):
    # 12.7 mm for a flange: common practice, no source.
    for axle, which, wheel, side in places(case):
        left, _, right, _ = box(case.section, f"{axle}-{which}{wheel}-rim")
        assert right - left == pytest.approx(case.rim_width(axle, which) + 25.4, abs=HUNDREDTH)
        assert (left + right) / 2 == pytest.approx(side * case.offset(axle, which), abs=HUNDREDTH)


def test_the_ground_is_where_the_answer_says(case):
    for axle in AXLES:
        for which in ("present", "proposed"):
            radius = case.numbers(axle, which).get("static_loaded_radius_mm")
            name = f"{axle}-{which}-ground"
            assert (name in case.ids) == (radius is not None)
            if radius:
                assert ends(case.section, name)[1] == pytest.approx(radius["value"], abs=TENTH)


def test_the_dimension_lines_are_as_long_as_the_answer_s_numbers(case):
    for axle in AXLES:
        numbers = case.numbers(axle)
        drawn = {name: length(case.section, f"{axle}-{name}") for name in ("overall-diameter", "section-width")}
        assert drawn["overall-diameter"] == pytest.approx(numbers["overall_diameter_mm"], abs=TENTH)
        assert drawn["section-width"] == pytest.approx(numbers["section_width_mm"], abs=WHOLE)
        assert length(case.section, f"{axle}-rim-width") == pytest.approx(
            case.rim_width(axle, "proposed"), abs=HUNDREDTH
        )
        x1, _, x2, _ = ends(case.section, f"{axle}-offset")
        assert (x1, x2) == (0.0, pytest.approx(case.offset(axle, "proposed"), abs=HUNDREDTH))
        radius = numbers.get("static_loaded_radius_mm")
        if radius:
            assert length(case.section, f"{axle}-loaded-radius") == pytest.approx(radius["value"], abs=TENTH)


def test_each_room_is_as_long_as_the_finding_measures_and_on_the_side_it_says(case):
    """From edge to solid: towards the solid where room is left, back where there is an overlap."""
    for axle in AXLES:
        for side in SIDES:
            name, measured = f"{axle}-room-{side}", case.finding(f"clearance.{side}", axle)["measured"]
            stated = f"{side}_mm" in case.request["vehicle"][axle]["clearance"]
            assert (name in case.ids) == stated
            if stated:
                x1, y1, x2, y2 = ends(case.section, name)
                drawn = {"inboard": x2 - x1, "outboard": x1 - x2, "radial": y1 - y2}[side]
                assert drawn == pytest.approx(measured, abs=HUNDREDTH)


def test_a_room_begins_at_the_edge_and_ends_at_the_solid(case):
    for axle in AXLES:
        for side, solid in (("inboard", "strut"), ("outboard", "wing")):
            if f"{axle}-room-{side}" in case.ids:
                edge, _, wall, _ = ends(case.section, f"{axle}-room-{side}")
                assert ends(case.section, f"{axle}-{side}-edge")[0::2] == (edge, edge)
                assert ends(case.section, f"{axle}-{solid}")[0::2] == (wall, wall)
        if f"{axle}-room-radial" in case.ids:
            assert ends(case.section, f"{axle}-arch")[1::2] == ends(case.section, f"{axle}-room-radial")[3:] * 2


def test_the_solids_stand_where_they_were_measured_beside_the_present_wheel(case):
    for axle in AXLES:
        room, numbers = case.request["vehicle"][axle]["clearance"], case.numbers(axle, "present")
        half = max(numbers["section_width_mm"], case.rim_width(axle, "present") + 25.4) / 2
        offset = case.offset(axle, "present")
        outboard = half + offset if case.twin(axle) else half - offset
        expected = {"strut": ("inboard_mm", half + offset, 0), "wing": ("outboard_mm", -outboard, 0)}
        expected["arch"] = ("radial_mm", -numbers["overall_diameter_mm"] / 2, 1)
        for name, (field, edge, axis) in expected.items():
            if field in room:
                away = 1 if name == "strut" else -1
                place = ends(case.section, f"{axle}-{name}")[axis]
                assert place == pytest.approx(edge + away * room[field], abs=WHOLE)


def test_an_overlap_is_hatched_as_deep_as_it_is_and_named_and_nothing_else_is(case):
    said = words(case.section)
    for side in SIDES:
        deep = {axle: case.finding(f"clearance.{side}", axle).get("measured") or 0.0 for axle in AXLES}
        named = said.count(f"overlap with {OVERLAPS[side]}")
        stated = {axle: f"{side}_mm" in case.request["vehicle"][axle]["clearance"] for axle in AXLES}
        over = [axle for axle in AXLES if stated[axle] and deep[axle] < 0]
        assert named == len(over)
        for axle in AXLES:
            name = f"{axle}-overlap-{side}"
            assert (name in case.ids) == (axle in over)
            if axle in over:
                left, top, right, bottom = box_of_place(case, name)
                solid, edge = sorted({"inboard": (left, right), "outboard": (right, left)}.get(side, (bottom, top)))
                assert edge - solid == pytest.approx(-deep[axle], abs=HUNDREDTH)


def box_of_place(case, name):
    """Return the box of a hatched place, and see to it that one of its sides is the solid."""
    left, top, right, bottom = box(case.section, name)
    axle, side = name.split("-overlap-")
    solid = {"inboard": ("strut", 0, left), "outboard": ("wing", 0, right), "radial": ("arch", 1, bottom)}[side]
    assert ends(case.section, f"{axle}-{solid[0]}")[solid[1]] == pytest.approx(solid[2], abs=0.002)
    return left, top, right, bottom


def test_the_gap_of_a_twin_is_as_wide_as_its_finding_says_and_in_the_middle(case):
    for axle in AXLES:
        name = f"{axle}-twin-gap"
        assert (name in case.ids) == case.twin(axle)
        if case.twin(axle):
            gap = case.finding("clearance.twin", axle)["measured"]
            x1, _, x2, _ = ends(case.section, name)
            assert x2 - x1 == pytest.approx(gap, abs=HUNDREDTH)
            assert x1 == pytest.approx(-x2, abs=HUNDREDTH)
            assert ("overlap of the twins" in words(case.section)) == (gap < 0)
            assert ("twin gap" in words(case.section)) == (gap >= 0)


def test_twins_that_touch_are_hatched_where_they_touch(case):
    for axle in AXLES:
        gap = case.finding("clearance.twin", axle).get("measured") or 0.0
        places = [f"{axle}-overlap-twin-{one}" for one in (1, 2)]
        assert [each in case.ids for each in places] == [gap < 0] * 2
        if gap < 0:
            (left, *_), (_, _, right, _) = (box(case.section, each) for each in places)
            assert (left, right) == (pytest.approx(gap / 2, abs=HUNDREDTH), pytest.approx(-gap / 2, abs=HUNDREDTH))
