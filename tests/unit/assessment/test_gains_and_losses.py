"""Gains and losses in words against their numbers: the way by the sign, how much by the size, whose by the axle."""

from __future__ import annotations

import pytest

from tests.support.cases import changed, check, saloon

# The word for more and the word for less of each gain or loss, in the order of the sign.
WAYS = {
    "peak_grip": ("more", "less"),
    "cornering_stiffness": ("rises", "falls"),
    "heat_reserve": ("more", "less"),
    "load_capacity": ("more", "less"),
    "ride": ("higher", "lower"),
    "braking": ("grows", "shrinks"),
}
WORSE_WHEN_MORE = ("braking",)
WIDER = ("245/40 R18 97Y XL", "8J x 18 H2 ET45")
NARROWER = ("205/50 R17 89W", "7J x 17 H2 ET45")
PAIRS = [(WIDER, None), (None, WIDER), (NARROWER, None), (None, NARROWER), (WIDER, NARROWER), (NARROWER, WIDER)]


@pytest.mark.parametrize("pair", PAIRS)
def test_a_gain_or_loss_is_worded_by_its_sign_size_and_axle(pair):
    found = check(saloon(*pair))
    told = [each for each in found.trade_offs if each.code in WAYS]
    assert len(told) > 6
    for each in told:
        more, less = WAYS[each.code]
        words = each.text.split(": ")[-1]
        begins = {"front": "Front: ", "rear": "Rear: ", "vehicle": "The braking"}[each.axle]
        assert each.text.startswith(begins)
        if each.direction == "alike":
            assert more not in words.split()
            assert less not in words.split()
            continue
        up = each.value > 0.0
        assert f" {more if up else less}" in words
        assert f" {less if up else more} " not in words
        good = up != (each.code in WORSE_WHEN_MORE)
        assert each.direction == ("gain" if good else "loss")
        size = f"{abs(each.value):.1f}".rstrip("0").rstrip(".")
        assert size in words or f"{abs(each.value):.0f}" in words


def test_water_is_told_then_before_now():
    # Which of the two numbers stands where is by the sentence of the check, too.
    found = check(saloon(WIDER, WIDER))
    for axle in ("front", "rear"):
        (entry,) = (each for each in found.trade_offs if (each.code, each.axle) == ("wet_reserve", axle))
        reserve = getattr(found.car, f"{axle}_reserve")
        then, now = (f"{share:.0f} %" for share in (reserve.proposed_percent, reserve.present_percent))
        assert then != now
        assert entry.text.endswith(f"about {then} of the load still rests on the road instead of {now}.")
        assert entry.direction == "loss"
        (message,) = (each.message for each in found.findings if (each.code, each.axle) == ("wet.reserve", axle))
        assert f"some {then} of the load still rests on the road, {now} now." in message


def test_ruts_follow_the_width():
    wider, narrower = check(saloon(WIDER, WIDER)), check(saloon(NARROWER, NARROWER))
    said = [{each.text for each in found.trade_offs if each.code == "ruts"} for found in (wider, narrower)]
    assert said == [
        {f"{axle}: a wider tyre usually follows ruts more." for axle in ("Front", "Rear")},
        {f"{axle}: a narrower tyre usually follows ruts less." for axle in ("Front", "Rear")},
    ]


@pytest.mark.parametrize(
    ("front", "rear", "words"),
    [
        (8.0, 5.0, "8 mm of tread in front and 5 mm at the rear"),
        (5.0, 8.0, "5 mm of tread in front and 8 mm at the rear"),
    ],
)
def test_tread_is_told_by_axle(front, rear, words):
    depths = {"/candidate/front/tyre/tread_depth_mm": front, "/candidate/rear/tyre/tread_depth_mm": rear}
    found = check(changed(saloon(), depths))
    (message,) = (each.message for each in found.findings if each.code == "tyre.tread_difference")
    assert words in message
    assert ("The deeper pair belongs to the rear" in message) == (front > rear)
