"""Parts of the report one by one: the question in words, rows of findings, numbered sources, lines of the job card."""

from __future__ import annotations

import re

import pytest

from service.core.findings import MET, OPEN
from service.page.report import render_report
from service.page.report_question import question
from service.page.report_rows import groups
from service.page.report_sources import documents
from tests.support.cases import ABSENT, changed, check, saloon
from tests.unit.page.reading import Page

WIDER = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45"), ("245/40 R18 97Y XL", "8J x 18 H2 ET45"))
UNLIKE = saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38"))


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"/vehicle/driven_axle": "front"}, "front-wheel drive"),
        ({"/vehicle/driven_axle": "rear"}, "rear-wheel drive"),
        ({"/vehicle/driven_axle": "all"}, "all-wheel drive"),
        ({"/season": "summer"}, "summer use"),
        ({"/season": "winter"}, "winter use"),
        ({"/date": "2026-05-01"}, "on 2026-05-01"),
    ],
)
def test_the_question_says_what_was_stated_and_nothing_else(changes, told):
    bare = {"/vehicle/driven_axle": ABSENT, "/season": ABSENT, "/date": ABSENT}
    found = question(check(changed(saloon(), bare | changes)))
    wheels = "Category M1, up to 228 km/h, "
    masses = "front axle up to 960 kg, rear axle up to 1000 kg"
    assert found.startswith((f"{wheels}{told}, {masses}. ", f"{wheels}{masses}, {told}. "))


@pytest.mark.parametrize(
    ("missing", "words"),
    [
        ("/vehicle/max_speed_kmh", "up to 228 km/h"),
        ("/vehicle/front/max_axle_mass_kg", "front axle up to 960 kg"),
        ("/vehicle/rear/max_axle_mass_kg", "rear axle up to 1000 kg"),
    ],
)
def test_what_was_only_assumed_is_no_part_of_the_question(missing, words):
    assert words in question(check(saloon()))
    start = "M1, up to" if words.startswith("up") else words.split(" up")[0]
    assert start not in question(check(changed(saloon(), {missing: ABSENT})))


def test_the_sources_are_numbered_from_one_in_the_order_of_the_page():
    for request in (saloon(), WIDER, UNLIKE):
        told, numbers = documents(check(request).findings)
        printed = [place.number for document in told for place in document.places]
        assert printed == list(range(1, len(printed) + 1))
        assert sorted(numbers.values()) == printed


def test_a_finding_leads_to_the_words_of_its_own_source():
    found = check(UNLIKE)
    told, numbers = documents(found.findings)
    places = {place.number: (document, place) for document in told for place in document.places}
    for each in found.findings:
        document, place = places[numbers[each.basis]]
        reference = each.basis.reference
        assert reference.startswith(document.title.split(", ")[0])
        assert all(part in reference for part in place.words.split(", ") if part)
        assert place.words or place.whole is not None


def test_a_document_of_one_place_has_its_first_part_for_a_title():
    for request in (saloon(), WIDER, UNLIKE):
        found = check(request)
        told, numbers = documents(found.findings)
        by_number = {number: ground for ground, number in numbers.items()}
        for document in told:
            references = [by_number[place.number].reference for place in document.places]
            if len(references) == 1:
                assert document.title == re.split(", |: ", references[0])[0].partition("; checked ")[0].removesuffix(
                    "; text not read"
                )
            else:
                assert all(each.startswith(document.title.split(", ")[0]) for each in references)
                firsts = {place.words.split(", ")[0] for place in document.places}
                # What all of them begin with stands in the title and not at each place.
                assert len(firsts) > 1


def test_a_source_that_was_looked_at_says_on_which_day():
    for request in (WIDER | {"rule_pack": pack} for pack in ("unece", "nz", "us", "nl")):
        told, numbers = documents(check(request).findings)
        by_number = {number: ground for ground, number in numbers.items()}
        for document in told:
            days = {re.search(r"; checked (\S{10})", by_number[each.number].reference) for each in document.places}
            wanted = {each[1] if each else "" for each in days}
            assert len(wanted) == 1
            (day,) = wanted
            assert str(document.status).endswith(f", checked {day}") == bool(day)
            assert not any("checked" in each.words for each in document.places)


def test_alike_findings_of_both_axles_share_a_row_and_are_counted_each():
    found = check(WIDER)
    _, numbers = documents(found.findings)
    places = {"Front": ["front"], "Rear": ["rear"], "Car": ["vehicle"], "Both axles": ["front", "rear"]}
    seen = []
    for group in groups(found.findings, numbers, str):
        count = sum(len(places[row.where]) for row in group.rows)
        assert group.counted == ("1 finding" if count == 1 else f"{count} findings")
        seen += [(row.code, row.message, axle) for row in group.rows for axle in places[row.where]]
        assert [each for rows in group.by_code for each in rows] == sorted(
            group.rows, key=lambda row: [rows[0].code for rows in group.by_code].index(row.code)
        )
        assert all(len({row.code for row in rows}) == 1 for rows in group.by_code)
    assert sorted(seen) == sorted((each.code, str(each.message), each.axle) for each in found.findings)
    assert "Both axles" in render_report(found)


def test_what_needs_nothing_stands_apart_from_the_reasons():
    page = render_report(check(UNLIKE))
    why, quiet = page.index(">Why</h2>"), page.index("What is open on the screen is printed.")
    found = check(UNLIKE)
    _, numbers = documents(found.findings)
    for outcome in {each.outcome for each in found.findings}:
        rows = [each for each in found.findings if each.outcome == outcome]
        (title,) = (each.title for each in groups(rows, numbers, str))
        place = page.index(f"</svg> {title} <span>")
        assert (place > quiet) == (outcome in (MET, OPEN))
        assert place > why


def test_only_a_pressure_to_set_is_set_as_a_pressure():
    found = check(changed(WIDER, {"/candidate/front/pressure_kpa": 200}))
    told = re.findall(r'<input type="checkbox"> <span class="pressure">(.*?)</span>', render_report(found))
    ordered = [str(each.text) for each in found.actions if each.code.startswith("set_pressure")]
    assert ordered
    assert [Page(each).words for each in told] == ordered


def test_the_summary_is_not_begun_with_the_verdict_that_the_heading_has_said():
    for request in (saloon(), WIDER, UNLIKE):
        found = check(request)
        page = render_report(found)
        heading, summary = re.findall(
            r'<section class="verdict[^>]*>\s*<h2>(.*?)</h2>\s*<p>(.*?)</p>', page, re.DOTALL
        )[0]
        verdict = Page(heading).words
        told = Page(summary).words
        assert not told.startswith(verdict)
        assert told[0].isupper()
        rest = str(found.summary).removeprefix(verdict).lstrip(":. ")
        assert told[1:] == rest[1:]
