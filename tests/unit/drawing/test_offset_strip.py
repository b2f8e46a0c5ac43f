"""The strip of offsets beneath a section: as long as the window that `rims` finds, to scale, and told in words."""

from __future__ import annotations

import re
from xml.etree.ElementTree import Element, fromstring

import pytest

from service.core.findings import AxleName
from service.drawing.section import draw_section
from service.locales.speech import ENGLISH, Speech
from tests.support.cases import ABSENT, changed, check, saloon
from tests.support.pseudo import bracketed, lengthened, outside
from tests.support.wire import post
from tests.unit.drawing.sheet import Sheet

SVG = "{http://www.w3.org/2000/svg}"
PRESENT = saloon()
WIDER = saloon(("245/40 R17 95W XL", "8.5J x 17 H2 ET45"))


def drawn(request, said: Speech = ENGLISH, *, window: bool = True) -> Element:
    return fromstring(draw_section(check(request), "both", said, window=window))


def ends(sheet: Element, name: str) -> tuple[float, float] | None:
    """Return from where to where a box reaches across the car, from the hub face, as its path says."""
    found = [each for each in sheet.iter(f"{SVG}path") if each.get("id") == name]
    if not found:
        return None
    numbers = re.fullmatch(r"M (\S+) \S+ H (\S+) V \S+ H \S+ Z", found[0].get("d", ""))
    assert numbers is not None
    return float(numbers[1]), float(numbers[2])


def words(sheet: Element) -> list[str]:
    return [each.text or "" for each in sheet.iter(f"{SVG}text")]


def asked(request, axle: AxleName):
    """Return what `rims` finds of the proposed wheel of an axle."""
    fitted = request["candidate"][axle]
    found = post("/v1/fitments/rims", {"vehicle": request["vehicle"], "tyres": {axle: [fitted["tyre"]]}})
    width = float(fitted["rim"]["size"].split("J")[0])
    (window,) = [each for each in found["axles"][axle]["tyres"][0]["widths"] if each["width_in"] == width]
    return window


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("request_", [PRESENT, WIDER], ids=["present", "wider"])
def test_each_box_reaches_from_the_least_to_the_greatest_offset(request_, axle):
    sheet, window = drawn(request_), asked(request_, axle)
    for kind, name in (("suitable", "suitable"), ("with_conditions", "with-conditions")):
        expected = (window[kind]["from_mm"], window[kind]["to_mm"]) if kind in window else None
        assert ends(sheet, f"{axle}-offsets-{name}") == expected


def test_what_is_suitable_is_hatched_and_the_rest_outlined():
    (suitable,) = [e for e in drawn(PRESENT).iter() if e.get("id") == "front-offsets-suitable"]
    (some,) = [e for e in drawn(PRESENT).iter() if e.get("id") == "front-offsets-with-conditions"]
    assert (suitable.get("class"), some.get("class")) == ("hatched", "narrow")


def test_the_centre_line_of_the_wheel_stands_at_its_offset():
    (line,) = [e for e in drawn(PRESENT).iter() if e.get("id") == "front-offset-proposed"]
    assert (line.get("x1"), line.get("x2")) == ("45", "45")


def test_a_spacer_moves_the_centre_line_and_not_the_window():
    """The window tells where the wheel may stand, whatever holds it there."""
    spaced = drawn(changed(PRESENT, {"/candidate/front/spacer_mm": 5}))
    (line,) = [e for e in spaced.iter() if e.get("id") == "front-offset-proposed"]
    assert line.get("x1") == "40"
    assert ends(spaced, "front-offsets-suitable") == ends(drawn(PRESENT), "front-offsets-suitable")


def test_without_the_question_there_is_no_strip_and_the_sheet_is_as_it_was():
    bare = drawn(PRESENT, window=False)
    assert not [each for each in bare.iter() if "offsets" in each.get("id", "")]
    assert not [each for each in words(bare) if "Strip" in each]
    assert float(bare.get("viewBox", "").split()[3]) < float(drawn(PRESENT).get("viewBox", "").split()[3])


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"/candidate/front/rim/size": "5J x 17 ET45"}, "does not take this width of rim"),
        ({"/candidate/front/rim/size": "7.5J x 16 ET45"}, "does not take this width of rim"),
        ({"/candidate/front/rim/size": "7.5J x 17"}, "states no offset"),
        ({"/vehicle/front/max_axle_mass_kg": 1900}, "none does on this width of rim"),
        ({"/vehicle/front/fitted/rim/size": "7.5J x 17"}, "none does on this width of rim"),
    ],
)
def test_where_there_is_no_strip_it_is_said_why(changes, told):
    sheet = drawn(changed(PRESENT, changes))
    assert told in " ".join(words(sheet))
    assert ends(sheet, "front-offsets-with-conditions") is None
    assert ends(sheet, "rear-offsets-with-conditions") is not None


def test_the_description_tells_the_offsets():
    window = asked(PRESENT, "front")["suitable"]
    told = drawn(PRESENT).findtext(f"{SVG}desc") or ""
    assert f"Front axle: Offsets (ET) {window['from_mm']:g} to {window['to_mm']:g} are suitable" in told


@pytest.mark.parametrize("request_", [PRESENT, changed(PRESENT, {"/vehicle/front/clearance": ABSENT})])
def test_every_word_can_be_said_in_another_language(request_):
    # A sentence that is broken into lines has its brackets on two of them.
    said = " ".join(words(drawn(request_, bracketed())))
    assert not re.findall(r"Strip|suitable|conditions", outside(said))
    assert "Strip beneath a wheel" in said


def test_longer_words_stay_on_the_sheet():
    sheet = drawn(WIDER, lengthened())
    width = float(sheet.get("viewBox", "").split()[2])
    sizes = [
        (float(e.get("font-size", 0)), e.text or "")
        for e in sheet.iter(f"{SVG}text")
        if (e.text or "").startswith("ET")
    ]
    assert sizes
    assert all(0.56 * size * len(text) < 0.5 * width for size, text in sizes)


def test_the_strip_stands_beneath_the_section_width_and_its_words_beneath_the_strip():
    """46 units beneath the dimension, 10 high, its words centred 20 beneath its foot (the project's choice)."""
    sheet = Sheet(drawn(PRESENT))
    unit = sheet.unit
    for axle in ("front", "rear"):
        strip, centre = sheet.named(f"{axle}-offsets-with-conditions"), sheet.named(f"{axle}-offset-proposed")
        xs, ys = zip(*strip.points, strict=True)
        width = sheet.named(f"{axle}-section-width").points[0][1]
        assert (min(ys) - width, max(ys) - min(ys)) == (
            pytest.approx(46.0 * unit, abs=0.01),
            pytest.approx(10.0 * unit, abs=0.01),
        )
        # The wheel's centre line crosses it, a little further above than beneath.
        top, foot = (y for _, y in centre.points)
        assert (min(ys) - top, foot - max(ys)) == (
            pytest.approx(6.0 * unit, abs=0.01),
            pytest.approx(4.0 * unit, abs=0.01),
        )
        middle = 0.5 * (min(xs) + max(xs))
        (told,) = (
            each
            for each in sheet.words
            if each.text.startswith("ET ")
            and each.box.top > max(ys)
            and abs(each.box.left + each.box.right - 2 * middle) < 1
        )
        assert told.box.bottom - 0.2 * told.size - max(ys) == pytest.approx(20.0 * unit, abs=0.01)
    notes = [each for each in sheet.words if each.text.startswith("Needs attention")]
    assert all(each.box.top > told.box.bottom for each in notes)
