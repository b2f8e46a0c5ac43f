"""What a rule of a place says of a number at nought, beside it and on either side; the values are put in.

Two tyres of 690 kg (load index 95: Regeling voertuigen, Bijlage VIII, annex 4) on an axle of 1,000 kg; the car does
228 km/h and its tyres 300.
"""

import math
from dataclasses import replace

import pytest

from service.assessment.law.law_findings import findings_on_axle, judged, masses_kept_kg
from service.assessment.law.law_words import explained
from service.core.findings import ADVISORY, MET, OPEN
from service.rules.rule import Bound
from tests.support.cases import ABSENT, changed, check, saloon
from tests.unit.assessment.test_edges_of_law import MASS, axle, rule


def told(bound, value, **changes):
    """Return what is said of this value of a bounded quantity, without the place."""
    said = explained(rule(*bound), (value,), axle(**changes))
    assert said.endswith(" in the Netherlands.")
    return said.removesuffix(" in the Netherlands.")


GROWS = ("track_change_mm", "at_most", 10.0, "mm")
NO_MORE = ("track_change_mm", "at_most", 0.0, "mm")
INDEX = ("load_index_change", "at_least", 0.0, "index")
SYMBOL = ("speed_symbol_change_kmh", "at_least", 0.0, "km/h")
MARGIN = ("speed_capability_margin_kmh", "at_least", 0.0, "km/h")
SHRINKS = ("overall_diameter_change_percent", "at_least", -1.0, "%")


@pytest.mark.parametrize(
    ("bound", "value", "said"),
    [
        (GROWS, 20.0, "The track grows by 20 mm; 10 mm is allowed"),
        (GROWS, 10.04, "The track grows by 10.04 mm; 10 mm is allowed"),
        (GROWS, -20.0, "The track shrinks by 20 mm; 10 mm more is allowed"),
        (("track_change_mm", "at_most", 10.127, "mm"), 20.0, "The track grows by 20 mm; 10.13 mm is allowed"),
        # What rounds to nothing is no number; that it grew is still known.
        (GROWS, 0.3, "The track hardly changes; 10 mm is allowed"),
        (GROWS, 0.0005, "The track hardly changes; 10 mm is allowed"),
        (GROWS, 0.0, "The track does not change; 10 mm more is allowed"),
        # Where nothing more is allowed a hundredth is too much.
        (NO_MORE, 0.008, "The track grows by 0.01 mm; no increase is allowed"),
        (NO_MORE, -0.3, "The track hardly changes; no increase is allowed"),
        (NO_MORE, -2.0, "The track shrinks by 2 mm; no increase is allowed"),
        (("offset_change_mm", "at_least", 0.0, "mm"), -3.0, "The offset (ET) shrinks by 3 mm; no decrease is allowed"),
        (SHRINKS, -2.0, "The overall diameter shrinks by 2 %; 1 % is allowed"),
        (SHRINKS, -1.04, "The overall diameter shrinks by 1.04 %; 1 % is allowed"),
        (SHRINKS, 2.04, "The overall diameter grows by 2 %; 1 % less is allowed"),
        (INDEX, -3.0, "The load index falls by 3; no decrease is allowed"),
        (INDEX, 2.0, "The load index rises by 2; no decrease is allowed"),
        (SYMBOL, -30.0, "The speed of the tyre's symbol falls by 30 km/h; no decrease is allowed"),
        (SYMBOL, 30.0, "The speed of the tyre's symbol rises by 30 km/h; no decrease is allowed"),
        (SYMBOL, 0.0, "The speed of the tyre's symbol does not change; no decrease is allowed"),
        (("rim_width_change_mm", "at_most", 26.0, "mm"), 25.4, "The rim width grows by 25 mm; 26 mm is allowed"),
        (
            ("rim_diameter_change_abs_mm", "at_most", 12.7, "mm"),
            -25.4,
            "The rim diameter changes by 25 mm; 12.7 mm is allowed",
        ),
        (
            ("rolling_circumference_change_abs_percent", "at_most", 3.0, "%"),
            0.0,
            "The rolling circumference does not change; 3 % either way is allowed",
        ),
    ],
)
def test_a_change_is_told_by_its_way_and_size(bound, value, said):
    assert told(bound, value) == said


TOP = "the vehicle's top speed"


