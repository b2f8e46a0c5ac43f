"""Job card and summary made of findings whose outcome is given: who is named for what, and how it is said."""

import pytest

from service.assessment.answer.danger import do_not_fit, measure_before_order, settle_first
from service.assessment.answer.said_once import spoken, with_echoes
from service.assessment.answer.subjects import named, placed, subject, together, where
from service.assessment.answer.summary import summary
from service.assessment.answer.told import asked_of_the_place, told
from service.assessment.answer.verdict import VERDICTS
from service.assessment.answer.verdict_words import OUTCOME_WORDS, VERDICT_WORDS
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN, Finding, Remedy
from service.core.sources import basis

BASIS = basis("PROJECT", "the project's own")


def finding(code, axle="vehicle", outcome=ADVISORY, message="So it is.", remedy=None, **more):
    return Finding(code, axle, outcome, message, None, None, None, BASIS, remedy, **more)


def way(text, at_least=None):
    return Remedy(text, "/vehicle", "inboard_mm", at_least, unit="mm")


def said(findings):
    return [(each.code, each.axle) for each in spoken(findings, findings)]


# What follows, from what: of the same axle, and no less weighty than what follows.
@pytest.mark.parametrize(
    ("cause", "echo", "follows"),
    [
        (("load.capacity", "rear", NOT_MET), ("load.pressure", "rear", NOT_MET), True),
        (("load.capacity", "rear", NOT_MET), ("load.below_present", "rear", ADVISORY), True),
        (("load.capacity", "front", NOT_MET), ("load.pressure", "rear", NOT_MET), False),
        (("load.capacity", "rear", ADVISORY), ("load.pressure", "rear", NOT_MET), False),
        (("load.capacity", "rear", NOT_MET), ("load.pressure", "rear", MET), False),
        (("load.capacity", "rear", NOT_MET), ("load.pressure", "rear", OPEN), False),
        # An open question causes only another.
        (("load.capacity", "rear", NOT_ASSESSED), ("load.pressure", "rear", NOT_ASSESSED), True),
        (("load.capacity", "rear", NOT_ASSESSED), ("load.below_present", "rear", ADVISORY), False),
        (("balance.change", "vehicle", ADVISORY), ("balance.grip_order", "vehicle", ADVISORY), True),
        (("wet.reserve", "rear", ADVISORY), ("wet.aquaplaning", "rear", ADVISORY), True),
        (("wet.reserve", "rear", MET), ("wet.aquaplaning", "rear", ADVISORY), False),
        # A spare on one axle concerns what is asked of the whole car.
        (("tyre.temporary_spare", "rear", ADVISORY), ("diameter.speedometer", "vehicle", ADVISORY), True),
        (("tyre.temporary_spare", "rear", ADVISORY), ("speed.capability", "rear", ADVISORY), True),
        (("tyre.temporary_spare", "rear", ADVISORY), ("diameter.deviation", "front", ADVISORY), False),
        (("tyre.temporary_spare", "rear", ADVISORY), ("track.change", "rear", ADVISORY), False),
    ],
)
def test_what_follows_from_another_finding_is_not_said_again(cause, echo, follows):
    findings = [finding(*cause), finding(*echo)]
    assert said(findings) == ([cause[:2]] if follows else [cause[:2], echo[:2]])


@pytest.mark.parametrize(("of_cause", "of_echo", "follows"), [(0, 0, 1), (1, 1, 1), (1, 0, 0), (0, 1, 1)])
def test_what_is_so_today_is_not_the_cause_of_what_the_change_brings(of_cause, of_echo, follows):
    cause = finding("load.capacity", "rear", NOT_MET, already=bool(of_cause))
    echo = finding("load.pressure", "rear", NOT_MET, already=bool(of_echo))
    assert len(said([cause, echo])) == 2 - follows


def test_an_echo_is_answered_once_by_the_line_of_its_cause():
    findings = [
        finding("load.capacity", "front", NOT_MET),
        finding("load.capacity", "rear", NOT_MET),
        finding("load.pressure", "front", NOT_MET),
        finding("load.pressure", "rear", NOT_MET),
        finding("track.change", "rear"),
    ]
    refused, minor = with_echoes(do_not_fit(findings), findings)
    assert refused.findings == ("load.capacity", "load.pressure")
    assert minor.findings == ("track.change",)


