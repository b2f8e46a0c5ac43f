"""Wheels and sizes that the service proposes become columns; drawings are enlarged."""

import pytest

from tests.browser.examples import HATCHBACK, SALOON, Reader


@pytest.fixture
def hatchback(visit):
    return Reader(visit(), HATCHBACK)


def test_a_wheel_of_the_chart_becomes_a_column(hatchback):
    page = hatchback.page
    with page.expect_response(lambda response: response.url.endswith("/rims")) as told:
        page.click("#wheels-fold > summary")
    width = next(each for each in told.value.json()["axles"]["front"]["tyres"][0]["widths"] if "best" in each)
    rim = width["best"]["rim"]["size"]
    with hatchback.asking():
        page.click(f"#wheels-charts [aria-label^='{rim}:'] >> nth=0")
    assert hatchback.field("/candidate/front/rim/size", 1).input_value() == rim
    assert hatchback.answer("B")["axles"]["front"]["proposed"]["rim"] == rim


def test_the_chart_is_one_stop_of_the_tab_key_and_arrows_go_on(hatchback):
    page = hatchback.page
    page.click("#wheels-fold > summary")
    chart = page.locator("#wheels-charts table").first
    chart.wait_for()
    assert chart.locator("button[tabindex='0']").count() == 1
    chart.locator("button[tabindex='0']").focus()
    page.keyboard.press("ArrowRight")
    assert chart.locator("button[tabindex='0']").evaluate("(each) => each === document.activeElement")
    assert page.evaluate("document.activeElement.closest('td').cellIndex") > 1


def test_a_size_that_was_found_becomes_a_column(hatchback):
    page = hatchback.page
    page.click("#search > details > summary")
    with page.expect_response(lambda response: response.url.endswith("/search")) as told:
        page.click("#search-form button")
    found = told.value.json()["rows"][0]["candidate"]["front"]["tyre"]["size"]
    with hatchback.asking():
        page.click("#search-rows .offer >> nth=0")
    assert hatchback.field("/candidate/front/tyre/size", 1).input_value() == found


def test_a_drawing_is_enlarged_and_closed_by_keyboard(visit):
    page = Reader(visit(), SALOON).page
    page.locator("#drawn").scroll_into_view_if_needed()
    button = page.locator("#drawn figure button").first
    button.wait_for()
    button.focus()
    page.keyboard.press("Enter")
    assert page.locator("#enlarged[open] img").get_attribute("alt").startswith("Left-hand wheels")
    page.keyboard.press("Escape")
    assert not page.is_visible("#enlarged")
    assert button.evaluate("(each) => each === document.activeElement")
