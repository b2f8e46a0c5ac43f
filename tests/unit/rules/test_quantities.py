"""The unit of every quantity that a rule may limit, written down by hand."""

from service.rules.quantities import QUANTITIES

UNITS = {
    "%": "track_change_percent overall_diameter_change_percent overall_diameter_change_abs_percent "
    "rolling_circumference_change_percent rolling_circumference_change_abs_percent section_width_change_percent "
    "load_capacity_margin_percent",
    "mm": "track_change_mm track_change_abs_mm offset_change_mm spacer_mm overall_diameter_change_mm "
    "section_width_change_mm rim_diameter_change_mm rim_diameter_change_abs_mm rim_width_change_mm",
    "kg": "load_rating_sum_margin_kg tyre_load_rating_margin_kg",
    "km/h": "speed_capability_kmh speed_capability_margin_kmh speed_symbol_change_kmh",
    "index": "load_index_change load_index_spread",
    "yes/no": "same_size_on_axle structure_same radial_rear_where_radial_front",
}


def test_every_quantity_has_its_unit_and_its_own_name():
    assert {name: each.unit for name, each in QUANTITIES.items()} == {
        name: unit for unit, names in UNITS.items() for name in names.split()
    }
    assert [name for name, each in QUANTITIES.items() if each.name != name] == []
