"""More load, more speed, more room, more tread never make a verdict worse; and no idle question leaves it open.

The pressure is left to the service throughout: a faster symbol may want more of it, which is no fault of the tyre.
"""

import pytest

from tests.support import effort
from tests.support.cases import changed
from tests.support.designations import service_of, with_service
from tests.support.shop_cases import shop_question
from tests.support.wire import AXLES, against, check, rank

CASES = effort.cases(150, 1500)
SLICE = 50
# Of a passenger or light commercial tyre; from 122 on the index makes another class of it (UN R54).
LAST_OF_CLASS = 121
FASTER = "QRSTHVWY"
FACTS_OF_A_TEST_RIG = {
    "/vehicle/speedometer": {"displayed_kmh": 100, "true_kmh": 97},
    "/vehicle/wheelbase_mm": 2700,
    "/vehicle/centre_of_gravity_height_mm": 560,
}


@pytest.fixture(scope="module", params=range(0, CASES, SLICE))
def cases(request):
    """Return seed, request and answer of the shop's questions of one slice, each without a pressure."""
    found = []
    for seed in range(request.param, request.param + SLICE):
        asked = shop_question(seed)
        for axle in AXLES:
            asked["candidate"][axle].pop("pressure_kpa", None)
        found.append((seed, asked, check(asked)))
    return found


def _worse(cases, change):
    """Return the cases whose verdict becomes worse by a change; a change that does not apply returns None."""
    found = []
    for seed, asked, answer in cases:
        more = change(asked)
        if more is None:
            continue
        again = check(more)
        if rank(again) > rank(answer):
            new = [each for each in against(again) if each not in against(answer)]
            found.append((seed, answer["verdict"], again["verdict"], new[:3]))
    return found


def _with_tyres(asked, change):
    sizes = {axle: asked["candidate"][axle]["tyre"]["size"] for axle in AXLES}
    texts = {axle: change(size) for axle, size in sizes.items()}
    if None in texts.values():
        return None
    return changed(asked, {f"/candidate/{axle}/tyre/size": text for axle, text in texts.items()})


@pytest.mark.parametrize("more", [1, 3])
def test_a_higher_load_index_is_never_worse(cases, more):
    def stronger(size):
        index, symbol = service_of(size)
        # A pair of indices is written as one here: left out, since one index says less than two.
        if "/" in size.split(" ")[2] or index is None or index + more > LAST_OF_CLASS:
            return None
        return with_service(size, index + more, symbol)

    assert _worse(cases, lambda asked: _with_tyres(asked, stronger)) == []


def test_a_faster_symbol_is_never_worse(cases):
    def faster(size):
        index, symbol = service_of(size)
        if "/" in size.split(" ")[2] or symbol not in FASTER[:-1]:
            return None
        return with_service(size, index, FASTER[FASTER.index(symbol) + 1])

    assert _worse(cases, lambda asked: _with_tyres(asked, faster)) == []


@pytest.mark.parametrize("side", ["inboard_mm", "outboard_mm", "radial_mm"])
def test_more_room_is_never_worse(cases, side):
    def roomier(asked):
        rooms = {axle: asked["vehicle"][axle].get("clearance", {}).get(side) for axle in AXLES}
        if None in rooms.values():
            return None
        return changed(asked, {f"/vehicle/{axle}/clearance/{side}": room + 6 for axle, room in rooms.items()})

    assert _worse(cases, roomier) == []


def test_plenty_of_measured_room_is_never_worse_than_none_measured(cases):
    room = {"inboard_mm": 200, "outboard_mm": 200, "radial_mm": 200}
    plenty = {f"/vehicle/{axle}/clearance": room for axle in AXLES}

    def unmeasured(asked):
        return None if any("clearance" in asked["vehicle"][axle] for axle in AXLES) else changed(asked, plenty)

    assert _worse(cases, unmeasured) == []


def test_more_tread_all_round_is_never_worse(cases):
    def deeper(asked):
        depths = {axle: asked["candidate"][axle]["tyre"].get("tread_depth_mm") for axle in AXLES}
        if None in depths.values():
            return None
        return changed(asked, {f"/candidate/{axle}/tyre/tread_depth_mm": mm + 1.5 for axle, mm in depths.items()})

    assert _worse(cases, deeper) == []


def test_a_stronger_rim_is_never_worse(cases):
    def stronger(asked):
        ratings = {axle: asked["candidate"][axle]["rim"].get("load_rating_kg") for axle in AXLES}
        if None in ratings.values():
            return None
        return changed(asked, {f"/candidate/{axle}/rim/load_rating_kg": kg * 1.2 for axle, kg in ratings.items()})

    assert _worse(cases, stronger) == []


def test_the_changes_apply_to_enough_cases(cases):
    described = [asked for _, asked, _ in cases if "/" not in asked["candidate"]["front"]["tyre"]["size"].split(" ")[2]]
    assert len(described) > SLICE // 3


def test_no_answer_waits_for_what_only_a_test_rig_or_a_calibrated_drive_can_give(cases):
    """With those facts stated, and nothing else, an answer that waited does not become an answer that fits."""
    waiting = []
    for seed, asked, answer in cases:
        if answer["verdict"] != "undetermined":
            continue
        facts = {
            pointer: value for pointer, value in FACTS_OF_A_TEST_RIG.items() if pointer[9:] not in asked["vehicle"]
        }
        for axle in AXLES:
            facts[f"/vehicle/{axle}/kerb_axle_mass_kg"] = 0.7 * asked["vehicle"][axle]["max_axle_mass_kg"]
            facts.setdefault(f"/candidate/{axle}/tyre/tread_depth_mm", 8.0)
            facts.setdefault(f"/vehicle/{axle}/fitted/tyre/tread_depth_mm", 8.0)
        again = check(changed(asked, facts))
        if again["verdict"] in ("suitable", "suitable_with_conditions", "not_recommended"):
            settled = [each for each in against(answer) if each[2] == "not_assessed" and each not in against(again)]
            waiting.append((seed, settled))
    assert waiting == []


def test_no_answer_waits_for_a_hump(cases):
    waiting = []
    for seed, asked, answer in cases:
        rims = {axle: asked["candidate"][axle]["rim"]["size"] for axle in AXLES}
        bare = {f"/candidate/{axle}/rim/size": rim.replace(" H2", "") for axle, rim in rims.items()}
        bare |= {
            f"/vehicle/{axle}/fitted/rim/size": asked["vehicle"][axle]["fitted"]["rim"]["size"].replace(" H2", "")
            for axle in AXLES
        }
        again = check(changed(asked, bare))
        if again["verdict"] != answer["verdict"]:
            waiting.append((seed, answer["verdict"], again["verdict"]))
    assert waiting == []
