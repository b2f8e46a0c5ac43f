"""Five combinations of widths on one rear-driven saloon, asked of the service, against what a practitioner found.

Common practice, no source: one practitioner's findings on road and circuit. The saloon is invented (790 and 760 kg on
the axles at kerb, 250 kPa front, 270 kPa rear, wheelbase 2760 mm, centre of gravity 540 mm). It has 225/40 R19 in front
and 255/35 R19 at the rear now; the third size is 285/30 R19. Nothing was tuned to the findings. What the service says:

1. Both axles one step wider keep the balance: 0.00 deg/g, negligible. Agrees.
2. 255 all round moves towards oversteer: -0.24 deg/g, noticeable. Agrees.
3. 225 all round moves towards oversteer: -0.32 deg/g, strong. Agrees.
4. 225/285 moves heavily towards understeer: the direction agrees; the service says "noticeably" (0.23 deg/g), and
   "strongly", from 0.3, lies inside its band (0.07 to 0.70). Agrees in part.
5. A dry lap is 1.2 % shorter one step wider all round: by the peak grip of the axles 0.7 % (0.4 to 1.3). Inside the
   band, the likely value is too small. Agrees in part. The service states peak grip and no lap time.
6. On a wet circuit both sets with a 285 at the rear are nervous: for these two alone the rear's wet reserve is minded.
   That they were some 6 % slower is a lap time: there is no model of it, so nothing is said of it. Agrees in part.
7. The other three were alike in the wet: no rear loses reserve, as found; but 225 all round gains 43 % of it there,
   and 255 all round loses 29 % of it in front, which nobody felt. Agrees in part.
8. A 255 floats 6 % earlier than a 225: 6.7 %. Agrees.
9. A 285 floats a bit over 15 % earlier than a 225: 12.5 %, inside the band, too small. Agrees in part. Against a 225 it
   is asked in front, where the 225 stands.
10. Best and worst braking are 2 % apart: 1.8 %. Agrees.
11. The front's width decides the braking: -1.6 and -1.2 % with a 255 in front, within 0.3 % without. Agrees.
12. A wider front is slower at first, grips more once loaded and stands more heat: slower, more, 16 % more heat. The
    narrower gives up sooner: less heat, 14 %. Agrees in direction; of the heat itself there was no number.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path

import pytest

from tests.support.cases import Json, answer, changed, check

REQUESTS = Path(__file__).parents[2] / "demo_requests"
STORIES = {
    "225/255": "staggered-same-sizes",
    "255/285": "staggered-one-step-wider",
    "255/255": "square-all-round",
    "225/225": "narrow-all-round",
    "225/285": "wide-at-the-back-only",
}
WIDE_REAR = ("255/285", "225/285")


def request(name: str) -> Json:
    asked: Json = json.loads((REQUESTS / f"{STORIES[name]}.check.json").read_text(encoding="utf-8"))
    return asked


@cache
def told(name: str) -> Json:
    """Return the service's answer to one combination."""
    return answer(check(request(name)))


def change(name: str, axle: str) -> Json:
    found: Json = told(name)["axles"][axle]["change"]
    return found


def balance(name: str) -> Json:
    found: Json = told(name)["vehicle"]["balance"]
    return found


def braking(name: str) -> float:
    return float(told(name)["vehicle"]["braking_distance_percent"]["value"])


def reserve(name: str, axle: str, when: str) -> float:
    return float(told(name)["axles"][axle][when]["wet_reserve_percent"]["value"])


def reserve_outcome(name: str, axle: str) -> str:
    (found,) = [each for each in told(name)["findings"] if (each["code"], each["axle"]) == ("wet.reserve", axle)]
    return str(found["outcome"])


def test_the_requests_are_the_five_combinations():
    for name in STORIES:
        sizes = [request(name)["candidate"][axle]["tyre"]["size"] for axle in ("front", "rear")]
        assert "/".join(size[:3] for size in sizes) == name
        fitted = [request(name)["vehicle"][axle]["fitted"]["tyre"]["size"] for axle in ("front", "rear")]
        assert [size[:10] for size in fitted] == ["225/40 R19", "255/35 R19"]


def test_1_one_step_wider_on_both_axles_keeps_the_balance():
    assert balance("255/285")["dry"]["direction"] == "neutral"
    assert balance("255/285")["dry"]["degree"] == "negligible"


@pytest.mark.parametrize("name", ["255/255", "225/225"], ids=["2 wide", "3 narrow"])
def test_2_and_3_both_square_sets_move_towards_oversteer(name):
    assert balance(name)["dry"]["direction"] == "towards_oversteer"
    assert balance(name)["direction_certain"]


