"""Tyre designations, one writing at a time: what is read, what is refused and where.

The forms are those of ISO 4000-1, UN R30, UN R54 and the TRA sizes; which letters may stand where is common practice,
no source, except where tests/reference/test_designation_examples.py prints one.
"""

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.tyre import ServiceDescription, parse_tyre

CANONICAL = [
    ("205/55 R16 91V", "205/55 R16 91V"),
    ("205/55R16 91V", "205/55 R16 91V"),
    ("205/55r1691v", "205/55 R16 91V"),
    ("  205 / 55  R  16   91 V  ", "205/55 R16 91V"),
    ("205/55\u00a0R\u200916\u202f91V\n", "205/55 R16 91V"),
    ("205/55ZR16", "205/55 ZR16"),
    ("245/40 RF 18 93Y", "245/40 RF18 93Y"),
    ("245/40 ZRF 18 97Y", "245/40 ZRF18 97Y"),
    ("205/70D15 95S", "205/70 D15 95S"),
    ("205/70-15 95S", "205/70 D15 95S"),
    ("205/70 \u2013 15 95S", "205/70 D15 95S"),
    ("205/70B15 95S", "205/70 B15 95S"),
    ("P215/65R15 95H", "P215/65 R15 95H"),
    ("p 215/65 r 15 95h", "P215/65 R15 95H"),
    ("LT235/85R16 120/116R E", "LT235/85 R16 120/116R E"),
    ("LT235/85R16 120/116R Load Range E", "LT235/85 R16 120/116R E"),
    ("LT235/85R16 120/116R LR E", "LT235/85 R16 120/116R E"),
    ("LT285/70R17/E 121/118S", "LT285/70 R17 121/118S E"),
    ("LT235/85R16 E", "LT235/85 R16 E"),
    ("225/70R15C 112/110R", "225/70 R15C 112/110R"),
    ("225/70r15c112/110r(115n)", "225/70 R15C 112/110R (115N)"),
    ("225/70 R 15 C 112 / 110 R ( 115 N )", "225/70 R15C 112/110R (115N)"),
    ("215/75R16CP 116Q", "215/75 R16CP 116Q"),
    ("T145/80D18 103M", "T145/80 D18 103M"),
    ("T125/80 R16 97M", "T125/80 R16 97M"),
    ("HL245/40R20 99W", "HL245/40 R20 99W"),
    ("245/40R20 99W HL", "HL245/40 R20 99W"),
    ("185R14C 102/100Q", "185 R14C 102/100Q"),
    ("155R13", "155 R13"),
    ("165 R 15 86S", "165 R15 86S"),
    ("31x10.50R15LT 109Q", "31x10.50 R15LT 109Q"),
    ("31X10,50 R 15 LT", "31x10.50 R15LT"),
    ("31\u00d710.5R15LT 109Q C", "31x10.50 R15LT 109Q C"),
    ("33x12.50R20 114Q", "33x12.50 R20 114Q"),
    ("225/75R17.5 129/127M", "225/75 R17.5 129/127M"),
    ("285/70 R19,5 146/144L", "285/70 R19.5 146/144L"),
    ("295/80R22.5 152/148M LR H", "295/80 R22.5 152/148M LR H"),
    ("265/30ZR20 (94Y)", "265/30 ZR20 (94Y)"),
    ("265/30ZR20 94(Y)", "265/30 ZR20 (94Y)"),
    ("245/40 ZR18 (97Y) 3pmsf m&s extra load", "245/40 ZR18 (97Y) XL M+S 3PMSF"),
    ("205/55R16 XL 94V", "205/55 R16 94V XL"),
    ("205/55R16 94VXL", "205/55 R16 94V XL"),
    ("205/55R16 94V REINFORCED", "205/55 R16 94V XL"),
    ("205/55R16 94V Reinf.", "205/55 R16 94V XL"),
    ("205/55R16 94V RF", "205/55 R16 94V XL"),
    ("205/55R16 91V SL", "205/55 R16 91V"),
    ("P235/60R17 95S LL", "P235/60 R17 95S LL"),
    ("185R14C 8PR 102/100Q", "185 R14C 102/100Q 8PR"),
    ("205R16C 110/108S MPT POR", "205 R16C 110/108S POR MPT"),
    ("205/55 16 91V", "205/55 R16 91V"),
    ("285/75R22.5 279A8", "285/75 R22.5 279A8"),
    # Whole inches stand without decimals from 7 on only: of 6 R17.5 nobody reads the size.
    ("6.00R17.5", "6.00 R17.5"),
    ("7.00R17.5", "7 R17.5"),
]


