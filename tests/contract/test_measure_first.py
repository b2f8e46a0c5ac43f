"""What to measure first is worked out only for who asks for it."""

from __future__ import annotations

from tests.support.cases import ABSENT, changed, saloon
from tests.support.wire import check

UNMEASURED = changed(
    saloon(("245/40 R17 97W XL", "8.5J x 17 H2 ET25")),
    {"/vehicle/front/clearance": ABSENT, "/vehicle/speedometer": ABSENT},
)


def test_without_asking_nothing_is_said_of_it():
    assert "measure_first" not in check(UNMEASURED)


def test_the_room_that_decides_is_among_the_first_to_be_measured():
    found = check({**UNMEASURED, "measure_first": True})["measure_first"]
    assert any("clearance.outboard" in each["settles"] for each in found[:3])
    assert all(each["pointer"].startswith("/") for each in found)


def test_the_rest_of_the_answer_is_the_same():
    more = check({**UNMEASURED, "measure_first": True})
    more.pop("measure_first")
    assert more == check(UNMEASURED)
