"""A car of 1968 on diagonal tyres, and sizes whose dimensions only tables tell.

6.40-13: measuring rim 4.5, 642 mm high, 163 mm wide; 31x10.50 R15: 775 mm. UN R30 annex 5 and a tyre standards manual,
both from memory. Load index 83 is 487 kg, S is 180 km/h (UN R30 annexes 4 and 1).
"""

import pytest

from tests.support.cases import ABSENT, changed, on_both_axles
from tests.support.wire import check, findings, outcome, question, square

RIM = {"size": "4.5J x 13 ET30"}
KNOWN_BY_ITS_OWNER = {"load_index": 83, "speed_symbol": "S", "overall_diameter_mm": 640, "section_width_mm": 165}


def _classic(tyre="6.40-13", rim=RIM, **of_tyre):
    wheel = {"tyre": {"size": tyre, **of_tyre}, "rim": rim, "pressure_kpa": 170}
    axle = {
        "max_axle_mass_kg": 640,
        "kerb_axle_mass_kg": 500,
        "track_mm": 1310,
        "clearance": {"inboard_mm": 30, "outboard_mm": 30, "radial_mm": 40},
        "min_rim_diameter_in": 13,
        "fitted": wheel,
    }
    vehicle = {"category": "M1", "max_speed_kmh": 145, "built": "1968-05-20", "driven_axle": "rear"}
    candidate = square({"size": tyre, **of_tyre}, rim)
    return question(vehicle | {"front": axle, "rear": axle}, candidate)


def _open(answer):
    return {each["code"] for each in answer["findings"] if each["outcome"] == "not_assessed"}


@pytest.mark.parametrize("tyre", ["6.40-13", "6.40-13 6PR", "6.50-16"])
def test_diameter_and_load_of_the_owner_give_a_whole_answer(tyre):
    rim = {"size": f"4.5J x {tyre.split('-')[1][:2]} ET30"}
    answer = check(_classic(tyre, rim, **KNOWN_BY_ITS_OWNER))
    for axle in ("front", "rear"):
        proposed = answer["axles"][axle]["proposed"]
        assert proposed["overall_diameter_mm"] == 640
        assert proposed["section_width_mm"] == pytest.approx(165)
        assert proposed["load_required_kg"] == 320
        # 487 kg and no more: the slow-speed bonus is for commercial tyres alone.
        assert proposed["load_capacity_kg"] == pytest.approx(487)
        assert proposed["speed_capability_kmh"] == 180
    assert outcome(answer, "load.capacity") == "met"
    assert outcome(answer, "speed.capability") == "met"
    assert outcome(answer, "diameter.deviation") == "met"
    assert _open(answer).isdisjoint({"load.capacity", "speed.capability", "diameter.deviation", "clearance.radial"})
    assert answer["verdict"] in {"suitable", "suitable_with_conditions"}


def test_without_the_load_the_load_is_an_open_question_with_its_remedy():
    answer = check(_classic(overall_diameter_mm=640))
    assert answer["verdict"] == "undetermined"
    (one, *_) = findings(answer, "load.capacity")
    assert one["outcome"] == "not_assessed"
    assert "load index" in one["remedy"]["text"]


def test_the_table_gives_what_the_owner_does_not_and_says_that_it_is_from_memory():
    answer = check(_classic(load_index=83, speed_symbol="S"))
    assert answer["axles"]["front"]["proposed"]["overall_diameter_mm"] == 642
    assert answer["axles"]["front"]["proposed"]["section_width_mm"] == pytest.approx(163)
    assert sum("642 mm" in each and "memory" in each for each in answer["assumptions"]) == 2
    told = check(_classic(**KNOWN_BY_ITS_OWNER))
    assert not any("memory" in each for each in told["assumptions"])


def test_a_size_without_a_row_is_open_until_its_diameter_is_given():
    rim = {"size": "4.5J x 16 ET30"}
    asked = _classic("6.50-16", rim, load_index=88, speed_symbol="S")
    answer = check(asked)
    assert "overall_diameter_mm" not in answer["axles"]["front"]["proposed"]
    assert "load.capacity" not in _open(answer)
    changes = {
        "/candidate/{axle}/tyre/overall_diameter_mm": 745,
        "/vehicle/{axle}/fitted/tyre/overall_diameter_mm": 745,
    }
    answer = check(changed(asked, on_both_axles(changes)))
    assert answer["axles"]["front"]["proposed"]["overall_diameter_mm"] == 745
    assert any("section width of 6.50-16" in each for each in answer["assumptions"])


def test_a_flotation_size_is_lower_than_its_name():
    wide = _classic("31x10.50 R15LT 109Q", {"size": "8.5J x 15 ET0"})
    wide = changed(wide, {"/vehicle/max_speed_kmh": 140})
    assert check(wide)["axles"]["front"]["proposed"]["overall_diameter_mm"] == 775


def test_no_word_is_said_of_memory_where_the_size_tells_its_height():
    plain = changed(_classic("165/80 R13 83S"), on_both_axles({"/vehicle/{axle}/track_mm": ABSENT}))
    assert not any("memory" in each for each in check(plain)["assumptions"])
