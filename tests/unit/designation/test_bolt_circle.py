"""Bolt circles, one writing at a time; the writings are common practice, no source."""

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.bolt_circle import parse_bolt_circle


@pytest.mark.parametrize(
    ("text", "canonical"),
    [
        ("5x112", "5x112"),
        ("5/112", "5x112"),
        ("5-112", "5x112"),
        ("5 \u2013 112", "5x112"),
        (" 5 X 112 ", "5x112"),
        ("5x114.3", "5x114.3"),
        ("5 \u00d7 114,3", "5x114.3"),
        ("5x114.30", "5x114.3"),
        ("6x139.7", "6x139.7"),
        ("3x80", "3x80"),
        ("10x335", "10x335"),
        ("4x100.0", "4x100"),
    ],
)
def test_each_writing_has_one_canonical_spelling(text, canonical):
    assert parse_bolt_circle(text).canonical == canonical


@pytest.mark.parametrize(
    ("text", "position"),
    [
        ("", 0),
        ("112x5", 0),
        ("2x112", 0),
        ("11x112", 0),
        ("05x112", 0),
        ("5", 1),
        ("5 112", 2),
        ("5x", 2),
        ("5x4.5", 2),
        ("5x79.9", 2),
        ("5x340.1", 2),
        ("5x114.333", 2),
        ("5x100/112", 5),
        ("5x112 mm", 6),
    ],
)
def test_what_cannot_be_read_is_refused_at_its_place(text, position):
    with pytest.raises(UnreadableDesignation) as caught:
        parse_bolt_circle(text)
    assert (caught.value.kind, caught.value.position) == ("bolt circle", position)


def test_bolts_and_diameter_are_what_is_printed():
    circle = parse_bolt_circle("5x114,3")
    assert (circle.bolts, circle.diameter_mm) == (5, 114.3)


def test_equal_circles_have_equal_hashes():
    assert hash(parse_bolt_circle("5x112")) == hash(parse_bolt_circle("5/112"))
