"""Five combinations of widths on one rear-driven saloon against what a practitioner found (common practice, no source).

Present 225/40R19 93 front and 255/35R19 96 rear; proposed of these and 285/30R19 98. What he found, and what the
models say of an invented saloon (800 kg front, 750 kg rear, wheelbase 2760 mm, centre of gravity 540 mm, 250 kPa
everywhere, 8 mm of tread). Nothing was tuned to it.

1. Both axles one step wider keep the balance: 0.00 deg/g, band -0.08 to 0.07. Agrees.
2. 255 square moves towards oversteer: -0.23 deg/g, band -0.70 to -0.07. Agrees.
3. 225 square moves towards oversteer: -0.24 deg/g, band -0.76 to -0.07. Agrees.
4. 225/285 moves heavily towards understeer: the direction agrees, +0.23 deg/g, band 0.07 to 0.69; "heavily" (0.3 and
   more by the notes) lies inside the band, the likely value is less. Agrees in part.
5. A dry lap is 1.2 % shorter one step wider all round: -0.7 %, band -1.3 to -0.4. Inside, near the end.
6. In the wet both sets with 285 are nervous: their rear alone loses wet reserve, two fifths of it. Agrees. That they
   were 6 % slower is a lap time, and there is no model of a wet lap.
7. The other three are alike in the wet: no rear loses reserve, but 255 square loses 29 % of the front's and 225 square
   gains 38 % at the rear, which nobody felt. Agrees in part.
8. A 255 floats 6 % earlier than a 225: -6.7 %. Agrees.
9. A 285 floats a bit over 15 % earlier: -12.5 %, inside the band.
10. Best and worst braking are 2 % apart: 2.1 %. Agrees.
11. The front's width decides the braking: with a wider front 1.3 to 1.6 % shorter, else within 0.5 %. Agrees.
12. A wider front is slower at first, grips more once loaded and stands more heat; a narrower one gives up sooner:
    directions agree. Of heat the notes expect some 14 %; the tread's width gives 16 %, the patch's 15 %.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from service.core.findings import Estimate
from service.core.units import STANDARD_GRAVITY_M_S2
from service.physics.aquaplaning import gallaway_onset_kmh, width_factor
from service.physics.braking import braking_distance_change_percent, front_braking_share
from service.physics.contact_patch import ContactPatch, contact_patch, tread_width_mm
from service.physics.cornering_stiffness import (
    StiffnessRatios,
    cornering_stiffness_n_per_deg,
    likely_stiffness,
    stiffness_ratios,
)
from service.physics.dimensions import overall_diameter_mm, section_height_mm
from service.physics.heat import heat_reserve_change_percent
from service.physics.peak_grip import relative_peak_grip
from service.physics.turn_in import turn_in
from service.physics.understeer import axle_compliance_deg_per_g, understeer_gradient_change_band_deg_per_g
from service.physics.vertical_stiffness import deflection_mm, vertical_stiffness_n_per_mm
from service.physics.wet_reserve import (
    onset_change_band_percent,
    reserve_fall_percent,
    wet_reserve,
)

FRONT_KG, REAR_KG, PRESSURE_KPA, TREAD_MM = 800.0, 750.0, 250.0, 8.0
RIM_MM = 483.0


class Size(NamedTuple):
    width_mm: float
    aspect: float
    rated_kg: float

    @property
    def height_mm(self) -> float:
        return section_height_mm(self.width_mm, self.aspect)

    @property
    def diameter_mm(self) -> float:
        return overall_diameter_mm(RIM_MM, self.height_mm)

    @property
    def tread_mm(self) -> float:
        return tread_width_mm(self.width_mm, self.aspect)


N225, N255, N285 = Size(225.0, 40.0, 650.0), Size(255.0, 35.0, 710.0), Size(285.0, 30.0, 750.0)
SETS = {"225/255": (N225, N255), "255/285": (N255, N285), "255/255": (N255, N255), "225/225": (N225, N225)}
SETS["225/285"] = (N225, N285)


def _patch(size: Size, axle_kg: float) -> ContactPatch[float]:
    load_n = 0.5 * axle_kg * STANDARD_GRAVITY_M_S2
    stiffness = vertical_stiffness_n_per_mm(PRESSURE_KPA, size.aspect, size.width_mm, RIM_MM)
    deflection = deflection_mm(load_n, stiffness)
    return contact_patch(load_n, PRESSURE_KPA, size.diameter_mm, size.height_mm, size.tread_mm, deflection)


def _ratios(present: Size, proposed: Size) -> StiffnessRatios[float]:
    return stiffness_ratios(proposed.width_mm / present.width_mm, proposed.height_mm / present.height_mm, 1.0, 1.0)


def _compliance(axle_kg: float, size: Size) -> float:
    weight_n = axle_kg * STANDARD_GRAVITY_M_S2
    per_tyre = cornering_stiffness_n_per_deg(0.5 * weight_n, size.rated_kg * STANDARD_GRAVITY_M_S2)
    return axle_compliance_deg_per_g(weight_n, 2.0 * per_tyre)


def _balance(name: str) -> Estimate[float]:
    front, rear = SETS[name]
    return understeer_gradient_change_band_deg_per_g(
        _compliance(FRONT_KG, N225), _compliance(REAR_KG, N255), _ratios(N225, front), _ratios(N255, rear)
    )


def _braking(name: str) -> Estimate[float]:
    front, rear = SETS[name]
    share = front_braking_share(FRONT_KG, FRONT_KG + REAR_KG, 540.0, 2760.0)
    return braking_distance_change_percent(
        Estimate(share, share, share), front.rated_kg / N225.rated_kg, rear.rated_kg / N255.rated_kg
    )


def _reserve(size: Size, axle_kg: float) -> float:
    # The level formula has no width in it, so the patch of the present front tyre is the measure of all.
    level = gallaway_onset_kmh(PRESSURE_KPA, TREAD_MM, 2.0, 1.0)
    return wet_reserve(level * width_factor(_patch(N225, FRONT_KG).width_mm, _patch(size, axle_kg).width_mm))


def _rear_fall(name: str) -> float:
    return reserve_fall_percent(_reserve(N255, REAR_KG), _reserve(SETS[name][1], REAR_KG))


# 1 to 4. Balance in the dry.
def test_one_step_wider_at_both_axles_keeps_the_balance():
    change = _balance("255/285")
    assert abs(change.value) < 0.1
    assert change.low < 0.0 < change.high


@pytest.mark.parametrize("name", ["255/255", "225/225"])
def test_both_square_sets_move_towards_oversteer(name):
    change = _balance(name)
    assert change.value < -0.1
    assert change.high < 0.0


def test_a_285_behind_a_225_moves_towards_understeer():
    change = _balance("225/285")
    assert change.value > 0.1
    assert change.low > 0.0


def test_how_heavily_it_moves_is_inside_the_band_and_not_the_likely_value():
    # "Heavily" is the class above 0.3 deg/g (project judgement). The likely value stays below it: a disagreement.
    change = _balance("225/285")
    assert change.value < 0.3 < change.high


# 5. Dry lap.
def test_the_shorter_lap_lies_inside_the_band():
    """A lap limited by grip everywhere goes with mu^-0.5; the axles are weighed as they stand. Found: 1.2 % shorter."""
    front = relative_peak_grip(N255.rated_kg / N225.rated_kg)
    rear = relative_peak_grip(N285.rated_kg / N255.rated_kg)
    share = FRONT_KG / (FRONT_KG + REAR_KG)
    value, most, least = (
        100.0 * ((share * one + (1.0 - share) * other) ** -0.5 - 1.0) for one, other in zip(front, rear, strict=True)
    )
    assert least < -1.2 < most
    # The likely value is too small by half a per cent: a disagreement, not tuned away.
    assert value == pytest.approx(-0.7, abs=0.1)


# 6 and 7. Wet circuit.
@pytest.mark.parametrize("name", ["255/285", "225/285"])
def test_a_285_at_the_rear_costs_more_than_a_quarter_of_the_wet_reserve_there(name):
    assert _rear_fall(name) > 25.0


@pytest.mark.parametrize("name", ["225/255", "255/255", "225/225"])
def test_the_sets_that_felt_alike_in_the_wet_lose_none_at_the_rear(name):
    assert _rear_fall(name) == 0.0


def test_the_front_of_the_square_255_loses_reserve_that_nobody_felt():
    # 29 % of itself: below the 40 % that the notes call worth a word at the front, and yet not "alike".
    assert 25.0 < reserve_fall_percent(_reserve(N225, FRONT_KG), _reserve(N255, FRONT_KG)) < 40.0


# 8 and 9. Aquaplaning.
@pytest.mark.parametrize(("size", "found"), [pytest.param(N255, -6.0, id="255"), pytest.param(N285, -15.5, id="285")])
def test_the_earlier_onset_lies_inside_the_band(size, found):
    factor = width_factor(_patch(N225, FRONT_KG).width_mm, _patch(size, FRONT_KG).width_mm)
    change = onset_change_band_percent(100.0 * (factor - 1.0), TREAD_MM, TREAD_MM)
    assert change.low < found < change.high


def test_a_255_floats_some_six_per_cent_earlier():
    factor = width_factor(_patch(N225, FRONT_KG).width_mm, _patch(N255, FRONT_KG).width_mm)
    assert 100.0 * (factor - 1.0) == pytest.approx(-6.0, abs=1.0)


# 10 and 11. Braking in the dry.
def test_best_and_worst_braking_are_some_two_per_cent_apart():
    # "About 2 %": half a per cent either way.
    changes = [_braking(name).value for name in SETS]
    assert max(changes) - min(changes) == pytest.approx(2.0, abs=0.5)


def test_the_sets_with_the_wider_front_brake_best():
    ranked = sorted(SETS, key=lambda name: _braking(name).value)
    assert set(ranked[:2]) == {"255/285", "255/255"}


def test_the_rears_width_hardly_matters():
    # A step at the rear moves less than half of what a step at the front moves.
    front = abs(_braking("255/255").value)
    assert abs(_braking("225/285").value) < 0.5 * front
    assert abs(_braking("225/225").value) < 0.5 * front


@pytest.mark.parametrize(("name", "percent"), [("255/285", -1.6), ("225/225", 0.5)])
def test_the_braking_change_is_the_one_worked_out_by_hand(name, percent):
    # 0.712 ln(710/650) and 0.288 ln(750/710) or ln(650/710), times -0.2, worked out in the notes to a tenth.
    assert _braking(name).value == pytest.approx(percent, abs=0.05)


# 12. The front by feel.
def _front_feel(present: Size, proposed: Size) -> tuple[float, float]:
    lengths = _patch(proposed, FRONT_KG).length_mm / _patch(present, FRONT_KG).length_mm
    return turn_in(lengths, proposed.height_mm / present.height_mm, likely_stiffness(_ratios(present, proposed)))


def test_a_wider_front_is_slower_at_first_and_grips_more_once_loaded():
    assert _front_feel(N225, N255) == (-1.0, 1.0)


def test_a_narrower_front_turns_in_at_once_and_grips_less_once_loaded():
    assert _front_feel(N255, N225) == (1.0, -1.0)


def test_a_wider_front_stands_more_heat():
    # The notes: about 14 % from 225 to 255. By the width of the tread 16 %, by that of the patch 15 %.
    by_tread = heat_reserve_change_percent(N225.tread_mm, N225.diameter_mm, N255.tread_mm, N255.diameter_mm)
    assert by_tread == pytest.approx(14.0, abs=3.0)


def test_a_narrower_front_gives_up_sooner():
    assert heat_reserve_change_percent(N255.tread_mm, N255.diameter_mm, N225.tread_mm, N225.diameter_mm) < -10.0
