"""A cache for what is asked for again: an answer is kept from the second time on that it is asked for.

Most questions never come back. To keep the answers to those would cost more than to make them: each would push
another one out, whose hundreds of parts have long left the processor's own memory.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from threading import Lock
from typing import Generic, ParamSpec, TypeVar

P = ParamSpec("P")
Answer = TypeVar("Answer")

# So many questions are remembered for each answer that is kept; a question takes no more than its hash.
QUESTIONS_PER_ANSWER = 8


class Kept(Generic[P, Answer]):
    """A function whose answers are kept, up to a number of them; the one not wanted for longest goes first."""

    def __init__(self, make: Callable[P, Answer], size: int) -> None:
        self._make = make
        self._size = size
        self._asked: OrderedDict[int, None] = OrderedDict()
        self._answers: OrderedDict[int, tuple[object, Answer]] = OrderedDict()
        self._lock = Lock()

    def __call__(self, *question: P.args, **_: P.kwargs) -> Answer:
        """Return the answer, a kept one where there is one."""
        # By its hash, because the hash of a nested question takes long and is wanted twice.
        number = hash(question)
        with self._lock:
            found = self._answers.get(number)
            if found is not None and found[0] == question:
                self._answers.move_to_end(number)
                return found[1]
        answer = self._make(*question, **_)
        with self._lock:
            if number in self._asked:
                self._answers[number] = question, answer
                if len(self._answers) > self._size:
                    self._answers.popitem(last=False)
            else:
                self._asked[number] = None
                if len(self._asked) > self._size * QUESTIONS_PER_ANSWER:
                    self._asked.popitem(last=False)
        return answer
