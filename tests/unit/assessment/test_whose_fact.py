"""Which wheel, tyre or axle a sentence means: what is lacking is asked of the very one that lacks it, with its pointer.

Each fact is left out at one place after the other, front and rear, present and new; the words are checked against the
place and not against the code.
"""

from __future__ import annotations

import pytest

from service.assessment.answer import missing_words
from service.assessment.answer.measure_first import measure_first
from service.assessment.answer.missing_facts import missing_facts
from service.core.saying import Said
from tests.support.cases import ABSENT, changed, check, finding, saloon

PLACES = [(which, axle) for which in ("present", "new") for axle in ("front", "rear")]
OTHER = {"front": "rear", "rear": "front"}


def at(which, axle):
    return f"/vehicle/{axle}/fitted" if which == "present" else f"/candidate/{axle}"


def remedy_of(found, code, axle):
    told = finding(found, code, axle)
    assert told.remedy is not None
    return told.remedy


@pytest.mark.parametrize(("which", "axle"), PLACES)
def test_the_rim_without_an_offset_is_the_one_to_be_read(which, axle):
    bare = changed(saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45"), ("245/40 R18 97Y XL", "8J x 18 H2 ET45")), {})
    rim = "7.5J x 17 H2" if which == "present" else "8J x 18 H2"
    found = check(changed(bare, {f"{at(which, axle)}/rim/size": rim}))
    remedy = remedy_of(found, "clearance.inboard", axle)
    assert remedy.text.startswith(f"read the offset (ET) on the back of the {which} {axle} wheel")
    assert remedy.pointer == f"{at(which, axle)}/rim/size"
    assert finding(found, "clearance.inboard", OTHER[axle]).message.startswith("The wheel needs")


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_new_tyre_without_a_service_description_is_the_one_to_be_chosen_again(axle):
    found = check(changed(saloon(), {f"/candidate/{axle}/tyre/size": "225/45 R17"}))
    remedy = remedy_of(found, "load.capacity", axle)
    assert remedy.pointer == f"/candidate/{axle}/tyre/size"
    assert remedy.text.startswith("load index ")
    assert finding(found, "load.capacity", OTHER[axle]).remedy is None


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_present_tyre_without_a_service_description_is_the_one_to_be_read_for_the_balance(axle):
    found = check(changed(saloon(), {f"/vehicle/{axle}/fitted/tyre/size": "225/45 R17"}))
    remedy = remedy_of(found, "balance.change", "vehicle")
    assert remedy.text == f"read load index and speed symbol on the sidewall of the present {axle} tyre"
    assert remedy.pointer == f"/vehicle/{axle}/fitted/tyre/size"


@pytest.mark.parametrize(("which", "axle"), PLACES)
def test_the_tyre_whose_size_no_table_has_is_the_one_to_be_measured(which, axle):
    found = check(changed(saloon(), {f"{at(which, axle)}/tyre/size": "7.60-17 94S"}))
    for code, where in (("diameter.deviation", axle), ("diameter.axle_ratio", "vehicle")):
        remedy = remedy_of(found, code, where)
        assert remedy.text == (
            f"look up the overall diameter of the {which} {axle} tyre in its maker's data, or measure it"
        )
        assert remedy.pointer == f"{at(which, axle)}/tyre/overall_diameter_mm"


@pytest.mark.parametrize(("now", "then"), [("225/45 R17 94W XL", "225/45-17 94W"), ("225/45-17 94W", "225/45 R17 94W")])
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_structure_to_keep_is_the_present_one(axle, now, then):
    sizes = {f"/vehicle/{axle}/fitted/tyre/size": now, f"/candidate/{axle}/tyre/size": then}
    remedy = remedy_of(check(changed(saloon(), sizes)), "balance.change", "vehicle")
    word = "radial" if "R" in now.split()[1] else "diagonal"
    assert remedy.text.startswith(f"{word} tyres as at present")
    assert (remedy.equals, remedy.pointer) == (word, f"/candidate/{axle}/tyre/size")


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("which", ["present", "new"])
def test_a_crushed_tyre_is_the_one_to_be_pumped(which, axle):
    heavy = {f"/vehicle/{axle}/kerb_axle_mass_kg": 2000, f"/vehicle/{axle}/max_axle_mass_kg": 2400}
    low = {f"{at(which, axle)}/tyre/size": "225/25 R17 94W XL"}
    remedy = remedy_of(check(changed(saloon(), heavy | low)), "wet.aquaplaning", axle)
    assert remedy.text.endswith(f" in the {which} {axle} tyre, or a tyre that is not crushed by its load")
    assert remedy.pointer == f"{at(which, axle)}/pressure_kpa"
    # Just above it the onset is known, just below it is not.
    above, below = (
        check(changed(saloon(), heavy | low | {remedy.pointer: remedy.at_least + step})) for step in (1.0, -1.0)
    )
    told = [finding(each, "wet.aquaplaning", axle).remedy for each in (above, below)]
    assert [each is None for each in told] == [True, False]


FACTS = {
    "max_axle_mass_kg": ("maximum mass", "/vehicle/{axle}/max_axle_mass_kg"),
    "kerb_axle_mass_kg": ("kerb mass", "/vehicle/{axle}/kerb_axle_mass_kg"),
    "track_mm": ("track", "/vehicle/{axle}/track_mm"),
    "clearance/inboard_mm": ("strut", "/vehicle/{axle}/clearance/inboard_mm"),
    "clearance/outboard_mm": ("wing edge", "/vehicle/{axle}/clearance/outboard_mm"),
    "clearance/radial_mm": ("wheel arch", "/vehicle/{axle}/clearance/radial_mm"),
    "fitted/pressure_kpa": ("present", "/vehicle/{axle}/fitted/pressure_kpa"),
}
CHANGED = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45"), ("245/40 R18 97Y XL", "8J x 18 H2 ET45"))


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("field", sorted(FACTS))
def test_a_fact_that_is_not_given_is_named_with_its_axle_and_pointer(axle, field):
    words, pointer = FACTS[field]
    case = check(changed(CHANGED, {f"/vehicle/{axle}/{field}": ABSENT})).case
    (missing,) = missing_facts(case)
    assert words in missing.text
    assert axle in missing.text
    assert OTHER[axle] not in missing.text
    assert missing.pointer == pointer.format(axle=axle)


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("field", "words"),
    [
        ("tyre/tread_depth_mm", "the tread depth of the proposed {axle} tyres"),
        ("rim/load_rating_kg", "the load rating of the {axle} rims"),
        ("rim/bolt_circle", "the bolt circle of the {axle} rims"),
        ("rim/centre_bore_mm", "the centre bore of the {axle} rims"),
    ],
)
def test_a_fact_of_the_candidate_is_named_with_its_axle_and_pointer(axle, field, words):
    case = check(changed(CHANGED, {f"/candidate/{axle}/{field}": ABSENT})).case
    (missing,) = missing_facts(case)
    assert (missing.text, missing.pointer) == (words.format(axle=axle), f"/candidate/{axle}/{field}")


