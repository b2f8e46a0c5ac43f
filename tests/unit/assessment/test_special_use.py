"""Winter tyres, temporary spares, trailers, twin wheels and towing: what season, day, place and use change.

Numbers: UN R142 and UN R64 as the packs hold them (from memory), StVZO § 36 (read); see service/rules/packs.
"""

from dataclasses import replace

import pytest

from service.assessment.law import winter_tyres
from service.core.findings import ADVISORY, NOT_MET, OUTCOME_NAMES
from tests.support.cases import ABSENT, changed, check, finding, on_both_axles, outcome, saloon

SIZE = "/candidate/{axle}/tyre/size"


def winter(service: str, pack: str = "unece", date: str | None = None, season: str = "winter") -> dict:
    """Return a request on the saloon (228 km/h) with these tyres, in this place and season, on this day."""
    request = saloon() | {"rule_pack": pack, "season": season}
    if date is not None:
        request["date"] = date
    return changed(request, on_both_axles({SIZE: f"225/45 R17 {service}"}))


def test_a_winter_tyre_slower_than_the_car_needs_a_label():
    found = finding(check(winter("94H XL 3PMSF")), "speed.capability")
    assert OUTCOME_NAMES[found.outcome] == "advisory"
    assert "a label of 210 km/h in the driver's view" in found.message
    assert found.remedy.text == "put a label of 210 km/h in the driver's view, or fit speed symbol V or faster"


def test_the_mountain_symbol_makes_it_a_winter_tyre_in_summer_too():
    assert outcome(check(winter("94H XL 3PMSF", season="summer")), "speed.capability") == "advisory"


@pytest.mark.parametrize(("season", "expected"), [("winter", "not_assessed"), ("summer", "not_met")])
def test_m_and_s_alone_excuses_an_old_tyre_in_winter_only(season, expected):
    """StVZO § 36(4), read: to 30 September 2024, for tyres built to the end of 2017; no request says when."""
    request = winter("94H XL M+S", "de", "2024-09-30", season)
    assert outcome(check(request), "speed.capability") == expected


@pytest.mark.parametrize("pack", ["unece", "gb", "nl", "fi", "es"])
def test_m_and_s_alone_makes_no_winter_tyre(pack):
    """458/2011 annex II 4.2.2, as quoted: a slower winter tyre needs the mountain symbol."""
    found = check(winter("94H XL M+S", pack))
    assert outcome(found, "speed.capability") == "not_met"
    assert outcome(found, "law.winter_tyre") == "advisory"


def test_a_slow_tyre_without_a_winter_mark_is_too_slow_in_winter_too():
    assert outcome(check(winter("94H XL")), "speed.capability") == "not_met"


@pytest.mark.parametrize(("symbol", "expected"), [("Q", "advisory"), ("P", "not_met")])
def test_the_un_floor_for_winter_tyres_is_160_kmh(symbol, expected):
    assert outcome(check(winter(f"94{symbol} XL 3PMSF")), "speed.capability") == expected


def test_germany_has_no_floor_for_winter_tyres():
    assert outcome(check(winter("94P XL 3PMSF", "de", "2026-11-24")), "speed.capability") == "advisory"


@pytest.mark.parametrize(
    ("date", "expected"), [("2024-09-30", "not_assessed"), ("2024-10-01", "not_met")], ids=["last day", "day after"]
)
def test_in_germany_ms_alone_counts_until_30_september_2024_and_for_old_tyres_only(date, expected):
    assert outcome(check(winter("94H XL M+S", "de", date)), "law.winter_tyre") == expected


def test_the_date_decides_whether_a_slow_ms_tyre_is_excused_in_germany():
    assert outcome(check(winter("94H XL M+S", "de", "2024-10-01")), "speed.capability") == "not_met"


@pytest.mark.parametrize(("marking", "expected"), [("M+S", "advisory"), ("M+S 3PMSF", "met")])
def test_ms_alone_is_no_winter_tyre_under_the_un_regulations(marking, expected):
    """(EU) 458/2011, annex II 4.2.2, as quoted."""
    assert outcome(check(winter(f"94V XL {marking}")), "law.winter_tyre") == expected


NO_MORE = "M+S alone does not make a winter tyre here"


