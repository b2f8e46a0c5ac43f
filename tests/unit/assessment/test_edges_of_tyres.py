"""Remedies for the tyre: field, unit and ends by hand; each end settles the question, a step beyond does not.

The saloon's 225/45 R17 is 634 mm high on a rim of 432 mm and 224.7 mm wide on 7.5 in (UN R30 6.1.2.1, 6.1.1.1), so it
rolls 3.05 x 634 = 1933.7 mm. Limits by common practice, no source (`rules/common_practice.toml`), unless noted.
"""

import pytest

from tests.support.remedy_ends import Case

CASES = {
    # 1.5 % of 634 mm either way.
    "diameter, present": Case(
        {"tyre/overall_diameter_mm": 650},
        "diameter.deviation",
        "tyre/size overall_diameter_mm mm",
        (624.49, 643.51),
        (624.5, 643.5),
        (624.4, 643.6),
        field="tyre/overall_diameter_mm",
    ),
    # The ratio is front over rear: the rear ends are 1933.7 / 1.005 and / 0.995, the front ones x 0.995 and x 1.005.
    "axle ratio, rear": Case(
        {"tyre/rolling_circumference_mm": 1960},
        "diameter.axle_ratio",
        "tyre/rolling_circumference_mm rolling_circumference_mm mm",
        (1924.08, 1943.417),
        (1924.1, 1943.4),
        (1924.06, 1943.44),
        where="vehicle",
    ),
    "axle ratio, front": Case(
        {"/candidate/front/tyre/rolling_circumference_mm": 1960},
        "diameter.axle_ratio",
        "/candidate/front/tyre/rolling_circumference_mm rolling_circumference_mm mm",
        (1924.032, 1943.369),
        (1924.05, 1943.35),
        (1924.01, 1943.39),
        where="vehicle",
    ),
    # 4 % more circumference needs a lead of 4 % now; at 120 km/h 0.1 V + 4 km/h leave 136 / 120 x 1.04 (UN R39 5.3).
    "speedometer": Case(
        {"tyre/rolling_circumference_mm": 2011.0480000000002},
        "diameter.speedometer",
        "/vehicle/speedometer speedometer_lead_percent %",
        (4, 17.8667),
        (104, 117.86),
        (103.99, 117.88),
        where="vehicle",
        field="/vehicle/speedometer/displayed_kmh",
    ),
    # 1,400 kg ask 700 kg of a tyre: 96 is 710, 95 is 690 kg (Regeling voertuigen, Bijlage VIII, annex 4).
    "load index": Case(
        {"/vehicle/rear/max_axle_mass_kg": 1400},
        "load.capacity",
        "tyre/size load_index -",
        (96, None),
        (96,),
        (95,),
        written="225/45 R17 {}W XL",
    ),
    # V keeps 92.5 % at 235 km/h: 590 / 0.925 = 637.8 kg, 93 is 650 and 92 is 630 kg.
    "load index at speed": Case(
        {"tyre/size": "225/45 R17 91V", "/vehicle/max_speed_kmh": 235, "/vehicle/rear/max_axle_mass_kg": 1180},
        "load.capacity",
        "tyre/size load_index -",
        (93, None),
        (93,),
        (92,),
        written="225/45 R17 {}V",
    ),
    # At 230 km/h V keeps 94 %, so two tyres of 91 (615 kg) carry just 1,156.2 kg.
    "load index that just carries": Case(
        {"tyre/size": "225/45 R17 89V", "/vehicle/max_speed_kmh": 230, "/vehicle/rear/max_axle_mass_kg": 1156.2},
        "load.capacity",
        "tyre/size load_index -",
        (91, None),
        (91,),
        (90,),
        written="225/45 R17 {}V",
    ),
    # The present 94.
    "load index of the present tyre": Case(
        {"tyre/size": "225/45 R17 91W"},
        "load.below_present",
        "tyre/size load_index -",
        (94, None),
        (94,),
        (93,),
        written="225/45 R17 {}W",
    ),
    # V is 240, H 210 km/h (UN R30, as printed in Automotive Engineering, p. 291).
    "speed symbol": Case(
        {"tyre/size": "225/45 R17 94T XL"},
        "speed.capability",
        "tyre/size speed_symbol km/h",
        (228, None),
        ("V", "W"),
        ("H",),
        written="225/45 R17 94{} XL",
    ),
    # 50 kPa above the 290 of a reinforced tyre; today's 250 are set. A gauge shows whole numbers.
    "pressure": Case(
        {"pressure_kpa": 400},
        "load.pressure",
        "pressure_kpa pressure_kpa kPa",
        (250, 340),
        (250, 340, 340.4),
        (340.6, 238.5),
    ),
    "tread": Case(
        {"tyre/tread_depth_mm": 2.0},
        "tyre.tread_depth",
        "tyre/tread_depth_mm tread_depth_mm mm",
        (3, None),
        (3.0,),
        (2.99,),
    ),
    "tread of a winter tyre, front": Case(
        {"/candidate/front/tyre/tread_depth_mm": 3.5, "/candidate/front/tyre/size": "225/45 R17 94W XL 3PMSF"},
        "tyre.tread_depth",
        "/candidate/front/tyre/tread_depth_mm tread_depth_mm mm",
        (4, None),
        (4.0,),
        (3.99,),
        where="front",
    ),
    # The front pair may be the deeper one by 1 mm.
    "deeper pair in front": Case(
        {"tyre/tread_depth_mm": 5.0},
        "tyre.tread_difference",
        "tyre/tread_depth_mm tread_depth_mm mm",
        (7, None),
        (7.0,),
        (6.99,),
        where="vehicle",
    ),
    # 0.5 % of 634 mm at 2 mm of diameter for each of tread: 1.585 mm.
    "unlike wear, all driven, front deeper": Case(
        {"tyre/tread_depth_mm": 5.0, "/vehicle/driven_axle": "all"},
        "tyre.tread_difference",
        "tyre/tread_depth_mm tread_depth_mm mm",
        (7, 9.585),
        (7.0, 9.58),
        (6.99, 9.59),
        where="vehicle",
    ),
    "unlike wear, all driven, rear deeper": Case(
        {"/candidate/front/tyre/tread_depth_mm": 5.0, "/vehicle/driven_axle": "all"},
        "tyre.tread_difference",
        "/candidate/front/tyre/tread_depth_mm tread_depth_mm mm",
        (6.415, 9),
        (6.42, 9.0),
        (6.41, 9.01),
        where="vehicle",
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
