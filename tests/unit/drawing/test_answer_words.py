"""What is written in section and patches of twenty-four fitments, and how large a patch is: the answer's numbers.

Tolerance: half the last digit that is printed, as in the section's geometry; twice where the drawing rounds a number
that the answer has rounded too.
"""

from __future__ import annotations

import re

import pytest

from tests.unit.drawing.drawn import AXLES, OVERLAPS, SIDES, TENTH, WHOLE
from tests.unit.drawing.reading import SVG, element, length, words


def test_every_value_that_is_written_is_the_answer_s(case):
    """The words beside the lines of an axle, present in brackets; they are rounded to what the tolerance says."""
    for axle in AXLES:
        now, then = case.numbers(axle, "present"), case.numbers(axle)
        radii = [each.get("static_loaded_radius_mm") for each in (then, now)]
        expected = {
            "⌀": ([each["overall_diameter_mm"] for each in (then, now)], WHOLE),
            "section width": ([each["section_width_mm"] for each in (then, now)], 2 * WHOLE),
            "rim": ([case.rim_width(axle, which) for which in ("proposed", "present")], TENTH),
            "ET": ([case.offset(axle, which) for which in ("proposed", "present")], TENTH),
        }
        if all(radii):
            band = radii[0]["high"] - radii[0]["value"]
            expected["loaded radius"] = ([radii[0]["value"], band, radii[1]["value"]], WHOLE)
        told = {
            label: numbers_in(each.text, label) for label in expected for each in case.panel(axle) if is_(each, label)
        }
        assert told == {label: pytest.approx(*value) for label, value in map(tolerant, expected.items())}


def test_the_gap_of_a_twin_is_written_beneath_its_name(case):
    for axle in filter(case.twin, AXLES):
        gap = case.finding("clearance.twin", axle)["measured"]
        told = under(case, axle, "overlap of the twins" if gap < 0 else "twin gap")
        assert numbers_in(told)[0] == pytest.approx(gap, abs=TENTH)


def test_the_value_of_a_room_stands_beneath_its_name(case):
    for axle in AXLES:
        for side, solid in (("inboard", "strut"), ("outboard", "wing edge"), ("radial", "arch, at full bump")):
            present = case.request["vehicle"][axle]["clearance"].get(f"{side}_mm")
            if present is not None:
                measured = case.finding(f"clearance.{side}", axle)["measured"]
                name = f"overlap with {OVERLAPS[side]}" if measured < 0 else solid
                assert numbers_in(under(case, axle, name)) == pytest.approx([measured, present], abs=TENTH)


def is_(words_, label):
    return re.match(rf"{label} [−\d]", words_.text)


def tolerant(item):
    label, (values, tolerance) = item
    return label, (values, None, tolerance)


def numbers_in(text, label=""):
    """Return the numbers in a text: proposed, then present; a true minus is a minus."""
    return [float(each.replace("−", "-")) for each in re.findall(r"−?\d+(?:\.\d+)?", text.removeprefix(label))]


def under(case, axle, name):
    """Return the words on the next line under a name."""
    (named,) = (each for each in case.panel(axle) if each.text == name)
    below = [each for each in case.panel(axle) if each.box.top > named.box.top and in_column(each.box, named.box)]
    return min(below, key=lambda each: each.box.top).text


def in_column(one, other):
    return one.left < other.right and other.left < one.right


def test_every_patch_is_as_long_and_as_wide_as_the_answer_says(case):
    for axle in AXLES:
        for which in ("present", "proposed"):
            patch, name = case.numbers(axle, which).get("contact_patch"), f"{axle}-{which}"
            drawn = {each.get("id") for each in case.patches.iter()}
            assert (f"{name}-outline" in drawn) == (patch is not None)
            if patch is None:
                continue
            outline = element(case.patches, f"{name}-outline").attrib
            sizes = float(outline["width"]), float(outline["height"])
            expected = patch["width_mm"]["value"], patch["length_mm"]["value"]
            assert sizes == pytest.approx(expected, abs=WHOLE)
            assert length(case.patches, f"{name}-width") == pytest.approx(expected[0], abs=WHOLE)
            assert length(case.patches, f"{name}-length") == pytest.approx(expected[1], abs=WHOLE)


def test_every_value_beside_a_patch_is_the_answer_s(case):
    said = words(case.patches)
    for axle in AXLES:
        for which in ("present", "proposed"):
            patch = case.numbers(axle, which).get("contact_patch")
            if patch:
                wide, long, area = (patch[name] for name in ("width_mm", "length_mm", "area_cm2"))
                assert "{value:.0f} ({low:.0f} to {high:.0f})".format(**wide) in said
                assert {"{value:.0f}".format(**long), "({low:.0f} to {high:.0f})".format(**long)} <= set(said)
                assert "area {value:.0f} cm² ({low:.0f} to {high:.0f})".format(**area) in said


def test_a_reader_who_does_not_see_it_is_told_the_same_rooms(case):
    told = case.section.findtext(f"{SVG}desc")
    for axle in AXLES:
        for side in SIDES:
            if f"{axle}-room-{side}" in case.ids:
                measured = case.finding(f"clearance.{side}", axle)["measured"]
                named = "overlap with" if measured < 0 else "room to"
                assert f"{named} {OVERLAPS[side]} " in told
