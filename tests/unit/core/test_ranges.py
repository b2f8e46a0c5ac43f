"""What may be stated: round bounds, as they are this project's own, around what is on the road."""

import pytest

from service.core import ranges

BOUNDS = {name: bounds for name, bounds in vars(ranges).items() if isinstance(bounds, tuple)}

# Council Directive 96/53/EC, annex I: 2.55 m wide, 12 m long, 11.5 t on a driving axle, 44 t in combination.
# Regulation (EU) 168/2013: from 425 kg for a light quadricycle. UN R117: 67 to 78 dB among today's limits.
# UN R30: (Y) above 300 km/h. Germany: 1.6 mm of tread at least (StVZO 36), lorries limited to 90 km/h (92/6/EEC).
ON_THE_ROAD = [
    ("TRACK_MM", 2550.0),
    ("WHEELBASE_MM", 7000.0),
    ("AXLE_MASS_KG", 11500.0),
    ("KERB_AXLE_MASS_KG", 150.0),
    ("VEHICLE_MASS_KG", 425.0),
    ("VEHICLE_MASS_KG", 44000.0),
    ("NOISE_DB", 67.0),
    ("NOISE_DB", 78.0),
    ("SPEED_KMH", 301.0),
    ("LIMITED_SPEED_KMH", 90.0),
    ("TREAD_DEPTH_MM", 1.6),
]


def test_there_are_bounds_to_hold():
    assert len(BOUNDS) > len({name for name, _ in ON_THE_ROAD})


@pytest.mark.parametrize("name", BOUNDS)
def test_a_bound_is_a_whole_number_of_two_figures_at_most(name):
    low, high = BOUNDS[name]
    assert low < high
    assert [each for each in (low, high) if float(each) != float(f"{each:.2g}") or each % 1] == []


@pytest.mark.parametrize(("name", "value"), ON_THE_ROAD)
def test_what_is_on_the_road_may_be_stated(name, value):
    low, high = BOUNDS[name]
    assert low <= value <= high


def test_a_wheel_is_single_or_twin():
    assert ranges.WHEELS_PER_SIDE == (1, 2)
