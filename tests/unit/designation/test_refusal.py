"""What a refusal says beside the position: whose tyre it is, or what may have been meant.

Which sizes belong to which vehicles is common practice, no source.
"""

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.refusal import OutOfScope, RefusedDesignation
from service.designation.rim import parse_rim
from service.designation.scope import OtherVehicle, other_vehicle
from service.designation.tyre import parse_tyre

ELSEWHERE = [
    ("120/70ZR17 58W", OtherVehicle.MOTORCYCLE),
    ("120/70 ZR 17 M/C 58W", OtherVehicle.MOTORCYCLE),
    ("200/55 ZR17 78W", OtherVehicle.MOTORCYCLE),
    ("240/40 R18 79V", OtherVehicle.MOTORCYCLE),
    ("2.75-21 45P", OtherVehicle.MOTORCYCLE),
    ("4.00-18 M/C 64H", OtherVehicle.MOTORCYCLE),
    ("420/85R28", OtherVehicle.AGRICULTURAL),
    ("540/65R30 150D", OtherVehicle.AGRICULTURAL),
    ("18.4-38", OtherVehicle.AGRICULTURAL),
    ("12.4R24", OtherVehicle.AGRICULTURAL),
    ("10.0/75-15.3", OtherVehicle.AGRICULTURAL),
    ("11L-15", OtherVehicle.AGRICULTURAL),
    ("20.5R25", OtherVehicle.OFF_ROAD),
    ("29.5-29", OtherVehicle.OFF_ROAD),
    ("445/95R25 174F", OtherVehicle.OFF_ROAD),
    ("12-16.5 10PR", OtherVehicle.OFF_ROAD),
    ("25x8-12", OtherVehicle.OFF_ROAD),
    ("28x9-15", OtherVehicle.OFF_ROAD),
    ("21x8-9", OtherVehicle.OFF_ROAD),
    ("ST225/75R15", OtherVehicle.TRAILER),
]


@pytest.mark.parametrize(("text", "vehicle"), ELSEWHERE)
def test_a_tyre_of_another_vehicle_is_refused_for_that_reason(text, vehicle):
    with pytest.raises(OutOfScope, match="reads tyres of cars, vans and trucks") as caught:
        parse_tyre(text)
    assert (caught.value.vehicle, caught.value.code) == (vehicle, "out_of_scope")


# A round width up to 200 mm is a motorcycle's below code 24 only, and never where C touches the code.
@pytest.mark.parametrize(("text", "is_read"), [
    ("200/60R23", False), ("200/60R24", True), ("200/60R16C 100T", True), ("200/60R16 C 100T", False),
])  # fmt: skip
def test_a_round_width_is_a_motorcycles_unless_code_or_letter_tell_otherwise(text, is_read):
    if is_read:
        assert parse_tyre(text).section_width_mm == 200
        return
    with pytest.raises(OutOfScope) as caught:
        parse_tyre(text)
    assert caught.value.vehicle is OtherVehicle.MOTORCYCLE


@pytest.mark.parametrize("text", ["195/65R15 91H", "12R22.5", "31x10.50R15LT", "14.00R20", "205/55R25"])
def test_a_tyre_of_a_car_a_van_or_a_truck_is_not_taken_for_another(text):
    assert other_vehicle(text) is None


# What was typed, where the slip is, and what a fitter would ask: "did you mean ...?". From memory of the trade.
SLIPS = [
    ("2O5/55 R16 91V", 1, "205/55 R16 91V"),
    ("205/55 R16 9lV", 12, "205/55 R16 91V"),
    ("205/55 R|6 91V", 8, "205/55 R16 91V"),
    ("20555 R16", 3, "205/55 R16"),
    ("205 / 55 / 16", 9, "205/55 R16"),
    ("205 - 55 R16", 4, "205/55 R16"),
    ("205,55 R16", 3, "205/55 R16"),
    ("205/55,16", 6, "205/55 R16"),
    ("205/55 R16XL", 10, "205/55 R16 XL"),
    ("winter 205/55 R16 91H", 0, "205/55 R16 91H"),
    ("4 x 205/55 R16 91H", 0, "205/55 R16 91H"),
    ("P2O5/65R15", 2, "P205/65 R15"),
]


@pytest.mark.parametrize(("text", "position", "meant"), SLIPS)
def test_a_slip_is_named_at_its_character_with_what_may_have_been_meant(text, position, meant):
    with pytest.raises(RefusedDesignation, match=f"Did you mean {meant}\\?$") as caught:
        parse_tyre(text)
    assert (caught.value.position, caught.value.did_you_mean) == (position, meant)


@pytest.mark.parametrize(
    ("text", "position", "meant"),
    [("7JxI6 ET45", 3, "7J x 16 ET45"), ("7Jx16 ET4O", 9, "7J x 16 ET40"), ("8J18", 2, "8J x 18")],
)
def test_a_slip_in_a_rim_is_named_too(text, position, meant):
    with pytest.raises(RefusedDesignation) as caught:
        parse_rim(text)
    assert (caught.value.position, caught.value.did_you_mean) == (position, meant)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "tyre",
        "205/55R16 91",
        "195/65R15 91T/H",
        "205/55R16 91V 94V",
        "2" * 101,
        # A second size is no reason to drop the first.
        "195/65R15 91T/H 205/55 R16",
    ],
)
def test_where_nothing_is_near_nothing_is_proposed(text):
    with pytest.raises(RefusedDesignation) as caught:
        parse_tyre(text)
    assert caught.value.did_you_mean is None


@pytest.mark.parametrize("text", ["2O5/55 R16 91V", "120/70ZR17 58W"])
def test_a_refusal_tells_the_same_by_its_detail_and_as_text(text):
    with pytest.raises(UnreadableDesignation) as caught:
        parse_tyre(text)
    assert str(caught.value) == caught.value.detail


def test_a_refusal_carries_no_other_error_behind_it():
    with pytest.raises(RefusedDesignation) as caught:
        parse_tyre("2O5/55 R16 91V")
    assert (caught.value.__cause__, caught.value.__context__) == (None, None)
