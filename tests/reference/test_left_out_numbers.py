"""Top speed and axle masses left out, by hand: what a fitter takes for granted of the car in front of him.

Sources: load index 91 is 615 kg, 94 is 670 kg, 95 is 690 kg; symbols T 190, H 210, V 240, W 270 km/h (UN R30 annexes 4
and 2.29). Of its index a tyre W carries 95 % at 250, 90 % at 260, 85 % at 270 km/h, a tyre V 97 % at 220, 94 % at 230,
91 % at 240 km/h, in a straight line between (UN R30 2.31). That the present fitment is right is common practice, no
source.
"""

import pytest

from tests.support.cases import ABSENT, answer, changed, check, finding, on_both_axles, outcome, saloon

SPEED = {"/vehicle/max_speed_kmh": ABSENT}
MASSES = {f"/vehicle/{axle}/max_axle_mass_kg": ABSENT for axle in ("front", "rear")}
ALL = SPEED | MASSES
RIM = "7.5J x 17 H2 ET45"


def car(proposed: str, left_out: dict, present: str = "225/45 R17 94W XL", **more: object) -> dict:
    """Return the saloon with these tyres all round, present and proposed."""
    tyres = on_both_axles({"/vehicle/{axle}/fitted/tyre/size": present, "/candidate/{axle}/tyre/size": proposed})
    return changed(saloon(), tyres | left_out | more)


def test_a_tyre_with_a_higher_index_of_the_same_symbol_needs_no_number():
    # 2 x 690 x 0.85 = 1173 kg beside 2 x 670 x 0.85 = 1139 kg at the 270 km/h of the present tyres.
    found = check(car("225/45 R17 95W XL", ALL))
    assert found.verdict == "suitable"
    assert "1173 kg" in finding(found, "load.capacity").message
    assert "1139 kg" in finding(found, "load.capacity").message


def test_a_lower_index_waits_for_the_mass_and_says_which_is_enough():
    # 2 x 615 x 0.85 = 1045.5 kg
    request = car("225/45 R17 91W", ALL)
    found = finding(check(request), "load.capacity")
    assert (found.remedy.pointer, found.remedy.at_most) == ("/vehicle/rear/max_axle_mass_kg", 1045)
    assert found.remedy.text == "state the maximum mass of the rear axle: up to 1045 kg is enough"
    assert outcome(check(request), "load.capacity") == "not_assessed"
    stated = dict.fromkeys(MASSES, 1045)
    assert outcome(check(changed(request, stated)), "load.capacity") == "met"


def test_a_slower_symbol_waits_for_the_top_speed_and_says_which_is_enough():
    request = car("225/45 R17 94T", SPEED, "225/45 R17 94H")
    found = finding(check(request), "speed.capability")
    assert (found.remedy.pointer, found.remedy.at_most) == ("/vehicle/max_speed_kmh", 190)
    assert outcome(check(request), "speed.capability") == "not_assessed"
    assert outcome(check(changed(request, {"/vehicle/max_speed_kmh": 190})), "speed.capability") == "met"
    assert outcome(check(changed(request, {"/vehicle/max_speed_kmh": 191})), "speed.capability") == "not_met"


def test_the_slower_axle_tells_the_top_speed():
    slower = {"/vehicle/rear/fitted/tyre/size": "225/45 R17 94H"}
    assert outcome(check(car("225/45 R17 94H", SPEED | slower)), "speed.capability", "front") == "met"


def test_with_a_stated_mass_the_car_is_no_faster_than_its_tyres_carry_it():
    # 1250 kg are 93.3 % of 2 x 670 kg: W carries them up to 253 km/h, V up to 232 km/h.
    heavy = {f"/vehicle/{axle}/max_axle_mass_kg": 1250 for axle in ("front", "rear")}
    assert check(car("225/45 R17 94W XL", SPEED | heavy)).verdict == "suitable"
    found = check(car("225/45 R17 94V XL", SPEED | heavy))
    assert "253 km/h" in finding(found, "speed.capability").message
    assert finding(found, "speed.capability").remedy.at_most == 232
    assert finding(found, "load.capacity").remedy.at_most == 232


