"""What an axle asks for, against the check of each size by itself.

Reference: the check; the load indices and speeds of the descriptions tried are those of the single wheel's own reading.
"""

import dataclasses
from random import Random

import numpy as np
import pytest

from service.assessment.batch.axle_needs import OF_THE_DIAMETER, OF_THE_WIDTH, _spans, axle_needs
from service.assessment.batch.needs import trials
from service.assessment.case import Fitment, Tyre
from service.assessment.view.facts import wheel_facts
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.wheel_facts import FACTS
from service.core.findings import ADVISORY, OPEN
from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre
from tests.support import many_cases
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

PACKS = ("unece", "de", "fi", "au-nsw")


def asked(pack="unece", **changes):
    return changed(saloon(), {"/rule_pack": pack, **changes})


def outcomes(request, axle, codes):
    found = check(request).findings
    return [each.outcome for each in found if each.code in codes and each.axle in (axle, "vehicle")]


def is_in(span, size):
    """Return whether a size is in a span, whose unknown ends bound nothing."""
    return span is not None and not size < span.at_least and not size > span.at_most


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_diameter_in_the_window_is_what_a_check_of_it_says(pack, axle):
    request = asked(pack)
    case = check(request).case
    need = axle_needs(case, 0.0)[axle == "rear"].overall_diameter
    rules = {question.code for question, _ in need.by}
    for diameter in range(600, 671, 2):
        one = changed(request, {f"/candidate/{axle}/tyre/overall_diameter_mm": diameter})
        worst = max(outcomes(one, axle, {*OF_THE_DIAMETER, *rules}))
        assert is_in(need.window.suitable, diameter) == (worst <= OPEN)
        assert is_in(need.window.with_conditions, diameter) == (worst <= ADVISORY)


@pytest.mark.parametrize("pack", PACKS)
def test_a_width_in_the_window_is_what_a_check_of_it_says(pack):
    request = asked(pack)
    need = axle_needs(check(request).case, 0.0)[1].nominal_width
    rules = {question.code for question, _ in need.by}
    for width in range(155, 316, 10):
        one = changed(request, {"/candidate/rear/tyre/size": f"{width}/45 R17 94W XL"})
        worst = max(outcomes(one, "rear", {*OF_THE_WIDTH, *rules}))
        assert is_in(need.window.suitable, width) == (worst <= OPEN)
        assert is_in(need.window.with_conditions, width) == (worst <= ADVISORY)


def test_the_arch_bounds_the_diameter_from_above_by_its_room():
    # With 10 mm of room, of which 5 are to be left, the diameter cannot grow by more than 10 mm (geometry).
    tight = asked(**{"/vehicle/front/clearance/radial_mm": 10})
    need = axle_needs(check(tight).case, 0.0)[0].overall_diameter
    (arch,) = [window for question, window in need.by if question.code == "clearance.radial"]
    present = 17 * 25.4 + 2 * 0.45 * 225
    assert present - 1 <= arch.suitable.at_most <= present + 10


def test_without_a_measured_arch_nothing_but_the_change_bounds_the_diameter_there():
    bare = asked(**on_both_axles({"/vehicle/{axle}/clearance": ABSENT}))
    need = axle_needs(check(bare).case, 0.0)[0].overall_diameter
    assert need.window.suitable is not None


def test_a_place_with_a_winter_rule_tells_the_slowest_winter_tyre():
    # 160 km/h, not below symbol Q (UN R142, from memory).
    assert axle_needs(check(asked()).case, 0.0)[0].winter_symbol == "Q"


def test_a_place_that_asks_a_winter_tyre_for_no_speed_names_none():
    # StVZO section 36(5): a slower winter tyre needs a label in the car, whatever its symbol.
    needs = axle_needs(check(asked("de")).case, 0.0)[0]
    assert needs.winter_symbol is None
    assert np.isnan(needs.winter_floor_kmh)


def test_a_rim_must_carry_its_share_of_the_axle():
    assert [each.rim.load_rating_kg for each in axle_needs(check(asked()).case, 0.0)] == [480.0, 500.0]


def by_code(need):
    """Return the ends of what each question alone calls suitable and suitable with conditions."""
    return {
        question.code: tuple(tuple(span) for span in (window.suitable, window.with_conditions))
        for question, window in need.by
    }


def test_each_question_bounds_the_widths_by_itself():
    """By hand, from the widths that tyres take (ETRTO, from memory).

    Of the 45 series 195 to 245 mm take 7.5 in, 185 and 255 mm half an inch less and more. On 7.5 in 235 mm reach 3 and
    245 mm 6.6 mm further than now, and growth of 4 % takes half of that on each side: 14 and 16 mm leave 5 at 235.
    """
    need = axle_needs(check(asked()).case, 0.0)[0].nominal_width
    assert tuple(need.window.suitable) == (195.0, 235.0)
    assert tuple(need.window.with_conditions) == (185.0, 245.0)
    told = by_code(need)
    assert told["rim.width"] == ((195.0, 245.0), (185.0, 255.0))
    for code, most in (("clearance.inboard", 245.0), ("clearance.outboard", 255.0)):
        suitable, conditions = told[code]
        assert (suitable[1], conditions[1]) == (235.0, most)
        assert np.isnan([suitable[0], conditions[0]]).all()


