"""Rim designations, one writing at a time: what is read, what is refused and where.

Both orders and the hump codes have their sources in tests/reference/test_designation_examples.py; the other writings
are common practice, no source.
"""

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.rim import MAX_LENGTH, parse_rim

CANONICAL = [
    ("8J x 18 ET45", "8J x 18 ET45"),
    ("8jx18et45", "8J x 18 ET45"),
    ("18 x 8 J", "8J x 18"),
    ("8.5Jx19 H2 ET38", "8.5J x 19 H2 ET38"),
    ("8.5Jx19 ET38 H2", "8.5J x 19 H2 ET38"),
    ("6 1/2 J x 16", "6.5J x 16"),
    ("6-1/2 J x 16", "6.5J x 16"),
    ("6 1\u20442 J x 16", "6.5J x 16"),
    ("6\u00bd J \u00d7 16 H2 ET 45", "6.5J x 16 H2 ET45"),
    ("5 1/4 J x 14", "5.25J x 14"),
    ("5\u00bcJx14", "5.25J x 14"),
    ("5 3/4 J x 14", "5.75J x 14"),
    ("16 x 6 1/2 J", "6.5J x 16"),
    ("6,5J x 16", "6.5J x 16"),
    ("13 x 5.50 B", "5.5B x 13"),
    ("7.0JJx15", "7JJ x 15"),
    ("6JK-15", "6JK - 15"),
    ("6K x 15", "6K x 15"),
    ("4P x 13", "4P x 13"),
    ("5D x 14", "5D x 14"),
    ("22.5 x 8.25", "8.25 x 22.5"),
    ("8 x 18", "8 x 18"),
    ("18 x 8", "8 x 18"),
    ("6 x 14", "6 x 14"),
    ("11.75J x 12", "11.75J x 12"),
    ("16J x 16.5", "16J x 16.5"),
    ("3J x 8", "3J x 8"),
    ("16J x 30", "16J x 30"),
    ("7Jx16x50", "7J x 16 ET50"),
    ("7J x 16 +45", "7J x 16 ET45"),
    ("7J x 16 -45", "7J x 16 ET-45"),
    ("7 x 16 IS45", "7 x 16 ET45"),
    ("7Jx16 ET45 mm", "7J x 16 ET45"),
    ("6Jx15FHA", "6J x 15 FH"),
    ("6Jx15FH1-H", "6J x 15 CH"),
    ("11.75 x 22.5 ET190", "11.75 x 22.5 ET190"),
    ("16 x 5.50 F", "5.5F x 16"),
    ("15x6E ET45", "6E x 15 ET45"),
    ("15x6EH2", "6 x 15 EH2"),
    ("15x6FH2", "6 x 15 FH2"),
    ("8Jx18 ET+40", "8J x 18 ET40"),
    ("8Jx18 ET-12", "8J x 18 ET-12"),
    ("8Jx18 ET \u2212 12", "8J x 18 ET-12"),
    ("8Jx18 ET45,5", "8J x 18 ET45.5"),
    ("8Jx18 ET-0", "8J x 18 ET0"),
    ("8Jx18EH2+ET40", "8J x 18 EH2+ ET40"),
    ("6Jx15H", "6J x 15 H"),
    ("6Jx15FH", "6J x 15 FH"),
    ("6Jx15FH2", "6J x 15 FH2"),
    ("6Jx15CH", "6J x 15 CH"),
    ("6Jx15EH", "6J x 15 EH"),
    ("6Jx15EH2", "6J x 15 EH2"),
]


@pytest.mark.parametrize(("text", "canonical"), CANONICAL)
def test_each_writing_has_one_canonical_spelling(text, canonical):
    assert parse_rim(text).canonical == canonical


