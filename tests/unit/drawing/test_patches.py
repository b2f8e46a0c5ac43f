"""The drawn patches are as long, as wide and as large as the assessment estimates, and so are their bands."""

import re
from math import pi
from xml.etree.ElementTree import fromstring

import pytest

from service.assessment.view.estimates import wheel_estimates
from service.drawing.patches import draw_patches
from tests.support.cases import changed, check, saloon
from tests.unit.drawing.reading import SVG, element, ends, length
from tests.unit.drawing.sheet import Sheet, flattened

RESOLUTION_MM = 0.0011
PLACES = [(axle, which) for axle in ("front", "rear") for which in ("present", "proposed")]


def estimates(found, axle, which):
    view = getattr(found.car, axle)
    wheel = view.now if which == "present" else view.then
    return wheel_estimates(wheel, found.car.front.now.behaviour.patch_width_mm, None)


def close(value):
    return pytest.approx(value, abs=2 * RESOLUTION_MM)


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_outline_has_the_estimated_width_and_length(found, patches, axle, which):
    outline, bands = element(patches, f"{axle}-{which}-outline"), estimates(found, axle, which)
    assert outline.tag == f"{SVG}rect"
    size = [float(outline.attrib["width"]), float(outline.attrib["height"])]
    assert size == [close(bands.patch_width_mm.value), close(bands.patch_length_mm.value)]


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_outline_encloses_the_estimated_area(found, patches, axle, which):
    # A rectangle with elliptic corners loses (4 - pi) rx ry of its area: plane geometry.
    width, height, rx, ry = (
        float(element(patches, f"{axle}-{which}-outline").attrib[key]) for key in ("width", "height", "rx", "ry")
    )
    area_cm2 = (width * height - (4 - pi) * rx * ry) / 100
    assert area_cm2 == pytest.approx(estimates(found, axle, which).patch_area_cm2.value, rel=1e-4)


@pytest.mark.parametrize("end", ["low", "high"])
@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_band_reaches_from_its_low_to_its_high_end(found, patches, axle, which, end):
    bands, path = estimates(found, axle, which), element(patches, f"{axle}-{which}-{end}")
    # H and V lead to the straight sides: their coordinates are not pairs, so the box is read from those alone.
    across = [float(each) for each in path.attrib["d"].replace("Z", "").split("A")[1].split()[5:7]]
    width, length_mm = 2 * across[0], 2 * float(path.attrib["d"].split()[2].lstrip("-"))
    assert [width, length_mm] == [close(getattr(bands.patch_width_mm, end)), close(getattr(bands.patch_length_mm, end))]


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_dimension_lines_are_as_long_as_their_quantities(found, patches, axle, which):
    bands = estimates(found, axle, which)
    drawn = [length(patches, f"{axle}-{which}-width"), length(patches, f"{axle}-{which}-length")]
    assert drawn == [close(bands.patch_width_mm.value), close(bands.patch_length_mm.value)]


def centre(drawing, name):
    return [float(each) for each in re.findall(r"-?[\d.]+", element(drawing, name).attrib["transform"])]


def test_a_patch_is_drawn_about_its_cross_and_the_proposed_one_shows_the_present_again(patches):
    for axle in ("front", "rear"):
        for which in ("present", "proposed"):
            group = element(patches, f"{axle}-{which}-patch")
            rects = {each.get("class"): each.attrib for each in group.iter(f"{SVG}rect")}
            assert set(rects) == ({"phantom"} if which == "present" else {"phantom", "wide"})
            for rect in rects.values():
                assert 2 * float(rect["x"]) == close(-float(rect["width"]))
                assert 2 * float(rect["y"]) == close(-float(rect["height"]))
            present = element(patches, f"{axle}-present-outline").attrib
            assert [rects["phantom"][key] for key in ("width", "height")] == [
                present[key] for key in ("width", "height")
            ]
            chains = [each.attrib for each in group.iter(f"{SVG}line") if each.get("class") == "chain"]
            arms = sorted([float(each[key]) for key in ("x1", "y1", "x2", "y2")] for each in chains)
            arm = -arms[0][0]
            assert arms == [[-arm, 0.0, arm, 0.0], [0.0, -arm, 0.0, arm]]


