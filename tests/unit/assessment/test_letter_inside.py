"""Speed letters inside a size: V means above 210 km/h, ZR above 240; how far above is for the tyre's maker to say.

From memory of the trade. V inside a diagonal size stands for a speed that depends on the size, so it says none here.
"""

from __future__ import annotations

import pytest

from service.core.findings import NOT_ASSESSED
from tests.support.cases import answer, changed, check, finding, outcome, saloon

RIM = "7.5J x 17 H2 ET45"


def asked(tyre, max_speed_kmh, **of_tyre):
    found = changed(saloon(rear=(tyre, RIM)), {"/vehicle/max_speed_kmh": max_speed_kmh})
    return changed(found, {f"/candidate/rear/tyre/{name}": value for name, value in of_tyre.items()})


@pytest.mark.parametrize(
    ("tyre", "max_speed_kmh", "expected"),
    [
        ("225/45VR17", 210, "met"),
        ("225/45VR17", 211, "not_assessed"),
        ("225/45ZR17", 240, "met"),
        ("225/45ZR17", 241, "not_assessed"),
        ("6.50V16", 150, "not_assessed"),
        ("225/45R17", 150, "not_assessed"),
    ],
)
def test_a_letter_that_is_open_upwards_is_enough_up_to_where_it_begins(tyre, max_speed_kmh, expected):
    assert outcome(check(asked(tyre, max_speed_kmh)), "speed.capability") == expected


def test_the_speed_alone_does_not_tell_the_load():
    assert finding(check(asked("225/45VR17", 150)), "load.capacity").outcome == NOT_ASSESSED


def test_a_load_index_beside_the_letter_completes_the_service_description():
    found = answer(check(asked("225/45HR17", 200, load_index=94)))
    assert found["axles"]["rear"]["proposed"]["tyre"] == "225/45 HR17 94H"
    # Load index 94 is 670 kg (UN R30 annex 4).
    assert found["axles"]["rear"]["proposed"]["load_capacity_kg"] == 670.0
