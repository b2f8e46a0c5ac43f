"""What would keep a rule of a place where spacers, two bounds or the tyre's own rims have a say; and what lacks for it.

The wheel goes from 225/45 R17 (634 mm high, 224.7 mm wide, ET45) to 235/40 R18 95Y on 8.5J ET35, measured to be 241 mm
wide, on a track of 1,540 mm; half of what the track may grow is the offset. Sizes by UN R30 6.1.1.1 and 6.1.2.1.
"""

from dataclasses import replace

import pytest

from service.assessment.law.law_remedies import law_remedy, missing_for_law
from service.assessment.law.law_words import explained
from service.assessment.law.measured_quantities import ON_AN_AXLE
from service.core.findings import MET
from service.rules.reader import default_packs
from service.rules.rule import Bound
from tests.support.cases import ABSENT, changed, check, finding, saloon
from tests.unit.assessment.test_edges_of_law import MASS, axle, rule

RIM, SPACER = "/candidate/rear/rim/size", "/candidate/rear/spacer_mm"
NOW = "/vehicle/rear/fitted"
IN_THE_NETHERLANDS = "in the Netherlands."


def either(*bounds):
    """Return a rule that is kept by keeping one of these bounds."""
    return replace(rule(*bounds[0]), bounds=tuple(Bound(*each) for each in bounds))


# What allows most is advised: 5 % of 224.7 mm are 11.235, 1 % of 1,540 mm 15.4 and 2 % of 634 mm 12.68.
@pytest.mark.parametrize(
    ("bounds", "ends", "found"),
    [
        (
            (("section_width_change_mm", "at_most", 10.0, "mm"), ("section_width_change_percent", "at_most", 5.0, "%")),
            (None, 235.935),
            "The tyre's section width grows by 16 mm or 7.3 %; 10 mm or 5 % is allowed",
        ),
        (
            (("section_width_change_mm", "at_most", 12.0, "mm"), ("section_width_change_percent", "at_most", 5.0, "%")),
            (None, 236.7),
            "The tyre's section width grows by 16 mm or 7.3 %; 12 mm or 5 % is allowed",
        ),
        (
            (("track_change_mm", "at_most", 10.0, "mm"), ("track_change_percent", "at_most", 1.0, "%")),
            (37.3, None),
            "The track grows by 20 mm or 1.3 %; 10 mm or 1 % is allowed",
        ),
        (
            (
                ("overall_diameter_change_mm", "at_least", 15.0, "mm"),
                ("overall_diameter_change_percent", "at_least", 2.0, "%"),
            ),
            (646.68, None),
            "The overall diameter grows by 11 mm or 1.7 %; 15 mm or 2 % is allowed",
        ),
    ],
)
def test_of_two_bounds_the_easier_one_is_advised_and_both_are_told(bounds, ends, found):
    asked, view = either(*bounds), axle()
    remedy = law_remedy(asked, view)
    for end, expected in zip((remedy.at_least, remedy.at_most), ends, strict=True):
        assert end == (None if expected is None else pytest.approx(expected, abs=0.001))
    values = tuple(ON_AN_AXLE[each.quantity](view) for each in asked.bounds)
    assert explained(asked, values, view) == f"{found} {IN_THE_NETHERLANDS}"


# A 245/40 R18 takes 8 to 9 1/2 in (approved rim widths, ETRTO, from memory); the rim was 7.5 in wide.
@pytest.mark.parametrize(
    ("bound", "text", "ends"),
    [
        (("at_most", 20.0), "a rim width of 8 to 8.2 in", (8.0, 7.5 + 20.0 / 25.4)),
        (("at_least", 30.0), "a rim width of 8.7 to 9.5 in", (7.5 + 30.0 / 25.4, 9.5)),
        (("at_most", 12.7), "a rim width of 8 in", (8.0, 8.0)),
        (("at_most", 5.0), "a rim width of 7.6 in or less, and a tyre that is approved on it", (None, None)),
        (("at_least", 60.0), "a rim width of 9.9 in or more, and a tyre that is approved on it", (None, None)),
    ],
)
def test_a_rim_width_by_the_law_is_one_that_the_tyre_takes_too(bound, text, ends):
    remedy = law_remedy(
        rule("rim_width_change_mm", *bound, "mm"), axle(**{"/candidate/rear/tyre/size": "245/40 R18 95Y XL"})
    )
    assert remedy.text == text
    for end, expected in zip((remedy.at_least, remedy.at_most), ends, strict=True):
        assert end == (None if expected is None else pytest.approx(expected, abs=1e-6))


# A spacer of 6 mm takes as much from the offset: 45 - 5 + 6. Where nobody read the offset and the rim stays, it is
# the spacer that is limited: 5 mm a side, beyond the spacer of today.
UNREAD = {f"{NOW}/rim/size": "8.5J x 18 H2", RIM: "8.5J x 18 H2"}


