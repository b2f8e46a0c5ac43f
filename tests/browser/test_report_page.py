"""The report on a screen: by the rules of axe-core, on a phone, in every language."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import PHONE
from tests.browser.reports import ANSWERS, written


@pytest.fixture(scope="module")
def phone(lasting):
    """A phone, and the report on an answer on it."""
    seen = lasting(viewport=PHONE, has_touch=True, is_mobile=True)

    def show(answer, language="en"):
        seen.page.set_content(written(seen, ANSWERS[answer], language))
        return seen.page

    return show


@pytest.mark.parametrize("answer", ["same again", "unsuitable"])
def test_axe_core_finds_no_violation(visit, answer):
    """In light on a desktop and in dark on a phone."""
    seen = visit()
    page = seen.page
    page.emulate_media(color_scheme="light")
    page.set_content(written(seen, ANSWERS[answer]))
    found = [Axe().run(page)]
    page.set_viewport_size(PHONE)
    page.emulate_media(color_scheme="dark")
    found.append(Axe().run(page))
    assert [each.generate_report() for each in found if each.violations_count] == []


def test_a_phone_needs_no_sideways_scrolling_in_any_language(phone):
    for language in ("en", "de", "fr", "es", "nl"):
        page = phone("unsuitable", language)
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
        # The table of numbers does without its own, too.
        box = page.locator("section.numbers")
        assert box.evaluate("(each) => each.scrollWidth") <= box.evaluate("(each) => each.clientWidth")


def test_a_table_that_is_laid_out_anew_on_a_phone_is_still_one(phone):
    page = phone("wider")
    line = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="Overall diameter, new")).first
    assert line.get_by_role("cell").all_inner_texts() == ["663 mm", "661 mm", "−0.3 %", "± 1.5 %"]
    assert page.get_by_role("table").first.get_by_role("columnheader").count() == 5


def test_what_is_touched_on_a_phone_is_large_enough(phone):
    # WCAG 2.2, 2.5.5 (from memory): 44 by 44 CSS pixels.
    page = phone("wider")
    small = page.evaluate(
        """() => [...document.querySelectorAll("label, summary")].map((each) => each.getBoundingClientRect().height)
          .filter((height) => height < 44)"""
    )
    assert small == []
