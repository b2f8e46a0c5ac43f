"""What a search leaves out by itself, and how it says so.

References: common practice, no source: a car with one size all round keeps it, nobody pairs winter with summer tyres or
van with car tyres. The load indices of van tyres stand as single/twin, mostly two apart (107/105).
"""

import pytest

from service.assessment.answer.verdict import VERDICTS
from service.designation.tyre import parse_tyre
from tests.support import tyre_stock, workshop
from tests.support.wire import check, client, post

AXLES = ("front", "rear")
SEARCH = "/v1/fitments/search"


def asked(name, stock=tyre_stock.STOCK, rims=None, **more):
    vehicle = workshop.vehicle(name)
    fitted = {axle: [vehicle[axle]["fitted"]["rim"]] for axle in AXLES}
    return {
        "vehicle": vehicle,
        "rims": rims or fitted,
        "stock": [{"size": each} for each in stock],
        "max_results": 100,
        **more,
    }


def removed(answer, which="pairs"):
    return {each["code"]: each for each in answer["sieves"][which]["removed_by"]}


def tyres(row):
    return tuple(row["candidate"][axle]["tyre"]["size"] for axle in AXLES)


@pytest.mark.parametrize("name", [each for each in workshop.NAMES if each != "staggered saloon"])
def test_a_square_car_stays_square(name):
    answer = post(SEARCH, asked(name))
    assert answer["rows"]
    assert all(front == rear for front, rear in map(tyres, answer["rows"]))
    assert removed(answer).get("limits.stagger", {"by_default": True})["by_default"]


def test_a_square_car_may_be_staggered_when_the_caller_asks_for_it():
    answer = post(SEARCH, asked("SUV", limits={"stagger": "any"}))
    assert any(front != rear for front, rear in map(tyres, answer["rows"]))
    assert "limits.stagger" not in removed(answer)


def test_a_staggered_car_stays_staggered():
    for row in post(SEARCH, asked("staggered saloon"))["rows"]:
        front, rear = (int(each[:3]) for each in tyres(row))
        assert rear - front == 30


def test_rims_of_different_width_are_not_put_on_a_car_whose_rims_are_alike():
    rims = [
        {"size": size, "bolt_circle": "5x108", "centre_bore_mm": 63.4} for size in ("6J x 15 ET43", "6.5J x 15 ET43")
    ]
    answer = post(SEARCH, asked("hatch", ["195/65 R15 91H"], {"front": rims}))
    pairs = {tuple(row["candidate"][axle]["rim"]["size"] for axle in AXLES) for row in answer["rows"]}
    assert pairs == {("6J x 15 ET43",) * 2, ("6.5J x 15 ET43",) * 2}
    assert removed(answer)["search.rim_width_mix"]["count"] == 2
    free = post(SEARCH, asked("hatch", ["195/65 R15 91H"], {"front": rims}, limits={"stagger": "any"}))
    assert len(free["rows"]) == 4


SUMMER_AND_WINTER = ("225/40 R19 93Y XL", "255/35 R19 96Y XL", "225/40 R19 93W XL 3PMSF", "255/35 R19 96W XL 3PMSF")


def test_summer_and_winter_tyres_are_not_paired():
    answer = post(SEARCH, asked("staggered saloon", SUMMER_AND_WINTER))
    assert {"3PMSF" in front and "3PMSF" in rear for front, rear in map(tyres, answer["rows"])} == {True, False}
    assert all(("3PMSF" in front) == ("3PMSF" in rear) for front, rear in map(tyres, answer["rows"]))
    assert removed(answer)["search.season_mix"]["count"] > 0


def test_summer_and_winter_tyres_are_paired_when_the_caller_asks_for_it_and_advised_against():
    answer = post(SEARCH, asked("staggered saloon", SUMMER_AND_WINTER, limits={"mixed": True}))
    mixed = [row for row in answer["rows"] if len({"3PMSF" in each for each in tyres(row)}) == 2]
    assert mixed
    assert {row["verdict"] for row in mixed} == {"not_recommended"}


def test_van_tyres_are_not_paired_with_car_tyres():
    stock = ("195/65 R15 91H", "195/65 R15C 98/96H")
    answer = post(SEARCH, asked("hatch", stock, limits={"stagger": "any"}))
    assert all(("C" in front) == ("C" in rear) for front, rear in map(tyres, answer["rows"]))
    assert removed(answer)["search.class_mix"]["count"] > 0


