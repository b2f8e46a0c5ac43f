"""How the tolerances of several inputs combine into that of what follows from them.

Inputs that are off independently of one another combine as the root of the sum of their squares: it is unlikely that
all are at their worst at once. What hangs on one input twice, or must never happen even once (a wheel that touches),
adds up. A tolerance is the half-width of a band that holds the true value in about 95 of 100 cases.
"""

from __future__ import annotations

from service.core.numeric import Num


def independent(first: Num, *others: Num) -> Num:
    """Return the tolerance of a sum of inputs that are off independently.

    Parameters
    ----------
    first, *others : float or array
        The tolerance of each input, as far as it moves the sum, not negative [any unit].

    Returns
    -------
    float or array
        Half-width of the band of the sum [the same unit].

    References
    ----------
    .. [GUM] Combined standard uncertainty of uncorrelated inputs, 5.1.2.
    """
    squares = first**2
    for each in others:
        squares = squares + each**2
    root: Num = squares**0.5
    return root
