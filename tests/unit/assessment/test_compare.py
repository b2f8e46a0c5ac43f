"""Comparing candidates: what each measure is, what is a gain, in what order rows stand, and what betters what.

References: load indices 94, 95 and 97 are 670, 690 and 730 kg (UN R30, load-capacity index table); 225/45 R17,
245/40 R17 and 235/45 R17 have 634, 628 and 644 mm in tyre handbooks (from memory). The directions of gains and losses
are common practice, no source. The order and the meaning of "bettered" are worked out here anew, one by one, from the
words of the contract.
"""

import itertools
from collections.abc import Sequence

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from service.assessment.answer.verdict import UNSUITABLE
from service.assessment.batch.compare import MOST_FINDINGS, Compared, compare
from service.assessment.batch.comparison_measures import RankBy, trades
from service.assessment.batch.ranking import not_bettered
from service.assessment.case import Candidate, Case
from service.core.findings import OPEN
from tests.support import many_cases
from tests.support.cases import saloon

PRESENT = ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
WIDER = ("245/40 R17 97W XL", "8.5J x 17 H2 ET45")
WITHOUT_INDEX = ("225/45 R17", "7.5J x 17 H2 ET45")


def case(front: tuple[str, str] = PRESENT, rear: tuple[str, str] | None = None) -> Case:
    return translate.case(CheckRequest.model_validate(saloon(front, rear or front)))


def compared(*pairs: tuple[str, str], rank_by: RankBy = "closest_to_present") -> Compared:
    return compare(case(), [case(pair).candidate for pair in pairs], rank_by)


def measure(found: Compared, name: str) -> float:
    """Return the measure of the only candidate."""
    return float(getattr(found.measures, name)[0])


def random_ones(seed: int, count: int = 60) -> tuple[Case, list[Candidate]]:
    asked = many_cases.question(seed, count)
    about = {name: value for name, value in asked.items() if name != "candidates"}
    cases = [translate.case(CheckRequest.model_validate({**about, "candidate": each})) for each in asked["candidates"]]
    return cases[0], [each.candidate for each in cases]


@pytest.mark.parametrize(
    "name",
    [
        "dry_grip_percent",
        "braking_distance_percent",
        "wet_margin_percent",
        "balance_deg_per_g",
        "diameter_deviation_percent",
    ],
)
def test_the_present_fitment_measures_nothing(name):
    assert measure(compared(PRESENT), name) == 0.0


def test_the_deviation_is_that_of_the_axle_that_deviates_more():
    # 628 mm at the rear against 634 mm.
    mixed = compare(case(), [case(PRESENT, WIDER).candidate], "balance")
    assert measure(mixed, "diameter_deviation_percent") == pytest.approx(100.0 * (1.0 - 628.0 / 634.0))


def test_the_deviation_of_a_larger_tyre_has_no_sign_either():
    larger = compared(("235/45 R17 94W XL", "8J x 17 H2 ET45"))
    assert measure(larger, "diameter_deviation_percent") == pytest.approx(100.0 * (644.0 / 634.0 - 1.0))


def test_the_load_margin_is_that_of_the_axle_with_less():
    # Twice 670 kg against 1000 kg at the rear, where the front has 960 kg; W keeps its load up to 240 km/h.
    assert measure(compared(PRESENT), "load_margin_percent") == pytest.approx(34.0)


def test_the_dry_grip_is_that_of_the_axle_with_less():
    alone = measure(compared(WIDER), "dry_grip_percent")
    mixed = compare(case(), [case(PRESENT, WIDER).candidate], "dry_grip")
    assert alone > 0.0 == measure(mixed, "dry_grip_percent")


def test_the_dry_grip_follows_what_the_tyre_carries():
    # Friction goes with the load reserve to the power of 0.2 (project's estimate): index 94 to 97 is 670 to 730 kg.
    found = measure(compared(WIDER), "dry_grip_percent")
    assert found == pytest.approx(100.0 * ((730.0 / 670.0) ** 0.2 - 1.0))


def test_the_braking_distance_falls_as_the_grip_of_both_axles_rises():
    # The same ratio on both axles, so the share of the front does not matter.
    found = measure(compared(WIDER), "braking_distance_percent")
    assert found == pytest.approx(100.0 * ((670.0 / 730.0) ** 0.2 - 1.0))


def test_the_wet_margin_is_that_of_the_rear():
    alone = measure(compared(WIDER), "wet_margin_percent")
    mixed = compare(case(), [case(PRESENT, WIDER).candidate], "wet_margin")
    assert measure(mixed, "wet_margin_percent") == pytest.approx(alone)
    assert alone < 0.0


def test_the_wet_margin_is_that_of_the_front_where_the_rear_stays():
    found = compare(case(), [case(WIDER, PRESENT).candidate], "wet_margin")
    front = found.graded.car.front_reserve
    lost = front.proposed_percent - front.present_percent
    assert measure(found, "wet_margin_percent") == pytest.approx(float(lost[0]))
    assert lost[0] < 0.0


