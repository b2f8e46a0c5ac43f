"""Every text of the readers can be said in another language, down to what fills it."""

import pytest

from service.core.errors import DomainError
from service.core.saying import Said
from service.designation import commercial
from service.designation.bolt_circle import parse_bolt_circle
from service.designation.rim import parse_rim
from service.designation.rim_numbers import rim_from_both, rim_from_numbers
from service.designation.scope import OtherVehicle
from service.designation.tyre import parse_tyre
from service.designation.tyre_numbers import tyre_from_both, tyre_from_numbers
from tests.support.sayings import unsaid

TYRES = [
    "",
    "tyre",
    "ER70-14",
    "205",
    "205/5 R16",
    "205/55",
    "205/55 R25",
    "205/55R16 280V",
    "205/55R16 91",
    "205/55R16 91T/H",
    "205/55R16 91V 94V",
    "20555 R16",
    "205/55 R16 9lV",
    "205/55 RI6 91V",
    "205,55 R16",
    "205/55 R16XL",
    "600/55 R16",
    "P205 R16",
    "6.50 16",
    "2.1-15",
    "31x",
    "20x10.50 R15",
    "31x3 R15",
    "31x10.50 15",
    "26x10.50 R22",
    "31x10 R15",
    "120/70ZR17 58W",
    "420/85R28",
    "20.5R25",
    "ST225/75R15",
    "205/55R16 (91V)",
    "205/55R16 ?",
    "205/55R16 91V 7",
    "205/55 R16 91V a?b",
]
RIMS = [
    "",
    "7",
    "7J18",
    "7x7",
    "7Jx18J",
    "18Jx7",
    "2x18",
    "7x40",
    "17x17.5",
    "7.3x17",
    "16x16",
    "7Jx18 ET",
    "7Jx18 Q",
    "7JxI6 ET45",
    "14Jx13",
    "7x8 1/2",
]
CIRCLES = ["", "2x112", "5", "5y112", "5x70", "5x112 x", "112x2", "5x112x5", "l12x5"]
ASSUMED_TYRES = [
    "205/55-16",
    "205/55 16",
    "205 R16",
    "165 SR13",
    "6.40S13",
    "205/60VR15",
    "165 SR13 82T",
    "205/55R16 91V RF",
    "205/55R16 91V HL",
    "235/85R16 LT",
    "215/65R16 109/107T C",
    "205/55R16 91V Meadow",
    "195/75R16C 107/105R 110N",
    "6.50-16",
]
FIELDS_AND_FLAGS = ("radial, diagonal, bias_belted", "radial", "true", "false", "woven", "extra_load", "standard")


def refusal(read, *given, **numbers):
    with pytest.raises(DomainError) as caught:
        read(*given, **numbers)
    return caught.value


def check(text, given=()):
    assert isinstance(text, Said), text
    assert unsaid(text, given) == []


@pytest.mark.parametrize("text", TYRES)
def test_the_refusal_of_a_tyre(text):
    error = refusal(parse_tyre, text)
    check(error.detail)
    check(error.expected)


@pytest.mark.parametrize("text", ["2" * 101, *RIMS])
def test_the_refusal_of_a_rim(text):
    error = refusal(parse_rim, text)
    check(error.detail)
    check(error.expected)


@pytest.mark.parametrize("text", CIRCLES)
def test_the_refusal_of_a_bolt_circle(text):
    error = refusal(parse_bolt_circle, text)
    check(error.detail)
    check(error.expected)


@pytest.mark.parametrize("text", ASSUMED_TYRES)
def test_what_is_assumed_of_a_tyre(text):
    assumed = parse_tyre(text).assumed
    assert assumed
    for each in assumed:
        check(each, {"Meadow"})


@pytest.mark.parametrize("text", ["7 x 16", "7.5J x 17"])
def test_what_is_assumed_of_a_rim(text):
    assumed = parse_rim(text).assumed
    assert assumed
    for each in assumed:
        check(each)


NUMBERS = [
    {"rim_diameter_in": None},
    {"rim_diameter_in": 16.3},
    {"section_width_mm": None},
    {"section_width_mm": 20500},
    {"aspect_ratio": 5},
    {"construction": "woven"},
    {"system": "p_metric", "aspect_ratio": None},
    {"load_index": 91},
    {"speed_symbol": "V"},
    {"load_index": 91, "speed_symbol": "V", "load_index_twin": 300},
    {"load_range": "Z"},
    {"ply_rating": 7},
    {"commercial": "LT", "load_version": "extra_load"},
]


@pytest.mark.parametrize("numbers", NUMBERS)
def test_the_refusal_of_numbers_that_make_no_tyre(numbers):
    size = {"section_width_mm": 205, "aspect_ratio": 55, "rim_diameter_in": 16}
    check(refusal(tyre_from_numbers, **{**size, **numbers}).detail, FIELDS_AND_FLAGS)


@pytest.mark.parametrize(
    "numbers",
    [{"width_in": None}, {"width_in": 7.3}, {"diameter_in": 40}, {"flange": "Q"}, {"hump": "H3"}, {"offset_mm": 191}],
)
def test_the_refusal_of_numbers_that_make_no_rim(numbers):
    check(refusal(rim_from_numbers, **{"width_in": 7.5, "diameter_in": 17, **numbers}).detail)


def test_the_refusal_of_numbers_beside_a_text_that_says_otherwise():
    texts = [
        refusal(tyre_from_both, "205/55R16 91V", load_index=94).detail,
        refusal(tyre_from_both, "31x10.50 R15LT", aspect_ratio=65).detail,
        refusal(rim_from_both, "7J x 17", one_piece=False).detail,
    ]
    for each in texts:
        check(each, FIELDS_AND_FLAGS)
    assert texts == [
        "The load index cannot be 94: expected 91, as the other numbers or the text say.",
        "The aspect ratio cannot be 65: expected no value, since the other numbers or the text give none.",
        "The statement on one piece or several cannot be false: expected true, as the other numbers or the text say.",
    ]


@pytest.mark.parametrize("vehicle", OtherVehicle)
def test_whose_tyre_it_is(vehicle):
    check(vehicle.value)


@pytest.mark.parametrize(
    "sign", [commercial.LETTERS, commercial.TWIN_INDEX, commercial.HIGH_INDEX, commercial.TRUCK_RIM]
)
def test_what_makes_a_tyre_a_commercial_one(sign):
    check(sign.text)