@pytest.mark.parametrize(("text", "canonical"), CANONICAL)
def test_each_writing_has_one_canonical_spelling(text, canonical):
    assert parse_tyre(text).canonical == canonical


REFUSED = [
    ("", 0, "tyre size"),
    ("tyre", 0, "tyre size"),
    ("55/55R16", 0, "section width from 60 to 500"),
    ("505/55R16", 0, "section width"),
    ("0205/55R16", 0, "tyre size"),
    ("205.5/55R16", 0, "section width"),
    ("205/14R16", 4, "aspect ratio from 15 to 100"),
    ("205/101R16", 4, "aspect ratio"),
    ("205/R16", 4, "aspect ratio"),
    ("P215R15", 4, "slash and the aspect ratio"),
    ("205/55", 6, "construction"),
    ("205/55/16", 6, "construction"),
    ("205/55X16", 6, "construction"),
    ("205/55R7", 7, "rim diameter code from 8 to 30"),
    ("205/55R31", 7, "rim diameter code"),
    ("205-55R16", 3, "slash"),
    ("205/55R25", 7, "not 25"),
    ("T125/80 16", 7, "construction"),
    ("155 16", 4, "slash and the aspect ratio"),
    ("205/55R16.3 91V", 9, "after the rim code"),
    ("205/55R165V", 9, "after the rim code"),
    ("205/55R16XL", 9, "after the rim code"),
    ("205/55R16 280V", 10, "load index from 0 to 279"),
    ("205/55R16 091V", 10, "load index"),
    ("205/55R16 91/V", 13, "load index"),
    ("205/55R16 91", 12, "speed symbol"),
    ("205/55R16 91I", 12, "speed symbol"),
    ("205/55R16 91O", 12, "speed symbol"),
    ("205/55R16 91X", 12, "speed symbol"),
    ("205/55R16 91Z", 12, "speed symbol"),
    ("205/55R16 91A9", 12, "speed symbol"),
    ("95/90-18 51", 11, "speed symbol"),
    ("195/65R15 91T/H", 13, "not a choice of two"),
    ("195/65R15 91T / H", 13, "not a choice of two"),
    ("205/55R16 91V 94V", 14, "known marking"),
    ("205/55R16 91V XL 94V", 17, "known marking"),
    ("205/55R16 91V M/C", 0, "a tyre of a car"),
    ("205/55R16 91V C/C", 15, "a blank"),
    ("205/55R16 91V Meadow/2", 20, "a blank"),
    ("205/55R16 91V \u20ac80", 14, "known marking"),
    ("205/55R16 91VX", 13, "a blank"),
    ("205/55R16 Meadow 4", 18, "speed symbol"),
    ("205/55R16 (92W)", 13, "Y and one load index"),
    ("205/55R16 (92/90Y)", 16, "Y and one load index"),
    ("205/55R16 (92Y", 14, "closing bracket"),
    ("205/55R16 (92Y) (95Y)", 16, "known marking"),
    ("225/70R15C 112/110R (115N) (112Q)", 27, "known marking"),
    ("LT235/85R16C 120/116R", 11, "after the rim code"),
    ("20x10R15", 0, "a tyre of a car"),
    ("55x10.50R15", 0, "overall diameter from 24 to 54"),
    ("31x3.5R15", 3, "section width from 4 to 20 inches"),
    ("31x", 3, "section width from 4 to 20 inches"),
    ("24x10.50R21", 9, "at most 20"),
    ("31x10R15", 3, "its decimals"),
    ("6.50-7", 5, "rim diameter code"),
    ("17.5-16", 0, "from 4 to 17 inches"),
    ("12R20", 0, "as printed"),
    ("P31x10.50R15", 1, "section width from 60"),
]


