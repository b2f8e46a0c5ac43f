"""Entering a question: what stays empty follows, what is wrong is said at its field, and numbers come in any unit."""

import json
import shlex
import subprocess

import pytest

from tests.browser.hands import CHECK, PRESENT, Hands, field, put

TYRE, RIM, THEN = f"{PRESENT}/tyre/size", f"{PRESENT}/rim/size", "/candidate/front/tyre/size"
CAR = {
    "/vehicle/max_speed_kmh": "210",
    "/vehicle/front/max_axle_mass_kg": "980",
    "/vehicle/rear/max_axle_mass_kg": "920",
}


@pytest.fixture
def hands(visit):
    return Hands(visit().open())


@pytest.fixture(scope="module")
def answered(lasting):
    """A page with an answer, for tests that read how one of its fields is understood."""
    made = Hands(lasting().open())
    ask(made)
    return made.page


def ask(hands, text="225/50 R16 92W"):
    """Fill in the car and the least that an answer needs."""
    put(hands.page, {**CAR, TYRE: "205/55 R16 91V", RIM: "6.5J x 16 H2 ET50", THEN: text})
    return hands.answer()


def body_of(page):
    """Return the question as it stands on the page."""
    return page.evaluate("import('/state.js').then(({ question }) => question(0).body)")


def asked(hands, change):
    """Return the body of the check that a change leads to."""
    with hands.page.expect_request(lambda request: request.url.endswith(CHECK)) as request:
        change()
    return request.value.post_data_json


def said_of(page, selector):
    """Return what a screen reader adds to a field."""
    ids = page.get_attribute(selector, "aria-describedby").split()
    return " ".join(page.locator(f"[id='{each}']").inner_text() for each in ids)


def test_it_starts_empty_and_asks_nothing(hands):
    page = hands.page
    assert page.eval_on_selector_all("#question [data-pointer]", "(all) => all.every((each) => each.value === '')")
    assert hands.verdict == "No question yet"


def test_empty_cells_show_what_they_stand_for_and_are_sent(hands):
    ask(hands)
    page = hands.page
    rear = page.locator(field("/candidate/rear/tyre/size", 0))
    assert (rear.input_value(), rear.get_attribute("placeholder")) == ("", "225/50 R16 92W")
    body = asked(hands, lambda: page.fill(field(THEN), "215/55 R16 93V"))
    assert body["vehicle"]["rear"]["fitted"]["tyre"]["size"] == "205/55 R16 91V"
    assert body["candidate"]["rear"]["tyre"]["size"] == "215/55 R16 93V"
    assert body["candidate"]["front"]["rim"]["size"] == "6.5J x 16 H2 ET50"
    used = page.evaluate("import('/state.js').then(({ question }) => question(0).used.map(({ label }) => label))")
    assert {"Rear axle, present: Tyre", "Rear axle, candidate: Tyre", "Front axle, candidate: Rim with offset"} < set(
        used
    )


def test_a_whole_marking_is_taken_apart(hands):
    hands.into(TYRE, "205/55 R16 91V 6.5J x 16 ET50 5x112 57.1 690 kg")
    hands.press("Enter")
    ends = ("tyre/size", "rim/size", "rim/bolt_circle", "rim/centre_bore_mm", "rim/load_rating_kg")
    found = [hands.page.locator(field(f"{PRESENT}/{end}")).input_value() for end in ends]
    assert found == ["205/55 R16 91V", "6.5J x 16 ET50", "5x112", "57.1", "690 kg"]


def test_enter_goes_down_the_column(hands):
    hands.click(field(TYRE))
    hands.press("Enter", 2)
    assert hands.page.evaluate("document.activeElement.dataset.pointer") == f"{PRESENT}/pressure_kpa"


def test_a_fault_waits_until_the_field_is_left_and_the_near_miss_is_a_button(hands):
    ask(hands)
    page, place = hands.page, field(THEN)
    page.focus(place)
    with page.expect_response(lambda response: response.url.endswith(CHECK) and response.status == 422):
        page.fill(place, "225/5O R16")
    page.wait_for_selector("#answer.stale")
    # The last good answer stands, marked as one to an earlier question; the field is still being typed in.
    assert page.get_attribute(place, "aria-invalid") is None
    assert page.is_visible("#told")
    page.keyboard.press("Tab")
    page.wait_for_selector(f"{place}[aria-invalid=true]")
    assert "position 5" in said_of(page, place)
    assert "position 5" in page.inner_text("#heard")
    # The cell that follows is not blamed too.
    assert page.locator("#question [aria-invalid]").count() == 1
    page.click("text=Use 225/50 R16")
    page.wait_for_selector("#answer:not(.stale)")
    assert page.get_attribute(place, "aria-invalid") is None
    assert page.locator("#question .fault:not(:empty)").count() == 0


def test_a_size_is_judged_on_leaving_before_anything_can_be_asked(hands):
    hands.into(TYRE, "205/5S R16")
    hands.press("Tab")
    hands.page.wait_for_selector(f"{field(TYRE)}[aria-invalid=true]")
    assert hands.page.locator(".use").inner_text() == "Use 205/55 R16"


