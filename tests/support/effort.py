"""How many cases a test of a law tries: some on every run, many where somebody explores.

`make explore` (Hypothesis's profile of that name) asks for the many; every run of `make test` tries the same some.
"""

from __future__ import annotations

from hypothesis import settings

EXPLORE = "explore"


def cases(usual: int, explored: int) -> int:
    """Return how many cases to try."""
    return explored if settings.get_current_profile_name() == EXPLORE else usual