@pytest.mark.parametrize(
    ("bound", "value", "said"),
    [
        (MARGIN, 0.0, f"The tyre is made for just {TOP}; {TOP} is enough"),
        (MARGIN, 0.004, f"The tyre is made for 0 km/h above {TOP}; {TOP} is enough"),
        (
            MARGIN,
            -18.0,
            "The tyre is made for 18 km/h below the vehicle's top speed; the vehicle's top speed is enough",
        ),
        (
            ("speed_capability_margin_kmh", "at_least", 20.0, "km/h"),
            12.0,
            "The tyre is made for 12 km/h above the vehicle's top speed; no less than 20 km/h more is enough",
        ),
        (
            ("speed_capability_margin_kmh", "at_least", -10.0, "km/h"),
            -12.0,
            "The tyre is made for 12 km/h below the vehicle's top speed; no less than 10 km/h less is enough",
        ),
        (
            ("speed_capability_kmh", "at_least", 180.0, "km/h"),
            170.0,
            "The tyre is made for 170 km/h; 180 km/h is enough",
        ),
        (("spacer_mm", "at_most", 0.0, "mm"), 5.0, "The spacers are 5 mm thick; no spacer is allowed"),
        (("spacer_mm", "at_most", 3.0, "mm"), 5.0, "The spacers are 5 mm thick; 3 mm is allowed"),
        (
            ("load_index_spread", "at_most", 6.0, "index"),
            0.0,
            "The load indices on the axle do not differ; a difference of 6 is allowed",
        ),
        (
            ("load_index_spread", "at_most", 6.0, "index"),
            7.0,
            "The difference of the load indices on one axle is 7; a difference of 6 is allowed",
        ),
        (
            ("load_index_spread", "at_most", 0.0, "index"),
            1.0,
            "The difference of the load indices on one axle is 1; a difference of 0 is allowed",
        ),
        (
            INDEX,
            math.nan,
            "The change of the load index is not known; no decrease is allowed",
        ),
    ],
)
def test_a_level_is_told_beside_the_one_that_is_enough(bound, value, said):
    assert told(bound, value) == said


EACH = ("tyre_load_rating_margin_kg", "at_least", 0.0, "kg")
SUM = ("load_rating_sum_margin_kg", "at_least", 0.0, "kg")
MARKED, RATINGS = "Each tyre is marked for", "The load ratings of the axle's tyres"
CARRY = "By their load indices the axle's tyres carry"
SHARE = ("load_capacity_margin_percent", "at_least", 0.0, "%")


@pytest.mark.parametrize(
    ("bound", "value", "mass_kg", "said"),
    [
        (EACH, 0.0, 1380, f"{MARKED} 690 kg, as much as its share of the axle mass (690 kg); no less"),
        (
            EACH,
            189.75,
            1000.5,
            f"{MARKED} 690 kg, 190 kg more than its share of the axle mass (500.2 kg)",
        ),
        (EACH, 0.004, 1000, f"{MARKED} 500 kg, 0 kg more than its share of the axle mass (500 kg)"),
        (EACH, -0.75, 1381.5, f"{MARKED} 690 kg, 1 kg less than its share of the axle mass (690.8 kg)"),
        (
            SUM,
            0.004,
            1000,
            f"{RATINGS} add up to 1000 kg, 0 kg more than the axle mass of 1000",
        ),
        (
            SUM,
            379.6,
            1000.4,
            f"{RATINGS} add up to 1380 kg, 380 kg more than the axle mass of",
        ),
        (
            SHARE,
            0.0,
            1380,
            f"{CARRY} 1380 kg, as much as the 1380 kg that count; no",
        ),
        (
            SHARE,
            0.004,
            1000,
            f"{CARRY} 1000 kg, 0 % more than the 1000 kg that count",
        ),
        (SHARE, -2.04, 1400.4, f"{CARRY} 1372 kg, 2 % less than the 1400 kg that"),
        (SHARE, 37.9448, 1000.4, f"{CARRY} 1380 kg, 37.9 % more than the 1000 kg"),
    ],
)
def test_a_load_is_told_beside_what_it_must_carry(bound, value, mass_kg, said):
    assert told(bound, value, **{MASS: mass_kg}).startswith(said)


