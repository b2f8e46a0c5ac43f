"""What an error of the domain says. Reference: RFC 6901 for pointers; the contract: the position, what was expected."""

from __future__ import annotations

import pytest

from service.core.errors import RefusedRequest, UnknownName, UnreadableDesignation
from service.core.saying import say


@pytest.mark.parametrize(
    ("kind", "named"), [("tyre", "tyre designation"), ("rim", "rim designation"), ("bolt circle", "bolt circle")]
)
def test_a_designation_that_cannot_be_read_is_named_by_its_kind_with_place_and_expectation(kind, named):
    refused = UnreadableDesignation(kind, 7, say("a rim diameter"))
    assert refused.detail == f"This {named} cannot be read at position 7: expected a rim diameter."


@pytest.mark.parametrize("kind", ["table", "rule pack"])
def test_an_unknown_name_is_answered_with_those_that_there_are(kind):
    assert UnknownName(kind, ("one", "other")).detail == f"There is no {kind} of this name. Known: one, other."


def test_a_fault_of_the_whole_request_has_no_pointer_before_it():
    assert str(RefusedRequest((("/vehicle", "No."), ("", "Empty.")))) == "/vehicle: No.\nEmpty."
