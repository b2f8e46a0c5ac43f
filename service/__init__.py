"""The fitment service: will these tyres and rims suit this vehicle, and what does the change do to it?

An application, not a library: its one function for notebooks and jobs is `assess`.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from service.core.errors import RefusedRequest
from service.core.version import VERSION

__all__ = ["RefusedRequest", "__version__", "assess"]

__version__ = VERSION


def assess(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the answer to one check, as `POST /v1/fitments/check` gives it, without a server.

    Parameters
    ----------
    request : mapping
        The request as plain data, member by member as in the contract (`fitment-service openapi -`, CheckRequest):
        mm, kg, kPa and km/h. Whole numbers, numbers of arrays and dates are welcome; a member may be None or absent.

    Returns
    -------
    dict
        The answer as plain data: `verdict`, `findings`, `axles`, `vehicle`, `trade_offs`, `actions`, ...

    Raises
    ------
    RefusedRequest
        A ValueError with `faults`: a pointer and a sentence for each.
    """
    # Who asks for the version alone must not wait for the framework.
    from service.ask import assess as answered  # noqa: PLC0415 - see above

    return answered(request)
