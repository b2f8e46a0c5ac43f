"""`POST /v1/fitments/rims` as a caller sees it: what it offers can be sent to `check`, and its windows hold there."""

import pytest

from tests.support.cases import ABSENT, changed, on_both_axles, saloon
from tests.support.wire import check, client, post

PATH = "/v1/fitments/rims"
VEHICLE = saloon()["vehicle"]
WIDER = {"size": "245/40 R17 95W XL"}


def ask(vehicle=VEHICLE, **more):
    return post(PATH, {"vehicle": vehicle, **more})


def tyres(answer, axle="front"):
    return answer["axles"][axle]["tyres"]


def test_without_tyres_the_present_ones_are_asked_about():
    found = ask()
    for axle in ("front", "rear"):
        assert [each["tyre"] for each in tyres(found, axle)] == [VEHICLE[axle]["fitted"]["tyre"]["size"]]


def test_the_present_rim_is_the_best_one_for_the_present_tyre():
    (present,) = [each for each in tyres(ask())[0]["widths"] if each["width_in"] == 7.5]
    assert (present["verdict"], present["best"]["offset_mm"]) == ("suitable", 45)


def test_for_the_present_tyres_nobody_has_to_buy_rims():
    """Of rims that do alike the set has those that are there, and not the measuring rim of 225/45 R17, 7.5 in."""
    bare = changed({"vehicle": VEHICLE}, on_both_axles({"/vehicle/{axle}/fitted/rim/size": "8J x 17 H2 ET45"}))
    (rim,) = ask(bare["vehicle"])["smallest_set"]["rims"]
    assert (rim["width_in"], rim["offset_mm"], len(rim["serves"])) == (8, 45, 2)


def test_one_rim_for_all_is_the_fewest_for_certain():
    # None would serve nothing: no need to have tried every set.
    found = ask()["smallest_set"]
    assert (len(found["rims"]), found["method"], found["unserved"]) == (1, "exact", [])


def test_a_number_beyond_a_limit_that_holds_either_way_does_not_read_like_it():
    found = [each for each in bounds(ask()) if each["measured"] < 0 < each["limit"]]
    assert found
    assert not [each for each in found if each["text"].count(f"{each['limit']:g} ") > 1]


def bounds(answer):
    """Return all reasons of the front axle that have a number and a limit."""
    widths = [each for tyre in tyres(answer) for each in tyre["widths"]]
    ends = [each[kind] for each in widths for kind in ("suitable", "with_conditions") if kind in each]
    found = [end[name] for end in ends for name in ("from_bound", "to_bound") if name in end]
    found += [reason for each in widths for reason in each["besides"]]
    return [each for each in found if "measured" in each and "limit" in each]


def test_an_axle_asks_of_a_rim_what_its_hub_its_brake_and_its_mass_ask():
    # 960 kg on two wheels are 480 kg each; the rest is as the vehicle states it.
    assert ask()["needs"]["front"]["rim"] == {
        "min_diameter_in": 16.0,
        "bolt_circle": "5x112",
        "centre_bore_mm": 66.6,
        "load_rating_kg": 480.0,
    }


@pytest.mark.parametrize("end", ["from", "to"])
def test_each_end_of_a_window_is_bound_by_what_a_check_finds_one_millimetre_further(end):
    found = ask(tyres={"rear": [WIDER]})
    (width,) = [each for each in tyres(found, "rear")[0]["widths"] if each["width_in"] == 8.0]
    step = {"from": -1, "to": 1}[end]
    offset = width["with_conditions"][f"{end}_mm"] + step
    rim = {**width["best"]["rim"], "size": f"8J x 17 H2 ET{offset:g}"}
    fitted = VEHICLE["front"]["fitted"]
    answer = check({"vehicle": VEHICLE, "candidate": {"front": fitted, "rear": {"tyre": WIDER, "rim": rim}}})
    bound = width["with_conditions"][f"{end}_bound"]
    (finding,) = [each for each in answer["findings"] if (each["code"], each["axle"]) == (bound["code"], "rear")]
    assert (finding["outcome"], finding["measured"]) == (bound["outcome"], bound["measured"])


