"""Which pressure is ordered, by the class of the tyre, its symbol and what was in so far.

Pressure-load law: P = P_ref (load / capacity)^1.25, derived from the printed table of the handbook, p. 290; for LT
tyres ^(1 / 0.7), derived from one printed table. 250 kPa standard (read), 290 extra and high load, 240 and 280
P-metric, 420 temporary spare (from memory); load range E 550 kPa, 450 above 295 mm (read in a trade text). Usual up
to 50 kPa above (common practice, no source).
"""

import math

import numpy as np
import pytest

from service.assessment.view.facts import tyre_facts
from service.assessment.view.ordered_pressure import ordered_pressure_kpa
from service.core.findings import MET
from service.designation.tyre import parse_tyre
from tests.support.cases import ABSENT, changed, check, finding, on_both_axles, saloon


@pytest.mark.parametrize(
    ("tyre", "reference_kpa"),
    [
        ("205/55 R16 91V", 250.0),
        ("205/55 R16 94V XL", 290.0),
        ("HL245/40 R19 101Y", 290.0),
        ("P215/65 R15 95T", 240.0),
        ("P215/65 R15 99T XL", 280.0),
        ("T125/80 D16 97M", 420.0),
        ("LT235/85 R16 120/116R E", 550.0),
        ("LT305/70 R16 124/121R E", 450.0),
    ],
)
def test_the_pressure_of_the_load_index_goes_by_the_class(tyre, reference_kpa):
    assert tyre_facts(parse_tyre(tyre)).reference_pressure_kpa == reference_kpa


@pytest.mark.parametrize(
    "tyre",
    [
        "215/65 R16C 109/107T",
        "225/75 R16CP 118R",
        # A second index, an index from 122 on, and the rims of lorries: commercial without a letter.
        "195/70 R15 104/102R",
        "235/60 R17 122T",
        "225/75 R17.5",
        "315/80 R22.5 156/150L",
        # Load range C is 350 kPa or less by size (from memory).
        "LT235/85 R16 120/116R C",
        # Inches of diameter and width are sizes of light trucks, whose letters the trade leaves out.
        "31x10.50 R15 109S",
    ],
)
def test_the_pressure_of_a_commercial_tyre_is_on_its_sidewall_alone(tyre):
    assert math.isnan(tyre_facts(parse_tyre(tyre)).reference_pressure_kpa)


@pytest.mark.parametrize(
    ("tyre", "exponent"),
    [("205/55 R16 91V", 0.8), ("P215/65 R15 95T", 0.5), ("LT235/85 R16 120/116R E", 0.7), ("31x10.50 R15 109S", 0.7)],
)
def test_each_table_has_its_own_exponent(tyre, exponent):
    assert tyre_facts(parse_tyre(tyre)).pressure_exponent == exponent


def rear_view(size, present_kpa, mass_kg, speed_kmh, **candidate):
    """Return the saloon's rear axle with this size proposed, beside this pressure in the present tyre."""
    changes = {
        "/candidate/rear/tyre/size": size,
        "/candidate/rear/pressure_kpa": candidate.get("stated_kpa", ABSENT),
        "/candidate/rear/tyre/reference_pressure_kpa": candidate.get("reference_kpa", ABSENT),
        "/vehicle/rear/fitted/pressure_kpa": present_kpa,
        "/vehicle/rear/max_axle_mass_kg": mass_kg,
        "/vehicle/max_speed_kmh": speed_kmh,
    }
    return check(changed(saloon(), changes)).car.rear


# 500 kg on 615: 193.0 kPa; T has no addition, H 30 kPa at 210 km/h (read), W 50 at 240 (from memory).
@pytest.mark.parametrize(
    ("tyre", "speed_kmh", "to_set_kpa"),
    [
        ("225/45 R17 91T", 190, 195),
        ("225/45 R17 91H", 160, 195),
        ("225/45 R17 91H", 210, 225),
        ("225/45 R17 91W", 190, 195),
        ("225/45 R17 91W", 210, 215),
        ("225/45 R17 91W", 240, 245),
    ],
)
def test_speed_adds_by_the_symbol(tyre, speed_kmh, to_set_kpa):
    assert rear_view(tyre, ABSENT, 1000, speed_kmh).ordered_pressure_kpa == to_set_kpa


# 225/45 R17 91V at 160 km/h under 500 kg needs 193 kPa and usually gets 300 at most.
@pytest.mark.parametrize(
    ("stated_kpa", "present_kpa", "to_set_kpa"),
    [
        (ABSENT, ABSENT, 195),
        (ABSENT, 180, 195),
        (ABSENT, 240, 240),
        (ABSENT, 232, 235),
        (ABSENT, 300, 300),
        (ABSENT, 310, 195),
        (193, 240, 193),
        (231, 240, 231),
        (300, 240, 300),
        (190, 240, 240),
        (190, 450, 195),
        (301, 240, 240),
        (450, 450, 195),
    ],
)
def test_a_sound_pressure_is_kept_and_any_other_set_right(stated_kpa, present_kpa, to_set_kpa):
    assert rear_view("225/45 R17 91V", present_kpa, 1000, 160, stated_kpa=stated_kpa).ordered_pressure_kpa == to_set_kpa


