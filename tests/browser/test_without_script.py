"""A browser that runs no script posts the form and gets the report, by keyboard alone."""

import pytest

from tests.browser.hands import PRESENT

ENTRIES = {
    f"{PRESENT}/tyre/size": "205/55 R16 91V",
    f"{PRESENT}/rim/size": "6.5J x 16 H2 ET50",
    f"{PRESENT}/pressure_kpa": "2.4",
    "/vehicle/max_speed_kmh": "210",
    "/vehicle/front/max_axle_mass_kg": "980",
    "/vehicle/rear/max_axle_mass_kg": "920",
    "/candidate/front/tyre/size": "225/50 R16 92W",
}


@pytest.fixture(scope="module")
def without_script(lasting):
    return lasting(java_script_enabled=False)


@pytest.fixture
def page(without_script):
    return without_script.open("/?language=de")


def test_the_form_brings_the_report_in_the_language_of_the_page(page):
    for name, text in ENTRIES.items():
        page.fill(f"[name='{name}']", text)
    page.select_option("[name='units']", "bar")
    page.press("[name='/candidate/front/tyre/size']", "Enter")
    page.wait_for_selector("svg#section")
    assert page.locator("html").get_attribute("lang") == "de"
    assert "225/50 R16 92W" in page.inner_text("body")


def test_what_is_wrong_is_said_in_words_and_nothing_typed_is_lost(page):
    for name, text in {**ENTRIES, "/candidate/front/tyre/size": "225/5O R16"}.items():
        page.fill(f"[name='{name}']", text)
    page.press("[name='/candidate/front/tyre/size']", "Enter")
    page.wait_for_selector("text=Vorderachse, Vorschlag: Reifen")
    page.go_back()
    assert page.input_value("[name='/candidate/front/tyre/size']") == "225/5O R16"


def test_it_shows_no_button_that_does_nothing(page):
    assert page.locator("button:visible").all_inner_texts() == ["Bericht holen"]