@pytest.mark.parametrize(
    ("bound", "changes", "text", "ends"),
    [
        (("track_change_mm", "at_most", 10.0, "mm"), {}, "rims with ET 46 or more on these spacers", (46.0, None)),
        (("offset_change_mm", "at_least", -5.0, "mm"), {}, "rims with ET 46 or more on these spacers", (46.0, None)),
        (("track_change_mm", "at_most", 10.0, "mm"), {SPACER: 0}, "rims with ET 40 or more", (40.0, None)),
        (("spacer_mm", "at_most", 3.0, "mm"), {}, "spacers of 3 mm or less", (None, 3.0)),
        (("spacer_mm", "at_most", 0.0, "mm"), {}, "no spacers", (None, 0.0)),
        (("track_change_mm", "at_most", 10.0, "mm"), UNREAD, "spacers of 5 mm or less", (None, 5.0)),
        (("track_change_abs_mm", "at_most", 10.0, "mm"), UNREAD, "spacers of 5 mm or less", (None, 5.0)),
        (("offset_change_mm", "at_least", -5.0, "mm"), UNREAD, "spacers of 5 mm or less", (None, 5.0)),
        (("track_change_mm", "at_least", 14.0, "mm"), UNREAD, "spacers of 7 mm or more", (7.0, None)),
        (
            ("track_change_mm", "at_most", 10.0, "mm"),
            {**UNREAD, f"{NOW}/spacer_mm": 3},
            "spacers of 8 mm or less",
            (None, 8.0),
        ),
        (
            ("track_change_abs_mm", "at_most", 4.0, "mm"),
            {**UNREAD, f"{NOW}/spacer_mm": 3},
            "spacers of 1 to 5 mm",
            (1.0, 5.0),
        ),
        (("track_change_mm", "at_most", 0.0, "mm"), UNREAD, "no spacers", (None, 0.0)),
    ],
)
def test_spacers_have_a_say_in_the_offset(bound, changes, text, ends):
    remedy = law_remedy(rule(*bound), axle(**{SPACER: 6, **changes}))
    assert (remedy.text, (remedy.at_least, remedy.at_most), remedy.unit) == (text, ends, "mm")
    assert remedy.pointer == (RIM if remedy.quantity == "offset_mm" else SPACER)


# Of a wheel of which nobody stated offset, width and height.
@pytest.mark.parametrize(
    ("quantity", "pointer", "field"),
    [
        ("track_change_percent", "/vehicle/rear/track_mm", "track_mm"),
        ("track_change_mm", RIM, "offset_mm"),
        ("offset_change_mm", RIM, "offset_mm"),
        ("overall_diameter_change_mm", "/candidate/rear/tyre/overall_diameter_mm", "overall_diameter_mm"),
        ("rolling_circumference_change_percent", "/candidate/rear/tyre/overall_diameter_mm", "overall_diameter_mm"),
        ("section_width_change_mm", "/candidate/rear/tyre/section_width_mm", "section_width_mm"),
        ("load_index_change", "/candidate/rear/tyre/size", "service_description"),
        ("speed_capability_kmh", "/candidate/rear/tyre/size", "service_description"),
    ],
)
def test_what_lacks_for_a_rule_is_asked_for(quantity, pointer, field):
    view = axle(
        **{
            "/vehicle/rear/track_mm": ABSENT,
            RIM: "8.5J x 18 H2",
            "/candidate/rear/tyre/size": "7.00-16",
            "/candidate/rear/tyre/section_width_mm": ABSENT,
        }
    )
    remedy = missing_for_law(Bound(quantity, "at_most", 1.0, "mm"), "rear", view)
    assert (remedy.pointer, remedy.quantity) == (pointer, field)


@pytest.mark.parametrize("where", ["front", "rear"])
def test_the_track_that_lacks_is_that_of_its_axle(where):
    remedy = missing_for_law(
        Bound("track_change_percent", "at_most", 1.0, "%"), where, axle(**{"/vehicle/rear/track_mm": ABSENT})
    )
    assert (remedy.pointer, remedy.unit) == (f"/vehicle/{where}/track_mm", "mm")
    assert remedy.text == f"give the registered track of the {where} axle"


def test_a_track_that_is_known_is_not_asked_for():
    remedy = missing_for_law(Bound("track_change_percent", "at_most", 1.0, "%"), "rear", axle(**{RIM: "8.5J x 18 H2"}))
    assert remedy.quantity == "offset_mm"


RADIAL, DIAGONAL, SPARE = "225/45 R17 94H", "225/45 D17 94H", "T125/80 D17 99M"
SPARED = "A temporary-use spare is fitted, which may differ in structure."


def structure(front, rear, code="law.structure", pack="unece"):
    """Return the finding on the structure of these tyres."""
    sizes = {"/candidate/front/tyre/size": front, "/candidate/rear/tyre/size": rear, "/vehicle/max_mass_kg": 1900}
    return finding(check(changed(saloon() | {"rule_pack": pack}, sizes)), code, "vehicle")


