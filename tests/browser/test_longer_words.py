"""Drawing and report hold words that are 40 % longer than English, as a browser measures them.

German and French labels are up to that much longer than English: common practice, no source.
"""

import io

import pytest
from pypdf import PdfReader

from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from service.page.report import margins, render_report
from tests.support.cases import changed, check, saloon
from tests.support.pseudo import lengthened, longer, longer_answer

DRAWINGS = {"section": draw_section, "patches": draw_patches}
WIDER = saloon(("255/35 R19 96Y XL", "9J x 19 H2 ET45"), ("285/30 R19 98Y XL", "10J x 19 H2 ET42"))
NARROW = {
    "/candidate/front/tyre/size": "145/80 R13 75T",
    "/candidate/front/rim/size": "4J x 13 ET10",
    "/vehicle/front/fitted/tyre/size": "135/80 R13 70T",
}
ANSWERS = {
    "wider": check(WIDER),
    "narrow": check(changed(saloon(), NARROW)),
    "unknown": check(changed(saloon(), {"/candidate/front/tyre/size": "185 R16 88S"})),
}
SPEECHES = {"metric": lengthened(), "imperial": lengthened("imperial")}
# A page of A4 has 188 mm between the margins of the report, at the 96 pixels per inch of CSS.
PAPER_PIXELS = 710


@pytest.fixture(scope="module")
def page(lasting):
    return lasting().page


def texts(page):
    """Return which texts leave the sheet, and which pairs of texts lie over each other by more than half a line."""
    return page.evaluate(
        """() => {
          const sheet = document.querySelector("svg").getBoundingClientRect();
          const texts = [...document.querySelectorAll("text")];
          const all = texts.map((each) => [each.textContent, each.getBoundingClientRect()]);
          const outside = all.filter(([, box]) =>
            box.left < sheet.left || box.right > sheet.right || box.bottom > sheet.bottom);
          const over = [];
          all.forEach(([words, a], index) => all.slice(0, index).forEach(([others, b]) => {
            const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            const half = 0.5 * Math.min(a.width, a.height, b.width, b.height);
            if (across > half && down > half) over.push([others, words]);
          }));
          return { outside: outside.map(([words]) => words), over };
        }"""
    )


@pytest.mark.parametrize("axles", ["both", "front"])
@pytest.mark.parametrize("units", sorted(SPEECHES))
@pytest.mark.parametrize("answer", sorted(ANSWERS))
@pytest.mark.parametrize("view", sorted(DRAWINGS))
def test_longer_words_stay_on_the_sheet_and_off_each_other(page, view, answer, units, axles):
    page.set_content(DRAWINGS[view](ANSWERS[answer], axles, SPEECHES[units]))
    assert texts(page) == {"outside": [], "over": []}


@pytest.fixture(scope="module")
def report(lasting):
    page = lasting().page
    page.set_content(render_report(longer_answer(ANSWERS["wider"]), SPEECHES["metric"]))
    return page


def test_longer_words_need_no_sideways_scrolling_on_a_phone(report):
    report.emulate_media(media="screen")
    report.set_viewport_size({"width": 360, "height": 740})
    assert report.evaluate("document.documentElement.scrollWidth") == 360


def test_longer_words_stay_on_the_paper(report):
    report.set_viewport_size({"width": 700, "height": 1000})
    report.emulate_media(media="print")
    assert report.evaluate("document.documentElement.scrollWidth") <= PAPER_PIXELS


def test_longer_words_take_two_more_pages_at_most(report):
    assert len(PdfReader(io.BytesIO(report.pdf(format="A4"))).pages) <= 6


def test_the_margins_of_the_paper_speak_the_language(page):
    page.set_content(f"<style>@page{{margin:10mm}}{margins(SPEECHES['metric'].say)}</style><p>A page.</p>")
    printed = PdfReader(io.BytesIO(page.pdf(format="A4"))).pages[0].extract_text()
    assert longer("Fitment report") in printed
    assert longer("{page} of {pages}").format(page=1, pages=1) in printed
