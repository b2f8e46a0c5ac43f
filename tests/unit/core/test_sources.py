"""The list of documents, and what a finding may say that it rests on."""

from collections import Counter
from datetime import UTC, date, datetime
from typing import get_args

import pytest

from service.core.findings import BasisKind, BasisStatus
from service.core.sources import SOURCES, UNREAD, basis

# The project's reference notes are of this day; nothing was read for them before.
FIRST_NOTES = date(2026, 11, 24)

every_source = pytest.mark.parametrize("source", SOURCES.values(), ids=SOURCES.keys())


def test_no_document_stands_twice():
    """Two keys of one title, edition and status would be two names for one thing."""
    seen = Counter((each.title, each.edition, each.status) for each in SOURCES.values())
    assert [each for each, count in seen.items() if count > 1] == []


@every_source
def test_a_source_speaks_the_vocabulary_of_findings(source):
    assert source.status in get_args(BasisStatus)
    assert source.kind in get_args(BasisKind)


@every_source
def test_a_source_has_a_day_exactly_when_something_was_read(source):
    has_day = source.checked != UNREAD
    assert has_day == (source.status in {"read", "second_hand", "derived"})


@pytest.mark.parametrize("source", [each for each in SOURCES.values() if each.checked != UNREAD])
def test_the_day_of_a_source_is_a_day(source):
    assert FIRST_NOTES <= date.fromisoformat(source.checked) <= datetime.now(UTC).date()


@every_source
def test_no_basis_presents_a_remembered_number_as_a_regulation_or_standard(source):
    stated = basis(source.key)
    assert stated.status != "memory" or stated.kind not in {"regulation", "standard"}


def test_a_basis_names_the_place_in_the_document():
    stated = basis("HANDBOOK", "p. 291")
    assert "p. 291" in stated.reference
    assert stated.place == "p. 291"
    assert basis("HANDBOOK").place == ""


def test_a_basis_says_when_its_text_was_not_read():
    assert basis("UN-R142").reference.endswith("text not read")


def test_a_basis_keeps_the_kind_of_a_document_that_was_read():
    assert basis("UN-R30 6.1.1.1").kind == "regulation"


def test_the_list_of_sources_cannot_be_changed_at_run_time():
    with pytest.raises(TypeError):
        SOURCES["X"] = SOURCES["PROJECT"]