REFUSED = [
    ("", 0, "a rim width or a rim diameter code"),
    ("J", 0, "a rim width or a rim diameter code"),
    ("8J18", 2, "x, or -"),
    ("8 18", 2, "a flange letter, x, or -"),
    ("8Jx", 3, "a rim width or a rim diameter code"),
    ("8.3Jx18", 2, "whole, half or quarter"),
    ("8.125Jx18", 2, "whole, half or quarter"),
    ("6 1/3 Jx15", 2, "a flange letter, x, or -"),
    ("12 x 12", 5, "a number that differs"),
    ("8x18J", 4, "the flange letter after the width"),
    ("18Jx8", 2, "the flange letter after the width"),
    ("8Jx18J", 5, "one flange letter"),
    ("2.5Jx15", 0, "a rim width from 3 to 16 inches"),
    ("16.5Jx22", 0, "a rim width from 3 to 16 inches"),
    ("8Jx30.5", 3, "a rim diameter code from 8 to 30, whole"),
    ("4Jx7.5", 3, "a rim diameter code from 8 to 30, whole"),
    ("8Jx18.25", 3, "a rim diameter code"),
    ("8Jx180", 3, "a rim diameter code"),
    ("4Jx7", 3, "a rim diameter code"),
    ("8Jx18 ET", 8, "an offset from −190 to 190"),
    ("8Jx18 ET191", 8, "an offset"),
    ("8Jx18 ET  Q", 10, "an offset"),
    ("8Jx18 45", 6, "the end"),
    ("8Jx18-45", 5, "the end"),
    ("8Jx18x45x10", 8, "the end"),
    ("12J x 12", 0, "a rim width up to 11.75"),
    ("8Jx16 1/2", 3, "a rim diameter code"),
    ("8Jx18 ET45.555", 8, "an offset"),
    ("8Jx18 H2 H2", 9, "the end"),
    ("8Jx18 ET45 ET45", 11, "the end"),
    ("8Jx18 5x112", 6, "the end"),
    ("8Jx18 AH", 6, "the end"),
    ("8Jx18 TD", 6, "one flange letter"),
]


@pytest.mark.parametrize(("text", "position", "expected"), REFUSED)
def test_what_cannot_be_read_is_refused_at_its_place(text, position, expected):
    with pytest.raises(UnreadableDesignation) as caught:
        parse_rim(text)
    assert (caught.value.kind, caught.value.position) == ("rim", position)
    assert caught.value.expected.startswith(expected)


def test_a_text_over_the_limit_is_refused_at_the_limit():
    with pytest.raises(UnreadableDesignation) as caught:
        parse_rim("8" * (MAX_LENGTH + 1))
    assert caught.value.position == MAX_LENGTH


def test_width_diameter_and_offset_are_what_is_printed():
    rim = parse_rim("6\u00bd J x 16 H2 ET 45")
    assert (rim.width_in, rim.diameter_code, rim.offset_mm) == (6.5, 16.0, 45.0)


def test_an_offset_that_is_not_stated_is_not_zero():
    assert parse_rim("8J x 18").offset_mm is None


@pytest.mark.parametrize("flange", ["J", "JJ", "JK", "K", "B", "P", "D", "E", "F", "G", "S", "T", "V"])
def test_each_flange_letter_is_read_in_both_orders(flange):
    assert parse_rim(f"6{flange} x 15").flange == parse_rim(f"15 x 6{flange}").flange == flange


@pytest.mark.parametrize("hump", ["H", "H2", "FH", "FH2", "CH", "EH", "EH2", "EH2+"])
def test_each_hump_is_read_before_and_behind_the_offset(hump):
    assert parse_rim(f"6J x 15 {hump} ET40").hump == parse_rim(f"6Jx15ET40{hump}").hump == hump


@pytest.mark.parametrize(("sign", "one_piece"), [("x", True), ("\u00d7", True), ("-", False), ("\u2013", False)])
def test_a_dash_means_several_pieces(sign, one_piece):
    assert parse_rim(f"6J {sign} 15").one_piece is one_piece


def test_a_complete_designation_leaves_nothing_to_assume():
    assert parse_rim("18 x 8J H2").assumed == ()


def test_a_missing_hump_is_said():
    assert parse_rim("8J x 18").assumed == ("No hump is stated: the shape of the bead seat is not known.",)


@pytest.mark.parametrize("text", ["8 x 18 H2", "18 x 8 H2"])
def test_the_smaller_number_is_the_width_when_no_flange_letter_tells(text):
    rim = parse_rim(text)
    assert (rim.width_in, rim.diameter_code, rim.flange) == (8.0, 18.0, None)
    assert rim.assumed[0] == "The smaller number, 8, is read as the rim width."


@pytest.mark.parametrize("code", [17.5, 19.5, 22.5, 24.5])
def test_a_truck_rim_with_15_degree_seats_is_asked_for_no_hump_and_no_flange(code):
    rim = parse_rim(f"8.25 x {code}")
    assert (rim.is_fifteen_degree, rim.assumed) == (True, ())


def test_both_orders_make_the_same_rim():
    assert (parse_rim("18 x 8J"), hash(parse_rim("18 x 8J"))) == (parse_rim("8Jx18"), hash(parse_rim("8Jx18")))
