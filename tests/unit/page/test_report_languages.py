"""The report in another language: every word of it said, numbers as they are written there, units as asked for."""

import re
from html import unescape

import pytest

from service.assessment.answer.assess import Assessment
from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.trade_offs import trade_offs_text
from service.assessment.checks.balance import balance
from service.core.saying import Said
from service.locales.speech import Speech, speech
from service.page.report import margins, policy, render_report
from tests.support.cases import changed, check, saloon
from tests.support.pseudo import bracketed, outside
from tests.unit.page.reading import Page

WIDER = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45"), ("245/40 R18 97Y XL", "8J x 18 H2 ET45"))
CASES = {
    "with conditions": WIDER | {"season": "summer", "date": "2026-05-01"},
    "unsuitable": saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38")),
    "undetermined": changed(saloon(), {"/candidate/front/tyre/size": "225/45 R17"}),
    "scarce today": changed(saloon(), {"/vehicle/front/clearance/inboard_mm": 3}),
    "many rules": saloon() | {"rule_pack": "nl"},
    "no rule": saloon() | {"rule_pack": "nz"},
}
# Units that read the same in all languages of the house, and a category of vehicles.
ALIKE = {"mm", "cm", "kPa", "kg", "kg/kg", "km/h", "deg/g", "min", "ET", "M1", "bar"}


@pytest.fixture(scope="module", params=sorted(CASES))
def found(request):
    return check(CASES[request.param])


def others(found: Assessment):
    """Yield the texts that come from other rooms; what is no saying yet those rooms answer for."""
    pack = found.case.pack
    yield from CAUTIONS.values()
    yield from (pack.title, *pack.not_held, balance(found.car).text, *found.assumptions)
    yield from (each.text for each in (*found.trade_offs, *found.actions))
    for each in found.findings:
        yield each.message
        yield "" if each.remedy is None else each.remedy.text
    yield trade_offs_text(found.trade_offs)
    yield found.summary
    # The report leaves out what its heading has said.
    yield found.summary.partition(": ")[2][1:]


def names(found: Assessment):
    """Yield what no language changes: designations, the pack, codes."""
    vehicle, candidate = found.case.vehicle, found.case.candidate
    for fitment in (vehicle.front.fitted, vehicle.rear.fitted, candidate.front, candidate.rear):
        yield from (fitment.tyre.designation.canonical, fitment.rim.designation.canonical)
    yield from (found.case.pack.id, candidate.label)


def unsaid(page: str, found: Assessment) -> set[str]:
    """Return the words that a reader meets outside all brackets."""
    read = re.sub(r"<style>.*?</style>|<cite.*?</cite>|<code>.*?</code>|<svg.*?</svg>", " ", page, flags=re.DOTALL)
    labels = re.findall(r'aria-label="([^"]*)"', read)
    left = outside(unescape(" ".join([re.sub(r"<[^>]+>", " ", read), *labels])))
    left = " ".join(left.split())
    for each in sorted({*others(found), *names(found)}, key=len, reverse=True):
        if each and not isinstance(each, Said):
            left = left.replace(" ".join(each.split()), " ")
    return {word for word in re.findall(r"[A-Za-z][A-Za-z/1]+", left) if word not in ALIKE}


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_no_word_is_left_unsaid(found, units):
    assert unsaid(render_report(found, bracketed(units)), found) == set()


def test_what_was_never_said_would_be_found(found):
    assert unsaid(render_report(found), found) >= {"Fitment", "question", "Present", "Both", "Sources", "edition"}


@pytest.mark.parametrize("language", ["en", "de", "fr", "es", "nl"])
def test_the_page_names_its_language_and_that_of_what_it_cites(language):
    page = Page(render_report(check(WIDER), speech(language)))
    assert page.named("html") == [{"lang": language}]
    assert {each["lang"] for each in page.named("cite")} == {"en"}


def test_the_policy_admits_the_style_of_the_language():
    french = Speech(
        "fr", "metric", {"Fitment report": 'Rapport "A"</style>', "{page} of {pages}": "{page} sur {pages}"}
    )
    rules = margins(french.say)
    assert r'content:"Rapport \"A\"\3c /style>"' in rules
    assert 'content:"" counter(page) " sur " counter(pages) ""' in rules
    assert policy("fr").startswith("default-src 'none'; style-src 'sha256-")


def test_pressures_and_masses_are_told_in_the_units_asked_for():
    # 250 kPa are 36.3 psi, 960 kg are 2116 lb, 228 km/h are 142 mph: the yard and the pound of 1959.
    words = Page(render_report(check(WIDER), speech("en", "imperial"))).words
    assert "36.3 psi" in words
    assert "up to 142 mph, rear-wheel drive, front axle up to 2116 lb" in words


def test_numbers_of_findings_have_a_decimal_comma():
    found = check(WIDER)
    told = render_report(found, speech("de"))
    numbers = re.findall(r'<td class="number">([^<]*)</td>', told)
    assert any("," in each for each in numbers)
    assert not any("." in each for each in numbers)
