"""Rim diameters and rim widths against printed values, copied by hand.

Sources: Directive 92/23/EEC, consolidated (code 10 = 254 mm, code 25 = 635 mm); the rounding rule (code x 25.4 to the
nearest whole millimetre) as an engineering forum quotes the Tire and Rim Association. Everything else here is from
memory, medium to high confidence, and awaits a check against ISO 4000-2 table 4, UN Regulation No. 30
annex 5 and the ETRTO manual.
"""

import pytest

from service.standards import approved_rim_width, catalogue, flotation, old_series, rim_diameter, rim_width

# Several cells a line, as a table is read.
# fmt: off
NOMINAL_MM = {
    8: 203, 9: 229, 11: 279, 12: 305, 13: 330, 14: 356, 15: 381, 16: 406, 17: 432, 17.5: 445, 18: 457,
    19: 483, 19.5: 495, 20: 508, 21: 533, 22: 559, 22.5: 572, 23: 584, 24: 610, 26: 660, 28: 711, 30: 762,
}
# fmt: on

SPECIFIED_MM = {code: specified_mm for code, _, specified_mm, _ in catalogue.table("rim-diameter").rows}

# Size: width, aspect ratio, measuring rim (from memory, high confidence).
MEASURING_RIMS = [
    *[(205, 55, 6.5), (195, 65, 6), (225, 45, 7.5), (225, 40, 8), (255, 35, 9), (275, 30, 9.5)],
    *[(155, 80, 4.5), (185, 65, 5.5), (235, 75, 6.5)],
]

# Width, aspect ratio, measuring rim, printed design section width (from memory, high confidence).
SECTION_WIDTHS = [
    *[(195, 65, 6, 201), (205, 55, 6.5, 214), (185, 65, 5.5, 189), (225, 45, 7.5, 225)],
    *[(225, 40, 8, 230), (255, 35, 9, 260), (235, 75, 6.5, 235)],
]

# Width, aspect ratio, code, narrowest, measuring, widest (from memory, medium confidence).
APPROVED = [
    *[(175, 65, 14, 5, 5, 6), (185, 65, 15, 5, 5.5, 6.5), (195, 65, 15, 5.5, 6, 7), (205, 60, 16, 5.5, 6, 7.5)],
    *[(205, 55, 16, 5.5, 6.5, 7.5), (215, 55, 17, 6, 7, 7.5), (225, 45, 17, 7, 7.5, 8.5), (225, 40, 18, 7.5, 8, 9)],
    *[(245, 40, 18, 8, 8.5, 9.5), (235, 35, 19, 8, 8.5, 9.5), (255, 35, 19, 8.5, 9, 10)],
    # The same sections on other rim diameters, which the manual gives the same rims, and six common sizes more.
    *[(175, 65, 15, 5, 5, 6), (185, 65, 14, 5, 5.5, 6.5), (205, 60, 15, 5.5, 6, 7.5), (205, 55, 17, 5.5, 6.5, 7.5)],
    *[(215, 55, 16, 6, 7, 7.5), (215, 55, 18, 6, 7, 7.5), (225, 45, 18, 7, 7.5, 8.5), (225, 45, 19, 7, 7.5, 8.5)],
    *[(225, 40, 19, 7.5, 8, 9), (245, 40, 19, 8, 8.5, 9.5), (245, 40, 20, 8, 8.5, 9.5), (255, 35, 18, 8.5, 9, 10)],
    *[(255, 35, 20, 8.5, 9, 10), (195, 50, 15, 5.5, 6, 7), (205, 50, 17, 5.5, 6.5, 7.5), (215, 45, 17, 7, 7, 8)],
    *[(235, 45, 17, 7.5, 8, 9), (235, 40, 18, 8, 8.5, 9.5), (245, 45, 18, 7.5, 8, 9)],
    # The one known size of the 70 series, which tells its factors from those of the 65 series.
    (265, 70, 16, 7, 8, 9),
]


@pytest.mark.parametrize(("code", "mm"), [(10, 254), (25, 635)])
def test_the_nominal_diameters_of_the_directive_are_met(code, mm):
    assert rim_diameter.nominal_mm(code) == mm


@pytest.mark.parametrize(("code", "mm"), NOMINAL_MM.items())
def test_a_remembered_nominal_diameter_is_met(code, mm):
    assert rim_diameter.nominal_mm(code) == mm


@pytest.mark.parametrize("code", [row[0] for row in catalogue.table("rim-diameter").rows])
def test_every_nominal_diameter_is_within_half_a_millimetre_of_its_code_in_inches(code):
    assert abs(rim_diameter.nominal_mm(code) - 25.4 * code) <= 0.5


@pytest.mark.parametrize(("code", "mm"), [(12.5, 318), (16.5, 419), (24.5, 622), (27, 686)])
def test_a_code_between_the_rows_follows_the_rounding_rule(code, mm):
    """Worked by hand: 317.5, 419.1, 622.3 and 685.8 mm; a half goes up."""
    assert rim_diameter.nominal_mm(code) == mm


@pytest.mark.parametrize(("code", "mm"), [(13, 329.4), (15, 380.2), (16, 405.6), (17, 436.6), (18, 462.0), (20, 512.8)])
def test_a_specified_diameter_is_the_remembered_one(code, mm):
    assert SPECIFIED_MM[code] == mm


