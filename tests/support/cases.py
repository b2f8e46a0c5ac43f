"""Cases to assess, made from requests as a caller sends them: the invented saloon "Larch 200", and how to change it."""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

import orjson

from service.api.inbound.translate import case
from service.api.render import assessment_answer as render
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import Assessment, assess
from service.core.findings import OUTCOME_NAMES, Finding

Json = dict[str, Any]
# Stands for "leave this field out".
ABSENT = object()


def wheel(tyre: str, rim: str, **more: Any) -> Json:
    """Return one axle's fitment with everything stated that the checks ask of a candidate."""
    return {
        "tyre": {"size": tyre, "tread_depth_mm": 8.0},
        "rim": {"size": rim, "bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 700},
        "pressure_kpa": 250,
        **more,
    }


def axle(fitted: Json, max_axle_mass_kg: float, kerb_axle_mass_kg: float, track_mm: float) -> Json:
    """Return one axle of the saloon with everything stated."""
    return {
        "max_axle_mass_kg": max_axle_mass_kg,
        "kerb_axle_mass_kg": kerb_axle_mass_kg,
        "track_mm": track_mm,
        "hub": {"bolt_circle": "5x112", "centre_bore_mm": 66.6},
        "clearance": {"inboard_mm": 14, "outboard_mm": 16, "radial_mm": 25},
        "min_rim_diameter_in": 16,
        "fitted": fitted,
    }


def saloon(front: tuple[str, str] | None = None, rear: tuple[str, str] | None = None) -> Json:
    """Return a request on the Larch 200: (tyre, rim) proposed for each axle, the present fitment where not given.

    As it is, every finding is met: everything is stated, and nothing changes.
    """
    fitted = ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
    return {
        "vehicle": {
            "category": "M1",
            "max_speed_kmh": 228,
            "driven_axle": "rear",
            "wheelbase_mm": 2760,
            "centre_of_gravity_height_mm": 540,
            "speedometer": {"displayed_kmh": 100, "true_kmh": 97},
            "front": axle(wheel(*fitted), 960, 790, 1548),
            "rear": axle(wheel(*fitted), 1000, 760, 1540),
        },
        "candidate": {"label": "", "front": wheel(*(front or fitted)), "rear": wheel(*(rear or fitted))},
    }


def changed(request: Json, changes: Mapping[str, object]) -> Json:
    """Return the request with the fields at these pointers (RFC 6901) replaced, added or (ABSENT) left out."""
    made = copy.deepcopy(request)
    for pointer, value in changes.items():
        *path, last = pointer.split("/")[1:]
        part = made
        for name in path:
            part = part.setdefault(name, {})
        if value is ABSENT:
            part.pop(last, None)
        else:
            part[last] = copy.deepcopy(value)
    return made


def on_both_axles(changes: Mapping[str, object]) -> dict[str, object]:
    """Return the changes for both axles; `{axle}` in a pointer stands for each of them."""
    return {pointer.format(axle=name): value for name in ("front", "rear") for pointer, value in changes.items()}


def at(request: Json, pointer: str) -> Any:
    """Return the value at a pointer (RFC 6901)."""
    part: Any = request
    for name in pointer.split("/")[1:]:
        part = part[name]
    return part


def check(request: Json) -> Assessment:
    """Return the assessment of a request, read and translated as the service does."""
    return assess(case(CheckRequest.model_validate(request)))


def answer(found: Assessment) -> Json:
    """Return the answer as a caller receives it."""
    shown: Json = orjson.loads(orjson.dumps(render.assessment(found)))
    return shown


def finding(found: Assessment, code: str, where: str = "rear") -> Finding:
    """Return the one finding with this code at this place."""
    told = [each for each in found.findings if (each.code, each.axle) == (code, where)]
    assert len(told) == 1, f"{len(told)} findings are {code!r} at {where!r}: is its check named in checks/__init__.py?"
    return told[0]


def outcome(found: Assessment, code: str, where: str = "rear") -> str:
    """Return how a question came out, in the words of the answer."""
    return OUTCOME_NAMES[finding(found, code, where).outcome]