@pytest.mark.parametrize(
    ("asked", "said", "place"),
    [
        (("94H XL M+S",), "M+S alone does not make a winter tyre here.", "snow tyres"),
        (("94H XL M+S", "de", "2024-10-01"), f"{NO_MORE} after 30 September 2024.", "§ 36(4)"),
        (("94H XL", "de", "2024-10-01"), "The tyre has no winter mark (3PMSF, or M+S where that counts).", "§ 36(5)"),
        (("94H XL",), "The tyre has no winter mark (3PMSF, or M+S where that counts).", "snow tyres"),
    ],
)
def test_why_a_tyre_is_no_winter_tyre_is_told_with_the_last_day_of_ms(asked, said, place):
    """StVZO § 36(4), read: M+S alone to 30 September 2024."""
    found = finding(check(winter(*asked)), "law.winter_tyre")
    assert found.message.startswith(said)
    assert found.remedy.equals == "3PMSF"
    assert place in found.basis.place


def test_a_summer_tyre_in_winter_is_forbidden_where_the_text_was_read_and_advised_against_elsewhere():
    in_germany = outcome(check(winter("94V XL", "de", "2026-11-24")), "law.winter_tyre")
    elsewhere = outcome(check(winter("94V XL")), "law.winter_tyre")
    assert (in_germany, elsewhere) == ("not_met", "advisory")


@pytest.mark.parametrize(
    ("statuses", "expected"),
    [
        (("read", "read"), NOT_MET),
        (("read", "second_hand"), NOT_MET),
        (("second_hand", "read"), NOT_MET),
        (("second_hand", "second_hand"), ADVISORY),
    ],
)
def test_a_summer_tyre_is_forbidden_where_any_mark_that_counts_was_read(statuses, expected):
    """What nobody read may only advise; one mark that was read tells that some mark is asked for."""
    found = check(winter("94V XL", "de", "2026-11-24"))
    rules = found.case.pack.winter
    marks = tuple(replace(each, status=status) for each, status in zip(rules.markings, statuses, strict=True))
    case = found.case._replace(pack=replace(found.case.pack, winter=replace(rules, markings=marks)))
    assert {each.outcome for each in winter_tyres.findings(case, found.car)} == {expected}


def test_no_winter_question_is_answered_out_of_season():
    codes = {each.code for each in check(winter("94V XL", season="summer")).findings}
    assert "law.winter_tyre" not in codes


def test_a_temporary_spare_is_no_regular_fitment():
    request = changed(saloon(), {"/candidate/rear/tyre/size": "T125/80 D17 99M"})
    found = finding(check(request), "tyre.temporary_spare")
    assert (OUTCOME_NAMES[found.outcome], found.limit) == ("not_met", 80.0)


def trailer(max_speed_kmh: float, max_axle_mass_kg: float) -> dict:
    """Return a light trailer on 91T tyres (615 kg each)."""
    tyres = on_both_axles({SIZE: "205/55 R16 91T", "/vehicle/{axle}/fitted/tyre/size": "205/55 R16 91T"})
    rims = on_both_axles({"/candidate/{axle}/rim/size": "6.5J x 16 H2 ET45"})
    mass = on_both_axles({"/vehicle/{axle}/max_axle_mass_kg": max_axle_mass_kg})
    vehicle = {"/vehicle/category": "O2", "/vehicle/max_speed_kmh": max_speed_kmh, "/vehicle/driven_axle": ABSENT}
    return changed(saloon(), {**tyres, **rims, **mass, **vehicle})


@pytest.mark.parametrize(("mass_kg", "expected"), [(1366.0, "met"), (1367.0, "not_met")])
def test_passenger_tyres_of_a_slow_trailer_carry_045_of_its_axle_each(mass_kg, expected):
    # 615 kg / 0.45 = 1366.7 kg
    assert outcome(check(trailer(100, mass_kg)), "load.capacity") == expected


def test_a_faster_trailer_gets_no_relief():
    # 2 x 615 kg = 1230 kg
    assert outcome(check(trailer(101, 1240.0)), "load.capacity") == "not_met"


def twin(tyre: str, max_axle_mass_kg: float) -> dict:
    """Return a van with twin rear wheels."""
    return changed(
        saloon(),
        {
            "/vehicle/category": "N1",
            "/vehicle/max_speed_kmh": 100,
            "/vehicle/rear/wheels_per_side": 2,
            "/vehicle/rear/max_axle_mass_kg": max_axle_mass_kg,
            "/candidate/rear/tyre/size": tyre,
        },
    )


