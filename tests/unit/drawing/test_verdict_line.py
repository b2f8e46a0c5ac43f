"""A section that stands by itself carries the verdict; in a page, which says it above, it does not."""

import re

import pytest

from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.drawing.marks import MARKS
from service.drawing.section import draw_section
from tests.support.cases import changed, check, saloon

CASES = {
    "suitable": {},
    "suitable_with_conditions": {"/candidate/rear/rim/centre_bore_mm": 72.6},
    "undetermined": {"/candidate/rear/tyre/size": "225/45 R17"},
    "not_recommended": {"/candidate/front/tyre/size": "225/45 R17 94W XL 3PMSF"},
    "unsuitable": {"/candidate/rear/rim/bolt_circle": "4x100"},
}


@pytest.fixture(params=CASES)
def found(request):
    answer = check(changed(saloon(), CASES[request.param]))
    assert answer.verdict == request.param
    return answer


def test_the_verdict_stands_there_in_words_and_as_its_mark(found):
    drawing = draw_section(found)
    name = found.verdict.replace("_", "-")
    assert f'class="mark {name}"' in drawing
    assert MARKS[name].outline in drawing
    assert re.search(rf"<text[^>]*>{VERDICT_WORDS[found.verdict]}</text>", drawing)


def test_whoever_does_not_see_it_hears_the_verdict_first(found):
    assert re.search(rf"<desc[^>]*>{VERDICT_WORDS[found.verdict]}\. ", draw_section(found))


def test_in_a_page_it_is_not_said_again(found):
    drawing = draw_section(found, styled=False)
    assert 'class="mark' not in drawing
    assert f">{VERDICT_WORDS[found.verdict]}</text>" not in drawing


def test_how_many_findings_came_out_how_is_told():
    drawing = " ".join(
        re.findall(r"<text[^>]*>([^<]*)</text>", draw_section(check(changed(saloon(), CASES["unsuitable"]))))
    )
    assert "Speaks against it: 1" in drawing
