"""One formula serves one wheel and many: the array path gives what the float path gives, element by element."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics import (
    aquaplaning,
    bands,
    contact_patch,
    cornering_stiffness,
    dimensions,
    drivetrain,
    inertia,
    pressure_load,
    rolling,
    speedometer,
    understeer,
    vertical_stiffness,
    wheel_position,
)
from service.physics.cornering_stiffness import likely_stiffness, relative_cornering_stiffness_band, stiffness_ratios

# Each formula with the ranges of its arguments.
W, R, P, F, H = (125.0, 315.0), (203.0, 610.0), (100.0, 400.0), (1000.0, 9000.0), (40.0, 180.0)
D, Q, ET, V, KG = (450.0, 900.0), (0.5, 2.0), (-50.0, 90.0), (20.0, 320.0), (200.0, 1500.0)
FORMULAS: dict[str, tuple[Callable[..., Any], tuple[tuple[float, float], ...]]] = {
    "section_width": (dimensions.section_width_mm, (W, (80.0, 330.0), (80.0, 300.0))),
    "section_height": (dimensions.section_height_mm, (W, (20.0, 85.0))),
    "overall_diameter": (dimensions.overall_diameter_mm, (R, H)),
    "worn_diameter": (dimensions.worn_diameter_mm, (D, (0.0, 9.0))),
    "service_width": (lambda width: dimensions.service_width_mm(width, 4.0), (W,)),
    "rolling_circumference": (rolling.rolling_circumference_mm, (D,)),
    "revolutions": (rolling.revolutions_per_km, ((1400.0, 2800.0),)),
    "vertical_stiffness": (vertical_stiffness.vertical_stiffness_n_per_mm, (P, (20.0, 85.0), W, R)),
    "loaded_radius": (vertical_stiffness.static_loaded_radius_mm, (D, F, (100.0, 500.0))),
    "tread_width": (contact_patch.tread_width_mm, (W, (20.0, 85.0))),
    "contact_patch": (contact_patch.contact_patch, (F, P, D, H, W, (2.0, 50.0))),
    "cornering_stiffness": (cornering_stiffness.cornering_stiffness_n_per_deg, (F, F)),
    "relative_stiffness": (
        lambda *q: likely_stiffness(stiffness_ratios(*q)),
        (Q, Q, Q, Q),
    ),
    "relative_stiffness_band": (lambda *q: relative_cornering_stiffness_band(stiffness_ratios(*q)), (Q, Q, Q, Q)),
    "axle_compliance": (understeer.axle_compliance_deg_per_g, (F, (500.0, 5000.0))),
    "gradient": (understeer.understeer_gradient_deg_per_g, (Q, Q)),
    "gradient_change_band": (
        lambda front, rear, *q: understeer.understeer_gradient_change_band_deg_per_g(
            front, rear, stiffness_ratios(*q), stiffness_ratios(*reversed(q))
        ),
        (Q, Q, Q, Q, Q, Q),
    ),
    "load_transfer": (
        lambda mass, track, height: understeer.lateral_load_transfer_n(mass, track, height, 0.4),
        (KG, (1200.0, 1800.0), (400.0, 900.0)),
    ),
    "axle_stiffness": (understeer.axle_stiffness_n_per_deg, (F, F, F)),
    "gallaway": (aquaplaning.gallaway_onset_kmh, (P, (0.0, 10.0), (0.1, 10.0), (0.05, 3.0))),
    "width_factor": (aquaplaning.width_factor, (W, W)),
    "onset_change": (lambda change: bands.multiple(change, aquaplaning.CHANGE_BAND), ((-30.0, 30.0),)),
    "symmetric": (lambda value: bands.symmetric(value, 0.1), (F,)),
    "load_at_pressure": (pressure_load.load_at_pressure_kg, (KG, P, P)),
    "pressure_for_load": (pressure_load.pressure_for_load_kpa, (KG, KG, P)),
    "speed_addition": (pressure_load.speed_pressure_addition_kpa, (V,)),
    "outer_edge": (wheel_position.outer_edge_mm, (W, ET)),
    "inner_edge": (wheel_position.inner_edge_mm, (W, ET)),
    "rim_overall_width": (wheel_position.rim_overall_width_mm, (W,)),
    "track": (wheel_position.track_change_mm, (ET, ET)),
    "scrub_radius": (wheel_position.scrub_radius_change_mm, (ET, ET)),
    "ride_height": (wheel_position.ride_height_change_mm, (R, R)),
    "engine_speed": (drivetrain.engine_speed_change_percent, (D, D)),
    "axle_ratio": (drivetrain.axle_ratio_change_percent, (D, D, D, D)),
    "indicated_speed": (speedometer.indicated_speed_kmh, (V, Q, Q)),
    "tyre_mass": (inertia.tyre_mass_kg, (D, W, R)),
    "wheel_inertia": (inertia.wheel_inertia_kg_m2, ((5.0, 20.0), (5.0, 20.0), D, R)),
}


def _parts(answer: Any) -> tuple[Any, ...]:
    return answer if isinstance(answer, tuple) else (answer,)


@pytest.mark.parametrize("name", FORMULAS)
@given(data=st.data())
def test_the_array_path_gives_what_the_float_path_gives(name, data):
    formula, ranges = FORMULAS[name]
    rows = data.draw(st.lists(st.tuples(*(st.floats(*span) for span in ranges)), min_size=1, max_size=3))
    many = _parts(formula(*(np.array(column) for column in zip(*rows, strict=True))))
    one_by_one = zip(*(_parts(formula(*row)) for row in rows), strict=True)
    for array, floats in zip(many, one_by_one, strict=True):
        # The two libraries' powers may differ in the last digit.
        np.testing.assert_allclose(array, np.array(floats), rtol=1e-12, atol=1e-12)


@pytest.mark.parametrize("name", FORMULAS)
def test_a_float_gives_a_plain_float(name):
    formula, ranges = FORMULAS[name]
    answer = _parts(formula(*(0.5 * (low + high) for low, high in ranges)))
    assert {type(part) for part in answer} == {float}
