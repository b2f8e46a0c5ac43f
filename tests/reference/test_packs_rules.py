"""Each rule of each place at its limit, just inside and just outside.

Limits and how far each was read, by place:
NL: Regeling voertuigen (copy of 10 May 2017), art. 5.2.23 and 5.3.23 (track +2.0 %), 5.3.15(6)(c) (4 %), 50(1): read.
DE: StVZO (copy of 26 March 2022), section 36(6) and 57(3) (4 per cent): read; the latter measured by a stand-in.
ES: Manual de procedimiento ITV, rev. 6, January 2009 (load index, speed, diameter 3 %; track 30 mm): second hand.
FI: Traficom regulation on modification (40 mm or 20 %, 50 % or 105 mm, 26 mm, 30 mm, 15 %): second hand.
GB: SI 2001/25, schedule 3, para. 5: read. US: FMVSS 110 S4.2.1, FMVSS 120 S5.1.2, as NHTSA letters state them: read.
NSW: VSI 9 of 10 December 2019 (track 25 and 50 mm, no narrower rim): read; revision 4 (26 mm, 15 mm): second hand.
WA, SA: rules 46 and 52 (140, 180, 120 km/h): read; VSB 14 LS v2.1 off-road (50 mm, 50 %): second hand; cars
(15 mm up and 26 mm down, 30 %, track 25 mm wider): memory.
SA: guidance (15 mm, load index): second hand. NZ: VIRM, heavy vehicles (6; 2 for MD3): read.
UN: EU summary mi0081 (same structure): read; annex IV 3.2.1 to 3.2.3 (same type on an axle): second hand.
What was read may forbid; what was not, or is measured by a stand-in, may only advise (this project's rule).
"""

import pytest

from service.core.findings import ADVISORY, MET, NOT_MET
from service.rules.reader import default_packs

PACKS = default_packs()

# pack, code: at the limit, just inside, just outside, outcome outside. Two bounds: (first, second) values.
CASES = {
    ("unece", "law.structure"): (1, 1, 0, NOT_MET),
    ("unece", "law.same_size_on_axle"): (1, 1, 0, ADVISORY),
    ("nl", "law.track_change"): (2.0, 1.99, 2.01, NOT_MET),
    ("nl", "law.track_change_commercial"): (2.0, 1.99, 2.01, NOT_MET),
    ("nl", "law.same_size_on_axle"): (1, 1, 0, NOT_MET),
    ("nl", "law.driven_circumference"): (4.0, 3.99, 4.01, ADVISORY),
    ("nl", "law.axle_load"): (0.0, 0.01, -0.01, NOT_MET),
    ("de", "law.structure_car"): (1, 1, 0, NOT_MET),
    ("de", "law.distance_counter"): (4.0, 3.99, 4.01, ADVISORY),
    ("es", "law.load_index"): (0, 1, -1, ADVISORY),
    ("es", "law.speed_symbol"): (0, 30, -30, ADVISORY),
    ("es", "law.overall_diameter"): (3.0, 2.99, 3.01, ADVISORY),
    ("es", "law.track_change"): (30, 29.9, 30.1, ADVISORY),
    ("fi", "law.width_without_inspection"): ((40, 99), (99, 19.9), (40.1, 20.1), ADVISORY),
    ("fi", "law.width_at_inspection"): ((50, 199), (99, 104.9), (50.1, 105.1), ADVISORY),
    ("fi", "law.rim_diameter"): (26, 25.4, 26.1, ADVISORY),
    ("fi", "law.track_change"): (30, 29.9, 30.1, ADVISORY),
    ("fi", "law.overall_diameter"): (15, 14.9, 15.1, ADVISORY),
    ("gb", "law.same_size_on_axle"): (1, 1, 0, NOT_MET),
    ("gb", "law.radial_order"): (1, 1, 0, NOT_MET),
    ("us", "law.sidewall_limit"): (0, 1, -1, NOT_MET),
    ("us", "law.load_rating_sum"): (0, 1, -1, NOT_MET),
    ("au-nsw", "law.rim_width_wider"): (26, 25.4, 26.1, ADVISORY),
    ("au-nsw", "law.rim_width_narrower"): (0, 0.1, -0.1, ADVISORY),
    ("au-nsw", "law.diameter_larger"): (15, 14.9, 15.1, ADVISORY),
    ("au-nsw", "law.diameter_smaller"): (-15, -14.9, -15.1, ADVISORY),
    ("au-nsw", "law.track_change"): (25, 24.9, 25.1, NOT_MET),
    ("au-nsw", "law.track_change_off_road"): (50, 49.9, 50.1, NOT_MET),
    ("au-nsw", "law.same_size_on_axle"): (1, 1, 0, NOT_MET),
    ("au-nsw", "law.spacers"): (0, 0, 0.1, NOT_MET),
    ("au-wa", "law.speed_rating_car"): ((180, -40), (170, 1), (179, -1), NOT_MET),
    ("au-wa", "law.speed_rating_off_road"): ((140, -40), (130, 1), (139, -1), NOT_MET),
    ("au-wa", "law.speed_rating_other"): ((120, -40), (110, 1), (119, -1), NOT_MET),
    ("au-wa", "law.diameter_off_road"): (50, 49.9, 50.1, ADVISORY),
    ("au-wa", "law.width_off_road"): (50, 49.9, 50.1, ADVISORY),
    ("au-wa", "law.diameter_larger"): (15, 14.9, 15.1, ADVISORY),
    ("au-wa", "law.diameter_smaller"): (-26, -25.9, -26.1, ADVISORY),
    ("au-wa", "law.width"): (30, 29.9, 30.1, ADVISORY),
    ("au-wa", "law.track_change"): (25, 24.9, 25.1, ADVISORY),
    ("au-sa", "law.speed_rating_car"): ((180, -40), (170, 1), (179, -1), NOT_MET),
    ("au-sa", "law.speed_rating_off_road"): ((140, -40), (130, 1), (139, -1), NOT_MET),
    ("au-sa", "law.speed_rating_other"): ((120, -40), (110, 1), (119, -1), NOT_MET),
    ("au-sa", "law.load_index"): (0, 1, -1, ADVISORY),
    ("au-sa", "law.diameter_larger"): (15, 14.9, 15.1, ADVISORY),
    ("au-sa", "law.diameter_smaller"): (-15, -14.9, -15.1, ADVISORY),
    ("nz", "law.load_index_spread"): (6, 5, 7, NOT_MET),
    ("nz", "law.load_index_spread_bus"): (2, 1, 3, NOT_MET),
}


