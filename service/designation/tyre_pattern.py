"""The published regular expression of tyre designations, which admits what the reader reads up to `MAX_LENGTH`."""

from __future__ import annotations

from service.designation.published import published
from service.designation.tyre_size_grammar import SIZE
from service.designation.tyre_tail import TAIL

TYRE_PATTERN: str = published(f"{SIZE}{TAIL}")
