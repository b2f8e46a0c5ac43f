"""What a designation alone says of a tyre and a rim: dimensions, load and speed, marks; by hand from printed values.

Sources: UN R30, 6.1.2 (height and diameter) and 2.31 (load at speed), nominal rim diameters of its 2.17; load indices
94, 95, 102, 104, 106, 107 and 109 are 670, 690, 850, 900, 950, 975 and 1,030 kg (Regeling voertuigen, Bijlage VIII,
annex 4); R, T and N are 170, 190 and 140 km/h. Sizes without an aspect ratio are rows of a table (UN R30, annex 5, from
memory), flotation sizes half an inch below their name (the project's own). ZR is above 240, VR above 210 km/h (common
practice, from memory).
"""

import math
from dataclasses import replace

import pytest

from service.assessment.case import Measured, Rim
from service.assessment.view.facts import rim_facts, tyre_facts, with_measured
from service.assessment.view.load_at_speed import load_factor_at, service_facts, speed_symbol_kmh
from service.assessment.view.nominal_dimensions import dimensions
from service.assessment.view.wheel_facts import same_rim
from service.designation.bolt_circle import parse_bolt_circle
from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre

NAN = math.nan


@pytest.mark.parametrize(
    # Width, aspect ratio, height, diameter, design rim, design width, and measuring rim in inches.
    ("size", "expected"),
    [
        # 60 % of 225 twice on 406 mm; the theoretical rim is 0.7 of the width.
        ("225/60 R16 97H", (225, 60, 135, 676, 157.5, 225, NAN)),
        # On the row's rim of 4 in: (590 - 356) / 2 mm high.
        ("145 R 14 76S", (145, 80.69, 117, 590, 101.6, 147, 4)),
        ("5.60-13 82S", (142.24, 94.91, 135, 600, 101.6, 145, 4)),
        # 32.5 in on 381 mm.
        ("33x10.50R15LT 114Q", (266.7, 83.333, 222.25, 825.5, NAN, 266.7, NAN)),
        # Of a row of its own: 775 mm.
        ("31x10.50R15LT 109Q", (266.7, 73.866, 197, 775, NAN, 266.7, NAN)),
        # No row.
        ("200 R 17 94S", (200, NAN, NAN, NAN, NAN, NAN, NAN)),
        ("6.00-16 88P", (152.4, NAN, NAN, NAN, NAN, NAN, NAN)),
    ],
)
def test_a_size_stands_for_its_dimensions(size, expected):
    found = dimensions(parse_tyre(size))
    assert tuple(found) == pytest.approx(expected, abs=0.01, nan_ok=True)


def served(tyre, speed, wheels=1, law=NAN):
    """Return index, load, share of it, speed, share at the law's speed, and whether the maker alone tells."""
    found = service_facts(parse_tyre(tyre), wheels, speed, law)
    return (
        *(found.load_index, found.rated_kg, found.load_factor, found.speed_capability_kmh),
        *(found.law_load_factor, found.left_to_maker),
    )


VAN = "215/65 R16C 109/107R"


