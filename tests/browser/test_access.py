"""For everybody: by keyboard alone, on a phone, and by the rules of axe-core."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.hands import PRESENT, Hands, field

THEN = "/candidate/front/tyre/size"


# What shows a verdict in its colour; and the one rule that depends on the scheme.
VERDICT = {"include": [["#verdict"], [".bar"], ["#table tbody tr:first-child"]]}
CONTRAST = {"runOnly": ["color-contrast"], "resultTypes": ["violations"]}
WHOLE = {"resultTypes": ["violations"]}


def violations(page, state, context=None, options=WHOLE):
    """Return what axe-core finds wrong, with the state of the page."""
    found = Axe().run(page, context, options)
    return [f"{state}: {found.generate_report()}"] if found.violations_count else []


def of_the_verdict(page, state):
    """Return what is wrong with the verdict in either scheme, on a phone in dark."""
    page.set_viewport_size(PHONE)
    page.emulate_media(color_scheme="dark")
    found = violations(page, f"{state} on a dark phone", VERDICT)
    page.set_viewport_size(DESKTOP)
    page.emulate_media(color_scheme="light")
    return found + violations(page, state, VERDICT)


def loaded(seen, example=0):
    """Open the page with an example, everything unfolded, and wait for the answer."""
    hands = Hands(seen.open())
    hands.page.evaluate("document.querySelector('#tools').open = true")
    hands.click(f"[data-example='{example}']")
    hands.answer()
    hands.click("#more")
    hands.click("details.more > summary")
    return hands


def test_axe_core_finds_no_violation_in_any_state(visit):
    """The empty page and three candidates with a fault, on a light desktop and on a dark phone.

    Before the fault only what shows the verdict is looked at: the rest stands on the page with the fault too, or on the
    unfolded page, which is tried by itself. What only a phone shows is tried in light for its contrast alone.
    """
    seen = visit(color_scheme="light")
    found = violations(seen.open(), "empty")
    hands = loaded(seen)
    page = hands.page
    found += of_the_verdict(page, "answered")
    for size in ("255/40 R19 100Y XL", "265/35 R19 98Y XL"):
        hands.click("#add")
        hands.type(size)
    hands.answer()
    found += of_the_verdict(page, "three candidates")
    page.fill(field(THEN, 2), "265/3S R19")
    page.keyboard.press("Tab")
    page.wait_for_selector("#question [aria-invalid]")
    found += violations(page, "fault")
    page.set_viewport_size(PHONE)
    found += violations(page, "fault on a phone", options=CONTRAST)
    page.emulate_media(color_scheme="dark")
    found += violations(page, "fault on a dark phone")
    found += violations(seen.open(), "empty on a dark phone")
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
    hands.spell("215/55 R16 93V")
    hands.answer()
    tab_to(page, "stop.id === 'report'")
    with seen.context.expect_page() as opened:
        page.keyboard.press("Enter")
    opened.value.wait_for_selector("svg")
    assert opened.value.locator("text=215/55 R16 93V").count() > 0


@pytest.fixture(scope="module")
def answered(lasting):
    return loaded(lasting(viewport=PHONE, has_touch=True, is_mobile=True)).page


@pytest.fixture
def phone(answered):
    """The page with an answer on a phone."""
    answered.set_viewport_size(PHONE)
    return answered


def test_every_stop_of_the_keyboard_shows_where_it_is_and_nothing_covers_it(phone):
    # A script that moves the focus from a stop of the Tab key leaves it as visible as the key does (:focus-visible of
    # Selectors 4), and the browser scrolls to it as it does for the key.
    phone.evaluate("document.activeElement.blur(); scrollTo(0, 0)")
    phone.keyboard.press("Tab")
    stops, wrong = phone.evaluate(
        """() => {
          const stops = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")]
            .filter((each) => each.tabIndex >= 0 && !each.disabled)
            .filter((each) => each.checkVisibility({ checkVisibilityCSS: true }));
          const wrong = stops.filter((stop) => {
            stop.focus();
            const marked = [stop, stop.closest("td, .cell")].filter(Boolean);
            const seen = marked.some((each) => parseFloat(getComputedStyle(each).outlineWidth) >= 3
              && getComputedStyle(each).outlineStyle !== "none");
            const box = stop.getBoundingClientRect();
            const bar = document.querySelector(".bar").getBoundingClientRect();
            const covered = bar.height && !stop.closest(".bar") && box.height < 200
              && box.bottom > bar.top + 1 && box.top < bar.bottom;
            return !seen || covered || stop !== document.activeElement;
          });
          return [stops.length, wrong.map((each) => each.outerHTML.slice(0, 80))];
        }"""
    )
    assert stops > 60
    assert wrong == []


def test_what_is_touched_on_a_phone_is_large_enough(phone):
    """WCAG 2.2, 2.5.5 (from memory): at least 44 by 44 CSS pixels; a link within a sentence is exempt."""
    small = phone.evaluate(
        """() => [...document.querySelectorAll("input, select, button:not(.link), summary, .languages a")]
          .filter((each) => each.checkVisibility() && !each.disabled)
          .map((each) => [each.id || each.className || each.textContent, each.getBoundingClientRect()])
          .filter(([, box]) => box.height < 44 || box.width < 44)
          .map(([name, box]) => `${name} ${box.width}x${box.height}`)"""
    )
    assert small == []


def test_text_in_a_field_is_large_enough_not_to_be_zoomed(phone):
    sizes = phone.eval_on_selector_all(
        "input, select", "(all) => all.map((each) => parseFloat(getComputedStyle(each).fontSize))"
    )
    assert min(sizes) >= 16


# At 200 % a window of 1280 pixels has room for 640 (WCAG 2.2, 1.4.10 asks down to 320, from memory).
def test_no_width_needs_sideways_scrolling(phone):
    # With a fault, so this is the last to look at the page.
    phone.fill(field("/candidate/rear/tyre/size", 0), "285/3O R19")
    phone.wait_for_selector("#answer.stale")
    for width in (320, 360, 640):
        phone.set_viewport_size({"width": width, "height": 740})
        assert phone.evaluate("document.documentElement.scrollWidth") <= width
