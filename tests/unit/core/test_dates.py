"""Days of the calendar. Reference: ISO 8601 (year-month-day), the Gregorian calendar's months and leap years."""

import pytest

from service.core.dates import NoSuchDay, parse_day
from service.core.saying import Said
from tests.support.sayings import unsaid


@pytest.mark.parametrize("day", ["2026-11-24", "1900-01-01", "2099-12-31", "2024-02-29", "2000-02-29"])
def test_a_day_of_the_calendar_is_kept_as_it_was_written(day):
    assert parse_day(day) == day


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2026-02-30", 'There is no day "2026-02-30": that month has 28 days.'),
        ("2024-02-30", "that month has 29 days"),
        ("1900-02-29", "that month has 28 days"),
        ("2026-04-31", "that month has 30 days"),
        ("2026-11-00", "There is no day"),
        ("2026-13-01", "The month"),
        ("2026-00-10", "The month"),
        ("1899-12-31", "The year"),
        ("2100-01-01", "The year"),
        ("24.11.2026", 'a day such as "2026-11-24" is expected'),
        ("2026-11-24T10:00", "is not a date"),
        ("2026-1-1", "is not a date"),
        ("", "is not a date"),
        ("٢٠٢٦-11-24", "is not a date"),
        ("2026-11-24\n", "is not a date"),
    ],
)
def test_what_is_no_day_is_refused_in_words(text, words):
    with pytest.raises(NoSuchDay) as refused:
        parse_day(text)
    assert words in refused.value.detail
    assert isinstance(refused.value.detail, Said)
    assert unsaid(refused.value.detail) == []


def test_a_long_text_is_not_repeated_whole():
    with pytest.raises(NoSuchDay) as refused:
        parse_day("9" * 1000)
    assert len(refused.value.detail) < 200
