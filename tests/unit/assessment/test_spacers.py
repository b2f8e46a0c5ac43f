"""A spacer moves the wheel out by its thickness, no more and no less, and the job card says what that takes.

Source: geometry (the wheel's face stands that much further out, so ET 45 on 10 mm is where ET 35 is); the New South
Wales rule is Vehicle Standards Information 9 (10 December 2019): no spacers or adaptors.
"""

import pytest
from pydantic import ValidationError

from service.api.inbound.translate import SpacedTwins
from service.core.numeric import known
from tests.support.cases import answer, changed, check, finding, on_both_axles, outcome, saloon

WIDER = ("235/45 R17 97W XL", "8J x 17 H2 ET45")
ROOM = on_both_axles({"/vehicle/{axle}/clearance": {"inboard_mm": 30, "outboard_mm": 40, "radial_mm": 30}})


def spaced(rim_offset, spacer_mm, **more):
    asked = saloon((WIDER[0], f"8J x 17 H2 ET{rim_offset}"), (WIDER[0], f"8J x 17 H2 ET{rim_offset}"))
    return changed(asked, on_both_axles({"/candidate/{axle}/spacer_mm": spacer_mm}) | ROOM | more)


def graded(found):
    return {(each.code, each.axle): (each.outcome, each.measured, each.limit) for each in found.findings}


def action(found, code):
    (one,) = [each for each in found.actions if each.code == code]
    return one


@pytest.mark.parametrize("spacer_mm", [3, 5, 10, 12.5, 20, 60])
def test_a_spacer_is_an_offset_less_by_its_thickness(spacer_mm):
    on_spacers, without = check(spaced(60, spacer_mm)), check(spaced(60 - spacer_mm, 0))
    assert graded(on_spacers) == graded(without)
    assert on_spacers.verdict == without.verdict


@pytest.mark.parametrize(("spacer_mm", "said"), [(0, ""), (5, ", 5 mm spacer"), (5.128, ", 5.13 mm spacer")])
def test_a_rim_is_named_with_its_spacer_in_hundredths(spacer_mm, said):
    assert check(spaced(60, spacer_mm)).case.candidate.rear.rim_in_words == f"8J x 17 H2 ET60{said}"


@pytest.mark.parametrize("spacer_mm", [5, 15])
def test_the_track_grows_by_twice_the_spacer(spacer_mm):
    assert check(spaced(45, spacer_mm)).car.front.change.track_mm == 2 * spacer_mm


def test_the_present_rim_on_a_spacer_is_still_the_present_rim():
    # Its bolt circle, bore and rating were read of it where it is: nobody has to read them again.
    bare = {"/candidate/{axle}/rim": {"size": "7.5J x 17 H2 ET45"}, "/candidate/{axle}/spacer_mm": 5}
    found = check(changed(saloon(), on_both_axles(bare)))
    assert {outcome(found, code) for code in ("rim.bolt_circle", "rim.centre_bore", "rim.load_rating")} == {"met"}


def test_the_present_rim_on_a_spacer_moves_by_it_though_nobody_read_its_offset():
    bare = {"/candidate/{axle}/rim/size": "7.5J x 17", "/vehicle/{axle}/fitted/rim/size": "7.5J x 17"}
    found = check(changed(saloon(), on_both_axles(bare) | on_both_axles({"/candidate/{axle}/spacer_mm": 8})))
    assert found.car.rear.change.offset_mm == -8
    assert known(finding(found, "clearance.outboard").measured)


def test_the_offset_that_is_advised_is_the_one_marked_on_the_rim():
    found = check(spaced(45, 40))
    remedy = finding(found, "clearance.outboard").remedy
    assert "on these spacers" in remedy.text
    obeyed = check(spaced(round((remedy.at_least + remedy.at_most) / 2), 40))
    assert outcome(obeyed, "clearance.outboard") == "met"


def test_the_job_card_asks_for_longer_bolts_and_a_centred_wheel():
    line = action(check(spaced(45, 5)), "spacers_front")
    assert "5 mm longer" in line.text
    assert "hub-centric" in line.text
    assert line.spacer_mm == 5
    assert "fit none" not in action(check(spaced(45, 5)), "bolt_seat").text


def test_taking_spacers_off_asks_for_shorter_bolts():
    asked = changed(saloon(), on_both_axles({"/vehicle/{axle}/fitted/spacer_mm": 10}))
    line = action(check(asked), "spacers_rear")
    assert line.spacer_mm == 0
    assert "10 mm shorter" in line.text


def test_spacers_that_stay_keep_the_bolts_as_long_as_they_are():
    there = {"/vehicle/{axle}/fitted/spacer_mm": 10, "/candidate/{axle}/spacer_mm": 10}
    line = action(check(changed(saloon(), on_both_axles(there))), "spacers_rear")
    assert "stay as long as they are" in line.text


def test_a_car_without_spacers_hears_of_none():
    assert not [each for each in check(saloon()).actions if each.code.startswith("spacers")]


@pytest.mark.parametrize(("spacer_mm", "came_out"), [(0, "met"), (5, "not_met")])
def test_new_south_wales_allows_no_spacers(spacer_mm, came_out):
    found = check(spaced(45, spacer_mm, **{"/rule_pack": "au-nsw"}))
    assert outcome(found, "law.spacers") == came_out


def test_a_place_that_allows_no_spacers_is_said_to_allow_none_and_not_to_ask_for_thicker_ones():
    found = finding(check(spaced(45, 5, **{"/rule_pack": "au-nsw"})), "law.spacers")
    assert found.message == "The spacers are 5 mm thick; no spacer is allowed in New South Wales."


def test_the_figures_of_a_wheel_name_the_spacer_beneath_it():
    """Else a wheel that moved out reads like the present one."""
    figures = answer(check(changed(saloon(), {"/candidate/rear/spacer_mm": 10})))["axles"]
    assert figures["rear"]["proposed"]["spacer_mm"] == 10
    others = (figures["rear"]["present"], figures["front"]["present"], figures["front"]["proposed"])
    assert not any("spacer_mm" in each for each in others)


def test_no_other_place_is_said_to_forbid_what_its_text_does_not():
    assert not [each for each in check(spaced(45, 5, **{"/rule_pack": "de"})).findings if each.code == "law.spacers"]


@pytest.mark.parametrize(
    ("place", "pointer"),
    [("/candidate/rear/spacer_mm", "/candidate/rear/spacer_mm"), ("/vehicle/rear/fitted/spacer_mm",) * 2],
)
def test_spacers_under_twin_wheels_are_refused(place, pointer):
    with pytest.raises(SpacedTwins) as refused:
        check(changed(saloon(), {"/vehicle/rear/wheels_per_side": 2, place: 10}))
    assert refused.value.pointer == pointer


def test_a_spacer_beyond_any_on_the_road_is_refused():
    with pytest.raises(ValidationError):
        check(changed(saloon(), {"/candidate/rear/spacer_mm": 101}))
