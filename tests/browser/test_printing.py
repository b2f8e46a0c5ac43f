"""The report on paper: two pages, A4 or Letter, with everything inside the margins."""

import io
import json
from pathlib import Path

import pytest
from pypdf import PdfReader

ROOT = Path(__file__).parents[2]
STORY = json.loads((ROOT / "demo_requests" / "staggered-one-step-wider.check.json").read_text(encoding="utf-8"))
# Width and height in points: ISO 216 and ANSI/ASME Y14.1, from memory.
PAPERS = {"A4": (595, 842), "Letter": (612, 792)}


@pytest.fixture(params=sorted(PAPERS))
def paper(request):
    return request.param


@pytest.fixture
def printed(visit, paper):
    seen = visit()
    answer = seen.context.request.post(f"{seen.address}/v1/fitments/report", data=STORY)
    seen.page.set_content(answer.text())
    return PdfReader(io.BytesIO(seen.page.pdf(format=paper, print_background=True)))


def test_it_takes_two_pages(printed):
    assert len(printed.pages) == 2


def test_its_pages_have_the_size_of_the_paper(printed, paper):
    sizes = [(page.mediabox.width, page.mediabox.height) for page in printed.pages]
    assert sizes == [pytest.approx(PAPERS[paper], abs=1)] * 2


def test_verdict_and_pressures_stand_on_the_first_page(printed):
    words = " ".join(printed.pages[0].extract_text().split())
    assert "It fits, with conditions" in words
    assert "Set the front tyres to 250 kPa" in words


def test_cautions_and_edition_stand_on_the_last_page(printed):
    words = " ".join(printed.pages[-1].extract_text().split())
    assert "does not replace a trial fit" in words
    assert "edition 2026-11" in words


def test_pages_are_numbered(printed):
    assert [f"{number} of 2" in page.extract_text() for number, page in enumerate(printed.pages, 1)] == [True, True]


def test_nothing_is_wider_than_the_paper(visit):
    seen = visit(viewport={"width": 700, "height": 1000})
    answer = seen.context.request.post(f"{seen.address}/v1/fitments/report", data=STORY)
    seen.page.set_content(answer.text())
    seen.page.emulate_media(media="print")
    # 188 mm between the margins of A4, at the 96 pixels per inch of CSS.
    assert seen.page.evaluate("document.documentElement.scrollWidth") <= 710
