"""The array path and the single check are one: the same outcomes, verdicts and numbers.

Reference: each other. The tolerance of 1e-9 is for the last bits of powers and roots, which numpy computes otherwise
than Python does.
"""

from collections.abc import Iterator
from math import isclose

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import Assessment, assess
from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.case import Case
from service.assessment.view.mass_change import mass_change
from service.assessment.view.views import CarView
from service.core.findings import NOT_ASSESSED
from tests.support import many_cases
from tests.support.effort import cases

SEEDS = range(cases(24, 200))
CANDIDATES = cases(80, 250)
RELATIVE = 1e-9


@pytest.fixture(scope="module", params=SEEDS)
def both(request: pytest.FixtureRequest) -> tuple[Graded, list[Assessment]]:
    """Return what both ways find of the candidates of one seed."""
    cases = _cases(request.param)
    together = grade_all(cases[0], *stack_candidates(cases[0], [each.candidate for each in cases]))
    assert len({each.candidate for each in cases}) > CANDIDATES // 2, "the candidates of a seed differ"
    return together, [assess(each) for each in cases]


def _cases(seed: int) -> list[Case]:
    asked = many_cases.question(seed, CANDIDATES)
    about = {name: value for name, value in asked.items() if name != "candidates"}
    return [translate.case(CheckRequest.model_validate({**about, "candidate": each})) for each in asked["candidates"]]


def _by_question(single: Assessment) -> dict[tuple[str, str], tuple[int, float | None, float | None]]:
    return {(each.code, each.axle): (each.outcome, each.measured, each.limit) for each in single.findings}


def test_both_ask_the_same_questions(both):
    together, alone = both
    asked = {(each.code, each.where) for each in together.questions}
    assert len(asked) == len(together.questions)
    assert all(set(_by_question(single)) == asked for single in alone)


def test_every_outcome_is_the_same(both):
    together, alone = both
    differing = [
        (at, question.code, question.where)
        for at, single in enumerate(alone)
        for question, outcome in zip(together.questions, together.outcomes[:, at].tolist(), strict=True)
        if _by_question(single)[question.code, question.where][0] != outcome
    ]
    assert differing == []


def test_every_verdict_is_the_same(both):
    together, alone = both
    assert [VERDICTS[code] for code in together.verdicts.tolist()] == [single.verdict for single in alone]


@pytest.mark.parametrize(("member", "place"), [("measured", 1), ("limits", 2)])
def test_every_number_that_a_finding_shows_is_the_same(both, member, place):
    together, alone = both
    numbers = getattr(together, member)
    differing = []
    for at, single in enumerate(alone):
        found = _by_question(single)
        for row, question in enumerate(together.questions):
            shown = found[question.code, question.where]
            # An open question may name the limit that would count; it was held against none.
            if shown[place] is None or (place == 2 and shown[0] == NOT_ASSESSED):
                continue
            if not isclose(shown[place], numbers[row, at], rel_tol=RELATIVE, abs_tol=RELATIVE):
                differing.append((at, question.code, question.where, shown, numbers[row, at]))
    assert differing == []


def _road_numbers(car: CarView) -> dict[str, object]:
    """Return every number of what a change does on the road, by the names that lead to it."""
    masses = {view.name: mass_change(view.now, view.then) for view in (car.front, car.rear)}
    reserves = {"front": car.front_reserve, "rear": car.rear_reserve}
    told = dict(_leaves(car.driving, "driving"))
    told |= {name: value for axle, found in reserves.items() for name, value in _leaves(found, f"{axle} reserve")}
    return told | {name: value for axle, found in masses.items() for name, value in _leaves(found, f"{axle} masses")}


def _leaves(part: object, name: str) -> Iterator[tuple[str, object]]:
    if isinstance(part, tuple):
        for field, inner in part._asdict().items():
            yield from _leaves(inner, f"{name}.{field}")
    else:
        yield name, part


def test_every_number_of_the_road_is_the_same(both):
    together, alone = both
    many = {name: np.broadcast_to(values, len(alone)) for name, values in _road_numbers(together.car).items()}
    singles = [_road_numbers(single.car) for single in alone]
    differing = []
    for name, values in many.items():
        one_by_one = np.array([each[name] for each in singles])
        if not np.allclose(values, one_by_one, RELATIVE, RELATIVE, equal_nan=True):
            differing.append(name)
    assert len(many) > 20
    assert differing == []


def test_every_verdict_and_outcome_occurs():
    """The cases are of use only when they lead everywhere."""
    found = [
        grade_all(cases[0], *stack_candidates(cases[0], [each.candidate for each in cases]))
        for cases in map(_cases, SEEDS)
    ]
    assert set(np.concatenate([each.verdicts for each in found]).tolist()) == set(range(len(VERDICTS)))
    outcomes: dict[str, set[int]] = {}
    for each in found:
        for question, row in zip(each.questions, each.outcomes, strict=True):
            outcomes.setdefault(question.code, set()).update(row.tolist())
    own = {code: met for code, met in outcomes.items() if not code.startswith("law.")}
    assert [code for code, met in own.items() if len(met) < 2] == []
