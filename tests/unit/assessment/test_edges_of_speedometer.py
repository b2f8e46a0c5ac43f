"""What is told of a speedometer where a tolerance, the place or a reading that nobody took decides.

UN R39 5.3: shown V1, true V2, 0 <= V1 - V2 <= 0.1 V2 + 4 km/h; of 40, 80 and 120 km/h the last is the sharpest above,
16 of 120 km/h or 13.33 %. Both ends of the range grow with the circumference. Tyres may roll 2.5 % less and 1.5 % more
than they should (WDK 107, from memory).
"""

import pytest

from service.assessment.checks import speedometer_words
from service.assessment.checks.speedometer_tolerance import reading_tolerance_percent
from service.core.findings import ADVISORY, MET, NOT_MET
from tests.support.cases import ABSENT, changed, check, finding, saloon

READ = "/vehicle/speedometer"
ROLLS = "/candidate/rear/tyre/rolling_circumference_mm"
RECALIBRATED = "have the speedometer recalibrated so that with the present tyres it reads"
CHECKED = "have the speedometer checked: it must now read"


def found(**changes):
    """Return the finding on the saloon after these changes."""
    return finding(check(changed(saloon(), changes)), "diameter.speedometer", "vehicle")


def reads(displayed, tolerance=0):
    """Return a reading at a true 100 km/h."""
    return {READ: {"displayed_kmh": displayed, "true_kmh": 100, "tolerance_percent": tolerance}}


@pytest.mark.parametrize(
    ("displayed", "tolerance", "limit", "said", "to"),
    [
        (100.5, 1, 1.0, "lawful, but nearer to the limit than its tolerance allows.", "1 to 12.3 %"),
        (113, 1, 12.333, "lawful, but nearer to the limit than its tolerance allows.", "1 to 12.3 %"),
        (113, 5, 8.333, "lawful, but nearer to the limit than its tolerance allows.", "5 to 8.3 %"),
        (99, 1, 1.0, "it must never read low.", "1 to 12.3 %"),
        (99, 0, 0.0, "it must never read low.", "0 to 13.3 %"),
        (115, 1, 12.333, "more than is lawful.", "1 to 12.3 %"),
        (115, 0, 13.333, "more than is lawful.", "0 to 13.3 %"),
    ],
)
def test_a_tolerance_takes_of_both_ends(displayed, tolerance, limit, said, to):
    told = found(**reads(displayed, tolerance))
    assert told.outcome == NOT_MET
    assert f" now and after the change: {said}" in told.message
    assert told.limit == pytest.approx(limit, abs=0.001)
    assert told.remedy.text == f"{RECALIBRATED} {to} above the true speed"


# Where UN R39 does not forbid, why it only advises is told; that it would forbid is what makes it worth a word.
@pytest.mark.parametrize(
    ("pack", "built", "outcome", "why"),
    [
        ("unece", "2015-01-01", NOT_MET, ""),
        ("us", "2015-01-01", ADVISORY, "UN R39 is not law here; it only advises."),
        ("nz", "2015-01-01", ADVISORY, "UN R39 is not law here; it only advises."),
        ("jp", "2015-01-01", ADVISORY, "UN R39 is not law here; it only advises."),
        ("jp", ABSENT, ADVISORY, "Which rule is law here is open; UN R39 only advises."),
        ("au-nsw", ABSENT, ADVISORY, "Which rule is law here is open; UN R39 only advises."),
        ("au-nsw", "2015-01-01", ADVISORY, "The text of the rule here was not read: check the official text."),
    ],
)
@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (reads(99), "it must never read low."),
        ({READ: ABSENT, ROLLS: 1933.7 * 1.14}, "No speedometer that is lawful now stays so."),
    ],
)
def test_why_it_is_not_forbidden_is_told_where_it_would_be(pack, built, outcome, why, changes, said):
    told = found(**changes, **{"/rule_pack": pack, "/vehicle/built": built})
    assert told.outcome == outcome
    assert said in told.message
    assert [each for each in ("not law here", "is open", "not read") if each in told.message] == [
        each for each in ("not law here", "is open", "not read") if each in why
    ]
    assert why in told.message


# 1.1 x 1.1333 = 1.2467; tried at the speed shown (ADR 18/03), 1.1 x 120 / 105.4545 = 1.2517. Nothing forbids it: the
# present reading may be high enough.
@pytest.mark.parametrize(
    ("pack", "built", "most", "to"),
    [
        ("unece", "2015-01-01", 24.667, "10 to 24.6 %"),
        ("us", "2015-01-01", 24.667, "10 to 24.6 %"),
        ("au-nsw", "2015-01-01", 25.172, "10 to 25.1 %"),
    ],
)
def test_a_reading_that_nobody_took_is_asked_for_with_the_range_that_it_must_lie_in(pack, built, most, to):
    told = found(**{READ: ABSENT, ROLLS: 1933.7 * 1.1, "/rule_pack": pack, "/vehicle/built": built})
    assert (told.outcome, told.measured, told.limit) == (ADVISORY, pytest.approx(10.0), 1.5)
    assert told.message == (
        "The rolling circumference grows by 10 %, so the speedometer shows less than now. "
        f"It stays lawful if it now reads {to} above the true speed."
    )
    remedy = told.remedy
    assert (remedy.at_least, remedy.at_most) == (pytest.approx(10.0), pytest.approx(most, abs=0.001))
    assert (remedy.text, remedy.unit) == (f"{CHECKED} {to} above the true speed", "%")