LAW = {
    "law.track_change": "track",
    "law.offset_limit": "offset",
    "law.rim_width_max": "rim width",
    "law.rim_diameter_max": "rim diameter",
    "law.tyre_diameter": "overall diameter",
    "law.driven_circumference": "rolling circumference",
    "law.distance_counter": "distance counter",
    "law.speedometer": "speedometer",
    "law.winter_tyre": "winter tyres",
    "law.tyre_width": "tyre width",
    "law.load_capacity": "load",
    "law.speed_symbol": "speed of the tyres",
    "law.same_size_on_axle": "tyres on one axle",
    "law.sidewall_marking": "load",
    "law.spacers": "spacers",
    "law.of_my_own": "of my own",
}


@pytest.mark.parametrize(("code", "words"), LAW.items())
def test_a_rule_of_a_place_is_named_by_what_it_asks_of(code, words):
    assert subject(code) == f"local rule on {words}"


def test_a_question_is_named_by_its_code_where_it_has_no_words():
    assert (subject("track.change"), subject("made.up_thing")) == ("track", "up thing")


@pytest.mark.parametrize(
    ("axles", "place"),
    [(["front"], "front axle"), (["rear", "rear"], "rear axle"), (["front", "rear"], "both axles"), (["vehicle"], "")],
)
def test_the_place_of_findings_is_named_once(axles, place):
    group = [finding("track.change", axle) for axle in axles]
    assert where(group) == place
    capital = f"{place[:1].upper()}{place[1:]}: " if place else ""
    assert placed(group) == f"{capital}So it is."
    assert named(group) == (f"track ({place})" if place else "track")


def test_findings_go_together_where_question_words_and_advice_are_the_same():
    same = [finding("track.change", axle, remedy=way("less")) for axle in ("front", "rear")]
    other = [finding("track.change", "rear", remedy=way("more")), finding("track.change", "rear", message="Else.")]
    assert [len(each) for each in together([*same, *other, finding("rim.width", "front")])] == [2, 1, 1, 1]


ASKS = "measure the room between wheel and strut before you order: {} is enough"


@pytest.mark.parametrize(
    ("code", "least", "told_mm"),
    [
        ("clearance.inboard", 13.2, "between wheel and strut: 14 mm"),
        ("clearance.inboard", 14.0, "between wheel and strut: 14 mm"),
        ("clearance.outboard", 14.01, "between wheel and wing edge: 15 mm"),
        ("clearance.radial", 9.5, "between wheel and wheel arch: 10 mm"),
    ],
)
def test_room_to_measure_before_the_order_is_whole_millimetres_rounded_up(code, least, told_mm):
    narrow = finding(code, "rear", remedy=way(ASKS.format("some"), least))
    (line,) = measure_before_order([narrow, finding("track.change", "rear", remedy=way("less"))])
    assert line.findings == (code,)
    assert line.text.endswith(f"measure the room {told_mm} is enough.")


def test_only_an_advisory_that_asks_for_it_is_measured_before_the_order():
    asking = way(ASKS.format("14 mm"))
    assert measure_before_order([finding("clearance.inboard", "rear", NOT_MET, remedy=asking)]) == []
    assert measure_before_order([finding("clearance.inboard", "rear", remedy=way("measure it"))]) == []
    # Without a number, or of another question, it is asked as the finding asks it.
    for each in (
        finding("clearance.inboard", "rear", remedy=asking),
        finding("track.change", "rear", remedy=way(ASKS.format("14 mm"), 14.0)),
    ):
        (line,) = measure_before_order([each])
        assert line.text.endswith(f"rear axle: {ASKS.format('14 mm')}.")


def test_one_thing_to_do_is_asked_once_for_all_that_it_settles():
    both = [
        finding(code, "rear", NOT_ASSESSED, remedy=way("read the offset"))
        for code in ("clearance.inboard", "track.change")
    ]
    more = finding("speed.capability", "front", NOT_ASSESSED, "The speed is not known.")
    (line,) = settle_first([*both, more])
    assert line.text == (
        "Settle this before you order or fit. Room to the strut, track, rear axle: read the offset. "
        "Speed of the tyres, front axle: The speed is not known."
    )
    assert line.findings == ("clearance.inboard", "track.change", "speed.capability")


COUNTS = ["two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"]


