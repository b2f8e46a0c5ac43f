"""Faults in a pack's sections and in what its rules have in common; each case breaks one line of a sound pack."""

import pytest

from service.rules.reader import PACKS_DIRECTORY, PackError, load_packs
from tests.unit.rules.sound_pack import SOUND, TRACK, WIDTH, line, refusal, replace_after

LIMIT = "[limits.overall_diameter_met_percent]"
METER, MARKING, RELIEF = "Speedometer of Nowhere", "[winter.markings]", "relief.buses"
TESTED = """\
test_speed_is = "true"
test_speeds = [
  { above_kmh = 100, speeds_kmh = [40, 80] },
  { above_kmh = 0, speeds_kmh = [40] },
]
test_speeds_article = "art. 3"
test_speeds_source = "NL-RV"
test_speeds_status = "read"
test_speeds_checked = 2026-11-24
"""
ROWS = """\
[[speedometer.test_speeds]]
above_kmh = 100
speeds_kmh = [40, 80]

[[speedometer.test_speeds]]
above_kmh = 0
speeds_kmh = [40]
"""
ALLOWANCE = """
[[allowances]]
code = "relief.buses"
title = "Buses"
kind = "axle_mass_percent"
value = 5
unit = "%"
article = "art. 6"
source = "NL-RV"
status = "read"
checked = 2026-11-24
"""


@pytest.mark.parametrize(
    ("old", "new", "rule", "reason"),
    [
        ("limits.overall", "limit.overall", "top of the file", "unknown field 'limit'; nearest known: 'limits'"),
        ('inherits = ["unece"]', "", "top of the file", "inherits is missing"),
        ('inherits = ["unece"]', "inherits = [1]", "top of the file", "item of inherits must be a text"),
        ("notes = []", 'notes = "none"', "top of the file", "notes must be a list"),
        ('status = "memory"', 'status = "memory"\nchecked = 2026-11-24', LIMIT, "says that no text was read"),
        ('status = "memory"', 'status = "read"', LIMIT, "checked is missing: a read number has a day"),
        ('article = "art. 1"', 'article = "  "', LIMIT, "article must be a text that says something"),
        ('article = "art. 1"', "article = 1", LIMIT, "article must be a text"),
        ('article = "art. 1"', 'article = "art. 1"\nbasis = "law"', LIMIT, "unknown field 'basis'"),
        ("label_required = true", "", "[winter]", "label_required is missing"),
        ('marking = "3PMSF"', 'marking = "3PMSF"\nused_to = "2026"', MARKING, "used_to must be a date"),
        ('unit = "km/h"', 'unit = "mph"', METER, "unknown unit 'mph'; known: km/h"),
        ('unit = "km/h"', "unit = 1", METER, "unknown unit '1'; known: km/h"),
        ('unit = "km/h"', "", METER, "unit is missing"),
        ('kind = "band"', 'kind = "r39"', METER, "unknown field 'least_gain'"),
        ("least_gain = 1.0", "least_gain = 0", METER, "least_gain must lie above 0"),
        ("least_gain = 1.0", "", METER, "least_gain is missing"),
        ("most_gain = 1.0", "", METER, "unknown field 'most_constant_kmh'"),
        ("most_constant_kmh = 5", "", METER, "most_constant_kmh is missing"),
        ('test_speed_is = "true"', "", METER, "test_speed_is is missing"),
        ('test_speed_is = "true"', 'test_speed_is = "true"\ndriven = true', METER, "unknown field 'driven'"),
        ('test_speed_is = "true"', 'test_speed_is = "true"\naxle = "front"', METER, "unknown field 'axle'"),
    ],
)
def test_a_fault_above_the_rules_is_refused_naming_section_and_reason(tmp_path, old, new, rule, reason):
    text, _ = replace_after(0, old, new)
    fault = refusal(tmp_path, text)
    assert (fault.rule, reason in fault.reason) == (rule, True), str(fault)


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ("{ above_kmh = 100", "{ above_kmh = -1", "test_speeds must begin with the fastest"),
        ("speeds_kmh = [40] }", "speeds_kmh = [] }", "test_speeds must have rows, each with a speed"),
        ("speeds_kmh = [40] }", "speeds_kmh = [true] }", "item of speeds_kmh must be a finite number"),
        (
            "speeds_kmh = [40] }",
            "speeds_kmh = [40], share_of_mx = 1 }",
            "unknown field 'share_of_mx'; nearest known: 'share_of_max'",
        ),
        ('test_speeds_source = "NL-RV"\n', "", "test_speeds_source is missing"),
        ("test_speeds_checked = 2026-11-24\n", "", "test_speeds_checked is missing: a read number"),
        (
            'test_speeds_status = "read"\n',
            'test_speeds_status = "read"\ntest_speeds_note = "x"\n',
            "unknown field 'test_speeds_note'",
        ),
    ],
)
def test_a_fault_in_the_test_speeds_is_refused_by_the_title_of_their_rule(tmp_path, old, new, reason):
    assert old in TESTED
    text = SOUND.replace('test_speed_is = "true"\n', TESTED.replace(old, new))
    fault = refusal(tmp_path, text)
    assert (fault.rule, reason in fault.reason) == (METER, True), str(fault)


