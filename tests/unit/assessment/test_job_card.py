"""The job card made of findings whose outcome is given: what stands first, what names which finding, what is joined."""

import pytest

from service.assessment.answer.danger import do_not_fit, settle_first, would_not_fit
from service.assessment.answer.said_once import with_echoes
from service.assessment.answer.summary import summary
from service.assessment.answer.told import asked_of_the_place, told
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN, Finding, Remedy
from service.core.sources import basis

ROOM = Remedy("measure the room between wheel and strut: 23 mm is enough", "/vehicle", "inboard_mm", 23.0, unit="mm")
BASIS = basis("PROJECT", "the project's own")


def finding(code, axle="vehicle", outcome=ADVISORY, message="So it is.", remedy=None, **more):
    return Finding(code, axle, outcome, message, None, None, None, BASIS, remedy, **more)


def test_what_is_advised_against_says_so_and_why():
    mix = finding("tyre.season_mix", outcome=NOT_RECOMMENDED, message="Only the front has winter tyres.")
    (line,) = would_not_fit([mix, finding("balance.change")])
    assert line.text == "We advise against it: Only the front has winter tyres."
    assert line.findings == ("tyre.season_mix",)


def test_what_is_to_be_settled_is_named_with_the_way_to_do_it():
    sides = [finding("clearance.inboard", axle, NOT_ASSESSED, remedy=ROOM) for axle in ("front", "rear")]
    (line,) = settle_first([*sides, finding("rim.contour", "front", OPEN)])
    assert line.text == f"Settle this before you order or fit. Room to the strut, both axles: {ROOM.text}."
    assert line.findings == ("clearance.inboard",)


def test_the_card_of_what_must_not_be_fitted_names_all_that_speaks_against_it():
    broken = [finding("load.capacity", axle, NOT_MET) for axle in ("front", "rear")]
    mix = finding("tyre.season_mix", outcome=NOT_RECOMMENDED)
    lines = do_not_fit([*broken, mix, finding("track.change", "rear"), finding("rim.width", "rear", MET)])
    assert [each.code for each in lines] == ["do_not_fit", "would_not_fit", "mind_too"]
    assert "load capacity of the tyres (both axles)" in lines[0].text
    assert [code for each in lines for code in each.findings] == ["load.capacity", "tyre.season_mix", "track.change"]


def test_what_both_axles_share_is_told_once_and_what_differs_apart():
    same = [finding("track.change", axle) for axle in ("front", "rear")]
    apart = [finding("tyre.tread_depth", axle, message=f"{axle}.") for axle in ("front", "rear")]
    assert [each.code for each in told(same + apart)] == [
        "tell_track_change",
        "tell_tyre_tread_depth_front",
        "tell_tyre_tread_depth_rear",
    ]


@pytest.mark.parametrize(
    ("code", "who"), [("balance.change", "driver"), ("wet.aquaplaning", "driver"), ("load.below_present", "customer")]
)
def test_how_the_car_drives_is_told_to_the_driver_and_all_else_to_the_customer(code, who):
    (line,) = told([finding(code)])
    assert line.text == f"Tell the {who}: So it is."


def test_what_is_so_today_already_is_told_in_one_line():
    old = [finding("clearance.inboard", "front", already=True), finding("clearance.radial", "rear", already=True)]
    (line,) = told(old)
    assert line.code == "tell_as_today"
    assert "today" in line.text
    assert "room to the strut (front axle), room to the wheel arch (rear axle)" in line.text


def test_a_rule_of_the_place_is_asked_about_and_not_told():
    law = finding("law.track_change", "front", message="The track may be at most 25 mm wider.")
    assert told([law]) == []
    (line,) = asked_of_the_place([law])
    assert line.code == "ask_law_track_change_front"
    assert line.text.startswith("Ask the inspection office before you order (front axle): The track")


def test_what_the_change_brings_is_the_reason_before_what_is_so_today():
    old = finding("clearance.inboard", "front", message="Today already.", already=True)
    new = finding("track.change", "rear", message="Wider.")
    assert summary("suitable_with_conditions", [old, new]) == "It fits, with conditions. Rear axle: Wider."
    assert "Today already." in summary("suitable_with_conditions", [old])


@pytest.mark.parametrize(
    ("remedy", "words"),
    [(ROOM, "Measure the room between wheel and strut: 23 mm is enough."), (None, "facts are missing")],
)
def test_a_remedy_that_is_quoted_reads_as_a_sentence(remedy, words):
    missing = [
        finding("clearance.inboard", "front", NOT_ASSESSED, "No room.", remedy=remedy),
        finding("rim.brake_clearance", "rear", NOT_ASSESSED, "No brake.", remedy=remedy),
    ]
    assert words in summary("undetermined", missing)


def test_a_thing_that_settles_it_is_said_to_do_so():
    mark = Remedy("a tyre marked 3PMSF", "/candidate", "marking", equals="3PMSF")
    said = summary("undetermined", [finding("speed.capability", "front", NOT_ASSESSED, remedy=mark)])
    assert said.endswith("What settles it: a tyre marked 3PMSF.")


@pytest.mark.parametrize(
    ("count", "words"), [(1, "One point stays open; it does not"), (3, "Three points stay open; they do not")]
)
def test_open_questions_are_counted_and_no_more(count, words):
    findings = [finding(f"rim.thing{each}", "front", OPEN) for each in range(count)]
    assert words in summary("suitable", findings)


def test_what_follows_from_a_finding_is_answered_by_its_line_in_the_order_of_the_findings():
    weak = finding("load.capacity", "rear", NOT_MET)
    echoes = [finding("load.pressure", "rear", NOT_MET), finding("load.below_present", "rear")]
    late = [finding("wet.aquaplaning", "rear"), finding("wet.axle_order"), finding("wet.reserve", "rear")]
    findings = [weak, *echoes, *late]
    refused, minor = with_echoes(do_not_fit(findings), findings)
    assert refused.findings == ("load.capacity", "load.pressure", "load.below_present")
    assert minor.findings == ("wet.aquaplaning", "wet.axle_order", "wet.reserve")
    assert "tyre pressure" not in refused.text


def test_what_is_so_of_another_axle_follows_from_nothing():
    findings = [finding("load.capacity", "rear", NOT_MET), finding("load.below_present", "front")]
    assert [each.code for each in do_not_fit(findings)] == ["do_not_fit", "mind_too"]
