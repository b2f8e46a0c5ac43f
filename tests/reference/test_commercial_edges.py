"""A commercial tyre at the edges of the table of load and speed: symbols without a column, speeds between two rows.

Source: Regeling voertuigen, Bijlage VIII, annex 5 (UN R54, annex 8), footnotes 1 and 2: read. What the table leaves
open is this project's reading: a speed between two rows takes the next row up; a symbol without a column carries its
whole index up to its own speed and nothing above. Speeds of the symbols: the same annex and the label registry; Q, U
and E from memory.
"""

import math

import pytest

from service.assessment.view.load_at_speed import speed_symbol_kmh
from service.designation.tyre import parse_tyre
from service.standards.commercial_speed_load import load_factor, speed_reach_kmh


@pytest.mark.parametrize(
    ("symbol", "index", "kmh"),
    [
        *[("Q", 109, 160), ("R", 109, 170), ("S", 109, 180), ("T", 109, 190), ("U", 109, 200), ("H", 109, 210)],
        # No column: slower than F; N and P from index 122 on.
        *[("E", 150, 70), ("N", 122, 140), ("P", 122, 150), ("R", 122, 170)],
        # Below 122 the columns reach beyond the symbol.
        *[("N", 121, 160), ("P", 121, 160), ("L", 121, 140), ("L", 122, 120), ("M", 121, 150), ("M", 122, 130)],
    ],
)
def test_a_tyre_reaches_the_end_of_its_column_or_its_symbols_speed(symbol, index, kmh):
    assert speed_reach_kmh(symbol, index) == kmh


@pytest.mark.parametrize(("tyre", "kmh"), [("215/75 R17.5 121/120M", 150), ("225/75 R17.5 129/127M", 130)])
def test_which_column_counts_goes_by_the_index_on_the_tyre(tyre, kmh):
    assert speed_symbol_kmh(parse_tyre(tyre)) == kmh


@pytest.mark.parametrize("symbol", ["I", "", "Ä"])
def test_of_an_unknown_symbol_nothing_is_known(symbol):
    assert math.isnan(speed_reach_kmh(symbol, 109))
    assert math.isnan(load_factor(symbol, 109, 80.0))


def test_at_an_unknown_speed_nothing_is_known():
    assert math.isnan(load_factor("N", 109, math.nan))


@pytest.mark.parametrize(
    ("symbol", "index", "kmh", "per_cent"),
    [
        # Next row up: K has 0 at 110, -3 at 115 and -7 at 120; J +2 at 90 and 0 at 100; N +5 at 100, +3.75 at 105.
        *[("K", 150, 110, 0), ("K", 150, 110.1, -3), ("K", 150, 115.1, -7)],
        *[("N", 109, 100.1, 3.75), ("N", 109, 99.9, 5)],
        # A symbol without a column gains nothing.
        *[("E", 150, 20, 0), ("E", 150, 70, 0), ("N", 122, 20, 0), ("N", 122, 140, 0), ("R", 122, 20, 0)],
        # A symbol above P gains what the P column grants: 35 at 30 km/h, 7.5 at 90.
        *[("R", 109, 30, 35), ("R", 109, 90, 7.5), ("R", 109, 150, 0), ("R", 109, 160, 0), ("R", 109, 170, 0)],
    ],
)
def test_a_load_changes_by_the_row_that_the_speed_reaches(symbol, index, kmh, per_cent):
    assert load_factor(symbol, index, kmh) == pytest.approx(1.0 + per_cent / 100.0, rel=1e-12)


@pytest.mark.parametrize(
    ("symbol", "index", "kmh"), [("E", 150, 70.1), ("N", 122, 140.1), ("R", 109, 170.1), ("R", 122, 170.1)]
)
def test_nothing_is_carried_above_the_symbols_speed_where_no_column_goes_further(symbol, index, kmh):
    assert load_factor(symbol, index, kmh) == 0.0
