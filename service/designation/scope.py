"""Tyres that no car, van or truck takes: by whose vehicle they are made for.

Which sizes these are is common practice, from memory. Consulted for texts that the reader refuses.
"""

from __future__ import annotations

import re
from enum import Enum

from service.core.saying import say


class OtherVehicle(Enum):
    """A vehicle whose tyres are out of scope, with the sentence that says so."""

    MOTORCYCLE = say("This is a tyre of a motorcycle; the service reads tyres of cars, vans and trucks.")
    AGRICULTURAL = say("This is a tyre of an agricultural machine; the service reads tyres of cars, vans and trucks.")
    OFF_ROAD = say(
        "This is a tyre of an off-road machine, a quad or an industrial truck; the service reads tyres of cars, vans "
        "and trucks."
    )
    TRAILER = say("This is a tyre of a light trailer (ST); the service reads tyres of cars, vans and trucks.")


_LETTER = " *(?:[A-Z]{1,3}|-) *"
_MAYBE_LETTER = " *(?:[A-Z]{1,3}|-|) *"
_EARTH_MOVER_CODES = "(?:25|29|33|35|39|45|49|51|57|63)(?![0-9.])"

_SIGNS = (
    (OtherVehicle.MOTORCYCLE, re.compile(r".*\bM */ *C\b")),
    (OtherVehicle.MOTORCYCLE, re.compile(r" *M[A-Z][0-9]{2}(?:[A-Z]| *[-/])")),
    (OtherVehicle.TRAILER, re.compile(" *ST *[0-9]{3} */")),
    (OtherVehicle.OFF_ROAD, re.compile(rf" *[3-9][0-9]{{2}} */ *[0-9]{{2}}{_MAYBE_LETTER}{_EARTH_MOVER_CODES}")),
    (OtherVehicle.OFF_ROAD, re.compile(rf" *[0-9]{{1,2}}(?:\.[0-9]{{1,2}})?{_LETTER}{_EARTH_MOVER_CODES}")),
    (OtherVehicle.OFF_ROAD, re.compile(r" *1[3-9]\.00 *[R-] *24(?![0-9.])")),
    (OtherVehicle.OFF_ROAD, re.compile(r" *1?[0-9] *- *1[4-8]\.5(?![0-9])")),
    (OtherVehicle.OFF_ROAD, re.compile(r" *1?[0-9](?:\.[0-9]{1,2})? *X *[0-9.]+ *(?:R|-) *[0-9]{1,2}(?![0-9])")),
    (OtherVehicle.OFF_ROAD, re.compile(r" *2[0-3](?:\.[0-9]{1,2})? *X *[0-9]")),
    (OtherVehicle.OFF_ROAD, re.compile(r" *[23][0-9] *X *[0-9]{1,2} *(?:- *[0-9]|[RDB] *(?:[89]|1[0-4])(?![0-9]))")),
    (
        OtherVehicle.MOTORCYCLE,
        re.compile(rf" *(?:[6-9]|1[0-9]|20)0 */ *[0-9]{{2,3}}{_MAYBE_LETTER}[12]?[0-9](?![0-9])"),
    ),
    (OtherVehicle.MOTORCYCLE, re.compile(rf" *[23][0-9]0 */ *[34][0-9]{_MAYBE_LETTER}1[0-9](?![0-9])")),
    (OtherVehicle.MOTORCYCLE, re.compile(r" *[23](?:\.[0-9]{1,2}| *1/[24])? *(?:[HPS]|-) *[12][0-9](?![0-9])")),
    (
        OtherVehicle.AGRICULTURAL,
        re.compile(rf" *(?:[2-9][0-9]0|1[0-9]{{2}}0) */ *[0-9]{{2}}{_MAYBE_LETTER}[1-5][0-9](?![0-9])"),
    ),
    (
        OtherVehicle.AGRICULTURAL,
        re.compile(rf" *[0-9]{{1,2}}\.[0-9]{{1,2}} *L?{_LETTER}(?:2[4-9]|[345][0-9])(?![0-9])"),
    ),
    (OtherVehicle.AGRICULTURAL, re.compile(r" *[0-9]{1,2}(?:\.[0-9])? *L *-? *[12][0-9]")),
    (OtherVehicle.AGRICULTURAL, re.compile(r" *[0-9]{1,2}\.[0-9]{1,2} */ *[0-9]{2}")),
)


def other_vehicle(text: str) -> OtherVehicle | None:
    """Return whose tyre a refused text names, in the readers' own alphabet; None when it names nobody's."""
    return next((vehicle for vehicle, sign in _SIGNS if sign.match(text)), None)
