"""What holds of every job card: no warning of the findings without a line, danger first, and in the order of work.

Asked of the shop's questions and of anything that a request can say, under the rules of every place. The order of work
is common practice, no source.
"""

import re

import pytest

from tests.support import many_cases, workshop
from tests.support.effort import cases
from tests.support.shop_cases import shop_question
from tests.support.wire import AXLES, PACKS, check, question

CASES = cases(300, 3000)
SLICE = 100
WILD = 5
OUTCOMES = ("met", "advisory", "not_assessed", "not_recommended", "not_met")
DANGER = ("do_not_fit", "would_not_fit", "mind_too", "settle_first")
# The kinds of line in the order in which a workshop goes through them.
ORDER = (
    r"do_not_fit",
    r"would_not_fit",
    r"mind_too|settle_first",
    r"measure_before_order",
    r"set_pressure_\w+",
    r"spigot_rings_\w+",
    r"bolt_seat",
    r"torque",
    r"pressure_sensors",
    r"speed_label",
    r"speedometer",
    r"stability_control",
    r"trial_fit",
    r"tell_\w+",
    r"ask_\w+",
    r"papers",
    r"insurer",
)


def _case(seed):
    if seed % WILD:
        return shop_question(seed)
    asked = many_cases.question(seed, 1)
    (candidate,) = asked.pop("candidates")
    return {**asked, "candidate": candidate}


@pytest.fixture(scope="module", params=range(0, CASES, SLICE))
def answers(request):
    return [(seed, check(_case(seed))) for seed in range(request.param, request.param + SLICE)]


def _codes(answer, *outcomes):
    """Return the codes of the findings that came out like this, each once, in their order."""
    return list(dict.fromkeys(each["code"] for each in answer["findings"] if each["outcome"] in outcomes))


def _names(line, code):
    return re.fullmatch(f"(tell|ask)_{code.replace('.', '_')}(_front|_rear)?", line["code"]) is not None


def _place(code):
    (place,) = [at for at, kind in enumerate(ORDER) if re.fullmatch(kind, code)]
    return place


def test_whatever_advises_or_is_advised_against_is_named_by_a_line(answers):
    wrong = []
    for seed, answer in answers:
        named = {code for each in answer["actions"] for code in each["findings"]}
        wrong += [
            (seed, code) for code in _codes(answer, "advisory", "not_recommended", "not_met") if code not in named
        ]
    assert wrong == []


def test_what_the_verdict_waits_for_is_named_unless_it_must_not_be_fitted(answers):
    wrong = []
    for seed, answer in answers:
        if answer["verdict"] == "unsuitable":
            continue
        waits = {each["code"] for each in answer["findings"] if each.get("decides")}
        named = {code for each in answer["actions"] if each["code"] == "settle_first" for code in each["findings"]}
        wrong += [(seed, waits, named)] if waits != named else []
    assert wrong == []


def test_the_lines_stand_in_the_order_of_work(answers):
    places = [(seed, [_place(each["code"]) for each in answer["actions"]]) for seed, answer in answers]
    assert [(seed, found) for seed, found in places if found != sorted(found)] == []


def test_what_is_passed_on_stands_in_the_order_of_the_findings(answers):
    wrong = []
    for seed, answer in answers:
        order = [each["code"] for each in answer["findings"] if each["outcome"] == "advisory"]
        for kind in ("mind_too", "tell_", "ask_"):
            lines = [each for each in answer["actions"] if each["code"].startswith(kind)]
            # A line answers what follows from its finding too; it stands where the finding that names it does.
            named = [
                code
                for each in lines
                for code in dict.fromkeys(each["findings"])
                if kind == "mind_too" or _names(each, code)
            ]
            wrong += [] if _stands_in(order, named) else [(seed, kind, named)]
    assert wrong == []


def _stands_in(order, named):
    """Return whether the codes follow one another as in the order, where one asked of both axles stands twice."""
    rest = iter(order)
    return all(any(code == each for each in rest) for code in named)


def test_danger_stands_first_and_no_code_stands_twice(answers):
    wrong = []
    for seed, answer in answers:
        codes = [each["code"] for each in answer["actions"]]
        first = {"unsuitable": "do_not_fit", "not_recommended": "would_not_fit", "undetermined": "settle_first"}
        expected = first.get(answer["verdict"], codes[0])
        wrong += [(seed, codes)] if codes[0] != expected or len(codes) != len(set(codes)) else []
    assert wrong == []


def test_nothing_is_set_or_tightened_on_what_must_not_be_fitted(answers):
    codes = [
        (seed, each["code"])
        for seed, answer in answers
        if answer["verdict"] == "unsuitable"
        for each in answer["actions"]
    ]
    assert [each for each in codes if each[1] not in DANGER] == []


def test_all_else_has_both_pressures_and_the_torque(answers):
    whole = {f"set_pressure_{axle}" for axle in AXLES} | {"torque"}
    fitted = [answer for _, answer in answers if answer["verdict"] != "unsuitable"]
    assert [answer["verdict"] for answer in fitted if not whole <= {each["code"] for each in answer["actions"]}] == []


def test_nobody_is_told_a_name_of_a_field(answers):
    """What a customer and a fitter read has no pointers and no names of the request."""
    field = re.compile(r"\b[a-z]+_[a-z]|\b(?:vehicle|candidate)\.|/candidate|/vehicle")
    wrong = []
    for seed, answer in answers:
        texts = [answer["summary"], *(each["text"] for each in answer["actions"])]
        wrong += [(seed, text) for text in texts if field.search(text)]
    assert wrong == []


def test_the_counts_are_those_of_the_findings(answers):
    for _, answer in answers:
        outcomes = [each["outcome"] for each in answer["findings"]]
        assert answer["finding_counts"] == {each: outcomes.count(each) for each in OUTCOMES}


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("name", workshop.NAMES)
def test_the_present_fitment_again_has_a_short_card(name, pack):
    """Pressure and torque: no papers, no insurer, nothing to try."""
    answer = check(question(workshop.vehicle(name), pack=pack))
    assert [each["code"] for each in answer["actions"]] == ["set_pressure_front", "set_pressure_rear", "torque"]
