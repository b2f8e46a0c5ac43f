"""What is said of load, rim and speed where axle mass or top speed is assumed: of its own axle, with what is enough.

Load indices 91 and 94 are 615 and 670 kg (Regeling voertuigen, Bijlage VIII, annex 4), so that two present tyres carry
1,340 kg and a wheel 670; W is 270 and V 240 km/h (UN R30 2.31), and V keeps 91 % at 240.
"""

import pytest

from service.core.findings import ADVISORY, MET, NOT_ASSESSED, OPEN
from tests.support.cases import ABSENT, changed, check, finding, saloon

TOP = "/vehicle/max_speed_kmh"
MASS = "/vehicle/{axle}/max_axle_mass_kg"
TYRE, RIM = "/candidate/{axle}/tyre/size", "/candidate/{axle}/rim"
NOW = "/vehicle/{axle}/fitted"
OTHER = {"front": "rear", "rear": "front"}
UP_TO = "state the maximum mass of the {axle} axle: up to {enough} kg is enough"
STATE = "state the maximum mass of the {axle} axle"
WEAK = "225/45 R17 91W"


def found(axle, changes):
    """Return the assessment of the saloon after these changes of one axle."""
    return check(changed(saloon(), {key.format(axle=axle): value for key, value in changes.items()}))


CARRY = "The axle's tyres carry {} kg; the present wheels carry {} kg."
RATED = "The rim is rated for {} kg; the present wheels carry {} kg each."


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("changes", "code", "message", "most"),
    [
        ({}, "load.capacity", CARRY.format(1340, 1340), None),
        ({}, "rim.load_rating", RATED.format(700, 670), None),
        ({f"{RIM}/load_rating_kg": 700.4}, "rim.load_rating", RATED.format(700, 670), None),
        ({TYRE: WEAK}, "load.capacity", CARRY.format(1230, 1340), 1230),
        ({TYRE: WEAK}, "load.pressure", CARRY.format(1230, 1340), 1230),
        ({f"{RIM}/load_rating_kg": 450}, "rim.load_rating", RATED.format(450, 670), 900),
        # Told apart, and what is enough rounded down.
        ({f"{RIM}/load_rating_kg": 669.8}, "rim.load_rating", RATED.format(669.8, 670), 1339),
        # An axle weighs 50 kg or more.
        ({f"{RIM}/load_rating_kg": 25}, "rim.load_rating", RATED.format(25, 670), 50),
    ],
)
def test_a_load_is_held_against_what_the_present_wheels_carry(axle, changes, code, message, most):
    answered = found(axle, {MASS: ABSENT} | changes)
    told = finding(answered, code, axle)
    assert (told.outcome, told.message) == (MET if most is None else NOT_ASSESSED, message)
    if most is None:
        assert told.remedy is None
    else:
        assert told.remedy.text == UP_TO.format(axle=axle, enough=most)
        assert (told.remedy.pointer, told.remedy.at_most, told.remedy.unit) == (MASS.format(axle=axle), most, "kg")
    # The mass of the other axle is stated.
    assert "present wheels" not in finding(answered, code, OTHER[axle]).message


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_is_enough_is_met_once_it_is_stated(axle):
    for mass, expected in ((1230, True), (1231, False)):
        assert (finding(found(axle, {MASS: mass, TYRE: WEAK}), "load.capacity", axle).outcome == MET) == expected


@pytest.mark.parametrize(
    ("changes", "code", "message"),
    [
        (
            {f"{RIM}/load_rating_kg": ABSENT, f"{RIM}/size": "8J x 17 H2 ET45"},
            "rim.load_rating",
            "The rim's load rating is not known. The present wheels carry 670 kg each.",
        ),
        (
            {TYRE: "225/45 R17"},
            "load.capacity",
            "What the axle's tyres carry is not known. The present wheels carry 1340 kg.",
        ),
    ],
)
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_load_that_nobody_read_is_told_beside_the_present_one(axle, changes, code, message):
    told = finding(found(axle, {MASS: ABSENT} | changes), code, axle)
    assert (told.outcome, told.message) == (NOT_ASSESSED, message)
    # It is read on the new wheel, and no mass helps.
    assert told.remedy.pointer.startswith(f"/candidate/{axle}/")


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_no_other_question_speaks_of_the_mass(axle):
    """As with the mass of 1,340 kg that is assumed."""
    assumed, stated = (
        {(each.code, each.axle): (each.outcome, each.message) for each in found(axle, {MASS: mass}).findings}
        for mass in (ABSENT, 1340)
    )
    # The water goes by the pressure to be set, which is another for that mass.
    dry = {place for place in assumed if not place[0].startswith("wet.")}
    differing = {place for place in dry if assumed[place] != stated[place]}
    assert differing == {(code, axle) for code in ("load.capacity", "load.pressure", "rim.load_rating")}


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_neither_tyres_nor_mass_known_the_mass_is_asked_for(axle):
    bare = {MASS: ABSENT, f"{NOW}/tyre/size": "225/45 R17", f"{NOW}/rim/load_rating_kg": ABSENT}
    answered = found(axle, bare | {f"{RIM}/load_rating_kg": ABSENT})
    told = finding(answered, "load.capacity", axle)
    assert told.message.startswith(
        f"The maximum mass of the {axle} axle is not given, and the present wheels do not tell it."
    )
    assert told.remedy.text == UP_TO.format(axle=axle, enough=1340)
    rim = finding(answered, "rim.load_rating", axle)
    assert rim.message.startswith(f"The maximum mass of the {axle} axle is not given")


