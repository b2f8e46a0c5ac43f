"""Every cell of the printed tables against copies of what was printed, made apart from the service's own files.

Sources: `data/load_index.csv` and `data/commercial_speed_load.csv`, read in Regeling voertuigen (Netherlands), Bijlage
VIII, annexes 4 and 5; `data/pressure_load_standard.csv`, Automotive Engineering (Butterworth-Heinemann), p. 290;
`data/old_sizes.csv`, sizes of UN Regulation No. 30, annex 5, from memory throughout. What stands in the text below is
from memory where it says so. Tolerance: none.
"""

import csv
from pathlib import Path

import pytest

from service.standards import catalogue

DATA = Path(__file__).parent / "data"


def copied(name):
    with (DATA / name).open(encoding="utf-8", newline="") as lines:
        return list(csv.reader(lines))


def rows(name):
    return [tuple(row) for row in catalogue.table(name).rows]


def test_every_load_index_up_to_200_carries_what_is_printed():
    printed = {int(index): float(mass_kg) for index, mass_kg in copied("load_index.csv")[1:]}
    assert {row[0]: row[1] for row in rows("load-index")[:201]} == printed


def test_every_load_index_above_200_carries_ten_times_what_80_below_does():
    """From memory; the indices that were read keep to it from 100 on, but for the rounding of the small ones."""
    mass_kg = {row[0]: row[1] for row in rows("load-index")}
    assert [index for index in range(201, 280) if mass_kg[index] != 10 * mass_kg[index - 80]] == []


def test_every_change_of_load_of_a_commercial_tyre_is_what_is_printed():
    head, *printed = copied("commercial_speed_load.csv")
    expected = [tuple(float(cell) if cell else None for cell in row) for row in printed]
    assert rows("commercial-speed-load") == expected
    assert [column.name for column in catalogue.table("commercial-speed-load").columns] == head


def test_every_load_at_a_pressure_is_what_is_printed():
    head, *printed = copied("pressure_load_standard.csv")
    assert rows("pressure-load") == [tuple(float(cell) for cell in row) for row in printed]
    names = [column.name for column in catalogue.table("pressure-load").columns]
    assert names[1:] == [f"load_at_{round(float(bar) * 100)}_kpa" for bar in head[1:]]


def test_every_old_size_that_was_written_down_has_its_row():
    """From memory, a confidence each, as the copy says."""
    known = {(f"{row[0]:g} {row[1]} {row[2]:g}", *row[1:7]) for row in rows("old-series")} | {
        (f"{row[0]:.2f}-{row[2]:g}", *row[1:7]) for row in rows("numeric-series")
    }
    printed = {
        (name, construction, *map(float, numbers), confidence)
        for name, construction, *numbers, confidence in copied("old_sizes.csv")[1:]
    }
    assert printed - known == set()


# From memory, written down apart: radial sizes that are not in the copy, as width, code, rim, diameter and section.
OLD_SERIES = """
125 12 3.5 510 127 / 135 12 4 522 137 / 145 12 4 542 147 / 135 13 4 548 137 / 145 13 4 566 147 / 155 13 4.5 578 157
165 13 4.5 596 167 / 175 13 5 608 178 / 185 13 5.5 624 188 / 165 14 4.5 622 167 / 175 14 5 634 178 / 185 14 5.5 650 188
195 14 5.5 666 198 / 145 15 4 616 147 / 155 15 4.5 630 157 / 165 15 4.5 646 167 / 175 15 5 660 178 / 185 15 5.5 674 188
"""


def test_the_other_old_sizes_are_the_remembered_ones():
    remembered = {
        (float(width), "R", *map(float, numbers))
        for width, *numbers in (line.split() for line in OLD_SERIES.replace("\n", "/").split("/") if line.strip())
    }
    in_copy = {row[0] for row in copied("old_sizes.csv")[1:]}
    others = {row[:6] for row in rows("old-series") if f"{row[0]:g} R {row[2]:g}" not in in_copy}
    assert others == remembered


# fmt: off
SPEEDS_KMH = {
    "A1": 5, "A2": 10, "A3": 15, "A4": 20, "A5": 25, "A6": 30, "A7": 35, "A8": 40, "B": 50, "C": 60, "D": 65, "E": 70,
    "F": 80, "G": 90, "J": 100, "K": 110, "L": 120, "M": 130, "N": 140, "P": 150, "Q": 160, "R": 170, "S": 180,
    "T": 190, "U": 200, "H": 210, "V": 240, "W": 270, "Y": 300, "(Y)": 300,
}
# fmt: on


def test_every_speed_symbol_stands_for_its_speed_and_says_how_far_it_was_read():
    """F to P from annex 5; J to M, R to T, H from the tyre label registry; V, W, Y from the handbook; else memory."""
    read = set("FGJKLMNPRSTHVWY")
    assert rows("speed-symbol") == [
        (symbol, speed_kmh, "read" if symbol in read else "memory") for symbol, speed_kmh in SPEEDS_KMH.items()
    ]


def test_every_share_of_load_of_a_passenger_tyre_is_what_is_printed():
    """Automotive Engineering, p. 291, fig. 10.1-14."""
    v = dict(zip(range(210, 250, 10), (100, 97, 94, 91), strict=True))
    w = dict(zip(range(240, 280, 10), (100, 95, 90, 85), strict=True)) | dict.fromkeys(range(210, 240, 10), 100)
    y = dict(zip(range(270, 310, 10), (100, 95, 90, 85), strict=True)) | dict.fromkeys(range(210, 270, 10), 100)
    assert rows("passenger-speed-load") == [
        (speed, *(column.get(speed) for column in (v, w, y))) for speed in range(210, 310, 10)
    ]


@pytest.mark.parametrize(
    ("row", "aspect", "theoretical", "measuring"),
    [
        (0, (75, 95), 0.70, 0.70),
        (1, (70, 70), 0.70, 0.75),
        (2, (60, 65), 0.70, 0.75),
        (3, (50, 55), 0.70, 0.80),
        (4, (45, 45), 0.85, 0.85),
        (5, (30, 40), 0.85, 0.90),
        (6, (25, 25), 0.90, 0.92),
        (7, (20, 20), 0.92, 0.92),
    ],
)
def test_both_ladders_of_rim_width_are_the_remembered_ones(row, aspect, theoretical, measuring):
    """From memory: medium confidence for the theoretical rim, high for the measuring rim."""
    assert rows("rim-width")[row][:4] == (*aspect, theoretical, measuring)


def test_the_flotation_sizes_are_the_remembered_ones():
    """From memory, medium confidence."""
    assert [row[:4] for row in rows("flotation")] == [(31.0, 10.5, 15.0, 775.0), (35.0, 12.5, 17.0, 877.0)]
