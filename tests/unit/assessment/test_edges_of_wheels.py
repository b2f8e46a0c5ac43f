"""Remedies for rim and room: field, unit and ends by hand; each end settles the question, a step beyond does not.

The saloon's 225/45 R17 is 634 mm high on a rim of 432 mm and 224.7 mm wide on 7.5 in (UN R30 6.1.2.1, 6.1.1.1), so it
rolls 3.05 x 634 = 1933.7 mm. Limits by common practice, no source (`rules/common_practice.toml`), unless noted.
"""

import pytest

from tests.support.cases import ABSENT
from tests.support.remedy_ends import Case

ROOMY = {
    "/vehicle/rear/clearance/inboard_mm": 60,
    "/vehicle/rear/clearance/outboard_mm": 60,
    "/vehicle/rear/track_mm": 1500,
}
ET = "7.5J x 17 H2 ET{}"
CASES = {
    # 14 mm inboard and 16 outboard, 5 of each to be left: ET 45 + 9 and 45 - 11.
    "offset, room inboard": Case(
        {"rim/size": "7.5J x 17 H2 ET62"},
        "clearance.inboard",
        "rim/size offset_mm mm",
        (34, 54),
        (34, 54),
        (33.9, 54.1),
        written=ET,
        also=("clearance.outboard",),
    ),
    "offset, room in front": Case(
        {"/candidate/front/rim/size": "7.5J x 17 H2 ET25", "/vehicle/front/clearance/outboard_mm": 12},
        "clearance.outboard",
        "/candidate/front/rim/size offset_mm mm",
        (38, 54),
        (38, 54),
        (37.9, 54.1),
        where="front",
        written=ET,
        also=("clearance.inboard",),
    ),
    # 2 % of 1,500 mm are 30 mm of track, 15 mm of offset either way.
    "offset, track": Case(
        ROOMY | {"rim/size": "7.5J x 17 H2 ET25"},
        "track.change",
        "rim/size offset_mm mm",
        (30, 60),
        (30, 60),
        (29.9, 60.1),
        written=ET,
    ),
    # 30 mm where no track is given.
    "offset, unknown track": Case(
        ROOMY | {"/vehicle/rear/track_mm": ABSENT, "rim/size": "7.5J x 17 H2 ET25"},
        "track.change",
        "rim/size offset_mm mm",
        (30, 60),
        (30, 60),
        (29.9, 60.1),
        written=ET,
    ),
    # (634 + 2 x (25 - 10) - 432) / 1.04 + 432: the section may outgrow its height by 4 % (UN R30, memory).
    "diameter, arch": Case(
        {"tyre/overall_diameter_mm": 660},
        "clearance.radial",
        "tyre/size overall_diameter_mm mm",
        (None, 655.077),
        (655.07,),
        (655.09,),
        field="tyre/overall_diameter_mm",
    ),
    # A tyre for snow may have 1 % more diameter on top (memory): 664 / 1.01 = 657.43 in place of 664.
    "diameter, arch, for snow": Case(
        {"tyre/overall_diameter_mm": 655, "tyre/size": "225/45 R17 94W XL M+S"},
        "clearance.radial",
        "tyre/size overall_diameter_mm mm",
        (None, 648.756),
        (648.75,),
        (648.77,),
        field="tyre/overall_diameter_mm",
    ),
    # (224.7 + 2 x (14 - 5)) / 1.04 (UN R30 6.1.4.2).
    "width, rims that stay": Case(
        {"tyre/size": "245/45 R17 95W XL"},
        "clearance.inboard",
        "tyre/section_width_mm section_width_mm mm",
        (None, 233.365),
        (233.36,),
        (233.38,),
    ),
    # 18 mm further in and 5 to be left.
    "room to measure": Case(
        {"/vehicle/rear/clearance/inboard_mm": ABSENT, "rim/size": "7.5J x 17 H2 ET63"},
        "clearance.inboard",
        "/vehicle/rear/clearance/inboard_mm inboard_mm mm",
        (23, None),
        (23,),
        (22.9,),
    ),
    # 18 mm of radius and 10 to be left, 4 % of (670 - 432) / 2 for growth.
    "arch to measure": Case(
        {"/vehicle/rear/clearance/radial_mm": ABSENT, "tyre/overall_diameter_mm": 670},
        "clearance.radial",
        "/vehicle/rear/clearance/radial_mm radial_mm mm",
        (32.76, None),
        (32.77,),
        (32.75,),
    ),
    # 0.1 mm either way is no play.
    "bore, too small": Case(
        {"rim/centre_bore_mm": 60.1},
        "rim.centre_bore",
        "rim/centre_bore_mm centre_bore_mm mm",
        (66.6, 66.6),
        (66.5, 66.7),
        (66.49, 66.71),
    ),
    "bore, too large": Case(
        {"rim/centre_bore_mm": 73.1},
        "rim.centre_bore",
        "rim/centre_bore_mm centre_bore_mm mm",
        (66.6, 66.6),
        (66.5, 66.7),
        (66.49, 66.71),
    ),
    # Each of two wheels carries half of 1,000 kg, in front of 960 kg.
    "rim rating": Case(
        {"rim/load_rating_kg": 450},
        "rim.load_rating",
        "rim/load_rating_kg load_rating_kg kg",
        (500, None),
        (500,),
        (499.9,),
    ),
    "rim rating, front": Case(
        {"/candidate/front/rim/load_rating_kg": 450},
        "rim.load_rating",
        "/candidate/front/rim/load_rating_kg load_rating_kg kg",
        (480, None),
        (480,),
        (479.9,),
        where="front",
    ),
    "rim for the brake": Case(
        {"/vehicle/rear/min_rim_diameter_in": 18},
        "rim.brake_clearance",
        "rim/size rim_diameter_in in",
        (18, None),
        (18, 19),
        (17.5,),
        written="7.5J x {} H2 ET45",
    ),
    "brake that nobody measured": Case(
        {"/vehicle/rear/min_rim_diameter_in": ABSENT, "rim/size": "7.5J x 16 H2 ET45"},
        "rim.brake_clearance",
        "/vehicle/rear/min_rim_diameter_in min_rim_diameter_in in",
        (None, 16),
        (16,),
        (16.5,),
    ),
    # A row of the table (ETRTO, from memory): 7 to 8 1/2 in.
    "rim width": Case(
        {"rim/size": "9J x 17 H2 ET45"},
        "rim.width",
        "rim/size rim_width_in in",
        (7, 8.5),
        (7, 8.5),
        (6.75, 8.75),
        written="{}J x 17 H2 ET45",
    ),
    "rim for the bead": Case(
        {"rim/size": "7.5J x 18 H2 ET45"},
        "rim.diameter",
        "rim/size rim_diameter_in in",
        (17, 17),
        (17,),
        (16, 18),
        written="7.5J x {} H2 ET45",
    ),
}


@pytest.fixture(params=CASES.values(), ids=CASES)
def case(request):
    """Return one of the cases."""
    return request.param


def test_the_remedy_names_field_unit_and_ends(case):
    assert case.names_its_remedy()


def test_each_end_settles_the_question(case):
    assert [value for value in case.settles if not case.is_settled_by(value)] == []


def test_one_step_beyond_does_not_settle_it(case):
    assert [value for value in case.beyond if case.is_settled_by(value)] == []
