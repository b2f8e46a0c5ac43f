"""What a finding of the law says, which numbers that lack decide, and how many rules of a place spoke."""

import pytest

from service.core.findings import MET, NOT_ASSESSED, NOT_MET, OPEN, Finding
from tests.support.cases import ABSENT, answer, check, finding, on_both_axles
from tests.unit.assessment.test_law import under


def dutch_track(offset: int) -> Finding:
    """Return the finding on the track of the rear axle, whose registered track is not given."""
    rim = {"/vehicle/rear/track_mm": ABSENT, "/candidate/rear/rim/size": f"7.5J x 17 H2 ET{offset}"}
    return finding(check(under("nl", rim)), "law.track_change")


def test_a_number_that_lacks_decides_where_the_change_makes_it_matter():
    found = dutch_track(35)
    assert found.outcome == NOT_ASSESSED
    assert (found.remedy.pointer, found.remedy.text) == (
        "/vehicle/rear/track_mm",
        "give the registered track of the rear axle",
    )


@pytest.mark.parametrize(
    ("offset", "told"),
    [
        (45, "The track does not change; 2 % more is allowed in the Netherlands."),
        (60, "The track shrinks by 30 mm; 2 % more is allowed in the Netherlands."),
        # 2 % of the narrowest track that the service takes, 500 mm, are 10 mm.
        (40, "The track grows by 10 mm; 2 % more is allowed in the Netherlands, and that is more on any car."),
    ],
)
def test_a_number_that_cannot_matter_is_not_asked_for(offset, told):
    found = dutch_track(offset)
    assert (found.outcome, found.message, found.remedy) == (MET, told, None)


def test_a_track_that_stays_changes_by_nothing_whatever_it_is():
    assert dutch_track(45).measured == 0.0


@pytest.mark.parametrize(("pack", "expected"), [("nl", NOT_ASSESSED), ("au-nsw", NOT_ASSESSED), ("es", OPEN)])
def test_an_offset_that_nobody_stated_decides_where_the_rule_on_the_track_forbids(pack, expected):
    found = finding(check(under(pack, {"/candidate/rear/rim/size": "8J x 17 H2"})), "law.track_change")
    assert (found.outcome, found.remedy.quantity) == (expected, "offset_mm")


TYRE, RIM = "/candidate/rear/tyre/size", "/candidate/rear/rim/size"
TRACK = {"/vehicle/rear/track_mm": 1600}
NO_LESS = "no less is allowed in the United States."


@pytest.mark.parametrize(
    ("pack", "changes", "code", "told"),
    [
        # 2 (45 - 28) = 34 mm of 1600.
        (
            "nl",
            {RIM: "7.5J x 17 H2 ET28", **TRACK},
            "law.track_change",
            "The track grows by 2.1 %; 2 % is allowed in the Netherlands.",
        ),
        (
            "nl",
            {RIM: "7.5J x 17 H2 ET37", **TRACK},
            "law.track_change",
            "The track grows by 1 %; 2 % is allowed in the Netherlands.",
        ),
        (
            "es",
            {TYRE: "225/45 R17 91W"},
            "law.load_index",
            (
                "The load index falls by 3; no decrease is allowed in Spain. "
                "Known from a quotation only: check the official text."
            ),
        ),
        # Load index 83 is 487 kg, 94 is 670 kg (ISO 4000-1); the axle needs 500 kg a wheel.
        (
            "us",
            {TYRE: "225/45 R17 83W"},
            "law.sidewall_limit",
            f"Each tyre is marked for 487 kg, 13 kg less than its share of the axle mass (500 kg); {NO_LESS}",
        ),
        (
            "us",
            {},
            "law.sidewall_limit",
            f"Each tyre is marked for 670 kg, 170 kg more than its share of the axle mass (500 kg); {NO_LESS}",
        ),
        # FMVSS 120: 2 x 670 / 1.10 = 1218 kg.
        (
            "us",
            {"/vehicle/category": "N1"},
            "law.load_rating_sum",
            (
                "The load ratings of the axle's tyres, passenger tyres divided by 1.1, add up to 1218 kg, "
                f"218 kg more than the axle mass of 1000 kg; {NO_LESS}"
            ),
        ),
        (
            "au-wa",
            {TYRE: "225/45 R17 94R"},
            "law.speed_rating_car",
            (
                "The tyre is made for 170 km/h, 58 km/h below the vehicle's top speed; "
                "180 km/h or the vehicle's top speed is enough in Western Australia."
            ),
        ),
        (
            "fi",
            {},
            "law.width_without_inspection",
            "The tyre's section width does not change; 40 mm more or 20 % more is allowed in Finland.",
        ),
    ],
)
def test_a_finding_of_the_law_says_what_was_found_and_what_is_allowed(pack, changes, code, told):
    assert finding(check(under(pack, changes)), code).message == told


@pytest.mark.parametrize(
    ("front", "told"),
    [
        ("225/45 R17 94W XL", "All tyres are radial."),
        (
            "225/45 D17 94H",
            (
                "The front tyres are diagonal, the rear ones radial. "
                "On a car up to 3500 kg all tyres must be radial or all diagonal."
            ),
        ),
    ],
)
def test_a_finding_on_the_structure_says_which_tyres_are_radial(front, told):
    request = under("de", {"/candidate/front/tyre/size": front, "/vehicle/max_mass_kg": 1900})
    assert finding(check(request), "law.structure_car", "vehicle").message == told