def test_the_round_corners_of_the_band_are_the_same_share_of_it_as_those_of_the_outline(patches):
    for axle, which in PLACES:
        outline = element(patches, f"{axle}-{which}-outline").attrib
        share = float(outline["rx"]) / float(outline["width"])
        for end in ("low", "high"):
            steps = element(patches, f"{axle}-{which}-{end}").attrib["d"]
            corners = flattened(steps)
            right, foot = max(x for x, _ in corners), max(y for _, y in corners)
            rx, ry = share * 2 * right, share * 2 * foot
            # Clockwise from the upper left: along each side, round each corner.
            expected = [(rx - right, -foot), (right - rx, -foot), (right, ry - foot), (right, foot - ry)]
            expected += [(-x, -y) for x, y in expected]
            assert corners[:8] == [pytest.approx(each, abs=0.01) for each in expected]
            assert corners[-1] == corners[0]
            radii = {tuple(arc.split()[:2]) for arc in steps.split("A")[1:]}
            assert [(float(x), float(y)) for x, y in radii] == [pytest.approx((rx, ry), abs=0.01)]
            sweeps = {tuple(arc.split()[2:5]) for arc in steps.split("A")[1:]}
            assert sweeps == {("0", "0", "1")}


LARGE = {"/candidate/front/tyre/size": "500/100 R30C 200/200P", "/candidate/front/rim/size": "16J x 30 ET0"}


@pytest.mark.parametrize("scaled", [False, True])
def test_its_words_stand_beneath_and_beside_their_lines(patches, found, scaled):
    if scaled:
        # Too large for the usual scale: a unit is more than a millimetre.
        found = check(changed(saloon(), LARGE))
        patches = fromstring(draw_patches(found))
    sheet = Sheet(patches)
    assert (sheet.unit > 1.0) == scaled
    left = [each.box.left for each in sheet.words if each.style.endswith("soft") and each.box.top > 0.8 * sheet.height]
    assert left
    assert left == [pytest.approx(16.0 * sheet.unit, abs=0.01)] * len(left)
    for axle, which in PLACES:
        group, unit = element(patches, f"{axle}-{which}-patch"), sheet.unit
        one = Sheet.part(group, sheet)
        bands = estimates(found, axle, which)
        high_x, high_y = 0.5 * bands.patch_width_mm.high, 0.5 * bands.patch_length_mm.high
        x1, y, x2, _ = ends(patches, f"{axle}-{which}-width")
        assert y == pytest.approx(high_y + 28 * unit, abs=0.01)
        x, top, _, foot = ends(patches, f"{axle}-{which}-length")
        assert x == pytest.approx(high_x + 26 * unit, abs=0.01)
        # From the outermost outline to each dimension line, at both ends of it, and six units on.
        pieces = {tuple(round(each, 1) for point in line.points for each in point) for line in one.lines}
        for end in (x1, x2):
            assert tuple(round(each, 1) for each in (end, high_y, end, y + 6 * unit)) in pieces
        for end in (top, foot):
            assert tuple(round(each, 1) for each in (high_x, end, x + 6 * unit, end)) in pieces
        width, length_words, band, area, held = (each for each in one.words if each.text)
        for words in (width, area, held):
            assert 0.5 * (words.box.left + words.box.right) == pytest.approx(0.0, abs=0.01)
        assert y < width.box.top < width.box.bottom < area.box.top < area.box.bottom < held.box.top
        # In a drawing in millimetres a length has no unit (ISO 129-1, from memory).
        assert re.fullmatch(r"\d+ \(\d+ to \d+\)", width.text)
        assert re.fullmatch(r"area \d+ cm² \(\d+ to \d+\)", area.text)
        assert held.text.startswith("at ")
        assert length_words.box.left == band.box.left == pytest.approx(x + 9 * unit, abs=0.01)
        # Two lines on either side of the middle of what they measure.
        assert length_words.box.top < 0.0 < band.box.bottom
        assert 0.5 * (length_words.box.top + band.box.bottom) == pytest.approx(0.0, abs=4.0 * unit)


