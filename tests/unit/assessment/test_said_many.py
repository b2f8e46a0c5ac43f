"""What rims, plans, spacers and tolerances tell can be said in another language, down to what fills each sentence."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from service.api.inbound import translate
from service.api.render.plan_answer import plan_result
from service.api.render.rims_answer import rims_result
from service.api.schemas.rims import RimsRequest
from service.assessment.batch.rim_search import rims_for
from service.core.saying import Said
from service.rules.reader import default_packs
from tests.support.cases import ABSENT, changed, check, on_both_axles, saloon
from tests.support.plans import F225, F255, F285, asked, request, wheel
from tests.support.sayings import unsaid
from tests.support.sentences import sentences

Json = dict[str, Any]
# Members whose texts are read by people.
TEXTS = {"text", "pressure_rule_text", "change", "reason", "first_remedy", "notes", "cautions"}
LABEL = "wide and round"
TYRES = {
    "front": [{"size": "245/40 R17 95W XL"}, {"size": "225/45 R17 80W"}, {"size": "155/70 R13 75T"}],
    "rear": [{"size": "275/35 R18 99Y XL"}, {"size": "31x10.50 R15LT"}],
}
VEHICLE = saloon()["vehicle"]
BARE = changed({"vehicle": VEHICLE}, on_both_axles({"/vehicle/{axle}/fitted/rim/size": "7.5J x 17"}))["vehicle"]
UNMEASURED = changed({"vehicle": VEHICLE}, on_both_axles({"/vehicle/{axle}/clearance": ABSENT}))["vehicle"]
LOOSE = {"/vehicle/front/clearance/tolerance_mm": 4, "/combinations": [{"front": wheel(F255, "8.5J x 19 H2 ET44")}]}
PLANS = {
    "two": request((F255, F285), (F225, None), repeatability={"braking_distance_percent": 1.0}),
    "bare": changed(request((F285, None)), {"/vehicle/wheelbase_mm": ABSENT, "/vehicle/front/clearance": {}}),
    "loose": changed(request((F255, None)), LOOSE),
    "rims to buy": request((None, "265/35 R18 97Y XL"), ("275/35 R18 99Y XL", None)),
    "nothing goes": request(("155 R13", None), pressure_rule="load_over_capacity"),
}
SPACED = on_both_axles({"/candidate/{axle}/spacer_mm": 5, "/vehicle/{axle}/fitted/spacer_mm": 3})
SPACERS = {
    "fitted": on_both_axles({"/candidate/{axle}/spacer_mm": 5}),
    "others": SPACED,
    "taken off": on_both_axles({"/vehicle/{axle}/fitted/spacer_mm": 3}),
    "known loosely": {
        "/vehicle/front/clearance/tolerance_mm": 2,
        "/vehicle/rear/track_tolerance_mm": 3,
        "/vehicle/speedometer": {"displayed_kmh": 100, "true_kmh": 97, "tolerance_percent": 3},
        # 14 - 9 = 5 mm are left inboard as measured; 5 mm are enough (common practice, no source).
        "/candidate/front/rim/size": "7.5J x 17 H2 ET54",
        "/candidate/rear/spacer_mm": 14,
    },
}


@cache
def sayings() -> frozenset[str]:
    return frozenset(str(each.id) for each in sentences() if each.id)


def texts(answer: object, name: str = "") -> Iterator[str]:
    """Yield the texts of an answer that people read."""
    if isinstance(answer, dict):
        for key, each in answer.items():
            yield from texts(each, key)
    elif isinstance(answer, (list, tuple)):
        for each in answer:
            yield from texts(each, name)
    elif isinstance(answer, str) and name in TEXTS:
        yield answer


def templates(text: str) -> Iterator[str]:
    if isinstance(text, Said):
        yield text.template
        for each in text.parameters.values():
            yield from templates(each)


def hold(told: set[str]) -> None:
    """Hold that each text is a sentence of the catalogues; what a caller calls a combination is none."""
    assert len(told) > 5
    assert [text for text in told if not isinstance(text, Said)] == []
    assert {text: unsaid(text, (LABEL,)) for text in told if unsaid(text, (LABEL,))} == {}
    words = {each for text in told for each in templates(text) if any(letter.isalpha() for letter in bare(each))}
    assert words - sayings() == set()


def bare(template: str) -> str:
    """Return a template without its places."""
    pieces = [piece.rpartition("}")[2] for piece in template.split("{")]
    return "".join(pieces)


@pytest.mark.parametrize("pack", sorted(default_packs()))
@pytest.mark.parametrize("vehicle", [VEHICLE, BARE, UNMEASURED], ids=["whole", "no offset", "not measured"])
def test_rims(vehicle: Json, pack: str) -> None:
    question = RimsRequest.model_validate({"vehicle": vehicle, "tyres": TYRES, "rule_pack": pack})
    case = translate.question(question)
    hold(set(texts(rims_result(case, rims_for(case, translate.rims_asked(question))))))


@pytest.mark.parametrize("name", PLANS)
def test_a_plan(name: str) -> None:
    made = PLANS[name]
    made["combinations"][0]["label"] = LABEL
    case, found = asked(made)
    hold(set(texts(plan_result(case, found))))


@pytest.mark.parametrize("pack", ["unece", "nl", "au-nsw"])
@pytest.mark.parametrize("name", SPACERS)
def test_spacers_and_tolerances(name: str, pack: str) -> None:
    found = check(changed(saloon() | {"rule_pack": pack}, SPACERS[name]))
    told = {each.text for each in found.actions} | {each.message for each in found.findings}
    hold(told | {each.remedy.text for each in found.findings if each.remedy is not None})


def test_the_cases_ask_for_spacers_and_hold_within_no_tolerance() -> None:
    # Otherwise their texts could stay unseen.
    found = {name: check(changed(saloon(), more)) for name, more in SPACERS.items()}
    for name in ("fitted", "others", "taken off"):
        assert [each.code for each in found[name].actions if each.code == "spacers_front"] == ["spacers_front"]
    assert any(each.holds_within_tolerance is False for each in found["known loosely"].findings)
