"""Before and after in the report: numbers by hand and by printed tables, marks where a line stands in the way.

Sources: load indices and speed symbols as UN R30 prints them (93: 650 kg, 96: 710 kg, 98: 750 kg, Y: 300 km/h; from
memory); outer diameters by UN R30 para. 6.1.2.1 (rim of code 19: 483 mm; heights rounded: 90, 89, 86 mm; from memory).
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from service.locales.speech import speech
from service.page.report_cells import NOTHING, Cell, Writer
from service.page.report_table import axle_lines
from service.page.report_vehicle import vehicle_lines
from tests.support.cases import ABSENT, changed, check, saloon

REQUESTS = Path(__file__).parents[3] / "demo_requests"
METRIC, IMPERIAL = Writer(speech()), Writer(speech("en", "imperial"))


def story(name):
    return json.loads((REQUESTS / f"{name}.check.json").read_text(encoding="utf-8"))


def on(found, axle, write=METRIC):
    return {each.name: each for each in axle_lines(found, getattr(found.car, axle), write)}


def of_vehicle(found, write=METRIC):
    return {each.name: each for each in vehicle_lines(found, write)}


def cells(line):
    return [each.text for each in line[1:5]]


@pytest.fixture(scope="module")
def wider():
    return check(story("staggered-one-step-wider"))


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("Tyre", ["225/40 R19 93Y XL", "255/35 R19 96Y XL", "–", "–"]),
        ("Load index (LI)", ["93 (650 kg)", "96 (710 kg)", "+3", "–"]),
        # Two tyres on the axle, against its maximum mass; 710 / 650 is 9.2 % more.
        ("Load capacity", ["1300 kg", "1420 kg", "+9.2 %", "min. 960 kg"]),
        ("Speed symbol", ["Y (300 km/h)", "Y (300 km/h)", "–", "min. 245 km/h"]),
        # ETRTO as a table prints it: 8.5 to 10 inches for 255/35 R19.
        ("Rim", ["8J x 19 H2 ET45", "9J x 19 H2 ET45", "–", "8.5 to 10 in"]),
        ("Offset (ET)", ["45 mm", "45 mm", "0 mm", "–"]),
        ("Pressure, cold", ["250 kPa", "250 kPa", "0 kPa", "min. 228 kPa"]),
        # 483 + 2 x 90 and 483 + 2 x 89.
        ("Overall diameter, new", ["663 mm", "661 mm", "−0.3 %", "± 1.5 %"]),
        # 3.05 times the diameter of a radial tyre (ETRTO, from memory): 3.05 x 663 and 3.05 x 661.
        ("Rolling circumference", ["2022 mm", "2016 mm", "−0.3 %", "–"]),
        # UN R30 6.1.1.1, 0.4 of what the rim differs from 0.85 of the width: 225 + 0.4 (203.2 - 191.25) on 8 inches and
        # 255 + 0.4 (228.6 - 216.75) on 9.
        ("Section width", ["230 mm", "260 mm", "+30 mm", "–"]),
        # Half of what the tyre is lower.
        ("Room to the arch", ["25 mm", "26 mm", "+1 mm", "min. 10 mm"]),
        # Half the 30 mm of the section, and half of the 4 per cent by which UN R30 lets a tyre of 260 mm grow.
        ("Room to the strut", ["22 mm", "1.8 mm", "−20.2 mm", "min. 5 mm"]),
        ("Room to the wing edge", ["24 mm", "3.8 mm", "−20.2 mm", "min. 5 mm"]),
    ],
)
def test_a_line_has_the_numbers_of_a_printed_table_or_of_a_sum_by_hand(wider, name, told):
    assert cells(on(wider, "front")[name]) == told


def test_the_rear_has_its_own_numbers(wider):
    lines = on(wider, "rear")
    assert cells(lines["Load index (LI)"]) == ["96 (710 kg)", "98 (750 kg)", "+2", "–"]
    # 483 + 2 x 89 and 483 + 2 x 86.
    assert cells(lines["Overall diameter, new"])[:2] == ["661 mm", "655 mm"]
    assert cells(lines["Load capacity"])[3] == "min. 1080 kg"


def test_the_speedometer_is_told_at_a_round_speed_beside_un_r39(wider):
    # It shows 100 at a true 97, so 103.1 at a true 100; the driven wheels shrink from 661 to 655 mm. UN R39 5.3 lets it
    # show from the true speed to a tenth and 4 km/h more.
    line = of_vehicle(wider)["Speedometer at 100 km/h"]
    assert cells(line) == ["103.1 km/h", "104 km/h", "+0.9 %", "100 to 114 km/h"]


def test_a_speedometer_that_leads_by_a_fifth_leads_by_a_fifth_with_the_same_tyres():
    found = check(changed(saloon(), {"/vehicle/speedometer": {"displayed_kmh": 120, "true_kmh": 100}}))
    line = of_vehicle(found)["Speedometer at 100 km/h"]
    assert cells(line)[:3] == ["120 km/h", "120 km/h", "0 %"]


def test_estimates_show_the_band_in_which_they_lie(wider):
    line = on(wider, "front")["Grip on a dry road"]
    estimate = wider.car.driving.front.peak_grip_percent
    assert line.change == Cell("+1.8 %", "+0.9 to +3.1 %")
    assert (estimate.low, estimate.high) == (pytest.approx(0.9, abs=0.05), pytest.approx(3.1, abs=0.05))
    assert (line.present, line.proposed, line.limit) == (NOTHING, NOTHING, NOTHING)


def test_water_is_told_as_shares_of_what_there_is_now(wider):
    line = on(wider, "rear")["Wet reserve at 80 km/h"]
    reserve = wider.car.rear_reserve
    share = 100.0 * (reserve.proposed_percent / reserve.present_percent - 1.0)
    assert cells(line)[2:] == [f"−{abs(share):.1f} %", "−25 %"]
    assert cells(on(wider, "front")["Aquaplaning from"])[3] == "−10 %"


def test_a_line_is_marked_where_a_finding_of_its_axle_stands_in_the_way(wider):
    marked = {axle: [each.name for each in on(wider, axle).values() if each.style] for axle in ("front", "rear")}
    assert marked == {
        "front": ["Room to the strut", "Room to the wing edge"],
        "rear": ["Room to the strut", "Room to the wing edge", "Wet reserve at 80 km/h"],
    }
    assert [each.name for each in of_vehicle(wider).values() if each.style] == ["Front to rear circumference"]


def test_the_worst_finding_of_a_line_marks_it():
    lines = on(check(saloon(("205/40 R17 80H", "9J x 17 ET20"))), "front")
    assert {name: each.style for name, each in lines.items() if each.style} == {
        "Load capacity": "not-met",
        "Speed symbol": "not-met",
        "Rim": "not-met",
        "Offset (ET)": "advisory",
        "Pressure, cold": "not-met",
        "Overall diameter, new": "not-met",
        "Room to the wing edge": "not-met",
    }
    assert (lines["Rim"].title, lines["Offset (ET)"].title) == ("Speaks against it", "Needs attention")


def test_the_pressure_is_the_one_to_set_and_not_the_one_that_was_asked():
    found = check(changed(saloon(), {"/candidate/front/pressure_kpa": 190}))
    ordered = next(each for each in found.actions if each.code == "set_pressure_front")
    line = on(found, "front")["Pressure, cold"]
    assert line.proposed.text == f"{ordered.pressure_kpa:.0f} kPa" != "190 kPa"
    assert line.style == "advisory"


def test_a_pressure_is_told_in_all_units_of_gauges(wider):
    # 1 bar is 100 kPa, 1 psi 6.894757 kPa (NIST SP 811).
    assert on(wider, "front")["Pressure, cold"].present == Cell("250 kPa", "2.5 bar / 36 psi")
    assert on(wider, "front", IMPERIAL)["Pressure, cold"].present == Cell("36.3 psi", "250 kPa / 2.5 bar")


def test_imperial_units_stand_above_the_metric_ones(wider):
    # The pound is 0.45359237 kg, the inch 25.4 mm, the mile 1609.344 m; an offset is marked in mm everywhere.
    lines = on(wider, "front", IMPERIAL)
    assert lines["Load capacity"].proposed == Cell("3131 lb", "1420 kg")
    assert lines["Load index (LI)"].present == Cell("93 (1433 lb)", "650 kg")
    assert lines["Overall diameter, new"].present == Cell("26.1 in", "663 mm")
    assert lines["Speed symbol"].present == Cell("Y (186 mph)", "300 km/h")
    assert lines["Offset (ET)"].present == Cell("45 mm")
    assert of_vehicle(wider, IMPERIAL)["Speedometer at 62 mph"].present == Cell("64.1 mph", "103.1 km/h")


def test_the_vehicle_s_lines_say_what_its_findings_and_sentences_say():
    found = check(saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38")))
    lines = of_vehicle(found)
    (braking,) = (each.text for each in found.trade_offs if each.code == "braking")
    assert braking == "The braking distance on a dry road grows by about 3.5 %."
    assert lines["Braking distance, dry"].change.text == "+3.5 %"
    # The front rolls 6 per cent less (596 beside 634 mm), the rear 3 per cent more (653 mm): 0.94 / 1.03.
    assert cells(lines["Front to rear circumference"])[2:] == ["−8.7 %", "± 0.5 %"]
    told = {each.code: each.measured for each in found.findings if each.axle == "vehicle"}
    balance = lines["Balance in the dry (plus: understeer)"]
    assert told["balance.change"] == pytest.approx(-0.27, abs=0.005)
    assert cells(balance)[2:] == ["−0.27 deg/g", "± 0.1 deg/g"]


def test_what_nobody_measured_is_said_so_and_its_change_is_told():
    request = changed(
        saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET45")),
        {"/vehicle/front/clearance": ABSENT, "/vehicle/speedometer": ABSENT},
    )
    found = check(request)
    room = on(found, "front")["Room to the strut"]
    # UN R30 6.1.1.1, the theoretical rim 0.85 of the width: 245 + 0.4 (203.2 - 208.25) = 243.0 mm on 8 inches, beside
    # 225 + 0.4 (190.5 - 191.25) = 224.7 mm on 7.5; half the difference is 9.1 mm.
    assert cells(room) == ["not measured", "–", "−9.1 mm", "–"]
    assert cells(of_vehicle(found)["Speedometer at 100 km/h"])[:2] == ["not read", "–"]


def test_without_a_service_description_load_and_speed_are_not_known():
    lines = on(check(changed(saloon(), {"/candidate/front/tyre/size": "225/45 R17"})), "front")
    assert cells(lines["Load index (LI)"]) == ["94 (670 kg)", "not known", "–", "–"]
    assert cells(lines["Speed symbol"])[1] == "not known"
    assert (lines["Load capacity"].style, lines["Speed symbol"].style) == ("not-assessed", "not-assessed")
    # What is open and decides nothing is no reason to look.
    assert (lines["Pressure, cold"].style, cells(lines["Pressure, cold"])[3]) == ("", "–")


def test_a_mass_or_a_speed_that_nobody_stated_is_no_limit():
    bare = changed(saloon(), {"/vehicle/max_speed_kmh": ABSENT, "/vehicle/front/max_axle_mass_kg": ABSENT})
    found = check(bare)
    assert cells(on(found, "front")["Load capacity"])[3] == cells(on(found, "front")["Speed symbol"])[3] == "–"
    assert cells(on(found, "rear")["Load capacity"])[3] == "min. 1000 kg"


def test_twin_wheels_have_both_indices_and_their_gap():
    lines = on(check(story("twin-wheel-van")), "rear")
    assert lines["Load index (LI)"].present.text.startswith("107/105 (")
    assert lines["Gap between the twin tyres"].proposed.text == "16 mm"
    assert "Gap between the twin tyres" not in on(check(saloon()), "rear")


def test_a_trailer_has_no_speedometer_brakes_or_balance_of_its_own():
    found = check(story("tandem-caravan"))
    assert of_vehicle(found) == {}
    assert "Wet reserve at 80 km/h" not in on(found, "rear")
