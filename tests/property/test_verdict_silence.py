"""A change that a fitter would remark on is remarked on: each gives a finding above met, and above what it is today.

What a fitter remarks on is common practice, no source, unless a line says more.
"""

import pytest

from tests.support import workshop
from tests.support.cases import changed
from tests.support.wire import PACKS, check, question, square

SALOON = workshop.vehicle("staggered saloon")
HATCH = workshop.vehicle("hatch")
WORN = workshop.vehicle("worn tyres")
ESTATE = workshop.vehicle("all-wheel-drive estate")
UNMEASURED = {axle: {**ESTATE[axle]} for axle in ("front", "rear")}
for _axle in UNMEASURED.values():
    _axle.pop("clearance")
    _axle.pop("min_rim_diameter_in")
# The same car of which nobody measured anything.
PLAIN_ESTATE = {**ESTATE, **UNMEASURED}

HATCH_RIM = HATCH["front"]["fitted"]["rim"]


def _pair(front: tuple[str, str], rear: tuple[str, str], **pressure_kpa: float):
    made = {
        name: {"tyre": {"size": tyre}, "rim": {"size": rim, "bolt_circle": "5x112", "centre_bore_mm": 66.6}}
        for name, (tyre, rim) in (("front", front), ("rear", rear))
    }
    for name, kpa in pressure_kpa.items():
        made[name]["pressure_kpa"] = kpa
    return made


def _of_hatch(front: str, rear: str, rim=None, **more: object):
    wheel_rim = {**HATCH_RIM, **(rim or {})}
    return {
        name: {"tyre": {"size": tyre}, "rim": wheel_rim, **more} for name, tyre in (("front", front), ("rear", rear))
    }


def _estate_at(offset: int, width: str = "7.5J"):
    return square("225/50 R17 98W XL", f"{width} x 17 H2 ET{offset}")


AS_NOW = ("225/40 R19 93Y XL", "8J x 19 H2 ET30")
BEHIND = ("255/35 R19 96Y XL", "9J x 19 H2 ET38")
WORN_RIM = {"size": "6.5J x 16 H2 ET46"}

REMARKS = {
    "a smaller rim over a brake that nobody measured": (
        PLAIN_ESTATE,
        square("205/60 R16 96V XL", "6.5J x 16 H2 ET47"),
        {"rim.brake_clearance"},
    ),
    "the edge 12 mm further out, unmeasured": (PLAIN_ESTATE, _estate_at(35), {"clearance.outboard"}),
    "the edge 12 mm further in, unmeasured": (PLAIN_ESTATE, _estate_at(59), {"clearance.inboard"}),
    "the edge 25 mm further out, unmeasured": (PLAIN_ESTATE, _estate_at(22), {"clearance.outboard"}),
    "the edge 25 mm further in, unmeasured": (PLAIN_ESTATE, _estate_at(72), {"clearance.inboard"}),
    # 225/50 R17: 658 mm; 225/55 R17: 680 mm, 11 mm more in radius and 3.3 % more in diameter.
    "a radius 11 mm larger, unmeasured": (
        PLAIN_ESTATE,
        square("225/55 R17 101W XL", "7.5J x 17 H2 ET47"),
        {"clearance.radial", "diameter.deviation"},
    ),
    "285 behind 225": (SALOON, _pair(AS_NOW, ("285/30 R19 98Y XL", "10J x 19 H2 ET38")), {"balance.change"}),
    "255 all round on a car with 225 in front": (
        SALOON,
        _pair(("255/35 R19 96Y XL", "8.5J x 19 H2 ET30"), BEHIND),
        {"balance.change"},
    ),
    "winter tyres in front only": (HATCH, _of_hatch("195/65 R15 91H 3PMSF", "195/65 R15 91H"), {"tyre.season_mix"}),
    "winter tyres at the rear only": (HATCH, _of_hatch("195/65 R15 91H", "195/65 R15 91H 3PMSF"), {"tyre.season_mix"}),
    "run-flat in front only": (
        WORN,
        {
            "front": {"tyre": {"size": "205/55 RF16 91V"}, "rim": WORN_RIM},
            "rear": {"tyre": {"size": "205/55 R16 91V"}, "rim": WORN_RIM},
        },
        {"tyre.run_flat_mix"},
    ),
    "run-flat at the rear only": (
        WORN,
        {
            "front": {"tyre": {"size": "205/55 R16 91V"}, "rim": WORN_RIM},
            "rear": {"tyre": {"size": "205/55 RF16 91V"}, "rim": WORN_RIM},
        },
        {"tyre.run_flat_mix"},
    ),
    "a load index below the present one": (
        HATCH,
        _of_hatch("195/65 R15 88H", "195/65 R15 88H"),
        {"load.below_present"},
    ),
    "a pressure too low for the axle": (
        HATCH,
        _of_hatch("195/65 R15 91H", "195/65 R15 91H", pressure_kpa=160),
        {"load.pressure"},
    ),
    "a pressure above what the tyre gets": (
        HATCH,
        _of_hatch("195/65 R15 91H", "195/65 R15 91H", pressure_kpa=380),
        {"load.pressure"},
    ),
    "a bore that needs a ring": (
        {
            **HATCH,
            **{
                name: {**HATCH[name], "hub": {"bolt_circle": "5x108", "centre_bore_mm": 63.4}}
                for name in ("front", "rear")
            },
        },
        _of_hatch("195/65 R15 91H", "195/65 R15 91H", {"size": "6J x 15 H2 ET40", "centre_bore_mm": 72.6}),
        {"rim.centre_bore"},
    ),
    "another rim whose bolt circle nobody read": (
        PLAIN_ESTATE,
        square("225/50 R17 98W XL", "7J x 17 H2 ET47"),
        {"rim.bolt_circle"},
    ),
    "another rim whose offset nobody read": (
        PLAIN_ESTATE,
        square("225/50 R17 98W XL", "7.5J x 17 H2"),
        {"clearance.inboard", "clearance.outboard"},
    ),
    "a winter tyre slower than the car": (
        HATCH,
        _of_hatch("195/65 R15 91T 3PMSF", "195/65 R15 91T 3PMSF"),
        {"speed.capability"},
    ),
    "a tyre without load index and speed symbol": (
        HATCH,
        _of_hatch("195/65 R15", "195/65 R15"),
        {"load.capacity", "speed.capability"},
    ),
    "a circumference 2.5 % longer with a speedometer that nobody read": (
        HATCH,
        # 635 mm to 651 mm, plus 2.5 %, by D = d + 2H.
        {
            name: {"tyre": {"size": "195/65 R15 91H", "overall_diameter_mm": 651}, "rim": HATCH_RIM}
            for name in ("front", "rear")
        },
        {"diameter.speedometer"},
    ),
    "a worn pair in front of a worn pair, on all-wheel drive with 4 mm between them": (
        ESTATE,
        {
            name: {"tyre": {"size": "225/50 R17 98W XL", "tread_depth_mm": depth}, "rim": {"size": "7.5J x 17 H2 ET47"}}
            for name, depth in (("front", 8.0), ("rear", 4.0))
        },
        {"tyre.tread_difference"},
    ),
    "a winter tyre with 3.5 mm of tread": (
        HATCH,
        {
            name: {"tyre": {"size": "195/65 R15 91H 3PMSF", "tread_depth_mm": 3.5}, "rim": HATCH_RIM}
            for name in ("front", "rear")
        },
        {"tyre.tread_depth"},
    ),
    "the two axles' circumferences apart on all-wheel drive": (
        ESTATE,
        {
            "front": {"tyre": {"size": "225/50 R17 98W XL"}, "rim": {"size": "7.5J x 17 H2 ET47"}},
            "rear": {"tyre": {"size": "225/45 R17 94W XL"}, "rim": {"size": "7.5J x 17 H2 ET47"}},
        },
        {"diameter.axle_ratio"},
    ),
    "a track 40 mm wider": (PLAIN_ESTATE, _estate_at(27), {"track.change"}),
}


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("change", REMARKS)
def test_what_a_fitter_would_remark_on_is_remarked_on(change, pack):
    vehicle, candidate, codes = REMARKS[change]
    answer = check(question(vehicle, candidate, pack))
    said = {each["code"] for each in answer["findings"] if each["outcome"] != "met"}
    assert codes <= said
    assert answer["verdict"] != "suitable", said


