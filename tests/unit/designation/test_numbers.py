"""Tyres and rims as numbers: the same designation as from the text, or an error that names the number."""

import math
from dataclasses import replace

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.composed import WrongNumber
from service.designation.refusal import OutOfScope
from service.designation.rim import parse_rim
from service.designation.rim_numbers import rim_agrees, rim_disagreements, rim_from_both, rim_from_numbers
from service.designation.tyre import parse_tyre
from service.designation.tyre_numbers import tyre_agrees, tyre_disagreements, tyre_from_both, tyre_from_numbers

SIZE = {"section_width_mm": 205, "aspect_ratio": 55, "rim_diameter_in": 16}
SERVICE = {"load_index": 91, "speed_symbol": "V"}

TYRES = [
    ("205/55 R16 91V", SIZE | SERVICE),
    ("205/55 R16 91V", SIZE | SERVICE | {"section_width_mm": 205.0, "load_version": None}),
    ("205/55 R16", SIZE),
    ("205/55 D16", SIZE | {"construction": "diagonal"}),
    ("205/55 R16 94V XL", SIZE | {"load_index": 94, "speed_symbol": "V", "load_version": "extra_load"}),
    ("205/55 R16 91V SL", SIZE | SERVICE | {"load_version": "standard"}),
    ("HL245/40 R20 102Y", {"section_width_mm": 245, "aspect_ratio": 40, "rim_diameter_in": 20,
                           "load_version": "high_load", "load_index": 102, "speed_symbol": "Y"}),
    ("P215/65 R15 95H", {"section_width_mm": 215, "aspect_ratio": 65, "rim_diameter_in": 15, "system": "p_metric",
                         "load_index": 95, "speed_symbol": "H"}),
    ("LT235/85 R16 120/116R E", {"section_width_mm": 235, "aspect_ratio": 85, "rim_diameter_in": 16,
                                 "commercial": "LT", "load_index": 120, "load_index_twin": 116, "speed_symbol": "R",
                                 "load_range": "E", "load_version": "standard"}),
    ("215/65 R16C 109/107T 8PR", {"section_width_mm": 215, "aspect_ratio": 65, "rim_diameter_in": 16,
                                  "commercial": "C", "load_index": 109, "load_index_twin": 107, "speed_symbol": "T",
                                  "ply_rating": 8}),
    ("155 R13 78S", {"section_width_mm": 155, "rim_diameter_in": 13, "load_index": 78, "speed_symbol": "S"}),
    ("6.50-16 6PR", {"section_width_in": 6.5, "rim_diameter_in": 16, "construction": "diagonal", "ply_rating": 6}),
    ("7.00 R16", {"section_width_in": 7.0, "rim_diameter_in": 16.0}),
    ("18 R22.5", {"section_width_in": 18, "rim_diameter_in": 22.5}),
    ("12 R22.5 152/148L", {"section_width_in": 12, "rim_diameter_in": 22.5, "load_index": 152,
                           "load_index_twin": 148, "speed_symbol": "L"}),
    ("31x10.50 R15LT 109S C", {"overall_diameter_in": 31, "section_width_in": 10.5, "rim_diameter_in": 15,
                               "commercial": "LT", "load_index": 109, "speed_symbol": "S", "load_range": "C"}),
]  # fmt: skip


@pytest.mark.parametrize(("text", "numbers"), TYRES)
def test_numbers_make_the_designation_that_their_text_makes(text, numbers):
    assert tyre_from_numbers(**numbers) == parse_tyre(text)


