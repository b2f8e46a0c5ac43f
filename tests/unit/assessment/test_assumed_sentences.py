"""What was assumed, summed up or passed on: the axle that it is about, its number, and nothing where nothing is."""

from __future__ import annotations

import pytest

from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

OTHER = {"front": "rear", "rear": "front"}
# Provoked on one axle alone; the pressures are those of the saloon's papers and of the tyre's own limit.
ASSUMED = {
    "kerb mass": (
        {"/vehicle/{axle}/kerb_axle_mass_kg": ABSENT},
        "Estimates for the {axle} axle use its maximum mass, since the kerb mass is not given.",
    ),
    "impossible mass": (
        {"/vehicle/{axle}/kerb_axle_mass_kg": 1001},
        "The {axle} axle's kerb mass is above its maximum mass; one of the two must be wrong.",
    ),
    "present pressure": (
        {"/vehicle/{axle}/fitted/pressure_kpa": ABSENT, "/candidate/{axle}/pressure_kpa": ABSENT},
        "The present {axle} pressure is not given; ",
    ),
    "present pressure that cannot be": (
        {"/vehicle/{axle}/fitted/pressure_kpa": 150},
        "The present {axle} pressure is not right for its tyre; the comparison takes ",
    ),
    "proposed pressure": (
        {"/candidate/{axle}/pressure_kpa": ABSENT},
        "The proposed {axle} pressure is not given; everything is computed for the 250 kPa to be set.",
    ),
    "proposed pressure that cannot be": (
        {"/candidate/{axle}/pressure_kpa": 150},
        "The proposed {axle} pressure that is given is not used; everything is computed for the 250 kPa to be set.",
    ),
    "no pressure can be ordered": (
        {"/candidate/{axle}/pressure_kpa": ABSENT, "/candidate/{axle}/tyre/size": "225/45 R17"},
        "The proposed {axle} pressure is not given; 250 kPa is assumed for the estimates alone.",
    ),
    "axle mass": (
        {"/vehicle/{axle}/max_axle_mass_kg": ABSENT},
        "The maximum mass of the {axle} axle is not given; it is taken to be no more than the ",
    ),
}
SALOON = check(saloon())


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("name", sorted(ASSUMED))
def test_what_is_assumed_of_an_axle_names_that_axle_and_its_number(name, axle):
    changes, words = ASSUMED[name]
    found = check(changed(saloon(), {pointer.format(axle=axle): value for pointer, value in changes.items()}))
    begins = words.format(axle=axle)
    assert len([each for each in found.assumptions if each.startswith(begins)]) == 1
    other = words.format(axle=OTHER[axle])
    assert [each for each in found.assumptions if each.startswith(other)] == []
    assert [each for each in SALOON.assumptions if each.startswith((begins, other))] == []


def test_the_saloon_s_own_pressures_are_taken_as_they_are():
    assert [each for each in SALOON.assumptions if "pressure" in each] == []


def test_a_kerb_mass_as_large_as_the_maximum_is_possible():
    found = check(changed(saloon(), {"/vehicle/front/kerb_axle_mass_kg": 960}))
    assert [each for each in found.assumptions if "must be wrong" in each] == []


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_sentence_on_another_kind_of_tyre_needs_one_axle_only(axle):
    found = check(changed(saloon(), {f"/candidate/{axle}/tyre/size": "225/45 R17 94W XL 3PMSF"}))
    told = "The proposed tyres are of another kind than the present ones"
    assert [each.startswith(told) for each in found.assumptions].count(True) == 1
    assert [each for each in SALOON.assumptions if each.startswith(told)] == []


@pytest.mark.parametrize(
    "pointer", ["/vehicle/front/fitted", "/vehicle/rear/fitted", "/candidate/front", "/candidate/rear"]
)
def test_any_tyre_without_a_tread_depth_counts_as_new(pointer):
    told = "A tyre without a tread depth counts as new (8 mm)."
    assert told in check(changed(saloon(), {f"{pointer}/tyre/tread_depth_mm": ABSENT})).assumptions
    assert told not in SALOON.assumptions


