"""Laws of the readers.

The published patterns admit what is read and nothing else, the canonical spelling is stable, ways of writing do not
matter, and a text that cannot be read raises one error and no other.
"""

import re
from dataclasses import replace

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from service.core.errors import UnreadableDesignation
from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN, parse_bolt_circle
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.text import MAX_LENGTH
from service.designation.tyre import TYRE_PATTERN, parse_tyre
from tests.support.designations import PRINTED, slips

READERS = [
    pytest.param(TYRE_PATTERN, parse_tyre, id="tyre"),
    pytest.param(RIM_PATTERN, parse_rim, id="rim"),
    pytest.param(BOLT_CIRCLE_PATTERN, parse_bolt_circle, id="bolt circle"),
]
BOUNDS_OF_INDEX = (0, 279)

BLANKS = st.text(" \u00a0\u2009\u202f\t", max_size=2)
GAPS = st.text(" \u00a0\u2009\u202f\t", min_size=1, max_size=2)
INDEX = st.integers(*BOUNDS_OF_INDEX).map(str)
SYMBOL = st.sampled_from([*(f"A{number}" for number in range(1, 9)), *"BCDEFGJKLMNPQRSTUHVWY"])
MARKS = st.lists(st.sampled_from(["M+S", "3PMSF", "POR", "XL", "8PR"]), max_size=4, unique=True)


def admitted(pattern):
    """Texts that a pattern admits, no longer than a reader takes."""
    return st.from_regex(pattern, fullmatch=True).filter(lambda text: len(text) <= MAX_LENGTH)


def parts(found):
    """A designation without what depends on its spelling alone."""
    spelling = {"assumed": (), "unread": ()}
    return replace(found, **{name: none for name, none in spelling.items() if hasattr(found, name)})


def is_read(read, text):
    try:
        read(text)
    except UnreadableDesignation:
        return False
    return True


@st.composite
def tyre_words(draw):
    """A metric tyre as the words between which blanks may stand: (word, whether a blank must follow)."""
    width, ratio = draw(st.integers(60, 500).filter(lambda width: width % 10)), draw(st.integers(15, 100))
    rim_code = draw(st.sampled_from([f"{code / 2:g}" for code in range(16, 61) if code not in (50, 51)]))
    construction = draw(st.sampled_from(["R", "ZR", "RF", "ZRF", "D", "-", "B"]))
    words = [draw(st.sampled_from(["", "P"])), str(width), "/", str(ratio), construction, rim_code]
    suffix = draw(st.sampled_from(["", "C", "CP"])) if not words[0] else ""
    service = [draw(INDEX), *draw(st.sampled_from([[], ["/", draw(INDEX)]])), draw(SYMBOL)]
    marks = draw(MARKS)
    tight = [*words, suffix] if suffix else words
    return [
        *((word, False) for word in tight[:-1]),
        (tight[-1], True),
        *((word, False) for word in service[:-1]),
        (service[-1], True),
        *((mark, True) for mark in marks),
    ]


def _spell_plainly(words):
    return "".join(word + (" " if gap else "") for word, gap in words)


@pytest.fixture(scope="module", params=[each.values for each in READERS], ids=[each.id for each in READERS])
def texts_admitted(request):
    """Texts that a pattern admits, what they are read as, and the pattern; made once, since making them is slow."""
    pattern, read = request.param
    texts = []

    @settings(phases=[Phase.generate])
    @given(admitted(pattern))
    def make(text):
        texts.append(text)

    make()
    return sorted(set(texts)), read, re.compile(pattern)


def test_whatever_the_pattern_admits_is_read(texts_admitted):
    texts, read, _ = texts_admitted
    assert len(texts) > settings.default.max_examples // 2
    assert [text for text in texts if not is_read(read, text)] == []


