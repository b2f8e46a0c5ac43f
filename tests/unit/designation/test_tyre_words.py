"""The words behind a size: which are known, what they change, and that all others are passed on as they stand.

What the words mean is common practice, no source; pattern names and approval marks are invented.
"""

import pytest

from service.designation.tyre import parse_tyre


@pytest.mark.parametrize("word", ["RFT", "ROF", "RUNFLAT", "run flat", "Run-Flat"])
def test_the_trades_words_for_run_flat_tyres_are_read(word):
    tyre = parse_tyre(f"225/45 R17 91W {word}")
    assert (tyre.run_flat, tyre.canonical, tyre.unread) == (True, "225/45 RF17 91W", ())


@pytest.mark.parametrize(
    ("word", "tube"),
    [
        ("TL", "tubeless"),
        ("TUBELESS", "tubeless"),
        ("T/L", "tubeless"),
        ("TT", "tube_type"),
        ("TUBE TYPE", "tube_type"),
    ],
)
def test_tubeless_and_tube_type_are_told_apart(word, tube):
    tyre = parse_tyre(f"6.50-16 6PR {word}")
    assert (tyre.tube, tyre.markings) == (tube, ())


@pytest.mark.parametrize(("text", "ply"), [("8PR", 8), ("8 PR", 8), ("16PR", 16), ("10 ply", 10), ("", None)])
def test_a_ply_rating_is_a_number(text, ply):
    assert parse_tyre(f"185R14C {text} 102/100Q").ply_rating == ply


@pytest.mark.parametrize(
    ("words", "mark"),
    [("EV", "EV"), ("RWL", "RWL"), ("raised white letters", "RWL"), ("outline white letters", "OWL"), ("FP", "FP")],
)
def test_words_that_change_nothing_are_kept_as_markings(words, mark):
    tyre = parse_tyre(f"265/70 R16 112T XL {words}")
    assert (tyre.markings, tyre.assumed) == ((mark,), ())


@pytest.mark.parametrize(
    ("text", "unread"),
    [
        ("205/55 R16 91V XL Meadow", ("Meadow",)),
        ("205/55 R16 91V XL (ZQ)", ("ZQ",)),
        ("205/55 R16 91V XL *", ("*",)),
        ('205/55 R16 91V XL "Quarry Track" 4', ("Quarry", "Track", "4")),
        ("205/55 R16 91V XL A/T Meadow", ("A/T", "Meadow")),
        ("205/55 R16 91V XL Größe", ("Größe",)),
        ("205/55 R16 Meadow 91V XL", ("Meadow",)),
        ("205/55 R16 91V XL - Meadow,", ("Meadow",)),
    ],
)
def test_words_that_are_not_known_come_back_as_written_with_one_line_for_all(text, unread):
    tyre = parse_tyre(text)
    assert (tyre.canonical, tyre.unread, len(tyre.assumed)) == ("205/55 R16 91V XL", unread, 1)
    assert ", ".join(unread) in tyre.assumed[0]


@pytest.mark.parametrize(
    ("text", "unread"),
    [
        ("205/55R16 91V XL SL", "SL"),
        ("HL245/40R20 99W XL", "XL"),
        ("LT235/85R16 120/116R XL", "XL"),
        ("T145/80D18 103M XL", "XL"),
        ("225/70R15C 112/110R HL", "HL"),
        ("LT235/85R16/E 120/116R D", "D"),
        ("235/85R16 120/116R XL LT", "LT"),
        ("205/55R16 94V XL E", "E"),
        ("205/55R16 94V XL C", "C"),
        ("185R14C 102/100Q 8PR 6PR", "6PR"),
        ("205/55R16 94V XL TL TT", "TT"),
        ("205/55R16 94V XL CROSSPLY", "CROSSPLY"),
        ("155/80D13 79S XL RADIAL", "RADIAL"),
        ("155/80D13 79S XL RFT", "RFT"),
    ],
)
def test_a_word_that_contradicts_the_rest_is_not_used_and_said_so(text, unread):
    assert parse_tyre(text).unread == (unread,)


@pytest.mark.parametrize(
    ("text", "construction", "open_question"),
    [
        ("205/55-16 91V", "diagonal", True),
        ("205/55 16 91V", "radial", True),
        ("5.60x15", "diagonal", True),
        ("205/55-16 91V RADIAL", "radial", False),
        ("205/55 16 91V CROSS-PLY", "diagonal", False),
        ("205/55R16 91V RADIAL", "radial", False),
        # Run-flat tyres are built as radials (RF in the size, UN R30), so cross-ply beside it settles nothing.
        ("205/55 16 91V RFT RADIAL", "radial", False),
        ("205/55 16 91V RFT CROSS-PLY", "radial", True),
        ("5.60-15", "diagonal", False),
    ],
)
def test_a_structure_that_is_taken_from_a_sign_is_an_assumption_until_a_word_settles_it(
    text, construction, open_question
):
    tyre = parse_tyre(text)
    assert (tyre.construction, tyre.structure_assumed) == (construction, open_question)


@pytest.mark.parametrize(
    ("text", "letter", "symbol"),
    [
        ("185SR14", "S", "S"),
        ("185/70 HR 14", "H", "H"),
        ("165/70TR13", "T", "T"),
        ("185/70 VR 14", "V", None),
        ("225/50VR16 92W", "V", "W"),
        ("175/70SR13 82T", "S", "T"),
        ("6.40 S 13", "S", None),
        ("185R14 90S", None, "S"),
    ],
)
def test_the_letter_inside_a_radial_size_is_its_speed_symbol_but_for_v(text, letter, symbol):
    # SR 180, HR 210, VR above 210 km/h: from memory of UN R30.
    tyre = parse_tyre(text)
    assert (tyre.speed_letter, tyre.speed_symbol) == (letter, symbol)


def test_vr_without_a_service_description_is_said_to_be_open_upwards():
    assert any("above 210 km/h" in sentence for sentence in parse_tyre("185/70 VR 14").assumed)


@pytest.mark.parametrize(
    ("text", "width_in", "construction", "commercial"),
    [
        ("6.50-16", 6.5, "diagonal", ""),
        ("7.00 R16 C", 7.0, "radial", "C"),
        ("7.50R16LT 112/107N", 7.5, "radial", "LT"),
        ("12R22.5", 12.0, "radial", ""),
        ("31x10.50R15LT", 10.5, "radial", "LT"),
        ("205/55R16", None, "radial", ""),
    ],
)
def test_sizes_in_inches_keep_their_width_in_inches(text, width_in, construction, commercial):
    tyre = parse_tyre(text)
    assert (tyre.section_width_in, tyre.construction, tyre.commercial) == (width_in, construction, commercial)