@pytest.mark.parametrize(("mass_kg", "expected"), [(4240.0, "met"), (4241.0, "not_met")])
def test_twin_commercial_tyres_carry_a_quarter_each_by_the_second_index(mass_kg, expected):
    # Load index 110 is 1060 kg, four of them 4240 kg (UN R54: no bonus is counted below the symbol's speed).
    assert outcome(check(twin("225/70 R17C 112/110R", mass_kg)), "load.capacity") == expected


@pytest.mark.parametrize(("mass_kg", "expected"), [(2481.0, "met"), (2482.0, "not_met")])
def test_twin_passenger_tyres_carry_027_each(mass_kg, expected):
    # 670 kg / 0.27 = 2481.5 kg
    assert outcome(check(twin("225/45 R17 94W XL", mass_kg)), "load.capacity") == expected


def towing(max_axle_mass_kg: float, *, tows: bool = True) -> dict:
    """Return the saloon with or without a trailer; its rear tyres carry 2 x 670 kg."""
    return changed(saloon(), {"/vehicle/towing": tows, "/vehicle/rear/max_axle_mass_kg": max_axle_mass_kg})


@pytest.mark.parametrize(("mass_kg", "expected"), [(1541.0, "advisory"), (1541.1, "not_met")])
def test_towing_allows_15_percent_more_on_the_rear_axle_with_conditions(mass_kg, expected):
    # 1.15 x 1340 kg = 1541 kg
    assert outcome(check(towing(mass_kg)), "load.towing") == expected


@pytest.mark.parametrize(("mass_kg", "expected"), [(1165.0, "met"), (1166.0, "advisory")])
def test_tyres_that_carry_as_much_more_by_themselves_have_no_conditions(mass_kg, expected):
    # 1340 kg / 1.15 = 1165.2 kg
    assert outcome(check(towing(mass_kg)), "load.towing") == expected


@pytest.mark.parametrize(("mass_kg", "expected"), [(2060.0, "met"), (2061.0, "not_met")])
def test_commercial_tyres_get_no_relief_for_towing(mass_kg, expected):
    """458/2011 annex II 5.2, as quoted: class C1 alone. Load index 109 is 1030 kg, two of them 2060 kg."""
    request = changed(towing(mass_kg), {"/candidate/rear/tyre/size": "215/65 R17C 109/107T"})
    found = finding(check(request), "load.towing")
    assert (OUTCOME_NAMES[found.outcome], found.measured) == (expected, 2060.0)


def test_the_towing_finding_names_speed_and_pressure():
    message = finding(check(towing(1400.0)), "load.towing").message
    assert "no more than 100 km/h with 20 kPa more" in message


def test_without_a_trailer_there_is_no_towing_finding():
    codes = {each.code for each in check(towing(1000.0, tows=False)).findings}
    assert "load.towing" not in codes


def test_the_services_own_load_check_keeps_its_outcome_when_towing():
    assert outcome(check(towing(1400.0)), "load.capacity") == "not_met"


def test_a_trailer_has_neither_balance_nor_speedometer_to_upset():
    wider = changed(trailer(100, 1000.0), {"/candidate/rear/tyre/size": "225/50 R16 96T XL"})
    found = check(wider)
    codes = ("balance.change", "balance.grip_order", "wet.axle_order", "diameter.speedometer")
    assert [outcome(found, code, "vehicle") for code in codes] == ["met"] * 4


def test_a_trailers_workshop_has_no_speedometer_to_check():
    wider = changed(trailer(100, 1000.0), {"/candidate/rear/tyre/size": "225/50 R16 96T XL"})
    assert "speedometer" not in {action.code for action in check(wider).actions}


def test_a_trailer_has_no_drive_that_unlike_axles_could_strain():
    unlike = {"/candidate/rear/tyre/size": "225/50 R16 96T XL", "/candidate/rear/tyre/tread_depth_mm": 3}
    found = check(changed(trailer(100, 1000.0), unlike))
    assert outcome(found, "diameter.axle_ratio", "vehicle") == "met"
    assert outcome(found, "tyre.tread_difference", "vehicle") == "met"
