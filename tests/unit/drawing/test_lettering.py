"""Words fit the room that they have: reckoned by hand from a character's mean width of 0.56 of its size."""

from __future__ import annotations

import pytest

from service.drawing.candidate_lines import CANDIDATE_LINES
from service.drawing.lettering import BOLD_WIDTH, clean, fitting, width_of, wrapped
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, stroke


@pytest.mark.parametrize(
    ("text", "room", "size", "fits"),
    [
        # Ten characters of 16 take 10 x 0.56 x 16 = 89.6.
        ("a" * 10, 89.6, 16.0, 16.0),
        ("a" * 10, 100.0, 16.0, 16.0),
        # 84 of 89.6 are 15 of 16.
        ("a" * 10, 84.0, 16.0, 15.0),
        # No smaller than 12, however long.
        ("a" * 10, 67.2, 16.0, 12.0),
        ("a" * 10, 10.0, 16.0, 12.0),
    ],
)
def test_words_are_set_as_large_as_fits_and_no_smaller_than_twelve(text, room, size, fits):
    assert fitting(text, room, size) == pytest.approx(fits)


def test_a_bold_character_is_wider():
    # 10 x 0.63 x 16.
    assert width_of("a" * 10, 16.0, BOLD_WIDTH) == pytest.approx(100.8)
    assert fitting("a" * 10, 94.5, 16.0, BOLD_WIDTH) == pytest.approx(15.0)


def test_a_line_has_as_many_characters_as_the_width_holds_and_no_fewer_than_twelve():
    # 20 characters of 10 take 112, 19 take 106.4.
    assert max(map(len, wrapped("a" * 90, 112.1, 10.0))) == 20
    assert max(map(len, wrapped("a" * 90, 111.9, 10.0))) == 19
    assert max(map(len, wrapped("a" * 30, 5.0, 10.0))) == 12


@pytest.mark.parametrize(
    ("given", "most", "shown"),
    [("abc", 3, "abc"), ("abcd", 3, "ab…"), ("ab cd", 4, "ab…"), ("  a \n b ", 9, "a b"), ("a\x00", 9, "a\ufffd")],
)
def test_a_text_is_cleaned_and_cut(given, most, shown):
    assert clean(given, most) == shown


def test_lines_of_candidates_are_narrow_and_those_of_the_standard():
    """ISO 128-2, table 1 (from memory): dash 12 line widths, long dash 24, short 6, gap 3, dot 0.5, spaced gap 18."""
    dashes = {
        "01.1": (),
        "02.1": (12, 3),
        "03.1": (12, 18),
        "04.1": (24, 3, 0.5, 3),
        "06.1": (24, 3, 0.5, 3, 0.5, 3, 0.5, 3),
        "07.1": (0.5, 3),
        "08.1": (24, 3, 6, 3),
        "09.1": (24, 3, 6, 3, 6, 3),
        "10.1": (12, 3, 0.5, 3),
        "11.1": (12, 3, 12, 3, 0.5, 3),
        "12.1": (12, 3, 0.5, 3, 0.5, 3),
        "14.1": (12, 3, 0.5, 3, 0.5, 3, 0.5, 3),
    }
    assert {each.number: each.dashes for each in CANDIDATE_LINES} == dashes
    assert not any(each.wide for each in CANDIDATE_LINES)
    assert (WIDE.wide, NARROW.wide, CHAIN.wide, PHANTOM.wide) == (True, False, False, False)
    # 04.1 and 05.1: one dot, two dots.
    assert (CHAIN.dashes, PHANTOM.dashes) == ((24, 3, 0.5, 3), (24, 3, 0.5, 3, 0.5, 3))


def test_wide_lines_are_twice_as_wide_as_narrow_ones_of_a_quarter_millimetre():
    """ISO 128-2 (from memory): 2 to 1. A unit is 0.2 mm of paper."""
    assert stroke(NARROW, 0.2)["stroke-width"] == "0.25"
    assert stroke(WIDE, 0.2)["stroke-width"] == "0.5"
    assert stroke(CHAIN, 0.2)["stroke-dasharray"] == "6 0.75 0.125 0.75"
