"""A field of one name is bounded alike wherever it stands, so that a client keeps it in one place of its own.

That a name means one thing is the project's rule; what has several sizes is named here. From outside, from memory: a
day is YYYY-MM-DD (ISO 8601-1, 5.2.2.1); a speed symbol is a letter, or A with a digit (UN R30 para. 2.29); an error has
a status from 400 to 599 (RFC 9110, section 15).
"""

from __future__ import annotations

from collections import defaultdict

import pytest

from tests.contract.document import fields, resolve

BOUNDS = ("minimum", "maximum", "maxLength", "maxItems")
# What an answer's number has where nothing bounds it.
UNBOUNDED = (-1e9, 1e9)
MEMBERS = {name: {**resolve(member), **member} for name, member in fields()}
# A sentence is as long as what it says, a list as what may be asked for there; a designation that is read may be any.
OF_SEVERAL_SIZES = {
    *("text", "template", "note", "title", "name", "source", "edition", "why_none", "code", "id", "rim", "size"),
    *(
        "findings",
        "actions",
        "measure_first",
        "serves",
        "candidates",
        "verdicts",
        "rows",
        "refused",
        "notes",
        "markings",
    ),
    *(
        "front",
        "rear",
        "errors",
        "bolt_circle",
        "speed_symbol",
        "load_range",
        "explain_first",
        "index",
        "refused_count",
    ),
    *("overall_diameter_in", "section_width_in", "aspect_ratio", "ply_rating", "width_in", "section_width_mm"),
    # Asked for as a limit, a scatter or a relief, answered as a figure; ET of a rim and of one that is proposed.
    *("balance_deg_per_g", "speed_limited_kmh", "offset_mm", "error_count"),
}
# What comes back as it was sent, what bounds one window, and counts of the same things.
TOGETHER = [
    ("CompareRequest.candidates", "Comparison.rows", "Comparison.refused"),
    ("Candidate.id", "FoundAxle.stock_id", "FoundAxle.rim_id", "ComparedRow.id", "RefusedLine.id"),
    ("Tyre.size", "TyreParts.canonical", "WheelFigures.tyre", "PlanWheel.tyre"),
    ("Rim.size", "RimParts.canonical", "WheelFigures.rim", "PlanWheel.rim"),
    ("Finding.code", "ComparedFinding.code", "RimReason.code", "Removed.code", "SizeBound.code", "Rule.code"),
    ("Assessment.cautions", "Assessment.caution_codes"),
    ("OffsetWindow.from_mm", "OffsetWindow.to_mm", "SharedRim.best_mm", "BestOffset.offset_mm", "ChosenRim.offset_mm"),
    ("Rim.offset_mm", "OfferedRim.offset_mm", "RimParts.offset_mm"),
    ("OfferedRims.front", "OfferedRims.rear"),
    ("TyresAsked.front", "TyresAsked.rear"),
    ("SizeSpan.at_least", "SizeSpan.at_most"),
    ("SearchLimits.overall_diameter_percent", "SearchLimits.axle_ratio_percent"),
    ("SearchLimits.load_margin_percent", "SearchLimits.room_mm"),
    ("PlanRequest.confidence", "PlanRequest.power"),
    ("RulePackHeld.rules_held", "RulePackHeld.rules_applied", "RulePackHeld.rules_met", "PackSummary.rule_count"),
    tuple(f"FindingCounts.{name}" for name in ("met", "advisory", "not_assessed", "not_recommended", "not_met")),
    ("SmallestSet.rims", "SmallestSet.unserved", "ChosenRim.serves", "ChosenRim.with_conditions", "SharedRim.serves"),
    ("PlanPair.apart", "PlanPair.alike"),
    ("SpeedometerRule.least_constant_kmh", "SpeedometerRule.most_constant_kmh"),
    ("SpeedometerRule.least_gain", "SpeedometerRule.most_gain"),
    ("Sieve.tried", "Sieve.kept"),
    ("TyreParts.rim_code", "RimParts.diameter_code"),
    ("Assessment.summary", "ComparedRow.summary"),
    ("Finding.message", "ComparedFinding.message", "ComparedRow.reason", "PlanCombination.reason"),
    ("ComparedRow.gains", "ComparedRow.losses"),
    ("RulePack.id", "PackSummary.id", "RulePackName.id", "RulePackHeld.id", "Rule.pack", "Allowance.pack"),
]


def by_name_and_bound() -> dict[tuple[str, str], dict[str, float]]:
    found: dict[tuple[str, str], dict[str, float]] = defaultdict(dict)
    for name, member in MEMBERS.items():
        for bound in BOUNDS:
            if bound in member and member[bound] not in UNBOUNDED:
                found[name.rpartition(".")[2], bound][name] = member[bound]
    return {key: places for key, places in found.items() if len(places) > 1}


SHARED = by_name_and_bound()


@pytest.mark.parametrize(("name", "bound"), [key for key in SHARED if key[0] not in OF_SEVERAL_SIZES])
def test_a_name_is_bounded_alike_wherever_it_stands(name, bound):
    assert len(set(SHARED[name, bound].values())) == 1


def test_no_name_is_thought_to_have_several_sizes_that_has_one():
    differing = {name for (name, _), places in SHARED.items() if len(set(places.values())) > 1}
    assert differing == OF_SEVERAL_SIZES


@pytest.mark.parametrize("places", TOGETHER, ids=lambda places: places[0])
def test_what_is_the_same_thing_is_bounded_alike(places):
    found = [{bound: MEMBERS[name][bound] for bound in BOUNDS if bound in MEMBERS[name]} for name in places]
    assert found[0]
    assert found == [found[0]] * len(places)


def test_a_day_has_ten_signs():
    days = {
        *(
            name
            for name in MEMBERS
            if name.rpartition(".")[2] in ("date", "built", "built_from", "built_to", "used_to")
        ),
        *(name for name in MEMBERS if name.rpartition(".")[2] in ("checked", "valid_from", "valid_to")),
    }
    assert len(days) > 20
    assert {MEMBERS[name]["maxLength"] for name in days} == {len("2026-11-24")}


def test_a_speed_symbol_or_the_letter_inside_a_size_has_room_for_two_signs():
    assert {MEMBERS[f"{model}.speed_symbol"]["maxLength"] for model in ("Tyre", "StockLine", "TyreParts")} == {
        len("A8")
    }
    assert MEMBERS["ServicePoint.speed_symbol"]["maxLength"] == len("A8")


def test_what_may_begin_elsewhere_has_the_same_end():
    for first, second in (
        ("Problem.error_count", "RefusedCandidate.error_count"),
        ("Sieve.tried", "Removed.count"),
        # A rule speaks of vehicles as fast as may be asked about.
        ("Vehicle.max_speed_kmh", "TestSpeeds.above_kmh"),
    ):
        assert MEMBERS[first]["maximum"] == MEMBERS[second]["maximum"]


def test_a_status_is_one_of_an_error():
    assert (MEMBERS["Problem.status"]["minimum"], MEMBERS["Problem.status"]["maximum"]) == (400, 599)


def test_what_is_repeated_of_a_fault_has_at_most_two_hundred_signs():
    """An error never repeats more than 200 characters of what was sent (the design of the contract)."""
    for name in ("pointer", "parameter", "expected", "did_you_mean"):
        assert MEMBERS[f"Fault.{name}"]["maxLength"] == 200


def test_a_flag_that_is_not_sent_is_not_set():
    flags = {name: member["default"] for name, member in MEMBERS.items() if isinstance(member.get("default"), bool)}
    assert flags == dict.fromkeys(flags, False)
    assert len(flags) >= 2
