"""Searching for sizes: what is tried, what is left and why, and what each axle needs.

References: load indices 83, 84, 87, 88, 94 and 97 are 487, 500, 545, 560, 670 and 730 kg, a W tyre carries 97.5 % at
245 km/h and a V tyre 92.5 % at 235 km/h (UN R30, load-capacity index table and para. 2.31). What is left is worked out
anew by single checks of every pair.
"""

from itertools import product

import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import Assessment, assess
from service.assessment.batch.axle_needs import axle_needs
from service.assessment.batch.search_axle import AxleLimits
from service.assessment.batch.size_search import Found, Sieve, Wanted, search
from service.assessment.batch.sizes import grid, stock
from service.assessment.case import Candidate, Case, Fitment, Rim, Tyre
from service.core.findings import MET, NOT_MET
from service.designation.rim import parse_rim
from service.designation.tyre import TyreDesignation, parse_tyre
from service.rules.reader import pack_named
from tests.support.cases import Json, changed, on_both_axles, saloon

RIMS = ("7J x 17 H2 ET45", "7.5J x 17 H2 ET45", "8J x 18 H2 ET45", "8.5J x 18 H2 ET38")
STOCK = tuple(
    f"{width}/{aspect} R{code} {index}W XL"
    for code, aspects in ((17, (45, 50)), (18, (35, 40, 45)))
    for aspect in aspects
    for width, index in ((205, 88), (215, 82), (225, 95), (235, 94), (245, 97), (255, 96))
)


def case(request: Json | None = None) -> Case:
    return translate.case(CheckRequest.model_validate(request or saloon()))


def fitted_with(present: str, max_speed_kmh: float, changes: Json | None = None) -> Case:
    """Return the case with this tyre now on both axles and this top speed."""
    tyres = on_both_axles({"/vehicle/{axle}/fitted/tyre/size": present})
    return case(changed(saloon(), {**tyres, "/vehicle/max_speed_kmh": max_speed_kmh, **(changes or {})}))


def rims(*texts: str) -> list[Rim]:
    like = case().candidate.front.rim
    return [like._replace(designation=parse_rim(each)) for each in texts or RIMS]


def found_in(texts: tuple[str, ...] = STOCK, wanted: Wanted | None = None, one: Case | None = None) -> Found:
    asked = wanted or Wanted(most=100)
    return search(one or case(), stock([parse_tyre(each) for each in texts]), (rims(), rims()), asked)


def found_on_grid(wanted: Wanted | None = None, one: Case | None = None) -> Found:
    return search(one or case(), grid(""), (rims(), rims()), wanted or Wanted())


def spelled(found: Found) -> set[tuple[str, str, str, str]]:
    """Return tyre and rim of each result, front and rear."""
    return {
        (
            each.front.tyre.designation.canonical,
            each.front.rim.designation.canonical,
            each.rear.tyre.designation.canonical,
            each.rear.rim.designation.canonical,
        )
        for each in found.candidates
    }


def _checked(one: Case, front: Fitment, rear: Fitment) -> Assessment:
    return assess(one._replace(candidate=Candidate(front, rear)))


def _fitments(one: Case, axle: str) -> list[Fitment]:
    """Return every size on every rim with the pressure that a single check proposes, where nothing forbids it."""
    kept = []
    for text, rim in product(STOCK, rims()):
        fitment = Fitment(Tyre(parse_tyre(text), 8.0), rim)
        single = _checked(one, fitment, fitment)
        if not any(each.outcome == NOT_MET and each.axle == axle for each in single.findings):
            kept.append(fitment._replace(pressure_kpa=getattr(single.car, axle).ordered_pressure_kpa))
    return kept


def test_what_is_found_is_what_single_checks_of_every_pair_would_leave():
    one = case(changed(saloon(), {"/vehicle/driven_axle": "all"}))
    left = {
        (
            front.tyre.designation.canonical,
            front.rim.designation.canonical,
            rear.tyre.designation.canonical,
            rear.rim.designation.canonical,
        )
        for front, rear in product(_fitments(one, "front"), _fitments(one, "rear"))
        if _checked(one, front, rear).verdict != "unsuitable"
    }
    # With all wheels driven the check forbids the same change of the ratio at which the search stops.
    found = found_in(wanted=Wanted(stagger="any", most=1000), one=one)
    assert len(left) > 20
    assert spelled(found) == left
    assert found.pairs.kept == len(left)


def test_no_result_is_unsuitable():
    found = found_on_grid()
    verdicts = {assess(case()._replace(candidate=each)).verdict for each in found.candidates}
    assert len(found.candidates) == 20
    assert "unsuitable" not in verdicts


def test_results_stand_in_the_order_of_their_comparison():
    found = found_on_grid(Wanted(rank_by="dry_grip", stagger="any"))
    assert found.compared is not None
    assert found.compared.order.tolist() == list(range(len(found.candidates)))


def test_the_grid_has_every_width_aspect_and_rim_code():
    sizes = {(each.section_width_mm, each.aspect_ratio, each.rim_code) for each in grid("").designations}
    assert sizes == set(product(range(125, 356, 10), range(25, 86, 5), range(12, 25)))


