"""The facts that a caller did not give, as a list of what to measure names them."""

from __future__ import annotations

from typing import NamedTuple

from service.core.findings import AxleName
from service.core.saying import Said, say


class OnAxle(NamedTuple):
    """What a fact is called, by its axle."""

    front: Said
    rear: Said

    def of(self, axle: AxleName) -> Said:
        """Return what it is called on this axle."""
        return self.front if axle == "front" else self.rear


SPEEDOMETER = say("the speed shown against the true speed")
TOP_SPEED = say("the top speed")
WHEELBASE = say("the wheelbase")
CENTRE_OF_GRAVITY = say("the height of the centre of gravity")

MAX_MASS = OnAxle(say("the maximum mass of the front axle"), say("the maximum mass of the rear axle"))
KERB_MASS = OnAxle(say("the kerb mass on the front axle"), say("the kerb mass on the rear axle"))
TRACK = OnAxle(say("the front track"), say("the rear track"))
INBOARD = OnAxle(say("the room to the strut, front"), say("the room to the strut, rear"))
OUTBOARD = OnAxle(say("the room to the wing edge, front"), say("the room to the wing edge, rear"))
RADIAL = OnAxle(say("the room to the wheel arch, front"), say("the room to the wheel arch, rear"))
LEAST_RIM = OnAxle(say("the least rim over the front brake"), say("the least rim over the rear brake"))
SERVICE = OnAxle(
    say("load index and speed symbol of the front tyres"), say("load index and speed symbol of the rear tyres")
)
PRESENT_PRESSURE = OnAxle(say("the present front pressure"), say("the present rear pressure"))
TREAD = OnAxle(say("the tread depth of the proposed front tyres"), say("the tread depth of the proposed rear tyres"))
RATING = OnAxle(say("the load rating of the front rims"), say("the load rating of the rear rims"))
HUB_CIRCLE = OnAxle(say("the bolt circle of the front hub"), say("the bolt circle of the rear hub"))
RIM_CIRCLE = OnAxle(say("the bolt circle of the front rims"), say("the bolt circle of the rear rims"))
RIM_BORE = OnAxle(say("the centre bore of the front rims"), say("the centre bore of the rear rims"))
HUB_BORE = OnAxle(say("the front hub's centre bore"), say("the rear hub's centre bore"))
