"""A plan as text, from an answer written by hand: every column and every word where a reader finds it."""

from __future__ import annotations

from typing import Any

from service.terminal.plan_text import plan_lines

Json = dict[str, Any]


def wheel(rim_origin: str = "given", **more: object) -> Json:
    return {"tyre": "225/40 R18", "rim": "8J x 18", "rim_origin": rim_origin, "pressure_held": False, **more}


def effect(value: float, low: float, high: float) -> Json:
    return {"value": value, "low": low, "high": high}


def plan_of(*combinations: Json, **more: object) -> list[str]:
    told: Json = {
        "pressure_rule_text": "Pressures by the rule.",
        "reference": {"front": wheel("present"), "rear": wheel("present", set_pressure_kpa=230)},
        "rims_to_buy": [],
        "effects": [],
        "measure_first": [],
        "pairs": [],
        "repeats": [],
        "order": {"runs": [], "text": "In any order."},
        "combinations": list(combinations),
    }
    return plan_lines(told | more)


def combination(index: int = 0, **more: object) -> Json:
    made: Json = {"index": index, "label": "", "verdict": "suitable", "front": wheel(), "rear": wheel(), "effects": {}}
    return made | more


def test_wheels_stand_in_two_columns_of_29_between_a_name_of_20_and_a_verdict_of_26():
    lines = plan_of(combination())
    head = next(at for at, line in enumerate(lines) if line.startswith("combination"))
    assert lines[head] == f"{'combination':20}  {'front':29}  {'rear':29}  verdict"
    assert lines[head + 1] == "  ".join("-" * width for width in (20, 29, 29, 26))
    # No line of a terminal's table has more than 110 letters.
    assert len(lines[head + 1]) == 110
    assert (
        lines[head + 2]
        == f"{'present wheels':20}  {'225/40 R18 on 8J x 18':29}  225/40 R18 on 8J x 18; 230     reference"
    )
    assert lines[head + 3] == f"{'':53}kPa"
    assert (
        lines[head + 4] == f"{'combination 1':20}  {'225/40 R18 on 8J x 18':29}  {'225/40 R18 on 8J x 18':29}  It fits"
    )


def test_a_combination_has_its_label_or_its_id_or_its_number_counted_from_one():
    told = "\n".join(plan_of(combination(0, label="wide"), combination(1, id="c-2"), combination(2)))
    assert [name for name in ("wide  ", "c-2  ", "combination 3  ") if f"\n{name}" not in told] == []


def front_of(made: Json) -> str:
    """Return the front cell of the one combination, its lines joined."""
    lines = plan_of(made)
    first = next(at for at, line in enumerate(lines) if line.startswith("combination 1"))
    last = lines.index("", first)
    return " ".join(" ".join(line[22:51] for line in lines[first:last]).split())


def test_a_rim_that_is_to_be_bought_says_so_and_the_others_say_nothing():
    assert front_of(combination(front=wheel("found"))) == "225/40 R18 on 8J x 18 (to buy)"
    assert front_of(combination(front=wheel("present"))) == "225/40 R18 on 8J x 18"
    assert front_of(combination(front=wheel("given"))) == "225/40 R18 on 8J x 18"


def test_a_pressure_that_the_rule_did_not_set_says_so():
    held = wheel(pressure_held=True, set_pressure_kpa=250)
    assert front_of(combination(front=held)) == "225/40 R18 on 8J x 18; 250 kPa, not by the rule"
    assert front_of(combination(front=wheel(set_pressure_kpa=250))) == "225/40 R18 on 8J x 18; 250 kPa"


def test_a_verdict_is_followed_by_its_reason_and_what_settles_it():
    told = " ".join(
        " ".join(plan_of(combination(verdict="unsuitable", reason="It rubs.", first_remedy="ET40"))).split()
    )
    assert "Do not fit: It rubs." in told
    assert "ET40." in told


def test_a_band_is_told_with_its_ends_unless_they_are_one():
    effects = [{"effect": "grip", "text": "grip", "unit": "%"}, {"effect": "none", "text": "noise", "unit": "dB"}]
    first = combination(0, effects={"grip": effect(-2.5, -4, -1)})
    second = combination(1, effects={"grip": effect(3, 3, 3)})
    lines = plan_of(first, second, combination(2), effects=effects)
    row = next(line for line in lines if line.startswith("grip [%]"))
    minus = "\N{MINUS SIGN}"
    assert row == f"{'grip [%]':36}  {f'{minus}2.5 ({minus}4 to {minus}1)':22}  {'3':22}  not known"
    # What is known of no combination is left out.
    assert [line for line in lines if line.startswith("noise")] == []


def test_four_combinations_stand_in_two_tables_of_effects():
    effects = [{"effect": "grip", "text": "grip", "unit": "%"}]
    made = [combination(at, effects={"grip": effect(at, at, at)}) for at in range(4)]
    rows = [line.split() for line in plan_of(*made, effects=effects) if line.startswith("grip")]
    assert rows == [["grip", "[%]", "0", "1", "2"], ["grip", "[%]", "3"]]


def test_without_any_effect_nothing_is_known():
    assert "Nothing is known of what they do." in plan_of(combination())


def test_rims_to_buy_runs_and_tests_are_listed_what_shows_before_what_hardly_does():
    pairs = [{"text": "hardly", "apart": False}, {"text": "shows", "apart": True}]
    rims = [{"rim": "8J x 18", "axle": "rear", "serves": ["225/40 R18", "235/40 R18"]}]
    order = {"runs": ["1", "2", "1"], "text": "Warm first."}
    lines = plan_of(combination(), pairs=pairs, rims_to_buy=rims, order=order)
    assert "- 8J x 18 at the rear, for 225/40 R18, 235/40 R18" in lines
    assert lines.index("- shows") + 1 == lines.index("- hardly")
    assert lines[lines.index("In which order") + 1 :][:2] == ["- Drive: 1; 2; 1", "- Warm first."]