WRONG = [
    ({"section_width_mm": None}, "section_width_mm"),
    ({"rim_diameter_in": None}, "rim_diameter_in"),
    ({"section_width_mm": 205.5}, "section_width_mm"),
    ({"section_width_mm": 2050}, "section_width_mm"),
    ({"section_width_mm": -205}, "section_width_mm"),
    ({"section_width_mm": math.nan}, "section_width_mm"),
    ({"section_width_mm": math.inf}, "section_width_mm"),
    ({"section_width_mm": "205/60"}, "section_width_mm"),
    ({"aspect_ratio": 5}, "aspect_ratio"),
    ({"aspect_ratio": 55.5}, "aspect_ratio"),
    ({"rim_diameter_in": 7}, "rim_diameter_in"),
    ({"rim_diameter_in": 16.3}, "rim_diameter_in"),
    ({"rim_diameter_in": 160}, "rim_diameter_in"),
    ({"construction": "woven"}, "construction"),
    ({"system": "p_metric", "aspect_ratio": None}, "aspect_ratio"),
    ({"load_index": 91}, "speed_symbol"),
    ({"speed_symbol": "V"}, "load_index"),
    ({"load_index": 280, "speed_symbol": "V"}, "load_index"),
    ({"load_index": 91.5, "speed_symbol": "V"}, "load_index"),
    ({"load_index": 91, "speed_symbol": "X"}, "speed_symbol"),
    ({"load_index": 91, "speed_symbol": "V XL"}, "speed_symbol"),
    ({"load_index": 91, "speed_symbol": "V", "load_index_twin": 300}, "load_index_twin"),
    ({"load_range": "Z"}, "load_range"),
    ({"ply_rating": 7}, "ply_rating"),
    ({"ply_rating": 100}, "ply_rating"),
    ({"commercial": "D"}, "commercial"),
    ({"commercial": "LT", "load_version": "extra_load"}, "load_version"),
]


@pytest.mark.parametrize(("numbers", "name"), WRONG)
def test_an_error_names_the_number_that_is_wrong(numbers, name):
    with pytest.raises(WrongNumber) as caught:
        tyre_from_numbers(**{**SIZE, **numbers})
    assert (caught.value.name, caught.value.pointer) == (name, f"/{name}")


# 205/65 R15 is a size that is sold; widths end in 5 and ratios are fives (common practice, no source).
@pytest.mark.parametrize(
    ("numbers", "example"),
    [
        ({"aspect_ratio": 65, "rim_diameter_in": 15}, "millimetres, such as 205"),
        ({"section_width_mm": 205, "rim_diameter_in": 15, "commercial": "LT"}, "a number such as 65"),
    ],
)
def test_who_leaves_a_number_out_is_shown_one_of_a_size_that_exists(numbers, example):
    with pytest.raises(WrongNumber, match=example):
        tyre_from_numbers(**numbers)


def test_an_error_tells_the_bounds_of_a_width():
    with pytest.raises(WrongNumber, match="The section width cannot be 50: expected whole millimetres from 60 to 500"):
        tyre_from_numbers(**SIZE | {"section_width_mm": 50})


def test_the_numbers_of_a_motorcycle_tyre_are_out_of_scope():
    with pytest.raises(OutOfScope) as caught:
        tyre_from_numbers(section_width_mm=120, aspect_ratio=70, rim_diameter_in=17)
    assert caught.value.pointer == "/section_width_mm"


def test_text_and_numbers_that_agree_are_the_text():
    assert tyre_from_both("205/55R16 91V Meadow", **SIZE, **SERVICE) == parse_tyre("205/55R16 91V Meadow")


def test_numbers_may_add_the_service_description_that_a_text_lacks():
    assert tyre_from_both("205/55-16 Meadow", **SERVICE) == parse_tyre("205/55-16 Meadow 91V")


def test_a_load_index_completes_what_the_letter_inside_the_size_says():
    assert tyre_from_both("165 SR13", load_index=82) == parse_tyre("165 SR13 82S")
    # V inside the size is open upwards, and of a diagonal size a letter depends on the size: the symbol is asked for.
    for text in ("205/60VR15", "6.40S13", "6.40-13"):
        with pytest.raises(WrongNumber) as caught:
            tyre_from_both(text, load_index=82)
        assert caught.value.name == "speed_symbol"


def test_text_and_numbers_that_differ_are_refused_by_the_name_of_the_number():
    with pytest.raises(WrongNumber, match="load index cannot be 94: expected 91") as caught:
        tyre_from_both("205/55R16 91V", load_index=94)
    assert caught.value.name == "load_index"


def test_the_text_beside_numbers_must_be_readable():
    with pytest.raises(UnreadableDesignation):
        tyre_from_both("205", load_index=91, speed_symbol="V")