def test_the_step_up_ends_at_what_the_tyre_usually_gets():
    """238 + 50 = 288 kPa at most: from 286 of today the next step would be 290, so it is 285."""
    found = rear_view("225/45 R17 91V", 286, 1000, 160, reference_kpa=238)
    assert found.ordered_pressure_kpa == 285.0


def test_no_pressure_is_ordered_into_a_tyre_that_is_too_weak():
    """82 carries 475 kg (load index table) of 500."""
    assert math.isnan(rear_view("225/45 R17 82V", 250, 1000, 160).ordered_pressure_kpa)


def test_a_tyre_that_carries_exactly_the_axle_gets_its_reference_pressure():
    """91 is 615 kg: 2 x 615 = 1,230."""
    assert rear_view("225/45 R17 91V", ABSENT, 1230, 160).ordered_pressure_kpa == 250.0


def test_everything_is_computed_for_the_pressure_to_be_set():
    """160 kPa do not carry the axle, so nobody will drive with them: the estimates are those of 195."""
    low, right = (rear_view("225/45 R17 91V", ABSENT, 1000, 160, stated_kpa=kpa) for kpa in (160, 195))
    assert low.then.behaviour == right.then.behaviour


@pytest.mark.parametrize("kpa", [120, 160, 380])
def test_the_same_tyre_at_the_same_wrong_pressure_changes_nothing(kpa):
    places = ("/vehicle/{axle}/fitted", "/candidate/{axle}")
    view = check(changed(saloon(), on_both_axles({f"{place}/pressure_kpa": kpa for place in places}))).car.rear
    assert view.then.behaviour == view.now.behaviour


def test_an_unknown_present_pressure_of_the_same_tyre_changes_nothing():
    unstated = on_both_axles(
        {f"{place}/pressure_kpa": ABSENT for place in ("/vehicle/{axle}/fitted", "/candidate/{axle}")}
    )
    view = check(changed(saloon(), unstated)).car.rear
    assert view.then.behaviour == view.now.behaviour


def test_the_pressure_is_named_alike_in_finding_action_and_assumption():
    found = check(changed(saloon(), {"/candidate/rear/pressure_kpa": 200}))
    (action,) = [each.text for each in found.actions if each.code == "set_pressure_rear"]
    remedy = finding(found, "load.pressure").remedy
    said = [text for text in found.assumptions if "everything is computed" in text]
    assert "250 kPa" in action
    assert "250 kPa" in remedy.text
    assert [text.count("250 kPa") for text in said] == [1]


def test_numbers_and_arrays_order_alike():
    view = rear_view("225/45 R17 91V", ABSENT, 1000, 160)
    limits = view.limits
    presents = np.array([math.nan, 180.0, 232.0, 300.0, 310.0])
    alone = [ordered_pressure_kpa(view.then.facts, view.then.load, each, limits) for each in presents.tolist()]
    assert ordered_pressure_kpa(view.then.facts, view.then.load, presents, limits).tolist() == alone


# 0.27 of the axle on each passenger twin, 0.25 on each commercial one (UN R142, from memory).
@pytest.mark.parametrize(
    ("tyre", "share"), [("225/70 R17 108T", 0.27), ("225/70 R17 108/106T", 0.25), ("225/70 R17 122T", 0.25)]
)
def test_the_share_of_a_twin_goes_by_the_class(tyre, share):
    changes = {
        "/candidate/rear/tyre/size": tyre,
        "/vehicle/rear/wheels_per_side": 2,
        "/vehicle/rear/max_axle_mass_kg": 2000,
        "/vehicle/max_speed_kmh": 120,
    }
    assert check(changed(saloon(), changes)).car.rear.then.load.required_kg == pytest.approx(2000 * share)


def test_a_truck_rim_makes_a_commercial_tyre_without_any_index():
    assert tyre_facts(parse_tyre("225/75 R17.5")).commercial == 1.0


def test_the_pressure_of_nobody_is_met_with_what_will_be_set():
    found = finding(check(changed(saloon(), {"/candidate/rear/pressure_kpa": ABSENT})), "load.pressure")
    assert found.outcome == MET
    assert "to be set" in found.message


def test_an_estimate_without_an_order_goes_no_higher_than_the_tyre_usually_does():
    """A tyre without a load index after a van's: of the 450 kPa of today the estimates take 300, 50 above its class."""
    changes = {
        "/vehicle/rear/fitted/tyre/size": "215/65 R17C 109/107T",
        "/vehicle/rear/fitted/pressure_kpa": 450,
        "/candidate/rear/tyre/size": "225/45 R17",
        "/candidate/rear/pressure_kpa": ABSENT,
    }
    view = check(changed(saloon(), changes)).car.rear
    assert (view.now.behaviour.pressure_kpa, view.then.behaviour.pressure_kpa) == (450.0, 300.0)
