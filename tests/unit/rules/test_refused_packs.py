"""A pack with a fault is refused with file, line, rule and reason.

Each case takes a sound pack, breaks one line, and says which line and what reason the refusal must name.
"""

import re

import pytest

from service.rules.reader import PackError, load_packs
from tests.unit.rules.sound_pack import SOUND, TRACK, WIDTH, line, refusal, replace_after, write


def test_the_sound_pack_is_accepted(tmp_path):
    assert "zz" in load_packs(write(tmp_path, SOUND))


@pytest.mark.parametrize("key", ["code", "title", "message", "quantity", "comparison", "value", "unit", "article"])
def test_a_rule_without_a_key_it_needs_is_refused_at_its_header(tmp_path, key):
    found = re.compile(rf"^{key} = .*\n", re.MULTILINE).search(SOUND, SOUND.index("[[rules]]"))
    fault = refusal(tmp_path, SOUND[: found.start()] + SOUND[found.end() :])
    assert (fault.line, fault.reason) == (line("[[rules]]"), f"{key} is missing")


@pytest.mark.parametrize("key", ["source", "status", "checked"])
def test_a_rule_whose_origin_is_incomplete_is_refused_by_its_code(tmp_path, key):
    found = re.compile(rf"^{key} = .*\n", re.MULTILINE).search(SOUND, TRACK)
    fault = refusal(tmp_path, SOUND[: found.start()] + SOUND[found.end() :])
    assert (fault.rule, fault.reason.split(":")[0]) == ("law.track_change", f"{key} is missing")


@pytest.mark.parametrize("key", ["value", "unit", "article", "source", "status"])
def test_a_limit_without_a_key_it_needs_is_refused_at_its_header(tmp_path, key):
    header = "[limits.overall_diameter_met_percent]"
    found = re.compile(rf"^{key} = .*\n", re.MULTILINE).search(SOUND, SOUND.index(header))
    fault = refusal(tmp_path, SOUND[: found.start()] + SOUND[found.end() :])
    assert (fault.rule, fault.line, fault.reason) == (header, line(header), f"{key} is missing")


@pytest.mark.parametrize(
    ("start", "old", "new", "rule", "reason"),
    [
        (0, 'id = "zz"', 'id = "yy"', "top of the file", "is not the file's name"),
        (0, 'edition = "2026-11"', 'edition = "November"', "top of the file", "edition must be a year and month"),
        (0, 'inherits = ["unece"]', 'inherits = ["mars"]', "top of the file", "inherits the unknown pack 'mars'"),
        (0, 'inherits = ["unece"]', 'inherits = ["zz"]', "top of the file", "inherits in a circle: zz -> zz"),
        (0, "notes = []", "remarks = []", "top of the file", "unknown field 'remarks'"),
        (0, "notes = []", 'drops = ["law.none"]', "top of the file", "drops 'law.none', which no inherited pack has"),
        (0, "value = 1.0", "value = nan", "[limits.overall_diameter_met_percent]", "value must be a finite number"),
        (0, 'unit = "%"', 'unit = "mm"', "[limits.overall_diameter_met_percent]", "unknown unit 'mm'; known: %"),
        (0, "label_required = true", 'label_required = "yes"', "[winter]", "label_required must be true or false"),
        (0, "label_required = true", 'label_required = true\ntitle = "Snow"', "[winter]", "unknown field 'title'"),
        (0, 'marking = "3PMSF"', 'marking = "snow"', "[winter.markings]", "unknown marking 'snow'"),
        (0, 'kind = "band"', 'kind = "guess"', "Speedometer of Nowhere", "unknown kind 'guess'"),
        (0, "most_gain = 1.0", "most_gain = 0.5", "Speedometer of Nowhere", "must not lie below least_gain"),
        (TRACK, "track_change_mm", "length_mm", "law.track_change", "unknown quantity 'length_mm'"),
        (TRACK, 'comparison = "at_most"', 'comparison = "below"', "law.track_change", "unknown comparison 'below'"),
        # What is long is cut, so that a slip of quotes does not fill the screen.
        (TRACK, '"at_most"', f'"{"x" * 61}"', "law.track_change", f"unknown comparison '{'x' * 60}'; known"),
        (TRACK, "value = 20", 'value = "20"', "law.track_change", "value must be a finite number"),
        (TRACK, "value = 20", "value = true", "law.track_change", "value must be a finite number"),
        (TRACK, 'unit = "mm"', 'unit = "in"', "law.track_change", "unknown unit 'in'; known: mm"),
        (TRACK, 'source = "NL-RV"', 'source = "NL-RW"', "law.track_change", "unknown source 'NL-RW'; nearest known"),
        (TRACK, 'status = "read"', 'status = "sure"', "law.track_change", "unknown status 'sure'"),
        (TRACK, 'status = "read"', 'status = "own"', "law.track_change", "is read, second_hand or memory"),
        (TRACK, "checked = 2026-11-24", 'checked = "yesterday"', "law.track_change", "checked must be a date"),
        (TRACK, 'title = "Track"', 'titel = "Track"', "law.track_change", "title is missing"),
        (WIDTH, 'code = "law.width"', 'code = "width"', "width", "begins with `law.`"),
        (WIDTH, "valid_from = 2020-01-01", "valid_from = 2031-01-01", "law.width", "valid_to 2030-01-01 lies before"),
        (WIDTH, 'categories = ["M1"]', 'categories = ["M9"]', "law.width", "unknown item of categories 'M9'"),
        (WIDTH, 'categories = ["M1"]', "divisor = 1.1", "law.width", "belongs to load_rating_sum_margin_kg alone"),
        (WIDTH, 'categories = ["M1"]', "catagories = []", "law.width", "unknown field 'catagories'; nearest known"),
    ],
)
def test_a_fault_is_refused_naming_rule_and_reason(tmp_path, start, old, new, rule, reason):
    text, _ = replace_after(start, old, new)
    fault = refusal(tmp_path, text)
    assert (fault.rule, reason in fault.reason) == (rule, True), str(fault)


