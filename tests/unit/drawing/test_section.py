"""The section says in its geometry what the assessment says in numbers.

Each length is read from the drawing's coordinates, whose unit is a real millimetre and whose origin in each axle is
the hub face on the axis, and compared with the assessment's number. Tolerance: a thousandth of a millimetre, the
drawing's own resolution, twice for a length with two ends.
"""

import re

import pytest

from tests.unit.drawing.reading import box, element, ends, length

RESOLUTION_MM = 0.0011
AXLES = ("front", "rear")


def close(value):
    return pytest.approx(value, abs=2 * RESOLUTION_MM)


def view(found, axle):
    return getattr(found.car, axle)


def wheel(found, axle, which):
    return view(found, axle).now if which == "present" else view(found, axle).then


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_tyre_reaches_as_high_as_its_overall_diameter_says(found, section, axle, which):
    _, top, _, _ = box(section, f"{axle}-{which}-tyre")
    assert -2 * top == close(wheel(found, axle, which).geometry.overall_diameter_mm)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_tyre_is_as_wide_as_its_section(found, section, axle, which):
    left, _, right, _ = box(section, f"{axle}-{which}-tyre")
    assert right - left == close(wheel(found, axle, which).geometry.section_width_mm)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_tyre_begins_at_the_nominal_rim_diameter(found, section, axle, which):
    _, _, _, bottom = box(section, f"{axle}-{which}-tyre")
    assert -2 * bottom == close(wheel(found, axle, which).facts.rim_diameter_mm)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_wheel_stands_inboard_of_the_hub_face_by_its_offset(found, section, axle, which):
    left, _, right, _ = box(section, f"{axle}-{which}-tyre")
    assert (left + right) / 2 == close(wheel(found, axle, which).facts.offset_mm)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_loaded_tyre_ends_on_the_ground_at_the_static_loaded_radius(found, section, axle, which):
    _, _, _, bottom = box(section, f"{axle}-{which}-tyre-loaded")
    _, ground, _, _ = ends(section, f"{axle}-{which}-ground")
    assert [bottom, ground] == [close(wheel(found, axle, which).behaviour.static_loaded_radius_mm)] * 2


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("which", ["present", "proposed"])
def test_the_rim_is_a_flange_wider_on_both_sides_than_its_designation(found, section, axle, which):
    # 12.7 mm for a flange: common practice, no source.
    left, _, right, _ = box(section, f"{axle}-{which}-rim")
    assert right - left == close(wheel(found, axle, which).facts.rim_width_in * 25.4 + 2 * 12.7)


@pytest.mark.parametrize("axle", AXLES)
def test_the_hub_face_is_where_places_across_the_car_begin(section, axle):
    x1, _, x2, _ = ends(section, f"{axle}-hub-face")
    assert x1 == x2 == 0.0


@pytest.mark.parametrize("axle", AXLES)
def test_the_bolts_stand_on_their_circle(found, section, axle):
    apart = ends(section, f"{axle}-bolt-lower")[1] - ends(section, f"{axle}-bolt-upper")[1]
    assert apart == close(view(found, axle).axle.hub_bolt_circle.diameter_mm)


@pytest.mark.parametrize("axle", AXLES)
def test_each_dimension_line_is_as_long_as_its_quantity(found, section, axle):
    then = view(found, axle).then
    expected = {
        "overall-diameter": then.geometry.overall_diameter_mm,
        "section-width": then.geometry.section_width_mm,
        "loaded-radius": then.behaviour.static_loaded_radius_mm,
        "rim-width": then.facts.rim_width_in * 25.4,
        "offset": then.facts.offset_mm,
    }
    drawn = {name: length(section, f"{axle}-{name}") for name in expected}
    assert drawn == {name: close(value) for name, value in expected.items()}


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("side", ["inboard", "outboard", "radial"])
def test_the_room_that_is_drawn_is_what_the_finding_says_is_left(found, section, axle, side):
    (finding,) = (each for each in found.findings if each.code == f"clearance.{side}" and each.axle == axle)
    assert length(section, f"{axle}-room-{side}") == close(abs(finding.measured))


@pytest.mark.parametrize("axle", AXLES)
def test_strut_and_wing_edge_stand_as_far_from_the_present_wheel_as_was_measured(found, section, axle):
    now, measured = view(found, axle).now.geometry, view(found, axle).axle
    strut, _, _, _ = ends(section, f"{axle}-strut")
    wing, _, _, _ = ends(section, f"{axle}-wing")
    rooms = [strut - now.inner_edge_mm, -wing - now.outer_edge_mm]
    assert rooms == [close(measured.clearance_inboard_mm), close(measured.clearance_outboard_mm)]


@pytest.mark.parametrize("axle", AXLES)
def test_the_arch_stands_as_far_from_the_present_tyre_as_was_measured(found, section, axle):
    _, arch, _, _ = ends(section, f"{axle}-arch")
    room = -arch - view(found, axle).now.geometry.overall_diameter_mm / 2
    assert room == close(view(found, axle).axle.clearance_radial_mm)


def test_the_scale_bar_is_as_long_as_it_says(section):
    assert length(section, "section-scale-bar") == close(100.0)


def test_both_axles_stand_on_one_axis_at_one_scale(section):
    heights = {element(section, axle).attrib["transform"].split()[1] for axle in AXLES}
    assert len(heights) == 1


def test_the_sheet_is_a_fifth_of_the_real_size_on_paper(section):
    # ISO 5455 (from memory): 1:5 is one of the recommended reductions.
    width = float(section.attrib["viewBox"].split()[2])
    assert section.attrib["width"] == f"{width / 5:.3f}".rstrip("0").rstrip(".") + "mm"


def test_who_does_not_see_it_is_told_both_fitments_and_their_numbers_proposed_first(found, section):
    told = section.findtext("{http://www.w3.org/2000/svg}desc")
    assert "Front axle: proposed 245/40 R18 97Y XL on 8J x 18 H2 ET38, present 225/45 R17 94W XL on 7.5J x 17" in told
    for axle in AXLES:
        now, then = view(found, axle).now, view(found, axle).then
        for label, proposed, present in (
            ("overall diameter", then.geometry.overall_diameter_mm, now.geometry.overall_diameter_mm),
            ("section width", then.geometry.section_width_mm, now.geometry.section_width_mm),
            ("static loaded radius", then.behaviour.static_loaded_radius_mm, now.behaviour.static_loaded_radius_mm),
        ):
            assert f"{label} {proposed:.0f} mm ({present:.0f} mm)" in told
        for label, field in (("the strut", "inboard"), ("the wing edge", "outboard"), ("the arch", "radial")):
            room = getattr(view(found, axle).axle, f"clearance_{field}_mm")
            assert re.search(rf"(room to|overlap with) {label} −?[\d.]+ mm \({room:g} mm\)", told)


def test_a_dimension_of_the_loaded_radius_begins_and_ends_at_lines_that_lead_to_it(section):
    for axle in AXLES:
        x, top, _, bottom = ends(section, f"{axle}-loaded-radius")
        lines = [
            [float(each.attrib[key]) for key in ("x1", "y1", "x2", "y2")]
            for each in element(section, axle).iter("{http://www.w3.org/2000/svg}line")
        ]
        ground = ends(section, f"{axle}-proposed-ground")[2]
        for y in (top, bottom):
            leading = [each for each in lines if each[1] == each[3] == y and each[0] == pytest.approx(ground, abs=0.01)]
            assert any(each[2] > x for each in leading)
