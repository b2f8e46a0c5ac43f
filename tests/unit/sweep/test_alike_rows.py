"""Vehicles graded together come out as each one graded alone, at every bound of a law and beside it.

A sweep grades vehicles together that no bound of the pack tells apart. Alone, a row is its own kind: what it comes to
there is what it has to come to among others. The bounds are those of `tests/reference/data/places`.
"""

import pandas as pd
import pyarrow as pa
import pytest

from service.sweep.batches import RESULTS, grade_batches
from tests.unit.sweep.small_catalogue import vehicles

TYRE = "225/45 R17 82W"
BASE = vehicles(1).astype(object).iloc[0].to_dict() | {
    "max_speed_kmh": 150.0,
    "category": "N1",
    "driven_axle": "rear",
    "built": "2015-05-01",
    "max_mass_kg": 3000.0,
    "seats_standing": None,
    "speed_limited_kmh": None,
    "towing": None,
    "displayed_kmh": 100.0,
    "true_kmh": 96.0,
}
for _axle in ("front", "rear"):
    BASE |= {
        f"{_axle}_tyre": "225/45 R17 94W XL",
        f"{_axle}_rim": "7.5J x 17 H2 ET45",
        f"{_axle}_max_axle_mass_kg": 960.0,
        f"{_axle}_track_mm": 1500.0,
        f"{_axle}_wheels_per_side": 1,
        # Load index 82 is 475 kg (load index table): 950 kg a pair. ET45 to ET25 is 40 mm more track, 2.7 % of 1500.
        f"candidate_{_axle}_tyre": TYRE,
        f"candidate_{_axle}_rim": "7.5J x 17 H2 ET25",
    }
BASE["candidate_id"] = "c"
BUS = {"category": "M2", "front_max_axle_mass_kg": 1000.0, "rear_max_axle_mass_kg": 1000.0}


def graded(rows: list[dict[str, object]], pack: str) -> list[dict[str, object]]:
    table = pa.Table.from_pandas(pd.DataFrame(rows), preserve_index=False)
    return pa.Table.from_batches(grade_batches(table.to_batches(), rule_pack=pack), RESULTS).to_pylist()


# Pack, column, its values, and how many of the first of them lie on the first side; what else the vehicles have.
BOUNDS = [
    ("nl", "max_mass_kg", [3499.0, 3500.0, 3500.1, 3501.0], 2, {}),
    ("nl", "built", ["1997-12-30", "1997-12-31", "1998-01-01", "1998-01-02"], 2, {}),
    ("nl", "max_mass_kg", [4999.0, 5000.0, 5000.1, 5001.0], 2, BUS | {"seats_standing": True}),
    ("nl", "seats_standing", [None, False, True], 2, BUS | {"max_mass_kg": 5600.0}),
    ("nl", "category", ["M1", "M1G", "N1", "M2"], 2, {}),
    ("au-nsw", "category", ["M1", "M1G", "N1", "N2"], 1, {}),
    ("de", "driven_axle", ["front", "rear"], 1, {"candidate_rear_tyre": "225/55 R17 82W"}),
    ("unece", "front_wheels_per_side", [1, 2], 1, {}),
    ("unece", "max_speed_kmh", [44.9, 45.0, 45.1, 99.9, 100.0, 100.1, 150.0, 150.1, 250.0, 271.0], 9, {}),
]


@pytest.mark.parametrize(("pack", "column", "values", "first", "more"), BOUNDS)
def test_vehicles_graded_together_come_out_as_each_one_alone(pack, column, values, first, more):
    rows = [BASE | more | {column: value, "vehicle_id": f"larch-{at}"} for at, value in enumerate(values)]
    together = graded(rows, pack)
    alone = [graded([row], pack)[0] for row in rows]
    assert [each["fault"] for each in together] == [None] * len(rows)
    assert together == alone
    # The bound is of use here only where it makes a difference.
    assert together[first - 1]["worst_codes"] != together[first]["worst_codes"]


@pytest.mark.parametrize(
    ("pack", "column", "values"),
    [
        ("jp", "built", ["2006-12-30", "2006-12-31", "2007-01-01", None]),
        ("au-nsw", "built", ["1974-06-30", "1974-07-01", "2006-06-30", "2006-07-01", None]),
        ("nl", "speed_limited_kmh", [89.0, 90.0, 90.1, 99.0, 100.0, 100.1, None]),
        ("nl", "towing", [True, False, None]),
        ("nz", "max_mass_kg", [3500.0, 3501.0, None]),
        ("us", "category", ["M1", "M1G", "M2", "M3", "N1", "N2", "N3", None]),
    ],
)
def test_so_they_do_where_a_fact_is_missing_or_hardly_counts(pack, column, values):
    rows = [BASE | {column: value, "vehicle_id": f"larch-{at}"} for at, value in enumerate(values)]
    assert graded(rows, pack) == [graded([row], pack)[0] for row in rows]
