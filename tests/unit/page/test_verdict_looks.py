"""Verdicts and outcomes look different without their colours, read well with them, and say the same everywhere."""

import itertools
import json
import re

import pytest

from service.assessment.answer.verdict import VERDICTS
from service.assessment.answer.verdict_words import OUTCOME_WORDS, TODAY, VERDICT_WORDS
from service.drawing import paper
from service.drawing.marks import MARKS
from service.page import try_it
from service.page.rendering import asset

TONES = ("good", "care", "ask", "unwise", "bad")
STYLES = {
    "page": (asset("page.css"), "paper"),
    "report": (asset("report.css"), "page"),
    "drawing": (paper.STYLE, "paper"),
}
WORDS = dict(
    item
    for block in re.findall(r"<script type=\"application/json\" data-words>(.*?)</script>", try_it.page(), re.DOTALL)
    for item in json.loads(block).items()
)


def _schemes(style):
    """Return the colours by name of each rule that sets them all: light, dark, and print where there is one."""
    found = [dict(re.findall(r"--([a-z-]+):(#[0-9a-f]{3,6})", rule)) for rule in re.findall(r"\{(--?[^{}]*)\}", style)]
    found += [
        dict(re.findall(r"--([a-z-]+):(#[0-9a-f]{3,6})", rule)) for rule in re.findall(r"\{color-scheme[^{}]*\}", style)
    ]
    return [each for each in found if set(TONES) <= set(each)]


def _luminance(colour):
    """WCAG 2.2, relative luminance."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * each for each in colour[1:])
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    linear = [each / 12.92 if each <= 0.04045 else ((each + 0.055) / 1.055) ** 2.4 for each in parts]
    return sum(share * each for share, each in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def _contrast(one, other):
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("place", STYLES)
def test_every_tone_can_be_read_on_its_paper_in_light_and_dark(place):
    """WCAG 2.2, 1.4.3: 4.5 to 1 for text."""
    style, ground = STYLES[place]
    schemes = _schemes(style)
    assert len(schemes) >= 2
    weak = [
        (each[tone], each[ground]) for each in schemes for tone in TONES if _contrast(each[tone], each[ground]) < 4.5
    ]
    assert weak == []


@pytest.mark.parametrize("place", STYLES)
def test_every_verdict_has_a_tone_of_its_own(place):
    for scheme in _schemes(STYLES[place][0]):
        assert len({scheme[tone] for tone in TONES}) == len(TONES)


@pytest.mark.parametrize(
    "kinds", [[each.replace("_", "-") for each in VERDICTS], [each.name for each in OUTCOME_WORDS]]
)
def test_every_verdict_and_every_outcome_has_a_shape_of_its_own(kinds):
    for one, other in itertools.combinations(kinds, 2):
        assert MARKS[one].outline != MARKS[other].outline


def test_the_page_says_the_verdicts_in_the_words_of_the_report():
    assert {each: WORDS[f"answer.{each}"] for each in VERDICTS} == dict(VERDICT_WORDS)


def test_the_page_groups_the_findings_under_the_headings_of_the_report():
    titles = {each.name: each.title for each in OUTCOME_WORDS}
    # What is open and decides nothing stands with the questions: the same words, another key.
    keys = {name: "answer.optional" if name == "open" else f"answer.group_{name.replace('-', '_')}" for name in titles}
    assert {name: WORDS[key] for name, key in keys.items()} == titles
    assert WORDS["answer.today"] == TODAY


def test_every_verdict_has_words():
    assert set(VERDICT_WORDS) == set(VERDICTS)