@pytest.mark.parametrize(
    ("start", "old", "new"),
    [
        (0, 'edition = "2026-11"', 'edition = "2026-13"'),
        (0, "value = 1.0", "value = inf"),
        (TRACK, "quantity = ", 'quantity = "x" #'),
        (TRACK, "checked = ", 'checked = "x" #'),
        (WIDTH, "valid_to = 2030", "valid_to = 2010"),
        (WIDTH, "valid_to = 2030-01-01", "valid_to = 2030-13-01"),
    ],
)
def test_a_fault_is_refused_at_the_line_where_it_stands(tmp_path, start, old, new):
    text, where = replace_after(start, old, new)
    assert refusal(tmp_path, text).line == where


def test_the_message_begins_with_file_line_and_rule(tmp_path):
    text, where = replace_after(TRACK, "value = 20", "value = nan")
    assert str(refusal(tmp_path, text)) == f"zz.toml:{where}: law.track_change: value must be a finite number"


def test_a_code_that_repeats_is_refused_at_the_second_rule(tmp_path):
    text, where = replace_after(WIDTH, 'code = "law.width"', 'code = "law.track_change"')
    fault = refusal(tmp_path, text)
    assert (fault.line, fault.reason) == (where, "the code law.track_change repeats")


def test_a_single_alternative_is_refused(tmp_path):
    second = re.compile(r"  \{ quantity = \"section_width_change_percent\".*\n")
    assert "two bounds or more" in refusal(tmp_path, second.sub("", SOUND)).reason


def test_an_unknown_field_in_an_alternative_is_refused_at_the_alternatives(tmp_path):
    text, _ = replace_after(WIDTH, 'value = 20, unit = "mm"', 'value = 20, unit = "mm", or = 1')
    fault = refusal(tmp_path, text)
    assert (fault.rule, fault.line) == ("law.width", line("any_of"))


def test_two_packs_that_inherit_each_other_are_refused(tmp_path):
    write(tmp_path, SOUND.replace('inherits = ["unece"]', 'inherits = ["yy"]'))
    (tmp_path / "yy.toml").write_text(
        SOUND.replace('id = "zz"', 'id = "yy"').replace('"unece"', '"zz"'), encoding="utf-8"
    )
    with pytest.raises(PackError, match="inherits in a circle: yy -> zz -> yy"):
        load_packs(tmp_path)


def test_a_pack_that_inherits_nothing_must_give_every_limit(tmp_path):
    assert "is missing: a pack that inherits nothing" in refusal(tmp_path, SOUND.replace('["unece"]', "[]")).reason


def test_the_one_limit_that_nothing_gives_is_named(tmp_path):
    write(tmp_path, SOUND)
    whole = (tmp_path / "unece.toml").read_text(encoding="utf-8")
    lacking = re.sub(r"\[limits\.load_share_single\]\n(?:.+\n)+", "", whole)
    (tmp_path / "unece.toml").write_text(lacking, encoding="utf-8")
    with pytest.raises(PackError, match=r"\[limits\.load_share_single\] is missing"):
        load_packs(tmp_path)


def test_a_file_that_is_not_toml_is_refused_at_its_line(tmp_path):
    assert refusal(tmp_path, SOUND.replace("value = 20\n", "value = = 20\n")).line == line("value = 20")


def test_a_key_given_twice_is_refused(tmp_path):
    assert "not TOML" in refusal(tmp_path, SOUND.replace("value = 20\n", "value = 20\nvalue = 30\n")).reason


def test_a_file_that_is_not_utf_8_is_refused_at_its_line(tmp_path):
    write(tmp_path, SOUND)
    (tmp_path / "zz.toml").write_bytes(SOUND.replace("Nowhere", "Nöwhere", 1).encode("latin-1"))
    with pytest.raises(PackError, match=r"zz\.toml:2: .*not UTF-8"):
        load_packs(tmp_path)


def test_a_limit_of_a_section_under_limits_is_sent_to_its_section(tmp_path):
    text = SOUND.replace("overall_diameter_met_percent", "load_share_twin_passenger")
    assert refusal(tmp_path, text).reason == "write this limit as [twin.passenger_share]"


def test_an_unknown_limit_is_refused_with_the_known_ones(tmp_path):
    assert "known: overall_diameter_met_percent" in refusal(tmp_path, SOUND.replace("met_percent", "met_mm")).reason


def test_a_directory_without_a_pack_is_refused(tmp_path):
    with pytest.raises(PackError, match="there is no pack") as refused:
        load_packs(tmp_path)
    assert (refused.value.line, refused.value.rule) == (1, "directory")