@pytest.mark.parametrize(
    ("front", "rear", "order"),
    [
        ("205/50 R17 89W", None, "front"),
        (None, "205/50 R17 89W", "rear"),
    ],
)
def test_only_a_car_that_had_one_size_all_round_hears_of_two(front, rear, order):
    rim = "7.5J x 17 H2 ET45"
    found = check(saloon(*((size, rim) if size else None for size in (front, rear))))
    lines = [each.text for each in found.actions if each.code == "tell_unlike_sizes"]
    assert len(lines) == 1
    staggered = changed(saloon(), {f"/vehicle/{order}/fitted/tyre/size": "205/50 R17 89W"})
    kept = check(changed(staggered, {f"/candidate/{order}/tyre/size": "205/50 R17 89W"}))
    assert [each.code for each in kept.actions if each.code == "tell_unlike_sizes"] == []
    assert [each.code for each in SALOON.actions if each.code == "tell_unlike_sizes"] == []


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_without_a_load_index_the_maker_names_the_pressure_of_that_axle(axle):
    found = check(
        changed(saloon(), {f"/candidate/{axle}/tyre/size": "225/45 R17", f"/candidate/{axle}/pressure_kpa": ABSENT})
    )
    lines = {each.code: each.text for each in found.actions}
    assert lines[f"set_pressure_{axle}"] == (
        f"Set the {axle} tyres to the pressure that their maker states for the load."
    )
    assert lines[f"set_pressure_{OTHER[axle]}"] == f"Set the {OTHER[axle]} tyres to 250 kPa (2.5 bar), cold."


@pytest.mark.parametrize(
    ("change", "told"),
    [
        # 432 + 2 x 106 mm beside 432 + 2 x 101 mm (UN R30 6.1.2.1): 1.6 %.
        ("235/45 R17 97W XL", True),
        ("225/45 R17 94Y XL", False),
    ],
)
def test_stability_control_is_reset_where_a_circumference_changes(change, told):
    found = check(changed(saloon(), on_both_axles({"/candidate/{axle}/tyre/size": change})))
    assert ("stability_control" in {each.code for each in found.actions}) == told


def labels(before, after):
    both = on_both_axles({"/vehicle/{axle}/fitted/tyre/label": before, "/candidate/{axle}/tyre/label": after})
    return check(changed(saloon(), both)).label_effects


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ("B", "D", "take"),
        ("D", "B", "save"),
    ],
)
def test_a_better_rolling_resistance_saves_and_a_worse_one_takes(before, after, words):
    told = labels({"rolling_resistance_class": before}, {"rolling_resistance_class": after})
    assert told.text.startswith(f"The rolling resistance classes {words} ")
    assert (told.energy_kwh_per_100km.value > 0.0) == (words == "take")
    assert f"{abs(told.energy_kwh_per_100km.value):.2f}".rstrip("0") in told.text
    assert told.wet_braking_distance_percent is None


def test_a_label_on_one_side_only_tells_nothing():
    told = labels({"rolling_resistance_class": "B"}, {"noise_db": 71})
    assert told.text == "The label's classes are not given on both sides, so their effect is not told."


FACTS = [
    {"/candidate/rear/tyre/size": "225/15 R17 94W XL", "/candidate/rear/tyre/overall_diameter_mm": 634},
    {"/candidate/front/tyre/size": "225 R17 94W"},
]


@pytest.mark.parametrize(
    ("facts", "begins"),
    [
        (FACTS[:1], "Not known yet: one fact is missing. Rear axle: "),
        (FACTS[1:], "Not known yet: three facts are missing. Front axle: "),
        (FACTS, "Not known yet: three facts are missing. Both axles: "),
    ],
)
def test_missing_facts_are_counted_by_what_settles_them(facts, begins):
    # Of a size without an aspect ratio rim width, diameter and section width must be looked up, each counted once.
    found = check(changed(saloon(), {pointer: value for each in facts for pointer, value in each.items()}))
    assert found.verdict == "undetermined"
    assert found.summary.startswith(begins)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_of_a_van_s_tyre_without_an_index_its_sidewall_has_the_last_word_on_that_axle(axle):
    changes = {f"/candidate/{axle}/tyre/size": "225/45 R17C", f"/candidate/{axle}/pressure_kpa": ABSENT}
    (line,) = (each.text for each in check(changed(saloon(), changes)).actions if each.code == f"set_pressure_{axle}")
    assert line == (
        f"Set the {axle} tyres to their maker's pressure for the load, never above what the sidewall states."
    )


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_tyre_without_an_index_for_twins_is_told_of_on_its_axle(axle):
    twins = on_both_axles({"/vehicle/{axle}/wheels_per_side": 2})
    found = check(changed(saloon(), twins | {f"/candidate/{OTHER[axle]}/tyre/size": "225/45 R17C 94/92W"}))
    told = [each for each in found.assumptions if "twin mounting" in each]
    assert told == [f"The {axle} tyre states no load index for twin mounting; its single index is taken for it."]


