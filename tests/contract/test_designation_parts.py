"""What `GET /v1/designations/tyre` tells of sizes as they are printed and typed: sidewall practice, no source."""

import pytest

from tests.support.cases import saloon
from tests.support.wire import check, client


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("205/55-16", {"construction": "diagonal", "structure_assumed": True, "unread": []}),
        ("205/55 16", {"construction": "radial", "structure_assumed": True}),
        ("205/55 R16", {"construction": "radial", "structure_assumed": False}),
        ("185 SR14 6PR TL", {"speed_letter": "S", "speed_symbol": "S", "ply_rating": 6, "tube": "tubeless"}),
        ("7.00 R16 C", {"section_width_in": 7.0, "commercial": "C", "structure_assumed": False}),
        # An inch is 25.4 mm: 7 inches are 177.8 mm and 12 are 304.8 mm, without a tail of binary digits.
        ("7.00 R16 C", {"section_width_mm": 177.8}),
        ("12 R22.5", {"section_width_mm": 304.8}),
        ("205/55 R16 91V Meadow ABC", {"unread": ["Meadow", "ABC"], "load_index": 91}),
    ],
)
def test_a_designation_is_told_with_what_was_assumed_and_passed_over(text, parts):
    answer = client().get("/v1/designations/tyre", params={"text": text})
    assert answer.status_code == 200
    assert {name: answer.json().get(name) for name in parts} == parts


def test_words_that_are_not_known_give_one_assumption_an_axle_in_a_check():
    asked = saloon()
    asked["candidate"]["front"]["tyre"]["size"] += " Meadow ABC"
    (told,) = [each for each in check(asked)["assumptions"] if "Meadow" in each]
    assert told.startswith("Front: Not read: Meadow, ABC.")


def test_what_was_passed_over_in_the_present_tyre_is_told_too_and_once_where_it_stays():
    asked = saloon()
    asked["vehicle"]["rear"]["fitted"]["tyre"]["size"] += " Meadow"
    (told,) = [each for each in check(asked)["assumptions"] if "Meadow" in each]
    assert told.startswith("Rear, present tyre: Not read: Meadow.")
    asked["candidate"]["rear"]["tyre"]["size"] += " Meadow"
    (told,) = [each for each in check(asked)["assumptions"] if "Meadow" in each]
    assert told.startswith("Rear: Not read: Meadow.")


def test_the_structure_that_was_taken_from_a_dash_of_the_present_tyre_is_told():
    asked = saloon()
    asked["vehicle"]["rear"]["fitted"]["tyre"]["size"] = "225/45-17 94W XL"
    assert any(each.startswith("Rear, present tyre: The dash") for each in check(asked)["assumptions"])
