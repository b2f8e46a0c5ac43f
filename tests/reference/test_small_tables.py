"""The small tables whole, cell by cell, against copies written by hand: ladders of widths, symbols, diameters.

Sources: Automotive Engineering, ch. 10.1, p. 291, fig. 10.1-14 (V, W, Y): read. Speed symbols F to P by Regeling
voertuigen, annex 5, J to M, R to T and H by the label registry, V, W, Y by the same page: read; A1 to E, Q, U and (Y):
memory. Nominal diameters of codes 10 and 25 by directive 92/23: read; the others, the specified diameters (ISO 4000-2
table 4) and the ladders of the design guide: memory. The factors 0.70 and 0.90 of aspect ratios 50 to 65 are the
project's fit, and the sizes in inches below are held as entered: a guard against slips of the pen.
"""

import math

import pytest

from service.standards import catalogue, rim_diameter, rim_width

# Several cells a line, as a table is read.
# fmt: off
SYMBOLS = """
A1 5 memory, A2 10 memory, A3 15 memory, A4 20 memory, A5 25 memory, A6 30 memory, A7 35 memory, A8 40 memory,
B 50 memory, C 60 memory, D 65 memory, E 70 memory, F 80 read, G 90 read, J 100 read, K 110 read, L 120 read,
M 130 read, N 140 read, P 150 read, Q 160 memory, R 170 read, S 180 read, T 190 read, U 200 memory, H 210 read,
V 240 read, W 270 read, Y 300 read, (Y) 300 memory"""

# Per cent of the load index by speed, to the end of each symbol.
FAST = {
    "V": {210: 100, 220: 97, 230: 94, 240: 91},
    "W": {210: 100, 220: 100, 230: 100, 240: 100, 250: 95, 260: 90, 270: 85},
    "Y": {210: 100, 220: 100, 230: 100, 240: 100, 250: 100, 260: 100, 270: 100, 280: 95, 290: 90, 300: 85},
}

# Code: nominal, specified diameter; the rows without a specified one were not remembered.
DIAMETERS_MM = {
    8: (203, None), 9: (229, None), 10: (254, 253.2), 11: (279, None), 12: (305, 304.0), 13: (330, 329.4),
    14: (356, 354.8), 15: (381, 380.2), 16: (406, 405.6), 17: (432, 436.6), 17.5: (445, None), 18: (457, 462.0),
    19: (483, 487.4), 19.5: (495, None), 20: (508, 512.8), 21: (533, 538.2), 22: (559, 563.6), 22.5: (572, None),
    23: (584, 589.0), 24: (610, 614.4), 25: (635, None), 26: (660, 665.2), 28: (711, None), 30: (762, None),
}

# Aspect ratio: theoretical, measuring, narrowest, widest factor.
LADDERS = {
    95: (0.70, 0.70, 0.65, 0.85), 80: (0.70, 0.70, 0.65, 0.85), 75: (0.70, 0.70, 0.65, 0.85),
    70: (0.70, 0.75, 0.65, 0.85), 65: (0.70, 0.75, 0.70, 0.90), 60: (0.70, 0.75, 0.70, 0.90),
    55: (0.70, 0.80, 0.70, 0.90), 50: (0.70, 0.80, 0.70, 0.90), 45: (0.85, 0.85, 0.80, 0.95),
    40: (0.85, 0.90, 0.85, 1.00), 35: (0.85, 0.90, 0.85, 1.00), 30: (0.85, 0.90, 0.85, 1.00),
    25: (0.90, 0.92, 0.85, 1.00), 20: (0.92, 0.92, 0.85, 1.00),
}

