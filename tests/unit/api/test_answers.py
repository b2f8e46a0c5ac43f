"""Answers that come again are the same answers, but for what the caller calls the candidate."""

from __future__ import annotations

import orjson

from service.api.inbound.translate import case
from service.api.render import assessment_answer as render
from service.api.render.answers import answer
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from tests.support.cases import changed, saloon


def _case(label: str = "", **changes: object):
    return case(CheckRequest.model_validate(changed(saloon(), {"/candidate/label": label, **changes})))


def test_a_kept_answer_is_the_one_that_is_made_anew():
    fresh = orjson.dumps(render.assessment(assess(_case("as it is"))))
    assert {orjson.dumps(answer(_case("as it is"))) for _ in range(4)} == {fresh}


def test_each_caller_reads_its_own_label():
    assert [answer(_case(label))["label"] for label in ("mine", "yours", "", "yours")] == ["mine", "yours", "", "yours"]


def test_another_question_gets_another_answer():
    for _ in range(3):
        answer(_case())
    heavier = changed(saloon(), {"/vehicle/front/max_axle_mass_kg": 1400})
    assert answer(_case())["verdict"] == "suitable"
    assert answer(case(CheckRequest.model_validate(heavier)))["verdict"] == "unsuitable"
