"""Numbers that cannot be of the tyre are told of: 225/45 R17 is 634 mm high and 225 mm wide by its name.

Diameter: rim code 17 is 432 mm (ISO 4000-2), and two heights of 45 % of 225 mm. How far off is too far is the project's
judgement; within a tenth of the diameter and a quarter of the width nothing is said.
"""

from __future__ import annotations

import pytest

from tests.support.cases import changed, check, saloon
from tests.support.wire import check as asked_over_http


def told(changes):
    return [each for each in asked_over_http(changed(saloon(), changes))["assumptions"] if "must be wrong" in each]


@pytest.mark.parametrize(
    ("field", "value", "expected"),
    [
        ("overall_diameter_mm", 1200, "634 mm"),
        ("overall_diameter_mm", 250, "634 mm"),
        ("section_width_mm", 60, "225 mm"),
        ("section_width_mm", 329, "225 mm"),
        # Of a radial tyre some 3.05 overall diameters (a handbook, read).
        ("rolling_circumference_mm", 4000, "1934 mm"),
    ],
)
@pytest.mark.parametrize("place", ["/candidate/front/tyre", "/vehicle/front/fitted/tyre"])
def test_a_number_that_is_far_from_the_size_is_told_of(place, field, value, expected):
    (sentence,) = told({f"{place}/{field}": value})
    assert sentence.startswith("Front: ")
    assert f"{value} mm" in sentence
    assert expected in sentence


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("overall_diameter_mm", 640),
        ("section_width_mm", 232),
        ("section_width_mm", 200),
        ("rolling_circumference_mm", 1900),
    ],
)
def test_what_makes_of_a_size_differ_by_is_not_told_of(field, value):
    assert told({f"/candidate/front/tyre/{field}": value}) == []


def test_of_a_size_that_tells_no_dimensions_nothing_is_expected():
    strange = {"/candidate/front/tyre/size": "155 R17 78S", "/candidate/front/tyre/overall_diameter_mm": 900}
    assert not any("must be wrong" in each for each in check(changed(saloon(), strange)).assumptions)
