"""Lines of the job card on pressure, speed, instruments and papers: when they are written, of whom, with which number.

235/45 R17 is 644 mm high and 225/45 R17 634 (UN R30, 6.1.2), 1.6 % more; half a per cent of circumference is enough for
control units to be told (common practice, no source). Lorries and buses may have a tachograph.
"""

import pytest

from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon

LARGER = on_both_axles({"/candidate/{axle}/tyre/size": "235/45 R17 97W XL"}) | {"/vehicle/speedometer": ABSENT}
OTHER = {"front": "rear", "rear": "front"}


def card(changes):
    """Return the lines of the saloon's job card after these changes, by code."""
    return {each.code: each for each in check(changed(saloon(), changes)).actions}


CHECKED = "Have the speedometer{} checked and, where needed, recalibrated"


@pytest.mark.parametrize(
    ("category", "or_tachograph"),
    [("M1", ""), ("M1G", ""), ("N1", ""), ("M2", " or tachograph"), ("N2", " or tachograph")],
)
def test_a_lorry_s_tachograph_is_checked_with_its_speedometer(category, or_tachograph):
    ordered = CHECKED.format(or_tachograph)
    line = card(LARGER | {"/vehicle/category": category})["speedometer"]
    assert line.text == f"{ordered}: the circumference changes by +1.6 %."
    assert line.circumference_percent == pytest.approx(100 * 10 / 634)
    assert "diameter.speedometer" in line.findings
    # Of a size that no table has nobody knows by how much.
    unknown = on_both_axles({"/candidate/{axle}/tyre/size": "200 R 17 97W"}) | {"/vehicle/speedometer": ABSENT}
    line = card(unknown | {"/vehicle/category": category})["speedometer"]
    assert (line.text, line.circumference_percent) == (f"{ordered}.", None)


def test_a_trailer_has_neither_speedometer_nor_stability_control():
    assert not {"speedometer", "stability_control"} & set(card(LARGER | {"/vehicle/category": "O2"}))
    assert {"speedometer", "stability_control"} <= set(card(LARGER))


# The rear is driven.
@pytest.mark.parametrize(
    ("axle", "share", "told"),
    [("front", 1.0049, False), ("front", 1.0052, True), ("front", 0.9948, True), ("rear", 0.9952, False)],
)
def test_control_units_are_told_where_one_axle_alone_rolls_otherwise(axle, share, told):
    rolls = {f"/candidate/{axle}/tyre/rolling_circumference_mm": 1933.7 * share}
    assert ("stability_control" in card(rolls)) == told


PAPERS = ("papers", "insurer")


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize(
    ("field", "value", "told"),
    [
        ("tyre/size", "225/45 R17 94Y XL", False),
        ("tyre/size", "235/45 R17 97W XL", True),
        ("tyre/overall_diameter_mm", 636, True),
        ("rim/size", "8J x 17 H2 ET45", True),
        ("rim/size", "7.5J x 17 H2 ET44", True),
        ("rim/centre_bore_mm", 72.6, False),
        ("pressure_kpa", 260, False),
    ],
)
def test_papers_and_insurer_are_told_of_what_stands_in_papers(axle, field, value, told):
    found = card({f"/candidate/{axle}/{field}": value})
    assert [code in found for code in PAPERS] == [told, told]


@pytest.mark.parametrize(
    ("axle", "field", "value", "told"),
    [
        ("front", "tyre/size", "235/45 R17 97W XL", True),
        ("rear", "tyre/size", "235/45 R17 97W XL", True),
        ("rear", "rim/size", "8J x 17 H2 ET45", True),
        # What stands further out is of the same size.
        ("rear", "rim/size", "7.5J x 17 H2 ET44", False),
        ("rear", "tyre/size", "225/45 R17 94Y XL", False),
    ],
)
def test_two_sizes_on_a_car_that_had_one_are_told_of(axle, field, value, told):
    alone = {f"/candidate/{axle}/{field}": value}
    assert ("tell_unlike_sizes" in card(alone)) == told
    both = alone | {f"/candidate/{OTHER[axle]}/{field}": value}
    assert "tell_unlike_sizes" not in card(both)


TODAY = "The pressure goes by today's, since the axle's mass or the top speed is not given."


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_a_pressure_that_goes_by_today_s_says_so_on_its_axle(axle):
    found = card({f"/vehicle/{axle}/max_axle_mass_kg": ABSENT})
    assert found[f"set_pressure_{axle}"].text == f"Set the {axle} tyres to 250 kPa (2.5 bar), cold. {TODAY}"
    assert found[f"set_pressure_{OTHER[axle]}"].text == f"Set the {OTHER[axle]} tyres to 250 kPa (2.5 bar), cold."


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_line_on_pressure_answers_what_was_said_of_it_on_its_axle(axle):
    found = card({f"/candidate/{axle}/pressure_kpa": 200})
    assert found[f"set_pressure_{axle}"].findings == ("load.pressure",)
    assert found[f"set_pressure_{OTHER[axle]}"].findings == ()
    assert found[f"set_pressure_{axle}"].pressure_kpa == 250.0


# Q is 160 and R 170 km/h; with 3PMSF they may be slower than the car.
@pytest.mark.parametrize(
    ("front", "rear", "kmh"), [("94Q", "94R", 160), ("94R", "94Q", 160), ("94R", "94R", 170), ("94W", "94R", 170)]
)
def test_the_driver_keeps_to_the_slower_winter_tyre(front, rear, kmh):
    tyres = {
        f"/candidate/{axle}/tyre/size": f"225/45 R17 {service} XL 3PMSF"
        for axle, service in (("front", front), ("rear", rear))
    }
    line = card(tyres)["speed_label"]
    assert line.speed_kmh == kmh
    assert line.text == f"Put a label of {kmh} km/h into the driver's view, and tell the driver to keep to it."
    assert line.findings == ("speed.capability",)
