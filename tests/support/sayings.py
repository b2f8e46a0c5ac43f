"""What in a text could not be said in another language."""

from __future__ import annotations

import re
from collections.abc import Collection

from service.core.saying import Amount, Said

# Designations, numbers, dates and the signs between them have no word of three small letters.
_WORD = re.compile("[a-z]{3}")


def unsaid(text: str, same_in_all: Collection[str] = ()) -> list[str]:
    """Return the plain texts in a text that no catalogue could turn; `same_in_all` are words that need no turning."""
    if isinstance(text, Amount):
        return []
    if isinstance(text, Said):
        return [found for each in text.parameters.values() for found in unsaid(each, same_in_all)]
    return [text] if text not in same_in_all and _WORD.search(text) else []
