"""Between which values a quantity of a question may lie: the web interface and the tables of a sweep take the same.

Wide enough for every vehicle in use, narrow enough to catch a slip of the pen (project's choice throughout).
"""

from __future__ import annotations

from typing import Final, NamedTuple


class Range(NamedTuple):
    """A quantity's unit (`1`: a plain number), and its lowest and highest value."""

    unit: str
    bounds: tuple[float, float]


TREAD_DEPTH: Final = Range("mm", (0.0, 25.0))
OVERALL_DIAMETER: Final = Range("mm", (200.0, 1500.0))
SECTION_WIDTH: Final = Range("mm", (50.0, 600.0))
ROLLING_CIRCUMFERENCE: Final = Range("mm", (600.0, 4800.0))
APPROVED_RIM_WIDTH: Final = Range("in", (2.0, 20.0))
REFERENCE_PRESSURE: Final = Range("kPa", (100.0, 1000.0))
PRESSURE: Final = Range("kPa", (50.0, 1000.0))
PART_MASS: Final = Range("kg", (1.0, 200.0))
CENTRE_BORE: Final = Range("mm", (20.0, 300.0))
LOAD_RATING: Final = Range("kg", (50.0, 6000.0))
CLEARANCE: Final = Range("mm", (0.0, 500.0))
MAX_AXLE_MASS: Final = Range("kg", (50.0, 15000.0))
KERB_AXLE_MASS: Final = Range("kg", (20.0, 15000.0))
TRACK: Final = Range("mm", (500.0, 3000.0))
MIN_RIM_DIAMETER: Final = Range("in", (8.0, 30.0))
SPEED: Final = Range("km/h", (10.0, 450.0))
LIMITED_SPEED: Final = Range("km/h", (10.0, 200.0))
WHEELBASE: Final = Range("mm", (500.0, 10000.0))
CENTRE_OF_GRAVITY_HEIGHT: Final = Range("mm", (100.0, 3000.0))
MAX_MASS: Final = Range("kg", (100.0, 60000.0))
WHEELS_PER_SIDE: Final = (1, 2)
LONGEST_DESIGNATION: Final = 100