def test_every_fact_has_a_name_for_each_axle_and_no_two_are_one():
    named = [each for each in vars(missing_words).values() if isinstance(each, missing_words.OnAxle)]
    assert len(named) >= 14
    for each in named:
        assert all(isinstance(text, Said) for text in each)
        assert "front" in each.of("front")
        assert "rear" in each.of("rear")
        assert each.of("front").replace("front", "rear") == each.of("rear")
    assert len({each.front for each in named}) == len(named)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_to_measure_first_settles_the_question_of_that_axle(axle):
    bare = changed(CHANGED, {f"/vehicle/{axle}/clearance/outboard_mm": ABSENT})
    (first,) = measure_first(check(bare).case)
    assert (first.text, first.settles) == (f"the room to the wing edge, {axle}", ("clearance.outboard",))


# Lines of the job card that name an axle, each provoked at one axle only.
LINES = {
    "set_pressure_{axle}": ({}, "Set the {axle} tyres to 250 kPa (2.5 bar), cold."),
    "bolt_seat": (
        {"/candidate/{axle}/rim/size": "8J x 17 H2 ET45"},
        "Check on the {axle} axle that the bolts belong to these rims",
    ),
    "spigot_rings_{axle}": (
        {"/candidate/{axle}/rim/centre_bore_mm": 72.6},
        "Fit spigot rings 72.6 to 66.6 mm on the {axle} axle.",
    ),
    "trial_fit": (
        {"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET34"},
        "Trial fit on the {axle} axle (wing edge), ",
    ),
    "tell_load_below_present_{axle}": (
        {"/candidate/{axle}/tyre/size": "225/45 R17 91W"},
        "Tell the customer ({axle} axle): The axle's tyres carry ",
    ),
}


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("code", sorted(LINES))
def test_a_line_of_the_job_card_names_the_axle_that_it_is_about(axle, code):
    changes, words = LINES[code]
    found = check(changed(saloon(), {pointer.format(axle=axle): value for pointer, value in changes.items()}))
    (line,) = (each for each in found.actions if each.code == code.format(axle=axle))
    assert line.text.startswith(words.format(axle=axle))
    assert f"{OTHER[axle]} axle" not in line.text


def test_only_wheels_in_front_are_turned_for_a_trial_fit():
    turned = {}
    for axle in ("front", "rear"):
        found = check(changed(saloon(), {f"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET34"}))
        (line,) = (each for each in found.actions if each.code == "trial_fit")
        turned[axle] = "at full lock" in line.text
    assert turned == {"front": True, "rear": False}


@pytest.mark.parametrize(
    ("inboard", "then", "words"),
    [
        # The present fitment has as little room: it is left as it is.
        (3, "7.5J x 17 H2 ET45", "The change leaves this as it is today."),
        # Further out by 1 mm leaves 4 of 5 mm: still scarce, and better than today.
        (3, "7.5J x 17 H2 ET44", "It is worse today."),
    ],
)
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_is_so_today_is_said_by_both_numbers(axle, inboard, then, words):
    changes = {f"/vehicle/{axle}/clearance/inboard_mm": inboard, f"/candidate/{axle}/rim/size": then}
    found = finding(check(changed(saloon(), changes)), "clearance.inboard", axle)
    assert found.already
    assert found.message.endswith(words)
    assert not finding(check(changed(saloon(), changes)), "clearance.inboard", OTHER[axle]).already


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_the_change_makes_worse_is_not_so_today(axle):
    # Further in by 1 mm leaves 2 of the 3 mm of today: scarce before and after, and scarcer after.
    changes = {f"/vehicle/{axle}/clearance/inboard_mm": 3, f"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET46"}
    found = finding(check(changed(saloon(), changes)), "clearance.inboard", axle)
    assert not found.already
    assert "today" not in found.message
