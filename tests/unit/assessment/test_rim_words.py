"""What bounds a window of offsets, in words: a number is told from its limit, in hundredths at most."""

import pytest

from service.assessment.batch.rim_windows import Reason
from service.assessment.batch.rim_words import in_words
from service.core.findings import ADVISORY
from tests.support.cases import check, saloon


@pytest.mark.parametrize(
    ("measured", "limit", "unit", "told"),
    [
        (-0.114, 0.1, "deg/g", "\N{MINUS SIGN}0.11 deg/g, the limit is 0.1 deg/g"),
        (-1.04, 1.0, "%", "\N{MINUS SIGN}1.04 %, the limit is 1 %"),
        (-3.04, -3.0, "%", "\N{MINUS SIGN}3.04 %, the limit is \N{MINUS SIGN}3 %"),
        (4.76, 5.0, "mm", "4.8 mm, the limit is 5 mm"),
        (-0.46, 0.0, "mm", "\N{MINUS SIGN}0.5 mm, the limit is 0 mm"),
    ],
)
def test_a_number_is_told_from_its_limit_whichever_way_that_holds(measured, limit, unit, told):
    reason = Reason("balance.change", "vehicle", ADVISORY, measured, limit)
    assert in_words(reason, check(saloon()).case, unit) == f"balance of the car: {told}"