def test_every_size_on_every_rim_is_tried():
    found = found_on_grid()
    assert (found.front.tried, found.rear.tried) == (4 * 24 * 13 * 13, 4 * 24 * 13 * 13)


@pytest.mark.parametrize("which", ["front", "rear", "pairs"])
@pytest.mark.parametrize("stagger", ["keep", "square", "any"])
def test_what_was_tried_is_left_or_has_a_reason(which, stagger):
    found = found_on_grid(Wanted(AxleLimits(1.0, 205.0, 255.0, 5.0, 3.0), stagger, 0.3, 0.05))
    sieve: Sieve = getattr(found, which)
    assert sieve.tried == sieve.kept + sum(sieve.removed.values())


def test_a_size_for_other_rims_is_sent_away_by_its_rim_diameter():
    found = found_in((STOCK[0], "195/65 R15 91T"))
    assert found.front.removed["rim.diameter"] == 2 + 4


@pytest.mark.parametrize(
    ("limits", "reason"),
    [
        (AxleLimits(overall_diameter_percent=0.5), "limits.overall_diameter_percent"),
        (AxleLimits(min_section_width_mm=225.0), "limits.section_width_mm"),
        (AxleLimits(max_section_width_mm=225.0), "limits.section_width_mm"),
        (AxleLimits(load_margin_percent=40.0), "limits.load_margin_percent"),
        (AxleLimits(room_mm=10.0), "limits.outboard_room_mm"),
    ],
)
def test_a_limit_of_the_caller_sends_away_what_the_checks_let_pass(limits, reason):
    free, bound = found_in(), found_in(wanted=Wanted(limits))
    assert free.front.removed[reason] == 0
    assert bound.front.removed[reason] > 0
    assert bound.front.kept < free.front.kept


def test_the_limits_hold_for_every_result():
    limits = AxleLimits(1.0, 215.0, 245.0, 30.0, 5.0)
    found = found_in(wanted=Wanted(limits, "any", 0.2, 0.05, most=100))
    assert found.candidates
    for each in found.candidates:
        car = assess(case()._replace(candidate=each)).car
        assert abs(car.change.axle_ratio_percent) <= 0.2
        assert abs(car.change.gradient_deg_per_g.value) <= 0.05
        for view, mass_kg in ((car.front, 960.0), (car.rear, 1000.0)):
            assert abs(view.change.overall_diameter_percent) <= 1.0
            assert 215.0 <= view.then.facts.nominal_width_mm <= 245.0
            assert view.then.load.axle_capacity_kg >= 1.3 * mass_kg
            assert min(14.0 - view.change.inboard_edge_mm, 16.0 - view.change.outboard_edge_mm) >= 5.0


def test_a_limit_that_is_reached_exactly_is_kept():
    # 94 W XL: 2 x 670 kg against 1000 kg is 34 % more.
    found = found_in(("225/45 R17 94W XL",), Wanted(AxleLimits(load_margin_percent=34.0)))
    assert (found.rear.kept, found.rear.removed["limits.load_margin_percent"]) == (2, 0)


def test_square_means_the_same_size_on_both_axles():
    found = found_in(wanted=Wanted(stagger="square", most=100))
    assert found.candidates
    assert all(each.front.tyre == each.rear.tyre for each in found.candidates)


def test_keep_keeps_what_the_rear_tyre_is_wider_and_its_rim_larger():
    staggered = changed(
        saloon(),
        {
            "/vehicle/rear/fitted/tyre/size": "245/40 R17 97W XL",
            "/vehicle/rear/fitted/rim/size": "8.5J x 17 H2 ET45",
        },
    )
    found = found_in(wanted=Wanted(stagger="keep", most=100), one=case(staggered))
    assert found.candidates
    for each in found.candidates:
        front, rear = each.front.tyre.designation, each.rear.tyre.designation
        assert (rear.section_width_mm - front.section_width_mm, rear.rim_code - front.rim_code) == (20.0, 0.0)


def test_any_pairs_what_keep_and_square_do_not():
    assert found_in(wanted=Wanted(stagger="any")).pairs.kept > found_in(wanted=Wanted(stagger="keep")).pairs.kept


@pytest.mark.parametrize(
    ("max_speed_kmh", "front", "rear"),
    [
        # 480 and 550 kg a tyre; H is 210 km/h.
        (210.0, (83, "H"), (88, "H")),
        # 480 / 0.975 = 492.3 and 550 / 0.975 = 564.1 kg a tyre.
        (245.0, (84, "W"), (89, "W")),
    ],
)
def test_an_axle_needs_the_least_index_that_carries_it_at_the_slowest_symbol(max_speed_kmh, front, rear):
    one = fitted_with("225/45 R17", max_speed_kmh, {"/vehicle/rear/max_axle_mass_kg": 1100})
    assert [each.service[:2] for each in axle_needs(one, 0.0)] == [front, rear]