@pytest.mark.parametrize("verdicts", [["suitable"], ["suitable", "suitable_with_conditions"], ["undetermined"]])
def test_only_the_verdicts_asked_for_are_found(verdicts):
    everything = post(SEARCH, asked("hatch", max_results=100))
    some = post(SEARCH, asked("hatch", max_results=100, verdicts=verdicts))
    assert [tyres(row) for row in some["rows"]] == [
        tyres(row) for row in everything["rows"] if row["verdict"] in verdicts
    ]


def test_what_does_not_fit_at_all_cannot_be_searched_for():
    refused = client().post(SEARCH, json=asked("hatch", verdicts=["unsuitable"]))
    assert (refused.status_code, refused.json()["errors"][0]["pointer"]) == (422, "/verdicts/0")


@pytest.mark.parametrize(
    ("stock", "more", "said"),
    [
        (
            ["205/55 R16 91V"],
            {},
            "No tyre is left for the front axle. Left out of 1 tyre on a rim: 1 for another rim diameter.",
        ),
        (
            ["185/65 R15 88H", "195/65 R15 91H"],
            {"limits": {"min_section_width_mm": 235}},
            "beyond the limits asked for",
        ),
        (["hello"], {}, "There was none to try."),
        (["195/65 R15 91H"], {"verdicts": ["not_recommended"]}, "1 for a verdict that was not asked for"),
    ],
)
def test_zero_rows_say_which_limit_did_it(stock, more, said):
    answer = post(SEARCH, asked("hatch", stock, **more))
    assert answer["rows"] == []
    assert said in answer["why_none"]


def test_zero_rows_say_which_default_did_it():
    # One tyre for either axle, which together would be staggered.
    vehicle = asked("hatch", ["195/65 R15 91H"])
    rims = {"front": vehicle["rims"]["front"], "rear": [{"size": "6.5J x 15 ET43", "bolt_circle": "5x108"}]}
    answer = post(SEARCH, asked("hatch", ["195/65 R15 91H"], rims))
    assert answer["rows"] == []
    assert "the search left out by itself" in answer["why_none"]
    assert "rims of different width" in answer["why_none"]


def test_an_answer_with_rows_has_no_reason_for_none():
    assert "why_none" not in post(SEARCH, asked("hatch"))


def test_every_reason_has_words():
    for which in ("front", "rear", "pairs"):
        for name in workshop.NAMES:
            for each in removed(post(SEARCH, asked(name, tyre_stock.STOCK[::3])), which).values():
                assert each["text"]
                assert each["text"] != "a check that is not passed", each["code"]


def test_twin_wheels_need_a_twin_index():
    # 2,600 kg on four tyres: 650 kg each, which index 93 carries (UN R30, load index table).
    answer = post(SEARCH, asked("van, twin wheels"))
    front, rear = answer["needs"]["front"], answer["needs"]["rear"]
    assert "load_index_twin" not in front
    assert rear["load_index"] == rear["load_index_twin"] + 2
    assert rear["load_index_twin"] >= 93


def test_a_pressure_that_only_the_sidewall_tells_is_absent():
    for row in post(SEARCH, asked("camper"))["rows"]:
        alone = check({"vehicle": workshop.vehicle("camper"), "candidate": row["candidate"]})
        ordered = {
            axle
            for axle in AXLES
            for each in alone["actions"]
            if each["code"] == f"set_pressure_{axle}" and "pressure_kpa" in each["numbers"]
        }
        assert {axle for axle in AXLES if "pressure_kpa" in row["fitment"][axle]} == ordered


def test_rows_stand_best_verdict_first():
    ranks = [VERDICTS.index(row["verdict"]) for row in post(SEARCH, asked("all-wheel-drive estate"))["rows"]]
    assert ranks == sorted(ranks)


@pytest.mark.parametrize("name", workshop.NAMES)
def test_of_all_that_is_in_stock_the_very_tyre_of_the_car_is_first(name):
    vehicle = workshop.vehicle(name)
    first = post(SEARCH, asked(name))["rows"][0]
    now = tuple(parse_tyre(vehicle[axle]["fitted"]["tyre"]["size"]).canonical for axle in AXLES)
    assert tyres(first) == now
