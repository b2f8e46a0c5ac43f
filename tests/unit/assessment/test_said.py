"""What a check finds and advises can be said in another language, down to what fills each sentence."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from random import Random

import pytest

from service.api.inbound.translate import case as case_of
from service.api.schemas.request import CheckRequest
from service.assessment.case import Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.law import law_findings as law
from service.assessment.view.views import candidate_facts, now_fitted, weigh
from service.core.dates import day_in_words
from service.core.findings import Finding
from service.core.saying import Said
from service.rules.reader import default_packs
from tests.support import many_cases
from tests.support.sayings import unsaid
from tests.support.sentences import sentences
from tests.support.shop_cases import Json, shop_question

# Each group of questions is one test: 25 of a shop and 25 odd ones.
GROUPS, GROUP = range(8), 25


def _odd(seed: int) -> Json:
    asked = many_cases.question(seed, 1)
    [candidate] = asked.pop("candidates")
    return {**asked, "candidate": candidate}


def _findings(case: Case) -> Iterator[Finding]:
    car = weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))
    for view in (car.front, car.rear):
        yield from (check.explain(view, check.grade(view)) for check in AXLE_CHECKS)
        yield from law.findings_on_axle(view)
    yield from (check.explain(car, check.grade(car)) for check in CAR_CHECKS)
    yield from law.findings_on_vehicle(case, car)


@cache
def _told(group: int) -> dict[str, set[str]]:
    """Return the messages and advices to a group of questions by the code of their finding."""
    found: dict[str, set[str]] = {}
    for seed in range(group * GROUP, (group + 1) * GROUP):
        for asked in (shop_question(seed), _odd(seed)):
            for finding in _findings(case_of(CheckRequest.model_validate(asked))):
                texts = [finding.message, *([] if finding.remedy is None else [finding.remedy.text])]
                found.setdefault(finding.code, set()).update(texts)
    return found


@cache
def _in_the_catalogues() -> frozenset[str]:
    return frozenset(str(each.id) for each in sentences() if each.id)


def _templates(text: str) -> Iterator[str]:
    if isinstance(text, Said):
        yield text.template
        for each in text.parameters.values():
            yield from _templates(each)


def _only_joins(template: str) -> bool:
    """Return whether nothing but places stands in a template: what joins sentences has no words to turn."""
    return template.replace("{", "").replace("}", "").replace("part", "").strip("0123456789 ,") in ("", "text")


@pytest.mark.parametrize("group", GROUPS)
def test_what_a_check_tells_is_said_down_to_what_fills_it(group: int) -> None:
    texts = {text for told in _told(group).values() for text in told}
    assert [text for text in texts if not isinstance(text, Said)] == []
    assert {text: unsaid(text) for text in texts if unsaid(text)} == {}


@pytest.mark.parametrize("group", GROUPS)
def test_a_translator_is_given_every_sentence(group: int) -> None:
    templates = {each for told in _told(group).values() for text in told for each in _templates(text)}
    assert {each for each in templates if not _only_joins(each)} - _in_the_catalogues() == set()


def test_the_cases_ask_of_every_place() -> None:
    # Otherwise a law told in plain English could stay unseen.
    held = {rule.code for pack in default_packs().values() for rule in pack.rules}
    assert held <= {code for group in GROUPS for code in _told(group)}


@pytest.mark.parametrize("pack", sorted(default_packs()))
def test_the_name_of_a_place_is_said_with_its_preposition(pack: str) -> None:
    places = {rule.place for rule in default_packs()[pack].rules}
    assert places <= _in_the_catalogues()


def test_a_day_is_said_as_a_whole() -> None:
    days = [day_in_words(f"2026-{month:02}-0{Random(month).randint(1, 9)}") for month in range(1, 13)]
    assert len({day.template for day in days}) == 12
    assert all(not unsaid(day) and day.template in _in_the_catalogues() for day in days)