@pytest.mark.parametrize(
    ("present", "max_speed_kmh", "needed"),
    [
        # H keeps all of its load at 210 km/h, as W does: 94 carries no less than 94.
        ("225/45 R17 94W XL", 210.0, (94, "H")),
        # V keeps 0.925 x 670 = 620 kg where W keeps 670: enough for the axle, and the index is no lower than today's.
        ("225/45 R17 94W XL", 235.0, (94, "V")),
        # Both keep 92.5 %, so that the slowest symbol does, though W would do with an index less.
        ("225/45 R17 91V", 235.0, (91, "V")),
        # 83 is 487 kg, and the present 80 carries less than the 480 kg that are needed of each tyre.
        ("225/45 R17 80H", 210.0, (83, "H")),
    ],
)
def test_an_axle_needs_no_less_than_its_present_tyre_carries(present, max_speed_kmh, needed):
    assert axle_needs(fitted_with(present, max_speed_kmh), 0.0)[0].service[:2] == needed


@pytest.mark.parametrize("wanted", [Wanted(), Wanted(rank_by="dry_grip"), Wanted(rank_by="load_margin")])
def test_no_size_of_the_grid_carries_less_than_the_present_ones(wanted):
    one = fitted_with("225/45 R17 94W XL", 235.0)
    found = found_on_grid(wanted, one)
    assert found.candidates
    for each in found.candidates:
        findings = assess(one._replace(candidate=each)).findings
        assert {each.outcome for each in findings if each.code == "load.below_present"} == {MET}


def test_the_best_size_of_the_grid_is_suitable():
    found = found_on_grid()
    assert assess(case()._replace(candidate=found.candidates[0])).verdict == "suitable"


def test_a_margin_raises_the_index_that_is_needed():
    # 1.1 x 480 = 528 kg: 86 is 530 kg.
    assert axle_needs(fitted_with("225/45 R17", 210.0), 10.0)[0].service[:2] == (86, "H")


def test_the_law_of_a_place_may_ask_for_more():
    # Spain asks for no lower index and no slower symbol than the present 94 W.
    one = case(changed(saloon(), {"/vehicle/max_speed_kmh": 210}))
    assert [each.service[:2] for each in axle_needs(one._replace(pack=pack_named("es")), 0.0)] == [(94, "W")] * 2


def test_beyond_every_symbol_no_need_is_named_and_no_size_is_sure():
    one = case(changed(saloon(), {"/vehicle/max_speed_kmh": 320}))
    found = found_on_grid(one=one)
    assert [each.service[:2] for each in found.needs] == [(None, None)] * 2
    assert {assess(one._replace(candidate=each)).verdict for each in found.candidates} == {"undetermined"}


def test_a_size_of_the_grid_bears_the_description_that_its_axle_needs():
    found = found_on_grid(Wanted(stagger="keep"), fitted_with("225/45 R17", 210.0))
    descriptions = {
        (each.front.tyre.designation.load_index, each.front.tyre.designation.speed_symbol) for each in found.candidates
    }
    assert descriptions == {(83, "H")}


def test_a_size_of_the_grid_on_a_square_car_is_one_tyre_that_does_for_both_axles():
    # 480 and 500 kg a tyre: 83 carries 487, 84 carries 500 kg.
    found = found_on_grid(one=fitted_with("225/45 R17", 210.0))
    tyres = {(each.front.tyre, each.rear.tyre) for each in found.candidates}
    assert all(front == rear for front, rear in tyres)
    assert {front.designation.load_index for front, _ in tyres} == {84}


def test_a_size_of_a_stock_keeps_its_own_description():
    designations: set[TyreDesignation] = {each.front.tyre.designation for each in found_in().candidates}
    assert designations <= {parse_tyre(each) for each in STOCK}


def test_the_pressure_of_a_result_carries_the_axle():
    for each in found_on_grid().candidates:
        single = assess(case()._replace(candidate=each))
        assert [one.outcome for one in single.findings if one.code == "load.pressure"] == [0, 0]


def test_a_winter_search_supposes_winter_tyres():
    one = case()._replace(season="winter", pack=pack_named("de"))
    found = search(one, grid("3PMSF"), (rims(), rims()), Wanted())
    assert found.candidates
    assert {each.front.tyre.designation.markings for each in found.candidates} == {("3PMSF",)}


def test_where_nothing_suits_the_reasons_are_still_told():
    found = search(case(), stock([parse_tyre("205/55 R16 91V")]), (rims(), rims()), Wanted())
    assert (found.candidates, found.compared) == ([], None)
    assert found.front == Sieve(4, 0, {"rim.diameter": 4})


def test_more_wheels_than_are_joined_are_counted():
    wide_open = case(
        changed(
            saloon(),
            on_both_axles({"/vehicle/{axle}/clearance": {}, "/vehicle/{axle}/max_axle_mass_kg": 600}),
        )
    )
    texts = tuple(f"{width}/45 R17 {index}W XL" for width in (215, 225, 235) for index in range(78, 125)) * 6
    found = found_in(texts, Wanted(stagger="any"), wide_open)
    assert found.front.removed["search.not_joined"] > 0
    assert found.front.kept == 600
    assert found.pairs.removed["search.not_graded"] > 0
    assert found.pairs.tried == found.pairs.kept + sum(found.pairs.removed.values())
