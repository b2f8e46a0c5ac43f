"""A form without its script asks what the page would have asked."""

import pytest

from service.page.form import body_of, is_followed, label_of

TYRE, RIM = "205/55 R16 91V", "6.5J x 16 ET50"
LEAST = {
    "/vehicle/front/fitted/tyre/size": TYRE,
    "/vehicle/front/fitted/rim/size": RIM,
    "/candidate/front/tyre/size": "225/50 R16 92V",
}


def body(more=(), **named):
    return body_of({**LEAST, **dict(more), **named}.items(), "en")


def at(value, pointer):
    for step in pointer.split("/")[1:]:
        value = value.get(step, {})
    return value


def test_an_empty_cell_follows_front_or_present():
    found = body()
    assert at(found, "/vehicle/rear/fitted/tyre/size") == TYRE
    assert at(found, "/candidate/rear/tyre/size") == "225/50 R16 92V"
    assert at(found, "/candidate/front/rim/size") == at(found, "/candidate/rear/rim/size") == RIM


def test_a_staggered_car_stays_staggered():
    rear = {"/vehicle/rear/fitted/tyre/size": "225/50 R16 92V"}
    assert at(body(rear), "/candidate/rear/tyre/size") == "225/50 R16 92V"
    assert (
        at(body({**rear, "/candidate/front/tyre/size": "215/55 R16 93V"}), "/candidate/rear/tyre/size")
        == "225/50 R16 92V"
    )


def test_a_rim_that_follows_brings_its_bolt_circle_and_its_spacer():
    found = body({"/vehicle/front/fitted/rim/bolt_circle": "5x112", "/vehicle/front/fitted/spacer_mm": "5"})
    for place in ("/vehicle/rear/fitted", "/candidate/front", "/candidate/rear"):
        assert at(found, f"{place}/rim/bolt_circle") == "5x112"
        assert at(found, f"{place}/spacer_mm") == 5


def test_a_new_rim_brings_nothing_along():
    found = body({"/vehicle/front/fitted/rim/bolt_circle": "5x112", "/candidate/front/rim/size": "7J x 16 ET45"})
    assert at(found, "/candidate/front/rim/bolt_circle") == {}
    assert at(found, "/candidate/rear/rim") == {"size": "7J x 16 ET45"}


@pytest.mark.parametrize(
    ("units", "text", "kpa"),
    # 1 bar is 100 kPa and 1 psi 6.894757 kPa (NIST SP 811, appendix B.8, from memory).
    [("metric", "250", 250), ("bar", "2.5", 250), ("bar", "2,5", 250), ("imperial", "36", 248.211)],
)
def test_pressures_are_read_in_the_units_of_the_form(units, text, kpa):
    found = body({"/vehicle/front/fitted/pressure_kpa": text, "units": units})
    assert at(found, "/vehicle/front/fitted/pressure_kpa") == pytest.approx(kpa)
    assert at(found, "/vehicle/rear/fitted/pressure_kpa") == pytest.approx(kpa)


@pytest.mark.parametrize(("text", "kg"), [("1,050", 1050), ("1.050", 1050), ("1 050", 1050), ("1050.5", 1050.5)])
def test_signs_between_thousands_are_read_in_a_mass(text, kg):
    found = body({"/vehicle/front/max_axle_mass_kg": text})
    assert at(found, "/vehicle/front/max_axle_mass_kg") == kg


@pytest.mark.parametrize(("text", "kpa"), [("2.5", 250), ("14.9", 1490), ("15", 15), ("0.005", 0.5)])
def test_a_pressure_that_only_bar_can_mean_is_read_in_bar(text, kpa):
    """As on the page with its script: no gauge reads a road tyre below 15 kPa or above 15 bar (common practice)."""
    found = body({"/vehicle/front/fitted/pressure_kpa": text})
    assert at(found, "/vehicle/front/fitted/pressure_kpa") == kpa


def test_what_is_no_number_and_what_is_unknown_is_left_for_the_check_to_refuse():
    found = body({"/vehicle/max_speed_kmh": "fast", "colour": "red", "/vehicle/__class__": "x"})
    assert found["vehicle"]["max_speed_kmh"] == "fast"
    assert (found["colour"], found["/vehicle/__class__"]) == ("red", "x")


def test_a_fault_is_told_with_the_label_of_its_field():
    assert label_of("/candidate/rear/tyre/size") == label_of("/candidate/rear/tyre") == "Rear axle, candidate: Tyre"
    assert label_of("/vehicle/front/hub/bolt_circle") == "Front axle: Bolt circle of the hub"
    assert label_of("/vehicle/nowhere") == "/vehicle/nowhere"


def test_what_follows_is_asked_for_where_it_comes_from():
    assert is_followed("/candidate/rear/rim")
    assert not is_followed("/vehicle/front/fitted/rim")
