"""Whole answers read aloud: what a fitter who has never seen the code would not say, and what he would miss.

Common practice, no source, but for the sums. Loads: load index table (UN R30 annex 4). All invented.
"""

import pytest

from tests.support import workshop
from tests.support.wire import AXLES, against, check, findings, outcome, question, square

HATCH_RIM = {"size": "6J x 15 H2 ET43", "bolt_circle": "5x108", "centre_bore_mm": 63.4, "load_rating_kg": 600}


def _action(answer, code):
    (text,) = [each["text"] for each in answer["actions"] if each["code"] == code]
    return text


def _codes(answer):
    return {each["code"] for each in answer["actions"]}


def _sports_car(rear, speed_kmh=306):
    """Return a car that is faster than the symbol in brackets, as it is and with other rear tyres."""
    wheel = {"tyre": {"size": "295/30 ZR20 (101Y)"}, "rim": {"size": "11J x 20 H2 ET70"}}
    axle = {"max_axle_mass_kg": 1140, "fitted": wheel}
    vehicle = {"max_speed_kmh": speed_kmh, "front": axle, "rear": axle}
    return question(vehicle, {"front": wheel, "rear": {"tyre": {"size": rear}, "rim": {"size": "11J x 20 H2 ET70"}}})


@pytest.mark.parametrize(
    ("rear", "verdict"),
    [
        # Nobody asks the maker before the tyre that is on the car goes on again, nor before one that carries more.
        ("295/30 ZR20 (101Y)", "suitable"),
        ("295/30 ZR20 (103Y)", "suitable"),
        ("295/30 ZR20 (97Y)", "undetermined"),
        ("295/30 ZR20 101Y", "unsuitable"),
    ],
)
def test_a_tyre_in_brackets_goes_on_again_where_one_is_on_today(rear, verdict):
    answer = check(_sports_car(rear))
    assert answer["verdict"] == verdict, against(answer)


def test_whom_to_ask_for_the_pressure_above_the_symbol():
    (front, _) = findings(check(_sports_car("295/30 ZR20 (101Y)")), "load.pressure")
    assert front["remedy"]["text"] == "ask the tyre's maker for the pressure at 306 km/h"


@pytest.mark.parametrize(
    ("tyre", "expected"),
    # At 195 km/h the H and the T tyre differ in nothing but their symbols; 89 is 580 kg and 91 is 615.
    [
        ("195/65 R15 91H", "met"),
        ("195/65 R15 91T 3PMSF", "met"),
        ("195/65 R15 91V", "met"),
        ("195/65 R15 89H", "advisory"),
    ],
)
def test_the_index_tells_whether_a_tyre_is_weaker_and_not_its_speed(tyre, expected):
    answer = check(question(workshop.vehicle("hatch"), square(tyre, HATCH_RIM)))
    assert outcome(answer, "load.below_present") == expected


def test_a_slower_winter_tyre_of_the_same_index_is_no_weaker_than_a_slower_one_still():
    """98V keeps 91 % at 240 km/h, 98T all at its own 190: the faster one must not come out as the worse."""
    car = workshop.vehicle("all-wheel-drive estate") | {"max_speed_kmh": 240}
    for symbol in "VT":
        answer = check(question(car, square(f"225/50 R17 98{symbol} XL 3PMSF", "7.5J x 17 H2 ET47")))
        assert outcome(answer, "load.below_present") == "met"


def test_a_tyre_that_carries_less_but_enough_says_that_it_is_enough():
    """Index 88 is 560 kg: 1,120 for an axle of 1,000."""
    answer = check(question(workshop.vehicle("hatch"), square("195/65 R15 88H", HATCH_RIM)))
    assert "1120 kg for 1000 kg" in findings(answer, "load.below_present")[0]["message"]


def test_what_is_too_weak_is_said_once_and_with_one_sum():
    """Index 78 is 425 kg: 850 for the axle of 1,000, 425 for the 500 of each tyre."""
    answer = check(question(workshop.vehicle("hatch"), square("195/65 R15 78H", HATCH_RIM)))
    (line,) = [each for each in answer["actions"] if each["code"] == "do_not_fit"]
    assert line["text"] == "Do not fit this combination: load capacity of the tyres (both axles)."
    assert {"load.capacity", "load.pressure", "load.below_present"} <= set(line["findings"])
    assert "pressure" not in answer["summary"]
    (front, _) = findings(answer, "load.pressure")
    assert "must carry 500 kg, and it carries 425 kg at most" in front["message"]


def test_a_spare_is_refused_for_being_one():
    car = workshop.vehicle("hatch")
    spare = {"tyre": {"size": "T125/70 R15 95M"}, "rim": {"size": "3.5J x 15 H2 ET43"}}
    answer = check(question(car, {"front": spare, "rear": car["rear"]["fitted"]}))
    assert "temporary spare" in answer["summary"]
    assert "speed of the tyres" not in answer["summary"]


@pytest.mark.parametrize(
    ("tyre", "is_said"),
    [
        ("195/65 R15 95H XL", True),
        # Winter and van tyres have compounds of their own: no fitter says that they grip better for carrying more.
        ("195/65 R15 95H XL 3PMSF", False),
        ("195/65 R15C 98/96T", False),
    ],
)
def test_grip_is_compared_among_tyres_of_one_kind_alone(tyre, is_said):
    answer = check(question(workshop.vehicle("hatch"), square(tyre, HATCH_RIM), detail="full"))
    codes = {each["code"] for each in answer["trade_offs"]}
    assert {"load_capacity", "cornering_stiffness"} <= codes
    assert ({"peak_grip", "braking"} <= codes) == is_said
    assert ({"peak_grip", "braking"} & codes == set()) != is_said
    assert any("of another kind" in each for each in answer["assumptions"]) != is_said


