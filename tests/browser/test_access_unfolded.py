"""For everybody: the page with all that it can show, charts, found sizes, plots and drawings."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.examples import HATCHBACK, SALOON, Reader


def unfolded(visit, **options):
    """Return the page with two columns and everything open."""
    reader = Reader(visit(**options), HATCHBACK)
    page = reader.page
    with reader.asking():
        page.click("#add")
    page.evaluate("() => document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    page.wait_for_selector("#wheels-charts table")
    page.click("#search-form button")
    page.wait_for_selector("#search-rows li")
    for place in ("plots", "drawn"):
        page.locator(f"#{place}").scroll_into_view_if_needed()
        page.locator(f"#{place} figure img").first.wait_for()
    return page


def unknown(visit, **options):
    """Return the page with a question that an answer waits for."""
    reader = Reader(visit(**options), SALOON)
    reader.type(("/candidate/front/rim/size", "9J x 19 H2"), column=0)
    return reader.page


@pytest.mark.parametrize("state", [unfolded, unknown])
@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", DESKTOP)], ids=["phone", "dark desktop"])
def test_axe_core_finds_no_violation(visit, state, scheme, viewport):
    found = Axe().run(state(visit, color_scheme=scheme, viewport=viewport))
    assert found.violations_count == 0, found.generate_report()


def test_a_phone_shows_all_of_it_without_sideways_scrolling_and_large_enough_to_touch(visit):
    # 44 CSS pixels: WCAG 2.2, 2.5.5, target size (enhanced), from memory; links within a sentence are excepted.
    page = unfolded(visit, viewport=PHONE, has_touch=True)
    small = page.evaluate(
        """() => [...document.querySelectorAll("input, select, textarea, button:not(.link), summary, nav.bar a")]
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().width > 1)
          .filter((each) => Math.round(each.getBoundingClientRect().height) < 44)
          .map((each) => each.outerHTML.slice(0, 90))"""
    )
    assert small == []
    assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]


def test_the_answer_is_two_keys_away(visit):
    page = visit().open()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "answer"