@pytest.mark.parametrize("pack", ["unece", "de", "es", "fi", "gb", "nl", "au-nsw"])
def test_that_left_and_right_are_alike_is_not_met_by_assumption(pack):
    """92/23: the type of a tyre is maker, use, structure, speed and load; one designation does not tell."""
    found = finding(check(under(pack, {TYRE: "235/45 R17 97W XL"})), "law.same_size_on_axle")
    assert (found.outcome, found.remedy) == (OPEN, None)
    assert found.message.count(".") == 1


def dutch_van(offset: int | None) -> Finding:
    """Return the finding on the track of a van of unknown mass; up to 3500 kg it is limited (art. 5.3.23, read)."""
    changes = {
        "/vehicle/category": "N1",
        "/vehicle/built": "1990-01-01",
        "/vehicle/max_mass_kg": ABSENT,
        RIM: "8J x 17 H2" if offset is None else f"7.5J x 17 H2 ET{offset}",
    }
    return finding(check(under("nl", changes)), "law.track_change_commercial")


# An offset that nobody read may be one that is forbidden.
@pytest.mark.parametrize(("offset", "expected"), [(45, MET), (35, MET), (20, NOT_ASSESSED), (None, NOT_ASSESSED)])
def test_whether_a_rule_applies_decides_only_where_it_would_forbid(offset, expected):
    assert dutch_van(offset).outcome == expected


def test_a_rule_that_may_apply_says_in_words_what_would_settle_it():
    found = dutch_van(20)
    assert found.message.endswith("is not known without the vehicle's maximum mass.")
    assert (found.remedy.pointer, found.remedy.text) == ("/vehicle/max_mass_kg", "give the vehicle's maximum mass")


@pytest.mark.parametrize(("tyre", "expected"), [("225/45 R17 94W XL", OPEN), ("225/45 R17 95W XL", NOT_ASSESSED)])
def test_what_may_be_unlawful_today_decides_only_where_the_tyres_change(tyre, expected):
    """Art. 50(1) is for vans from 1998 on; 2 x 670 or 690 kg of 1500."""
    van = {"/vehicle/category": "N1", "/vehicle/rear/max_axle_mass_kg": 1500, "/candidate/rear/tyre/size": tyre}
    assert finding(check(under("nl", van)), "law.axle_load").outcome == expected


@pytest.mark.parametrize(
    ("pack", "changes", "counts"),
    [
        # New Zealand: two rules on heavy vehicles, none on cars. Japan: two on the speedometer, one for each age.
        ("nz", {}, (2, 0, 0)),
        ("jp", {}, (2, 1, 1)),
        # R39 counts where it is law: structure, same type (not known), speedometer.
        ("unece", {}, (3, 3, 2)),
        ("unece", {"/vehicle/category": "O2"}, (3, 2, 1)),
        ("us", {}, (3, 1, 1)),
        ("nl", {}, (7, 4, 3)),
        ("nl", {RIM: "7.5J x 17 H2 ET20"}, (7, 4, 2)),
    ],
)
def test_an_answer_says_how_many_rules_are_held_apply_and_are_met(pack, changes, counts):
    shown = answer(check(under(pack, {"/vehicle/built": "2015-01-01", **changes})))["rule_pack"]
    assert (shown["rules_held"], shown["rules_applied"], shown["rules_met"]) == counts


def test_an_answer_says_what_of_the_law_is_not_held():
    shown = answer(check(under("nz")))["rule_pack"]
    assert "No rule on the accuracy of the speedometer was found." in shown["not_held"]


@pytest.mark.parametrize(("fitted", "already"), [("225/45 R17 83W", True), ("225/45 R17 94W XL", False)])
def test_what_is_unlawful_today_is_said_to_be_so_already(fitted, already):
    """FMVSS 110 S4.2.1 (read): 487 kg of 500."""
    small = {"/vehicle/{axle}/fitted/tyre/size": fitted, "/candidate/{axle}/tyre/size": "225/45 R17 83W"}
    found = finding(check(under("us", on_both_axles(small))), "law.sidewall_limit")
    assert (found.outcome, found.already) == (NOT_MET, already)


# Whoever fits what is advised keeps the rule of the place too: at most 25 mm more track in New South Wales (VSI 9), and
# 2 % of 1600 mm in the Netherlands (art. 5.2.23); half of it is the offset.
@pytest.mark.parametrize(("pack", "least"), [("au-nsw", 32.5), ("nl", 29), ("gb", 29)])
def test_an_offset_that_is_advised_is_lawful_in_the_place(pack, least):
    room = {f"/vehicle/rear/clearance/{side}_mm": 80 for side in ("inboard", "outboard")}
    found = check(under(pack, {RIM: "7.5J x 17 H2 ET20", **TRACK, **room}))
    remedy = finding(found, "track.change").remedy
    assert remedy.at_least == pytest.approx(least)


def test_a_rim_width_that_the_law_asks_for_is_one_that_the_tyre_takes():
    """New South Wales lets no rim be narrower (VSI 9); a 225/45 R17 takes 7 to 8.5 in (ETRTO, table of the size)."""
    changes = {"/vehicle/rear/fitted/rim/size": "8J x 17 H2 ET45", RIM: "7.5J x 17 H2 ET45"}
    remedy = finding(check(under("au-nsw", changes)), "law.rim_width_narrower").remedy
    assert (remedy.quantity, remedy.at_least, remedy.at_most) == ("rim_width_in", 8.0, 8.5)
    changes["/vehicle/rear/fitted/rim/size"] = "9J x 17 H2 ET45"
    remedy = finding(check(under("au-nsw", changes)), "law.rim_width_narrower").remedy
    assert (remedy.quantity, remedy.text) == (
        "nominal_width_mm",
        "a rim width of 9 in or more, and a tyre that is approved on it",
    )
