"""What a row says of the worst finding is what the single check says, wherever an axle is best kept or made alike.

Reference: the single check of the same candidate, which tries each way by itself. The wheels are such that keeping the
front axle, keeping the rear one, taking the same wheels all round, and none of these is what settles a row.
"""

from itertools import product

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from service.assessment.batch.compare import compare
from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.batch.one_of_many import findings_at
from service.core.findings import ADVISORY
from tests.support.cases import ABSENT, changed, on_both_axles, saloon

WHEELS = (
    ("225/45 R17 94W XL", "7.5J x 17 H2 ET45"),
    ("245/40 R17 95W XL", "8J x 17 H2 ET45"),
    ("205/50 R17 93W XL", "7J x 17 H2 ET45"),
    ("245/45 R17 99W XL", "8J x 17 H2 ET45"),
    ("255/40 R17 98W XL", "9J x 17 H2 ET40"),
    ("225/45 R17 94W XL M+S 3PMSF", "7.5J x 17 H2 ET45"),
    ("225/45 R17 94T XL", "7.5J x 17 H2 ET45"),
)
WORN = {"/vehicle/front/fitted/tyre/tread_depth_mm": 1.0}
STAGGERED = {
    "/vehicle/rear/fitted/tyre/size": "245/40 R17 95W XL",
    "/vehicle/rear/fitted/rim/size": "8J x 17 H2 ET45",
}
CARS = {
    "plain": {},
    "worn front": WORN,
    "worn rear": {"/vehicle/rear/fitted/tyre/tread_depth_mm": 1.0},
    "staggered and worn": STAGGERED | WORN,
    "all wheels driven": {"/vehicle/driven_axle": "all", "/vehicle/speedometer": ABSENT},
    "heavier in front": {"/vehicle/front/max_axle_mass_kg": 1040},
    "alike in mass and worn": WORN | {"/vehicle/front/max_axle_mass_kg": 1000},
    "much room": WORN | on_both_axles({"/vehicle/{axle}/clearance": dict.fromkeys(("inboard_mm", "outboard_mm"), 60)}),
    "room on all sides": on_both_axles(
        {"/vehicle/{axle}/clearance": dict.fromkeys(("inboard_mm", "outboard_mm", "radial_mm"), 60)}
    ),
    "arch not measured": WORN | on_both_axles({"/vehicle/{axle}/clearance/radial_mm": ABSENT}),
    "hubs that nobody read": WORN
    | on_both_axles(
        {f"/vehicle/{{axle}}/{name}": ABSENT for name in ("hub", "fitted/rim/bolt_circle", "fitted/rim/centre_bore_mm")}
    ),
    "not measured": on_both_axles({"/vehicle/{axle}/clearance": ABSENT}),
    "rooms to within 4 mm": on_both_axles({"/vehicle/{axle}/clearance/tolerance_mm": 4}),
    "mass left out": {"/vehicle/rear/max_axle_mass_kg": ABSENT},
}
MORE = {
    "plain": {},
    "another hub in front": {"/candidate/front/rim/centre_bore_mm": 72.6},
    "as high as now": on_both_axles({"/candidate/{axle}/tyre/overall_diameter_mm": 634}),
}


def cases_of(car, more):
    """Return every wheel in front with every wheel behind, as cases of one car."""
    changes = CARS[car] | MORE[more]
    asked = [changed(saloon(*pair), changes) for pair in product(WHEELS, repeat=2)]
    return [translate.case(CheckRequest.model_validate(each)) for each in asked]


def told_alone(case):
    """Return reason and first remedy as a single check tells them: the first remedy of its five worst findings."""
    against = [each for each in assess(case).findings[:5] if each.outcome >= ADVISORY]
    remedies = [each.remedy.text for each in against if each.remedy is not None]
    return (against[0].message if against else "", remedies[0] if remedies else "")


PAIRED = [(car, more) for car in CARS for more in MORE if more == "plain" or car in ("plain", "worn front")]


@pytest.mark.parametrize(("car", "more"), PAIRED)
def test_a_row_says_what_the_check_says(car, more):
    cases = cases_of(car, more)
    found = compare(cases[0], [each.candidate for each in cases], "balance")
    assert [tuple(each) for each in found.words] == [told_alone(each) for each in cases]


def test_every_way_is_best_for_some_row():
    told = {told_alone(each)[1] for car in ("room on all sides", "heavier in front") for each in cases_of(car, "plain")}
    ways = {f"keep the present {axle} wheels" for axle in ("front", "rear")}
    ways |= {"fit the proposed rear wheels on the front axle too", "fit the proposed front wheels on the rear axle too"}
    assert ways <= told


@pytest.mark.parametrize("car", ["plain", "worn front", "mass left out"])
def test_each_question_is_told_of_each_candidate_as_in_its_check(car):
    cases = cases_of(car, "plain")[:20:3]
    candidates = [each.candidate for each in cases]
    graded = grade_all(cases[0], *stack_candidates(cases[0], candidates))
    alone = [{(each.code, each.axle): each for each in assess(case).findings} for case in cases]
    places = np.array([0, 2, 5])
    for row, question in enumerate(graded.questions):
        told = {place: finding.message for place, finding in findings_at(cases[0], candidates, graded, row, places)}
        assert sorted(told) == [0, 2, 5]
        for place, message in told.items():
            # What is so today and what holds within a tolerance is said besides.
            assert alone[place][question].message.startswith(message)


def test_the_wet_reserve_of_the_front_is_told_in_its_own_words():
    case = translate.case(CheckRequest.model_validate(saloon()))
    graded = grade_all(case, *stack_candidates(case, [case.candidate]))
    row = graded.questions.index(("wet.reserve", "front"))
    ((_, told),) = findings_at(case, [case.candidate], graded, row, np.array([0]))
    assert told.axle == "front"
