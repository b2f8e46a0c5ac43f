"""Which axle to leave as it is where balance or the wet reserve suffers: named only where that makes nothing worse."""

import pytest

from service.assessment.answer.keep_present import ASKING, BETWEEN_AXLES
from service.core.findings import ADVISORY, MET
from tests.support.cases import ABSENT, changed, check, finding, saloon
from tests.support.remedies import apply_remedy

WIDE = ("245/40 R17 95W XL", "8J x 17 H2 ET45")
KEPT = "keep the present {} wheels"
ALL_ROUND = "fit the proposed {} wheels on the {} axle too"
ON_BALANCE = ("balance.change", "vehicle")


def test_the_axle_that_alone_changes_is_the_one_to_keep():
    request = saloon(front=WIDE)
    found = finding(check(request), *ON_BALANCE)
    assert found.outcome == ADVISORY
    assert found.remedy.text == KEPT.format("front")
    assert finding(check(apply_remedy(request, found)), *ON_BALANCE).outcome == MET


def test_all_findings_of_an_answer_name_one_axle():
    both = saloon(front=WIDE, rear=("205/50 R17 93W XL", "7J x 17 H2 ET45"))
    as_high = {f"/candidate/{name}/tyre/overall_diameter_mm": 634 for name in ("front", "rear")}
    found = check(changed(both, as_high)).findings
    kept = {each.remedy.pointer for each in found if each.remedy is not None and each.remedy.quantity == "fitment"}
    assert len(kept) == 1


def test_worn_out_tyres_are_not_to_be_kept():
    """1.0 mm is below the legal 1.6 mm: the remedy would forbid what was only advised on."""
    request = changed(saloon(front=WIDE), {"/vehicle/front/fitted/tyre/tread_depth_mm": 1.0})
    found = finding(check(request), *ON_BALANCE)
    assert found.remedy.text == ALL_ROUND.format("rear", "front")
    assert finding(check(apply_remedy(request, found)), *ON_BALANCE).outcome == MET


def test_wheels_for_another_hub_are_not_named_for_both_axles():
    worn = {"/vehicle/front/fitted/tyre/tread_depth_mm": 1.0, "/candidate/front/rim/centre_bore_mm": 72.6}
    assert finding(check(changed(saloon(front=WIDE), worn)), *ON_BALANCE).remedy is None


def test_wheels_are_named_for_both_axles_only_where_nothing_is_left_to_measure():
    """The wide wheel takes some 10 mm more on either side: 40 mm were measured, or nobody measured."""
    worn = {"/vehicle/rear/fitted/tyre/tread_depth_mm": 1.0}
    room = {f"/vehicle/front/clearance/{side}_mm": 40 for side in ("inboard", "outboard", "radial")}
    found = finding(check(changed(saloon(rear=WIDE), worn | room)), *ON_BALANCE)
    assert found.remedy.text == ALL_ROUND.format("rear", "front")
    unmeasured = worn | {"/vehicle/front/clearance": ABSENT}
    assert finding(check(changed(saloon(rear=WIDE), unmeasured)), *ON_BALANCE).remedy is None


def test_a_staggered_car_is_not_told_to_fit_the_same_wheels_all_round():
    on_car = {"/vehicle/rear/fitted/tyre/size": "245/40 R17 95W XL", "/vehicle/rear/fitted/rim/size": WIDE[1]}
    worn = {"/vehicle/front/fitted/tyre/tread_depth_mm": 1.0}
    request = changed(saloon(front=WIDE, rear=("255/40 R17 98W XL", "9J x 17 H2 ET45")), on_car | worn)
    told = [each.remedy for each in check(request).findings if each.remedy is not None]
    assert [each for each in told if each.quantity == "fitment" and each.equals != "present"] == []


