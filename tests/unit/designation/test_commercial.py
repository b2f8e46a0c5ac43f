"""What tells a commercial tyre, each sign alone; the signs themselves carry how far they were read."""

import pytest

from service.core.sources import SOURCES
from service.designation import commercial
from service.designation.tyre import parse_tyre


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("215/65R16C 109/107T", commercial.LETTERS),
        ("215/70R15CP 109R", commercial.LETTERS),
        ("LT235/85R16 120/116R", commercial.LETTERS),
        ("31x10.50R15LT 109S", commercial.LETTERS),
        ("195/70R15 104/102R", commercial.TWIN_INDEX),
        ("385/65R20 160K", commercial.HIGH_INDEX),
        ("235/60R17 122T", commercial.HIGH_INDEX),
        ("225/75R17.5", commercial.TRUCK_RIM),
        ("12R22.5", commercial.TRUCK_RIM),
    ],
)
def test_one_sign_is_enough(text, sign):
    tyre = parse_tyre(text)
    assert (tyre.commercial_sign, tyre.is_commercial) == (sign, True)


@pytest.mark.parametrize(
    "text", ["205/55R16 91V", "275/55R20 121H", "155R13 78S", "31x10.50R15 109S", "T125/80D16 97M", "6.50-16"]
)
def test_without_a_sign_a_tyre_is_a_passenger_one(text):
    tyre = parse_tyre(text)
    assert (tyre.commercial_sign, tyre.is_commercial) == (None, False)


@pytest.mark.parametrize(
    "sign", [commercial.LETTERS, commercial.TWIN_INDEX, commercial.HIGH_INDEX, commercial.TRUCK_RIM]
)
def test_every_sign_names_a_listed_source_and_its_status(sign):
    assert sign.source in SOURCES
    assert sign.status == SOURCES[sign.source].status


def test_the_letters_of_the_size_stay_what_they_were():
    assert parse_tyre("12R22.5 152/148L").commercial == ""


def test_a_commercial_tyre_has_no_load_version_to_assume():
    assert parse_tyre("315/80R22.5 156/150L").assumed == ()