# Section in inches, rim code: measuring rim, diameter, section in millimetres; all diagonal, medium confidence.
INCHES = """
4.80-10 3.5 490 128, 5.20-10 3.5 508 132, 5.20-12 3.5 558 132, 5.50-12 4 552 142, 6.00-12 4.5 574 156,
5.60-13 4 600 145, 5.90-13 4 616 150, 6.40-13 4.5 642 163, 7.00-13 5 644 178, 5.20-14 3.5 612 132,
5.60-14 4 626 145, 5.90-14 4 642 150, 6.40-14 4.5 666 163, 7.00-14 5 668 178, 7.50-14 5.5 688 190,
5.60-15 4 650 145, 5.90-15 4 668 150, 6.40-15 4.5 692 163, 6.70-15 4.5 710 170, 7.10-15 5 724 180,
7.60-15 5.5 742 193, 8.20-15 6 760 213"""
# fmt: on


def cells(text: str) -> list[list[str]]:
    return [each.split() for each in text.replace("\n", " ").split(",")]


def test_every_symbol_has_its_speed_its_place_and_says_how_far_it_was_read():
    printed = [(symbol, float(kmh), status) for symbol, kmh, status in cells(SYMBOLS)]
    assert list(catalogue.table("speed-symbol").rows) == printed


@pytest.mark.parametrize("symbol", FAST)
def test_every_share_of_a_fast_symbol_is_what_is_printed(symbol):
    speeds = catalogue.numbers("passenger-speed-load", "speed_kmh")
    shares = catalogue.numbers("passenger-speed-load", symbol)
    assert {kmh: share for kmh, share in zip(speeds, shares, strict=True) if not math.isnan(share)} == FAST[symbol]


def test_every_diameter_of_a_code_is_the_remembered_one_and_two_were_read():
    rows = catalogue.table("rim-diameter").rows
    assert {row[0]: row[1:3] for row in rows} == DIAMETERS_MM
    assert [row[0] for row in rows if row[3] == "read"] == [10, 25]
    assert {code: rim_diameter.nominal_mm(code) for code in DIAMETERS_MM} == {
        code: nominal_mm for code, (nominal_mm, _) in DIAMETERS_MM.items()
    }


@pytest.mark.parametrize("code", [7.9, 30.1])
def test_a_code_outside_the_table_has_no_diameter(code):
    assert math.isnan(rim_diameter.nominal_mm(code))


@pytest.mark.parametrize("aspect", LADDERS)
def test_every_step_of_the_ladders_is_the_remembered_one(aspect):
    names = ("theoretical_factor", "measuring_factor", "narrowest_factor", "widest_factor")
    assert tuple(rim_width.factor(name, aspect) for name in names) == LADDERS[aspect]


@pytest.mark.parametrize(("between", "step"), [(48, 45), (44.9, 30), (74, 70), (29, 25), (24, 20)])
def test_between_two_steps_the_lower_one_counts(between, step):
    """The guide calls a factor one "from" an aspect ratio up (memory)."""
    assert rim_width.theoretical_factor(between) == LADDERS[step][0]
    assert rim_width.measuring_factor(between) == LADDERS[step][1]


@pytest.mark.parametrize("aspect", [19.9, 0.0, math.nan])
def test_below_the_ladder_there_is_no_factor(aspect):
    assert math.isnan(rim_width.theoretical_factor(aspect))
    assert math.isnan(rim_width.measuring_factor(aspect))


def test_the_steps_of_the_ladders_are_printed_from_and_to():
    steps = [(75, 95), (70, 70), (60, 65), (50, 55), (45, 45), (30, 40), (25, 25), (20, 20)]
    assert [row[:2] for row in catalogue.table("rim-width").rows] == steps


def test_every_size_in_inches_is_as_entered():
    entered = [
        (float(size[:4]), "D", float(size[5:]), *map(float, numbers), "medium", "memory")
        for size, *numbers in cells(INCHES)
    ]
    assert list(catalogue.table("numeric-series").rows) == entered


def test_half_an_inch_is_the_step_of_a_rim_width_and_a_half_step_goes_up():
    """By hand: 6.24 in is nearer to 6, 6.25 goes up to 6.5."""
    assert [rim_width.to_half_inch(25.4 * width) for width in (6.24, 6.25, 6.74, 6.76)] == [6.0, 6.5, 6.5, 7.0]