@pytest.mark.parametrize(
    ("tyre", "speed", "expected"),
    [
        ("225/45 R17 94W", 240, (94, 670, 1.0, 270, NAN, 0)),
        # 5 % less for each 10 km/h above 240.
        ("225/45 R17 94W", 250, (94, 670, 0.95, 270, NAN, 0)),
        # A tyre that is too slow is reckoned at its own speed.
        ("225/45 R17 94W", 290, (94, 670, 0.85, 270, NAN, 0)),
        ("225/45 R17", 200, (NAN, NAN, NAN, NAN, NAN, 0)),
        ("225/45 ZR17", 240, (NAN, NAN, NAN, 240, NAN, 0)),
        ("225/45 ZR17", 241, (NAN, NAN, NAN, NAN, NAN, 0)),
        ("205/70 VR15", 210, (NAN, NAN, NAN, 210, NAN, 0)),
        ("205/70 VR15", 211, (NAN, NAN, NAN, NAN, NAN, 0)),
        ("225/45 ZR17 (94Y)", 300, (94, 670, 0.85, 300, NAN, 0)),
        # Above it the maker alone tells.
        ("225/45 ZR17 (94Y)", 301, (94, 670, NAN, NAN, NAN, 1)),
        (VAN, 170, (109, 1030, 1.0, 170, NAN, 0)),
        (VAN, 200, (109, 1030, 1.0, 170, NAN, 0)),
        # No more than the index, however slow.
        (VAN, 60, (109, 1030, 1.0, 170, NAN, 0)),
        # The second description counts where it carries more and is fast enough, or both are too slow.
        # N keeps its index to 140 and 97.5 % at 145, 90 % at 160 km/h, where it ends (UN R54, annex 8).
        (f"{VAN} (112/110N)", 140, (112, 1120, 1.0, 160, NAN, 0)),
        (f"{VAN} (112/110N)", 145, (112, 1120, 0.975, 160, NAN, 0)),
        (f"{VAN} (112/110N)", 160, (109, 1030, 1.0, 170, NAN, 0)),
        (f"{VAN} (118/116N)", 160, (118, 1320, 0.9, 160, NAN, 0)),
        (f"{VAN} (118/116N)", 161, (109, 1030, 1.0, 170, NAN, 0)),
        (f"{VAN} (118/116N)", 171, (118, 1320, 0.9, 160, NAN, 0)),
        (f"{VAN} (106/104T)", 170, (109, 1030, 1.0, 170, NAN, 0)),
    ],
)
def test_load_and_speed_follow_from_the_service_description(tyre, speed, expected):
    assert served(tyre, speed) == pytest.approx(expected, nan_ok=True)


@pytest.mark.parametrize(
    ("tyre", "wheels", "index", "load"),
    [
        (VAN, 1, 109, 1030),
        (VAN, 2, 107, 975),
        ("215/65 R16C 109R", 2, 109, 1030),
        (f"{VAN} (112/110N)", 2, 110, 1060),
    ],
)
def test_twins_carry_their_own_index(tyre, wheels, index, load):
    assert served(tyre, 120, wheels)[:2] == (index, load)


# V keeps 91 % at 240 km/h; the second description of a van tyre does not tell what the law asks of the first.
@pytest.mark.parametrize(("tyre", "law", "share"), [("225/45 R17 94V", 240, 0.91), ("225/45 R17", 100, NAN)])
def test_the_law_reads_the_load_at_its_own_speed(tyre, law, share):
    assert served(tyre, 100, 1, law)[4] == pytest.approx(share, nan_ok=True)
    assert load_factor_at(parse_tyre(tyre), law) == pytest.approx(share, nan_ok=True)


@pytest.mark.parametrize(
    ("tyre", "kmh"),
    [
        ("225/45 R17 94W", 270),
        (VAN, 170),
        (f"{VAN} (112/110N)", 170),
        (f"{VAN} (106/104T)", 190),
        ("225/45 ZR17", NAN),
        ("225/45 R17", NAN),
    ],
)
def test_a_tyre_is_as_fast_as_its_fastest_symbol(tyre, kmh):
    assert speed_symbol_kmh(parse_tyre(tyre)) == pytest.approx(kmh, nan_ok=True)


# M+S is mud and snow (1), 3PMSF the mountain (2), which counts where both are marked.
@pytest.mark.parametrize(("marks", "number"), [("", 0), ("M+S", 1), ("3PMSF", 2), ("M+S 3PMSF", 2)])
def test_marks_of_winter_are_told_apart(marks, number):
    assert tyre_facts(parse_tyre(f"225/45 R17 94W {marks}".strip())).winter_mark == number


# A circumference is 3.05 diameters of a radial (CO2MPAS, read) and 2.99 of a diagonal tyre (from memory).
@pytest.mark.parametrize(
    # Radial, its factor, commercial, spare, run-flat.
    ("size", "expected"),
    [
        ("225/45 R17 94W", (1, 3.05, 0, 0, 0)),
        ("225/45 RF17 94W", (1, 3.05, 0, 0, 1)),
        ("225/45-17 94V", (0, 2.99, 0, 0, 0)),
        (VAN, (1, 3.05, 1, 0, 0)),
        ("T125/70 D16 96M", (0, 2.99, 0, 1, 0)),
    ],
)
def test_the_kind_of_a_tyre_is_told_by_its_designation(size, expected):
    found = tyre_facts(parse_tyre(size))
    told = (found.radial, found.circumference_factor, found.commercial, found.temporary_spare, found.run_flat)
    assert told == expected