def outcome(key, measured):
    pack, code = key
    rule = next(rule for rule in PACKS[pack].rules if rule.code == code)
    return rule.outcome(*measured) if isinstance(measured, tuple) else rule.outcome(measured)


@pytest.mark.parametrize(("key", "at"), [(key, case[0]) for key, case in CASES.items()])
def test_a_rule_is_met_at_its_limit(key, at):
    assert outcome(key, at) == MET


@pytest.mark.parametrize(("key", "inside"), [(key, case[1]) for key, case in CASES.items()])
def test_a_rule_is_met_just_inside_its_limit(key, inside):
    assert outcome(key, inside) == MET


@pytest.mark.parametrize(("key", "outside", "expected"), [(key, *case[2:]) for key, case in CASES.items()])
def test_a_rule_forbids_or_advises_just_outside_its_limit(key, outside, expected):
    assert outcome(key, outside) == expected


def test_every_rule_of_every_pack_is_tried_above():
    written = {(rule.pack, rule.code) for pack in PACKS.values() for rule in pack.rules}
    assert written - set(CASES) == set(), "give each a line in CASES: at, just inside, just outside its limit"
    assert set(CASES) - written == set(), "no pack has these rules"


@pytest.mark.parametrize(
    ("offset_mm", "expected"),
    [(30, MET), (29, NOT_MET), (45, MET), (60, MET)],
)
def test_dutch_track_of_1500_mm_from_offset_45(offset_mm, expected):
    """Track change is twice the change of offset (geometry); 30 mm on 1500 mm is 2.0 %; only an increase is limited."""
    assert outcome(("nl", "law.track_change"), 100.0 * 2 * (45 - offset_mm) / 1500.0) == expected


@pytest.mark.parametrize(
    ("proposed_mm", "expected"), [(648.0, MET), (658.0, ADVISORY), (613.1, MET), (613.0, ADVISORY)]
)
def test_spanish_equivalents_of_632_mm(proposed_mm, expected):
    assert outcome(("es", "law.overall_diameter"), abs(100.0 * (proposed_mm / 632.0 - 1.0))) == expected


def test_passenger_tyres_on_trucks_are_divided_by_1_10():
    rule = next(rule for rule in PACKS["us"].rules if rule.code == "law.load_rating_sum")
    assert (rule.divisor, "N1" in rule.applies.categories, "M1" in rule.applies.categories) == (1.10, True, False)