@pytest.mark.parametrize(("pattern", "read", "kind"), [(*each.values, each.id) for each in READERS])
def test_whatever_is_read_is_admitted_by_the_pattern(pattern, read, kind):
    """Designations as printed, with slips of the pen: about a quarter are still read."""
    compiled = re.compile(pattern)

    @settings(max_examples=3 * settings.default.max_examples)
    @given(slips(PRINTED[kind]))
    def check(text):
        assert is_read(read, text) == (len(text) <= MAX_LENGTH and compiled.fullmatch(text) is not None)

    check()


def test_reading_the_canonical_spelling_changes_nothing(texts_admitted):
    texts, read, _ = texts_admitted
    found = {text: read(text) for text in texts}
    again = {text: read(each.canonical) for text, each in found.items()}
    assert [text for text in texts if parts(again[text]) != parts(found[text])] == []
    assert [text for text in texts if again[text].canonical != found[text].canonical] == []


def test_the_pattern_admits_the_canonical_spelling(texts_admitted):
    texts, read, pattern = texts_admitted
    assert [text for text in texts if not pattern.fullmatch(read(text).canonical)] == []


@given(tyre_words(), st.data())
def test_blanks_case_and_signs_do_not_matter(words, data):
    plain = _spell_plainly(words)
    pieces = []
    for word, gap in words:
        cased = data.draw(st.sampled_from([word, word.lower()]))
        pieces.append(cased.replace("-", data.draw(st.sampled_from("-\u2010\u2013\u2212"))).replace(".", ","))
        pieces.append(data.draw(GAPS if gap else BLANKS))
    assert parse_tyre("".join(pieces)) == parse_tyre(plain)


@given(st.permutations(["XL", "M+S", "3PMSF", "97Y", "POR"]))
def test_the_order_behind_the_size_does_not_matter(words):
    assert parse_tyre("245/40 ZR18 " + " ".join(words)).canonical == "245/40 ZR18 97Y XL M+S 3PMSF POR"


@pytest.mark.parametrize(("pattern", "read"), READERS)
def test_any_text_is_read_or_refused_at_a_place_within_it(pattern, read):
    alphabets = st.one_of(
        st.text(max_size=2 * MAX_LENGTH),
        st.text(st.characters(), max_size=20),
        st.text("0123456789/.,-xXRZFJHETMSPLC+() \u00bd\u00d7\u2013\x00\ud800", max_size=MAX_LENGTH),
    )

    @settings(max_examples=2 * settings.default.max_examples)
    @given(st.one_of(alphabets, st.tuples(st.from_regex(pattern, fullmatch=True), alphabets).map("".join)))
    def check(text):
        try:
            found = read(text)
        except UnreadableDesignation as raised:
            refusal = raised
        else:
            assert parts(read(found.canonical)) == parts(found)
            return
        assert 0 <= refusal.position <= min(len(text), MAX_LENGTH)
        assert refusal.expected

    check()


@given(st.integers(0, 999).filter(lambda number: not 60 <= number <= 500))
def test_a_width_out_of_bounds_is_refused(width):
    with pytest.raises(UnreadableDesignation):
        parse_tyre(f"{width}/55R16 91V")


@given(st.integers(0, 80).map(lambda halves: halves / 2).filter(lambda code: not 8 <= code <= 30))
def test_a_rim_code_out_of_bounds_is_refused_by_pattern_and_reader(code):
    text = f"205/55 R{code:g} 91V"
    assert not re.fullmatch(TYRE_PATTERN, text)
    with pytest.raises(UnreadableDesignation):
        parse_tyre(text)


WIDTHS = st.sampled_from([quarter / 4 for quarter in range(12, 65)])
DIAMETERS = st.sampled_from([half / 2 for half in range(16, 61)])


@given(st.tuples(WIDTHS, DIAMETERS).filter(lambda pair: pair[0] < pair[1] // 1))
def test_a_rim_without_letter_reads_the_same_in_both_orders(pair):
    width, diameter = pair
    assert parse_rim(f"{width:g} x {diameter:g}") == parse_rim(f"{diameter:g} x {width:g}")


@given(DIAMETERS)
def test_two_equal_numbers_without_a_letter_are_refused(number):
    with pytest.raises(UnreadableDesignation):
        parse_rim(f"{number:g} x {number:g}")
