"""Runs of allowed offsets, and what is told where a rule leaves a gap between them."""

import numpy as np

from service.assessment.batch.rim_windows import _further, run_around


def test_a_rule_that_leaves_a_gap_has_its_other_runs_told_beside_the_window():
    allowed = np.array([[True, True, False, True, True, False, True]])
    assert _further([float(each) for each in range(7)], allowed[0], 3) == ((0.0, 1.0), (6.0, 6.0))
    assert [each.tolist() for each in run_around(allowed, np.array([4]))] == [[3], [4]]
