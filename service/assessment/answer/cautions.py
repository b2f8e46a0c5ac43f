"""What an answer never replaces, by code."""

from __future__ import annotations

from collections.abc import Mapping

from service.assessment.view.views import CarView
from service.core.saying import Said, say

CAUTIONS: Mapping[str, Said] = {
    "trial_fit": say(
        "This answer does not replace a trial fit by a qualified workshop: at full lock and full bump, with brakes, "
        "struts, lines and arches checked by eye."
    ),
    "maker_data": say(
        "The vehicle maker's and the tyre maker's data come first wherever they differ from this answer."
    ),
    "local_law": say("Local law, inspection and insurance decide whether the change is allowed on the road."),
    "estimates": say(
        "Estimates of balance, contact patch and aquaplaning compare sizes only: tread pattern, compound, wear and "
        "suspension matter as much."
    ),
    "camber": say("Camber is not taken into account in load and pressure."),
}
# A trailer has no lock and no balance of its own.
OF_A_TRAILER: Mapping[str, Said] = {
    "trial_fit": say(
        "This answer does not replace a trial fit by a qualified workshop, with brakes, axles and mudguards seen to."
    ),
    "maker_data": CAUTIONS["maker_data"],
    "local_law": CAUTIONS["local_law"],
}


def cautions(car: CarView) -> Mapping[str, Said]:
    """Return what the answer never replaces, by code."""
    return OF_A_TRAILER if car.vehicle.is_trailer else CAUTIONS