def test_a_tyre_too_weak_at_any_speed_is_forbidden_without_the_speed():
    # 2 x 615 kg = 1230 kg carry 1250 kg at no speed.
    heavy = {f"/vehicle/{axle}/max_axle_mass_kg": 1250 for axle in ("front", "rear")}
    assert outcome(check(car("225/45 R17 91W", SPEED | heavy)), "load.capacity") == "not_met"


@pytest.mark.parametrize(("rating_kg", "expected"), [(600, "met"), (590, "not_assessed")])
def test_a_weaker_rim_waits_for_the_mass(rating_kg, expected):
    # The present rims carry 2 x 600 kg, less than the tyres do.
    ratings = on_both_axles(
        {"/vehicle/{axle}/fitted/rim/load_rating_kg": 600, "/candidate/{axle}/rim/load_rating_kg": rating_kg}
    )
    found = check(car("225/45 R17 94W XL", MASSES | ratings))
    assert outcome(found, "rim.load_rating") == expected
    if expected != "met":
        assert finding(found, "rim.load_rating").remedy.at_most == 1180


def test_winter_tyres_do_not_tell_how_fast_the_car_is():
    # A winter tyre may be slower than the vehicle (Directive 92/23/EEC, annex IV 3.7.3, from memory).
    found = check(car("225/45 R17 94V XL", SPEED, "225/45 R17 94H XL M+S 3PMSF"))
    assert outcome(found, "speed.capability") == "not_assessed"
    assert finding(found, "speed.capability").remedy.at_most == 240
    again = check(car("225/45 R17 94H XL M+S 3PMSF", SPEED, "225/45 R17 94H XL M+S 3PMSF"))
    assert outcome(again, "speed.capability") == "met"


def test_the_pressure_goes_by_that_of_today():
    # (230 / 250)^0.8 x 615 = 575 kg; 290 x (575 / 670)^1.25 = 240 kPa. Below 160 km/h speed adds nothing.
    slow = {"/vehicle/max_speed_kmh": 150}
    pressures = on_both_axles({"/vehicle/{axle}/fitted/pressure_kpa": 230, "/candidate/{axle}/pressure_kpa": ABSENT})
    shown = answer(check(car("225/45 R17 94V XL", MASSES | slow | pressures, "225/45 R17 91V")))
    (line,) = [each for each in shown["actions"] if each["code"] == "set_pressure_rear"]
    assert line["numbers"]["pressure_kpa"] == 240
    assert "goes by today's" in line["text"]


def test_without_mass_and_pressure_no_pressure_is_named():
    none = on_both_axles({"/vehicle/{axle}/fitted/pressure_kpa": ABSENT, "/candidate/{axle}/pressure_kpa": ABSENT})
    found = check(car("225/45 R17 94W XL", MASSES | none))
    assert found.verdict == "suitable"
    shown = answer(found)
    (line,) = [each for each in shown["actions"] if each["code"] == "set_pressure_rear"]
    assert "numbers" not in line or "pressure_kpa" not in line["numbers"]
    assert finding(found, "load.pressure").remedy.pointer == "/vehicle/rear/fitted/pressure_kpa"


def test_tyres_without_a_service_description_tell_nothing():
    found = check(car("225/45 R17 94W XL", ALL, "225/45 R17"))
    assert finding(found, "speed.capability").remedy.at_most == 270
    assert outcome(found, "speed.capability") == "not_assessed"
    assert found.assumptions[0] == "The top speed is not given, and the present tyres do not tell it."


def test_what_is_taken_is_said():
    said = check(car("225/45 R17 94W XL", ALL)).assumptions
    assert "no faster than the 270 km/h that the present tyres allow" in said[0]
    assert "no more than the 1139 kg that the present wheels carry" in said[1]


def test_a_present_tyre_for_less_than_any_vehicle_runs_is_answered():
    # A1 is 5 km/h, B is 50 km/h (UN R54, annex 4); a question has no top speed below 10 km/h.
    request = car("185 R14C 102/100B", ALL, "185 R14C 102/100A1") | {"rule_pack": "au-sa"}
    assert answer(check(request))["verdict"]
    slower = check(car("185 R14C 102/100A1", ALL, "185 R14C 102/100B"))
    assert finding(slower, "speed.capability").remedy.at_most is None
