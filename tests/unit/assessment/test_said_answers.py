"""Every sentence of an answer can be said in another language, down to what fills it.

What is walked is the whole answer as the routes have it before it is said and written as JSON, so that no field is
passed over. What no language changes has no word of three small letters, see `unsaid`.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path

import orjson
import pytest

from service.api.inbound import translate
from service.api.render.assessment_answer import assessment
from service.api.render.plan_answer import plan_result
from service.api.render.rims_answer import rims_result
from service.api.routers.many import compared, searched
from service.api.schemas.comparison import CompareRequest
from service.api.schemas.request import CheckRequest
from service.api.schemas.rims import RimsRequest
from service.api.schemas.search import SearchRequest
from service.assessment.answer.assess import assess
from service.assessment.answer.cautions import CAUTIONS, OF_A_TRAILER
from service.assessment.answer.measure_first import measure_first
from service.assessment.answer.subjects import PLACES, SUBJECTS, subject
from service.assessment.answer.trade_offs import NOTHING
from service.assessment.answer.verdict_words import OUTCOME_WORDS, TODAY, VERDICT_WORDS
from service.assessment.batch.left_out import reason_in_words
from service.assessment.batch.plan_effects import EFFECT_NAMES
from service.assessment.batch.plan_words import RULES, axle_text, blocks_text, effect_words, pair_text, repeats_text
from service.assessment.batch.rim_search import rims_for
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.law import towing
from service.core.saying import Said
from service.locales.speech import ENGLISH
from service.rules.reader import default_packs
from tests.support import many_cases, plans
from tests.support.cases import changed, on_both_axles, saloon
from tests.support.sayings import unsaid
from tests.support.sentences import sentences
from tests.support.shop_cases import Json, shop_question

DEMO = Path(__file__).parents[3] / "demo_requests"
# Each group of questions is one test.
GROUPS, GROUP = range(6), 25
# Fields that are no sentences (the caller's own words, names in the data, documents that are cited), and faults, which
# are said before they stand in an answer.
NO_SENTENCE = (
    "template",
    "id",
    "label",
    "sources",
    "basis",
    "rule_pack",
    "source",
    "reference",
    "place",
    "refused",
    "errors",
)
# A name in the data is one word, with underscores or dots: a sentence has several.
SEVERAL_WORDS = re.compile("[a-z]{2,} [a-z]{2,}")
CATALOGUE = frozenset(str(each.id) for each in sentences() if each.id)


def sentences_of(answer: object, path: str = "") -> Iterator[tuple[str, str]]:
    """Yield every text of an answer that is a saying, or is plain and has several words, with where it stands."""
    if isinstance(answer, dict):
        for name, each in answer.items():
            if name not in NO_SENTENCE:
                yield from sentences_of(each, f"{path}/{name}")
    elif isinstance(answer, (list, tuple)):
        for each in answer:
            yield from sentences_of(each, path)
    elif isinstance(answer, orjson.Fragment):
        pytest.fail(f"{path} is JSON already, so that nobody can say it")
    elif isinstance(answer, Said) or (isinstance(answer, str) and SEVERAL_WORDS.search(answer)):
        yield path, answer


def templates(text: str) -> Iterator[str]:
    if isinstance(text, Said):
        yield text.template
        for each in text.parameters.values():
            yield from templates(each)


def is_to_be_turned(template: str) -> bool:
    """Return whether a template has words of its own besides its places."""
    return re.search("[a-z]", re.sub(r"\{\w+\}", "", template)) is not None


def faults(texts: set[tuple[str, str]]) -> list[object]:
    """Return what in these texts a caller abroad would read in English."""
    found: list[object] = [(path, text) for path, text in texts if not isinstance(text, Said)]
    found += [(path, text, unsaid(text)) for path, text in texts if unsaid(text)]
    missing = {each for _, text in texts for each in templates(text) if is_to_be_turned(each)} - CATALOGUE
    return [*found, *missing]


def check_questions(group: int) -> Iterator[Json]:
    for seed in range(group * GROUP, (group + 1) * GROUP):
        yield shop_question(seed)
        asked = many_cases.question(seed, 1)
        [candidate] = asked.pop("candidates")
        yield {**asked, "candidate": candidate}


def demo(kind: str) -> list[str]:
    return sorted(each.name for each in DEMO.glob(f"*.{kind}.json"))


def read(name: str) -> Json:
    found: Json = json.loads((DEMO / name).read_text("utf-8"))
    return found


@pytest.mark.parametrize("group", GROUPS)
def test_a_check(group: int) -> None:
    told: set[tuple[str, str]] = set()
    for at, asked in enumerate(check_questions(group)):
        case = translate.case(CheckRequest.model_validate(asked))
        found = assess(case)
        answer = assessment(found)
        assert isinstance(answer["summary"], Said)
        told.update(sentences_of(answer))
        # It takes long and says little that another one does not.
        if at % 10 == 0:
            told.update(("measure_first", each.text) for each in measure_first(case))
    assert len(told) > 100
    assert faults(told) == []


NOW, THEN = "/vehicle/{axle}/fitted/", "/candidate/{axle}/"
LABEL: Json = {"rolling_resistance_class": "C", "wet_grip_class": "B", "noise_db": 70}
OTHER_LABEL: Json = {"rolling_resistance_class": "A", "wet_grip_class": "D", "noise_db": 72}


@pytest.mark.parametrize(
    "changes",
    [
        {NOW + "tyre/label": LABEL, THEN + "tyre/label": OTHER_LABEL},
        {NOW + "tyre/label": OTHER_LABEL, THEN + "tyre/label": LABEL},
        {THEN + "tyre/label": LABEL},
        {THEN + "spacer_mm": 5, THEN + "rim/load_rating_kg": 400},
        {NOW + "spacer_mm": 5, THEN + "tyre/overall_diameter_mm": 500},
        {"/vehicle/{axle}/kerb_axle_mass_kg": 1000, "/vehicle/{axle}/max_axle_mass_kg": 900},
        {THEN + "tyre/size": "205/55-16 91V", NOW + "tyre/size": "205/55R16 91V RF"},
        {NOW + "tyre/size": "205/55-16 91V", THEN + "tyre/size": "205/55R16 91V RF"},
        {"/tyre_tolerance": "standard", "/vehicle/speedometer": {"displayed_kmh": 102, "true_kmh": 100}},
    ],
)
def test_a_check_of_what_few_shops_state(changes: Json) -> None:
    asked = changed(saloon(("205/55 R16 91V", "6.5J x 16 H2 ET46")), on_both_axles(changes))
    answer = assessment(assess(translate.case(CheckRequest.model_validate(asked))))
    assert faults(set(sentences_of(answer))) == []


@pytest.mark.parametrize("name", [each for each in demo("check") if not each.startswith("typing-error")])
def test_a_demo_request(name: str) -> None:
    answer = assessment(assess(translate.case(CheckRequest.model_validate(read(name)))))
    assert faults(set(sentences_of(answer))) == []


@pytest.mark.parametrize("seed", range(12))
def test_a_comparison(seed: int) -> None:
    asked = CompareRequest.model_validate({**many_cases.question(seed, 20), "explain_first": 2})
    answer, _ = compared(asked, ENGLISH)
    told = set(sentences_of(answer))
    assert {path for path, _ in told} >= {"/rows/change", "/cautions"}
    assert faults(told) == []


@pytest.mark.parametrize("verdict", ["suitable", "unsuitable"])
def test_a_comparison_that_leaves_all_out(verdict: str) -> None:
    asked = {**many_cases.question(3, 8), "verdicts": [verdict]}
    answer, _ = compared(CompareRequest.model_validate(asked), ENGLISH)
    assert faults(set(sentences_of(answer))) == []
    if not answer["rows"]:
        assert isinstance(answer["why_none"], Said)


@pytest.mark.parametrize("name", demo("search"))
@pytest.mark.parametrize("verdicts", [None, ["suitable"]])
def test_a_search(name: str, verdicts: list[str] | None) -> None:
    asked = read(name) | ({} if verdicts is None else {"verdicts": verdicts})
    answer, _ = searched(SearchRequest.model_validate(asked), ENGLISH)
    told = set(sentences_of(answer))
    assert "/notes" in {path for path, _ in told}
    assert faults(told) == []


def test_a_search_that_finds_nothing() -> None:
    asked = read("stock-of-a-shop.search.json")
    asked["stock"] = [{"size": "155/70 R13 75T"}, {"size": "175/70 R13 82T"}]
    answer, _ = searched(SearchRequest.model_validate(asked), ENGLISH)
    assert isinstance(answer["why_none"], Said)
    assert faults(set(sentences_of(answer))) == []


@pytest.mark.parametrize("name", demo("rims"))
def test_rims(name: str) -> None:
    asked = RimsRequest.model_validate(read(name))
    case = translate.question(asked)
    told = set(sentences_of(rims_result(case, rims_for(case, translate.rims_asked(asked)))))
    assert faults(told) == []


def test_a_plan() -> None:
    pairs = ((plans.F225, plans.F255), (plans.F255, plans.F285), (None, plans.F285), ("155/70 R13 75T", None))
    case, found = plans.asked(plans.request(*pairs, repeatability={"braking_distance_percent": 1.0}))
    told = set(sentences_of(plan_result(case, found)))
    told |= {("pairs", pair_text(found, each)) for each in found.pairs}
    told |= {("repeats", repeats_text(each)) for each in found.repeats}
    told |= {("effects", effect_words(name)) for name in EFFECT_NAMES}
    told |= {("rules", each) for each in RULES.values()} | {("blocks", blocks_text(found))}
    told |= {("wheels", axle_text(axle)) for each in found.combinations for axle in (each.front, each.rear)}
    assert faults(told) == []


def test_headings_and_names_of_what_a_finding_is_about() -> None:
    codes = {each.code for each in (*AXLE_CHECKS, *CAR_CHECKS)}
    laws = {rule.code for pack in default_packs().values() for rule in pack.rules}
    texts = {subject(code) for code in codes | laws}
    assert codes | {towing.CODE} == set(SUBJECTS)
    texts |= {reason_in_words(code) for code in codes | laws} | {each for each in PLACES.values() if each}
    texts |= {*VERDICT_WORDS.values(), TODAY, NOTHING, *(each.title for each in OUTCOME_WORDS)}
    texts |= {*CAUTIONS.values(), *OF_A_TRAILER.values()}
    assert faults({("", each) for each in texts}) == []
