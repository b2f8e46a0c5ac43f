"""In what order rows stand: verdict, then what speaks against a row and is not so today, then the measure, closeness.

References: the order is that of the contract, worked out here anew from the findings of single checks; what a fitter
calls near to the present fitment is common practice, no source. Load indices 94 and 97 are 670 and 730 kg (UN R30,
load-capacity index table).
"""

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from service.assessment.batch.closeness import distance
from service.assessment.batch.compare import compare
from service.assessment.batch.comparison_measures import RANK_BY
from service.assessment.batch.grading import grade_all, stack_candidates
from service.core.findings import OUTCOME_NAMES
from tests.support import many_cases
from tests.support.cases import changed, on_both_axles, saloon

TYRE, RIM = "225/45 R17 94W XL", "7.5J x 17 H2 ET45"
AGAINST = {"met": 0, "advisory": 1, "not_recommended": 100, "not_met": 1000}


def case(changes=None):
    return translate.case(CheckRequest.model_validate(changed(saloon(), changes or {})))


def with_wheels(tyre=TYRE, rim=RIM):
    return case(on_both_axles({"/candidate/{axle}/tyre/size": tyre, "/candidate/{axle}/rim/size": rim})).candidate


def _weight(finding):
    if finding.already:
        return 0
    # Of the two that are shown as not assessed, the one that decides nothing (1) weighs nothing.
    return AGAINST.get(OUTCOME_NAMES[finding.outcome], 0 if finding.outcome == 1 else 10)


@pytest.mark.parametrize("rank_by", RANK_BY)
@pytest.mark.parametrize("seed", [3, 4, 12])
def test_rows_stand_by_verdict_then_by_what_speaks_against_them_then_by_the_measure(rank_by, seed):
    asked = many_cases.question(seed, 60)
    about = {name: value for name, value in asked.items() if name != "candidates"}
    cases = [translate.case(CheckRequest.model_validate({**about, "candidate": each})) for each in asked["candidates"]]
    found = compare(cases[0], [each.candidate for each in cases], rank_by)
    name, best_is = {
        "closest_to_present": (None, 1.0),
        "dry_grip": ("dry_grip_percent", -1.0),
        "wet_margin": ("wet_margin_percent", -1.0),
        "load_margin": ("load_margin_percent", -1.0),
        "balance": ("balance_deg_per_g", 1.0),
        "braking": ("braking_distance_percent", 1.0),
    }[rank_by]
    steps = distance(found.graded.car, cases[0].season, (len(cases),))
    keys = []
    for at in found.order.tolist():
        value = steps[at] if name is None else float(getattr(found.measures, name)[at])
        against = sum(map(_weight, assess(cases[at]).findings))
        keys.append((int(found.graded.verdicts[at]), against, np.inf if np.isnan(value) else best_is * value))
    assert keys == sorted(keys)
    assert sorted(found.order.tolist()) == list(range(len(cases)))


def test_what_the_car_has_today_does_not_speak_against_a_row():
    # The front tyre stands 1 mm from the wing today: the same tyre does so too, the wider one touches.
    cramped = case({"/vehicle/front/clearance/outboard_mm": 1})
    candidates = [with_wheels("235/45 R17 97W XL", "8J x 17 H2 ET45"), with_wheels()]
    found = compare(cramped, candidates, "load_margin")
    assert found.order.tolist() == [1, 0]
    alone = assess(cramped._replace(candidate=candidates[1]))
    assert found.already[:, 1].sum() == sum(each.already for each in alone.findings)


@pytest.mark.parametrize(
    ("tyre", "rim"),
    [
        ("235/45 R17 94W XL", RIM),
        ("225/50 R17 94W XL", RIM),
        (TYRE, "8J x 17 H2 ET45"),
        (TYRE, "7.5J x 17 H2 ET40"),
        ("225/45 R17 97W XL", RIM),
        ("225/45 R17 94Y XL", RIM),
        ("225/45 R17 94W XL 3PMSF", RIM),
        (TYRE, "7.5J x 17 H2"),
    ],
    ids=["width", "diameter", "rim", "offset", "load", "speed", "season", "offset not known"],
)
def test_every_difference_takes_a_row_away_from_the_present(tyre, rim):
    one = case()
    graded = grade_all(one, *stack_candidates(one, [with_wheels(), with_wheels(tyre, rim)]))
    now, other = distance(graded.car, None, (2,)).tolist()
    assert now == 0.0 < other


def test_closeness_does_not_look_at_the_diameter_alone():
    # 225/45 R17 has 634 mm; 275/35 R17 has 624 and 225/40 R17 only 612, but is as wide and on the same rim.
    one = case()
    wide, low = with_wheels("275/35 R17 94W XL", "9.5J x 17 H2 ET45"), with_wheels("225/40 R17 94W XL")
    graded = grade_all(one, *stack_candidates(one, [wide, low]))
    far, near = distance(graded.car, None, (2,)).tolist()
    assert near < far


def test_in_winter_the_winter_tyre_is_the_nearer_one():
    one = case()._replace(season="winter")
    graded = grade_all(one, *stack_candidates(one, [with_wheels(), with_wheels("225/45 R17 94W XL 3PMSF")]))
    summer, winter = distance(graded.car, "winter", (2,)).tolist()
    assert winter < summer
