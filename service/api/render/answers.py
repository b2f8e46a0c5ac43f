"""The answers to checks, ready to be sent; those to questions that come again are kept."""

from __future__ import annotations

import orjson

from service.api.render import assessment_answer as render
from service.api.render.numbers import Json
from service.assessment.answer.assess import assess
from service.assessment.case import Case
from service.assessment.kept import Kept

# Some 60 KiB each.
KEPT_ANSWERS = 256


def answer(case: Case) -> Json:
    """Return the answer to a check as plain data, its parts ready to be sent."""
    label = case.candidate.label
    if not label:
        return _kept(case)
    # What a caller calls the candidate is no part of the question, and nobody's to keep.
    return _kept(case._replace(candidate=case.candidate._replace(label=""))) | {"label": label}


def _answer(case: Case) -> Json:
    shown = render.assessment(assess(case))
    return {
        name: part if isinstance(part, str) else orjson.Fragment(orjson.dumps(part)) for name, part in shown.items()
    }


_kept = Kept(_answer, KEPT_ANSWERS)
