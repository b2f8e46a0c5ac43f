"""For everybody: the page with all that it can show, charts, found sizes, plots and drawings."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.examples import HATCHBACK, SALOON, Reader


@pytest.fixture(scope="module")
def unfolded(lasting):
    """Return the page with two columns and everything open, on a light phone."""
    reader = Reader(lasting(viewport=PHONE, has_touch=True, color_scheme="light"), HATCHBACK)
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


@pytest.fixture(scope="module")
def unknown(lasting):
    """Return the page with a question that an answer waits for."""
    reader = Reader(lasting(viewport=PHONE, color_scheme="light"), SALOON)
    reader.type(("/candidate/front/rim/size", "9J x 19 H2"), column=0)
    return reader.page


@pytest.mark.parametrize("state", ["unfolded", "unknown"])
@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", DESKTOP)], ids=["phone", "dark desktop"])
def test_axe_core_finds_no_violation(request, state, scheme, viewport):
    page = request.getfixturevalue(state)
    page.set_viewport_size(viewport)
    page.emulate_media(color_scheme=scheme)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


def test_a_phone_shows_all_of_it_without_sideways_scrolling_and_large_enough_to_touch(unfolded):
    # 44 CSS pixels: WCAG 2.2, 2.5.5, target size (enhanced), from memory; links within a sentence are excepted.
    unfolded.set_viewport_size(PHONE)
    small = unfolded.evaluate(
        """() => [...document.querySelectorAll("input, select, textarea, button:not(.link), summary, nav.bar a")]
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().width > 1)
          .filter((each) => Math.round(each.getBoundingClientRect().height) < 44)
          .map((each) => each.outerHTML.slice(0, 90))"""
    )
    assert small == []
    assert unfolded.evaluate("document.documentElement.scrollWidth") == PHONE["width"]


def test_the_answer_is_two_keys_away(visit):
    page = visit().open()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "answer"
