"""Bolt circle and centre bore by who was looked at: the hub, the present rim that is on it, the proposed rim.

What the present rim has is the hub's where nobody looked at that; only a hub that was measured refuses. Where the rim
stays, what either states of it holds. Common practice, no source.
"""

import pytest

from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, OPEN
from tests.support.cases import ABSENT, changed, check, finding, saloon

HUB, NOW, RIM = "/vehicle/rear/hub", "/vehicle/rear/fitted/rim", "/candidate/rear/rim"
OTHER_RIM = {f"{RIM}/size": "8J x 17 H2 ET45"}


def asked(field, known, changes):
    """Return the finding where hub, present and proposed rim have these values."""
    values = {f"{place}/{field}": value for place, value in zip((HUB, NOW, RIM), known, strict=True)}
    code = {"bolt_circle": "rim.bolt_circle", "centre_bore_mm": "rim.centre_bore"}[field]
    return finding(check(changed(saloon(), values | changes)), code)


NOT_ON = "the wheel does not go on."
ON_THE_BACK = "read the bolt circle on the back of the present wheel, or measure the hub"


@pytest.mark.parametrize(
    ("known", "outcome", "said", "pointer", "text"),
    [
        (("5x112", "5x112", "5x112"), MET, "Rim and hub both have bolt circle 5x112.", "", ""),
        (
            ("5x112", "5x112", "4x112"),
            NOT_MET,
            f"The rim's bolt circle is 4x112, the hub's 5x112: {NOT_ON}",
            RIM,
            "other rims, with bolt circle 5x112",
        ),
        (
            ("5x112", "5x120", "5x120"),
            NOT_MET,
            f"The rim's bolt circle is 5x120, the hub's 5x112: {NOT_ON}",
            RIM,
            "other rims, with bolt circle 5x112",
        ),
        (
            (ABSENT, "5x112", "5x112"),
            MET,
            "The rim has bolt circle 5x112 as the present rim, so it is taken to be the hub's.",
            "",
            "",
        ),
        (
            (ABSENT, "5x112", "5x120"),
            NOT_MET,
            f"The rim's bolt circle is 5x120, the present rim's 5x112: {NOT_ON}",
            RIM,
            "other rims, with bolt circle 5x112",
        ),
        (
            (ABSENT, ABSENT, "5x112"),
            NOT_ASSESSED,
            "The hub's bolt circle is not known.",
            HUB,
            f"{ON_THE_BACK}: 5x112 is enough",
        ),
        ((ABSENT, ABSENT, ABSENT), NOT_ASSESSED, "The hub's bolt circle is not known.", HUB, ON_THE_BACK),
        (
            ("5x112", ABSENT, ABSENT),
            NOT_ASSESSED,
            "The rim's bolt circle is not known. The hub has 5x112.",
            RIM,
            "read the bolt circle on the back of the wheel: 5x112 is enough",
        ),
        (
            (ABSENT, "5x112", ABSENT),
            NOT_ASSESSED,
            "The rim's bolt circle is not known. The present rim has 5x112.",
            RIM,
            "read the bolt circle on the back of the wheel: 5x112 is enough",
        ),
    ],
)
def test_the_bolt_circle_is_held_against_whoever_was_looked_at(known, outcome, said, pointer, text):
    found = asked("bolt_circle", known, OTHER_RIM)
    assert found.outcome == outcome
    assert found.message.startswith(said)
    told = ("", "") if found.remedy is None else (found.remedy.pointer, found.remedy.text)
    assert told == (f"{pointer}/bolt_circle" if pointer else "", text)