def test_agreement_is_told_number_by_number():
    tyre = parse_tyre("205/55R16 91V")
    assert tyre_agrees(tyre, **SIZE, **SERVICE)
    assert tyre_disagreements(tyre, section_width_mm=215, aspect_ratio=55, ply_rating=6) == (
        "section_width_mm",
        "ply_rating",
    )


RIMS = [
    ("7.5J x 17 H2 ET45", {"width_in": 7.5, "diameter_in": 17, "flange": "J", "hump": "H2", "offset_mm": 45}),
    ("7.5 x 17", {"width_in": 7.5, "diameter_in": 17}),
    ("7 x 15 ET-12.5", {"width_in": 7, "diameter_in": 15, "offset_mm": -12.5}),
    ("8.25 x 22.5 ET0", {"width_in": 8.25, "diameter_in": 22.5, "offset_mm": 0}),
    ("7T - 20", {"width_in": 7, "diameter_in": 20, "flange": "T", "one_piece": False}),
]


@pytest.mark.parametrize(("text", "numbers"), RIMS)
def test_numbers_make_the_rim_that_their_text_makes(text, numbers):
    made, read = rim_from_numbers(**numbers), parse_rim(text)
    assert replace(made, assumed=()) == replace(read, assumed=())
    # Which number the width is was said, so nothing is taken for it.
    assert made.assumed == tuple(each for each in read.assumed if "smaller number" not in each)


def test_the_width_is_taken_for_the_smaller_number_only_where_nobody_named_it():
    assert any("smaller number" in each for each in rim_from_both("7.5 x 17", offset_mm=45).assumed)
    assert not any("smaller number" in each for each in rim_from_both("7.5 x 17", width_in=7.5).assumed)


@pytest.mark.parametrize(
    ("numbers", "name"),
    [
        ({"width_in": None}, "width_in"),
        ({"diameter_in": None}, "diameter_in"),
        ({"width_in": 7.3}, "width_in"),
        ({"width_in": 2}, "width_in"),
        ({"width_in": 17, "diameter_in": 7}, "width_in"),
        ({"diameter_in": 17.3}, "diameter_in"),
        ({"diameter_in": 40}, "diameter_in"),
        ({"flange": "Q"}, "flange"),
        ({"hump": "H3"}, "hump"),
        ({"offset_mm": 191}, "offset_mm"),
        ({"offset_mm": math.nan}, "offset_mm"),
        ({"offset_mm": 45.125}, "offset_mm"),
    ],
)
def test_an_error_names_the_number_of_the_rim_that_is_wrong(numbers, name):
    with pytest.raises(WrongNumber) as caught:
        rim_from_numbers(**{"width_in": 7.5, "diameter_in": 17, **numbers})
    assert caught.value.name == name


WIDTHS = "whole, half or quarter inches from 3 to 16, below the diameter"


# A number is told as it was given, to a millionth; the bounds are those of the reader.
@pytest.mark.parametrize(
    ("numbers", "said"),
    [
        ({"diameter_in": 40}, "The rim diameter cannot be 40: expected a diameter code from 8 to 30, whole or half."),
        ({"width_in": 7.12345678}, f"The rim width cannot be 7.123457: expected {WIDTHS}."),
        ({"diameter_in": None}, "The rim diameter is missing: expected a diameter code, such as 17."),
        ({"width_in": None}, "The rim width is missing: expected inches between the flanges, such as 7.5."),
    ],
)
def test_an_error_tells_the_number_and_its_bounds(numbers, said):
    with pytest.raises(WrongNumber) as caught:
        rim_from_numbers(**{"width_in": 7.5, "diameter_in": 17, **numbers})
    assert str(caught.value) == said


def test_numbers_may_add_the_offset_that_a_rims_text_lacks():
    assert rim_from_both("7J x 17 H2", width_in=7, offset_mm=48) == parse_rim("7J x 17 H2 ET48")


def test_a_rims_text_and_numbers_that_differ_are_refused_by_the_name_of_the_number():
    with pytest.raises(WrongNumber) as caught:
        rim_from_both("7J x 17 ET45", offset_mm=48)
    assert caught.value.name == "offset_mm"
    assert not rim_agrees(parse_rim("7J x 17 ET45"), offset_mm=48)
    assert rim_disagreements(parse_rim("7J x 17 ET45"), offset_mm=45, width_in=7.0) == ()
