"""What speaks against each candidate: its findings by their weight, without those that the car has today already."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from service.assessment.answer.already import is_already
from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.grading import Graded
from service.assessment.checks.grade import Grade, Place
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN
from service.core.numeric import UNKNOWN, FloatArray

# By how much a finding of each outcome speaks against a candidate (the project's choice): one of a kind outweighs some
# ten of the next milder kind.
WEIGHTS = {MET: 0.0, OPEN: 0.0, ADVISORY: 1.0, NOT_ASSESSED: 10.0, NOT_RECOMMENDED: 100.0, NOT_MET: 1000.0}
_BY_OUTCOME = np.array([WEIGHTS[outcome] for outcome in sorted(WEIGHTS)])
_NOTHING = Grade(MET, UNKNOWN, UNKNOWN)


def already_of(now: Mapping[Place, Grade], graded: Graded) -> Flags:
    """Return for each question and candidate whether the present fitment, graded `now`, has it too, and no less."""
    grades = [now.get((each.code, each.where), _NOTHING) for each in graded.questions]
    present = (np.array(each)[:, None] for each in zip(*grades, strict=True))
    found = _as_numbers(graded.outcomes, graded.measured, graded.limits)
    return np.asarray(is_already(Grade(*found), Grade(*_as_numbers(*present))), np.bool_)


def _as_numbers(*arrays: Any) -> Any:  # noqa: ANN401 - the outcome of a grade of many is an array, see `worst`
    return arrays


def weight_against(graded: Graded, already: Flags) -> FloatArray:
    """Return how much speaks against each candidate; what it has already does not count."""
    weights: FloatArray = np.where(already, 0.0, _BY_OUTCOME[graded.outcomes]).sum(axis=0)
    return weights
