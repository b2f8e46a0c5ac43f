"""How far the law of the place lets the track change: what is advised on offsets never names what it refuses."""

from __future__ import annotations

from math import inf

from service.assessment.view.views import AxleView
from service.core.numeric import known
from service.rules.rule import Bound


def lawful_track_mm(view: AxleView) -> tuple[float, float]:
    """Return the least and the greatest change of track that all rules of the place on this axle allow [mm].

    Rules that may not apply are left out, and those on a share of a track that is not known.
    """
    here = view.conditions.rules
    least, most = -inf, inf
    for rule in (here.front if view.name == "front" else here.rear).rules:
        # Of several bounds one is enough, so none of them binds by itself.
        ends = _allowed_mm(view, rule.bounds[0]) if len(rule.bounds) == 1 else (-inf, inf)
        least, most = max(least, ends[0]), min(most, ends[1])
    return least, most


def _allowed_mm(view: AxleView, bound: Bound) -> tuple[float, float]:
    """Return the changes of track that a bound allows; all of them where it is on something else."""
    scale = 1.0
    if bound.quantity == "track_change_percent" and known(view.axle.track_mm):
        scale = 0.01 * view.axle.sure_track_mm
    elif bound.quantity == "offset_change_mm":
        # The track grows by twice what the offset shrinks.
        scale = -2.0
    elif bound.quantity not in ("track_change_mm", "track_change_abs_mm"):
        return -inf, inf
    least = -inf if bound.comparison == "at_most" else bound.value
    most = inf if bound.comparison == "at_least" else bound.value
    if bound.quantity == "track_change_abs_mm":
        least = -bound.value
    low, high = sorted((scale * least, scale * most))
    return low, high