@pytest.mark.parametrize(("count", "words"), [*enumerate(COUNTS, start=2), (11, "11"), (12, "12")])
def test_facts_and_points_are_counted_in_words_to_ten(count, words):
    missing = [finding(f"rim.thing{each}", "rear", NOT_ASSESSED, f"No {each}.") for each in range(count)]
    assert summary("undetermined", missing).startswith(f"Not known yet: {words} facts are missing. ")
    points = [finding(f"rim.thing{each}", "rear", OPEN) for each in range(count)]
    begins = words.capitalize()
    assert summary("suitable", points).endswith(f"{begins} points stay open; they do not change the answer.")


def test_one_fact_and_one_point_have_sentences_of_their_own():
    lone = finding("rim.width", "rear", NOT_ASSESSED, "No width.", remedy=way("read it"))
    assert summary("undetermined", [lone]) == "Not known yet: one fact is missing. Rear axle: No width. Read it."
    # One reading may settle several questions.
    two = [lone, finding("rim.contour", "rear", NOT_ASSESSED, "No contour.", remedy=way("read it"))]
    assert summary("undetermined", two).startswith("Not known yet: one fact is missing. ")
    both = [finding("rim.width", axle, OPEN) for axle in ("front", "rear")]
    assert summary("suitable", both).endswith("One point stays open; it does not change the answer.")
    assert summary("suitable", [finding("rim.width", "rear", MET)]) == "It fits: nothing speaks against it."


@pytest.mark.parametrize(
    ("verdict", "outcome", "begins"),
    [
        ("unsuitable", NOT_MET, "Do not fit."),
        ("not_recommended", NOT_RECOMMENDED, "We advise against it."),
        ("suitable_with_conditions", ADVISORY, "It fits, with conditions."),
    ],
)
def test_the_worst_outcome_alone_is_the_reason(verdict, outcome, begins):
    worst = [finding("rim.width", "rear", outcome, "Too wide."), finding("track.change", "front", outcome, "Wider.")]
    milder = finding("tyre.tread_depth", "rear", OPEN)
    assert summary(verdict, [*worst, milder]) == f"{begins} Rear axle: Too wide. Besides: track (front axle)."


VERBS = "ask check choose fit keep look measure put read set state take use weigh"


@pytest.mark.parametrize("verb", VERBS.split())
def test_a_remedy_that_begins_with_a_verb_is_an_order(verb):
    lone = finding("rim.width", "rear", NOT_ASSESSED, "No width.", remedy=way(f"{verb} it"))
    assert summary("undetermined", [lone]).endswith(f"No width. {verb.capitalize()} it.")


@pytest.mark.parametrize(
    ("found", "code", "begins"),
    [
        (finding("balance.change"), "tell_balance_change", "Tell the driver: "),
        (finding("wet.reserve", "rear"), "tell_wet_reserve_rear", "Tell the driver (rear axle): "),
        (finding("track.change", "front"), "tell_track_change_front", "Tell the customer (front axle): "),
        (finding("tyre.season_mix"), "tell_tyre_season_mix", "Tell the customer: "),
    ],
)
def test_each_line_is_addressed_to_whom_it_concerns(found, code, begins):
    (line,) = told([found])
    assert (line.code, line.text) == (code, f"{begins}So it is.")
    (better,) = told([found._replace(remedy=way("less of it"))])
    assert better.text == f"{begins}So it is. Better: less of it."


def test_a_rule_of_the_place_is_asked_about_without_advice():
    law = finding("law.track_change", "vehicle", remedy=way("less of it"))
    (line,) = asked_of_the_place([law, finding("track.change", "rear")])
    assert (line.code, line.text) == (
        "ask_law_track_change",
        "Ask the inspection office before you order: So it is.",
    )
    assert told([law._replace(already=True)]) == []


def test_every_verdict_has_a_heading_and_outcomes_stand_worst_first():
    assert set(VERDICT_WORDS) == set(VERDICTS)
    assert [each.outcome for each in OUTCOME_WORDS] == [
        *(NOT_MET, NOT_RECOMMENDED, NOT_ASSESSED, ADVISORY, OPEN, MET),
    ]
    assert [each.name for each in OUTCOME_WORDS] == [
        *("not-met", "not-recommended", "not-assessed", "advisory", "open", "met"),
    ]
