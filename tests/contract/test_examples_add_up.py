"""The examples that the contract prints are true of each other: one car, its sums done by hand.

A caller takes the examples for an answer. Sums: UN R30 para. 6.1 (height of a section 0.4 times 235 mm; rim code 18 is
457 mm), 3.05 times the diameter (ETRTO), load indices 91, 93 and 95 (615, 650, 690 kg), symbols V and Y (240 and
300 km/h; a V tyre keeps 92.5 % at 235 km/h), UN R39 5.3 (from the true speed to a tenth and 4 km/h more); all from
memory. The request's numbers are those of the design of the contract, which prints one for all readers.
"""

from __future__ import annotations

import pytest

from tests.contract.document import fields

EXAMPLES = {name: member["examples"][0] for name, member in fields() if member.get("examples")}
# The request of `check` as the design of the contract prints it.
ASKED = {
    "Vehicle.max_speed_kmh": 228,
    "Vehicle.wheelbase_mm": 2760,
    "Vehicle.centre_of_gravity_height_mm": 540,
    "Vehicle.category": "M1",
    "Vehicle.driven_axle": "rear",
    "Speedometer.displayed_kmh": 100,
    "Speedometer.true_kmh": 97.0,
    "Axle.max_axle_mass_kg": 960,
    "Axle.kerb_axle_mass_kg": 790,
    "Axle.track_mm": 1548,
    "Axle.wheels_per_side": 1,
    "Axle.min_rim_diameter_in": 17,
    "Hub.bolt_circle": "5x112",
    "Hub.centre_bore_mm": 66.6,
    "Clearance.inboard_mm": 14,
    "Clearance.outboard_mm": 16,
    "Clearance.radial_mm": 25,
    "Candidate.label": "one step wider",
    "Tyre.size": "235/40 R18 95Y XL",
    "Rim.bolt_circle": "5x112",
    "Rim.centre_bore_mm": 66.6,
    "Rim.load_rating_kg": 690,
    "Fitment.pressure_kpa": 250,
}
# Designations and what they say (ISO 4000-1 and 4000-3, from memory).
WHEEL = ("235/40 R18 95Y XL", {"aspect_ratio": 40, "rim_diameter_in": 18, "load_index": 95, "speed_symbol": "Y"})
RIM = ("8J x 18 H2 ET45", {"width_in": 8, "diameter_in": 18, "offset_mm": 45, "one_piece": True, "flange": "J"})
SAID = {
    ("Tyre", "size"): WHEEL,
    ("StockLine", "size"): (WHEEL[0], WHEEL[1] | {"section_width_mm": 235}),
    ("Rim", "size"): RIM,
    ("OfferedRim", "size"): RIM,
    ("RimParts", "canonical"): (RIM[0], {"width_in": 8, "diameter_code": 18, "offset_mm": 45, "one_piece": True}),
    ("TyreParts", "canonical"): (
        "225/70 R15C 112/110R (115N)",
        {
            "section_width_mm": 225,
            "aspect_ratio": 70,
            "rim_code": 15,
            "load_index": 112,
            "load_index_twin": 110,
            "speed_symbol": "R",
            "commercial": "C",
            "construction": "radial",
            "system": "commercial",
            # None of these words stands in it; the brackets hold the additional description.
            "z_rated": False,
            "run_flat": False,
            "structure_assumed": False,
            "bracketed": False,
        },
    ),
}
HEIGHT = 94.0
DIAMETER = 457.0 + 2 * HEIGHT
# A millimetre less than the present one.
RATIO = DIAMETER / (DIAMETER + 1.0)
# The lawful reading at the greatest test speed, 120 km/h.
MOST_AT_TOP = 1.1 * 120.0 + 4.0
V_AT_235 = 0.925
FIGURES = {
    "WheelFigures.section_height_mm": HEIGHT,
    "WheelFigures.overall_diameter_mm": DIAMETER,
    "Tyre.overall_diameter_mm": DIAMETER,
    "WheelFigures.rolling_circumference_mm": round(3.05 * DIAMETER, 1),
    "Tyre.rolling_circumference_mm": round(3.05 * DIAMETER),
    # A band of one per cent.
    "Band.low": pytest.approx(3.05 * DIAMETER * 0.99, abs=0.1),
    "Band.high": pytest.approx(3.05 * DIAMETER * 1.01, abs=0.1),
    "WheelFigures.revolutions_per_km": round(1e6 / (3.05 * DIAMETER), 1),
    "WheelFigures.load_capacity_kg": 690.0,
    "WheelFigures.load_required_kg": 960.0 / 2,
    "WheelFigures.speed_capability_kmh": 300.0,
    "WheelFigures.pressure_kpa": 250.0,
    "WheelFigures.set_pressure_kpa": 250.0,
    "RimNeeds.load_rating_kg": 960.0 / 2,
    "RimNeeds.centre_bore_mm": 66.6,
    "RimNeeds.min_diameter_in": 17.0,
    "AxleChange.overall_diameter_mm": -1.0,
    "AxleChange.overall_diameter_percent": pytest.approx(100.0 * (RATIO - 1.0), abs=0.0051),
    "ComparedAxle.overall_diameter_percent": pytest.approx(100.0 * (RATIO - 1.0), abs=0.0051),
    "AxleChange.rolling_circumference_percent": pytest.approx(100.0 * (RATIO - 1.0), abs=0.0051),
    # From 215 mm and load index 93, the present tyre of the design; the offset stays and with it the track.
    "AxleChange.section_width_mm": 235.0 - 215.0,
    "ComparedAxle.section_width_mm": 235.0 - 215.0,
    "AxleChange.load_capacity_percent": round(100.0 * (690.0 / 650.0 - 1.0), 1),
    "AxleChange.track_mm": 0.0,
    "AxleChange.scrub_radius_mm": 0.0,
    # The loaded radius falls by less than half of what the diameter does.
    "AxleChange.ride_height_mm": pytest.approx(-0.25, abs=0.05),
    "SpeedometerAnswer.circumference_ratio": round(RATIO, 3),
    "SpeedometerAnswer.lead_percent": round(100.0 * (100.0 / 97.0 - 1.0), 1),
    "SpeedometerAnswer.least_lead_percent": round(100.0 * (RATIO - 1.0), 1),
    "SpeedometerAnswer.greatest_lead_percent": pytest.approx(100.0 * (RATIO * MOST_AT_TOP / 120.0 - 1.0), abs=0.1),
    "SpeedometerReading.true_kmh": 80.0,
    "SpeedometerReading.displayed_before_kmh": round(80.0 * 100.0 / 97.0, 1),
    "SpeedometerReading.displayed_after_kmh": round(80.0 * 100.0 / 97.0 / RATIO, 1),
    "SpeedometerReading.least_lawful_kmh": 80.0,
    "SpeedometerReading.greatest_lawful_kmh": 1.1 * 80.0 + 4.0,
    "ComparedVehicle.speedometer_lead_percent": round(100.0 * (100.0 / 97.0 / RATIO - 1.0), 1),
    "SpeedometerRule.least_gain": 1.0,
    "SpeedometerRule.least_constant_kmh": 0.0,
    "SpeedometerRule.most_gain": 1.1,
    "SpeedometerRule.most_constant_kmh": 4.0,
    "TestSpeeds.above_kmh": 150.0,
    "TestSpeeds.share_of_max": 0.8,
    "VehicleAnswer.engine_speed_change_percent": round(100.0 * (1.0 / RATIO - 1.0), 1),
    "VehicleAnswer.odometer_change_percent": round(100.0 * (1.0 / RATIO - 1.0), 1),
    # Both axles change alike.
    "VehicleAnswer.axle_circumference_ratio_change_percent": 0.0,
    "ComparedVehicle.axle_circumference_ratio_change_percent": 0.0,
    # Two V tyres of load index 91 at 235 km/h: short of one car's axle, more than another's needs.
    "Parameter.value": 2 * 615.0 * V_AT_235,
    "Finding.measured": round(2 * 615.0 * V_AT_235, 1),
    "ComparedFinding.measured": round(2 * 615.0 * V_AT_235, 1),
    "ComparedAxle.load_margin_percent": round(100.0 * (2 * 615.0 * V_AT_235 / 960.0 - 1.0), 1),
    "Measures.load_margin_percent": round(100.0 * (2 * 615.0 * V_AT_235 / 960.0 - 1.0), 1),
    # An extra-load tyre at 250 of 290 kPa (ETRTO: load goes with pressure to the power 0.8).
    "PlanWheel.share_percent": round(100.0 * (250.0 / 290.0) ** 0.8, 1),
    # The rings fill what is between hub and rim.
    "ActionNumbers.ring_inner_mm": 66.6,
    "ActionNumbers.pressure_kpa": 250.0,
    # 235/40 R18 goes on 8 to 9.5 inches (ETRTO, from memory).
    "RimWidths.min": 8.0,
    "RimWidths.max": 9.5,
    "TyreRims.min_rim_width_in": 8.0,
    "TyreRims.max_rim_width_in": 9.5,
    # Risks that are common practice: one in twenty of seeing what is not there, one in five of missing what is.
    "PlanRequest.confidence": 1.0 - 1 / 20,
    "PlanRequest.power": 1.0 - 1 / 5,
}
# A number and the sentence beside it.
SENTENCES = [
    ("Finding.message", "Finding.measured", "carry {:g} kg;"),
    ("Finding.message", "Finding.limit", "needs {:g} kg."),
    ("TradeOff.text", "TradeOff.value", "about {:g} % more"),
    ("Parameter.text", "Parameter.value", "{:.0f} kg"),
    ("Remedy.text", "Remedy.at_least", "load index {:g} or more"),
    ("Action.text", "ActionNumbers.pressure_kpa", "to {:g} kPa"),
    ("Rule.message", "Bound.value", "at most {:g} % wider"),
    ("PlanRepeats.text", "PlanRepeats.for_greatest", "{:g} tests of each"),
]
WORDS = {
    "Finding.unit": "kg",
    "Parameter.unit": "kg",
    "TradeOff.unit": "%",
    "Bound.unit": "%",
    "PackLimit.unit": "%",
    "TradeOff.axle": "front",
    "Finding.outcome": "not_met",
}


