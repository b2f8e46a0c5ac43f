"""What is kept is kept from the second time on, bounded, and never mistaken for another question's answer."""

from __future__ import annotations

import pytest

from service.assessment.kept import Kept
from service.core.numeric import UNKNOWN


class Counted:
    """A function that knows how often it was asked."""

    def __init__(self) -> None:
        self.asked: list[object] = []

    def __call__(self, question: object) -> tuple[object, int]:
        self.asked.append(question)
        return question, len(self.asked)


class Colliding:
    """A question whose hash is that of every other."""

    def __hash__(self) -> int:
        return 7


def _ask(kept, *questions):
    return [kept(each) for each in questions]


def test_what_is_asked_once_is_not_kept():
    make = Counted()
    _ask(Kept(make, 4), "a", "b")
    assert make.asked == ["a", "b"]


def test_the_second_answer_is_kept():
    make = Counted()
    answers = _ask(Kept(make, 4), "a", "a", "a", "a")
    assert make.asked == ["a", "a"]
    assert answers == [("a", 1), ("a", 2), ("a", 2), ("a", 2)]


def test_the_answer_not_wanted_for_longest_goes_first():
    make = Counted()
    kept = Kept(make, 2)
    _ask(kept, "a", "a", "b", "b", "a", "c", "c")
    make.asked.clear()
    _ask(kept, "a", "c", "b")
    assert make.asked == ["b"]


def test_questions_of_equal_hash_get_their_own_answers():
    one, other = Colliding(), Colliding()
    kept = Kept(Counted(), 4)
    answers = _ask(kept, one, one, other, one, other)
    assert [question for question, _ in answers] == [one, one, other, one, other]


def test_a_number_that_is_not_known_is_found_again():
    make = Counted()
    kept = Kept(make, 4)
    for _ in range(4):
        kept((UNKNOWN, "a"))
    assert len(make.asked) == 2


def test_an_error_is_raised_each_time():
    def fail(question):
        raise LookupError(question)

    kept = Kept(fail, 4)
    for _ in range(3):
        with pytest.raises(LookupError):
            kept("a")


def test_questions_asked_once_do_not_push_answers_out():
    make = Counted()
    kept = Kept(make, 2)
    _ask(kept, "a", "a", *range(100))
    make.asked.clear()
    kept("a")
    assert make.asked == []
