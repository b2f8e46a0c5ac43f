"""The report on a screen: by the rules of axe-core, on a phone, in every language."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import PHONE
from tests.browser.reports import ANSWERS, written


@pytest.fixture
def opened(visit):
    """Return the report on an answer in a browser with these options."""

    def open_it(answer, **options):
        seen = visit(**options)
        seen.page.set_content(written(seen, ANSWERS[answer]))
        return seen.page

    return open_it


@pytest.mark.parametrize("answer", ["same again", "unsuitable"])
def test_axe_core_finds_no_violation(opened, answer):
    page = opened(answer, color_scheme="light")
    found = [Axe().run(page)]
    page.set_viewport_size(PHONE)
    page.emulate_media(color_scheme="dark")
    found.append(Axe().run(page))
    assert [each.generate_report() for each in found if each.violations_count] == []


def test_a_phone_needs_no_sideways_scrolling_in_any_language(visit):
    seen = visit(viewport=PHONE)
    page = seen.page
    for language in ("en", "de", "fr", "es", "nl"):
        page.set_content(written(seen, ANSWERS["unsuitable"], language))
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
        # The table of numbers does without its own, too.
        box = page.locator("section.numbers")
        assert box.evaluate("(each) => each.scrollWidth") <= box.evaluate("(each) => each.clientWidth")


def test_a_table_that_is_laid_out_anew_on_a_phone_is_still_one(opened):
    page = opened("wider", viewport=PHONE)
    line = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="Overall diameter, new")).first
    assert line.get_by_role("cell").all_inner_texts() == ["663 mm", "661 mm", "−0.3 %", "± 1.5 %"]
    assert page.get_by_role("table").first.get_by_role("columnheader").count() == 5


def test_what_is_touched_on_a_phone_is_large_enough(opened):
    # WCAG 2.2, 2.5.5 (from memory): 44 by 44 CSS pixels.
    page = opened("wider", viewport=PHONE, has_touch=True, is_mobile=True)
    small = page.evaluate(
        """() => [...document.querySelectorAll("label, summary")].map((each) => each.getBoundingClientRect().height)
          .filter((height) => height < 44)"""
    )
    assert small == []
