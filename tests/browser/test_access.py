"""For everybody: by keyboard alone, on a phone, and by the rules of axe-core."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.hands import PRESENT, Hands, field

THEN = "/candidate/front/tyre/size"


def violations(page, state):
    """Return what axe-core finds wrong, with the state of the page."""
    found = Axe().run(page)
    return [f"{state}: {found.generate_report()}"] if found.violations_count else []


def loaded(seen, example=0):
    """Open the page with an example, everything unfolded, and wait for the answer."""
    hands = Hands(seen.open())
    hands.page.evaluate("document.querySelector('#tools').open = true")
    hands.click(f"[data-example='{example}']")
    hands.answer()
    hands.click("#more")
    hands.click("details.more > summary")
    return hands


@pytest.mark.parametrize(("viewport", "scheme"), [(DESKTOP, "light"), (PHONE, "dark"), (PHONE, "light")])
def test_axe_core_finds_no_violation_in_any_state(visit, viewport, scheme):
    seen = visit(color_scheme=scheme, viewport=viewport)
    found = violations(seen.open(), "empty")
    hands = loaded(seen)
    page = hands.page
    found += violations(page, "answered")
    for size in ("255/40 R19 100Y XL", "265/35 R19 98Y XL"):
        hands.click("#add")
        hands.type(size)
    hands.answer()
    found += violations(page, "three candidates")
    page.fill(field(THEN, 2), "265/3S R19")
    page.keyboard.press("Tab")
    page.wait_for_selector("#question [aria-invalid]")
    found += violations(page, "fault")
    assert found == []


def tab_to(page, wanted, most=120):
    """Press Tab until the element that a condition names has the focus."""
    for _ in range(most):
        if page.evaluate(f"((stop) => {wanted})(document.activeElement)"):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"no way by keyboard to {wanted}")


def test_a_question_is_asked_and_its_report_opened_by_keyboard_alone(visit):
    seen = visit()
    hands = Hands(seen.open())
    page = hands.page
    tab_to(page, f"stop.dataset.pointer === '{PRESENT}/tyre/size'")
    hands.type("205/55 R16 91V 6.5J x 16 ET50")
    tab_to(page, f"stop.dataset.pointer === '{THEN}'")
    hands.type("215/55 R16 93V")
    hands.answer()
    tab_to(page, "stop.id === 'report'")
    with seen.context.expect_page() as opened:
        page.keyboard.press("Enter")
    opened.value.wait_for_selector("svg")
    assert opened.value.locator("text=215/55 R16 93V").count() > 0


def test_every_stop_of_the_keyboard_shows_where_it_is_and_nothing_covers_it(visit):
    page = loaded(visit(viewport=PHONE)).page
    page.evaluate("document.activeElement.blur(); scrollTo(0, 0)")
    wrong = []
    for _ in range(60):
        page.keyboard.press("Tab")
        wrong += page.evaluate(
            """() => {
              const stop = document.activeElement;
              if (stop === document.body) return [];
              const marked = [stop, stop.closest("td, .cell")].filter(Boolean);
              const seen = marked.some((each) => parseFloat(getComputedStyle(each).outlineWidth) >= 3
                && getComputedStyle(each).outlineStyle !== "none");
              const box = stop.getBoundingClientRect();
              const bar = document.querySelector(".bar")?.getBoundingClientRect();
              const covered = bar && bar.height && !stop.closest(".bar") && box.height < 200
                && box.bottom > bar.top + 1 && box.top < bar.bottom;
              return seen && !covered ? [] : [`${seen ? "covered" : "unmarked"}: ${stop.outerHTML.slice(0, 80)}`];
            }"""
        )
    assert wrong == []


# At 200 % a window of 1280 pixels has room for 640 (WCAG 2.2, 1.4.10 asks down to 320, from memory).
@pytest.mark.parametrize("width", [320, 360, 640])
def test_no_width_needs_sideways_scrolling(visit, width):
    hands = loaded(visit(viewport={"width": width, "height": 740}))
    hands.page.fill(field("/candidate/rear/tyre/size", 0), "285/3O R19")
    hands.page.wait_for_timeout(600)
    assert hands.page.evaluate("document.documentElement.scrollWidth") <= width


def test_what_is_touched_on_a_phone_is_large_enough(visit):
    """WCAG 2.2, 2.5.5 (from memory): at least 44 by 44 CSS pixels; a link within a sentence is exempt."""
    page = loaded(visit(viewport=PHONE, has_touch=True, is_mobile=True)).page
    small = page.evaluate(
        """() => [...document.querySelectorAll("input, select, button:not(.link), summary, .languages a")]
          .filter((each) => each.checkVisibility() && !each.disabled)
          .map((each) => [each.id || each.className || each.textContent, each.getBoundingClientRect()])
          .filter(([, box]) => box.height < 44 || box.width < 44)
          .map(([name, box]) => `${name} ${box.width}x${box.height}`)"""
    )
    assert small == []


def test_text_in_a_field_is_large_enough_not_to_be_zoomed(visit):
    page = visit(viewport=PHONE).open()
    sizes = page.eval_on_selector_all(
        "input, select", "(all) => all.map((each) => parseFloat(getComputedStyle(each).fontSize))"
    )
    assert min(sizes) >= 16