@pytest.mark.parametrize(("name", "value"), ASKED.items())
def test_the_request_is_the_one_that_the_design_prints(name, value):
    assert EXAMPLES[name] == value


@pytest.mark.parametrize(("model", "field"), SAID)
def test_numbers_beside_a_designation_are_what_it_says(model, field):
    designation, numbers = SAID[model, field]
    assert EXAMPLES[f"{model}.{field}"] == designation
    assert {name: EXAMPLES[f"{model}.{name}"] for name in numbers} == numbers


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_is_that_of_a_sum_by_hand(name):
    expected = FIGURES[name]
    assert EXAMPLES[name] == (pytest.approx(expected) if isinstance(expected, float) else expected)


@pytest.mark.parametrize(("sentence", "name", "words"), SENTENCES)
def test_a_number_is_that_of_the_sentence_beside_it(sentence, name, words):
    assert words.format(EXAMPLES[name]) in EXAMPLES[sentence]


def test_words_beside_a_sentence_are_those_of_it():
    assert {name: EXAMPLES[name] for name in WORDS} == WORDS


def test_rows_of_a_table_are_those_of_the_standard():
    """Load index 91 is 615 kg (ISO 4000-1, from memory)."""
    assert EXAMPLES["Table.rows"] == [{"load_index": 91, "mass_kg": 615}]


def test_what_is_said_of_several_is_no_more_than_they_are():
    held, applied, met = (EXAMPLES[f"RulePackHeld.rules_{name}"] for name in ("held", "applied", "met"))
    assert held >= applied >= met > 0
    assert EXAMPLES["Sieve.kept"] <= EXAMPLES["Sieve.tried"]
    assert EXAMPLES["Estimate.low"] < EXAMPLES["Estimate.value"] < EXAMPLES["Estimate.high"]
    assert EXAMPLES["PlanRepeats.for_greatest"] <= EXAMPLES["PlanRepeats.for_all"]
    for window in ("OffsetRun", "OffsetWindow", "SharedRim"):
        assert EXAMPLES[f"{window}.from_mm"] < 45.0 < EXAMPLES[f"{window}.to_mm"]
    assert EXAMPLES["BestOffset.offset_mm"] == EXAMPLES["SharedRim.best_mm"] == EXAMPLES["ChosenRim.offset_mm"] == 45.0


def test_a_place_of_two_others_tells_two_apart():
    assert EXAMPLES["PlanPair.first"] != EXAMPLES["PlanPair.second"]
