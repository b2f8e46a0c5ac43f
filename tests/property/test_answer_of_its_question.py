"""An answer depends on its question alone: not on what was asked before, by whom, or in which order.

Reference: the same question put to a process that was asked nothing else before it, or in another order.
"""

import json
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from random import Random

import orjson
import pytest

from service.api.inbound.translate import case
from service.api.render.assessment_answer import assessment
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from tests.support.cases import Json, changed, on_both_axles, saloon
from tests.support.many_cases import question

QUESTIONS = 1000
CALLERS = 32
ANSWERING = "from tests.property.test_answer_of_its_question import main; main()"
# Of each pair both mean the same tyre, and only one of them rests on an assumption.
SPELLINGS = {
    "RF for reinforced": ("/candidate/{axle}/tyre/size", "225/45 R17 94W RF", "225/45 R17 94W XL"),
    "a dash for diagonal": ("/candidate/{axle}/tyre/size", "175/80-14 88T", "175/80 D14 88T"),
    "HL at the end": ("/candidate/{axle}/tyre/size", "225/45 R17 94W HL", "HL225/45 R17 94W"),
}


def answered(request: Json) -> bytes:
    """Return the bytes that a caller gets."""
    return orjson.dumps(assessment(assess(case(CheckRequest.model_validate(request)))))


def main() -> None:
    """Answer the requests on the standard input, one a line."""
    for line in sys.stdin.buffer:
        sys.stdout.buffer.write(answered(json.loads(line)) + b"\n")


def in_a_fresh_process(requests: list[Json], seed: str) -> list[bytes]:
    """Return the answers of a process that is asked these requests and nothing else."""
    asked = b"".join(json.dumps(each).encode() + b"\n" for each in requests)
    process = subprocess.run(
        [sys.executable, "-c", ANSWERING],
        input=asked,
        capture_output=True,
        check=True,
        env={**os.environ, "PYTHONHASHSEED": seed},
    )
    return process.stdout.splitlines()


def spelled(pointer: str, text: str) -> Json:
    """Return the saloon with this designation at both ends."""
    return changed(saloon(), on_both_axles({pointer: text}))


@pytest.mark.parametrize(("pointer", "one", "other"), SPELLINGS.values(), ids=SPELLINGS)
def test_a_caller_reads_the_assumptions_on_its_own_spelling(pointer, one, other):
    def assumed(text: str) -> list[str]:
        return json.loads(answered(spelled(pointer, text)))["assumptions"]

    for _ in range(3):
        assumed(one)
    after, before = assumed(other), assumed(one)
    assert after != before
    assert set(after) < set(before)
    for _ in range(3):
        assumed(other)
    assert assumed(one) == before


@pytest.fixture(scope="module")
def requests() -> list[Json]:
    """Return requests in random order, of which many come again and some spell the same otherwise."""
    chance = Random(11)
    asked = [{"candidate": each.pop("candidates")[0], **each} for each in (question(seed, 1) for seed in range(300))]
    asked += [spelled(pointer, text) for pointer, *texts in SPELLINGS.values() for text in texts]
    return chance.choices(asked, k=QUESTIONS)


def test_a_fresh_process_answers_as_a_warm_one_does(requests):
    warm = [answered(each) for each in requests]
    for seed in ("0", "1", "4711"):
        order = list(range(QUESTIONS))
        Random(seed).shuffle(order)
        fresh = in_a_fresh_process([requests[place] for place in order], seed)
        assert fresh == [warm[place] for place in order]


def test_callers_at_once_get_the_answers_that_each_would_get_alone(requests):
    alone = [answered(each) for each in requests]
    with ThreadPoolExecutor(CALLERS) as callers:
        assert list(callers.map(answered, requests)) == alone