@pytest.mark.parametrize(("text", "position", "expected"), REFUSED)
def test_what_cannot_be_read_is_refused_at_its_place(text, position, expected):
    with pytest.raises(UnreadableDesignation) as caught:
        parse_tyre(text)
    assert (caught.value.kind, caught.value.position) == ("tyre", position)
    assert expected in caught.value.expected


def test_the_position_counts_in_the_text_as_given():
    with pytest.raises(UnreadableDesignation) as caught:
        parse_tyre("\u2003205\u00a0/ 55R16 91V \ufb01")
    assert caught.value.position == len("?205?/ 55R16 91V ")


def test_a_text_over_the_limit_is_refused_at_the_limit():
    with pytest.raises(UnreadableDesignation) as caught:
        parse_tyre(f"{'205/55 R16 91V':101}")
    assert (caught.value.position, caught.value.expected) == (100, "no more than 100 characters")


def test_a_text_at_the_limit_is_read():
    assert parse_tyre(f"{'205/55 R16 91V':100}").canonical == "205/55 R16 91V"


SYSTEMS = [
    ("205/55R16 91V", "iso_metric", ""),
    ("HL245/40R20 99W", "iso_metric", ""),
    ("P215/65R15 95H", "p_metric", ""),
    ("LT235/85R16 120/116R", "lt_metric", "LT"),
    ("225/70R15C 112/110R", "commercial", "C"),
    ("185R14C 102/100Q", "commercial", "C"),
    ("215/75R16CP 116Q", "commercial", "CP"),
    ("T125/80D16 97M", "temporary_spare", ""),
    ("31x10.50R15LT 109Q", "flotation", "LT"),
    ("31x10.50R15", "flotation", ""),
    ("155R13", "old_series", ""),
]


@pytest.mark.parametrize(("text", "system", "commercial"), SYSTEMS)
def test_letters_around_the_size_tell_the_system(text, system, commercial):
    tyre = parse_tyre(text)
    assert (tyre.system, tyre.commercial) == (system, commercial)


def test_numbers_of_a_metric_size_are_what_is_printed():
    tyre = parse_tyre("285/70R19.5 146/144L")
    assert (tyre.section_width_mm, tyre.aspect_ratio, tyre.rim_code) == (285.0, 70.0, 19.5)


@pytest.mark.parametrize(("text", "width_mm"), [("31x10.50R15LT", 266.7), ("7.00 R16", 177.8)])
def test_a_width_in_inches_is_given_in_millimetres(text, width_mm):
    # 1 inch = 25.4 mm exactly (international yard and pound agreement of 1959).
    assert parse_tyre(text).section_width_mm == pytest.approx(width_mm, abs=1e-9)


def test_a_flotation_size_keeps_its_overall_diameter_and_has_no_ratio():
    tyre = parse_tyre("31x10.50R15LT")
    assert (tyre.overall_diameter_in, tyre.aspect_ratio, tyre.rim_code) == (31.0, None, 15.0)


def test_twin_index_and_symbol_are_told_apart():
    tyre = parse_tyre("225/70R15C 112/110R (115N)")
    assert (tyre.load_index, tyre.load_index_twin, tyre.speed_symbol) == (112, 110, "R")


def test_the_service_description_in_brackets_behind_another_is_additional():
    tyre = parse_tyre("225/70R15C 112/110R (115N)")
    assert (tyre.additional, tyre.bracketed) == (ServiceDescription(115, None, "N"), False)