@pytest.mark.parametrize("max_speed_kmh", [228, 320])
def test_each_question_bounds_the_diameter_by_itself(max_speed_kmh):
    """634 mm by 1.5 % and 3 % either way, and by 0.5 % so that the axles turn alike (common practice, no source).

    No symbol is made for 320 km/h: that leaves no description to try and the sizes as they are.
    """
    for axle, need in zip(
        ("front", "rear"), axle_needs(check(asked(**{"/vehicle/max_speed_kmh": max_speed_kmh})).case, 0.0), strict=True
    ):
        told = by_code(need.overall_diameter)
        assert told["diameter.deviation"] == ((625.0, 643.0), (615.0, 653.0)), axle
        assert told["diameter.axle_ratio"][0] == (631.0, 637.0), axle
        assert tuple(need.overall_diameter.window.suitable) == (631.0, 637.0)


@pytest.mark.parametrize(("driven", "told"), [("rear", True), (ABSENT, False)])
def test_a_question_that_is_only_open_bounds_nothing(driven, told):
    # The distance counter follows the driven axle: where that is not known nobody can say.
    need = axle_needs(check(asked("de", **{"/vehicle/driven_axle": driven})).case, 0.0)[1]
    assert ("law.distance_counter" in by_code(need.overall_diameter)) is told


def test_while_one_axle_is_varied_the_other_keeps_its_own_present_wheel():
    # 225/45 R17 has 634 and 245/40 R17 has 628 mm, each by 0.5 %.
    wider = {"/vehicle/rear/fitted/tyre/size": "245/40 R17 97W XL", "/vehicle/rear/fitted/rim/size": "8.5J x 17 ET45"}
    told = [by_code(each.overall_diameter) for each in axle_needs(check(asked(**wider)).case, 0.0)]
    assert [each["diameter.axle_ratio"][0] for each in told] == [(631.0, 637.0), (625.0, 631.0)]


@pytest.mark.parametrize(
    ("allowed", "best", "ends"),
    [
        ("..x..", 2, (620.0, 620.0)),
        (".xxx.", 2, (610.0, 630.0)),
        ("xx.xx", 3, (630.0, None)),
        ("xx.xx", 0, (None, 610.0)),
        # What is tried ends there, and bounds nothing.
        ("xxxxx", 2, (None, None)),
    ],
)
def test_a_window_is_the_run_around_the_best_size_be_it_one_alone(allowed, best, ends):
    flags = np.array([[each == "x" for each in allowed]])
    (found,) = _spans(flags, np.array([best]), [600.0, 610.0, 620.0, 630.0, 640.0])
    assert tuple(None if np.isnan(each) else each for each in found) == ends


def test_where_the_best_size_does_not_do_there_is_no_window():
    assert _spans(np.array([[True, False, True]]), np.array([1]), [600.0, 610.0, 620.0]) == [None]


def test_a_circumference_that_was_measured_grows_with_the_diameter():
    measured = on_both_axles({"/vehicle/{axle}/fitted/tyre/rolling_circumference_mm": 1950})
    for need in axle_needs(check(asked(**measured)).case, 0.0):
        assert by_code(need.overall_diameter)["diameter.axle_ratio"][0] == (631.0, 637.0)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_tried_is_what_each_description_says_by_itself(seed):
    request = changed(saloon(), {"/vehicle": many_cases.vehicle(Random(seed))})
    request = changed(request, {"/candidate": {}})
    case = check(request).case
    tried = trials(case)
    if tried is None:
        return
    for trial, axle in zip(tried, (case.vehicle.front, case.vehicle.rear), strict=True):
        rim = axle.fitted.rim._replace(designation=parse_rim("6.5J x 16"))
        for at in range(0, len(trial.descriptions), 7):
            tyre = Tyre(parse_tyre(f"205/55 R16 {trial.descriptions[at].description}"), NEW_TREAD_DEPTH_MM)
            alone = dataclasses.asdict(wheel_facts(Fitment(tyre, rim), axle, case.vehicle.max_speed_kmh))
            assert np.array_equal(trial.table[:, at], [alone[name] for name in FACTS], equal_nan=True)


# Rims of code 16 measure 405.6 mm (ETRTO), so that whole millimetres below these are no tyre at all.
@pytest.mark.parametrize("diameter_mm", [406.1, 405.9, 406.9])
def test_diameters_begin_above_the_rim_on_which_a_tyre_hardly_stands_out(diameter_mm):
    tyre = on_both_axles(
        {
            "/vehicle/{axle}/fitted/tyre": {"size": "205/55 R16 91V", "overall_diameter_mm": diameter_mm},
            "/vehicle/{axle}/fitted/rim/size": "6.5J x 16 H2 ET45",
        }
    )
    needs = axle_needs(check(asked(**tyre)).case, 0.0)
    assert needs[0].overall_diameter is None or needs[0].overall_diameter.window is not None
