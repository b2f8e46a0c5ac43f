"""Bolt circles, one writing at a time; the writings are common practice, no source."""

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.bolt_circle import BoltCircle, parse_bolt_circle
from service.designation.rim import RimDesignation
from service.designation.service_description import ServiceDescription
from service.designation.tyre import TyreDesignation
from tests.support.unchanging import takes_another_field, takes_another_value


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
        ("112x5", "5x112"),
        ("114,3 x 5", "5x114.3"),
        ('5 x 4.5"', "5x114.3"),
        ("5 x 4.5 in", "5x114.3"),
        ("5 x 4 1/2\u2033", "5x114.3"),
        ('5\u00d74\u00bd"', "5x114.3"),
        ('5x4.75"', "5x120.65"),
        ('6 x 5.5"', "6x139.7"),
        ("8x6.5''", "8x165.1"),
        ('4.5" x 5', "5x114.3"),
        ('5x5"', "5x127"),
    ],
)
def test_each_writing_has_one_canonical_spelling(text, canonical):
    assert parse_bolt_circle(text).canonical == canonical


@pytest.mark.parametrize(
    ("text", "position"),
    [
        ("", 0),
        ("112x11", 4),
        ("112", 3),
        # The smallest circle is one of 80 mm: what is less can only be a number of bolts.
        ("80", 2),
        ("79", 0),
        ("12x112", 0),
        ('5x14"', 2),
        ('5x4.5" inch', 7),
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


@pytest.mark.parametrize(("inches", "diameter_mm"), [("4 1/4", 108.0), ("3.94", 100.0), ("4.75", 120.65), ("5", 127.0)])
def test_inches_that_name_a_metric_circle_are_that_circle(inches, diameter_mm):
    # 1 inch = 25.4 mm exactly; that 4 1/4 inches stands for 108 mm is common practice, no source.
    assert parse_bolt_circle(f'4 x {inches}"').diameter_mm == diameter_mm


def test_a_look_alike_is_named_at_its_place():
    with pytest.raises(UnreadableDesignation, match=r"digit 1.*Did you mean 5x112") as caught:
        parse_bolt_circle("5xl12")
    assert caught.value.position == 2


@pytest.mark.parametrize("kind", [BoltCircle, RimDesignation, ServiceDescription, TyreDesignation])
def test_what_was_read_neither_changes_nor_grows(kind):
    """An assessment and its answer share it."""
    assert not takes_another_value(kind)
    assert not takes_another_field(kind)
