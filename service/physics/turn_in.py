"""How the steering answers after a change of front tyres: directions only, there is no model of the delay."""

from __future__ import annotations

from typing import Final, Generic, NamedTuple

from service.core.numeric import Num, natural_log, pick

FIRST_TOLERANCE: Final = 0.03
"""Change of patch length over sidewall height up to which the first answer counts as alike; project's judgement."""
THEN_TOLERANCE: Final = 0.03
"""Change of cornering stiffness up to which the loaded tyre counts as alike; project's judgement."""


class TurnIn(NamedTuple, Generic[Num]):
    """Two directions: -1 slower or less, 0 alike, +1 quicker or more, NaN not known."""

    response_first: Num
    """At the first movement of the wheel: -1 slower, +1 quicker."""
    response_then: Num
    """Once the tyre is loaded: -1 less, +1 more."""


def turn_in(patch_length_ratio: Num, sidewall_height_ratio: Num, cornering_stiffness_ratio: Num) -> TurnIn[Num]:
    """Return the directions in which the steering's answer changes.

    First: quicker as ln(L' / L) - ln(H' / H) grows. A shorter patch has less self-aligning torque and feels
    slower; a lower sidewall moves less before the tread follows. Then: as the cornering stiffness.

    Parameters
    ----------
    patch_length_ratio : float or array
        L' / L, proposed over present length of the contact patch, greater than zero [1].
    sidewall_height_ratio : float or array
        H' / H, proposed over present section height, greater than zero [1].
    cornering_stiffness_ratio : float or array
        C' / C, proposed over present cornering stiffness of a front tyre, greater than zero [1].

    Returns
    -------
    TurnIn
        Both directions; they turn round when the tyres are swapped.

    References
    ----------
    .. [PROJECT] own rule, both terms weighed alike.
    """
    first = natural_log(patch_length_ratio) - natural_log(sidewall_height_ratio)
    return TurnIn(
        _direction(first, FIRST_TOLERANCE), _direction(natural_log(cornering_stiffness_ratio), THEN_TOLERANCE)
    )


def _direction(change: Num, tolerance: float) -> Num:
    # The last term is 0, or NaN where the change is not known: an unknown is not "alike".
    return pick(change > tolerance, 1.0, 0.0) - pick(change < -tolerance, 1.0, 0.0) + (change - change)