# All tyres of one structure, a temporary spare excepted (92/23); in Great Britain only the rear may not stay behind.
@pytest.mark.parametrize(
    ("front", "rear", "kept", "said"),
    [
        (RADIAL, RADIAL, 1.0, "All tyres are radial."),
        (DIAGONAL, DIAGONAL, 1.0, "All tyres are diagonal."),
        (RADIAL, SPARE, 1.0, SPARED),
        (SPARE, RADIAL, 1.0, SPARED),
        (RADIAL, DIAGONAL, 0.0, "The front tyres are radial, the rear ones diagonal."),
        (DIAGONAL, RADIAL, 0.0, "The front tyres are diagonal, the rear ones radial."),
    ],
)
def test_the_structure_is_told_axle_by_axle_and_the_diagonal_one_is_changed(front, rear, kept, said):
    found = structure(front, rear)
    assert (found.outcome == MET, found.measured) == (kept == 1.0, kept)
    assert found.message.startswith(said)
    if kept == 0.0:
        odd = "front" if front == DIAGONAL else "rear"
        assert (found.remedy.pointer, found.remedy.equals) == (f"/candidate/{odd}/tyre/size", "radial")
        assert found.remedy.text == f"radial tyres at the {odd} too"


@pytest.mark.parametrize(
    ("front", "rear", "kept", "said"),
    [
        (RADIAL, RADIAL, 1.0, "All tyres are radial."),
        (DIAGONAL, RADIAL, 1.0, "The front tyres are diagonal, the rear ones radial."),
        (RADIAL, DIAGONAL, 0.0, "The front tyres are radial, the rear ones diagonal."),
        # The exception for a spare is not in this rule, so nothing is said of it.
        (RADIAL, SPARE, 0.0, "The front tyres are radial, the rear ones diagonal."),
    ],
)
def test_where_the_front_is_radial_the_rear_is_too(front, rear, kept, said):
    (code,) = (
        each.code for each in default_packs()["gb"].rules if each.bounds[0].quantity == "radial_rear_where_radial_front"
    )
    found = structure(front, rear, code, "gb")
    assert (found.outcome == MET, found.measured) == (kept == 1.0, kept)
    assert found.message.startswith(said)


# 1,587 / 1.15 is just what two tyres of 690 kg carry (load index 95); commercial tyres get no relief: 107 is 975 kg.
@pytest.mark.parametrize(
    ("changes", "said", "index"),
    [
        ({MASS: 1587}, "Even the 15 % more that towing allows, 1541 kg in all, does not carry the axle.", 95),
        ({MASS: 1587.1}, "Even the 15 % more that towing allows, 1541 kg in all, does not carry the axle.", 96),
        (
            {
                MASS: 2000.4,
                "/candidate/rear/tyre/size": "205/65 R16C 107/105T",
                "/vehicle/max_speed_kmh": 170,
                "/vehicle/category": "N1",
            },
            "With a trailer commercial tyres carry no more than else: 1950 kg, and the axle needs 2000 kg.",
            109,
        ),
    ],
)
def test_what_is_too_heavy_for_towing_is_answered_with_an_index(changes, said, index):
    found = finding(check(changed(saloon(), {"/vehicle/towing": True, **changes})), "load.towing")
    assert found.message.startswith(said)
    assert (found.remedy.at_least, found.remedy.pointer) == (index, "/candidate/rear/tyre/size")


# Of 1,500 kg a tyre gets 750 (index 98), with a tenth on top 825 (101); commercial tyres count whole.
@pytest.mark.parametrize(("size", "index"), [("235/40 R18 95Y XL", 101), ("235/40 R18C 95/93T", 98)])
def test_only_passenger_tyres_are_to_carry_more_where_the_place_divides_their_rating(size, index):
    view = axle(**{MASS: 1500, "/candidate/rear/tyre/size": size})
    for quantity in ("tyre_load_rating_margin_kg", "load_rating_sum_margin_kg"):
        assert law_remedy(rule(quantity, "at_least", 0.0, "kg", 1.1), view).at_least == index


@pytest.mark.parametrize(("most_mm", "text"), [(12.7, "17.5 or less"), (10.0, "17.3 or less"), (-25.4, "16 or less")])
def test_a_rim_diameter_is_told_as_a_code_to_a_tenth(most_mm, text):
    assert law_remedy(rule("rim_diameter_change_mm", "at_most", most_mm, "mm"), axle()).text == (
        f"rim diameter code {text}"
    )


def test_of_two_bounds_one_that_is_not_known_leaves_both_open():
    asked = either(("track_change_mm", "at_most", 10.0, "mm"), ("track_change_percent", "at_most", 1.0, "%"))
    assert explained(asked, (20.0, float("nan")), axle()) == (
        f"The change of the track is not known; 10 mm more or 1 % more is allowed {IN_THE_NETHERLANDS}"
    )
