"""What is noted of a tyre's numbers: those that cannot be, and those that no printed table stands behind.

225/45 R17 is 634 mm high and 225 mm wide (UN R30, 6.1.2) and rolls 3.05 x 634 = 1,934 mm; a tenth of the diameter and a
quarter of the width are too far off (the project's judgement). Rows without an aspect ratio: UN R30, annex 5, and
flotation sizes, both from memory.
"""

import pytest

from service.assessment.answer.dimensions_note import dimensions_note
from service.assessment.answer.unlikely import unlikely
from service.assessment.case import Measured, Tyre
from service.designation.tyre import parse_tyre


def tyre(size, **measured):
    """Return a tyre of this size of which this was measured."""
    return Tyre(parse_tyre(size), measured=Measured(**measured) if measured else None)


SIZE = "225/45 R17 94W"
SAID = "The {} of 225/45 R17 94W is given as {} mm, not some {} mm; one must be wrong."


# 634 x 0.9 and 1.1, 225 x 0.75 and 1.25, 1,933.7 x 0.9 and 1.1.
@pytest.mark.parametrize(
    ("field", "inside", "outside", "expected"),
    [
        ("overall_diameter_mm", 570.7, 570.5, 634),
        ("overall_diameter_mm", 697.3, 697.5, 634),
        ("section_width_mm", 168.8, 168.7, 225),
        ("section_width_mm", 281.2, 281.3, 225),
        ("rolling_circumference_mm", 1740.4, 1740.3, 1934),
        ("rolling_circumference_mm", 2127.0, 2127.1, 1934),
    ],
)
def test_a_number_is_told_of_from_a_tenth_of_the_diameter_and_a_quarter_of_the_width(field, inside, outside, expected):
    assert list(unlikely(tyre(SIZE, **{field: inside}))) == []
    name = field.removesuffix("_mm").replace("_", " ")
    assert list(unlikely(tyre(SIZE, **{field: outside}))) == [SAID.format(name, round(outside), expected)]


# Of the diameter that was measured: 3.05 x 690 = 2,104.5 mm; of a diagonal tyre 2.99 x 634 = 1,895.7 mm.
@pytest.mark.parametrize(
    ("size", "measured", "rolls", "is_told"),
    [
        (SIZE, {"overall_diameter_mm": 690}, 1895, False),
        (SIZE, {"overall_diameter_mm": 690}, 1893, True),
        ("225/45-17 94W", {}, 2085, False),
        ("225/45-17 94W", {}, 2086, True),
        ("200 R 17 94S", {}, 4000, False),
    ],
)
def test_what_a_tyre_rolls_is_held_against_its_own_diameter(size, measured, rolls, is_told):
    assert bool(list(unlikely(tyre(size, rolling_circumference_mm=rolls, **measured)))) == is_told


def test_of_a_tyre_of_which_nothing_was_measured_nothing_is_unlikely():
    assert list(unlikely(tyre(SIZE))) == []


BY_NAME = "The section width of {} is taken as {} mm by its name; the maker counts more."
TAKEN = "The overall diameter of {} is taken as {}; the maker's data count more."
BY_ROW = (
    "{} is taken as {} mm high and {} mm wide, from memory of a table of UN R30 ({} confidence); the maker's data "
    "count more."
)


@pytest.mark.parametrize(
    ("size", "measured", "note"),
    [
        (SIZE, {}, ""),
        (SIZE, {"overall_diameter_mm": 640}, ""),
        ("145 R 14 76S", {}, BY_ROW.format("145 R14 76S", 590, 147, "high")),
        ("125 R 13 65S", {}, BY_ROW.format("125 R13 65S", 536, 127, "medium")),
        ("5.60-13 82S", {}, BY_ROW.format("5.60-13 82S", 600, 145, "medium")),
        ("145 R 14 76S", {"overall_diameter_mm": 592}, ""),
        ("200 R 17 94S", {}, ""),
        ("200 R 17 94S", {"overall_diameter_mm": 700}, BY_NAME.format("200 R17 94S", 200)),
        ("200 R 17 94S", {"overall_diameter_mm": 700, "section_width_mm": 204}, ""),
        ("200 R 17 94S", {"section_width_mm": 204}, ""),
        (
            "31x10.50 R15LT 109Q",
            {},
            TAKEN.format("31x10.50 R15LT 109Q", "775 mm, from memory of a table"),
        ),
        # 32.5 x 25.4 mm.
        (
            "33x10.50 R15LT 114Q",
            {},
            TAKEN.format("33x10.50 R15LT 114Q", "826 mm, half an inch below its name"),
        ),
        ("33x10.50 R15LT 114Q", {"overall_diameter_mm": 820, "section_width_mm": 270}, ""),
        (
            "33x10.50 R15LT 114Q",
            {"overall_diameter_mm": 820},
            BY_NAME.format("33x10.50 R15LT 114Q", 267),
        ),
    ],
)
def test_dimensions_without_a_printed_table_are_noted(size, measured, note):
    assert dimensions_note(tyre(size, **measured)) == note
