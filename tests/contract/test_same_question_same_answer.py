"""An answer depends on its question alone: not on who asked before, not on the process, not on how many ask at once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPConnection
from random import Random
from typing import NamedTuple

import orjson
import pytest

from tests.contract.callers import Service
from tests.contract.http_wire import PATIENCE_S
from tests.support import many_cases
from tests.support.cases import Json, changed, on_both_axles, saloon

Ask = Callable[[Service, Sequence[bytes], Sequence[int]], dict[int, bytes]]

COUNT = 400
CALLERS = 32
SEED = 20261124
# Written apart, read alike: what is said of each must be said of its own spelling.
SPELLINGS = (
    "225/45 R17 94W RF",
    "225/45 R17 94W XL",
    "225/45R17 94W XL",
    "225/45 R 17 94 W XL",
    "225/45 R17 94W RFD",
    "225/45 R17 94W",
    "225/45 ZR17 94W XL",
)
RIMS = ("7.5J x 17 H2 ET45", "7.5Jx17 H2 ET45", "7,5J x 17 H2 ET45", "7.5J x 17 ET45")
LABELS = ("", "mine", "yours", "räder", "=1+1")


def _on_the_saloon(tyre: str, rim: str = RIMS[0], label: str = "") -> Json:
    proposed = {"/candidate/{axle}/tyre/size": tyre, "/candidate/{axle}/rim/size": rim}
    return changed(saloon(), {**on_both_axles(proposed), "/candidate/label": label})


REINFORCED, EXTRA_LOAD = (_on_the_saloon(tyre) for tyre in SPELLINGS[:2])


def _check(seed: int) -> Json:
    """Return a check of any kind, its candidate named now and then."""
    asked = many_cases.question(seed, 1)
    (candidate,) = asked.pop("candidates")
    return {**asked, "candidate": {"label": LABELS[seed % len(LABELS)], **candidate}}


def _questions() -> list[bytes]:
    """Return the bodies of some hundred checks: those that are often asked on one car, and others."""
    chance = Random(SEED)
    made = [REINFORCED, REINFORCED, REINFORCED, EXTRA_LOAD]
    made += [_on_the_saloon(chance.choice(SPELLINGS), chance.choice(RIMS), chance.choice(LABELS)) for _ in range(116)]
    made += [_check(seed) for seed in range(COUNT - len(made))]
    return [orjson.dumps(each) for each in made]


# The one process is asked in the order above, so that the reinforced tyre comes first; the others in this one.
ANOTHER_ORDER = [3, *Random(SEED).sample(range(4, COUNT), COUNT - 4), 0, 1, 2]


def _asked(service: Service, questions: Sequence[bytes], order: Sequence[int]) -> dict[int, bytes]:
    """Return what each question of this order is answered, all on one connection."""
    connection = HTTPConnection("127.0.0.1", service.port, timeout=PATIENCE_S)
    answers = {}
    try:
        for place in order:
            # The id comes back in an error, so the same question has the same one.
            headers = {"Content-Type": "application/json", "X-Request-ID": f"question-{place}"}
            connection.request("POST", "/v1/fitments/check", questions[place], headers)
            response = connection.getresponse()
            answers[place] = b"%d " % response.status + response.read()
    finally:
        connection.close()
    return answers


def _asked_at_once(service: Service, questions: Sequence[bytes], order: Sequence[int]) -> dict[int, bytes]:
    """Return the same, asked by many callers at the same time, each a part of the order."""
    with ThreadPoolExecutor(CALLERS) as callers:
        parts = callers.map(lambda first: _asked(service, questions, order[first::CALLERS]), range(CALLERS))
        return {place: answer for part in parts for place, answer in part.items()}


def _answers(questions: Sequence[bytes], hash_seed: str, ask: Ask, order: Sequence[int]) -> dict[int, bytes]:
    """Return the answers of a process of its own, whose sets and dicts are ordered by this seed."""
    with Service(access_log=False, variables={"PYTHONHASHSEED": hash_seed}) as service:
        return ask(service, questions, order)


class Answers(NamedTuple):
    """The same questions, and what three processes answered."""

    questions: Sequence[bytes]
    warm: dict[int, bytes]
    fresh: dict[int, bytes]
    crowded: dict[int, bytes]

    def differing(self, answers: dict[int, bytes]) -> list[tuple[bytes, bytes, bytes]]:
        """Return each question that is not answered as the warm process did, with both answers."""
        return [
            (question, self.warm[place], answers[place])
            for place, question in enumerate(self.questions)
            if self.warm[place] != answers[place]
        ]


@pytest.fixture(scope="module")
def answers() -> Answers:
    questions = _questions()
    with ThreadPoolExecutor() as processes:
        warm = processes.submit(_answers, questions, "0", _asked, range(COUNT))
        fresh = processes.submit(_answers, questions, "1", _asked, ANOTHER_ORDER)
        crowded = processes.submit(_answers, questions, "4294967295", _asked_at_once, ANOTHER_ORDER)
        return Answers(questions, warm.result(), fresh.result(), crowded.result())


def test_the_questions_are_checks_and_most_are_answered(answers: Answers) -> None:
    assert {answer[:3] for answer in answers.warm.values()} <= {b"200", b"422"}
    assert sum(answer.startswith(b"200") for answer in answers.warm.values()) > COUNT // 2


def test_a_fresh_process_gives_the_same_bytes_in_another_order_of_questions_and_of_hashes(answers: Answers) -> None:
    assert answers.differing(answers.fresh)[:1] == []


def test_many_callers_at_once_are_given_the_same_bytes(answers: Answers) -> None:
    assert answers.differing(answers.crowded)[:1] == []
