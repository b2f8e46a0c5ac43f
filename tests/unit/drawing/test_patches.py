"""The drawn patches are as long, as wide and as large as the assessment estimates, and so are their bands."""

from math import pi

import pytest

from service.assessment.view.estimates import wheel_estimates
from tests.unit.drawing.reading import SVG, element, length

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