MAY_RUN = "The tyre may run {} km/h; the present tyres allow {} km/h."
SLOWER = " Winter tyres and spares may be slower than the vehicle that they are on."
TAKEN = (
    "The top speed is not given; the vehicle is taken to be no faster than the {} km/h that the present tyres allow."
)
V, W = "225/45 R17 94V XL", "225/45 R17 94W XL"


# The slower of all present tyres is what the vehicle is taken to run.
@pytest.mark.parametrize(
    ("now", "then", "message", "asked"),
    [
        (W, W, MAY_RUN.format(270, 270), False),
        (V, V, MAY_RUN.format(240, 240), False),
        (W, V, MAY_RUN.format(240, 270), True),
        # Its symbol may be lower than the car's speed, and the present winter tyre's too.
        (f"{V} 3PMSF", V, MAY_RUN.format(240, 240) + SLOWER, True),
        (f"{V} 3PMSF", W, MAY_RUN.format(270, 240) + SLOWER, True),
        (f"{V} 3PMSF", f"{V} 3PMSF", MAY_RUN.format(240, 240), False),
    ],
)
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_speed_is_held_against_that_of_the_present_tyres(axle, now, then, message, asked):
    told = finding(found(axle, {TOP: ABSENT, f"{NOW}/tyre/size": now, TYRE: then}), "speed.capability", axle)
    assert (told.outcome, told.message) == (NOT_ASSESSED if asked else MET, message)
    assert (told.remedy and (told.remedy.pointer, told.remedy.unit)) == ((TOP, "km/h") if asked else None)


def test_a_slower_winter_tyre_is_told_with_what_is_taken():
    told = finding(found("rear", {TOP: ABSENT, TYRE: "225/45 R17 94V XL 3PMSF"}), "speed.capability", "rear")
    assert told.outcome in (ADVISORY, NOT_ASSESSED)
    assert told.message.endswith(TAKEN.format(270))


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_pressure_is_held_against_that_of_today(axle):
    words = "at 250 kPa the tyres carry what the present ones carry at their pressure."
    for pressure, expected, begins in (
        (250, MET, "250 kPa is enough: "),
        (200, ADVISORY, "200 kPa is too little: "),
        (249.4, ADVISORY, "249 kPa is too little: "),
    ):
        told = finding(found(axle, {MASS: ABSENT, "/candidate/{axle}/pressure_kpa": pressure}), "load.pressure", axle)
        assert (told.outcome, told.message) == (expected, begins + words)


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("changes", "text", "pointer"),
    [
        (
            {MASS: ABSENT, f"{NOW}/pressure_kpa": ABSENT},
            "state the pressure of the present tyres",
            f"{NOW}/pressure_kpa",
        ),
        # The present rims tell of 1,400 kg, which the new tyres carry at some pressure.
        ({MASS: ABSENT, f"{NOW}/tyre/size": "225/45 R17", TYRE: "225/45 R17 100W XL"}, STATE, MASS),
        ({TOP: ABSENT, f"{NOW}/tyre/size": "225/45 R17"}, "state the top speed", TOP),
    ],
)
def test_without_a_pressure_of_today_what_lacks_is_asked_for(axle, changes, text, pointer):
    told = finding(found(axle, changes), "load.pressure", axle)
    assert told.outcome == OPEN
    assert told.message == "The least pressure is not known without today's, or the axle's mass and the top speed."
    assert (told.remedy.text, told.remedy.pointer) == (text.format(axle=axle), pointer.format(axle=axle))


def test_a_winter_tyre_of_which_the_age_decides_is_told_with_what_is_taken():
    """M+S alone counted until 30 September 2024 on tyres built by the end of 2017 (StVZO § 36(4), read)."""
    winter = {"/rule_pack": "de", "/date": "2024-09-30", "/season": "winter", TYRE: "225/45 R17 94T XL M+S"}
    told = finding(found("rear", {TOP: ABSENT} | winter), "speed.capability", "rear")
    assert told.outcome == NOT_ASSESSED
    assert told.message.startswith("The tyre may run 190 km/h only; whether it is a winter tyre depends on its age.")
    assert told.message.endswith(TAKEN.format(270))
    assert told.remedy.equals == "3PMSF"
