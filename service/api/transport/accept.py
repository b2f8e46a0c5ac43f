"""Which media type of several a caller prefers (RFC 9110, section 12.5.1)."""

from __future__ import annotations

from collections.abc import Sequence


def preferred(accept: str, offered: Sequence[str]) -> str:
    """Return the media type on offer that the header `Accept` prefers, the first one where it prefers none."""
    weights = [_weight(accept, each) for each in offered]
    best = max(weights)
    return offered[weights.index(best)] if best > 0.0 else offered[0]


def _weight(accept: str, media_type: str) -> float:
    """Return the weight that the most specific range for this type has, 0 where there is none."""
    kind = media_type.partition("/")[0]
    ranks = {"*/*": 1, f"{kind}/*": 2, media_type: 3}
    closest, weight = 0, 0.0
    for part in accept.lower().split(","):
        name, *parameters = (piece.strip() for piece in part.split(";"))
        rank = ranks.get(name, 0)
        if rank > closest:
            closest, weight = rank, quality(parameters)
    return weight


def quality(parameters: Sequence[str]) -> float:
    """Return the weight that the parameters of a range state: 1 where none does, 0 where it cannot be read."""
    for parameter in parameters:
        if parameter.startswith("q="):
            try:
                quality = float(parameter[2:])
            except ValueError:
                return 0.0
            return quality if 0.0 <= quality <= 1.0 else 0.0
    return 1.0
