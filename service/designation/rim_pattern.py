"""The published regular expression of rim designations, which admits what the reader reads up to `MAX_LENGTH`."""

from __future__ import annotations

from service.designation.published import published
from service.designation.rim_grammar import RIM

RIM_PATTERN: str = published(RIM)