def test_the_bead_seat_of_code_17_is_not_its_nominal_diameter():
    assert SPECIFIED_MM[17] - rim_diameter.nominal_mm(17) == pytest.approx(4.6)


@pytest.mark.parametrize("row", [row for row in catalogue.table("rim-diameter").rows if row[2] is not None])
def test_the_specified_diameter_jumps_from_code_17_on(row):
    code, _, specified_mm, _ = row
    assert specified_mm == pytest.approx(25.4 * code + (4.8 if code >= 17 else -0.8))


@pytest.mark.parametrize(("width_mm", "aspect", "rim_in"), MEASURING_RIMS)
def test_the_measuring_factor_gives_the_printed_measuring_rim(width_mm, aspect, rim_in):
    assert rim_width.measuring_rim_in(width_mm, aspect) == rim_in


@pytest.mark.parametrize(("width_mm", "aspect", "rim_in", "section_mm"), SECTION_WIDTHS)
def test_the_theoretical_factor_gives_the_printed_section_width(width_mm, aspect, rim_in, section_mm):
    """By UN Regulation No. 30, para. 6.1.1.1: S = S1 + 0.4 (A - x S1), to the nearest millimetre."""
    theoretical_mm = rim_width.theoretical_factor(aspect) * width_mm
    assert abs(width_mm + 0.4 * (25.4 * rim_in - theoretical_mm) - section_mm) <= 0.5


def test_a_worked_size_of_the_american_design_guide_is_met():
    """P205/60R15 on 6.0 in: design section 8.23 in (Tire and Rim Association, second-hand), a whole number of mm."""
    width_mm = 205 + 0.4 * (25.4 * 6 - rim_width.theoretical_factor(60) * 205)
    assert round(round(width_mm) / 25.4, 2) == 8.23


@pytest.mark.parametrize(("width_mm", "aspect", "code", "narrowest", "measuring", "widest"), APPROVED)
def test_a_tabulated_size_has_its_remembered_rims(width_mm, aspect, code, narrowest, measuring, widest):
    assert approved_rim_width.from_table(width_mm, aspect, code, "R") == (narrowest, measuring, widest)


@pytest.mark.parametrize(("width_mm", "aspect", "code", "narrowest", "measuring", "widest"), APPROVED)
def test_the_design_guide_agrees_with_the_tabulated_rims(width_mm, aspect, code, narrowest, measuring, widest):
    """The rule meets all sizes; for aspect ratios of 50 to 65 it was chosen to meet the first eleven."""
    assert approved_rim_width.by_design_guide(width_mm, aspect) == (narrowest, widest)


@pytest.mark.parametrize(
    ("width_mm", "code", "expected"),
    [(155, 13, (4.5, 578, 157)), (125, 12, (3.5, 510, 127)), (175, 14, (5, 634, 178)), (185, 15, (5.5, 674, 188))],
)
def test_an_old_size_has_its_remembered_dimensions(width_mm, code, expected):
    assert old_series.row(width_mm, code)[:3] == expected


@pytest.mark.parametrize("row", catalogue.table("old-series").rows)
def test_the_aspect_ratio_behind_an_old_size_lies_between_78_and_83_per_cent(row):
    """A folk rule says 82; the rows run from 79 to 83 when rounded: none strays, and no single ratio serves."""
    width_mm, _, code, _, overall_mm, *_ = row
    assert 78.5 <= 100 * (overall_mm - rim_diameter.nominal_mm(code)) / 2 / width_mm <= 83.0


@pytest.mark.parametrize(
    ("width_mm", "code", "expected"),
    [(145, 10, (4, 492, 147)), (125, 15, (3.5, 588, 127)), (205, 16, (6, 736, 208)), (235, 15, (6.5, 752, 238))],
)
def test_the_later_rows_of_old_sizes_are_the_remembered_ones(width_mm, code, expected):
    assert old_series.row(width_mm, code)[:3] == expected


@pytest.mark.parametrize(
    ("width_in", "code", "expected"),
    [(5.2, 10, (3.5, 508, 132)), (6.4, 13, (4.5, 642, 163)), (5.6, 15, (4, 650, 145)), (8.2, 15, (6, 760, 213))],
)
def test_a_size_in_inches_has_its_remembered_dimensions(width_in, code, expected):
    assert old_series.numeric_row(width_in, code)[:3] == expected


@pytest.mark.parametrize("row", catalogue.table("numeric-series").rows)
def test_a_size_in_inches_is_as_high_as_wide_or_a_little_less(row):
    """Cross-ply sizes of those years have ratios of 80 ("super-low section") to 98 per cent: from memory."""
    _, _, code, _, overall_mm, width_mm, *_ = row
    assert 78 <= 100 * (overall_mm - rim_diameter.nominal_mm(code)) / 2 / width_mm <= 100


@pytest.mark.parametrize("name", ["old-series", "numeric-series", "flotation"])
def test_every_remembered_row_says_so_and_how_surely(name):
    assert set(catalogue.column(name, "status")) == {"memory"}
    assert set(catalogue.column(name, "confidence")) <= {"high", "medium"}


@pytest.mark.parametrize(("size", "mm"), [((31, 10.5, 15), 775), ((35, 12.5, 17), 877)])
def test_a_flotation_size_is_lower_than_its_name(size, mm):
    """From memory; the estimate for other sizes must meet both within a millimetre."""
    assert flotation.from_table(*size) == mm
    assert abs(flotation.estimate_mm(size[0]) - mm) <= 1.0
