"""The last size on either side of each bound: it is read, the next one is refused with the bound in the sentence.

The bounds are those of the sentences that callers read; which sizes exist is common practice, from memory.
"""

import re

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN, parse_bolt_circle
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.tyre import TYRE_PATTERN, parse_tyre

PUBLISHED = {parse_tyre: TYRE_PATTERN, parse_rim: RIM_PATTERN, parse_bolt_circle: BOLT_CIRCLE_PATTERN}

READ = [
    (parse_tyre, "65/55 R16", "65/55 R16"),
    (parse_tyre, "495/55 R16", "495/55 R16"),
    (parse_tyre, "205/15 R16", "205/15 R16"),
    (parse_tyre, "260/29 R18", "260/29 R18"),
    (parse_tyre, "205/100 R16", "205/100 R16"),
    (parse_tyre, "205/55 R8", "205/55 R8"),
    (parse_tyre, "205/55 R30", "205/55 R30"),
    (parse_tyre, "205/55 R16 0V", "205/55 R16 0V"),
    (parse_tyre, "205/55 R16 279V", "205/55 R16 279V"),
    (parse_tyre, "24x4.00 R20", "24x4.00 R20"),
    (parse_tyre, "29x10.50 R20", "29x10.50 R20"),
    (parse_tyre, "30x10.50 R26", "30x10.50 R26"),
    (parse_tyre, "33x10.50 R26", "33x10.50 R26"),
    (parse_tyre, "34x10.50 R30", "34x10.50 R30"),
    (parse_tyre, "54x19.50 R30", "54x19.50 R30"),
    # Without decimals a width may be a quad's: LT that touches the code tells it from one.
    (parse_tyre, "31x10R15LT", "31x10.00 R15LT"),
    # LT may stand by itself, as the decimals rule a quad out.
    (parse_tyre, "31x10.50 R15 109S LT", "31x10.50 R15LT 109S"),
    (parse_tyre, "4.00-8", "4.00-8"),
    (parse_tyre, "16.5-16", "16.50-16"),
    (parse_rim, "3J x 13", "3J x 13"),
    (parse_rim, "3J x 8", "3J x 8"),
    (parse_rim, "7.75J x 8", "7.75J x 8"),
    (parse_rim, "16J x 30", "16J x 30"),
    (parse_rim, "7J x 16 ET190", "7J x 16 ET190"),
    (parse_rim, "7J x 16 ET-190", "7J x 16 ET-190"),
    (parse_bolt_circle, "3x112", "3x112"),
    (parse_bolt_circle, "10x112", "10x112"),
    (parse_bolt_circle, "5x80", "5x80"),
    (parse_bolt_circle, "5x340", "5x340"),
]
REFUSED = [
    (parse_tyre, "55/55 R16", "from 60 to 500 mm"),
    (parse_tyre, "505/55 R16", "from 60 to 500 mm"),
    (parse_tyre, "205/14 R16", "from 15 to 100 per cent"),
    (parse_tyre, "205/101 R16", "from 15 to 100 per cent"),
    (parse_tyre, "205/55 R7", "from 8 to 30"),
    (parse_tyre, "205/55 R16 280V", "from 0 to 279"),
    (parse_tyre, "55x10.50 R15", "from 24 to 54 inches"),
    (parse_tyre, "31x3.50 R15", "from 4 to 20 inches"),
    (parse_tyre, "31x20.50 R15", "from 4 to 20 inches"),
    (parse_tyre, "29x10.50 R21", "at most 20,"),
    (parse_tyre, "33x10.50 R27", "at most 26,"),
    (parse_tyre, "31x10R15 LT", "with its decimals"),
    (parse_tyre, "34x10R28", "with its decimals"),
    (parse_tyre, "260/30 R18", "a tyre of a car,"),
    (parse_tyre, "17.5-16", "from 4 to 17 inches"),
    (parse_tyre, "17-16", "from 60 to 500 mm, or"),
    (parse_rim, "2.75J x 13", "from 3 to 16 inches"),
    (parse_rim, "16.25J x 18", "from 3 to 16 inches"),
    (parse_rim, "7J x 16 ET191", "from −190 to 190 mm"),
    (parse_rim, "3J x 7.5", "from 8 to 30,"),
    (parse_rim, "16J x 30.5", "from 8 to 30,"),
    (parse_rim, "8J x 8", "up to 7.75 inches"),
    (parse_rim, "12J x 12", "up to 11.75 inches"),
    (parse_rim, "16J x 16", "up to 15.75 inches"),
    (parse_bolt_circle, "2x112", "3 to 10"),
    (parse_bolt_circle, "112x11", "3 to 10"),
    (parse_bolt_circle, "5x79.9", "from 80 to 340 mm"),
    (parse_bolt_circle, "5x340.1", "from 80 to 340 mm"),
]


@pytest.mark.parametrize(("read", "text", "canonical"), READ)
def test_the_last_size_inside_a_bound_is_read(read, text, canonical):
    assert read(text).canonical == canonical
    assert re.fullmatch(PUBLISHED[read], text)


@pytest.mark.parametrize(("read", "text", "bound"), REFUSED)
def test_the_first_size_outside_is_refused_with_the_bound(read, text, bound):
    with pytest.raises(UnreadableDesignation) as caught:
        read(text)
    assert bound in caught.value.expected
    assert not re.fullmatch(PUBLISHED[read], text)


# Millimetres by 25.4, to three decimals: each is within 0.1 mm of the circle, and the second of a pair is not.
@pytest.mark.parametrize(
    ("inches", "diameter_mm"),
    [
        ("3.858", 98.0),
        ("3.937", 100.0),
        ("4.134", 105.0),
        ("4.252", 108.0),
        ("4.331", 110.0),
        ("4.409", 112.0),
        ("4.498", 114.3),
        ("4.500", 114.3),
        ("4.528", 115.0),
        ("4.646", 118.0),
        ("4.724", 120.0),
        ("4.720", 119.89),
        ("5.118", 130.0),
        ("5.123", 130.12),
        ("5.498", 139.7),
        ("5.500", 139.7),
    ],
)
def test_a_circle_in_inches_is_the_metric_one_within_a_tenth_of_a_millimetre(inches, diameter_mm):
    assert parse_bolt_circle(f'5 x {inches}"').diameter_mm == diameter_mm


# 25.4 mm to the inch: a quarter is 6.35 mm, a half 12.7 mm, three quarters 19.05 mm.
@pytest.mark.parametrize(
    ("inches", "diameter_mm"),
    [
        ("5 1/4", 133.35),
        ("5\u00bc", 133.35),
        ("6 1/2", 165.1),
        ("6\u00bd", 165.1),
        ("4 3/4", 120.65),
        ("4\u00be", 120.65),
    ],
)
def test_a_fraction_of_an_inch_counts_exactly(inches, diameter_mm):
    assert parse_bolt_circle(f'5 x {inches}"').diameter_mm == diameter_mm
