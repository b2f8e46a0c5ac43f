"""What labels tell, by hand: energy, fuel, braking in the wet and noise, with their bands and the axle's share.

Classes of rolling resistance end at 6.5, 7.7, 9.0 and 10.5 kg/t, of wet grip begin at 1.55, 1.40, 1.25 and 1.10
(Regulation (EC) 1222/2009, annex I; the letters of Regulation (EU) 2020/740 from memory). The Larch 200 weighs 790 +
760 kg at the kerb: a kg/t is 9.80665 x 1.55 N over 100 km, 0.42223 kWh. A litre holds 8.889 kWh of petrol or 10 of
diesel (Directive 2009/28/EC, from memory), of which 35 % (25 to 40) or 40 % (30 to 45) drive: the project's judgement.
"""

import pytest

from tests.support.cases import ABSENT, changed, check, saloon


def told(front, rear, sizes=(None, None)):
    """Return what the labels tell of (before, after) on each axle."""
    labels = {}
    for axle, (before, after) in (("front", front), ("rear", rear)):
        labels[f"/vehicle/{axle}/fitted/tyre/label"] = before
        labels[f"/candidate/{axle}/tyre/label"] = after
    found = check(changed(saloon(*sizes), labels))
    return found.label_effects


def rolling(before, after):
    """Return what the labels tell of one change of class on both axles."""
    classes = tuple({"rolling_resistance_class": each} for each in (before, after))
    return told(classes, classes)


# 9.0 to 7.7 are -1.3, at most 9.0 to 6.5 and at least nothing: -1.3, -2.5 and 0 x 0.42223 kWh. The band of the fuel
# takes the worse efficiency at its far end and the better one at its near end.
@pytest.mark.parametrize(
    ("before", "after", "energy", "petrol", "diesel"),
    [
        ("C", "B", (-0.5489, -1.0556, 0.0), (-0.1764, -0.4750, 0.0), (-0.1372, -0.3519, 0.0)),
        ("B", "C", (0.5489, 0.0, 1.0556), (0.1764, 0.0, 0.4750), (0.1372, 0.0, 0.3519)),
        ("B", "D", (1.1823, 0.5489, 1.6889), (0.3800, 0.1544, 0.7600), (0.2956, 0.1220, 0.5630)),
        ("D", "B", (-1.1823, -1.6889, -0.5489), (-0.3800, -0.7600, -0.1544), (-0.2956, -0.5630, -0.1220)),
    ],
)
def test_energy_and_fuel_of_a_class_have_bands(before, after, energy, petrol, diesel):
    found = rolling(before, after)
    assert found.energy_kwh_per_100km == pytest.approx(energy, abs=1e-4)
    assert found.petrol_l_per_100km == pytest.approx(petrol, abs=1e-4)
    assert found.diesel_l_per_100km == pytest.approx(diesel, abs=1e-4)


def test_each_axle_takes_its_share_of_the_energy():
    """1.3 kg/t less on 790 kg, 1.5 more on 760: 0.27241 x (-1.027 + 1.14) kWh; the other way round 1.185 - 0.988."""
    front, rear = (
        tuple({"rolling_resistance_class": each} for each in classes) for classes in (("C", "B"), ("C", "D"))
    )
    assert told(front, rear).energy_kwh_per_100km.value == pytest.approx(0.0308, abs=1e-4)
    assert told(rear, front).energy_kwh_per_100km.value == pytest.approx(0.0537, abs=1e-4)


def test_the_energy_is_said_in_hundredths():
    assert rolling("C", "B").text == "The rolling resistance classes save 0.55 kWh/100 km at the wheel."
    assert rolling("B", "C").text == "The rolling resistance classes take 0.55 kWh/100 km more at the wheel."
    assert rolling("B", "B").text == "The rolling resistance classes take 0 kWh/100 km more at the wheel."