def test_a_measured_diameter_makes_height_and_shape():
    """Of 225/45 R17, 432 mm of rim: 640 make 104 mm; of a size that no table has 634 make 50.5 %."""
    size = tyre_facts(parse_tyre("225/45 R17 94W"))
    found = with_measured(size, Measured(overall_diameter_mm=640))
    assert (found.overall_diameter_mm, found.section_height_mm, found.aspect_percent) == (640, 104, 45)
    assert (found.design_width_mm, found.design_rim_mm) == (size.design_width_mm, size.design_rim_mm)
    shaped = with_measured(tyre_facts(parse_tyre("200 R 17 94S")), Measured(overall_diameter_mm=634))
    assert (shaped.section_height_mm, shaped.aspect_percent) == (101, 50.5)
    assert (shaped.design_width_mm, shaped.nominal_width_mm) == (200, 200)
    # The theoretical rim of a 50 series is 0.7 of the width.
    assert shaped.design_rim_mm == pytest.approx(140)


@pytest.mark.parametrize("outer", [432, 431, 300])
def test_a_tyre_no_larger_than_its_rim_has_no_diameter(outer):
    for size in ("225/45 R17 94W", "200 R 17 94S"):
        found = with_measured(tyre_facts(parse_tyre(size)), Measured(overall_diameter_mm=outer))
        assert math.isnan(found.overall_diameter_mm)
        assert math.isnan(found.section_height_mm)


@pytest.mark.parametrize(
    ("low", "high", "expected"), [(7, 8, (7, 8, 2)), (7.5, 7.5, (7.5, 7.5, 2)), (8, 7, (NAN, NAN, 2))]
)
def test_the_maker_s_rim_widths_replace_the_table_s(low, high, expected):
    found = with_measured(tyre_facts(parse_tyre("225/45 R17 94W")), Measured(approved_min_in=low, approved_max_in=high))
    assert (found.approved_min_in, found.approved_max_in, found.approval) == pytest.approx(expected, nan_ok=True)


def test_a_rim_is_told_by_its_numbers():
    rim = Rim(parse_rim("7.5J x 17 H2 ET45"), parse_bolt_circle("5x114.3"), 66.6, 700.0, 10.5)
    found = rim_facts(rim, 5.0)
    assert (found.rim_width_in, found.rim_code, found.offset_mm, found.spacer_mm) == (7.5, 17, 40, 5)
    assert (found.hump, found.one_piece, found.bolts, found.bolt_circle_mm) == (1, 1, 5, 114.3)
    assert (found.centre_bore_mm, found.rim_rating_kg, found.rim_mass_kg) == (66.6, 700, 10.5)
    bare = rim_facts(Rim(parse_rim("7.5J x 17")))
    assert all(map(math.isnan, (bare.hump, bare.offset_mm, bare.bolts, bare.bolt_circle_mm, bare.centre_bore_mm)))


ON_CAR = rim_facts(Rim(parse_rim("7.5J x 17 H2 ET45"), parse_bolt_circle("5x112"), 66.6))


@pytest.mark.parametrize(
    ("other", "same"),
    [
        ({}, 1),
        # On a spacer it is the same rim.
        ({"offset_mm": 40.0, "spacer_mm": 5.0}, 1),
        ({"offset_mm": 40.0}, 0),
        ({"offset_mm": 45.0, "spacer_mm": 5.0}, 0),
        ({"offset_mm": NAN}, 0),
        ({"rim_width_in": 8.0}, 0),
        ({"rim_code": 18.0}, 0),
        ({"one_piece": 0.0}, 0),
        ({"bolt_circle_mm": 112.04}, 1),
        ({"bolt_circle_mm": 112.1}, 0),
        ({"bolts": 4.0}, 0),
        ({"bolts": 6.0}, 0),
        ({"centre_bore_mm": 66.65}, 1),
        ({"centre_bore_mm": 66.4}, 0),
        ({"centre_bore_mm": 66.8}, 0),
        # What only one of them states contradicts nothing.
        ({"bolts": NAN, "bolt_circle_mm": NAN, "centre_bore_mm": NAN}, 1),
    ],
)
def test_a_rim_is_the_present_one_by_all_that_is_said_of_both(other, same):
    then = replace(ON_CAR, **other)
    assert same_rim(ON_CAR, then) == same
    assert same_rim(then, ON_CAR) == same
