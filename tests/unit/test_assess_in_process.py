"""`service.assess`: the one function for notebooks and jobs.

The story's verdict by hand: UN R54 lets a V tyre carry 92.5 % of its load at 235 km/h (interpolated between 91 % at 240
and 94 % at 230), load index 91 is 615 kg, so an axle carries 2 x 615 x 0.925 = 1,138 kg, and it needs 1,180.
"""

import json
from datetime import date
from pathlib import Path

import numpy as np
import pytest

import service

ROOT = Path(__file__).parents[2]


def question() -> dict:
    return json.loads((ROOT / "demo_requests" / "load-fails-at-top-speed.check.json").read_text(encoding="utf-8"))


def test_it_answers_as_the_story_demands():
    answer = service.assess(question())
    worst = answer["findings"][0]
    assert (answer["verdict"], worst["code"], worst["axle"]) == ("unsuitable", "load.capacity", "front")
    assert worst["measured"] == pytest.approx(1138, abs=0.5)


def test_whole_numbers_numbers_of_arrays_dates_and_none_are_welcome():
    plain = question()
    asked = question()
    vehicle, now = asked["vehicle"], plain["vehicle"]
    speed = vehicle["max_speed_kmh"]
    vehicle["max_speed_kmh"], now["max_speed_kmh"] = np.int64(speed), float(speed)
    vehicle["built"], now["built"] = date(2020, 5, 1), "2020-05-01"
    vehicle["front"]["max_axle_mass_kg"] = np.float32(vehicle["front"]["max_axle_mass_kg"])
    asked["candidate"]["rear"] = asked["candidate"].get("rear")
    assert service.assess(asked) == service.assess(plain)


def test_the_question_is_left_as_it_was():
    asked = question()
    service.assess(asked)
    assert asked == question()


@pytest.mark.parametrize(
    ("value", "pointer", "words"),
    [
        (float("nan"), "/vehicle/max_speed_kmh", "finite number"),
        (np.float64("inf"), "/vehicle/max_speed_kmh", "finite number"),
        ({1, 2}, "/vehicle/max_speed_kmh", "no form in JSON"),
        (np.array([1.0, 2.0]), "/vehicle/max_speed_kmh", "no form in JSON"),
        ("235", "/vehicle/max_speed_kmh", "number"),
        (-1, "/vehicle/max_speed_kmh", "A number from 10 to 450 km/h is expected here"),
    ],
)
def test_a_value_that_cannot_be_read_is_refused_with_its_place(value, pointer, words):
    asked = question()
    asked["vehicle"]["max_speed_kmh"] = value
    with pytest.raises(service.RefusedRequest, match=words) as caught:
        service.assess(asked)
    assert caught.value.faults[0][0] == pointer


def test_a_circle_and_a_text_without_letters_are_refused():
    circle = question()
    circle["vehicle"]["front"] = circle
    with pytest.raises(service.RefusedRequest, match="nested deeper"):
        service.assess(circle)
    with pytest.raises(service.RefusedRequest, match="not valid JSON"):
        service.assess(question() | {"rule_pack": "\ud800"})


def test_what_is_misspelt_or_missing_is_named():
    with pytest.raises(service.RefusedRequest) as caught:
        service.assess(question() | {"vehicel": 1})
    assert caught.value.faults[0][0] == "/vehicel"
    with pytest.raises(service.RefusedRequest, match="required"):
        service.assess({})
