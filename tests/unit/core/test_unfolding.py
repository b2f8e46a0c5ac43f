"""A sentence as one template and what fills it.

Reference: the Python library reference, "Format String Syntax": braces hold names, doubled ones stand for themselves.
"""

from __future__ import annotations

import pytest

from service.core.saying import Amount, Said, capital, joined, listed, say, sentences
from service.core.unfolding import unfolded

CARRIED = Amount(1137.75, "kg")
WIDTHS = say("{low} to {high}", low=Amount(8.0), high=Amount(9.5, "in", 1))


def test_a_plain_sentence_is_its_template() -> None:
    said = say("The tyres carry {carried}.", carried=CARRIED)
    assert unfolded(said) == ("The tyres carry {carried}.", {"carried": "1138 kg"})


def test_a_clause_inside_is_unfolded_and_names_what_fills_it() -> None:
    template, filled = unfolded(
        say("The rim is {width} wide; the tyre takes {approved}.", width="8 in", approved=WIDTHS)
    )
    assert template == "The rim is {width} wide; the tyre takes {approved_low} to {approved_high}."
    assert filled == {"width": "8 in", "approved_low": "8", "approved_high": "9.5 in"}


def test_of_two_names_alike_the_second_is_numbered_whatever_they_hold() -> None:
    one, two = say("At {speed}.", speed="a"), say("Not at {speed}.", speed="a")
    assert unfolded(sentences(one, two)) == ("At {speed}. Not at {speed_2}.", {"speed": "a", "speed_2": "a"})


def test_a_name_that_comes_twice_in_one_sentence_is_one() -> None:
    assert unfolded(say("{axle} and {axle}", axle="front"))[1] == {"axle": "front"}


@pytest.mark.parametrize(
    "said",
    [
        sentences(say("One {a}.", a=CARRIED), "Two.", WIDTHS),
        joined(["a", say("b {c}", c="{d}"), "e"]),
        listed(["a", "b", say("{n} c", n=Amount(3.0))]),
        capital(say("air and {what}", what="water")),
        capital(say("{what} and air", what="water")),
        capital(WIDTHS),
        say("Given: {text}, {{so}}", text=capital("water")),
        Said("{curly}", {}),
        "plain {braces}",
    ],
    ids=str,
)
def test_the_template_with_what_fills_it_is_the_sentence(said: str) -> None:
    template, filled = unfolded(said)
    assert template.format_map(filled) == said
