"""The report on paper, A4 or Letter: one page where the answer is short, legible words, no heading left alone."""

import io
import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.support.cases import saloon

ROOT = Path(__file__).parents[2]


def story(name):
    return json.loads((ROOT / "demo_requests" / f"{name}.check.json").read_text(encoding="utf-8"))


STORY = story("staggered-one-step-wider")
ANSWERS = {
    "same again": story("staggered-same-sizes"),
    "wider": STORY,
    "unsuitable": saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38")),
    "van": story("twin-wheel-van"),
}
# Width and height in points: ISO 216 and ANSI/ASME Y14.1, from memory.
PAPERS = {"A4": (595, 842), "Letter": (612, 792)}
# Between the margins, in pixels of CSS (96 to the inch): the sides leave 22 mm.
COLUMNS = {"A4": 710, "Letter": 733}
# The least size in which a drawing's words are read without a glass: common practice, no source.
LEAST_POINTS = 7.0
LANGUAGES = [("en", "metric"), ("en", "imperial"), *((each, "metric") for each in ("de", "fr", "es", "nl"))]


@pytest.fixture
def opened(visit):
    """Return the report on a question as it stands in the browser."""
    seen = visit()

    def open_it(question, language="en", units="metric"):
        body = {**question, "language": language, "units": units}
        answer = seen.context.request.post(f"{seen.address}/v1/fitments/report", data=body)
        assert answer.status == 200
        seen.page.set_content(answer.text())
        return seen.page

    return open_it


def on_paper(page, paper):
    return PdfReader(io.BytesIO(page.pdf(format=paper)))


def words_of(page):
    return " ".join(page.extract_text().split())


@pytest.fixture(params=sorted(PAPERS))
def paper(request):
    return request.param


@pytest.fixture
def printed(opened, paper):
    return on_paper(opened(STORY), paper)


def test_a_long_answer_takes_four_pages(printed):
    # Two of words, one for each drawing at the width of the paper.
    assert len(printed.pages) == 4


@pytest.mark.parametrize(("language", "units"), LANGUAGES)
def test_a_short_answer_takes_one_page(opened, paper, language, units):
    assert len(on_paper(opened(ANSWERS["same again"], language, units), paper).pages) == 1


def test_what_is_unfolded_on_the_screen_is_printed(opened, paper):
    page = opened(ANSWERS["same again"])
    assert "Contact patch of one tyre" not in words_of(on_paper(page, paper).pages[0])
    page.click("details.drawings > summary")
    printed = on_paper(page, paper)
    assert len(printed.pages) > 1
    assert any("Contact patch of one tyre" in words_of(each) for each in printed.pages)


def test_its_pages_have_the_size_of_the_paper(printed, paper):
    sizes = [(page.mediabox.width, page.mediabox.height) for page in printed.pages]
    assert sizes == [pytest.approx(PAPERS[paper], abs=1)] * len(sizes)


def test_verdict_jobs_and_reasons_stand_on_the_first_page(printed):
    words = words_of(printed.pages[0])
    places = [
        words.index(each)
        for each in ("It fits, with conditions", "Set the front tyres to 250 kPa", "Signature", "Needs attention")
    ]
    assert places == sorted(places)


def test_cautions_and_edition_stand_on_the_last_page(printed):
    words = words_of(printed.pages[-1])
    assert "does not replace a trial fit" in words
    assert "edition 2026-11" in words


def test_pages_are_numbered(printed):
    count = len(printed.pages)
    assert all(f"{number} of {count}" in page.extract_text() for number, page in enumerate(printed.pages, 1))


HEADINGS = "h1,h2,h3,caption,thead th"


def lowest_line(page):
    """Return the words of the lowest line of a page above the margin with its number, and each piece of it."""
    lines: dict[float, list[str]] = {}

    def note(text, at, matrix, *_more):
        if text.strip():
            height = round(matrix[4] * at[1] + matrix[5] * at[3] + at[5])
            lines.setdefault(height, []).append(" ".join(text.split()))

    page.extract_text(visitor_text=note)
    # The bottom margin is 10 mm, 28 points.
    pieces = lines[min(height for height in lines if height > 29)]
    return {" ".join(pieces), *pieces}


@pytest.mark.parametrize(
    ("answer", "language"), [("unsuitable", "en"), ("wider", "en"), ("wider", "de"), ("van", "en")]
)
def test_no_heading_is_the_last_line_of_a_page(opened, paper, answer, language):
    page = opened(ANSWERS[answer], language)
    headings = {" ".join(each.split()) for each in page.locator(HEADINGS).all_inner_texts() if each.strip()}
    assert len(headings) > 10
    assert [each for page in on_paper(page, paper).pages for each in lowest_line(page) & headings] == []


def test_no_table_of_numbers_is_torn(opened, paper):
    printed = on_paper(opened(STORY), paper)
    (page,) = (each for each in printed.pages if "Before and after" in words_of(each))
    assert words_of(page).count("Load index (LI)") == words_of(page).count("Aquaplaning from") == 2
    assert "Speedometer at" in words_of(page)


@pytest.mark.parametrize("answer", ["unsuitable", "wider", "van"])
def test_the_words_of_a_drawing_can_be_read(opened, paper, answer):
    page = opened(ANSWERS[answer])
    page.set_viewport_size({"width": COLUMNS[paper], "height": 1000})
    page.emulate_media(media="print")
    small = page.evaluate(
        """(least) => [...document.querySelectorAll("figure svg text")]
          .map((each) => {
            const size = parseFloat(getComputedStyle(each).fontSize), place = each.ownerSVGElement.getScreenCTM();
            return [each.textContent, 0.75 * size * Math.hypot(place.a, place.b)];
          })
          .filter(([_, points]) => points < least)""",
        LEAST_POINTS,
    )
    assert page.locator("figure svg text").count() > 40
    assert small == []


def test_what_is_typed_and_ticked_on_the_screen_is_on_the_paper(opened, paper):
    page = opened(STORY)
    page.emulate_media(media="print")
    box = page.get_by_label("Set the front tyres to 250 kPa")
    empty = box.screenshot()
    box.check()
    assert box.screenshot() != empty
    page.get_by_label("Registration").fill("XA 1234")
    page.get_by_label("Torque (N m)").fill("120")
    words = words_of(on_paper(page, paper).pages[0])
    assert "XA 1234" in words
    assert "120" in words


def test_nothing_is_wider_than_the_paper(opened, paper):
    page = opened(STORY, "de")
    page.set_viewport_size({"width": COLUMNS[paper], "height": 1000})
    page.emulate_media(media="print")
    assert page.evaluate("document.documentElement.scrollWidth") <= COLUMNS[paper]
