"""From the grammar of normalised text to a pattern that admits each way of writing it."""

import re

import pytest

from service.designation.published import published
from service.designation.text import CROSSES, DASHES, SPACES, normal


@pytest.mark.parametrize(
    ("grammar", "text", "admitted"),
    [
        ("R", "r", True),
        ("R", "P", False),
        ("[A-C]", "b", True),
        ("[A-C]", "d", False),
        ("A +B", "a\u00a0\u2009b", True),
        ("A +B", "ab", False),
        ("7[X\\-]9", "7\u00d79", True),
        ("7[X\\-]9", "7\u20139", True),
        (r"7\.5", "7,5", True),
        (r"7\.5", "715", False),
        ("5/6", "5\u20446", True),
        (r"\(A\)", "(a)", True),
        (r"[\u00c0-\u00d6]", "\u00c4", True),
        ("(?P<name>A)B", "ab", True),
        ("A{2}", "aa", True),
        ("A", " a\n", True),
    ],
)
def test_each_way_of_writing_is_admitted_and_nothing_else(grammar, text, admitted):
    assert bool(re.fullmatch(published(grammar), text)) == admitted


# Unicode's General Punctuation: U+2000 to U+200A are spaces, U+2010 to U+2015 dashes, each without a gap.
@pytest.mark.parametrize(("sign", "drawn_together"), [(" ", r"\u2000-\u200a"), ("-", r"\u2010-\u2015")])
def test_neighbours_are_published_as_one_range(sign, drawn_together):
    assert drawn_together in published(f"A{sign}A")


def test_no_group_has_a_name_in_what_is_published():
    assert "?P<" not in published("(?P<name>A)")


@pytest.mark.parametrize(
    ("sign", "written"), [(" ", SPACES), ("-", DASHES), ("X", CROSSES), (".", ".,"), ("/", "/\u2044")]
)
def test_what_the_pattern_admits_for_a_sign_is_what_the_reader_takes_for_it(sign, written):
    grammar = re.compile(published({".": r"A\.A"}.get(sign, f"A{sign}A")))
    every = [chr(code) for code in range(0x3100)]
    assert {each for each in every if normal(each) == sign} == set(written)
    assert {each for each in every if grammar.fullmatch(f"a{each}a")} == set(written)