# The front brakes with 790 / 1,550 + 540 / 2,760 = 70.53 %; 1.25 / 1.40 there and 1.40 / 1.25 at the rear make
# exp(-0.11333 (0.7053 - 0.2947)) = 0.9545; the other way round 1.0477.
@pytest.mark.parametrize(
    ("front", "rear", "percent"),
    [(("C", "B"), ("B", "C"), -4.547), (("B", "C"), ("C", "B"), 4.763), (("C", "A"), ("C", "A"), -19.355)],
)
def test_each_axle_takes_its_share_of_the_braking(front, rear, percent):
    front, rear = (tuple({"wet_grip_class": each} for each in classes) for classes in (front, rear))
    found = told(front, rear).wet_braking_distance_percent
    assert found.value == pytest.approx(percent, abs=2e-3)
    assert found.low <= found.value <= found.high


# From C to A: 1.25 / 1.70 at best, 1.40 / 1.55 at worst.
def test_the_band_of_the_braking_lies_between_the_nearest_and_the_furthest_tyres():
    classes = {"wet_grip_class": "C"}, {"wet_grip_class": "A"}
    found = told(classes, classes).wet_braking_distance_percent
    assert (found.low, found.high) == pytest.approx((-26.471, -9.677), abs=1e-3)


def test_what_one_axle_does_not_state_is_not_told_of_the_car():
    energy = {"rolling_resistance_class": "C"}, {"rolling_resistance_class": "B"}
    for missing in ({}, {"noise_db": 70.0}):
        for front, rear in ((energy, (missing, missing)), ((missing, missing), energy)):
            found = told(front, rear)
            assert (found.energy_kwh_per_100km, found.petrol_l_per_100km, found.diesel_l_per_100km) == (None,) * 3
            assert found.wet_braking_distance_percent is None
    alone = told(({}, {}), ({}, {"wet_grip_class": "A"}))
    assert alone.text == "The label's classes are not given on both sides, so their effect is not told."


@pytest.mark.parametrize(("before", "after"), [(ABSENT, {"wet_grip_class": "A"}), ({"wet_grip_class": "A"}, ABSENT)])
def test_a_label_on_one_side_alone_is_told_to_tell_nothing(before, after):
    found = told((before, after), (before, after))
    assert found.text == "The label's classes are not given on both sides, so their effect is not told."
    assert told((ABSENT, ABSENT), (before, after)) == found
    assert told((ABSENT, ABSENT), (ABSENT, ABSENT)) is None


def test_the_noise_of_each_axle_is_told_where_both_sides_state_it():
    quieter, louder = ({"noise_db": 71}, {"noise_db": 69}), ({"noise_db": 68}, {"noise_db": 71.5})
    found = told(quieter, louder)
    assert (found.front_noise_db, found.rear_noise_db) == (-2.0, 3.5)
    half = told(({"noise_db": 71}, {}), ({}, {"noise_db": 71}))
    assert (half.front_noise_db, half.rear_noise_db) == (None, None)


LABEL = "The wet grip classes change the wet braking distance by about {}; the size changes the dry one by about {}: "
MORE, AS_MUCH = "the label matters more.", "the size matters as much or more."


# Wider tyres all round, 109 for 94 at the same pressure: 1,030 / 670 kg to the power 0.2 is 9 % of grip, 8.2 % of the
# distance less. B to B changes nothing, B to C 1.40 / 1.25.
@pytest.mark.parametrize(
    ("tyre", "after", "label", "size", "words"),
    [
        (None, "C", "+12 %", "0 %", MORE),
        (None, "A", "\u221210 %", "0 %", MORE),
        (None, "B", "0 %", "0 %", AS_MUCH),
        ("225/45 R17 109W XL", "C", "+12 %", "\u22128.2 %", MORE),
        ("225/45 R17 109W XL", "B", "0 %", "\u22128.2 %", AS_MUCH),
    ],
)
def test_the_larger_of_label_and_size_is_named(tyre, after, label, size, words):
    classes = {"wet_grip_class": "B"}, {"wet_grip_class": after}
    sizes = (None if tyre is None else (tyre, "7.5J x 17 H2 ET45"),) * 2
    assert told(classes, classes, sizes).text == LABEL.format(label, size) + words
