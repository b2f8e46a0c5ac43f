"""The load margin is one quantity wherever it is shown: of the tyres, whatever relief the law of a place gives.

Worked by hand: load index 121 is 1450 kg and 120 is 1400 kg (load index table of UN R54, annex 4). Two tyres carry
2900 kg, which is 45 % more than 2000 kg; two pairs of twins carry 5600 kg, which is 40 % more than 4000 kg. The relief
that a Dutch bus has (15 % of the axle mass where passengers stand, and the load at 100 km/h) changes what the law asks
and not what the tyres carry.
"""

import pandas as pd
import pytest

from service.api.inbound import translate
from service.api.render.rows import rows
from service.api.schemas.comparison import CompareRequest
from service.assessment.batch.compare import compare
from service.assessment.case import Case
from service.assessment.view.conditions import conditions_of

FITMENT = {"tyre": {"size": "225/75 R16C 121/120R"}, "rim": {"size": "6J x 16 H2 ET100"}}
BUS = {
    "max_speed_kmh": 120,
    "category": "M3",
    "max_mass_kg": 5600,
    "seats_standing": True,
    "speed_limited_kmh": 100,
    "front": {"max_axle_mass_kg": 2000, "fitted": FITMENT},
    "rear": {"max_axle_mass_kg": 4000, "wheels_per_side": 2, "fitted": FITMENT},
}


@pytest.fixture
def bus() -> pd.DataFrame:
    wheels = {f"{axle}_{name}": FITMENT[name]["size"] for axle in ("front", "rear") for name in ("tyre", "rim")}
    facts = {name: value for name, value in BUS.items() if name not in ("front", "rear")}
    axles = {f"{axle}_{name}": value for axle in ("front", "rear") for name, value in BUS[axle].items()}
    del axles["front_fitted"], axles["rear_fitted"]
    return pd.DataFrame([{"vehicle_id": "bus", **facts, **axles, **wheels}])


def test_a_sweep_shows_what_the_tyres_carry(sweep_of, bus):
    wheels = bus[["front_tyre", "front_rim", "rear_tyre", "rear_rim"]].assign(candidate_id="as it is")
    sweep = sweep_of(bus, wheels)
    assert sweep.run("--rule-pack", "nl") == 0
    shown = sweep.pairs().iloc[0]
    assert shown["front_load_margin_percent"] == pytest.approx(45.0, abs=0.05)
    assert shown["rear_load_margin_percent"] == pytest.approx(40.0, abs=0.05)


@pytest.fixture
def question() -> Case:
    request = {"vehicle": BUS, "rule_pack": "nl", "candidates": [{"front": FITMENT, "rear": FITMENT}]}
    return translate.question(CompareRequest.model_validate(request))


def test_a_comparison_shows_the_same(question):
    found = rows(compare(question, [question.candidate], "closest_to_present"), "standard")[0]
    assert found["axles"]["front"]["load_margin_percent"] == pytest.approx(45.0, abs=0.05)
    assert found["axles"]["rear"]["load_margin_percent"] == pytest.approx(40.0, abs=0.05)
    assert found["measures"]["load_margin_percent"] == pytest.approx(40.0, abs=0.05)


def test_the_bus_has_relief_that_could_have_been_counted(question):
    conditions = conditions_of(question)
    assert conditions.axle_mass_share == pytest.approx(0.85)
    assert conditions.law_speed_kmh == 100.0