def test_what_one_axle_lacks_is_not_known_of_the_pair():
    mixed = compare(case(), [case(PRESENT, WITHOUT_INDEX).candidate, case(WITHOUT_INDEX, PRESENT).candidate], "balance")
    assert np.isnan(mixed.measures.load_margin_percent).tolist() == [True, True]


@pytest.mark.parametrize(
    ("pair", "gains", "losses"),
    [
        (PRESENT, [], []),
        (WIDER, ["dry_grip", "braking", "load_margin"], ["wet_margin", "room"]),
        (("225/45 R17 95W XL", "7.5J x 17 H2 ET45"), ["dry_grip", "braking", "load_margin"], []),
        (("225/45 R17 93W XL", "7.5J x 17 H2 ET45"), [], ["dry_grip", "braking", "load_margin"]),
        (("215/45 R17 94W XL", "7J x 17 H2 ET45"), ["wet_margin", "room"], []),
        (("245/45 R17 94W XL", "7.5J x 17 H2 ET45"), [], ["wet_margin", "diameter", "room"]),
    ],
    ids=["present", "wider", "more load", "less load", "narrower", "higher and wider"],
)
def test_gains_and_losses_are_named_against_the_present_fitment(pair, gains, losses):
    # Index 94 to 95 is 20 kg per tyre, 4 % of the rear axle; to 93, the same the other way.
    found = compared(pair)
    assert (trades(int(found.gains[0])), trades(int(found.losses[0]))) == (gains, losses)


def test_a_balance_that_shifts_is_a_loss():
    found = compare(case(), [case(PRESENT, ("255/40 R17 94W XL", "9J x 17 H2 ET45")).candidate], "balance")
    assert "balance" in trades(int(found.losses[0]))


def test_candidates_alike_keep_the_callers_order():
    assert compared(WIDER, WIDER, PRESENT, PRESENT).order.tolist() == [2, 3, 0, 1]


def _betters(one: Sequence[float], other: Sequence[float]) -> bool:
    return all(a >= b for a, b in zip(one, other, strict=True)) and any(a > b for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("seed", [3, 4, 5, 12])
def test_a_candidate_is_not_bettered_when_no_other_is_as_good_in_all_and_better_in_one(seed):
    found = compare(*random_ones(seed), "balance")
    measures = found.measures
    merits = [
        [-np.inf if np.isnan(value) else float(value) for value in each]
        for each in zip(
            measures.dry_grip_percent,
            -np.asarray(measures.braking_distance_percent),
            measures.wet_margin_percent,
            -np.asarray(measures.balance_deg_per_g),
            measures.load_margin_percent,
            -np.asarray(measures.diameter_deviation_percent),
            strict=True,
        )
    ]
    choice = [at for at, code in enumerate(found.graded.verdicts.tolist()) if code < UNSUITABLE]
    bettered = {other for one, other in itertools.permutations(choice, 2) if _betters(merits[one], merits[other])}
    assert set(np.flatnonzero(found.not_bettered).tolist()) == set(choice) - bettered


def test_what_is_unsuitable_betters_nothing_and_is_never_marked():
    found = compared(PRESENT)
    measures = found.measures._replace(**{name: np.array([1.0, 0.0]) for name in found.measures._fields})
    verdicts = np.array([UNSUITABLE, 0], np.int8)
    good = measures._replace(balance_deg_per_g=np.array([0.0, 1.0]), diameter_deviation_percent=np.array([0.0, 1.0]))
    assert not_bettered(verdicts, good).tolist() == [False, True]


@pytest.mark.parametrize("seed", [3, 4, 12])
def test_the_worst_findings_are_the_first_of_the_single_check(seed):
    one, candidates = random_ones(seed, 30)
    found = compare(one, candidates, "balance")
    for at, each in enumerate(candidates):
        worst = [
            finding
            for finding in assess(one._replace(candidate=each)).findings[:MOST_FINDINGS]
            if finding.outcome > OPEN
        ]
        questions = [
            found.graded.questions[row]
            for row, shown in zip(found.worst[:, at], found.worth_showing[:, at], strict=True)
            if shown
        ]
        assert [(question.code, question.where) for question in questions] == [(one.code, one.axle) for one in worst]


def test_what_is_met_or_decides_nothing_is_not_worth_showing():
    found = compared(PRESENT, WIDER)
    outcomes = np.take_along_axis(found.graded.outcomes, found.worst, axis=0)
    assert (found.worth_showing == (outcomes > OPEN)).all()
    assert found.worth_showing[:, 1].any()
    assert not found.worth_showing[:, 0].all()


def test_units_are_those_of_the_findings():
    found = compared(WIDER)
    units = {(each.code, each.where): unit for each, unit in zip(found.graded.questions, found.units, strict=True)}
    assert units["load.capacity", "rear"] == "kg"
    assert units["diameter.deviation", "front"] == "%"
    assert units["rim.contour", "front"] is None
