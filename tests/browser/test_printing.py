"""The report on paper, A4 or Letter: one page where the answer is short, legible words, no heading left alone."""

import pytest

from tests.browser.conftest import DESKTOP
from tests.browser.reports import ANSWERS, on_paper, pages_of, read, written

# Width and height in points: ISO 216 and ANSI/ASME Y14.1, from memory.
PAPERS = {"A4": (595, 842), "Letter": (612, 792)}
# Between the margins, in pixels of CSS (96 to the inch): the sides leave 22 mm.
COLUMNS = {"A4": 710, "Letter": 733}
# The least size in which a drawing's words are read without a glass: common practice, no source.
LEAST_POINTS = 7.0
LANGUAGES = [("en", "metric"), ("en", "imperial"), *((each, "metric") for each in ("de", "fr", "es", "nl"))]
HEADINGS = "h1,h2,h3,caption,thead th"


@pytest.fixture(scope="module")
def desk(lasting):
    """One tab of the browser, and the reports that were written so far."""
    return lasting(), {}


def laid_out(desk, answer, language="en", units="metric"):
    """Return the tab with the report on an answer in it, as it is on a screen."""
    seen, reports = desk
    key = answer, language, units
    if key not in reports:
        reports[key] = written(seen, ANSWERS[answer], language, units)
    seen.page.emulate_media(media="screen")
    seen.page.set_viewport_size(DESKTOP)
    seen.page.set_content(reports[key])
    # The printer's own rules hold on paper.
    seen.page.emulate_media(media="null")
    return seen.page


def headings_of(page):
    found = {" ".join(each.split()) for each in page.locator(HEADINGS).all_inner_texts() if each.strip()}
    assert len(found) > 10
    return found


@pytest.fixture(scope="module", params=sorted(PAPERS))
def paper(request):
    return request.param


@pytest.fixture(scope="module")
def headings(desk):
    return headings_of(laid_out(desk, "wider"))


@pytest.fixture(scope="module")
def printed(desk, paper):
    """The long answer, printed and read once for each paper."""
    return on_paper(laid_out(desk, "wider"), paper)


def test_a_long_answer_takes_four_pages(printed):
    # Two of words, one for each drawing at the width of the paper.
    assert len(printed) == 4


def test_its_pages_have_the_size_of_the_paper(printed, paper):
    assert [page.size for page in printed] == [pytest.approx(PAPERS[paper], abs=1)] * len(printed)


def test_verdict_jobs_and_reasons_stand_on_the_first_page(printed):
    words = printed[0].words
    places = [
        words.index(each)
        for each in ("It fits, with conditions", "Set the front tyres to 250 kPa", "Signature", "Needs attention")
    ]
    assert places == sorted(places)


def test_cautions_and_edition_stand_on_the_last_page(printed):
    assert "does not replace a trial fit" in printed[-1].words
    assert "edition 2026-11" in printed[-1].words


def test_pages_are_numbered(printed):
    assert all(f"{number} of {len(printed)}" in page.words for number, page in enumerate(printed, 1))


def test_no_table_of_numbers_is_torn(printed):
    (words,) = (each.words for each in printed if "Before and after" in each.words)
    assert words.count("Load index (LI)") == words.count("Aquaplaning from") == 2
    assert "Speedometer at" in words


def test_no_heading_is_the_last_line_of_a_page(printed, headings):
    assert [each for page in printed for each in page.lowest & headings] == []


@pytest.mark.parametrize(("answer", "language", "paper_of_it"), [("van", "en", "A4"), ("wider", "de", "Letter")])
def test_no_heading_of_another_report_is_either(desk, answer, language, paper_of_it):
    """Other words and other tables end their pages elsewhere; each is tried on one paper."""
    page = laid_out(desk, answer, language)
    found = headings_of(page)
    assert [each for sheet in on_paper(page, paper_of_it) for each in sheet.lowest & found] == []


@pytest.mark.parametrize(("language", "units"), LANGUAGES)
def test_a_short_answer_takes_one_page(desk, language, units):
    """On Letter, which is 18 mm shorter than A4: its 6 mm of width save less than that in any language."""
    assert len(pages_of(laid_out(desk, "same again", language, units), "Letter")) == 1


def test_what_is_unfolded_on_the_screen_is_printed(desk):
    page = laid_out(desk, "same again")
    (folded,) = on_paper(page, "A4")
    assert "Contact patch of one tyre" not in folded.words
    page.click("details.drawings > summary")
    unfolded = on_paper(page, "A4")
    assert len(unfolded) > 1
    assert any("Contact patch of one tyre" in each.words for each in unfolded)


@pytest.mark.parametrize("answer", ["unsuitable", "wider", "van"])
def test_the_words_of_a_drawing_can_be_read(desk, answer):
    page = laid_out(desk, answer)
    page.emulate_media(media="print")
    assert page.locator("figure svg text").count() > 40
    for paper, width in COLUMNS.items():
        page.set_viewport_size({"width": width, "height": 1000})
        small = page.evaluate(
            """(least) => [...document.querySelectorAll("figure svg text")]
              .map((each) => {
                const size = parseFloat(getComputedStyle(each).fontSize), place = each.ownerSVGElement.getScreenCTM();
                return [each.textContent, 0.75 * size * Math.hypot(place.a, place.b)];
              })
              .filter(([_, points]) => points < least)""",
            LEAST_POINTS,
        )
        assert small == [], paper


def test_what_is_typed_and_ticked_on_the_screen_is_on_the_paper(desk):
    page = laid_out(desk, "wider")
    page.emulate_media(media="print")
    box = page.get_by_label("Set the front tyres to 250 kPa")
    empty = box.screenshot()
    box.check()
    assert box.screenshot() != empty
    page.get_by_label("Registration").fill("XA 1234")
    page.get_by_label("Torque (N m)").fill("120")
    words = read(pages_of(page, "A4")[0]).words
    assert "XA 1234" in words
    assert "120" in words


def test_nothing_is_wider_than_the_paper(desk):
    page = laid_out(desk, "wider", "de")
    page.emulate_media(media="print")
    for width in COLUMNS.values():
        page.set_viewport_size({"width": width, "height": 1000})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