def test_a_rating_that_counts_as_a_part_of_itself_says_which():
    """1.10 by FMVSS 110 S4.2.2.2; here with more decimals than any place has: 1,380 / 1.125 = 1,226.7 kg."""
    view = axle()
    said = explained(rule(*SUM, 1.125), (226.667,), view)
    assert said.startswith(
        "The load ratings of the axle's tyres, passenger tyres divided by 1.12, add up to 1227 kg, 227 kg more"
    )


def test_a_bus_counts_less_of_its_axle():
    """Regeling voertuigen, Bijlage VIII, annex 4: standing passengers count 15 % less; 1,400 kg become 1,190."""
    view = axle(**{MASS: 1400})
    counted = view._replace(conditions=view.conditions._replace(axle_mass_share=0.85))
    assert explained(rule(*SHARE), (15.9664,), counted).startswith(
        f"{CARRY} 1380 kg, 16 % more than the 1190 kg that count; no less"
    )


# Two of 690 kg carry 1,380 kg; a tenth more than the mass is 1,380 / 1.1, 100 kg more 1,280, 40 a tyre 1,300.
@pytest.mark.parametrize(
    ("bound", "kept"),
    [
        (SHARE, [1380.0]),
        (("load_capacity_margin_percent", "at_least", 10.0, "%"), [1380.0 / 1.1]),
        (SUM, [1380.0]),
        (("load_rating_sum_margin_kg", "at_least", 100.0, "kg"), [1280.0]),
        (EACH, [1380.0]),
        (("tyre_load_rating_margin_kg", "at_least", 40.0, "kg"), [1300.0]),
        (GROWS, []),
    ],
)
def test_the_greatest_axle_mass_that_keeps_a_rule_is_reckoned_from_its_margin(bound, kept):
    view = axle()
    here = view.conditions.rules
    for rules, unsettled in (((rule(*bound),), ()), ((), ((rule(*bound), ("category",)),))):
        asked = here.rear._replace(rules=rules, unsettled=unsettled)
        held = view._replace(conditions=view.conditions._replace(rules=here._replace(rear=asked)))
        assert list(masses_kept_kg(held)) == pytest.approx(kept)
    both = replace(rule(*bound), bounds=(Bound(*bound), Bound(*GROWS)))
    asked = here.rear._replace(rules=(both,), unsettled=())
    held = view._replace(conditions=view.conditions._replace(rules=here._replace(rear=asked)))
    assert list(masses_kept_kg(held)) == []


# Where the track is not known: what shrinks keeps "no increase" whatever it is; 10 mm are 2 % of the narrowest, 500 mm.
@pytest.mark.parametrize(
    ("most_percent", "offset", "expected"),
    [(0.0, 46, MET), (0.0, 45, MET), (2.0, 40, MET), (2.0, 39.9, OPEN), (0.0, 44.9, OPEN)],
)
def test_a_share_of_an_unknown_track_is_judged_on_the_narrowest_one(most_percent, offset, expected):
    request = {"/vehicle/rear/track_mm": ABSENT, "/candidate/rear/rim/size": f"7.5J x 17 H2 ET{offset}"}
    view = check(changed(saloon(), request)).car.rear
    asked = replace(rule("track_change_percent", "at_most", most_percent, "%"), status="second_hand")
    share = 0.0 if offset == 45 else math.nan
    assert judged(asked, view, (share,)) == expected


@pytest.mark.parametrize(("offset", "said"), [(45, []), (30, []), (20, ["law.track_change"])])
def test_what_needs_no_words_keeps_its_number_and_its_limit(offset, said):
    """2 % of 1,540 mm of track in the Netherlands are 30.8 mm (art. 5.2.23, read), half of it is the offset."""
    rim = {"/candidate/rear/rim/size": f"7.5J x 17 H2 ET{offset}"}
    view = check(changed(saloon() | {"rule_pack": "nl"}, rim)).car.rear
    whole, short = findings_on_axle(view), findings_on_axle(view, ADVISORY)
    numbers = [[(each.code, each.outcome, each.measured, each.limit) for each in found] for found in (whole, short)]
    assert numbers[0] == numbers[1]
    track = next(each for each in short if each.code == "law.track_change")
    assert (track.measured, track.limit) == (pytest.approx(200.0 * (45 - offset) / 1540.0), 2.0)
    assert [each.code for each in short if each.message] == said
