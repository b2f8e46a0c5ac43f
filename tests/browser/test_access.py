"""For everybody: by keyboard alone, on a phone, and by the rules of axe-core."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.examples import HATCHBACK, SALOON, Reader, focused

TYRE = "/candidate/rear/tyre/size"


def empty(visit, **options):
    """Return the page as a stranger finds it."""
    seen = visit(**options)
    seen.page.goto(f"{seen.address}/")
    return seen.page


def answered(visit, **options):
    return Reader(visit(**options), SALOON).page


def faulty(visit, **options):
    reader = Reader(visit(**options), SALOON)
    reader.type((TYRE, "285/3O R19"), column=0)
    return reader.page


def unknown(visit, **options):
    reader = Reader(visit(**options), SALOON)
    reader.type(("/candidate/front/rim/size", "9J x 19 H2"), column=0)
    return reader.page


def unfolded(visit, **options):
    """Return the page with two columns and all that it can show."""
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


STATES = {each.__name__: each for each in (empty, answered, faulty, unknown, unfolded)}


@pytest.mark.parametrize("state", sorted(STATES))
@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", DESKTOP)], ids=["phone", "dark desktop"])
def test_axe_core_finds_no_violation(visit, state, scheme, viewport):
    found = Axe().run(STATES[state](visit, color_scheme=scheme, viewport=viewport))
    assert found.violations_count == 0, found.generate_report()


def tab_until(page, script, most):
    """Press Tab until the script says that the focus is there."""
    for _ in range(most):
        if page.evaluate(script):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"no way by keyboard to where {script}")


def test_a_candidate_is_changed_and_its_report_opened_by_keyboard_alone(visit):
    seen = visit()
    reader = Reader(seen, SALOON)
    page = reader.page
    tab_until(page, f"document.activeElement.name === '{TYRE}'", 60)
    page.keyboard.press("Control+A")
    with reader.asking():
        page.keyboard.type("255/35 R19 96Y XL")
    tab_until(page, "document.activeElement.id === 'report'", 80)
    with seen.context.expect_page() as opened:
        page.keyboard.press("Enter")
    opened.value.wait_for_selector("svg#section")


def test_the_answer_is_two_keys_away(visit):
    page = empty(visit)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "answer"


def test_every_stop_of_the_keyboard_shows_where_it_is(visit):
    page = answered(visit)
    unmarked = []
    for _ in range(90):
        page.keyboard.press("Tab")
        unmarked += page.evaluate(
            """() => {
              const stop = document.activeElement;
              const marked = [stop, stop.closest("td, .cell")].filter(Boolean);
              const seen = marked.some((each) => parseFloat(getComputedStyle(each).outlineWidth) >= 3
                && getComputedStyle(each).outlineStyle !== "none");
              return seen || stop === document.body ? [] : [stop.outerHTML.slice(0, 80)];
            }"""
        )
    assert unmarked == []


def test_no_stop_of_the_keyboard_lies_beneath_the_bar_with_the_verdict(visit):
    page = answered(visit, viewport=PHONE)
    hidden = []
    for _ in range(60):
        page.keyboard.press("Tab")
        hidden += page.evaluate(
            """() => {
              const stop = document.activeElement;
              const bar = document.querySelector("nav.bar").getBoundingClientRect();
              const box = stop.getBoundingClientRect();
              const beneath = box.top >= bar.top && box.bottom <= bar.bottom && !stop.closest("nav.bar");
              return beneath ? [stop.outerHTML.slice(0, 80)] : [];
            }"""
        )
    assert hidden == []


@pytest.mark.parametrize("state", ["faulty", "unfolded"])
def test_a_phone_needs_no_sideways_scrolling(visit, state):
    page = STATES[state](visit, viewport=PHONE)
    assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]


def test_on_a_phone_the_verdict_stays_in_sight_while_typing(visit):
    page = answered(visit, viewport=PHONE)
    page.focus(f"[name='{TYRE}']")
    assert focused(page) == TYRE
    box = page.locator("#bar-words").bounding_box()
    assert page.inner_text("#bar-words") == "It fits, with conditions"
    assert 0 <= box["y"] < PHONE["height"]


def test_what_is_touched_on_a_phone_is_large_enough(visit):
    # 44 by 44 CSS pixels: WCAG 2.2, 2.5.5, target size (enhanced), from memory; links within a sentence are excepted.
    page = unfolded(visit, viewport=PHONE, has_touch=True)
    small = page.evaluate(
        """() => [...document.querySelectorAll("input, select, textarea, button:not(.link), summary, nav.bar a")]
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().width > 1)
          .filter((each) => Math.round(each.getBoundingClientRect().height) < 44)
          .map((each) => each.outerHTML.slice(0, 90))"""
    )
    assert small == []