def test_the_service_description_alone_in_brackets_is_the_tyres_own():
    tyre = parse_tyre("265/30ZR20 (94Y)")
    assert (tyre.load_index, tyre.speed_symbol, tyre.bracketed, tyre.additional) == (94, "Y", True, None)


@pytest.mark.parametrize(
    ("letters", "construction", "z_rated", "run_flat"),
    [
        ("R", "radial", False, False),
        ("ZR", "radial", True, False),
        ("RF", "radial", False, True),
        ("ZRF", "radial", True, True),
        ("D", "diagonal", False, False),
        ("-", "diagonal", False, False),
        ("\u2212", "diagonal", False, False),
        ("B", "bias_belted", False, False),
    ],
)
def test_letters_before_the_rim_code_tell_the_construction(letters, construction, z_rated, run_flat):
    tyre = parse_tyre(f"205/55{letters}16")
    assert (tyre.construction, tyre.z_rated, tyre.run_flat) == (construction, z_rated, run_flat)


def test_rf_before_the_rim_code_is_not_extra_load():
    assert parse_tyre("245/40RF18 93Y").load_version == "standard"


def test_rf_behind_the_service_description_is_not_run_flat():
    tyre = parse_tyre("195/70R15 97S RF")
    assert (tyre.run_flat, tyre.load_version) == (False, "extra_load")


@pytest.mark.parametrize(
    ("text", "version"),
    [
        ("205/55R16 91V", "standard"),
        ("205/55R16 94V XL", "extra_load"),
        ("P235/60R17 95S Light Load", "light_load"),
        ("HL245/40R20 99W", "high_load"),
    ],
)
def test_the_load_version_follows_its_mark(text, version):
    assert parse_tyre(text).load_version == version


@pytest.mark.parametrize("mark", ["M+S", "M&S", "M/S", "MS", "M.S", "M.S.", "m-s", "M + S"])
def test_mud_and_snow_has_one_spelling(mark):
    assert parse_tyre(f"205/55R16 91H {mark}").markings == ("M+S",)


def test_markings_stand_in_canonical_order_once_each():
    assert parse_tyre("205/55R16 91H 3PMSF XL M+S 3PMSF").markings == ("M+S", "3PMSF")


ASSUMED = [
    ("205/55R16 XL", "No service description: load index and speed symbol are not known."),
    ("205/55R16 91V", "No load version is marked"),
    ("155R13 78T XL", "No aspect ratio is printed"),
    ("205/70-15 95S XL", "The dash"),
    ("205/70 15 95S XL", "No construction"),
    ("185/70 HR14 XL", "No load index"),
    ("175/70SR13 82T XL", "differ"),
    ("205/55R16 91V SL Meadow", "Not read: Meadow."),
    ("225/70R15C 112/110R 115N", "second service description"),
    ("195/70R15 104/102R C", "C behind"),
    ("265/70R16 121/118S LT", "LT behind"),
    ("195/70R15 97S RF", "Reinforced"),
    ("245/40R20 99W HL", "HL at the end"),
]


@pytest.mark.parametrize(("text", "sentence"), ASSUMED)
def test_what_was_assumed_is_said(text, sentence):
    assumed = parse_tyre(text).assumed
    assert len(assumed) == 1
    assert sentence in assumed[0]


@pytest.mark.parametrize("text", ["205/55R16 91V SL", "225/70R15C 112/110R", "LT235/85R16 120/116R E"])
def test_a_complete_designation_leaves_nothing_to_assume(text):
    assert parse_tyre(text).assumed == ()


def test_designations_that_differ_in_assumptions_alone_are_not_equal():
    plain, marked = parse_tyre("195/70R15 97S XL"), parse_tyre("195/70R15 97S RF")
    assert plain.canonical == marked.canonical
    assert plain != marked
