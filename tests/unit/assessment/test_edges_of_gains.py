"""Gains and losses at and just beyond what is worth a word, put in as numbers; and what is said of which vehicle.

Less than 0.5 % and no more than 2 mm are no difference (the project's judgement); a trailer is not steered.
"""

from dataclasses import replace

import pytest

from service.assessment.answer.trade_offs import NOTHING, trade_offs, trade_offs_text
from service.core.findings import Estimate
from tests.support.cases import changed, check, on_both_axles, saloon

SALOON = check(saloon())
WIDER = ("245/40 R18 97Y XL", "8J x 18 H2 ET45")


def entries_of(car):
    return trade_offs(car, car.driving, None)


def with_load(car, percent):
    return car._replace(rear=car.rear._replace(change=car.rear.change._replace(load_capacity_percent=percent)))


def with_stiffness(car, percent):
    share = 1.0 + percent / 100.0
    change = car.rear.change._replace(cornering_stiffness=Estimate(share, share, share))
    return car._replace(rear=car.rear._replace(change=change))


def with_reserve(car, percent):
    return car._replace(rear_reserve=car.rear_reserve._replace(present_percent=50.0, proposed_percent=50.0 + percent))


def with_facts(car, **more):
    then = car.rear.then
    grown = {name: getattr(then.facts, name) + step for name, step in more.items()}
    return car._replace(rear=car.rear._replace(then=then._replace(facts=replace(then.facts, **grown))))


def with_height(car, step_mm):
    return with_facts(car, section_height_mm=step_mm)


def with_width(car, step_mm):
    return with_facts(car, nominal_width_mm=step_mm)


LOAD, STIFFNESS = "the tyres carry", "the cornering stiffness in the dry"
WATER = "at 80 km/h in 2 mm of water about {} of the load still rests on the road instead of {}."


@pytest.mark.parametrize(
    ("put", "step", "code", "direction", "words", "unit"),
    [
        (with_load, 0.51, "load_capacity", "gain", f"{LOAD} 0.5 % more.", "%"),
        (with_load, 1.26, "load_capacity", "gain", f"{LOAD} 1.3 % more.", "%"),
        (with_load, -0.51, "load_capacity", "loss", f"{LOAD} 0.5 % less.", "%"),
        (with_load, -7.04, "load_capacity", "loss", f"{LOAD} 7 % less.", "%"),
        (with_stiffness, 0.6, "cornering_stiffness", "gain", f"{STIFFNESS} rises by about 1 %.", "%"),
        (with_stiffness, -0.6, "cornering_stiffness", "loss", f"{STIFFNESS} falls by about 1 %.", "%"),
        (with_stiffness, 2.4, "cornering_stiffness", "gain", f"{STIFFNESS} rises by about 2 %.", "%"),
        (with_reserve, -0.51, "wet_reserve", "loss", WATER.format("49 %", "50 %"), "%"),
        (with_reserve, 0.52, "wet_reserve", "gain", WATER.format("51 %", "50 %"), "%"),
        (with_reserve, 3.3, "wet_reserve", "gain", WATER.format("53 %", "50 %"), "%"),
        (
            with_height,
            2.1,
            "ride",
            "gain",
            "the sidewall is 2 mm higher, which usually softens the ride.",
            "mm",
        ),
        (
            with_height,
            -2.6,
            "ride",
            "loss",
            "the sidewall is 3 mm lower, which usually hardens the ride.",
            "mm",
        ),
        (with_width, 2.1, "ruts", "loss", "a wider tyre usually follows ruts more.", None),
        (with_width, -2.1, "ruts", "gain", "a narrower tyre usually follows ruts less.", None),
    ],
)
def test_a_change_is_told_with_its_way_and_size(put, step, code, direction, words, unit):
    found = entries_of(put(SALOON.car, step))
    (told,) = (each for each in found if (each.code, each.axle) == (code, "rear"))
    assert (told.direction, told.text, told.unit) == (direction, f"Rear: {words}", unit)
    assert told.value == (None if unit is None else pytest.approx(step))


@pytest.mark.parametrize(
    ("put", "step"),
    [
        *((put, step) for put in (with_load, with_reserve) for step in (0.5, -0.5)),
        (with_stiffness, 0.49),
        (with_stiffness, -0.49),
        (with_height, 2.0),
        (with_height, -2.0),
    ],
)
def test_what_is_not_worth_a_word_is_not_told(put, step):
    assert entries_of(put(SALOON.car, step)) == ()
    assert trade_offs_text(()) == NOTHING


@pytest.mark.parametrize("step", [2.0, -2.0])
def test_two_millimetres_of_width_make_no_ruts(step):
    """They stand some more heat."""
    found = entries_of(with_width(SALOON.car, step))
    told = {each.code: (each.direction, each.text) for each in found if each.axle == "rear"}
    assert told["ruts"] == ("alike", "Rear: the tyre follows ruts as it does now.")
    assert told["heat_reserve"][0] == ("gain" if step > 0 else "loss")


def told_of(category):
    """Return the codes told of each axle of a vehicle of a category that gets wider tyres."""
    found = check(changed(saloon(WIDER, WIDER), {"/vehicle/category": category})).trade_offs
    return {axle: {each.code for each in found if each.axle == axle} for axle in ("front", "rear", "vehicle")}


ON_AN_AXLE = {"peak_grip", "cornering_stiffness", "wet_reserve", "heat_reserve", "load_capacity", "ride", "ruts"}


@pytest.mark.parametrize(
    ("category", "on_an_axle", "on_the_vehicle"),
    [
        ("M1", ON_AN_AXLE, {"braking"}),
        ("M1G", ON_AN_AXLE, {"braking"}),
        # No van is driven so hard that its tread runs hot.
        ("N1", ON_AN_AXLE - {"heat_reserve"}, {"braking"}),
        ("O2", {"load_capacity"}, set()),
    ],
)
def test_of_each_vehicle_only_is_told_what_is_so(category, on_an_axle, on_the_vehicle):
    assert told_of(category) == {"front": on_an_axle, "rear": on_an_axle, "vehicle": on_the_vehicle}


def labelled(before, after):
    classes = {"/vehicle/{axle}/fitted/tyre/label": before, "/candidate/{axle}/tyre/label": after}
    found = check(changed(saloon(), on_both_axles(classes))).trade_offs
    return [(each.code, each.axle, each.direction, each.unit) for each in found if each.direction != "alike"]


# 1.3 kg/t on 1,550 kg are 0.55 kWh/100 km; a class of wet grip is some 10 %.
@pytest.mark.parametrize(("before", "after", "direction"), [("C", "B", "gain"), ("B", "C", "loss"), ("B", "B", None)])
def test_a_better_class_is_a_gain(before, after, direction):
    energy = labelled({"rolling_resistance_class": before}, {"rolling_resistance_class": after})
    wet = labelled({"wet_grip_class": before}, {"wet_grip_class": after})
    expected = [] if direction is None else [("label_energy", "vehicle", direction, "kWh/100 km")]
    assert energy == expected
    assert wet == ([] if direction is None else [("label_wet_braking", "vehicle", direction, "%")])


@pytest.mark.parametrize(
    ("tyre", "source"), [("245/45 R17 99W XL", "UN-R30 load index"), ("225/45 R17C 102/100T", "UN-R54 annex 8")]
)
def test_the_load_rests_on_the_regulation_of_the_new_tyre(tyre, source):
    found = check(changed(saloon(), on_both_axles({"/candidate/{axle}/tyre/size": tyre}))).trade_offs
    assert {each.basis.source for each in found if each.code == "load_capacity"} == {source}
