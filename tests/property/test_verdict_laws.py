"""What holds of every verdict: a sound fitment is suitable, advice may be followed, more is never worse.

The vehicles are the twelve of the workshop, under the rules of every place, and generated ones.
"""

import math
import re

import pytest

from service.core import ranges
from service.designation.rim_grammar import HIGHEST_OFFSET_MM
from tests.support import many_cases, obeying, workshop
from tests.support.cases import changed
from tests.support.effort import cases
from tests.support.remedies import NotApplicable
from tests.support.shop_cases import shop_question
from tests.support.wire import AXLES, PACKS, against, check, pressures, question, rank, square

CASES = cases(300, 3000)
# So many cases in one test, so that a failure names few.
SLICE = 100
SLICES = range(0, CASES, SLICE)
# A generated case is of the shop, but for every fifth: anything that a request can say.
WILD = 5
# Of the cases of a slice, how many may lead out of what a request can say when they are obeyed.
MOST_LEFT_OUT = 0.3


def _case(seed: int):
    if seed % WILD:
        return shop_question(seed)
    asked = many_cases.question(seed, 1)
    (candidate,) = asked.pop("candidates")
    return {**asked, "candidate": candidate}


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("name", workshop.NAMES)
def test_the_present_fitment_is_suitable_as_a_candidate(name, pack):
    answer = check(question(workshop.vehicle(name), pack=pack))
    assert answer["verdict"] == "suitable", against(answer)


@pytest.mark.parametrize("name", workshop.NAMES)
def test_nothing_but_facts_that_nobody_needs_is_open_on_the_present_fitment(name):
    answer = check(question(workshop.vehicle(name)))
    assert {each for each in against(answer) if each[2] != "not_assessed"} == set()


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("name", workshop.NAMES)
def test_the_job_card_of_the_present_fitment_keeps_its_pressure(name, pack):
    vehicle = workshop.vehicle(name)
    ordered = pressures(check(question(vehicle, pack=pack)))
    assert all(kpa == vehicle[axle]["fitted"]["pressure_kpa"] for axle, kpa in ordered.items()), ordered


@pytest.mark.parametrize("name", workshop.NAMES)
def test_what_is_scarce_today_is_said_to_be_so_today(name):
    vehicle = workshop.vehicle(name)
    for axle in ("front", "rear"):
        vehicle[axle]["clearance"] = {"inboard_mm": 3, "outboard_mm": 3, "radial_mm": 3}
    answer = check(question(vehicle))
    scarce = [
        each for each in answer["findings"] if each["code"].startswith("clearance.") and "twin" not in each["code"]
    ]
    assert answer["verdict"] in ("suitable", "suitable_with_conditions"), against(answer)
    assert {(each["outcome"], each.get("already")) for each in scarce} == {("advisory", True)}
    assert all("today" in each["message"] for each in scarce)


@pytest.fixture(scope="module", params=SLICES)
def answered(request):
    """Return seed, request and answer of the generated cases of one slice."""
    asked = [(seed, _case(seed)) for seed in range(request.param, request.param + SLICE)]
    return [(seed, each, check(each)) for seed, each in asked]


def test_what_is_suitable_today_is_suitable_again_once_it_is_on_the_car(answered):
    """A generated sound fitment: one that was suitable, put on the car with the pressures of its job card."""
    wrong, tried = [], 0
    for seed, asked, answer in answered:
        if answer["verdict"] != "suitable":
            continue
        tried += 1
        done = changed(asked, {f"/candidate/{axle}/pressure_kpa": kpa for axle, kpa in pressures(answer).items()})
        for axle in AXLES:
            # What was measured was the room beside the former wheel.
            done["vehicle"][axle].pop("clearance", None)
            done["vehicle"][axle]["fitted"] = done["candidate"][axle]
        again = check(question(done["vehicle"], pack=asked["rule_pack"]))
        if again["verdict"] != "suitable":
            wrong.append((seed, again["verdict"], against(again)))
    assert wrong == []
    assert tried > 0


def test_who_does_all_that_the_answer_says_gets_no_worse_verdict_and_no_second_pressure(answered):
    wrong, left_out = [], 0
    for seed, asked, answer in answered:
        try:
            done = obeying.obey(asked, answer)
        except NotApplicable:
            left_out += 1
            continue
        again = check(done)
        if rank(again) > rank(answer):
            wrong.append((seed, answer["verdict"], again["verdict"], against(again)[:3]))
        ordered, then = pressures(answer), pressures(again)
        wrong += [
            (seed, axle, ordered[axle], then[axle])
            for axle in obeying.unchanged(asked, done)
            if axle in ordered and axle in then and ordered[axle] != then[axle]
        ]
    assert wrong == []
    assert left_out <= MOST_LEFT_OUT * SLICE