def test_a_tyre_that_the_axle_overloads_has_no_window_and_the_reason():
    (tyre,) = tyres(ask(tyres={"front": [{"size": "225/45 R17 80W"}]}))
    assert not any("with_conditions" in each for each in tyre["widths"])
    assert {each["why_none"][0]["code"] for each in tyre["widths"]} == {"load.capacity"}
    # Load index 80 is 450 kg (ISO load index table), and W is marked for more than 228 km/h.
    assert tyre["mass_reserve_kg"] == 2 * 450 - 960


def test_without_the_present_offset_no_window_is_known():
    bare = changed({"vehicle": VEHICLE}, on_both_axles({"/vehicle/{axle}/fitted/rim/size": "7.5J x 17"}))
    (tyre,) = tyres(ask(bare["vehicle"]))
    assert {each["verdict"] for each in tyre["widths"]} == {"undetermined"}


def test_rooms_that_were_not_measured_leave_the_window_that_needs_no_measuring():
    bare = changed({"vehicle": VEHICLE}, on_both_axles({"/vehicle/{axle}/clearance": ABSENT}))
    (present,) = [each for each in tyres(ask(bare["vehicle"]))[0]["widths"] if each["width_in"] == 7.5]
    # Within 5 mm nobody measures, within 15 mm before ordering: common practice, no source.
    assert [present[kind][end] for kind in ("suitable", "with_conditions") for end in ("from_mm", "to_mm")] == [
        40,
        50,
        30,
        60,
    ]


def test_a_combination_comes_back_as_a_candidate_with_the_verdict_of_its_check():
    asked = [
        {"label": "wider", "front": {"size": "225/45 R17 94W XL"}, "rear": WIDER},
        {"label": "rear", "rear": WIDER},
    ]
    found = ask(combinations=asked)["combinations"]
    assert [each["label"] for each in found] == ["wider", "rear"]
    first = found[0]
    assert check({"vehicle": VEHICLE, "candidate": first["candidate"]})["verdict"] == first["verdict"]


def test_a_tyre_without_approved_widths_has_none_offered():
    (tyre,) = tyres(ask(tyres={"front": [{"size": "31x10.50 R15LT 109S"}]}))
    assert tyre["widths"] == [] or tyre["rim_width_by"] == "estimate"


def test_more_than_twelve_tyres_are_refused():
    answer = client().post(PATH, json={"vehicle": VEHICLE, "tyres": {"front": [WIDER] * 13}})
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "/tyres/front"


@pytest.mark.parametrize("kind", ["suitable", "with_conditions"])
def test_a_room_known_to_two_millimetres_takes_two_from_each_end(kind):
    measured = on_both_axles({"/vehicle/{axle}/clearance/tolerance_mm": 2})
    exact, rough = (
        next(each[kind] for each in tyres(ask(vehicle))[0]["widths"] if each["width_in"] == 7.5)
        for vehicle in (VEHICLE, changed({"vehicle": VEHICLE}, measured)["vehicle"])
    )
    assert {exact["from_bound"]["code"], exact["to_bound"]["code"]} == {"clearance.inboard", "clearance.outboard"}
    assert (rough["from_mm"] - exact["from_mm"], exact["to_mm"] - rough["to_mm"]) == (2, 2)


@pytest.mark.parametrize(("axle", "other"), [("front", "rear"), ("rear", "front")])
def test_a_combination_of_one_axle_leaves_the_other_as_it_is(axle, other):
    found = ask(combinations=[{axle: WIDER, "label": "one axle"}])
    (combined,) = found["combinations"]
    assert combined["label"] == "one axle"
    assert combined["candidate"][axle]["tyre"]["size"] == WIDER["size"]
    stays = combined["candidate"].get(other, VEHICLE[other]["fitted"])
    assert stays["tyre"]["size"] == VEHICLE[other]["fitted"]["tyre"]["size"]
