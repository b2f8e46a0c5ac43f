"""Unlike tyres on the two axles, on each of them in turn: what is said, which axle is to be changed, and to what.

Common practice, no source; radial and diagonal kept apart by 92/23. A temporary spare on either axle is excepted: that
it is no regular tyre is a finding of its own.
"""

import pytest

from service.core.findings import ADVISORY, MET, NOT_MET, NOT_RECOMMENDED
from tests.support.cases import changed, check, finding, saloon

SUMMER, WINTER = "225/45 R17 94W XL", "225/45 R17 94W XL 3PMSF"
RUN_FLAT, DIAGONAL = "225/45 RF17 94W XL", "225/45 D17 94W XL"
SPARE, SPARE_DIAGONAL = "T125/80 R17 99M", "T125/80 D17 99M"


def asked(code, proposed, now=(SUMMER, SUMMER), **changes):
    """Return the finding on the saloon with these tyres in front and at the rear."""
    sizes = {f"/candidate/{axle}/tyre/size": size for axle, size in zip(("front", "rear"), proposed, strict=True)}
    sizes |= {f"/vehicle/{axle}/fitted/tyre/size": size for axle, size in zip(("front", "rear"), now, strict=True)}
    return finding(check(changed(saloon(), sizes | changes)), code, "vehicle")


@pytest.mark.parametrize(
    ("front", "rear", "expected", "said"),
    [
        (SUMMER, SUMMER, MET, "Neither axle has winter tyres (3PMSF)."),
        (WINTER, WINTER, MET, "Both axles have winter tyres (3PMSF)."),
        (SPARE, WINTER, MET, "Neither axle has winter tyres (3PMSF)."),
        (WINTER, SPARE, MET, "Both axles have winter tyres (3PMSF)."),
        (WINTER, SUMMER, NOT_RECOMMENDED, "Winter tyres are at the front only: on snow and ice the rear slides first."),
        (SUMMER, WINTER, NOT_RECOMMENDED, "Winter tyres are at the rear only: on snow and ice the front does not"),
    ],
)
def test_winter_tyres_are_told_by_the_axle_that_has_them(front, rear, expected, said):
    found = asked("tyre.season_mix", (front, rear))
    assert found.outcome == expected
    assert found.message.startswith(said)
    if expected != MET:
        odd = "rear" if front == WINTER else "front"
        assert (found.remedy.pointer, found.remedy.equals) == (f"/candidate/{odd}/tyre/size", "3PMSF")
        assert found.remedy.text == f"fit winter tyres (3PMSF) at the {odd} too, or on neither axle"


ONE_AXLE = "Run-flat tyres are at the {} only. Their stiff sidewalls make the car steer differently, and a puncture at"


@pytest.mark.parametrize(
    ("now", "proposed", "odd", "kind"),
    [
        # To run-flat tyres on a car that has them all round, else to ordinary ones.
        ((SUMMER, SUMMER), (RUN_FLAT, SUMMER), "front", "ordinary"),
        ((SUMMER, SUMMER), (SUMMER, RUN_FLAT), "rear", "ordinary"),
        ((RUN_FLAT, RUN_FLAT), (RUN_FLAT, SUMMER), "rear", "run-flat"),
        ((RUN_FLAT, RUN_FLAT), (SUMMER, RUN_FLAT), "front", "run-flat"),
        ((RUN_FLAT, SUMMER), (RUN_FLAT, SUMMER), "front", "ordinary"),
        ((SUMMER, RUN_FLAT), (RUN_FLAT, SUMMER), "front", "ordinary"),
    ],
)
def test_run_flat_tyres_on_one_axle_name_it_and_what_it_gets(now, proposed, odd, kind):
    found = asked("tyre.run_flat_mix", proposed, now)
    has, flat = ("front", "rear") if proposed[0] == RUN_FLAT else ("rear", "front")
    assert found.outcome == ADVISORY
    assert found.message.startswith(f"{ONE_AXLE.format(has)} the {flat} still stops it.")
    assert (found.remedy.pointer, found.remedy.equals) == (f"/candidate/{odd}/tyre/size", kind)
    assert found.remedy.text == f"fit {kind} tyres at the {odd} too"


