"""The printed report says everything that the answer to a check says, and nothing of it as markup."""

import base64
import hashlib
import re

import pytest

from service import __version__
from service.core.findings import ADVISORY
from service.page.report import is_short, policy, render_report
from tests.support.cases import ABSENT, changed, check, saloon
from tests.unit.page.reading import Page

UNSUITABLE = saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38"))
CASES = {
    "suitable": saloon(),
    "with conditions": saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45"), ("245/40 R18 97Y XL", "8J x 18 H2 ET45")),
    "undetermined": changed(saloon(), {"/candidate/front/tyre/size": "225/45 R17"}),
    "advised against": changed(saloon(), {"/candidate/front/tyre/size": "225/45 R17 94W XL 3PMSF"}),
    "scarce today": changed(saloon(), {"/vehicle/front/clearance/inboard_mm": 3}),
    "unsuitable": UNSUITABLE,
    "bare": changed(
        saloon(),
        {f"/vehicle/{axle}/{name}": ABSENT for axle in ("front", "rear") for name in ("clearance", "hub", "track_mm")},
    ),
}
HOSTILE = '<script>alert("1")</script><img src=x onerror=alert(1)>&amp;'


@pytest.fixture(scope="module", params=sorted(CASES))
def found(request):
    return check(CASES[request.param])


@pytest.fixture(scope="module")
def page(found):
    return Page(render_report(found))


def plain(text):
    return " ".join(text.split())


def test_every_finding_is_in_it(found, page):
    assert [each.message for each in found.findings if plain(each.message) not in page.words] == []


def test_every_remedy_is_in_it(found, page):
    remedies = [each.remedy.text for each in found.findings if each.remedy is not None]
    assert [text for text in remedies if plain(text) not in page.words] == []


@pytest.mark.parametrize(
    ("pack", "words"),
    [
        ("nz", "2 rules are held; none of them applies to this vehicle. Not held: No rule on the tyres of cars"),
        ("us", "3 rules are held; 1 of them applies to this vehicle, 1 is met. Not held: No federal rule"),
        ("nl", "7 rules are held; 4 of them apply to this vehicle, 3 are met. Not held: The same pressure"),
    ],
)
def test_it_says_how_much_of_the_law_is_held(pack, words):
    assert words in Page(render_report(check(saloon() | {"rule_pack": pack}))).words


def test_the_number_and_limit_of_what_is_not_met_are_in_it():
    found = check(UNSUITABLE)
    (finding,) = (each for each in found.findings if each.code == "load.capacity" and each.axle == "front")
    row = re.search(r"Front The axle's tyres carry.*?load\.capacity ([0-9]+ kg) ?([0-9]+ kg)", _spaced(found))
    assert row is not None
    assert list(row.groups()) == [f"{finding.measured:.0f} kg", f"{finding.limit:.0f} kg"]


def _spaced(found):
    return Page(re.sub(r"</(td|th)>", r" </\1>", render_report(found))).words


def test_every_action_is_in_it(found, page):
    assert [each.text for each in found.actions if plain(each.text) not in page.words] == []


def test_every_caution_is_in_it(found, page):
    assert [text for text in found.cautions.values() if plain(text) not in page.words] == []


def test_every_assumption_is_in_it(found, page):
    assert [text for text in found.assumptions if plain(text) not in page.words] == []


def test_every_word_of_every_source_is_in_it(found, page):
    # The report prints what references share once, so the words are looked for and not the sentence.
    words = {word for each in found.findings for word in re.findall(r"[\w.§-]+", each.basis.reference)}
    missing = {word for word in words if word.rstrip(".") not in page.words}
    # How a reference ends that was not read: its status says so.
    assert missing <= {"text", "not", "read", "checked"}


def test_every_finding_points_at_a_source_that_is_there(page):
    targets = {each["href"].removeprefix("#") for each in page.named("a")}
    ids = {each.attributes["id"] for each in page.tags if "id" in each.attributes}
    assert targets
    assert targets <= ids


def test_the_verdict_stands_in_words_and_as_a_mark(page, found):
    words = {
        "suitable": "It fits",
        "suitable_with_conditions": "It fits, with conditions",
        "undetermined": "Not known yet",
        "not_recommended": "We advise against it",
        "unsuitable": "Do not fit",
    }
    assert words[found.verdict] in page.words
    assert f"mark {found.verdict.replace('_', '-')}" in [each.get("class") for each in page.named("svg")]


def test_version_and_edition_are_in_it(found, page):
    pack = found.case.pack
    assert f"Fitment service {__version__}, rule pack {pack.id}, edition {pack.edition}" in page.words


def test_what_speaks_against_it_stands_before_what_is_met(page, found):
    titles = [
        "Speaks against it",
        "Advised against",
        "To be settled first",
        "Needs attention",
        "Open, and decides nothing",
        "Answered and met",
    ]
    places = [page.words.index(title) for title in titles if title in page.words]
    assert places == sorted(places)


ORDER = (
    '<section class="verdict',
    '<section class="jobs"',
    ">Why</h2>",
    ">Before and after</h2>",
    '<details class="drawings"',
    '<details class="sources"',
    '<section class="cautions"',
)