def test_who_sets_the_pressures_of_the_job_card_is_told_nothing_more_about_them(answered):
    wrong = []
    for seed, asked, answer in answered:
        ordered = pressures(answer)
        done = changed(asked, {f"/candidate/{axle}/pressure_kpa": kpa for axle, kpa in ordered.items()})
        again = check(done)
        said = [
            each
            for each in against(again)
            if each[0] == "load.pressure" and each[1] in ordered and each[2] != "not_assessed"
        ]
        if rank(again) > rank(answer) or pressures(again) != ordered or said:
            wrong.append((seed, answer["verdict"], again["verdict"], said, ordered, pressures(again)))
    assert wrong == []


def test_no_answer_orders_two_pressures_for_one_axle(answered):
    wrong = []
    for seed, _, answer in answered:
        ordered = pressures(answer)
        for told in obeying.advice(answer):
            if told.quantity != "pressure_kpa" or told.axle not in ordered:
                continue
            kpa = ordered[told.axle]
            low, high = told.at_least or 0.0, told.at_most or 10000.0
            # A text that says "set" orders; "at least" only bounds.
            named = [float(each) for each in re.findall(r"\bset (?:\w+ ){0,4}(\d+) kPa", told.text, re.IGNORECASE)]
            if not low <= kpa <= high or any(each != kpa for each in named):
                wrong.append((seed, told, kpa))
    assert wrong == []


def test_no_remedy_names_only_values_that_another_remedy_refuses(answered):
    """Of what can still be made to fit: what must not be fitted has no way out that all findings share."""
    told = [(seed, answer) for seed, _, answer in answered if answer["verdict"] != "unsuitable"]
    assert [(seed, each) for seed, answer in told for each in obeying.contradictions(answer)] == []


# What a request may state, in the unit of the remedy.
SAYABLE = {
    "section_width_mm": ranges.SECTION_WIDTH_MM,
    "overall_diameter_mm": ranges.OVERALL_DIAMETER_MM,
    "rolling_circumference_mm": ranges.ROLLING_CIRCUMFERENCE_MM,
    "rim_width_in": ranges.RIM_WIDTH_IN,
    "rim_diameter_in": ranges.RIM_DIAMETER_IN,
    "min_rim_diameter_in": ranges.RIM_DIAMETER_IN,
    "pressure_kpa": ranges.PRESSURE_KPA,
    "tread_depth_mm": ranges.TREAD_DEPTH_MM,
    "centre_bore_mm": ranges.CENTRE_BORE_MM,
    "load_rating_kg": ranges.RIM_LOAD_RATING_KG,
    "inboard_mm": ranges.ROOM_MM,
    "outboard_mm": ranges.ROOM_MM,
    "radial_mm": ranges.ROOM_MM,
    "offset_mm": (-HIGHEST_OFFSET_MM, HIGHEST_OFFSET_MM),
}


def test_no_remedy_names_what_a_request_refuses(answered):
    wrong = []
    for seed, _, answer in answered:
        for told in obeying.advice(answer):
            low, high = SAYABLE.get(told.quantity, (-math.inf, math.inf))
            # A rating above what is enough may be stated; a range must reach into what a request takes.
            if (told.at_least or low) > high or (high if told.at_most is None else told.at_most) < low:
                wrong.append((seed, told))
    assert wrong == []


def test_what_is_advised_against_or_slow_has_its_line_on_the_job_card(answered):
    wrong = []
    for seed, _, answer in answered:
        codes = [each["code"] for each in answer["actions"]]
        said = {(each["code"], each["outcome"]) for each in answer["findings"]}
        if answer["verdict"] == "not_recommended" and codes[0] not in ("would_not_fit", "do_not_fit"):
            wrong.append((seed, "advised against, and the job card does not begin with it", codes))
        if (
            answer["verdict"] != "unsuitable"
            and ("speed.capability", "advisory") in said
            and not {"speed_label", "keep_to_speed"} & set(codes)
        ):
            wrong.append((seed, "slow for the car, and no label", codes))
    assert wrong == []


@pytest.mark.parametrize(
    ("tyre", "kpa"),
    # 150 to 340: from the least that the table prints to what an extra-load tyre usually gets, 290 + 50.
    [("225/45 R17 94W XL", 340), ("225/45 R17 91W", 300), ("205/55 R16 91V", 300)],
)
def test_no_order_goes_above_what_the_tyre_usually_gets(tyre, kpa):
    rim = f"7.5J x {tyre.split(' R')[1][:2]} H2 ET47"
    for name in workshop.NAMES:
        ordered = pressures(check(question(workshop.vehicle(name), square(tyre, rim))))
        assert all(value <= kpa for value in ordered.values()), (name, ordered)
