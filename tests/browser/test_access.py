"""For everybody: by keyboard alone, on a phone, and by the rules of axe-core."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE

STATES = {
    "first answer": {},
    "faults": {"/candidate/rear/tyre/size": "285/3O R19", "/vehicle/max_speed_kmh": ""},
    "advised against": {"/candidate/front/tyre/size": "255/35 R19 96Y XL 3PMSF"},
    "not known yet": {"/candidate/front/rim/size": "9J x 19 H2"},
    "does not fit": {"/candidate/rear/tyre/size": "285/30 R19 80H"},
}


@pytest.mark.parametrize("state", sorted(STATES))
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("viewport", [DESKTOP, PHONE], ids=["desktop", "phone"])
def test_axe_core_finds_no_violation(visit, state, scheme, viewport):
    seen = visit(color_scheme=scheme, viewport=viewport)
    page = seen.open()
    page.click("details.more > summary")
    for pointer, text in STATES[state].items():
        seen.change(pointer, text)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("viewport", [DESKTOP, PHONE], ids=["desktop", "phone"])
def test_axe_core_finds_no_violation_in_the_report(visit, scheme, viewport):
    seen = visit(color_scheme=scheme, viewport=viewport)
    page = seen.open()
    with seen.context.expect_page() as opened:
        page.click("#report")
    opened.value.wait_for_selector("svg#patches")
    found = Axe().run(opened.value)
    assert found.violations_count == 0, found.generate_report()


def tab_to(page, pointer, most=40):
    """Press Tab until the field at a pointer has the focus."""
    for _ in range(most):
        if page.evaluate("document.activeElement.name") == pointer:
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"no way by keyboard to {pointer}")


def test_a_candidate_is_changed_and_its_report_opened_by_keyboard_alone(visit):
    seen = visit()
    page = seen.open()
    tab_to(page, "/candidate/rear/tyre/size")
    page.keyboard.press("Control+A")
    with page.expect_response(lambda response: response.url.endswith("/check")):
        page.keyboard.type("255/35 R19 96Y XL")
    seen.settled()
    for _ in range(80):
        if page.evaluate("document.activeElement.id") == "report":
            break
        page.keyboard.press("Tab")
    with seen.context.expect_page() as opened:
        page.keyboard.press("Enter")
    opened.value.wait_for_selector("svg#section")


def test_the_answer_is_two_keys_away(visit):
    page = visit().open()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "answer"


def test_every_stop_of_the_keyboard_shows_where_it_is(visit):
    page = visit().open()
    unmarked = []
    for _ in range(30):
        page.keyboard.press("Tab")
        unmarked += page.evaluate(
            """() => {
              const stop = document.activeElement;
              const marked = [stop, stop.closest(".cell")].filter(Boolean);
              const seen = marked.some((each) => parseFloat(getComputedStyle(each).outlineWidth) >= 3
                && getComputedStyle(each).outlineStyle !== "none");
              return seen || stop === document.body ? [] : [stop.outerHTML.slice(0, 80)];
            }"""
        )
    assert unmarked == []


def test_a_phone_needs_no_sideways_scrolling(visit):
    seen = visit(viewport=PHONE)
    page = seen.open()
    page.click("details.more > summary")
    seen.change("/candidate/rear/tyre/size", "285/3O R19")
    assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]


def test_on_a_phone_the_verdict_stays_in_sight_while_typing(visit):
    page = visit(viewport=PHONE).open()
    bar = page.locator("#bar-words")
    page.focus("[name='/candidate/front/tyre/size']")
    box = bar.bounding_box()
    assert bar.inner_text() == "It fits, with conditions"
    assert 0 <= box["y"] < PHONE["height"]


def test_what_is_touched_on_a_phone_is_large_enough(visit):
    # WCAG 2.2, 2.5.8 (from memory): at least 24 by 24 CSS pixels.
    page = visit(viewport=PHONE, has_touch=True).open()
    small = page.evaluate(
        """() => [...document.querySelectorAll("input, select, button, summary")]
          .filter((each) => each.checkVisibility())
          .map((each) => each.getBoundingClientRect())
          .filter((box) => box.width < 24 || box.height < 24).length"""
    )
    assert small == 0
