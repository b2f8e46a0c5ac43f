"""Label classes, energy and fuel against printed limits and plain physics.

Sources: class limits of Regulation (EC) 1222/2009, annex I, class C1 (read in the notes; the letters A to E of
Regulation (EU) 2020/740 from memory); heat of fuels, 32 and 36 MJ/l, Directive 2009/28/EC, annex III (from memory).
That a tenth less rolling resistance saves 1 to 2 % of the fuel is common practice of the trade, no source.
"""

from __future__ import annotations

import pytest

from service.physics.rolling_energy import FUELS, energy_change_kwh_per_100km, fuel_change_l_per_100km
from service.physics.tyre_label import (
    ROLLING_RESISTANCE_KG_PER_T,
    WET_GRIP_INDEX,
    rolling_resistance_change_kg_per_t,
    wet_class_distance_change_percent,
)


@pytest.mark.parametrize(("letter", "most"), [("A", 6.5), ("B", 7.7), ("C", 9.0), ("D", 10.5)])
def test_the_rolling_resistance_of_a_class_ends_at_its_printed_limit(letter, most):
    assert ROLLING_RESISTANCE_KG_PER_T[letter].high == most


@pytest.mark.parametrize(("letter", "least"), [("A", 1.55), ("B", 1.40), ("C", 1.25), ("D", 1.10)])
def test_the_wet_grip_index_of_a_class_begins_at_its_printed_limit(letter, least):
    assert WET_GRIP_INDEX[letter].low == least


@pytest.mark.parametrize("table", [ROLLING_RESISTANCE_KG_PER_T, WET_GRIP_INDEX])
def test_neighbouring_classes_meet(table):
    spans = [sorted(each[1:]) for each in table.values()]
    ends = sorted(end for span in spans for end in span)
    assert ends[1:-1:2] == ends[2:-1:2]


def test_a_kilogram_per_tonne_on_1500_kg_is_0_41_kwh_per_100_km():
    # 1.5 kg of force over 100 km: 14.71 N x 100,000 m / 3.6 MJ = 0.4086 kWh, by hand.
    assert energy_change_kwh_per_100km(1.0, 1500.0) == pytest.approx(0.4086, abs=0.0001)


def test_from_class_c_to_a_the_wet_braking_distance_falls_by_a_fifth():
    # 1.25 / 1.55 = 0.806, by hand; the notes say about -19 %.
    assert wet_class_distance_change_percent("C", "A").value == pytest.approx(-19.4, abs=0.05)


def test_the_notes_value_lies_inside_the_band():
    change = wet_class_distance_change_percent("C", "A")
    assert change.low < -19.0 < change.high


def test_from_class_c_to_b_the_rolling_resistance_falls_by_13_tenths():
    # 9.0 to 7.7 kg/t between the printed limits.
    assert rolling_resistance_change_kg_per_t("C", "B").value == pytest.approx(-1.3)


@pytest.mark.parametrize(("fuel", "heat"), [("petrol", 8.89), ("diesel", 10.0)])
def test_a_litre_holds_the_printed_heat(fuel, heat):
    assert FUELS[fuel].heat_kwh_per_l == pytest.approx(heat, abs=0.01)


def test_a_litre_of_diesel_at_four_tenths_is_four_kilowatt_hours_at_the_wheel():
    assert fuel_change_l_per_100km(4.0, "diesel").value == pytest.approx(1.0)


def test_a_tenth_less_rolling_resistance_saves_one_to_two_per_cent_of_the_fuel():
    # 9 to 8.1 kg/t on 1,500 kg, of 7 l/100 km.
    saved = -fuel_change_l_per_100km(energy_change_kwh_per_100km(-0.9, 1500.0), "petrol").value
    assert 1.0 <= 100.0 * saved / 7.0 <= 2.0