@pytest.mark.parametrize("change", REMARKS)
def test_what_is_remarked_on_is_not_laid_to_the_car_of_today(change):
    vehicle, candidate, codes = REMARKS[change]
    answer = check(question(vehicle, candidate))
    of_today = {each["code"] for each in answer["findings"] if each.get("already") and each["outcome"] != "met"}
    assert not codes & of_today


@pytest.mark.parametrize("change", REMARKS)
def test_an_open_or_advised_remark_says_what_to_do(change):
    """Law and warning without a way out is no answer: the remedy stands beside it, or the job card has a line more."""
    vehicle, candidate, codes = REMARKS[change]
    answer = check(question(vehicle, candidate))
    for each in answer["findings"]:
        if each["code"] in codes and each["outcome"] in ("advisory", "not_assessed"):
            assert each.get("remedy"), each["code"]


def test_a_missing_fact_is_no_pass_where_the_change_makes_it_matter():
    """A brake that is unknown: the same rim is no question, a smaller one is; room unknown: likewise."""
    same = check(question(PLAIN_ESTATE))
    smaller = check(question(*REMARKS["a smaller rim over a brake that nobody measured"][:2]))
    assert same["verdict"] == "suitable"
    assert smaller["verdict"] == "undetermined"


def test_a_ring_is_on_the_job_card():
    vehicle, candidate, _ = REMARKS["a bore that needs a ring"]
    codes = {each["code"] for each in check(question(vehicle, candidate))["actions"]}
    assert {"spigot_rings_front", "spigot_rings_rear"} <= codes


def test_the_room_that_is_enough_is_named_before_the_order():
    vehicle, candidate, _ = REMARKS["the edge 12 mm further out, unmeasured"]
    told = [each for each in check(question(vehicle, candidate))["findings"] if each["code"] == "clearance.outboard"]
    assert {each["outcome"] for each in told} == {"advisory"}
    # The edge moves out by 12 mm and 5 mm are to be left: 17, or more with the growth that a regulation allows.
    assert all(17 <= each["remedy"]["at_least"] <= 30 for each in told)


def test_a_measured_speedometer_of_a_car_that_stays_as_it_is_asks_nothing():
    exact = changed(question(HATCH), {"/vehicle/speedometer": {"displayed_kmh": 103, "true_kmh": 100}})
    assert check(exact)["verdict"] == "suitable"
