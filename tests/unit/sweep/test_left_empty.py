"""What an empty column stands for, and how rows with many questions are told apart.

Reference: the columns' own description, which says of each tolerance "0 where empty"; a column is another one when it
differs in any place, however many there are.
"""

from types import SimpleNamespace

import numpy as np
import pyarrow as pa
import pytest

from service.assessment.batch.grading import Question
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN
from service.sweep.batches import question_of
from service.sweep.pair_columns import PAIR_COLUMNS, PAIR_TOGETHER, read
from service.sweep.vehicle_arrays import groups, with_numbers
from service.sweep.vehicle_results import _distinct, _reasons
from tests.unit.sweep.test_alike_rows import BASE

TOLERANCES = ("front_clearance_tolerance_mm", "front_track_tolerance_mm", "rear_clearance_tolerance_mm")


@pytest.mark.parametrize("given", [{}, dict.fromkeys((*TOLERANCES, "speedometer_tolerance_percent"), 2.0)])
def test_a_tolerance_is_naught_where_it_is_empty_and_as_given_else(given):
    row = {name: [value] for name, value in (BASE | {"vehicle_id": "larch"} | given).items() if value is not None}
    table = read(pa.RecordBatch.from_pydict(row), PAIR_COLUMNS, PAIR_TOGETHER)
    (group,) = groups(table, question_of())
    stated = 2.0 if given else 0.0
    for vehicle in (group.case.vehicle, with_numbers(group.case, table).vehicle):
        front, rear = vehicle.front, vehicle.rear
        found = (front.clearance_tolerance_mm, front.track_tolerance_mm, rear.clearance_tolerance_mm)
        assert [float(np.squeeze(each)) for each in found] == [stated] * 3
        assert float(np.squeeze(vehicle.speedometer_tolerance_percent)) == stated
        # Of this one nothing is ever said here.
        assert float(np.squeeze(rear.track_tolerance_mm)) == 0.0


@pytest.mark.parametrize("questions", [1, 8, 63, 64, 65, 72, 73, 128, 129, 200])
def test_columns_that_differ_in_one_of_many_places_are_told_apart(questions):
    flags = np.concatenate([np.eye(questions, dtype=np.bool_), np.zeros((questions, 1), np.bool_)], axis=1)
    places, firsts = _distinct(np.concatenate([flags, flags], axis=1))
    assert places.tolist() == list(range(questions + 1)) * 2
    assert firsts.tolist() == list(range(questions + 1))


def test_a_verdict_rests_on_what_weighs_as_much_and_a_suitable_one_on_nothing():
    # One column a verdict, from suitable to unsuitable; what is met, and a question left open, speak against nothing.
    asked = [
        Question("tyre.structure", "front"),
        Question("load.capacity", "front"),
        Question("law.size", "rear"),
    ]
    outcomes = np.array(
        [
            [OPEN, OPEN, ADVISORY, ADVISORY, NOT_RECOMMENDED],
            [MET, ADVISORY, NOT_ASSESSED, NOT_ASSESSED, NOT_MET],
            [OPEN, ADVISORY, OPEN, NOT_RECOMMENDED, NOT_MET],
        ]
    )
    places, texts = _reasons(SimpleNamespace(outcomes=outcomes, verdicts=np.arange(5), questions=asked))
    both = "front:load.capacity rear:law.size"
    assert [texts[each] for each in places] == ["", both, "front:load.capacity", "rear:law.size", both]
