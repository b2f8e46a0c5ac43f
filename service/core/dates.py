"""Days as ISO texts, as callers write them: read once, and kept as texts, which compare as they stand."""

from __future__ import annotations

import calendar
import re

from service.core.errors import DomainError
from service.core.saying import Amount, Said, say

# Published beside the field; that the day is one of its month no pattern can say.
DAY_PATTERN = r"^(19|20)[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$"
DAY_LENGTH = len("2026-11-24")
_PARTS = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)
_FIRST_YEAR, _LAST_YEAR, _LAST_MONTH = 1900, 2099, 12
_LONGEST_SHOWN = 40
# The whole day, since months are written without a capital or with a preposition elsewhere.
_DAYS = (
    say("{day} January {year}"),
    say("{day} February {year}"),
    say("{day} March {year}"),
    say("{day} April {year}"),
    say("{day} May {year}"),
    say("{day} June {year}"),
    say("{day} July {year}"),
    say("{day} August {year}"),
    say("{day} September {year}"),
    say("{day} October {year}"),
    say("{day} November {year}"),
    say("{day} December {year}"),
)


class NoSuchDay(DomainError):
    """A text that is no day of the calendar, or not written as one."""

    code = "wrong_format"


def parse_day(text: str) -> str:
    """Return an ISO day (`2026-11-24`) as it was written.

    Raises
    ------
    NoSuchDay
        When the text has another form, or the calendar has no such day.
    """
    parts = _PARTS.fullmatch(text)
    if parts is None:
        raise NoSuchDay(
            say('"{text}" is not a date; a day such as "2026-11-24" is expected.', text=text[:_LONGEST_SHOWN])
        )
    year, month, day = map(int, parts.groups())
    if not _FIRST_YEAR <= year <= _LAST_YEAR:
        raise NoSuchDay(
            say(
                'The year of "{day}" is not from {first} to {last}.',
                day=text,
                first=Amount(_FIRST_YEAR),
                last=Amount(_LAST_YEAR),
            )
        )
    if not 1 <= month <= _LAST_MONTH:
        raise NoSuchDay(say('The month of "{day}" is not from 01 to 12.', day=text))
    last = calendar.monthrange(year, month)[1]
    if not 1 <= day <= last:
        raise NoSuchDay(say('There is no day "{day}": that month has {last} days.', day=text, last=Amount(last)))
    return text


def day_in_words(day: str) -> Said:
    """Return an ISO day as a sentence says it: `24 November 2026`."""
    year, month, number = map(int, day.split("-"))
    return Said(_DAYS[month - 1].template, {"day": Amount(number), "year": Amount(year)})
