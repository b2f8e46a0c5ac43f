"""The published patterns: which writings they admit, and that other engines take them too.

The writings are common practice, no source, except where tests/reference/test_designation_examples.py prints one.
"""

import re
from typing import Annotated

import pytest
from pydantic import StringConstraints, TypeAdapter, ValidationError

from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN
from service.designation.rim import RIM_PATTERN
from service.designation.tyre import TYRE_PATTERN

PATTERNS = [TYRE_PATTERN, RIM_PATTERN, BOLT_CIRCLE_PATTERN]

ADMITTED = [
    (TYRE_PATTERN, "205/55 R16 91V"),
    (TYRE_PATTERN, "205/55r16 91v"),
    (TYRE_PATTERN, "205/55ZR16"),
    (TYRE_PATTERN, "245/40 ZRF 18 97Y XL"),
    (TYRE_PATTERN, "205/70\u201315 95S"),
    (TYRE_PATTERN, "P215/65R15 95H"),
    (TYRE_PATTERN, "LT235/85R16 120/116R E"),
    (TYRE_PATTERN, "225/70R15C 112/110R (115N)"),
    (TYRE_PATTERN, "225/70R15C112/110R"),
    (TYRE_PATTERN, "215/75R16CP 116Q"),
    (TYRE_PATTERN, "T125/80 D16 97M"),
    (TYRE_PATTERN, "HL245/40R20 99W"),
    (TYRE_PATTERN, "185R14C 102/100Q"),
    (TYRE_PATTERN, "155R13"),
    (TYRE_PATTERN, "31X10,50 R 15 LT"),
    (TYRE_PATTERN, "31\u00d710.50R15LT 109Q"),
    (TYRE_PATTERN, "295/80R22.5 152/148M LR H"),
    (TYRE_PATTERN, "245/40 ZR18 (97Y) XL M+S 3PMSF"),
    (TYRE_PATTERN, "205/55R16\u00a091H M&S Extra Load"),
    (TYRE_PATTERN, "205/55-16"),
    (TYRE_PATTERN, "6.50-16 6PR"),
    (TYRE_PATTERN, "205/55 R16 91V A/T Gr\u00f6\u00dfe \u2605"),
    (RIM_PATTERN, "8J x 18 ET45"),
    (RIM_PATTERN, "18 x 8 J"),
    (RIM_PATTERN, "8.5Jx19 H2 ET38"),
    (RIM_PATTERN, "6 1/2 J x 16"),
    (RIM_PATTERN, "6\u00bd J \u00d7 16 H2 ET 45"),
    (RIM_PATTERN, "6,5J x 16 EH2+ ET-12"),
    (BOLT_CIRCLE_PATTERN, "5x112"),
    (BOLT_CIRCLE_PATTERN, "5 x 114,3"),
    (BOLT_CIRCLE_PATTERN, "5/112"),
    (BOLT_CIRCLE_PATTERN, "112x5"),
    (BOLT_CIRCLE_PATTERN, '5 x 4.5"'),
]

REFUSED = [
    (TYRE_PATTERN, "205/55R31 91V"),
    (TYRE_PATTERN, "195/65R15 91T/H"),
    (TYRE_PATTERN, "205/55R16 280V"),
    (TYRE_PATTERN, "120/70 R17 58W"),
    (TYRE_PATTERN, "205/55R16 91V M/C"),
    (TYRE_PATTERN, "205/55R16 91V 94V"),
    (TYRE_PATTERN, "\u0662\u0660\u0665/55R16 91V"),
    (RIM_PATTERN, "12 x 12"),
    (RIM_PATTERN, "8x18J"),
    (BOLT_CIRCLE_PATTERN, "5x4.5"),
]


def _read_in_rust(pattern):
    return TypeAdapter(Annotated[str, StringConstraints(pattern=pattern)])


@pytest.mark.parametrize(("pattern", "text"), ADMITTED)
def test_the_pattern_admits_common_writings(pattern, text):
    assert re.fullmatch(pattern, text)


@pytest.mark.parametrize(("pattern", "text"), ADMITTED)
def test_the_engine_without_backtracking_admits_the_same(pattern, text):
    # The Rust engine has neither look-around nor back-references: what it compiles runs in linear time.
    assert _read_in_rust(pattern).validate_python(text) == text


@pytest.mark.parametrize(("pattern", "text"), REFUSED)
def test_the_pattern_refuses_what_the_reader_refuses(pattern, text):
    assert not re.fullmatch(pattern, text)


@pytest.mark.parametrize(("pattern", "text"), REFUSED)
def test_the_engine_without_backtracking_refuses_the_same(pattern, text):
    with pytest.raises(ValidationError):
        _read_in_rust(pattern).validate_python(text)


@pytest.mark.parametrize("pattern", PATTERNS)
def test_the_pattern_is_anchored_and_written_in_ascii(pattern):
    assert pattern.isascii()
    assert (pattern[0], pattern[-1]) == ("^", "$")


@pytest.mark.parametrize("pattern", PATTERNS)
def test_the_pattern_has_no_escape_that_strict_engines_refuse(pattern):
    # With the flags u and v, ECMA-262 knows only escapes of its own signs and, in classes, of the dash.
    assert not re.search(r"\\(?!u[0-9a-f]{4}|[tr.*+?()/\[\]{}|\\-])", pattern)
    assert not re.search(r"\\-", re.sub(r"\[(?:\\.|[^\]\\])*\]", "", pattern))


@pytest.mark.parametrize("pattern", PATTERNS)
def test_the_pattern_spells_out_its_classes(pattern):
    # \d, \w and \s differ between engines: in some of them they take digits and letters of every script.
    assert not re.search(r"\\[dDwWsSbB]|\(\?[^:]", pattern)
