"""Winter or run-flat tyres on one axle only: common practice, no source. On a caravan neither matters."""

import pytest

from service.core.findings import ADVISORY, MET, NOT_RECOMMENDED
from tests.support.cases import changed, check, finding, saloon

SIZE = "/candidate/{}/tyre/size"
SUMMER, WINTER, MUD = "225/45 R17 94W XL", "225/45 R17 94W XL 3PMSF", "225/45 R17 94W XL M+S"
RUN_FLAT, REINFORCED = "225/45 RF17 94W XL", "225/45 R17 94W RF"
SPARE = "T125/80 R17 99M"


def asked(code, front, rear, **changes):
    """Return the finding on the saloon with these tyres."""
    sizes = {SIZE.format("front"): front, SIZE.format("rear"): rear}
    return finding(check(changed(saloon(), sizes | changes)), code, "vehicle")


@pytest.mark.parametrize(
    ("front", "rear", "expected"),
    [
        (SUMMER, SUMMER, MET),
        (WINTER, WINTER, MET),
        (WINTER, SUMMER, NOT_RECOMMENDED),
        (SUMMER, WINTER, NOT_RECOMMENDED),
        # M+S alone is no winter tyre (458/2011 annex II 4.2.2, as quoted).
        (MUD, SUMMER, MET),
        (WINTER, MUD, NOT_RECOMMENDED),
        # That a spare is no regular tyre is a finding of its own.
        (WINTER, SPARE, MET),
    ],
)
def test_winter_tyres_are_on_both_axles_or_on_neither(front, rear, expected):
    assert asked("tyre.season_mix", front, rear).outcome == expected


@pytest.mark.parametrize(
    ("front", "rear", "without", "danger"),
    [(WINTER, SUMMER, "rear", "the rear slides first"), (SUMMER, WINTER, "front", "the front does not steer")],
)
def test_the_axle_without_winter_tyres_is_named_with_what_it_does(front, rear, without, danger):
    found = asked("tyre.season_mix", front, rear)
    assert danger in found.message
    assert (found.remedy.pointer, found.remedy.equals) == (SIZE.format(without), "3PMSF")


@pytest.mark.parametrize(
    ("front", "rear", "expected"),
    [
        (SUMMER, SUMMER, MET),
        (RUN_FLAT, SUMMER, ADVISORY),
        (SUMMER, RUN_FLAT, ADVISORY),
        # RF behind the rim code is Reinforced and no run-flat tyre (ETRTO, memory).
        (REINFORCED, SUMMER, MET),
        (RUN_FLAT, SPARE, MET),
    ],
)
def test_run_flat_tyres_are_on_both_axles_or_on_neither(front, rear, expected):
    assert asked("tyre.run_flat_mix", front, rear).outcome == expected


@pytest.mark.parametrize(("today", "axle", "kind"), [(SUMMER, "front", "ordinary"), (RUN_FLAT, "rear", "run-flat")])
def test_the_car_keeps_the_kind_that_it_has_now(today, axle, kind):
    now = {f"/vehicle/{name}/fitted/tyre/size": today for name in ("front", "rear")}
    found = asked("tyre.run_flat_mix", RUN_FLAT, SUMMER, **now)
    assert (found.remedy.pointer, found.remedy.equals) == (SIZE.format(axle), kind)


@pytest.mark.parametrize("code", ["tyre.season_mix", "tyre.run_flat_mix"])
def test_a_trailer_may_mix(code):
    assert asked(code, "225/45 RF17 94W XL 3PMSF", SUMMER, **{"/vehicle/category": "O2"}).outcome == MET


def test_a_car_that_is_mixed_today_is_told_so():
    now = {"/vehicle/front/fitted/tyre/size": WINTER, "/vehicle/rear/fitted/tyre/size": SUMMER}
    found = asked("tyre.season_mix", WINTER, SUMMER, **now)
    assert (found.outcome, found.already) == (NOT_RECOMMENDED, True)


@pytest.mark.parametrize(
    ("today", "proposed", "expected", "said"),
    [
        (RUN_FLAT, RUN_FLAT, MET, "Both axles have run-flat"),
        # The car carries no spare wheel: whoever takes ordinary tyres hears it before the first puncture.
        (RUN_FLAT, SUMMER, ADVISORY, "usually carries no spare wheel"),
        # Nobody feels a flat run-flat tyre.
        (SUMMER, RUN_FLAT, ADVISORY, "need tyre pressure monitoring"),
    ],
)
def test_a_car_that_leaves_its_kind_of_tyre_is_told_what_that_means(today, proposed, expected, said):
    now = {f"/vehicle/{name}/fitted/tyre/size": today for name in ("front", "rear")}
    found = asked("tyre.run_flat_mix", proposed, proposed, **now)
    assert found.outcome == expected
    assert said in found.message
    wanted = {RUN_FLAT: "run-flat", SUMMER: "ordinary"}[today]
    assert found.remedy is None if expected == MET else found.remedy.equals == wanted