def test_test_speeds_in_tables_of_their_own_are_refused_at_their_line(tmp_path):
    rows = TESTED[: TESTED.index("test_speeds = ")] + TESTED[TESTED.index("test_speeds_article") :] + ROWS
    text = SOUND.replace('test_speed_is = "true"\n', rows.replace("[40]\n", '["slow"]\n'))
    fault = refusal(tmp_path, text)
    assert (fault.rule, fault.line) == (METER, text.count("\n", 0, text.index('["slow"]')) + 1)


@pytest.mark.parametrize(
    ("start", "old", "new", "rule", "reason"),
    [
        (TRACK, 'title = "Track"', 'title = "Track"\npack = "nl"', "law.track_change", "unknown field 'pack'"),
        (TRACK, 'title = "Track"', 'title = "Track"\nbounds = []', "law.track_change", "unknown field 'bounds'"),
        (TRACK, 'title = "Track"', 'title = "Track"\napplies = 1', "law.track_change", "unknown field 'applies'"),
        (
            TRACK,
            'title = "Track"',
            'title = "Track"\nstand_in = 1',
            "law.track_change",
            "stand_in must be true or false",
        ),
        (WIDTH, 'title = "Width"', 'title = "Width"\nunit = "mm"', "law.width", "unknown field 'unit'"),
        (WIDTH, "value = 20,", "", "law.width", "value is missing"),
        (WIDTH, 'categories = ["M1"]', 'axle = "middle"', "law.width", "unknown axle 'middle'"),
        (WIDTH, 'categories = ["M1"]', 'categories = "M1"', "law.width", "categories must be a list"),
        (WIDTH, 'categories = ["M1"]', "over_mass_kg = 5\nmax_mass_kg = 5", "law.width", "must lie above over_mass_kg"),
        (
            WIDTH,
            'categories = ["M1"]',
            "built_from = 2001-01-01\nbuilt_to = 2000-01-01",
            "law.width",
            "built_to 2000-01-01 lies before built_from 2001-01-01",
        ),
    ],
)
def test_a_fault_of_a_rule_is_refused_by_its_code(tmp_path, start, old, new, rule, reason):
    text, _ = replace_after(start, old, new)
    fault = refusal(tmp_path, text)
    assert (fault.rule, reason in fault.reason) == (rule, True), str(fault)


def test_a_divisor_below_1_is_refused(tmp_path):
    text, _ = replace_after(
        TRACK, 'quantity = "track_change_mm"', 'quantity = "load_rating_sum_margin_kg"\ndivisor = 0.9'
    )
    fault = refusal(tmp_path, text.replace('unit = "mm"', 'unit = "kg"', 1))
    assert "divisor of 1 or more" in fault.reason


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ('kind = "axle_mass_percent"', 'kind = "mass"', "unknown kind 'mass'"),
        ('unit = "%"', 'unit = "km/h"', "unknown unit 'km/h'; known: %"),
        ("value = 5\n", "", "value is missing"),
        ("value = 5\n", "value = 5\nseats_standing = 1\n", "seats_standing must be true or false"),
        ("value = 5\n", 'value = 5\naxle = "front"\n', "unknown field 'axle'"),
    ],
)
def test_a_fault_in_a_relief_is_refused_by_its_code(tmp_path, old, new, reason):
    assert old in ALLOWANCE
    fault = refusal(tmp_path, SOUND + ALLOWANCE.replace(old, new))
    assert (fault.rule, reason in fault.reason) == (RELIEF, True), str(fault)


def test_a_second_marking_is_refused_at_its_own_line(tmp_path):
    again = '[[winter.markings]]\nmarking = "M+S"\narticle = "art. 2"\nsource = "COMMON-PRACTICE"\nstatus = "sure"\n\n'
    text = SOUND.replace("[[speedometer]]", again + "[[speedometer]]")
    assert refusal(tmp_path, text).line == line("[[speedometer]]") + 4


def test_a_section_that_is_no_table_is_refused(tmp_path):
    heading = SOUND[: SOUND.index("[limits")]
    fault = refusal(tmp_path, heading + "winter = 1\n")
    assert (fault.line, fault.reason) == (heading.count("\n") + 1, "winter must be a table")


def test_a_pack_that_leaves_some_vehicles_without_a_speedometer_rule_is_refused(tmp_path):
    text = (PACKS_DIRECTORY / "unece.toml").read_text(encoding="utf-8")
    late = text.replace('test_speed_is = "true"\n', 'test_speed_is = "true"\nvalid_from = 2020-01-01\n')
    (tmp_path / "unece.toml").write_text(late, encoding="utf-8")
    with pytest.raises(PackError, match="must apply to every vehicle at every date"):
        load_packs(tmp_path)


def test_a_pack_without_any_speedometer_rule_is_refused(tmp_path):
    text = (PACKS_DIRECTORY / "unece.toml").read_text(encoding="utf-8")
    start, end = text.index("[[speedometer]]"), text.index("[[rules]]")
    (tmp_path / "unece.toml").write_text(text[:start] + text[end:], encoding="utf-8")
    with pytest.raises(PackError, match="is missing and none is inherited"):
        load_packs(tmp_path)
