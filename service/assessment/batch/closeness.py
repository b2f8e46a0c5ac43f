"""How far a fitment is from the present one, as a fitter sees it: width, diameter, rim, offset, load, speed, season.

Each difference counts in the steps in which the trade makes it, so that a tyre 10 mm wider is as far away as one whose
diameter differs by 1 % (common practice, no source: the steps are this project's choice).
"""

from __future__ import annotations

import numpy as np

from service.assessment.batch.grading import as_column
from service.assessment.case import Season
from service.assessment.view.views import AxleView, CarView
from service.assessment.view.wheel_facts import ALPINE, NO_MARK
from service.core.numeric import FloatArray, Number

WIDTH_STEP_MM = 10.0
DIAMETER_STEP_PERCENT = 1.0
RIM_WIDTH_STEP_IN = 0.5
RIM_CODE_STEP = 1.0
OFFSET_STEP_MM = 5.0
# One load index is 2.5 to 3 % of load.
LOAD_STEP_PERCENT = 3.0
# From one speed symbol to the next.
SPEED_STEP_KMH = 30.0
# Of sizes equally near, a fitter offers the season and the kind of tyre that the car is on, then the speed symbol: less
# than any one step.
SEASON_STEPS = 0.5
KIND_STEPS = 0.5
SPEED_SHARE = 0.1
# What is known of only one of the two fitments may be anything.
STEPS_WHEN_UNKNOWN = 10.0


def distance(car: CarView[Number], season: Season | None, size: tuple[int, ...]) -> FloatArray:
    """Return how many steps both axles of each fitment are away from the present ones; 0 is as now."""
    return axle_distance(car.front, season, size) + axle_distance(car.rear, season, size)


def axle_distance(view: AxleView[Number], season: Season | None, size: tuple[int, ...]) -> FloatArray:
    """Return the same of one axle."""
    now, then = view.now.facts, view.then.facts
    pairs = (
        (now.nominal_width_mm, then.nominal_width_mm, WIDTH_STEP_MM),
        (
            now.overall_diameter_mm,
            then.overall_diameter_mm,
            now.overall_diameter_mm * DIAMETER_STEP_PERCENT / 100.0,
        ),
        (now.rim_width_in, then.rim_width_in, RIM_WIDTH_STEP_IN),
        (now.rim_code, then.rim_code, RIM_CODE_STEP),
        (now.offset_mm, then.offset_mm, OFFSET_STEP_MM),
        (now.rated_kg, then.rated_kg, now.rated_kg * LOAD_STEP_PERCENT / 100.0),
        (now.speed_capability_kmh, then.speed_capability_kmh, SPEED_STEP_KMH / SPEED_SHARE),
    )
    wanted = {"winter": ALPINE, "summer": NO_MARK, None: now.winter_mark}[season]
    steps = np.where(as_column(then.winter_mark, size) == wanted, 0.0, SEASON_STEPS)
    for now_is, then_is in ((now.run_flat, then.run_flat), (now.commercial, then.commercial)):
        steps += np.where(as_column(then_is, size) == now_is, 0.0, KIND_STEPS)
    for pair in pairs:
        steps += _steps(*pair, size)
    return steps


def _steps(now: Number, then: Number, step: Number, size: tuple[int, ...]) -> FloatArray:
    """Return by how many steps a number differs; what neither fitment states does not differ."""
    column = as_column(then, size)
    steps = np.abs(column - now) / step
    return np.where(np.isnan(steps), np.where(np.isnan(column) & np.isnan(now), 0.0, STEPS_WHEN_UNKNOWN), steps)
