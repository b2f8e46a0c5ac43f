"""Every question that the contract admits is answered: each route, each place, odd days and numbers, parts left out.

A seeded few on every run, thousands where somebody explores; what broke once has a test of its own.
"""

import json

import pytest

from service.ask import answer
from service.core.errors import RefusedRequest
from tests.support.effort import cases
from tests.support.extremes import asked
from tests.support.wire import client

SEEDS = range(cases(72, 3000))


def _status(route, question):
    """Return 200 or 422, as the service answers; anything else is an error of its own."""
    if route in ("drawing", "report"):
        return client().post(f"/v1/fitments/{route}", json=question).status_code
    try:
        answer(route, json.dumps(question).encode())
    except RefusedRequest:
        return 422
    return 200


@pytest.mark.parametrize("seed", SEEDS)
def test_a_question_of_any_kind_is_answered(seed):
    assert _status(*asked(seed)) in (200, 422)


def test_most_of_these_questions_are_good_ones():
    told = [_status(*asked(seed)) for seed in range(36)]
    assert told.count(200) > 0.7 * len(told)


# The places of `compare` among the routes.
@pytest.mark.parametrize("seed", [*range(14, 20), *range(52, 58)])
def test_a_row_of_many_says_what_the_check_of_its_candidate_says(seed):
    route, question = asked(seed)
    assert route == "compare"
    try:
        rows = answer(route, json.dumps(question).encode())["rows"]
    except RefusedRequest:
        rows = []
    for row in rows:
        alone = {name: part for name, part in question.items() if name not in ("candidates", "explain_first")}
        alone["candidate"] = question["candidates"][row["index"]]
        checked = answer("check", json.dumps(alone).encode())
        assert row["verdict"] == checked["verdict"]
        assert row.get("reason") in (None, checked["findings"][0]["message"])