@pytest.mark.parametrize(
    ("known", "outcome", "said", "pointer", "text", "ends"),
    [
        ((66.6, 66.6, 66.6), MET, "The rim's centre bore of 66.6 mm fits the hub's 66.6 mm.", "", "", ()),
        (
            (66.6, 66.6, 60.1),
            NOT_MET,
            f"The rim's centre bore of 60.1 mm is smaller than the hub's 66.6 mm: {NOT_ON}",
            RIM,
            "other rims, with a centre bore of 66.6 mm, or a larger one and spigot rings",
            (66.6, 66.6),
        ),
        (
            (66.6, 66.6, 73.1),
            ADVISORY,
            "The rim's centre bore of 73.1 mm is larger than the hub's 66.6 mm: spigot rings are needed.",
            RIM,
            "spigot rings 73.1 to 66.6 mm, or other rims with a centre bore of 66.6 mm",
            (66.6, 66.6),
        ),
        ((ABSENT, 66.6, 66.6), MET, "The rim's centre bore is 66.6 mm, as the present rim's.", "", "", ()),
        (
            (ABSENT, 66.6, 60.1),
            NOT_ASSESSED,
            "The rim's centre bore of 60.1 mm is smaller than the present rim's 66.6 mm.",
            HUB,
            "measure the centring spigot of the hub: 60.1 mm or less is enough",
            (None, 60.1),
        ),
        (
            (ABSENT, 66.6, 73.1),
            ADVISORY,
            "The rim's centre bore is 73.1 mm, the present rim's 66.6 mm: spigot rings are needed.",
            RIM,
            "spigot rings from 73.1 mm to the hub as measured, or other rims with a centre bore of 66.6 mm",
            (66.6, 66.6),
        ),
        (
            (ABSENT, ABSENT, 66.6),
            NOT_ASSESSED,
            "The hub's centre bore is not known.",
            HUB,
            "measure the centring spigot of the hub: 66.6 mm or less is enough",
            (None, 66.6),
        ),
        (
            (ABSENT, ABSENT, ABSENT),
            NOT_ASSESSED,
            "Neither the hub's nor the rim's centre bore is known.",
            HUB,
            "measure the centring spigot of the hub, and the rim's centre bore",
            (None, None),
        ),
        (
            (66.6, ABSENT, ABSENT),
            NOT_ASSESSED,
            "The rim's centre bore is not known. The hub has 66.6 mm.",
            RIM,
            "measure the rim's centre bore: 66.6 mm is enough",
            (66.6, None),
        ),
        (
            (ABSENT, 66.6, ABSENT),
            NOT_ASSESSED,
            "The rim's centre bore is not known. The present rim has 66.6 mm.",
            RIM,
            "measure the rim's centre bore: 66.6 mm is enough",
            (66.6, None),
        ),
    ],
)
def test_the_centre_bore_is_held_against_whoever_was_looked_at(known, outcome, said, pointer, text, ends):
    found = asked("centre_bore_mm", known, OTHER_RIM)
    assert found.outcome == outcome
    assert found.message.startswith(said)
    if pointer:
        assert (found.remedy.pointer, found.remedy.text) == (f"{pointer}/centre_bore_mm", text)
        assert ((found.remedy.at_least, found.remedy.at_most), found.remedy.unit) == (ends, "mm")
    else:
        assert found.remedy is None
    # A ring is not ordered by a hub that nobody measured.
    if outcome == ADVISORY:
        assert found.limit == (None if known[0] is ABSENT else 66.6)


@pytest.mark.parametrize(
    ("field", "known", "outcome"),
    [
        ("bolt_circle", (ABSENT, "5x112", ABSENT), MET),
        ("bolt_circle", ("5x112", "5x112", ABSENT), MET),
        ("bolt_circle", ("5x112", "5x120", ABSENT), NOT_MET),
        ("bolt_circle", (ABSENT, ABSENT, "5x112"), OPEN),
        ("bolt_circle", (ABSENT, ABSENT, ABSENT), OPEN),
        ("bolt_circle", ("5x112", ABSENT, ABSENT), OPEN),
        ("centre_bore_mm", (ABSENT, 66.6, ABSENT), MET),
        ("centre_bore_mm", (66.6, 66.6, ABSENT), MET),
        ("centre_bore_mm", (66.6, 60.1, ABSENT), NOT_MET),
        ("centre_bore_mm", (ABSENT, ABSENT, 66.6), OPEN),
        ("centre_bore_mm", (ABSENT, ABSENT, ABSENT), OPEN),
        ("centre_bore_mm", (66.6, ABSENT, ABSENT), OPEN),
        # What is smaller than what is on the car today is a question whatever rim it is.
        ("centre_bore_mm", (ABSENT, 66.6, 60.1), NOT_ASSESSED),
    ],
)
def test_the_rim_that_stays_has_what_the_present_one_states(field, known, outcome):
    assert asked(field, known, {}).outcome == outcome


@pytest.mark.parametrize(
    ("now", "then", "outcome"),
    [
        (ABSENT, ABSENT, OPEN),
        (700, ABSENT, MET),
        (ABSENT, 700, MET),
        (450, ABSENT, NOT_MET),
        (450, 700, MET),
        (700, 450, NOT_MET),
    ],
)
def test_the_rim_that_stays_has_the_rating_of_the_present_one(now, then, outcome):
    """Each of two rims carries 500 kg."""
    ratings = {f"{NOW}/load_rating_kg": now, f"{RIM}/load_rating_kg": then}
    assert finding(check(changed(saloon(), ratings)), "rim.load_rating").outcome == outcome
    if then is ABSENT:
        other = finding(check(changed(saloon(), ratings | OTHER_RIM)), "rim.load_rating")
        assert (other.outcome, other.remedy.at_least, other.remedy.unit) == (NOT_ASSESSED, 500.0, "kg")
