"""No text of a table begins a formula, whatever a reader parts cells by, and ordinary texts stay as they are.

Which signs begin a formula is common practice, no source; their wide and small forms are those that Unicode's NFKC
turns into them (Unicode Standard Annex 15, from Python's own tables). The readers are Python's: the five separators
that import dialogues of spreadsheets offer and the colon, with and without quotation marks and leading blanks.
"""

import csv
import io
import re
import sys
import unicodedata

import pytest

from service.api.render.csv_cells import safe, written

SIGNS = [chr(code) for code in range(sys.maxunicode + 1) if unicodedata.normalize("NFKC", chr(code)) in "=+-@"]
SIGNS = [each for each in SIGNS if unicodedata.normalize("NFKC", each)]
LEADS = (
    *(
        "",
        " ",
        "   ",
        "\N{NO-BREAK SPACE}",
        "\N{IDEOGRAPHIC SPACE}",
        "\N{ZERO WIDTH SPACE}",
        "\N{ZERO WIDTH NO-BREAK SPACE}",
    ),
    *('"', '" ', ' "', '""', "\t", "\r\n", "\n "),
    *(
        "a;",
        "a; ",
        'a;"',
        'a";"',
        "a\t",
        "a\n",
        "a\r",
        "a\v",
        "a\N{LINE SEPARATOR}",
        "a|",
        "a| ",
        "a,",
        'a, "',
        "a ",
        "a:",
    ),
    *(";", ";;", "1;2;", "a ;\N{IDEOGRAPHIC SPACE}", "-1;", "+5 "),
)
TAILS = ("1+1", "cmd|' /C calc'!A0", "SUM(A1:A9)", " 1+1")
NUMBER = re.compile(r"[+-]?[\d.,]+%?")


def readings(table):
    """Yield every cell of every reading of a table."""
    for separator in ",;\t| :":
        for quoting in (csv.QUOTE_MINIMAL, csv.QUOTE_NONE):
            for skips in (False, True):
                rows = csv.reader(
                    io.StringIO(table, newline=""), delimiter=separator, quoting=quoting, skipinitialspace=skips
                )
                yield from (cell for row in rows for cell in row)
        yield from (cell for line in table.splitlines() for cell in line.split(separator))


def begins_a_formula(cell):
    shown = cell
    while shown != (shown := shown.strip().strip('"\xad\u200b\u200e\u200f\u2060\ufeff')):
        pass
    plain = unicodedata.normalize("NFKC", shown)
    # A sign that stands alone or before digits alone is a sign or a number.
    return plain[:1] in tuple("=+-@") and len(plain) > 1 and not NUMBER.fullmatch(plain)


def test_the_signs_are_those_of_unicode():
    assert {"=", "+", "-", "@", "＝", "＋", "－", "＠"} < set(SIGNS)


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("lead", LEADS)
def test_no_text_begins_a_formula_in_any_reading(lead, sign):
    # A blank between sign and rest parts them where blanks part cells; after such a lead it is no formula elsewhere.
    tails = TAILS[:3] if lead.endswith((":", "+5 ", "a ")) else TAILS
    table = written(("rank", "label", "reason"), [{"rank": 1, "label": f"{lead}{sign}{tail}"} for tail in tails])
    assert [cell for cell in readings(table) if begins_a_formula(cell)] == []


def test_the_reading_finds_what_is_not_guarded():
    table = 'rank,label\r\n1,"a;=1+1"\r\n'
    assert any(map(begins_a_formula, readings(table)))


@pytest.mark.parametrize(
    "text",
    [
        "one step wider",
        "summer - dry",
        "A + B, 18 in; spare",
        "ET 46 to 50: fits",
        "peak grip +1.8 % (between +0.9 and +3.1); balance +0.17",
        "dry grip −4.4 %",
        "a@b.example",
        "",
    ],
)
def test_an_ordinary_text_stays_as_it_is(text):
    assert safe(text) == text


@pytest.mark.parametrize("number", [-4.4, 3, True, None])
def test_a_number_stays_a_number(number):
    assert safe(number) is number


def test_what_is_guarded_once_is_not_guarded_again():
    for lead in LEADS:
        once = safe(f"{lead}=1+1")
        assert safe(once) == once


def test_an_apostrophe_is_all_that_is_added():
    for lead in LEADS:
        assert str(safe(f"{lead}＝1+1")).replace("'", "") == f"{lead}＝1+1"
