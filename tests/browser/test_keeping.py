"""What keeps a question: the address behind its `#`, which never leaves the browser, a file, the clipboard."""

import json
import re

import pytest

from tests.browser.conftest import PHONE
from tests.browser.hands import PRESENT, Hands, field

TYRE, THEN = f"{PRESENT}/tyre/size", "/candidate/front/tyre/size"


@pytest.fixture
def seen(visit):
    return visit()


def loaded(seen):
    """Open the page with the example of a small car and wait for its answer."""
    hands = Hands(seen.open())
    hands.click("[data-example='2']")
    hands.answer()
    # The address follows after a pause.
    seen.page.wait_for_url(lambda url: "#" in url)
    return hands


def test_a_question_survives_a_reload_and_its_address_is_never_sent(seen):
    hands = loaded(seen)
    page = seen.page
    hands.click("#add")
    hands.type("215/50 R17 95W XL")
    hands.answer()
    page.wait_for_timeout(400)
    fragment = page.evaluate("location.hash")
    assert len(fragment) < 8000
    page.reload()
    hands.answer()
    assert page.input_value(field(THEN, 1)) == "215/50 R17 95W XL"
    assert page.evaluate("location.hash") == fragment
    assert not [url for url in seen.asked if fragment[1:40] in url.partition("#")[0]]


def test_a_link_to_another_language_takes_the_question_along(seen):
    loaded(seen)
    page = seen.page
    page.click(".languages a >> text=Deutsch")
    page.wait_for_selector("html[lang=de]")
    assert page.input_value(field(TYRE)) == "205/55 R16 94W XL"
    page.wait_for_selector("#told:not([hidden])")
    assert page.inner_text("#verdict-words") in ("Passt", "Passt mit Auflagen", "Passt, mit Auflagen")


def test_a_link_that_was_cut_short_opens_the_empty_page(seen):
    page = seen.open("/#eyJ1bml0cyI6Im1ld")
    assert page.input_value(field(TYRE)) == ""
    assert page.evaluate("location.hash") == ""


def test_a_saved_file_is_opened_again(seen, tmp_path):
    hands = loaded(seen)
    page = seen.page
    with page.expect_download() as download:
        page.click("#save")
    path = tmp_path / "question.json"
    download.value.save_as(path)
    page.click("#clear")
    assert page.input_value(field(TYRE)) == ""
    page.set_input_files("#open-file", path)
    hands.answer()
    assert page.input_value(field(TYRE)) == "205/55 R16 94W XL"


def test_a_request_of_the_api_is_opened_too_and_anything_else_is_refused(seen, tmp_path):
    page = seen.open()
    path = tmp_path / "request.json"
    body = {"fitted": {"tyre": {"size": "205/55 R16 91V"}, "pressure_kpa": 240}}
    path.write_text(json.dumps({"vehicle": {"front": body}, "candidate": {"label": "wide"}}), "utf-8")
    page.set_input_files("#open-file", path)
    page.wait_for_selector("#said >> text=Opened")
    assert [page.input_value(field(f"{PRESENT}/{each}")) for each in ("tyre/size", "pressure_kpa")] == [
        "205/55 R16 91V",
        "240",
    ]
    assert page.inner_text("#col-0") == "wide"
    path.write_text('["no question"]', "utf-8")
    page.set_input_files("#open-file", path)
    page.wait_for_selector("#said >> text=no question")
    assert page.input_value(field(TYRE)) == "205/55 R16 91V"


def test_link_line_and_question_are_copied(visit):
    seen = visit(permissions=["clipboard-read", "clipboard-write"])
    loaded(seen)
    page = seen.page

    def copied(selector):
        page.click(selector)
        page.wait_for_selector("text=Copied.")
        return page.evaluate("navigator.clipboard.readText()")

    assert copied("#copy-link") == page.url
    assert copied("#copy-curl").startswith(f"curl -sS '{seen.address}/v1/fitments/check'")
    assert json.loads(copied("#copy-json"))["vehicle"]["front"]["fitted"]["tyre"]["size"] == "205/55 R16 94W XL"


def test_a_hostile_name_is_shown_and_not_obeyed(seen):
    page = seen.open()
    page.fill("#name", "<img src=x onerror=document.title='caught'>")
    assert (page.title() == "caught", page.locator("img[src='x']").count()) == (False, 0)


def test_nothing_is_asked_from_elsewhere_and_nothing_is_complained_of(visit):
    seen = visit(color_scheme="light")
    loaded(seen)
    # What only a style of the other scheme asks for is asked for when that scheme begins.
    seen.page.emulate_media(color_scheme="dark")
    # The page of the API is long, and painting it takes longer than the rest of this test.
    seen.page.set_viewport_size(PHONE)
    seen.page.click("text=The API")
    seen.page.wait_for_selector(".swagger-ui .info")
    seen.page.emulate_media(color_scheme="light")
    seen.page.wait_for_load_state("networkidle")
    elsewhere = [url for url in seen.asked if not re.match(rf"{re.escape(seen.address)}/|blob:", url)]
    assert (elsewhere, seen.complaints) == ([], [])


def test_the_browser_loads_less_than_200_kb(visit):
    seen = visit(own=True)
    weights = {}
    seen.context.on("response", lambda response: weights.setdefault(response.url, len(response.body())))
    page = seen.open()
    page.wait_for_load_state("networkidle")
    own = {url: size for url, size in weights.items() if "/v1/" not in url}
    assert len(own) > 10
    assert sum(own.values()) < 200_000
