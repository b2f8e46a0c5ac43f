"""The bands that are promised are sent: of the contact patch by load, of the rolling circumference.

The bands are this project's own judgement (README, "How good the estimates are"), held against measured footprints in
tests/reference. The saloon's tyres are worked by hand: load index 94 is 670 kg (load index table of UN R30, annex 4),
so half of it is 335 kg a tyre, or 670 kg an axle.
"""

import pytest

from tests.support.cases import ABSENT, answer, changed, check, on_both_axles, saloon

TYRE = {"/candidate/{axle}/tyre/size": "225/45 R17 94W XL", "/candidate/{axle}/rim/size": "7.5J x 17 H2 ET45"}


def _proposed(changes: dict[str, object]) -> dict:
    return answer(check(changed(saloon(), on_both_axles(TYRE) | changes)))["axles"]["front"]["proposed"]


def _percent(estimate: dict[str, float], end: str) -> float:
    return 100.0 * (estimate[end] / estimate["value"] - 1.0)


@pytest.mark.parametrize(
    ("kerb_kg", "length", "area"),
    [pytest.param(700, 15.0, 12.0, id="above half"), pytest.param(640, 20.0, 20.0, id="below half")],
)
def test_the_patch_has_the_band_of_its_load(kerb_kg, length, area):
    patch = _proposed({"/vehicle/front/kerb_axle_mass_kg": kerb_kg})["contact_patch"]
    # Shown as whole millimetres and square centimetres, of which there are some seventy or more.
    for end, sign in (("low", -1.0), ("high", 1.0)):
        assert _percent(patch["length_mm"], end) == pytest.approx(sign * length, abs=1.5)
        assert _percent(patch["area_cm2"], end) == pytest.approx(sign * area, abs=1.5)
        assert _percent(patch["width_mm"], end) == pytest.approx(sign * 8.0, abs=1.5)


def test_without_a_load_index_the_load_may_be_light():
    changes = on_both_axles({"/candidate/{axle}/tyre/size": "225/45 R17"})
    patch = _proposed(changes | {"/vehicle/front/kerb_axle_mass_kg": 900})["contact_patch"]
    assert _percent(patch["area_cm2"], "high") == pytest.approx(20.0, abs=1.0)


def test_the_rolling_circumference_has_its_band():
    wheel = _proposed({"/candidate/front/tyre/rolling_circumference_mm": ABSENT})
    circumference, band = wheel["rolling_circumference_mm"], wheel["rolling_circumference_band_mm"]
    assert band["low"] == pytest.approx(0.99 * circumference, abs=0.1)
    assert band["high"] == pytest.approx(1.01 * circumference, abs=0.1)


def test_a_measured_circumference_has_no_band():
    wheel = _proposed({"/candidate/front/tyre/rolling_circumference_mm": 1960})
    assert wheel["rolling_circumference_mm"] == 1960
    assert "rolling_circumference_band_mm" not in wheel
