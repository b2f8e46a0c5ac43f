"""An offer of search is left open only where a fitter would go and read or measure.

References: common practice, no source. A rim as the car has it goes on its hub and carries its axle; bolt circle, bore
and load rating stand on the back of any other wheel, the room for the brake and the wheel is measured on the car, the
pressure that belongs to the load index of a van tyre stands on its sidewall.
"""

import pytest

from tests.support import offers, workshop
from tests.support.wire import AXLES, check, question

OF_THE_WHEEL = {"rim.bolt_circle", "rim.centre_bore", "rim.load_rating"}
STATED = ("bolt_circle", "centre_bore_mm", "load_rating_kg")


@pytest.mark.parametrize("name", workshop.NAMES)
def test_what_an_open_offer_waits_for_is_read_or_measured(name):
    made = list(offers.offers(name, offers.found(name)))
    waiting = {code for each in made if each.verdict == "undetermined" for code in each.codes}
    assert made
    assert waiting <= offers.READ | offers.MEASURED


@pytest.mark.parametrize("stock", [True, False])
@pytest.mark.parametrize("name", workshop.NAMES)
def test_on_the_rims_of_the_car_no_offer_waits_for_what_stands_on_a_wheel(name, stock):
    made = list(offers.offers(name, offers.found(name, offers.present_rims, stock=stock)))
    assert made
    assert [each for each in made if each.verdict == "undetermined" and each.codes & OF_THE_WHEEL] == []


@pytest.mark.parametrize("name", workshop.NAMES)
def test_a_rim_of_the_present_size_and_offset_is_the_car_s_own_whoever_lists_it(name):
    asked = question(workshop.vehicle(name))
    for axle in AXLES:
        for field in STATED:
            asked["candidate"][axle]["rim"].pop(field, None)
    assert check(asked)["verdict"] == "suitable"


def test_another_rim_on_a_car_of_which_nobody_noted_the_hub_waits_for_it():
    made = list(offers.offers("classic", offers.found("classic")))
    assert any({"rim.bolt_circle", "rim.centre_bore"} <= each.codes for each in made)
