"""Lowest and highest value of each quantity that a question may state, in the unit of its name.

Wide enough for anything on the road, narrow enough to find a slip of the keyboard: this project's own.
"""

from __future__ import annotations

from typing import Final

Range = tuple[float, float]

SPEED_KMH: Final[Range] = (10.0, 450.0)
LIMITED_SPEED_KMH: Final[Range] = (10.0, 200.0)
AXLE_MASS_KG: Final[Range] = (50.0, 15000.0)
KERB_AXLE_MASS_KG: Final[Range] = (20.0, 15000.0)
VEHICLE_MASS_KG: Final[Range] = (100.0, 60000.0)
TRACK_MM: Final[Range] = (500.0, 3000.0)
WHEELBASE_MM: Final[Range] = (500.0, 10000.0)
CENTRE_OF_GRAVITY_HEIGHT_MM: Final[Range] = (100.0, 3000.0)
WHEELS_PER_SIDE: Final = (1, 2)
CENTRE_BORE_MM: Final[Range] = (20.0, 300.0)
ROOM_MM: Final[Range] = (0.0, 500.0)
SPACER_MM: Final[Range] = (0.0, 100.0)
ROOM_TOLERANCE_MM: Final[Range] = (0.0, 20.0)
TRACK_TOLERANCE_MM: Final[Range] = (0.0, 50.0)
SPEEDOMETER_TOLERANCE_PERCENT: Final[Range] = (0.0, 5.0)
RIM_DIAMETER_IN: Final[Range] = (8.0, 30.0)
RIM_WIDTH_IN: Final[Range] = (2.0, 20.0)
# From the share of the lightest axle on four wheels to that of the heaviest on two.
RIM_LOAD_RATING_KG: Final[Range] = (10.0, 8000.0)
TYRE_OR_RIM_MASS_KG: Final[Range] = (1.0, 200.0)
PRESSURE_KPA: Final[Range] = (50.0, 1000.0)
REFERENCE_PRESSURE_KPA: Final[Range] = (100.0, 1000.0)
TREAD_DEPTH_MM: Final[Range] = (0.0, 25.0)
OVERALL_DIAMETER_MM: Final[Range] = (200.0, 1500.0)
NOISE_DB: Final[Range] = (50.0, 90.0)
SECTION_WIDTH_MM: Final[Range] = (50.0, 600.0)
ROLLING_CIRCUMFERENCE_MM: Final[Range] = (600.0, 4800.0)
