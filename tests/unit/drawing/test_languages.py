"""A drawing in another language: every word of it said, numbers as they are written there, inches where asked for."""

import re
from xml.etree.ElementTree import fromstring

import pytest

from service.core.saying import Said
from service.drawing.patches import draw_patches
from service.drawing.scene import scenes
from service.drawing.section import draw_section
from service.locales.speech import speech
from tests.support.cases import ABSENT, changed, check, saloon
from tests.support.pseudo import bracketed, outside
from tests.unit.drawing.reading import SVG, ends, length, words

DRAWINGS = {"section": draw_section, "patches": draw_patches}
CASES = {
    "everything stated": {},
    "nothing measured": {
        f"/vehicle/{axle}/{name}": ABSENT for axle in ("front", "rear") for name in ("clearance", "hub", "track_mm")
    },
    "no offset": {"/vehicle/front/fitted/rim/size": "7.5J x 17", "/candidate/rear/rim/size": "8J x 18"},
    "no size": {"/candidate/front/tyre/size": "185 R16 88S", "/vehicle/rear/fitted/tyre/size": "185 R16 88S"},
    "crushed": {"/vehicle/front/max_axle_mass_kg": 15000, "/vehicle/front/kerb_axle_mass_kg": 15000},
    "twin": {"/vehicle/rear/wheels_per_side": 2},
    "twin without offset": {
        "/vehicle/rear/wheels_per_side": 2,
        "/vehicle/rear/fitted/rim/size": "7.5J x 17",
        "/candidate/rear/rim/size": "8J x 18",
    },
    "no room": {f"/vehicle/front/clearance/{side}_mm": 0 for side in ("inboard", "outboard", "radial")},
}
# What reads the same in all languages of the house: units of the metric system and the mark on a rim.
ALIKE = {"mm", "cm", "kPa", "kg", "ET"}
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"


@pytest.fixture(params=sorted(DRAWINGS))
def draw(request):
    return DRAWINGS[request.param]


@pytest.fixture(params=sorted(CASES))
def case(request):
    return check(changed(saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET38")), CASES[request.param]))


def designations(found):
    """Return tyres and rims, which no language changes, the longest first."""
    vehicle, candidate = found.case.vehicle, found.case.candidate
    fitments = (vehicle.front.fitted, vehicle.rear.fitted, candidate.front, candidate.rear)
    said = [each.designation.canonical for fitment in fitments for each in (fitment.tyre, fitment.rim)]
    return sorted(said, key=len, reverse=True)


def unsaid(text, found):
    """Return the words outside all brackets."""
    left = outside(text)
    for each in designations(found):
        left = left.replace(each, "")
    return set(re.findall(r"[A-Za-z]{2,}", left)) - ALIKE


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_no_word_is_left_unsaid(draw, case, units):
    root = fromstring(draw(case, "both", bracketed(units)))
    told = [" ".join(words(root)), root.findtext(f"{SVG}title"), root.findtext(f"{SVG}desc")]
    assert [unsaid(each, case) for each in told] == [set()] * 3


def test_what_was_never_said_would_be_found(found):
    assert unsaid(" ".join(words(fromstring(draw_section(found)))), found) >= {"Front", "rim", "strut"}


@pytest.mark.parametrize("language", ["en", "de", "fr", "es", "nl"])
def test_the_language_stands_at_the_root(draw, found, language):
    assert fromstring(draw(found, "both", speech(language))).attrib[XML_LANG] == language


def test_the_notes_of_a_scene_are_sayings():
    request = changed(saloon(), CASES["no offset"] | CASES["twin without offset"])
    notes = [note for scene in scenes(check(request), "both") for note in scene.notes]
    assert len(notes) >= 3
    assert all(isinstance(note, Said) for note in notes)


def test_lengths_are_written_with_a_decimal_comma(found):
    # 8 and 8.5 in of rim at 25.4 mm an inch are 203.2 and 215.9 mm, 7.5 in are 190.5 mm.
    told = words(fromstring(draw_section(found, "both", speech("de"))))
    assert {"203,2 (190,5)", "215,9 (190,5)"} <= {each.partition(" ")[2] for each in told}


def test_lengths_are_in_inches_where_asked_for(found):
    # A rim's designation is in inches: 8J and 8.5J against 7.5J. Its offset is in millimetres everywhere.
    told = words(fromstring(draw_section(found, "both", speech("en", "imperial"))))
    assert {"rim 8 (7.5)", "rim 8.5 (7.5)", "ET 38 (45)", "ET 41 (45)"} <= set(told)
    assert "in inches" in " ".join(told)
    assert "in mm;" not in " ".join(told).replace("(ET) in mm;", "")


def test_a_patch_is_told_in_square_inches_and_psi(found):
    # 250 kPa are 36.3 psi: 6.894757 kPa a psi, from the pound and the inch of 1959.
    told = " ".join(words(fromstring(draw_patches(found, "both", speech("en", "imperial")))))
    assert "at 36.3 psi and " in told
    assert not re.search(r"kPa|\bkg|cm²|\bmm", told)


@pytest.mark.parametrize(("units", "bar_mm", "told"), [("metric", 100.0, "100 mm"), ("imperial", 101.6, "4 in")])
def test_the_scale_bar_is_as_long_as_it_says(draw, found, units, bar_mm, told):
    drawing = fromstring(draw(found, "both", speech("en", units)))
    assert length(drawing, f"{drawing.attrib['id']}-scale-bar") == pytest.approx(bar_mm, abs=0.0022)
    assert told in words(drawing)


def test_the_drawing_itself_is_the_same_in_every_unit(found):
    drawn = [fromstring(draw_section(found, "both", speech("en", units))) for units in ("metric", "imperial")]
    assert len({length(each, "front-overall-diameter") for each in drawn}) == 1


@pytest.mark.parametrize("view", sorted(DRAWINGS))
def test_the_scale_bar_has_ticks_at_its_ends_and_in_its_middle(found, view):
    drawing = fromstring(DRAWINGS[view](found))
    x1, y, x2, _ = ends(drawing, f"{view}-scale-bar")
    lines = [{key: float(each.attrib[key]) for key in ("x1", "y1", "x2", "y2")} for each in drawing.iter(f"{SVG}line")]
    ticks = sorted(each["x1"] for each in lines if each["x1"] == each["x2"] and each["y1"] < y < each["y2"])
    assert ticks == [pytest.approx(each, abs=0.002) for each in (x1, (x1 + x2) / 2, x2)]


def test_the_note_of_a_spacer_says_how_thick_it_is_and_under_which_wheel():
    spacers = {"/vehicle/front/fitted/spacer_mm": 12, "/candidate/front/spacer_mm": 20}
    told = " ".join(words(fromstring(draw_section(check(changed(saloon(), spacers)), "front"))))
    assert "The present wheel stands on a spacer of 12 mm" in told
    assert "The proposed wheel stands on a spacer of 20 mm" in told
