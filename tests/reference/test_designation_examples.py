"""Designations as documents print them.

The sources were read in copies or quotations, as the project's notes on standards say; each block names its own.
"""

import pytest

from service.designation.rim import parse_rim
from service.designation.service_description import SPEED_LETTERS, ServiceDescription
from service.designation.tyre import parse_tyre


def test_iso_prints_a_rim_with_the_diameter_first():
    # ISO 4000-2:2021, clause 4: "e.g. 15 x 6 J" (read in a copy).
    rim = parse_rim("15 x 6 J")
    assert (rim.diameter_code, rim.width_in, rim.flange, rim.one_piece) == (15.0, 6.0, "J", True)


def test_iso_prints_a_width_code_with_two_decimals():
    # ISO 4000-2:2021, clause 4: "or 13 x 5.50 B" (read in a copy).
    rim = parse_rim("13 x 5.50 B")
    assert (rim.diameter_code, rim.width_in, rim.flange) == (13.0, 5.5, "B")


def test_din_prints_a_rim_with_the_width_first():
    # DIN 7817, "5 J x 13 H2": rim width in inches, flange, drop base, diameter, double hump. Automotive Engineering
    # (Butterworth-Heinemann), ch. 10.1, figure on p. 301 (read).
    rim = parse_rim("5 J x 13 H2")
    assert (rim.width_in, rim.flange, rim.one_piece, rim.diameter_code, rim.hump) == (5.0, "J", True, 13.0, "H2")


@pytest.mark.parametrize("hump", ["H", "H2", "FH", "FH2", "CH"])
def test_the_humps_of_the_handbook_are_read(hump):
    # Automotive Engineering, ch. 10.1, fig. 10.1-22 on p. 301 (read).
    assert parse_rim(f"6J x 15 {hump}").hump == hump


@pytest.mark.parametrize("hump", ["EH", "EH2", "EH2+"])
def test_the_extended_humps_are_read(hump):
    # From memory of the trade; no text found.
    assert parse_rim(f"6J x 17 {hump}").hump == hump


def test_a_wheel_designation_ends_in_its_offset():
    # "6 1/2 J x 16 H2 ET 45" with the one-sign fraction: from memory of the trade; no text found.
    rim = parse_rim("6\u00bd J x 16 H2 ET 45")
    assert (rim.width_in, rim.flange, rim.diameter_code, rim.hump, rim.offset_mm) == (6.5, "J", 16.0, "H2", 45.0)


def test_the_c_behind_the_rim_code_belongs_to_the_size():
    # A row of the EU tyre-label registry prints "215/65R16C 109/107 T" (read).
    tyre = parse_tyre("215/65R16C 109/107 T")
    assert (tyre.commercial, tyre.load_index, tyre.load_index_twin, tyre.speed_symbol) == ("C", 109, 107, "T")


def test_the_additional_service_description_may_have_a_twin_index():
    # "106/104 R (107/105 N)": the EU tyre-label registry has the field "Additional Service Description" (read).
    tyre = parse_tyre("195/75R16C 106/104 R (107/105 N)")
    assert (tyre.load_index, tyre.load_index_twin, tyre.speed_symbol) == (106, 104, "R")
    assert tyre.additional == ServiceDescription(107, 105, "N")


def test_zrf_is_a_run_flat_construction_above_240():
    # UN R30, Supplement 27 adds "the inscription ZRF" (summary read).
    tyre = parse_tyre("245/40 ZRF 18")
    assert (tyre.z_rated, tyre.run_flat, tyre.construction) == (True, True, "radial")


def test_hl_is_an_optional_prefix():
    # UN R30, Supplement 25: "the addition of an optional prefix for extra load tyres" (summary read); HL from memory.
    assert parse_tyre("HL245/40R20 99W").load_version == "high_load"


def test_a_service_description_in_brackets_is_above_300():
    # "265/30ZR20 (94Y)": from memory of UN R30; no text found.
    tyre = parse_tyre("265/30ZR20 (94Y)")
    assert (tyre.bracketed, tyre.speed_symbol, tyre.z_rated) == (True, "Y", True)


@pytest.mark.parametrize(
    ("printed", "system"),
    [
        ("P215/65R15", "p_metric"),
        ("LT235/85R16", "lt_metric"),
        ("T145/80D18 103M", "temporary_spare"),
        ("31x10.50R15LT", "flotation"),
    ],
)
def test_united_states_sizes_are_told_by_their_letters(printed, system):
    # Size explanation that United States law prescribes, as owner's manuals print it (second-hand).
    assert parse_tyre(printed).system == system


@pytest.mark.parametrize(
    "size",
    ["125 R 12", "135 R 13", "145 R 12", "155 R 13", "165 R 14", "175 R 13", "185 R 14", "185 R 15", "195 R 14"],
)
def test_old_series_have_no_aspect_ratio(size):
    # UN R30, annex 5 (from memory; no text found). The folk rule of 82 per cent contradicts that table.
    tyre = parse_tyre(size)
    assert (tyre.system, tyre.aspect_ratio) == ("old_series", None)


@pytest.mark.parametrize("code", [17.5, 19.5, 22.5])
def test_rim_codes_of_heavy_tyres_have_halves(code):
    # From memory of the trade; no text found.
    assert parse_tyre(f"225/75R{code}").rim_code == code


# UN R30, para. on speed categories: F to P read in the Dutch Regeling voertuigen, annex 5; R, S, T, H in the EU
# tyre-label registry; V, W, Y in Automotive Engineering, p. 291; A1 to E, Q and U from memory.
@pytest.mark.parametrize("symbol", [*(f"A{number}" for number in range(1, 9)), *"BCDEFGJKLMNPQRSTUHVWY"])
def test_every_speed_symbol_is_read(symbol):
    assert parse_tyre(f"205/55R16 91{symbol}").speed_symbol == symbol


def test_there_are_no_speed_symbols_that_look_like_digits():
    # The table of UN R30 has no I, O or X; Z is a letter of the construction.
    assert not set("IOXZ") & set(SPEED_LETTERS)
