"""What a plot says: every candidate by name with its numbers, in the reader's language, whatever a label holds."""

import re
from dataclasses import replace
from xml.etree.ElementTree import fromstring

import pytest

from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.core.saying import say
from service.drawing.lettering import clean, width_of
from service.drawing.paper import MOST_LABEL
from service.drawing.plot_sheet import TEXT_UNITS
from service.drawing.plots import PLOTS
from service.locales.speech import LANGUAGES, speech
from tests.support.pseudo import bracketed, lengthened, outside
from tests.unit.drawing.plotting import PLACES, checked, plotted, question
from tests.unit.drawing.reading import SVG, words
from tests.unit.drawing.test_languages import ALIKE, designations

HOSTILE = (
    '"><script>alert(1)</script>',
    "</text></svg><svg onload=alert(1)>",
    "&lt;b&gt; &amp; &#x26; <![CDATA[x]]>",
    "{letter} {0} %s {tyre.__class__}",
    "a\x00b\x1b\ud800",
    "x" * 80,
    "\N{RIGHT-TO-LEFT OVERRIDE}gnp.exe",
    "present",
)


@pytest.fixture(params=sorted(PLOTS))
def draw(request):
    return PLOTS[request.param]


@pytest.fixture(scope="module")
def candidates():
    return plotted(*map(question, PLACES))


def relabelled(labels):
    """Return candidates with labels that no request would be let in with."""
    made = []
    for each, label in zip(plotted(*(question(1) for _ in labels)), labels, strict=True):
        case = each.found.case
        renamed = case._replace(candidate=case.candidate._replace(label=label))
        made.append(each._replace(found=replace(each.found, case=renamed)))
    return made


def test_title_and_description_name_the_plot(draw, candidates):
    root = fromstring(draw(candidates))
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-labelledby"].split() == [root[0].attrib["id"], root[1].attrib["id"]]
    assert root[0].text


@pytest.mark.parametrize("place", PLACES)
def test_who_does_not_see_it_hears_each_candidate_with_its_verdict(draw, candidates, place):
    told = fromstring(draw(candidates))[1].text
    assert f"({question(place)['candidate']['label']}): {VERDICT_WORDS[candidates[place].found.verdict]}." in told


def signed(value):
    """Return a number as it is printed: no idle zeros, a plus or a true minus before what is not zero."""
    sign = "+" if value > 0 else "\N{MINUS SIGN}" if value < 0 else ""
    return f"{sign}{abs(value):g}"


@pytest.mark.parametrize("place", PLACES)
def test_the_balance_is_told_with_the_numbers_of_the_check(candidates, place):
    found = checked(place)["vehicle"]["balance"]["understeer_gradient_change_deg_per_g"]
    value, low, high = (signed(found[end]) for end in ("value", "low", "high"))
    told = fromstring(PLOTS["balance"](candidates))[1].text
    assert f"Understeer gradient {value} deg/g ({low} to {high})." in told


@pytest.mark.parametrize("place", PLACES)
def test_the_outlines_are_told_with_the_sizes_of_the_check(candidates, place):
    told = fromstring(PLOTS["outlines"](candidates))[1].text
    for axle in ("front", "rear"):
        proposed = checked(place)["axles"][axle]["proposed"]
        diameter, width = f"{proposed['overall_diameter_mm']:.0f}", f"{proposed['section_width_mm']:.0f}"
        assert f"overall diameter {diameter} mm, section width {width} mm." in told


def test_a_candidate_without_a_label_is_named_by_what_it_changes(draw):
    told = fromstring(draw(relabelled([""])))[1].text
    assert "A (Front: 245/40 R18 97Y XL on 8J x 18 H2 ET38. Rear: 255/40 R18 99Y XL on 8.5J x 18 H2 ET41.)" in told


@pytest.mark.parametrize("label", HOSTILE)
def test_a_label_is_text_and_nothing_else(draw, label):
    drawn = draw(relabelled([label]))
    root = fromstring(drawn)
    assert {each.tag.removeprefix(SVG) for each in root.iter()} <= {
        *("svg", "title", "desc", "style", "defs", "pattern", "rect", "g", "line", "path", "text"),
    }
    assert not [name for each in root.iter() for name in each.attrib if name.startswith("on")]
    assert clean(label, MOST_LABEL) in root[1].text
    assert "\x00" not in drawn


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_no_word_is_left_unsaid(draw, candidates, units):
    notes = [say("{letter} cannot be read: {reason}", letter="M", reason=say("Send well-formed JSON."))]
    root = fromstring(draw(candidates, notes, bracketed(units)))
    for text in (" ".join(words(root)), root[0].text, root[1].text):
        left = outside(text)
        for each in candidates:
            for name in (each.name, *designations(each.found)):
                left = left.replace(name, "")
        assert set(re.findall(r"[A-Za-z]{2,}", left)) - ALIKE == set()


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_language_stands_at_the_root_and_changes_no_place(draw, candidates, language):
    root = fromstring(draw(candidates, (), speech(language)))
    assert root.attrib["{http://www.w3.org/XML/1998/namespace}lang"] == language
    assert root[1].text.count("set no.") == len(PLACES)


def test_numbers_have_a_decimal_comma_where_they_are_written_so(candidates):
    told = fromstring(PLOTS["balance"](candidates, (), speech("de")))[1].text
    assert re.search(r"Eigenlenkgradient [+\N{MINUS SIGN}]?0,\d", told)


def test_no_line_is_wider_than_the_sheet_in_a_longer_language(draw, candidates):
    root = fromstring(draw(candidates, (), lengthened()))
    unit = float(root.attrib["viewBox"].split()[2]) / (TEXT_UNITS + 32.0)
    for each in root.iter(f"{SVG}text"):
        if each.get("text-anchor") is None and not each.get("transform"):
            size = float(each.attrib["font-size"]) / unit
            assert float(each.attrib["x"]) / unit + 0.9 * width_of(each.text or "", size) <= TEXT_UNITS + 32.0


def test_words_are_no_smaller_than_ten_pixels_on_a_narrow_telephone(draw, candidates):
    # 360 CSS pixels across the sheet; 10 of them are the least that is read without effort: common practice, no source.
    root = fromstring(draw(candidates))
    width = float(root.attrib["viewBox"].split()[2])
    sizes = [float(each.attrib["font-size"]) * 360 / width for each in root.iter(f"{SVG}text")]
    assert min(sizes) >= 10.0


def test_the_same_candidates_give_the_same_bytes(draw, candidates):
    assert draw(candidates) == draw(plotted(*map(question, PLACES)))


def test_the_style_can_be_left_to_the_page(draw, candidates):
    assert fromstring(draw(candidates, styled=False)).find(f"{SVG}style") is None