def test_an_axle_that_falls_out_of_step_is_not_to_be_kept():
    """On all-wheel drive both axles grow by 1.3 %; one of them alone would strain it."""
    taller = ("245/45 R17 99W XL", "8J x 17 H2 ET45"), ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
    sizes = {f"/candidate/{name}/tyre/overall_diameter_mm": 643 for name in ("front", "rear")}
    request = changed(saloon(*taller), sizes | {"/vehicle/driven_axle": "all", "/vehicle/speedometer": ABSENT})
    found = finding(check(request), *ON_BALANCE)
    assert found.outcome == ADVISORY
    assert found.remedy.text == ALL_ROUND.format("rear", "front")


def test_no_axle_is_to_be_kept_where_the_other_one_is_asked_for_winter_tyres():
    found = finding(check(saloon(front=WIDE) | {"season": "winter"}), *ON_BALANCE)
    assert found.outcome == ADVISORY
    assert found.remedy is None


def test_what_the_car_has_today_has_no_axle_to_keep():
    assert finding(check(saloon()), *ON_BALANCE).remedy is None


def test_wheels_that_stay_with_another_pressure_are_not_named_beside_the_pressure_to_set():
    """425 kg on 670 at 290 kPa need 164 kPa: 170 are enough, are set as asked, and let the rear float sooner."""
    soft = {"/candidate/rear/pressure_kpa": 170, "/vehicle/rear/max_axle_mass_kg": 850, "/vehicle/max_speed_kmh": 150}
    found = check(changed(saloon(), soft))
    assert [each.pressure_kpa for each in found.actions if each.code == "set_pressure_rear"] == [170.0]
    order = finding(found, "wet.axle_order", "vehicle")
    assert (order.outcome, order.remedy) == (ADVISORY, None)


OTHER = {"front": "rear", "rear": "front"}


def obeyed(request, where=ON_BALANCE):
    """Return the remedy of a finding, and how the question comes out once it is obeyed."""
    found = finding(check(request), *where)
    return found.remedy, finding(check(apply_remedy(request, found)), *where).outcome


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_whichever_axle_alone_changes_is_to_be_kept(axle):
    remedy, after = obeyed(saloon(**{axle: WIDE}))
    assert (remedy.text, remedy.pointer, after) == (KEPT.format(axle), f"/candidate/{axle}", MET)


# The present tyres of the axle that changes are worn out, so that it gets the other's wheels or gives it its own; a
# wheel goes where the axle weighs no more. The wide one needs some 10 mm more, of the 40 that were measured.
@pytest.mark.parametrize(
    ("wide", "heavier", "wheels", "on"),
    [
        ("front", "rear", "rear", "front"),
        ("front", "front", "front", "rear"),
        ("rear", "rear", "rear", "front"),
        ("rear", "front", "front", "rear"),
    ],
)
def test_the_wheels_of_one_axle_go_on_the_lighter_one(wide, heavier, wheels, on):
    masses = {
        f"/vehicle/{heavier}/max_axle_mass_kg": 1000,
        f"/vehicle/{OTHER[heavier]}/max_axle_mass_kg": 960,
    }
    worn = {f"/vehicle/{wide}/fitted/tyre/tread_depth_mm": 1.0}
    room = {f"/vehicle/{OTHER[wide]}/clearance/{side}_mm": 40 for side in ("inboard", "outboard", "radial")}
    remedy, after = obeyed(changed(saloon(**{wide: WIDE}), masses | worn | room))
    assert (remedy.text, remedy.pointer, remedy.equals) == (ALL_ROUND.format(wheels, on), f"/candidate/{on}", wheels)
    assert after == MET


def test_every_finding_that_it_settles_has_the_remedy_and_no_other_has():
    """A wide front moves the balance and the order of grip; what speaks of one axle alone has its own remedy."""
    request = saloon(front=WIDE)
    found = check(request).findings
    kept = {(each.code, each.axle) for each in found if each.remedy and each.remedy.quantity == "fitment"}
    asking = [each for each in found if each.outcome >= ADVISORY and each.code in (*ASKING, *BETWEEN_AXLES)]
    after = check(apply_remedy(request, asking[0]))
    assert kept == {(each.code, each.axle) for each in asking if finding(after, each.code, each.axle).outcome == MET}
