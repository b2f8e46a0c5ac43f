"""The answer: verdict, findings, open questions that lead to their fields, remedies that are buttons."""

import pytest

from tests.browser.examples import HATCHBACK, SALOON, Reader, focused

OUTCOMES = ("not_met", "not_recommended", "advisory", "met")
STRUT = ("/vehicle/front/clearance/inboard_mm", "/vehicle/rear/clearance/inboard_mm")


@pytest.fixture
def saloon(visit):
    return Reader(visit(), SALOON)


@pytest.fixture(scope="module")
def untouched(lasting):
    """The same for tests that only look."""
    return Reader(lasting(), SALOON)


def test_the_verdict_is_that_of_the_service(untouched):
    assert untouched.answer()["verdict"] == "suitable_with_conditions"
    assert untouched.verdict == "It fits, with conditions"
    assert untouched.page.inner_text("#summary") in untouched.answer()["summary"]


def test_each_outcome_has_as_many_findings_as_the_service_counts(untouched):
    counts = untouched.answer()["finding_counts"]
    for outcome in OUTCOMES:
        group = untouched.page.locator(f"#findings .group.{outcome.replace('_', '-')} > summary")
        shown = int(group.inner_text().rpartition(":")[2]) if group.count() else 0
        assert shown == counts[outcome], outcome


def test_an_open_question_of_both_axles_is_asked_once_and_leads_to_both_fields(saloon):
    rims = [
        (f"/candidate/{axle}/rim/size", size)
        for axle, size in (("front", "9J x 19 H2 ET55"), ("rear", "10J x 19 H2 ET52"))
    ]
    saloon.type(*rims, column=0)
    saloon.type(*((pointer, "") for pointer in STRUT))
    questions = saloon.page.locator("[data-kind=measure] li")
    links = questions.locator(".link")
    assert questions.count() == 1
    assert saloon.verdict == "Not known yet"
    reached = []
    for place in range(links.count()):
        links.nth(place).click()
        reached.append(focused(saloon.page))
    assert tuple(reached) == STRUT


def test_a_pressure_that_is_enough_is_one_press_away(saloon):
    # 1080 kg on an axle whose tyres get 270 kPa: 200 kPa is too little, the remedy says how much is enough.
    saloon.type(("/candidate/rear/pressure_kpa", "200"), column=0)
    low = saloon.finding("load.pressure", "rear")
    assert low["message"] in saloon.page.inner_text("#findings")
    with saloon.asking():
        saloon.page.click(f"text=Use {low['remedy']['at_least']:.0f} kPa")
    assert float(saloon.field("/candidate/rear/pressure_kpa", 0).input_value()) == low["remedy"]["at_least"]
    assert low["message"] not in saloon.page.inner_text("#findings")


def test_wheels_that_are_better_kept_are_kept_by_one_press(saloon):
    with saloon.asking():
        saloon.page.click("text=Keep the present rear wheels >> nth=0")
    assert saloon.field("/candidate/rear/tyre/size", 0).input_value() == "255/35 R19 96Y XL"
    assert saloon.answer()["axles"]["rear"]["change"]["section_width_mm"] == 0.0


def test_too_low_a_load_index_is_mended_by_one_press(visit):
    # Load index 80 is 450 kg (UN R30 annex 4): two of them do not carry 1180 kg.
    reader = Reader(visit(), HATCHBACK)
    reader.type(("/candidate/front/tyre/size", "225/45 R17 80W"), column=0)
    assert reader.verdict == "Do not fit"
    with reader.asking():
        reader.page.locator(".group.not-met .offer").first.click()
    assert reader.verdict != "Do not fit"


def test_a_fault_leaves_the_last_good_answer_and_marks_it(saloon):
    page = saloon.page
    saloon.type(("/candidate/rear/tyre/size", "285/3O R19"), column=0)
    assert "stale" in page.get_attribute("#answer", "class").split()
    assert saloon.verdict == "It fits, with conditions"
    assert "This answers the question before." in page.inner_text("#troubles")
    assert page.inner_text("#bar-words") == "It fits, with conditions (question before)"
    assert not page.is_visible("#todo")
    assert page.locator("#findings .offer").first.is_disabled()
    page.click("#troubles .link")
    assert focused(page) == "/candidate/rear/tyre/size"
    saloon.type(("/candidate/rear/tyre/size", "285/30 R19 98Y XL"), column=0)
    assert "stale" not in page.get_attribute("#answer", "class").split()
    assert not page.is_visible("#troubles")


def test_the_law_of_the_place_is_counted(untouched):
    pack = untouched.answer()["rule_pack"]
    words = untouched.page.inner_text("#grounds .law")
    assert all(f"{pack[name]} {word}" in words for name, word in (("rules_held", "rules held"), ("rules_met", "met")))


def test_what_was_assumed_stands_beneath_the_verdict(untouched):
    assert untouched.page.locator("#grounds li", has_text=untouched.answer()["assumptions"][0]).count() == 1


def test_a_link_within_the_page_leaves_the_question_in_the_address(saloon):
    saloon.page.wait_for_url(lambda url: "#" in url)
    before = saloon.page.url
    for name in ("#bar", "nav.bar a[href='#columns']"):
        saloon.page.click(name)
        assert saloon.page.url == before
    assert saloon.page.evaluate("document.activeElement.id") == "columns"
