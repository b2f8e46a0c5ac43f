"""Questions put to the application in process and answers read back, as JSON both ways."""

from __future__ import annotations

import copy
import json
from functools import cache
from typing import Any

from starlette.testclient import TestClient

from service.app import create_app
from service.rules.reader import pack_ids
from service.settings import Settings

Json = dict[str, Any]

# From the best to the worst.
VERDICTS = ("suitable", "suitable_with_conditions", "undetermined", "not_recommended", "unsuitable")
PACKS = pack_ids()
AXLES = ("front", "rear")


@cache
def client() -> TestClient:
    """Return a caller of the application with the settings that it has by itself."""
    return TestClient(create_app(Settings.model_construct(access_log=False)))


def post(path: str, asked: Json) -> Json:
    """Return the answer of a route; anything but 200 is a failure."""
    answer = client().post(path, json=asked)
    assert answer.status_code == 200, (answer.status_code, answer.text[:600])
    found: Json = answer.json()
    return found


def check(asked: Json) -> Json:
    """Return the answer of `check`."""
    return post("/v1/fitments/check", asked)


def rank(answer: Json) -> int:
    """Return the verdict as a number: 0 is the best."""
    return VERDICTS.index(answer["verdict"])


def question(vehicle: Json, candidate: Json | None = None, pack: str = "unece", **more: object) -> Json:
    """Return a request to check a candidate, or the present fitment taken as new, on a vehicle."""
    asked: Json = {"vehicle": vehicle, "candidate": present(vehicle) if candidate is None else candidate}
    # Through JSON, so that no two parts of it are one object.
    fresh: Json = json.loads(json.dumps({**asked, "rule_pack": pack, **more}))
    return fresh


def present(vehicle: Json) -> Json:
    """Return the present fitment of a vehicle as a candidate: the same tyres, but new."""
    made: Json = {name: copy.deepcopy(vehicle[name]["fitted"]) for name in AXLES}
    for name in AXLES:
        made[name]["tyre"].pop("tread_depth_mm", None)
    return made


def square(tyre: str | Json, rim: str | Json, pressure_kpa: float | None = None) -> Json:
    """Return a candidate with the same tyre and rim on both axles, without a pressure unless one is given."""
    wheel: Json = {
        "tyre": {"size": tyre} if isinstance(tyre, str) else tyre,
        "rim": {"size": rim} if isinstance(rim, str) else rim,
    }
    if pressure_kpa is not None:
        wheel["pressure_kpa"] = pressure_kpa
    return {"front": copy.deepcopy(wheel), "rear": copy.deepcopy(wheel)}


def findings(answer: Json, code: str) -> list[Json]:
    """Return the findings with this code, of whichever axle."""
    return [each for each in answer["findings"] if each["code"] == code]


def outcome(answer: Json, code: str, axle: str | None = None) -> str:
    """Return how a question came out, on this axle or, of both, the worst."""
    order = ("met", "advisory", "not_assessed", "not_recommended", "not_met")
    found = [each["outcome"] for each in findings(answer, code) if axle in (None, each["axle"])]
    assert found, f"no finding {code}"
    return max(found, key=order.index)


def against(answer: Json) -> list[tuple[str, str, str]]:
    """Return code, axle and outcome of every finding that is not met, advises or is open; for messages of failure."""
    return [(each["code"], each["axle"], each["outcome"]) for each in answer["findings"] if each["outcome"] != "met"]


def pressures(answer: Json) -> dict[str, float]:
    """Return the pressure that the job card orders, by axle; an axle whose pressure it leaves open is absent."""
    ordered = {}
    for action in answer["actions"]:
        value = {**action, **action.get("numbers", {})}.get("pressure_kpa")
        if action["code"].startswith("set_pressure_") and value is not None:
            ordered[action["code"].removeprefix("set_pressure_")] = value
    return ordered