@pytest.mark.parametrize(
    ("text", "hint", "kpa"),
    # 1 bar is 100 kPa and 1 psi 6.894757 kPa (NIST SP 811, appendix B.8, from memory).
    [
        ("2.5", "read as 2.5 bar", 250),
        ("2,5", "read as 2,5 bar", 250),
        ("36", "read as 36 psi", 248.211),
        ("250", "", 250),
    ],
)
def test_a_pressure_is_understood_as_the_gauge_shows_it(answered, text, hint, kpa):
    pointer = f"{PRESENT}/pressure_kpa"
    answered.fill(field(pointer), text)
    assert body_of(answered)["vehicle"]["front"]["fitted"]["pressure_kpa"] == pytest.approx(kpa)
    assert answered.inner_text(f"{field(pointer)} + .also") == hint


def test_other_units_show_other_numbers_and_ask_the_same(hands):
    ask(hands)
    page, pressure, mass = hands.page, f"{PRESENT}/pressure_kpa", "/vehicle/front/max_axle_mass_kg"
    page.fill(field(pressure), "250")
    page.select_option("#units", "imperial")
    # 250 kPa are 36.3 psi, 980 kg are 2161 lb, 210 km/h are 130.5 mph (NIST SP 811, appendix B.8, from memory).
    shown = [page.input_value(field(each)) for each in (pressure, mass, "/vehicle/max_speed_kmh")]
    assert shown == ["36.3", "2161", "130.5"]
    body = body_of(page)
    assert (body["units"], body["vehicle"]["front"]["max_axle_mass_kg"]) == ("imperial", 980)
    assert body["vehicle"]["front"]["fitted"]["pressure_kpa"] == 250
    assert page.inner_text("#row-front-pressure_kpa").endswith("psi")


def test_another_car_loses_the_rest_of_the_example_and_can_have_it_back(hands):
    page = hands.page
    page.click("[data-example='0']")
    hands.answer()
    hub = field("/vehicle/front/hub/bolt_circle")
    assert page.input_value(hub) == "5x112"
    page.fill(field(TYRE), "225/45 R18 95Y XL")
    page.keyboard.press("Tab")
    page.wait_for_selector("#said >> text=is gone")
    assert (page.input_value(hub), page.input_value(field(TYRE))) == ("", "225/45 R18 95Y XL")
    page.click("#said button")
    assert (page.input_value(hub), page.input_value(field(TYRE))) == ("5x112", "225/45 R18 95Y XL")


def test_columns_are_added_changed_and_taken_away(hands):
    ask(hands)
    page = hands.page
    page.click("#add")
    hands.type("215/55 R16 93V")
    assert [page.input_value(field(THEN, each)) for each in (0, 1)] == ["225/50 R16 92W", "215/55 R16 93V"]
    page.fill("#name", "narrow")
    assert page.inner_text("#col-1") == "narrow"
    page.fill(field("/candidate/rear/tyre/size", 1), "225/50 R16 92W")
    page.click("#swap")
    assert page.input_value(field(THEN, 1)) == "225/50 R16 92W"
    page.click("#rear-as-front")
    assert page.input_value(field("/candidate/rear/tyre/size", 1)) == "225/50 R16 92W"
    page.click("#remove")
    assert page.locator("#grid [data-at='1']").count() == 0
    assert hands.answer() != "No question yet"


def test_on_a_phone_tabs_choose_the_candidate(visit):
    page = visit(viewport={"width": 390, "height": 844}).open()
    page.click("#add")
    assert page.is_visible(field(THEN, 1))
    assert page.is_hidden(field(THEN, 0))
    page.click("#tabs button >> nth=0")
    assert page.is_visible(field(THEN, 0))


def test_the_line_for_the_terminal_gets_the_same_answer(hands):
    ask(hands)
    hands.page.fill("#name", "the neighbour's 'set'; $(true)")
    hands.page.wait_for_timeout(100)
    command = shlex.split(hands.page.locator("#curl").text_content())
    assert json.loads(command[-1])["candidate"]["label"] == "the neighbour's 'set'; $(true)"
    run = subprocess.run(command, capture_output=True, text=True, check=True, timeout=20)
    hands.answer()
    assert hands.page.inner_text("#summary") in json.loads(run.stdout)["summary"]


@pytest.mark.parametrize(("text", "kg"), [("1,050", 1050), ("1.050", 1050), ("1050", 1050)])
def test_signs_between_thousands_are_read_in_a_mass(answered, text, kg):
    answered.fill(field("/vehicle/front/max_axle_mass_kg"), text)
    assert body_of(answered)["vehicle"]["front"]["max_axle_mass_kg"] == kg


def test_other_units_ask_the_same_question(hands):
    ask(hands)
    page = hands.page
    page.fill(field(f"{PRESENT}/pressure_kpa"), "243")
    before = asked(hands, lambda: page.fill(field(THEN), "215/55 R16 93V"))
    after = asked(hands, lambda: page.select_option("#units", "imperial"))
    assert after["vehicle"] == before["vehicle"]
    # Also from the address alone, which holds what stands in the fields.
    page.wait_for_timeout(500)
    with page.expect_request(lambda request: request.url.endswith(CHECK)) as again:
        page.reload()
    assert again.value.post_data_json["vehicle"] == before["vehicle"]


def test_a_whole_marking_takes_the_place_of_a_rim_that_was_there(hands):
    ask(hands)
    page = hands.page
    page.fill(field("/candidate/front/rim/size", 0), "7J x 16 ET45")
    page.fill(field(THEN), "225/45 R17 94W 8J x 17 ET40")
    body = asked(hands, lambda: page.keyboard.press("Tab"))
    assert body["candidate"]["front"]["tyre"]["size"] == "225/45 R17 94W"
    assert body["candidate"]["front"]["rim"]["size"] == "8J x 17 ET40"