def test_the_water_of_all_estimates_is_said_in_millimetres():
    assert "Aquaplaning is estimated for 2 mm of water on a road with 1 mm of texture." in SALOON.assumptions


def test_the_order_on_the_speedometer_gives_the_change_in_per_cent():
    # 432 + 2 x 106 mm beside 432 + 2 x 101 mm: 644 / 634 is 1.6 % more.
    larger = on_both_axles({"/candidate/{axle}/tyre/size": "235/45 R17 97W XL"})
    found = check(changed(saloon(), larger | {"/vehicle/speedometer": ABSENT}))
    (line,) = (each.text for each in found.actions if each.code == "speedometer")
    assert line == (
        "Have the speedometer checked and, where needed, recalibrated: the circumference changes by +1.6 %."
    )


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_spigot_ring_is_told_to_a_tenth_and_room_to_measure_comes_before_the_order(axle):
    ring = check(changed(saloon(), {f"/candidate/{axle}/rim/centre_bore_mm": 72.56}))
    told = {each.code: each.text for each in ring.actions}
    assert told[f"spigot_rings_{axle}"] == f"Fit spigot rings 72.6 to 66.6 mm on the {axle} axle."
    assert "measure_before_order" not in told
    # 9 mm further out, and nobody measured.
    unmeasured = {f"/vehicle/{axle}/clearance": ABSENT, f"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET36"}
    lines = {each.code: each.text for each in check(changed(saloon(), unmeasured)).actions}
    assert (
        f"{axle} axle: measure the room between wheel and wing edge: 14 mm is enough." in lines["measure_before_order"]
    )


WATER = "Aquaplaning is estimated for 2 mm of water on a road with 1 mm of texture."
TURNS = "Load transfer in a bend is taken at 0.3 g, on axles whose track is given."
NOT_READ = "Not read: FOO. Words that are not known change nothing in the answer."
ASSUMES_RADIAL = "No construction is printed: radial is assumed; if the sidewall says otherwise, write D or B there."


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("now", "then", "told"),
    [
        ("225/45 R17 94W XL FOO", "225/45 R17 94W XL", ["{}, present tyre: " + NOT_READ]),
        ("225/45 R17 94W XL", "225/45 R17 94W XL FOO", ["{}: " + NOT_READ]),
        # The same on both sides is said of the new one alone.
        ("225/45 R17 94W XL FOO", "225/45 R17 94W XL FOO", ["{}: " + NOT_READ]),
        (
            "225/45 17 94W XL",
            "225/45 17 94V XL",
            ["{}: " + ASSUMES_RADIAL, "{}, present tyre: " + ASSUMES_RADIAL],
        ),
    ],
)
def test_what_was_not_read_or_is_taken_of_a_designation_is_told_of_its_tyre(axle, now, then, told):
    changes = {f"/vehicle/{axle}/fitted/tyre/size": now, f"/candidate/{axle}/tyre/size": then}
    found = check(changed(saloon(), changes)).assumptions
    assert found == [each.format(axle.capitalize()) for each in told] + [WATER, TURNS]


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({}, [WATER, TURNS]),
        ({"/vehicle/centre_of_gravity_height_mm": ABSENT}, [WATER]),
        # A trailer is not steered and nobody reckons where it floats.
        ({"/vehicle/category": "O2"}, [TURNS]),
        (
            {"/vehicle/driven_axle": ABSENT},
            [
                "The driven axle is not given; the speedometer is taken to follow the mean of both axles.",
                WATER,
                TURNS,
            ],
        ),
    ],
)
def test_all_that_is_assumed_of_a_car_of_which_everything_is_stated(changes, told):
    assert check(changed(saloon(), changes)).assumptions == told