def test_4_a_285_behind_a_225_moves_towards_understeer_and_heavily_is_only_inside_the_band():
    """A disagreement in degree: found heavily, said noticeably."""
    found = balance("225/285")
    assert found["dry"]["direction"] == "towards_understeer"
    assert found["dry"]["degree"] == "noticeable"
    # "Strongly" begins at 0.3 deg/g by the project's judgement.
    assert found["understeer_gradient_change_deg_per_g"]["high"] > 0.3


def test_5_the_shorter_lap_lies_inside_what_the_peak_grip_makes_of_it():
    """A lap limited by grip everywhere goes with the friction to the power of -0.5; the likely value is too small."""
    grips = [change("255/285", axle)["peak_grip_percent"] for axle in ("front", "rear")]
    masses = [request("255/285")["vehicle"][axle]["kerb_axle_mass_kg"] for axle in ("front", "rear")]
    lap = {}
    for end in ("value", "low", "high"):
        friction = sum(mass * (1.0 + 0.01 * grip[end]) for mass, grip in zip(masses, grips, strict=True)) / sum(masses)
        lap[end] = 100.0 * (friction**-0.5 - 1.0)
    assert lap["high"] < -1.2 < lap["low"]
    assert lap["value"] == pytest.approx(-0.7, abs=0.1)


@pytest.mark.parametrize("name", STORIES)
def test_6_the_rears_wet_reserve_is_minded_for_the_sets_with_a_285_and_for_no_other(name):
    assert reserve_outcome(name, "rear") == ("advisory" if name in WIDE_REAR else "met")


def test_6_no_lap_time_in_the_wet_is_said():
    """Found: some 6 % slower. The service has no model of a wet lap and names no such number."""
    text = json.dumps(told("225/285"))
    assert "lap" not in text.replace("overlap", "")


def test_7_the_other_three_lose_nothing_at_the_rear_but_are_not_alike_in_numbers():
    """A disagreement: found alike; the service tells of more reserve behind a narrow rear and less in a wide front."""
    for name in ("225/255", "255/255", "225/225"):
        assert reserve(name, "rear", "proposed") >= reserve(name, "rear", "present")
        assert reserve_outcome(name, "front") == "met"
    assert reserve("225/225", "rear", "proposed") > 1.3 * reserve("225/225", "rear", "present")
    assert reserve("255/255", "front", "proposed") < 0.8 * reserve("255/255", "front", "present")


def test_8_a_255_floats_some_six_per_cent_earlier_than_a_225():
    onset = change("255/255", "front")["aquaplaning_onset_percent"]
    assert onset["low"] < -6.0 < onset["high"]
    assert onset["value"] == pytest.approx(-6.0, abs=1.0)


def test_9_a_285_floats_a_bit_over_fifteen_per_cent_earlier_than_a_225_inside_the_band():
    """The likely value is too small by some three points: a disagreement that the band holds."""
    wide = request("225/285")["candidate"]["rear"] | {"pressure_kpa": 250}
    onset = answer(check(changed(request("225/285"), {"/candidate/front": wide})))["axles"]["front"]["change"][
        "aquaplaning_onset_percent"
    ]
    assert onset["low"] < -15.5 < onset["high"]
    assert onset["value"] == pytest.approx(-12.5, abs=1.0)


def test_10_best_and_worst_braking_are_some_two_per_cent_apart():
    changes = [braking(name) for name in STORIES]
    # "About 2 %": half a per cent either way.
    assert max(changes) - min(changes) == pytest.approx(2.0, abs=0.5)


def test_11_the_front_decides_the_braking_and_the_rear_hardly_matters():
    assert set(sorted(STORIES, key=braking)[:2]) == {"255/285", "255/255"}
    step_in_front = abs(braking("255/255"))
    assert max(abs(braking("225/285")), abs(braking("225/225"))) < 0.5 * step_in_front


def test_12_a_wider_front_is_slower_at_first_and_grips_more_once_loaded_and_stands_more_heat():
    turn_in = told("255/285")["vehicle"]["turn_in"]
    assert (turn_in["first"], turn_in["then"]) == ("slower", "more")
    assert change("255/285", "front")["heat_reserve_percent"] > 10.0


def test_12_the_narrower_turns_in_at_once_and_gives_up_sooner():
    # The way back: 255 all round fitted now, 225 in front proposed.
    back = {"/vehicle/front/fitted": request("255/255")["candidate"]["front"]}
    found = answer(check(changed(request("225/255"), back)))
    turn_in = found["vehicle"]["turn_in"]
    assert (turn_in["first"], turn_in["then"]) == ("quicker", "less")
    assert found["axles"]["front"]["change"]["heat_reserve_percent"] < -10.0
