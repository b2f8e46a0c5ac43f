"""The path of somebody who has never seen the page: look, change, understand, take along."""

import json
import re
import shlex
import subprocess

import pytest

TYRE = "/candidate/rear/tyre/size"


def test_an_answer_stands_there_before_anything_is_typed(visit):
    page = visit().open()
    assert page.inner_text("#verdict-words") == "It fits, with conditions"


def test_front_stands_left_of_rear_as_on_the_car_seen_from_the_left(visit):
    page = visit().open()
    front, rear = (page.locator(f"[name='/candidate/{axle}/tyre/size']").bounding_box() for axle in ("front", "rear"))
    assert front["x"] < rear["x"]
    assert front["y"] == rear["y"]


def test_the_answer_follows_while_typing(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/30 R19 80H")
    assert page.inner_text("#verdict-words") == "Do not fit"
    assert "Speaks against it" in page.inner_text("#findings")


def test_what_is_advised_against_has_words_and_a_shape_of_its_own(visit):
    seen = visit()
    page = seen.open()
    seen.change("/candidate/front/tyre/size", "255/35 R19 96Y XL 3PMSF")
    assert page.inner_text("#verdict-words") == "We advise against it"
    assert page.get_attribute("#verdict-mark", "href") == "#mark-not-recommended"
    assert page.locator("#actions li").first.get_attribute("class") == "danger"
    assert page.inner_text("#actions li.danger").startswith("We advise against it: ")


def test_what_is_open_and_decides_nothing_is_one_short_list_that_is_folded(visit):
    page = visit().open()
    group = page.locator("details.group.open")
    assert group.get_attribute("open") is None
    group.locator("summary").click()
    assert group.locator("p").count() == 0
    assert group.locator("li").count() > 0


def test_what_is_so_today_already_is_marked(visit):
    seen = visit()
    page = seen.open()
    for axle in ("front", "rear"):
        for part, size in (("tyre", "255/35 R19 96Y XL"), ("rim", "9J x 19 H2 ET42")):
            for root in (f"/vehicle/{axle}/fitted", f"/candidate/{axle}"):
                page.fill(f"[name='{root}/{part}/size']", size)
    page.click("details.more > summary")
    seen.change("/vehicle/front/clearance/inboard_mm", "3")
    assert page.locator(".group.advisory .today").first.inner_text() == "today already"


def test_the_drawings_say_in_words_what_they_show(visit):
    page = visit().open()
    assert "Front axle: proposed 255/35 R19 96Y XL" in page.get_attribute("#drawn-front", "alt")


def test_only_the_last_of_quick_changes_is_asked(visit):
    seen = visit()
    page = seen.open()
    before = len([url for url in seen.asked if url.endswith("/check")])
    page.focus(f"[name='{TYRE}']")
    page.keyboard.press("End")
    with page.expect_response(lambda response: response.url.endswith("/check")):
        page.keyboard.type("ABCDEF", delay=40)
    seen.settled()
    assert len([url for url in seen.asked if url.endswith("/check")]) - before < 4


def test_the_line_for_the_terminal_gets_the_same_answer(visit):
    page = visit().open()
    command = shlex.split(page.inner_text("#curl"))
    run = subprocess.run(command, capture_output=True, text=True, check=True, timeout=20)
    found = json.loads(run.stdout)
    said = page.inner_text("#summary").lower()
    assert found["verdict"] == "suitable_with_conditions"
    assert said in found["summary"].lower()


def test_a_quote_in_the_label_does_not_break_the_line(visit):
    seen = visit()
    seen.open()
    seen.change("/candidate/label", "the neighbour's 'set'; $(true)")
    command = shlex.split(seen.page.inner_text("#curl"))
    assert json.loads(command[-1])["candidate"]["label"] == "the neighbour's 'set'; $(true)"


def test_the_places_come_from_the_service(visit):
    page = visit().open()
    page.wait_for_selector("[name='/rule_pack'] option:nth-child(6)", state="attached")
    with page.expect_response(lambda response: response.url.endswith("/check")):
        page.select_option("[name='/rule_pack']", "nl")
    page.locator("#edition", has_text=re.compile("^nl")).wait_for()


def test_the_report_opens_with_its_style_and_both_drawings(visit):
    seen = visit()
    page = seen.open()
    with seen.context.expect_page() as opened:
        page.click("#report")
    report = opened.value
    report.wait_for_selector("svg#patches")
    assert report.evaluate("getComputedStyle(document.querySelector('.verdict')).borderTopStyle") == "dashed"
    assert seen.complaints == []


def test_the_api_is_a_click_away(visit):
    page = visit().open()
    page.click("text=The API")
    page.wait_for_selector(".swagger-ui .info")


def test_a_hostile_label_is_shown_and_not_obeyed(visit):
    seen = visit()
    page = seen.open()
    seen.change("/candidate/label", "<img src=x onerror=document.title='caught'>")
    assert (page.title() == "caught", page.locator("img[src='x']").count()) == (False, 0)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_is_asked_from_elsewhere_and_nothing_is_complained_of(visit, scheme):
    seen = visit(color_scheme=scheme)
    seen.open()
    seen.change("/vehicle/max_speed_kmh", "240")
    elsewhere = [url for url in seen.asked if not re.match(rf"{re.escape(seen.address)}/|blob:", url)]
    assert (elsewhere, seen.complaints) == ([], [])
