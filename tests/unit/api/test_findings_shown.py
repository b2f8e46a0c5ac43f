"""How findings, remedies and what fills a sentence are shown: as the contract says, member by member."""

from __future__ import annotations

import math

import orjson
import pytest

from service.api.render.findings_answer import action, brief, finding, head, sources, trade_off
from service.api.render.parameters_answer import parameters
from service.assessment.answer.action import Action
from service.assessment.answer.trade_offs import TradeOff
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN, Finding, Remedy
from service.core.saying import Amount, say
from service.core.sources import SOURCES, basis
from tests.support.cases import check, saloon

(GROUND, *OTHERS) = dict.fromkeys(each.basis for each in check(saloon()).findings if each.basis.place)


def found(outcome: int = NOT_MET, **more: object) -> Finding:
    return Finding("load.capacity", "front", outcome, "A sentence.", 1.234, 5.678, "kg", GROUND)._replace(**more)


@pytest.mark.parametrize(
    ("outcome", "name", "decides"),
    [
        (MET, "met", None),
        (OPEN, "not_assessed", False),
        (ADVISORY, "advisory", None),
        (NOT_ASSESSED, "not_assessed", True),
        (NOT_RECOMMENDED, "not_recommended", None),
        (NOT_MET, "not_met", None),
    ],
)
def test_what_is_open_says_whether_it_decides(outcome, name, decides):
    shown = head(found(outcome))
    assert (shown["outcome"], shown.get("decides")) == (name, decides)
    assert ("decides" in shown) == (decides is not None)


@pytest.mark.parametrize("holds", [None, True, False])
def test_a_tolerance_is_told_where_one_bears_on_it(holds):
    shown = head(found(holds_within_tolerance=holds))
    assert shown.get("holds_within_tolerance") is holds
    assert ("holds_within_tolerance" in shown) == (holds is not None)


@pytest.mark.parametrize(
    ("measured", "limit", "unit", "shown"),
    [
        (1.234, 5.678, "kg", {"measured": 1.23, "limit": 5.68, "unit": "kg"}),
        (1.234, None, "kg", {"measured": 1.23, "unit": "kg"}),
        (None, 5.678, "kg", {"limit": 5.68, "unit": "kg"}),
        # A unit of nothing says nothing.
        (None, None, "kg", {}),
        (0.0, 1.0, None, {"measured": 0.0, "limit": 1.0}),
    ],
)
def test_a_number_has_its_unit_and_two_decimals(measured, limit, unit, shown):
    told = finding(found(measured=measured, limit=limit, unit=unit))
    assert {name: told[name] for name in ("measured", "limit", "unit") if name in told} == shown


@pytest.mark.parametrize(
    ("at_least", "at_most", "shown"),
    [
        # Rounded into the range to four decimals, so that the number that is shown settles it.
        (1.00001, None, {"at_least": 1.0001}),
        (None, 1.00009, {"at_most": 1.0}),
        (1.00001, 2.00009, {"at_least": 1.0001, "at_most": 2.0}),
        # The last bit of a number is no reason to go a step further.
        (1.2 + 2e-16, None, {"at_least": 1.2}),
        (None, 0.3 - 5e-17, {"at_most": 0.3}),
        # One number alone is the nearest.
        (1.00006, 1.00006, {"at_least": 1.0001, "at_most": 1.0001}),
        (None, None, {}),
    ],
)
def test_the_ends_of_a_remedy_settle_the_finding(at_least, at_most, shown):
    remedy = Remedy("do so", "/candidate/front", "offset_mm", at_least, at_most)
    told = finding(found(remedy=remedy))["remedy"]
    base = {"text": "do so", "pointer": "/candidate/front", "quantity": "offset_mm"}
    assert told == base | shown


def test_a_remedy_may_be_a_word_and_have_a_unit():
    remedy = Remedy("do so", "/candidate/front", "bolt_circle", equals="5x112", unit="mm")
    told = finding(found(remedy=remedy))["remedy"]
    assert (told["equals"], told["unit"]) == ("5x112", "mm")
    assert "at_least" not in told


@pytest.mark.parametrize(
    ("outcome", "has"), [(ADVISORY, False), (NOT_MET, True), (NOT_ASSESSED, True), (NOT_RECOMMENDED, True)]
)
def test_a_short_answer_says_how_to_settle_what_holds_the_verdict(outcome, has):
    remedy = Remedy("do so", "/candidate/front", "offset_mm", 1.0)
    told = brief(found(outcome, remedy=remedy))
    assert told.get("remedy") == ({"text": "do so"} if has else None)
    assert (told["message"], told["already"]) == ("A sentence.", False)
    assert "remedy" not in brief(found(outcome))


def test_a_full_answer_says_where_in_the_document_a_ground_stands():
    whole, standard = (orjson.loads(orjson.dumps(finding(found(), whole=each)["basis"])) for each in (True, False))
    assert whole == {**standard, "place": GROUND.place}
    assert standard == {"kind": GROUND.kind, "source": GROUND.source, "status": GROUND.status}


def test_a_document_is_listed_once_with_its_edition_and_the_day_on_which_it_was_seen():
    grounds = [basis(key) for key in SOURCES]
    told = sources([*grounds, *grounds])
    assert list(told) == list(SOURCES)
    for key, source in SOURCES.items():
        assert told[key]["reference"] == source.title
        assert told[key]["status"] == source.status
        assert told[key].get("edition", "") == source.edition
        assert told[key].get("checked", "not read") == source.checked


def test_a_gain_has_its_value_only_where_there_is_one():
    told = trade_off(TradeOff("braking", "vehicle", "gain", 1.239, "%", "A sentence.", GROUND))
    assert (told["value"], told["unit"]) == (1.24, "%")
    assert not {"value", "unit"} & set(trade_off(TradeOff("braking", "vehicle", "gain", None, None, "So.", GROUND)))


def test_a_line_of_the_job_card_has_its_numbers_in_two_decimals_and_the_findings_that_it_answers():
    line = Action("spigot_rings_front", "Fit rings.", ring_outer_mm=72.5564, ring_inner_mm=66.6, findings=("rim.bore",))
    told = {"code": "spigot_rings_front", "text": "Fit rings.", "findings": ["rim.bore"]}
    assert action(line, whole=False) == told | {"numbers": {"ring_outer_mm": 72.56, "ring_inner_mm": 66.6}}


@pytest.mark.parametrize(
    ("amount", "shown"),
    [
        (Amount(1.23456, "kg"), {"text": "1 kg", "value": 1.23, "unit": "kg"}),
        (Amount(1.23456, "kg", 3), {"text": "1.235 kg", "value": 1.235, "unit": "kg"}),
        (Amount(2.0), {"text": "2", "value": 2.0}),
        (Amount(-0.001, "mm"), {"text": "0 mm", "value": 0.0, "unit": "mm"}),
    ],
)
def test_what_fills_a_sentence_is_a_number_in_two_decimals_or_as_many_as_are_said(amount, shown):
    told = parameters(say("It is {much}.", much=amount), whole=False)["parameters"]["much"]
    assert told == shown
    assert math.copysign(1.0, told["value"]) == (1.0 if told["value"] >= 0 else -1.0)


def test_a_sentence_without_anything_to_fill_has_no_parameters_and_a_template_where_all_is_asked_for():
    assert parameters(say("A body is required."), whole=False) == {}
    assert parameters(say("A body is required."), whole=True) == {"template": "A body is required."}