def test_a_larger_drawing_has_its_legend_and_its_notes_where_the_usual_one_has_them(patches, found):
    """Measured in units of paper, so that a larger scale moves nothing."""
    large = check(changed(saloon(), LARGE))
    for axle in ("both", "front"):
        places = []
        for each in (found, large):
            drawing = fromstring(draw_patches(each, axle))
            sheet = Sheet(drawing)
            _, bar, _, _ = ends(drawing, "patches-scale-bar")
            notes = [words.box for words in sheet.words if words.style.endswith("soft") and words.box.top > bar]
            shown = (sheet.width, notes[0].top - bar, notes[-1].bottom - bar, sheet.height - bar)
            places.append([round(length / sheet.unit, 1) for length in shown])
        assert places[0] == places[1]
        # Two cells of 300 units with 140 beside them, or one, and margins of 16.
        assert places[0][0] == (912.0 if axle == "both" else 472.0)


def test_patches_stand_in_columns_and_rows_with_their_names_above_their_middle(patches):
    sheet = Sheet(patches)
    unit, places = sheet.unit, {name: centre(patches, f"{name[0]}-{name[1]}-patch") for name in PLACES}
    for axle in ("front", "rear"):
        assert places[axle, "present"][1] == places[axle, "proposed"][1]
        assert places[axle, "proposed"][0] - places[axle, "present"][0] == pytest.approx(440 * unit, abs=0.01)
        # Half of a cell of 300 units inside a margin of 16.
        assert places[axle, "present"][0] == pytest.approx(166 * unit, abs=0.01)
    for which in ("present", "proposed"):
        assert places["front", which][0] == places["rear", which][0]
        # A cell of 170 units with 62 above and 104 beneath.
        assert places["rear", which][1] - places["front", which][1] == pytest.approx(336 * unit, abs=0.01)
        labels = [each for each in sheet.words if each.text == which and "soft" in each.style]
        middles = [0.5 * (each.box.left + each.box.right) for each in labels]
        assert middles == [pytest.approx(places[axle, which][0], abs=0.01) for axle in ("front", "rear")]
        for each, axle in zip(labels, ("front", "rear"), strict=True):
            high = min(y for _, y in sheet.named(f"{axle}-{which}-high").points)
            assert each.box.bottom < high


def test_load_and_pressure_are_those_of_one_tyre_at_kerb_load(found, patches):
    sheet = Sheet(patches)
    held = [each.text for each in sheet.words if each.text.startswith("at ")]
    car = found.car
    expected = []
    for view in (car.front, car.rear):
        for wheel in (view.now, view.then):
            load = view.axle.estimate_mass_kg / 2
            expected.append(f"at {wheel.behaviour.pressure_kpa:.0f} kPa and {load:.0f} kg")
    assert held == expected


@pytest.mark.parametrize("axle", ["both", "front", "rear"])
def test_the_legend_stands_beneath_the_last_patch(found, axle):
    """Half of a cell of 170 units, 104 for words beneath it, and 18 to the first line of the legend."""
    drawing = fromstring(draw_patches(found, axle))
    sheet = Sheet(drawing)
    ids = [each.get("id", "") for each in drawing.iter()]
    last = max(centre(drawing, name)[1] for name in ids if name.endswith("-patch"))
    _, y, _, _ = ends(drawing, "patches-scale-bar")
    # The scale bar may stand on a line of its own.
    assert (y - last) / sheet.unit == pytest.approx(85 + 104 + 18 + (26 if axle != "both" else 0), abs=0.1)


def test_who_does_not_see_a_patch_is_told_its_width_its_length_and_its_area(patches):
    told = patches.findtext(f"{SVG}desc")
    for axle in ("Front axle", "Rear axle"):
        for which in ("present", "proposed"):
            assert re.search(rf"{axle}: {which}, width \d+ mm \(.*?\), length \d+ mm \(.*?\), area \d+ cm²", told)
    assert "not known" not in told
