"""A sweep comes to the same as single checks: one formula, one limit, two ways there."""

import math
from collections import Counter

import pytest

from service.assessment.answer.assess import Assessment, assess
from service.assessment.batch.comparison_measures import load_margin_percent
from service.assessment.case import Case
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED
from service.rules.reader import pack_named
from service.sweep.catalogue_rows import candidate, records, vehicle
from tests.support.effort import cases
from tests.unit.sweep.small_catalogue import candidates, vehicles

VEHICLES = cases(14, 26)
CANDIDATES = 30


def _single(pack: str, season: str | None) -> dict[tuple[str, str], Assessment]:
    asked = records(candidates(CANDIDATES))
    return {
        (known["vehicle_id"], row["candidate_id"]): assess(
            Case(vehicle(known), candidate(row), pack_named(pack), season)
        )
        for known in records(vehicles(VEHICLES))
        for row in asked
    }


def _rests_on(found: Assessment) -> set[str]:
    outcome = {
        "unsuitable": NOT_MET,
        "not_recommended": NOT_RECOMMENDED,
        "undetermined": NOT_ASSESSED,
        "suitable_with_conditions": ADVISORY,
        "suitable": None,
    }[found.verdict]
    return {f"{each.axle}:{each.code}" for each in found.findings if each.outcome == outcome}


# Of five verdicts winter law leaves four: a summer tyre on one axle is against it there and no longer advised against.
@pytest.mark.parametrize(("pack", "season", "verdicts"), [("unece", None, 5), ("de", "winter", 4), ("au-nsw", None, 5)])
def test_every_pair_has_the_verdict_and_the_reasons_of_its_single_check(sweep_of, pack, season, verdicts):
    sweep = sweep_of(vehicles(VEHICLES), candidates(CANDIDATES))
    assert sweep.run("--rule-pack", pack, *(["--season", season] if season else []), "--partition-rows", "700") == 0
    found = {
        (row.vehicle_id, row.candidate_id): (row.verdict, set(row.worst_codes.split()))
        for row in sweep.pairs().itertuples()
    }
    single = _single(pack, season)
    assert found == {pair: (each.verdict, _rests_on(each)) for pair, each in single.items()}
    # The catalogue is of use only when it leads to all verdicts.
    assert len(Counter(each.verdict for each in single.values())) == verdicts


def test_every_pair_has_the_numbers_of_its_single_check(sweep_of):
    sweep = sweep_of(vehicles(VEHICLES), candidates(CANDIDATES))
    assert sweep.run() == 0
    single = _single("unece", None)
    rows = sweep.pairs().itertuples()
    assert [_misses(row, single[row.vehicle_id, row.candidate_id]) for row in rows] == [[]] * len(single)


def _misses(row, found: Assessment) -> list[str]:
    car = found.car
    expected = {
        "driven_circumference_ratio": car.change.driven_circumference_ratio,
        "axle_ratio_percent": car.change.axle_ratio_percent,
        "understeer_gradient_deg_per_g": car.change.gradient_deg_per_g.value,
        "understeer_gradient_low_deg_per_g": car.change.gradient_deg_per_g.low,
        "understeer_gradient_high_deg_per_g": car.change.gradient_deg_per_g.high,
    }
    for view in (car.front, car.rear):
        numbers = {
            "overall_diameter_percent": view.change.overall_diameter_percent,
            "load_margin_percent": load_margin_percent(view),
            "pressure_kpa": view.ordered_pressure_kpa,
            "cornering_stiffness_percent": 100.0 * (view.change.cornering_stiffness.value - 1.0),
            "aquaplaning_onset_percent": view.change.aquaplaning_onset_percent.value,
            "inboard_edge_mm": view.change.inboard_edge_mm,
            "outboard_edge_mm": view.change.outboard_edge_mm,
        }
        expected |= {f"{view.name}_{name}": value for name, value in numbers.items()}
    # The results are 32-bit floats: seven digits.
    return [
        f"{name}: {getattr(row, name)} and not {value}"
        for name, value in expected.items()
        if not (
            math.isclose(getattr(row, name), value, rel_tol=1e-6, abs_tol=1e-4)
            or (math.isnan(value) and math.isnan(getattr(row, name)))
        )
    ]


def test_pairs_of_own_vehicles_come_out_as_in_the_sweep_of_all(sweep_of):
    cars, wheels = vehicles(7), candidates(21)
    everything = sweep_of(cars, wheels)
    assert everything.run() == 0
    whole = everything.pairs().set_index(["vehicle_id", "candidate_id"])["worst_codes"].to_dict()
    owners = [cars["vehicle_id"][n % 7] for n in range(21)]
    paired = sweep_of(cars, wheels.assign(vehicle_id=owners))
    assert paired.run("--pairs", "--no-resume", "--partition-rows", "5") == 0
    found = paired.pairs().set_index(["vehicle_id", "candidate_id"])["worst_codes"].to_dict()
    assert found == {pair: whole[pair] for pair in zip(owners, wheels["candidate_id"], strict=True)}
