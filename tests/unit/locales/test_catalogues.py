"""The catalogues: complete, in step with the code, and with the same places to fill.

That a translation says the same is for people to judge; what a machine can see is held here.
"""

from __future__ import annotations

import re

import pytest

from service.locales.speech import LANGUAGES, catalogue
from tests.support.sentences import sentences

FOREIGN = LANGUAGES[1:]
PLACE = re.compile(r"\{(\w+)\}")
WANTED = {f"{each.context}|{each.id}" if each.context else each.id for each in sentences() if each.id}
# A text of a page or a drawing has room for this much more than the English one; short ones for more.
LONGER, LONGER_BY = 1.8, 30
# English words that no other of our languages has (Dutch has "of"): one left over is a sentence half translated.
ENGLISH = re.compile(r"\b(the|and|with|than|which|tyres?|wheels?|axle)\b", re.IGNORECASE)


@pytest.mark.parametrize("language", FOREIGN)
def test_every_sentence_has_a_translation_and_no_other_is_kept(language):
    assert set(catalogue(language)) == WANTED


@pytest.mark.parametrize("language", FOREIGN)
def test_a_translation_has_the_places_of_its_sentence(language):
    wrong = [
        (text, said)
        for text, said in catalogue(language).items()
        if sorted(PLACE.findall(text)) != sorted(PLACE.findall(said)) or said.count("{") != len(PLACE.findall(said))
    ]
    assert wrong == []


@pytest.mark.parametrize("language", FOREIGN)
def test_no_english_is_left_over(language):
    left = [(text, said) for text, said in catalogue(language).items() if ENGLISH.search(PLACE.sub("", said))]
    assert left == []


@pytest.mark.parametrize("language", FOREIGN)
def test_a_translation_fits_where_its_sentence_stands(language):
    long = [said for text, said in catalogue(language).items() if len(said) > LONGER * len(text) + LONGER_BY]
    assert long == []


@pytest.mark.parametrize("language", FOREIGN)
def test_a_sentence_ends_as_its_english_one(language):
    """A list, a heading and a sentence differ by their last sign: `:` for `.` would join what stands apart."""
    ends = [
        (text, said)
        for text, said in catalogue(language).items()
        if text[-1:] in ".:?!" and text[-1] != said.rstrip()[-1:]
    ]
    assert ends == []