@pytest.mark.parametrize(
    ("now", "proposed", "expected", "said"),
    [
        ((SUMMER, SUMMER), (SUMMER, SUMMER), MET, "Neither axle is marked to have run-flat tyres."),
        ((RUN_FLAT, RUN_FLAT), (RUN_FLAT, RUN_FLAT), MET, "Both axles have run-flat tyres."),
        (
            (SUMMER, SUMMER),
            (RUN_FLAT, RUN_FLAT),
            ADVISORY,
            "The proposed tyres are run-flat, the present ones are",
        ),
        (
            (RUN_FLAT, RUN_FLAT),
            (SUMMER, SUMMER),
            ADVISORY,
            "The present tyres are run-flat, the proposed ones are",
        ),
        # A car that has both kinds leaves neither.
        ((RUN_FLAT, SUMMER), (SUMMER, SUMMER), MET, "Neither axle is marked to have run-flat tyres."),
        ((SUMMER, RUN_FLAT), (RUN_FLAT, RUN_FLAT), MET, "Both axles have run-flat tyres."),
        ((RUN_FLAT, RUN_FLAT), (SPARE, RUN_FLAT), MET, "Neither axle is marked to have run-flat tyres."),
        ((RUN_FLAT, RUN_FLAT), (RUN_FLAT, SPARE), MET, "Both axles have run-flat tyres."),
        ((RUN_FLAT, RUN_FLAT), (SPARE, SPARE), MET, "Neither axle is marked to have run-flat tyres."),
    ],
)
def test_a_kind_that_the_car_leaves_on_both_axles_is_told_once(now, proposed, expected, said):
    found = asked("tyre.run_flat_mix", proposed, now)
    assert found.outcome == expected
    assert found.message.startswith(said)


MIXED = "Radial tyres on one axle and diagonal ones on the other make the car unpredictable."
ALL_DIAGONAL = "The tyres become diagonal where they were radial: the car will steer differently."
ALL_RADIAL = "The tyres become radial where they were diagonal: the car will steer differently."


@pytest.mark.parametrize(
    ("now", "proposed", "expected", "said"),
    [
        ((SUMMER, SUMMER), (SUMMER, SUMMER), MET, "All tyres are radial."),
        ((DIAGONAL, DIAGONAL), (DIAGONAL, DIAGONAL), MET, "All tyres are diagonal."),
        ((SUMMER, SUMMER), (DIAGONAL, DIAGONAL), ADVISORY, ALL_DIAGONAL),
        ((DIAGONAL, DIAGONAL), (SUMMER, SUMMER), ADVISORY, ALL_RADIAL),
        ((SUMMER, SUMMER), (DIAGONAL, SUMMER), NOT_MET, MIXED),
        ((SUMMER, SUMMER), (SUMMER, DIAGONAL), NOT_MET, MIXED),
        # A car that is mixed now can only gain.
        ((DIAGONAL, SUMMER), (SUMMER, SUMMER), MET, "All tyres are radial."),
        ((SUMMER, DIAGONAL), (DIAGONAL, DIAGONAL), MET, "All tyres are diagonal."),
        ((SUMMER, SUMMER), (SUMMER, SPARE_DIAGONAL), MET, "All tyres are radial."),
        ((SUMMER, SUMMER), (SPARE_DIAGONAL, SUMMER), MET, "All tyres are diagonal."),
        ((DIAGONAL, DIAGONAL), (SPARE, SUMMER), MET, "All tyres are radial."),
    ],
)
def test_radial_and_diagonal_are_kept_apart_and_not_exchanged_without_a_word(now, proposed, expected, said):
    found = asked("tyre.structure", proposed, now)
    assert found.outcome == expected
    assert found.message.startswith(said)
    if expected == ADVISORY:
        was = "radial" if now[0] == SUMMER else "diagonal"
        assert (found.remedy.text, found.remedy.equals) == (f"keep to {was} tyres", was)


@pytest.mark.parametrize(
    ("code", "where", "said"),
    [
        ("tyre.run_flat_mix", "vehicle", "is not steered, so one axle may have run-flat tyres."),
        ("tyre.season_mix", "vehicle", "follows the vehicle that tows it."),
        ("diameter.axle_ratio", "vehicle", "has no drive or stability control of its own that unlike circumferences"),
        ("tyre.tread_difference", "vehicle", "has no drive or stability control of its own that unlike circumferences"),
        ("balance.change", "vehicle", "is not steered, so it has no understeer or oversteer of its own."),
        ("balance.grip_order", "vehicle", "is not steered, so it has no understeer or oversteer of its own."),
        ("wet.reserve", "front", "follows the vehicle that tows it, so neither of its axles leads in standing water."),
        ("wet.reserve", "rear", "follows the vehicle that tows it, so neither of its axles leads in standing water."),
        ("diameter.speedometer", "vehicle", "has no speedometer that its tyres could mislead."),
    ],
)
def test_a_trailer_is_told_why_it_is_not_asked(code, where, said):
    """With tyres that would be refused on a car: all else than its front ones, larger, worn and for summer."""
    changes = {
        "/vehicle/category": "O2",
        "/candidate/front/tyre/size": WINTER,
        "/candidate/rear/tyre/size": "235/50 RF17 96W",
        "/candidate/rear/tyre/tread_depth_mm": 3.0,
        "/vehicle/driven_axle": "all",
    }
    found = finding(check(changed(saloon(), changes)), code, where)
    assert (found.outcome, found.remedy) == (MET, None)
    assert found.message.startswith(f"A trailer {said}")