def test_what_must_be_done_comes_first_then_why_then_the_numbers(found):
    text = render_report(found)
    # Where nothing stands in the way, nobody asks why.
    places = [text.index(each) for each in ORDER if each != ">Why</h2>" or each in text]
    assert places == sorted(places)
    assert (">Why</h2>" in text) == (found.verdict != "suitable")


def test_a_job_has_a_box_that_can_be_ticked_and_a_danger_has_none(found, page):
    boxes = [each for each in page.named("input") if each["type"] == "checkbox"]
    jobs = [each for each in found.actions if each.code not in ("do_not_fit", "would_not_fit", "settle_first")]
    assert len(boxes) == len(jobs)
    assert not any({"checked", "disabled"} & set(each) for each in boxes)


def test_what_the_workshop_fills_in_has_a_line(found, page):
    for name in ("Vehicle", "Registration", "Odometer", "Date", "Workshop", "Signature"):
        assert name in page.words
    # Nothing is tightened that must not be fitted. A signature is for the pen.
    fits = found.verdict != "unsuitable"
    assert ("Torque (N m)" in page.words) == fits
    assert len([each for each in page.named("input") if each["type"] == "text"]) == 5 + fits


SHORT = {
    "suitable": True,
    "with conditions": False,
    # Load index and speed symbol of one axle are missing.
    "undetermined": True,
    # Winter tyres in front only.
    "advised against": True,
    # The room is scarce, and the drawing shows it.
    "scarce today": False,
    "unsuitable": False,
}


@pytest.mark.parametrize("name", sorted(SHORT))
def test_a_short_answer_has_drawings_and_sources_folded(name):
    folds = Page(render_report(check(CASES[name]))).named("details")
    assert len(folds) >= 3
    assert {"open" not in each for each in folds} == {SHORT[name]}


def test_two_reasons_are_still_read_at_a_glance():
    slower = {f"/candidate/{axle}/tyre/size": "225/45 R17 94H XL" for axle in ("front", "rear")}
    one = check(changed(saloon(), {"/candidate/front/tyre/size": slower["/candidate/front/tyre/size"]}))
    both = check(changed(saloon(), slower))
    assert [each.code for each in both.findings if each.outcome > ADVISORY] == ["speed.capability"] * 2
    assert is_short(one)
    assert is_short(both)
    three = check(changed(saloon(), slower | {"/candidate/rear/pressure_kpa": 190}))
    assert len([each for each in three.findings if each.outcome >= ADVISORY]) == 3
    assert not is_short(three)


def test_present_stands_before_proposed_change_and_limit():
    line = "Overall diameter, new 634 mm 596 mm −6 % ± 3 %"
    assert "Present Proposed Change Limit" in _spaced(check(UNSUITABLE))
    assert line in _spaced(check(UNSUITABLE))


def test_both_drawings_are_in_it(page):
    assert [each["id"] for each in page.named("svg") if "id" in each] == ["section", "patches"]


def test_no_id_stands_twice(page):
    ids = [each.attributes["id"] for each in page.tags if "id" in each.attributes]
    assert len(ids) == len(set(ids))


def test_a_hostile_label_is_shown_and_not_obeyed():
    page = Page(render_report(check(changed(saloon(), {"/candidate/label": HOSTILE}))))
    assert page.named("script") == page.named("img") == []
    # In the title and in the heading.
    assert page.words.count(HOSTILE) == 2


def test_it_asks_for_nothing_from_elsewhere(page):
    asked = [
        (each.name, name)
        for each in page.tags
        for name, value in each.attributes.items()
        if name in ("src", "href", "srcset", "action", "data") and not str(value).startswith("#")
    ]
    assert asked == []


def test_its_policy_admits_the_style_it_has_and_no_other(found):
    (style,) = re.findall(r"<style>(.*?)</style>", render_report(found), re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    assert f"style-src 'sha256-{digest}';" in policy()


def test_the_same_question_gives_the_same_report(found):
    assert render_report(found) == render_report(found)


def test_the_job_card_stands_in_its_order_and_danger_is_marked():
    found = check(CASES["advised against"])
    text = render_report(found)
    places = [text.index(re.sub(r"'", "&#39;", each.text)) for each in found.actions]
    assert places == sorted(places)
    assert '<li class="danger">We advise against it' in text


def test_what_is_so_today_is_marked():
    page = Page(render_report(check(CASES["scarce today"])))
    assert "today already The" in page.words
    assert "today already" not in Page(render_report(check(CASES["with conditions"]))).words


def test_what_the_change_brings_stands_before_what_is_so_today():
    changes = {"/vehicle/front/clearance/inboard_mm": 3, "/candidate/rear/tyre/tread_depth_mm": 2.5}
    found = check(changed(saloon(), changes))
    advisory = [each for each in found.findings if each.outcome == ADVISORY]
    assert {each.already for each in advisory} == {False, True}
    text = Page(render_report(found)).words
    today = text.index("today already The")
    places = [text.index(plain(each.message), text.index("Needs attention")) for each in advisory if not each.already]
    assert all(place < today for place in places)
