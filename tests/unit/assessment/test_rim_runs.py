"""Runs of allowed offsets, and what is told where a rule leaves a gap between them."""

import numpy as np

from service.assessment.batch.rim_windows import _further, run_around, windows_of
from service.core.findings import ADVISORY, NOT_MET
from tests.unit.assessment.test_edges_of_rims import grid


def test_a_rule_that_leaves_a_gap_has_its_other_runs_told_beside_the_window():
    allowed = np.array([[True, True, False, True, True, False, True]])
    assert _further([float(each) for each in range(7)], allowed[0], 3) == ((0.0, 1.0), (6.0, 6.0))
    assert [each.tolist() for each in run_around(allowed, np.array([4]))] == [[3], [4]]


def test_two_runs_are_a_window_and_one_more_and_a_window_alone_has_no_other():
    # By hand the wheel of 7.5 in is suitable from 34 to 54 mm, with conditions from 29 to 59 (see the edges of rims).
    plain = grid()
    row, first = [each.width_in for each in plain.rows].index(7.5), plain.offsets_mm[0]
    for offset, outcome, suitable, conditions in (
        (60, NOT_MET, (34, 54, ()), (29, 59, ())),
        (50, ADVISORY, (34, 49, ((51, 54),)), (29, 59, ())),
        (31, NOT_MET, (34, 54, ()), (32, 59, ((29, 30),))),
        (50, NOT_MET, (34, 49, ((51, 54),)), (29, 49, ((51, 59),))),
    ):
        outcomes = plain.outcomes.copy()
        outcomes[row, int(offset - first)] = outcome
        found = windows_of(plain._replace(outcomes=outcomes))[row]
        told = [(each.from_mm, each.to_mm, each.further) for each in (found.suitable, found.with_conditions)]
        assert told == [suitable, conditions]
