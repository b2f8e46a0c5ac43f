"""The results of one vehicle: verdicts, what they rest on, and key numbers, as arrays."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.comparison_measures import load_margin_percent
from service.assessment.batch.grading import Graded
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, Outcomes
from service.core.numeric import Number

Numbers = NDArray[np.float32]
_WORD_BITS = 64
# The outcome that a verdict rests on, by the number of the verdict; a suitable one rests on none (-1 is no outcome).
_RESTS_ON = np.array([-1, ADVISORY, NOT_ASSESSED, NOT_RECOMMENDED, NOT_MET], np.int8)


_OF_AXLE = (
    "overall_diameter_percent",
    "load_margin_percent",
    "pressure_kpa",
    "cornering_stiffness_percent",
    "aquaplaning_onset_percent",
    "inboard_edge_mm",
    "outboard_edge_mm",
)
NUMBERS = (
    *(f"{axle}_{name}" for axle in ("front", "rear") for name in _OF_AXLE),
    "driven_circumference_ratio",
    "axle_ratio_percent",
    "understeer_gradient_deg_per_g",
    "understeer_gradient_low_deg_per_g",
    "understeer_gradient_high_deg_per_g",
)
"""The key numbers, in the order in which they stand in the results."""


class Results(NamedTuple):
    """The results of some candidates on one vehicle."""

    verdicts: Outcomes
    reasons: NDArray[np.intp]
    """Place in `texts`."""
    texts: list[str]
    numbers: dict[str, Numbers]


def results(graded: Graded) -> Results:
    """Return the results of what was graded."""
    reasons, texts = _reasons(graded)
    return Results(graded.verdicts, reasons, texts, _numbers(graded))


def _numbers(graded: Graded) -> dict[str, Numbers]:
    car, size = graded.car, graded.verdicts.shape
    values: dict[str, Number] = {}
    for view in (car.front, car.rear):
        values |= {f"{view.name}_{name}": value for name, value in _axle_numbers(view).items()}
    gradient = car.change.gradient_deg_per_g
    values |= {
        "driven_circumference_ratio": car.change.driven_circumference_ratio,
        "axle_ratio_percent": car.change.axle_ratio_percent,
        "understeer_gradient_deg_per_g": gradient.value,
        "understeer_gradient_low_deg_per_g": gradient.low,
        "understeer_gradient_high_deg_per_g": gradient.high,
    }
    # What does not depend on the candidate is one number and not an array.
    return {name: np.broadcast_to(np.asarray(value, np.float32), size) for name, value in values.items()}


def _axle_numbers(view: AxleView[Number]) -> dict[str, Number]:
    change = view.change
    return {
        "overall_diameter_percent": change.overall_diameter_percent,
        "load_margin_percent": load_margin_percent(view),
        "pressure_kpa": view.ordered_pressure_kpa,
        "cornering_stiffness_percent": 100.0 * (change.cornering_stiffness.value - 1.0),
        "aquaplaning_onset_percent": change.aquaplaning_onset_percent.value,
        "inboard_edge_mm": change.inboard_edge_mm,
        "outboard_edge_mm": change.outboard_edge_mm,
    }


def _reasons(graded: Graded) -> tuple[NDArray[np.intp], list[str]]:
    """Return for each candidate the place of its text, and the distinct texts."""
    counts = graded.outcomes == _RESTS_ON[graded.verdicts]
    places, firsts = _distinct(counts)
    texts = [
        " ".join(
            f"{question.where}:{question.code}"
            for question, found in zip(graded.questions, counts[:, first], strict=True)
            if found
        )
        for first in firsts
    ]
    return places, texts


def _distinct(flags: NDArray[np.bool_]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return for each column its number among the distinct ones, and where each of those stands first."""
    places = np.zeros(flags.shape[1], np.intp)
    for begin in range(0, len(flags), _WORD_BITS):
        packed = np.packbits(flags[begin : begin + _WORD_BITS], axis=0)
        word = np.zeros(flags.shape[1], np.uint64)
        for row in packed:
            word = word << np.uint64(8) | row
        codes, found = pd.factorize(word)
        places = pd.factorize(places * len(found) + codes)[0]
    _, firsts = np.unique(places, return_index=True)
    return places, firsts


__all__ = ["VERDICTS", "Results", "results"]