@pytest.mark.parametrize(
    ("share", "outcome", "limit"), [(0.95, ADVISORY, -4.0), (0.97, MET, -4.0), (1.0, MET, 1.5), (1.05, ADVISORY, 1.5)]
)
def test_a_circumference_is_held_against_the_limit_on_its_side(share, outcome, limit):
    told = found(**{READ: ABSENT, ROLLS: ABSENT if share == 1.0 else 1933.7 * share})
    assert (told.outcome, told.measured, told.limit) == (outcome, pytest.approx(100.0 * (share - 1.0)), limit)


# 120 shown is not below a true 120, and 136 is 0.1 x 120 + 4 more: both are lawful to the last bit. What is lawful is
# held against "never too low", which UN R39 names first; only what reads too high is told the upper end.
@pytest.mark.parametrize(
    ("displayed", "outcome", "limit"),
    [(119.99, NOT_MET, 0.0), (120, MET, 0.0), (136, MET, 0.0), (136.01, NOT_MET, 13.333)],
)
def test_a_reading_just_at_the_end_of_the_lawful_range_is_lawful(displayed, outcome, limit):
    told = found(**{READ: {"displayed_kmh": displayed, "true_kmh": 120}})
    assert (told.outcome, told.limit) == (outcome, pytest.approx(limit, abs=0.001))


BY_STANDARD = {"/tyre_tolerance": "standard"}
LARGER = {f"/candidate/{axle}/tyre/size": "235/45 R17 97W XL" for axle in ("front", "rear")}
BOTH = (1.5**2 + 2.5**2) ** 0.5


@pytest.mark.parametrize(
    ("driven", "measured", "down", "up"),
    [
        # What counts is the driven axle, or both where both are or nobody says.
        ("front", "front", 1.5, 2.5),
        ("front", "rear", BOTH, BOTH),
        ("rear", "front", BOTH, BOTH),
        ("rear", "rear", 1.5, 2.5),
        ("all", "front", BOTH, BOTH),
        ("all", "rear", BOTH, BOTH),
        (ABSENT, "front", BOTH, BOTH),
    ],
)
def test_what_was_measured_of_the_driven_tyres_does_not_vary(driven, measured, down, up):
    rolls = {f"/vehicle/{measured}/fitted/tyre/rolling_circumference_mm": 1933, "/vehicle/driven_axle": driven}
    car = check(changed(saloon(), BY_STANDARD | LARGER | rolls)).car
    assert reading_tolerance_percent(car) == (pytest.approx(down), pytest.approx(up))


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        # The same tyres are what they were when it was read, to the last bit.
        (BY_STANDARD, 0.0),
        (BY_STANDARD | {f"{READ}/tolerance_percent": 2}, 2.0),
        ({f"{READ}/tolerance_percent": 2} | LARGER, 2.0),
        (BY_STANDARD | LARGER | {READ: ABSENT}, 0.0),
        (BY_STANDARD | LARGER | {f"{READ}/tolerance_percent": 2}, (2.0**2 + 1.5**2 + 2.5**2) ** 0.5),
    ],
)
def test_a_reading_varies_by_itself_and_by_tyres_that_change(changes, expected):
    down, up = reading_tolerance_percent(check(changed(saloon(), changes)).car)
    assert (down, up) == (pytest.approx(expected, abs=1e-12), pytest.approx(expected, abs=1e-12))


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (0.06, "grows by 0.1 %"),
        (0.004, "grows by less than 0.1 %"),
        (-0.004, "shrinks by less than 0.1 %"),
        (-0.14, "shrinks by 0.1 %"),
        (2.26, "grows by 2.3 %"),
    ],
)
def test_a_circumference_that_changes_at_all_is_told_which_way(change, said):
    shown = "less" if change > 0.0 else "more"
    assert speedometer_words.changes(change) == f"The rolling circumference {said}."
    assert speedometer_words.changes(change, shown=True) == (
        f"The rolling circumference {said}, so the speedometer shows {shown} than now."
    )


@pytest.mark.parametrize(
    ("now", "after", "low", "said"),
    [
        (3.14, 1.06, False, "3.1 % above the true speed now and 1.1 % above it after the change"),
        (3.14, -1.06, False, "3.1 % above the true speed now and 1.1 % below it after the change"),
        (3.14, 0.04, False, "3.1 % above the true speed now and the true speed after the change"),
        (3.14, -0.04, False, "3.1 % above the true speed now and the true speed after the change"),
        (3.14, 3.06, False, "3.1 % above the true speed now and after the change"),
        (-3.14, -0.04, True, "3.1 % below the true speed now and 0.04 % below it after the change"),
        (0.04, -0.04, False, "the true speed now and after the change"),
    ],
)
def test_a_reading_is_told_in_tenths_now_and_after(now, after, low, said):
    assert speedometer_words.reading(now, after, low=low) == f"The speedometer reads {said}"
