"""Twenty-four fitments to draw: a saloon's and a van's, narrow to wide, apart, overlapping, as singles and as twins."""

from __future__ import annotations

import json
from pathlib import Path

from tests.support.cases import ABSENT, Json, changed, saloon

ROOT = Path(__file__).parents[3]
VAN = json.loads((ROOT / "demo_requests" / "twin-wheel-van.check.json").read_text(encoding="utf-8"))
# Tyre and rim of the front axle, of the rear axle.
SALOONS = {
    "as it is": (("225/45 R17 94W XL", "7.5J x 17 H2 ET45"), ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")),
    "plus one": (("225/40 R18 92Y XL", "8J x 18 H2 ET45"), ("225/40 R18 92Y XL", "8J x 18 H2 ET45")),
    "staggered": (("225/40 R18 92Y XL", "8J x 18 H2 ET45"), ("255/35 R18 94Y XL", "8.5J x 18 H2 ET41")),
    "minus one": (("205/55 R16 94W XL", "6.5J x 16 H2 ET42"), ("205/55 R16 94W XL", "6.5J x 16 H2 ET42")),
    "narrow and tall": (("155/70 R19 84T", "5J x 19 H2 ET40"), ("155/70 R19 84T", "5J x 19 H2 ET40")),
    "narrow and small": (("165/65 R15 81T", "5J x 15 H2 ET35"), ("175/65 R15 84T", "5.5J x 15 H2 ET38")),
    "wide": (("255/40 R18 99Y XL", "9J x 18 H2 ET40"), ("285/35 R18 101Y XL", "10J x 18 H2 ET38")),
    "into the strut": (("245/45 R18 100Y XL", "9J x 18 H2 ET62"), ("265/40 R18 101Y XL", "9.5J x 18 H2 ET60")),
    "into the wing": (("245/40 R18 97Y XL", "8.5J x 18 H2 ET10"), ("255/40 R18 99Y XL", "9.5J x 18 H2 ET5")),
    "into everything": (("265/50 R18 97Y XL", "10J x 18 H2 ET65"), ("305/45 R19 107Y XL", "11J x 19 H2 ET45")),
    "into the arch": (("225/60 R18 104W XL", "7.5J x 18 H2 ET45"), ("225/60 R18 104W XL", "7.5J x 18 H2 ET45")),
    "outboard of the hub": (("225/45 R17 94W XL", "8J x 17 H2 ET-15"), ("225/45 R17 94W XL", "8J x 17 H2 ET-30")),
    "offset of nothing": (("225/45 R17 94W XL", "7.5J x 17 H2 ET0"), ("225/45 R17 94W XL", "7.5J x 17 H2 ET2")),
    "large rim": (("245/30 R20 90Y XL", "8.5J x 20 H2 ET45"), ("285/25 R20 93Y XL", "10J x 20 H2 ET40")),
    "rim wider than tyre": (("205/40 R17 84W XL", "9J x 17 H2 ET40"), ("205/40 R17 84W XL", "9J x 17 H2 ET60")),
}
# Tyre and rim of the twin rear axle, and what else differs.
TWINS: dict[str, tuple[str, str, Json]] = {
    "twins as they are": ("195/75 R16C 107/105R", "5.5J x 16 H2 ET110", {}),
    "stronger twins": ("205/75 R16C 113/111R", "5.5J x 16 H2 ET110", {}),
    "twins that touch": ("205/70 R16C 110/108R", "6J x 16 H2 ET95", {}),
    "twins into the strut": ("225/75 R16C 121/120R", "6J x 16 H2 ET125", {"inboard_mm": 10}),
    "twins into the wing": ("225/75 R16C 121/120R", "6J x 16 H2 ET125", {"outboard_mm": 4}),
    "twins into the arch": ("225/75 R16C 121/120R", "6J x 16 H2 ET115", {"radial_mm": 5}),
    "twins far apart": ("185/75 R16C 104/102R", "5J x 16 H2 ET130", {"inboard_mm": 40}),
}


def _saloon(name: str) -> Json:
    # Bored and bolted alike; the rooms of the two axles differ, so that one cannot be taken for the other.
    return changed(
        saloon(*SALOONS[name]), {"/vehicle/rear/clearance/inboard_mm": 18, "/vehicle/rear/clearance/radial_mm": 21}
    )


def _van(name: str) -> Json:
    tyre, rim, rooms = TWINS[name]
    changes: Json = {"/candidate/rear/tyre/size": tyre, "/candidate/rear/rim/size": rim}
    return changed(VAN, changes | {f"/vehicle/rear/clearance/{side}": room for side, room in rooms.items()})


REQUESTS: dict[str, Json] = {name: _saloon(name) for name in SALOONS} | {name: _van(name) for name in TWINS}
REQUESTS["one room"] = changed(
    _saloon("wide"), {f"/vehicle/front/clearance/{side}_mm": ABSENT for side in ("inboard", "radial")}
)
REQUESTS["spacers"] = changed(_saloon("wide"), {"/candidate/front/spacer_mm": 15, "/candidate/rear/spacer_mm": 5})
