"""What holds for every drawing: valid, quiet, readable without colour, and safe with a caller's text."""

from itertools import pairwise
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing import paper
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, stroke
from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from tests.support.cases import ABSENT, changed, check, saloon
from tests.unit.drawing.reading import SVG, element, words

DRAWINGS = {"section": draw_section, "patches": draw_patches}
HOSTILE = "\"><script>alert('1')</script>&amp;\ufffe]]>"
CASES = {
    "everything stated": {},
    "nothing measured": {
        f"/vehicle/{axle}/{name}": ABSENT
        for axle in ("front", "rear")
        for name in ("clearance", "hub", "track_mm", "kerb_axle_mass_kg", "min_rim_diameter_in")
    },
    "no offset": {"/vehicle/front/fitted/rim/size": "7.5J x 17", "/candidate/rear/rim/size": "8J x 18"},
    "no size": {"/candidate/front/tyre/size": "185 R16 88S", "/candidate/rear/tyre/overall_diameter_mm": 400},
    "crushed": {"/vehicle/front/max_axle_mass_kg": 15000, "/vehicle/front/kerb_axle_mass_kg": 15000},
    "narrower than its rim": {"/candidate/front/tyre/section_width_mm": 60},
    "far out": {"/candidate/front/rim/size": "16J x 18 ET-150"},
    "tiny": {"/candidate/front/tyre/size": "60/15 R8 0B", "/candidate/front/rim/size": "3J x 8 ET10"},
    "huge": {"/candidate/front/tyre/size": "500/100 R30C 200/200P", "/candidate/front/rim/size": "16J x 30 ET0"},
    "twin": {"/vehicle/rear/wheels_per_side": 2},
    "twin without offset": {
        "/vehicle/rear/wheels_per_side": 2,
        "/vehicle/rear/fitted/rim/size": "7.5J x 17",
        "/candidate/rear/rim/size": "8J x 18",
    },
    "no bolt circle": {
        pointer: ABSENT
        for axle in ("front", "rear")
        for pointer in (
            f"/vehicle/{axle}/hub",
            f"/vehicle/{axle}/fitted/rim/bolt_circle",
            f"/candidate/{axle}/rim/bolt_circle",
        )
    },
}


@pytest.fixture(params=sorted(DRAWINGS))
def draw(request):
    return DRAWINGS[request.param]


@pytest.mark.parametrize("name", sorted(CASES))
def test_every_case_is_drawn_as_valid_xml_without_a_number_that_is_none(draw, name):
    request = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET38"))
    text = draw(check(changed(request, CASES[name])))
    root = fromstring(text)
    values = " ".join(value for each in root.iter() for value in each.attrib.values()).split()
    assert not {"nan", "inf", "-inf"} & set(values)


def test_a_caller_s_text_is_text_and_nothing_else(draw):
    root = fromstring(draw(check(changed(saloon(), {"/candidate/label": HOSTILE}))))
    assert not [each for each in root.iter() if each.tag.endswith("script")]
    assert any("<script>alert('1')</script>" in each for each in words(root))


def test_a_character_that_xml_cannot_hold_is_replaced(draw):
    text = draw(check(changed(saloon(), {"/candidate/label": "a\ufffeb"})))
    assert "\ufffe" not in text
    assert "a\ufffdb" in text


def test_a_long_label_is_cut(draw):
    root = fromstring(draw(check(changed(saloon(), {"/candidate/label": "x" * 80}))))
    assert "".join(each for each in words(root) if set(each) <= {"x", "…"}) == "x" * 59 + "…"


def test_no_script_no_link_and_no_outside_reference_is_in_it(draw, found):
    root = fromstring(draw(found))
    names = {name.rpartition("}")[2] for each in root.iter() for name in each.attrib}
    assert not {name for name in names if name.startswith("on") or name in ("href", "style")}
    assert {each.tag.removeprefix(SVG) for each in root.iter()} <= {
        *("svg", "title", "desc", "style", "defs", "pattern", "g"),
        *("line", "path", "rect", "text"),
    }


def test_no_id_stands_twice(draw, found):
    ids = [each.attrib["id"] for each in fromstring(draw(found)).iter() if "id" in each.attrib]
    assert len(ids) == len(set(ids))


def test_two_drawings_in_one_page_share_no_id(found):
    first, second = (
        {each.attrib["id"] for each in fromstring(draw(found)).iter() if "id" in each.attrib}
        for draw in DRAWINGS.values()
    )
    assert not first & second


def test_title_and_description_name_the_drawing(draw, found):
    root = fromstring(draw(found))
    named = [element(root, name).tag for name in root.attrib["aria-labelledby"].split()]
    assert named == [f"{SVG}title", f"{SVG}desc"]


def test_the_description_says_the_values_that_the_section_shows(found, section):
    said = section.findtext(f"{SVG}desc")
    assert f"overall diameter {found.car.front.then.geometry.overall_diameter_mm:.0f} " in said


@pytest.mark.parametrize("note", ["no offset", "no size", "twin without offset", "no bolt circle"])
def test_what_could_not_be_drawn_is_named_in_a_note(note):
    expected = {
        "no offset": "states no offset",
        "no size": "tyre is not drawn",
        "twin without offset": "one of the two is drawn",
        "no bolt circle": "the hub is drawn as a plain line",
    }
    request = changed(saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET38")), CASES[note])
    assert expected[note] in " ".join(words(fromstring(draw_section(check(request)))))


def test_present_and_proposed_differ_in_dashes_and_width_not_only_in_colour(section):
    present, proposed = (element(section, f"front-{which}-tyre").attrib for which in ("present", "proposed"))
    assert "stroke-dasharray" in present
    assert "stroke-dasharray" not in proposed
    assert float(proposed["stroke-width"]) == pytest.approx(2 * float(present["stroke-width"]))


@pytest.mark.parametrize(
    ("line", "dashes"),
    [(WIDE, None), (NARROW, None), (CHAIN, "30 3.75 0.625 3.75"), (PHANTOM, "30 3.75 0.625 3.75 0.625 3.75")],
)
def test_a_line_type_has_the_standard_s_dashes(line, dashes):
    # ISO 128-2 (from memory): in line widths, long dash 24, gap 3, dot no more than 0.5; here 0.25 mm of paper at 1:5.
    assert stroke(line, 1.0).get("stroke-dasharray") == dashes


def test_one_axle_is_drawn_at_the_scale_of_both(found):
    one, other = (fromstring(draw_section(found, axle)) for axle in ("front", "rear"))
    assert one.attrib["viewBox"] == other.attrib["viewBox"]


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_one_axle_alone_leaves_the_other_out(draw, found, axle):
    other = {"front": "Rear axle", "rear": "Front axle"}[axle]
    assert other not in words(fromstring(draw(found, axle)))


def test_light_and_dark_are_left_to_the_reader():
    assert "prefers-color-scheme:dark" in paper.STYLE


def test_the_style_can_be_left_to_the_page(draw, found):
    assert fromstring(draw(found, styled=False)).find(f"{SVG}style") is None


def test_a_larger_thing_is_drawn_at_a_smaller_scale():
    scales = [paper.scale_for(height) for height in (100.0, 500.0, 800.0, 1500.0, 9000.0)]
    assert all(one <= other for one, other in pairwise(scales))
    assert scales[0] < scales[-1]