def test_a_smaller_tyre_on_a_trailer_makes_it_stand_lower_and_no_more():
    """185/65 R14 is 596 mm high, 185 R14 650 (UN R30, from memory): 8 % less."""
    vehicle = workshop.vehicle("caravan")
    for axle in AXLES:
        vehicle[axle]["max_axle_mass_kg"] = 800
    rim = vehicle["front"]["fitted"]["rim"] | {"load_rating_kg": 600}
    answer = check(question(vehicle, square("185/65 R14 86T", rim, 250)))
    assert answer["verdict"] == "suitable_with_conditions", against(answer)
    (front, _) = findings(answer, "diameter.deviation")
    assert "stands level behind the car" in front["message"]


def test_a_trailer_is_spoken_of_as_a_trailer():
    vehicle = workshop.vehicle("caravan")
    rim = {"size": "6J x 14 H2 ET20", "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 900}
    answer = check(question(vehicle, square("195 R14C 106/104P", rim, 450), detail="full"))
    words = " ".join([answer["summary"], *answer["cautions"], *(each["text"] for each in answer["actions"])])
    assert not [
        each for each in ("full lock", "sensors", "stability", "strut, lines", "runs straight on") if each in words
    ]
    assert {each["code"] for each in answer["trade_offs"]} <= {"load_capacity"}
    assert outcome(answer, "wet.reserve") == "met"


@pytest.mark.parametrize(("category", "what"), [("M1", "the speedometer checked"), ("N2", "speedometer or tachograph")])
def test_a_lorry_has_its_tachograph_calibrated(category, what):
    """205/65 R15 is 2 % larger than 195/65 R15: 647.5 against 634.5 mm."""
    vehicle = workshop.vehicle("hatch") | {"category": category}
    answer = check(question(vehicle, square("205/65 R15 94H", HATCH_RIM), "us"))
    assert what in _action(answer, "speedometer")


def test_rear_wheels_are_not_tried_at_full_lock():
    car = workshop.vehicle("hatch")
    wide = {"tyre": {"size": "195/65 R15 91H"}, "rim": HATCH_RIM | {"size": "6.5J x 15 H2 ET37"}}
    answer = check(question(car, {"front": car["front"]["fitted"], "rear": wide}))
    assert "full lock" not in _action(answer, "trial_fit")
    assert "at full bump" in _action(answer, "trial_fit")


def test_a_second_size_on_a_car_of_one_size_is_remarked_on():
    car = workshop.vehicle("hatch")
    wide = {"tyre": {"size": "205/60 R15 91H"}, "rim": HATCH_RIM}
    unlike = check(question(car, {"front": car["front"]["fitted"], "rear": wide}))
    assert "can no longer change places" in _action(unlike, "tell_unlike_sizes")
    assert "tell_unlike_sizes" not in _codes(check(question(workshop.vehicle("staggered saloon"))))


def test_the_room_to_measure_before_the_order_stands_on_the_card():
    rim = HATCH_RIM | {"size": "6.5J x 15 H2 ET37"}
    answer = check(question(workshop.vehicle("hatch"), square("195/65 R15 91H", rim)))
    line = _action(answer, "measure_before_order")
    assert line.startswith(
        "Before you order. Room to the wing edge, both axles: measure the room between wheel and wing edge"
    )
    assert answer["verdict"] == "suitable_with_conditions", against(answer)


def test_one_reading_is_asked_for_once():
    """Without the offset neither the room on both sides nor the track is known: one look at the wheel."""
    rim = HATCH_RIM | {"size": "6.5J x 15 H2"}
    answer = check(question(workshop.vehicle("hatch"), square("205/60 R15 91H", rim)))
    assert "two facts are missing" in answer["summary"]
    assert _action(answer, "settle_first").count("back of the new front wheel") == 1


def test_nobody_measures_around_wheels_that_go_on_again():
    answer = check(question(workshop.vehicle("hatch"), measure_first=True))
    asked = " ".join(each["pointer"] for each in answer["measure_first"])
    assert not [each for each in ("clearance", "min_rim", "load_rating", "centre_bore") if each in asked]


@pytest.mark.parametrize("name", workshop.NAMES)
def test_no_driver_is_told_a_gradient(name):
    car = workshop.vehicle(name)
    wheel = {axle: car[axle]["fitted"] for axle in AXLES}
    answer = check(question(car, {"front": wheel["rear"], "rear": wheel["front"]}, detail="full"))
    assert [each["message"] for each in answer["findings"] if "deg/g" in each["message"]] == []


def test_a_rule_of_the_place_is_named_by_what_it_is_about():
    rim = HATCH_RIM | {"size": "6J x 15 H2 ET0"}
    vehicle = workshop.vehicle("hatch")
    for axle in AXLES:
        vehicle[axle] |= {"track_mm": 1500, "clearance": {"inboard_mm": 90, "outboard_mm": 90, "radial_mm": 90}}
    answer = check(question(vehicle, square("195/65 R15 91H", rim), "nl"))
    assert "local rule on track (both axles)" in _action(answer, "do_not_fit")


@pytest.mark.parametrize(("category", "is_said"), [("M1", True), ("N1", False), ("N2", False)])
def test_nobody_drives_a_van_until_its_tread_runs_hot(category, is_said):
    vehicle = workshop.vehicle("hatch") | {"category": category}
    asked = question(vehicle, square("205/60 R15 91H", HATCH_RIM), detail="full")
    codes = {each["code"] for each in check(asked)["trade_offs"]}
    assert ("heat_reserve" in codes) == is_said
