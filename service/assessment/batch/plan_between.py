"""Combinations held against one another: each as it is seen with another one on the car, all pairs at once.

Here alone the present wheel is one of many as well: the same formulas, fed with the proposed wheels of one combination
as the present ones of another.
"""

from __future__ import annotations

from typing import Any, cast

import numpy as np

from service.assessment.batch.grading import Graded, as_column
from service.assessment.batch.wheel_table import Places
from service.assessment.view.axle_view import AxleView
from service.assessment.view.change import Wheel, axle_change
from service.assessment.view.views import CarView, car_view
from service.assessment.view.wheel_facts import FACTS, WheelFacts
from service.core.numeric import Number


def between(graded: Graded, first: Places, second: Places) -> CarView[Number]:
    """Return the combinations at the second places as they are seen with those at the first ones on the car."""
    size, car = graded.verdicts.shape, graded.car
    front, rear = (_between(view, first, second, size) for view in (car.front, car.rear))
    return car_view(car.vehicle, front, rear)


def _between(view: AxleView[Number], first: Places, second: Places, size: tuple[int, ...]) -> AxleView[Number]:
    # The type of a present wheel says one number; the formulas take what the proposed one holds just as well.
    now = cast("Wheel", _at(view.then, first, size))
    then: Wheel[Number] = _at(view.then, second, size)
    return view._replace(now=now, then=then, change=axle_change(now, then, view.axle))


def _at(value: Any, places: Places, size: tuple[int, ...]) -> Any:  # noqa: ANN401 - any part of a wheel
    """Return a part of a wheel for each of these places."""
    if isinstance(value, WheelFacts):
        return WheelFacts(**{name: _at(getattr(value, name), places, size) for name in FACTS})
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        return type(value)(*(_at(each, places, size) for each in value))
    return as_column(np.asarray(value, np.float64), size)[places]
