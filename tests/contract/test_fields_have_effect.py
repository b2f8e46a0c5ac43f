"""No field is asked for in vain: two values of it, all else alike, give two answers to a check of some vehicle.

The fields and their ranges are read from the contract, so that a new field is looked at without being named here.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from pydantic import ValidationError

from service.api.schemas.by_numbers import RimByNumbers, TyreByNumbers
from service.api.schemas.request import CheckRequest
from tests.support.cases import ABSENT, Json, answer, at, changed, check, on_both_axles, saloon

# The present fitment is described by the same parts as the proposed one, and no check judges these of its parts.
UNREAD_OF_THE_PRESENT = {
    f"/vehicle/{axle}/fitted/{field}" for axle in ("front", "rear") for field in ("tyre/approved_rim_widths_in/max",)
}
WITHOUT_EFFECT = UNREAD_OF_THE_PRESENT
# Ask for more or less of the answer and are no facts of the question; `test_measure_first.py`, `test_detail.py` and
# `test_language.py` hold what they do.
OPTIONS = {"/measure_first", "/detail", "/language", "/units"}

SCHEMA = CheckRequest.model_json_schema()
# What a text may be in its place, where neither the schema nor an example tells enough.
TEXTS = {
    "/label": ("one", "another"),
    "/id": ("one", "another"),
    "tyre/size": ("225/45 R17 94W XL", "205/55 R16 91V"),
    "rim/size": ("7.5J x 17 H2 ET45", "6.5J x 16 H2 ET40"),
    "/bolt_circle": ("5x112", "4x100"),
    "/built": ("1990-01-01", "2006-12-31", "2019-05-20"),
    "/date": ("2016-01-15", "2026-11-24"),
    "tyre/speed_symbol": ("H", "W"),
    "tyre/load_range": ("C", "E"),
}
_SERVICE = {"load_index": 94, "speed_symbol": "W"}
METRIC = {"section_width_mm": 225, "aspect_ratio": 45, "rim_diameter_in": 17, **_SERVICE}
FLOTATION = {"overall_diameter_in": 31, "section_width_in": 10.5, "rim_diameter_in": 15, "load_index": 109}
# What stands beside a number where no designation does.
BESIDE: dict[str, list[Json]] = {
    "tyre": [
        METRIC,
        {**METRIC, "commercial": "LT"},
        {**METRIC, "commercial": "C"},
        {**FLOTATION, "speed_symbol": "Q"},
    ],
    "rim": [{"width_in": 7.5, "diameter_in": 17, "flange": "J", "hump": "H2", "one_piece": True, "offset_mm": 45}],
}
BY_NUMBER = {
    "tyre": set(TyreByNumbers.model_fields) - {"size", "section_width_mm"},
    "rim": set(RimByNumbers.model_fields) - {"size"},
}
WHEELS = ("candidate/{axle}", "vehicle/{axle}/fitted")
# Vehicles whose law or use asks what the saloon's does not.
VEHICLES = {
    "a saloon": saloon(),
    "a saloon whose tyres bear labels": changed(
        saloon(),
        on_both_axles(
            {
                f"/{wheel}/tyre/label": {"rolling_resistance_class": "C", "wet_grip_class": "C", "noise_db": 71}
                for wheel in WHEELS
            }
        ),
    ),
    "a saloon whose wheels were weighed": changed(
        saloon(),
        on_both_axles({f"/{wheel}/{part}/mass_kg": 10 for wheel in WHEELS for part in ("tyre", "rim")}),
    ),
    "a saloon without readings of its own": changed(
        saloon(("205/55 R16 91V", "6.5J x 16 H2 ET40"), ("245/40 R17 95W XL", "8.5J x 17 H2 ET40")),
        {
            "/vehicle/speedometer": ABSENT,
            **on_both_axles({f"/vehicle/{{axle}}/{part}": ABSENT for part in ("clearance", "hub")}),
        },
    ),
    "a saloon in winter": changed(
        saloon(("225/45 R17 94H XL M+S", "7.5J x 17 H2 ET45")),
        {"/rule_pack": "de", "/season": "winter", "/vehicle/built": "2019-05-20", "/date": "2026-11-24"},
    ),
    "a bus": changed(
        saloon(),
        {
            "/rule_pack": "nl",
            "/vehicle/category": "M3",
            "/vehicle/built": "2019-05-20",
            "/vehicle/max_mass_kg": 12000,
            "/vehicle/seats_standing": True,
            "/vehicle/speed_limited_kmh": 100,
            **on_both_axles(
                {
                    "/vehicle/{axle}/max_axle_mass_kg": 3600,
                    "/vehicle/{axle}/fitted/tyre/size": "225/75 R16C 121/120R",
                    "/vehicle/{axle}/wheels_per_side": 2,
                    "/candidate/{axle}/tyre/size": "215/75 R16C 116/114R",
                }
            ),
        },
    ),
    "a caravan": changed(saloon(), {"/rule_pack": "nl", "/vehicle/category": "O2", "/vehicle/max_mass_kg": 1900}),
    "a van": changed(saloon(), {"/rule_pack": "au-nsw", "/vehicle/category": "N1", "/vehicle/towing": True}),
}


def _resolved(schema: Json) -> Json:
    """Return what a reference in the schema stands for."""
    while "$ref" in schema:
        schema = SCHEMA["$defs"][schema["$ref"].rpartition("/")[2]]
    return schema


def _fields(schema: Json, pointer: str = "") -> Iterator[tuple[str, Json]]:
    """Yield every field that holds a value and no part, by its pointer."""
    schema = _resolved(schema)
    if "properties" not in schema:
        yield pointer, schema
        return
    for name, inner in schema["properties"].items():
        yield from _fields(inner, f"{pointer}/{name}")


FIELDS = dict(_fields(SCHEMA))


def _values(pointer: str) -> list[object]:
    """Return values of a field: its words, or the ends of its range, what lies between and its example."""
    field = FIELDS[pointer]
    if field.get("type") == "boolean":
        return [True, False]
    if "enum" in field:
        return list(field["enum"])
    if pointer.endswith("rim/width_in"):
        # Widths go by quarters of an inch, which the ends and the mean of the range hardly meet.
        return [6.5, 7.0, 7.5, 8.0]
    if "minimum" in field:
        low, high = field["minimum"], field["maximum"]
        if field["type"] == "integer":
            return list(range(low, high + 1))
        return [low, *field["examples"], 0.8 * field["examples"][0], (low * high) ** 0.5, high]
    return [text for end, texts in TEXTS.items() if pointer.endswith(end) for text in texts]


def _with(request: Json, pointer: str, value: object) -> Json:
    """Return the request with this value; whatever else the part needs is filled in with its examples."""
    part, _, name = pointer.rpartition("/")
    made = changed(request, {pointer: value})
    for other, field in FIELDS.items():
        beside, _, its_name = other.rpartition("/")
        if beside == part and its_name != name and its_name not in at(made, part) and part not in ("", "/vehicle"):
            required = _is_required(other)
            if required and "examples" in field:
                made = changed(made, {other: field["examples"][0]})
    return made


def _is_required(pointer: str) -> bool:
    schema: Json = SCHEMA
    *path, name = pointer.split("/")[1:]
    for step in path:
        schema = _resolved(_resolved(schema)["properties"][step])
    return name in _resolved(schema).get("required", ())


def _answers(request: Json, pointer: str) -> Iterator[dict[str, Any]]:
    for value in _values(pointer):
        try:
            yield answer(check(_with(request, pointer, value)))
        except ValidationError:
            # The ends of two ranges may contradict each other.
            continue


def _without_size(request: Json, pointer: str) -> list[Json]:
    """Return the request with numbers in place of the designation, where the field is one of them."""
    part, _, name = pointer.rpartition("/")
    kind = part.rpartition("/")[2]
    if name not in BY_NUMBER.get(kind, ()):
        return [request]
    return [
        changed(request, {f"{part}/size": ABSENT, **{f"{part}/{number}": value for number, value in numbers.items()}})
        for numbers in BESIDE[kind]
    ]


def _has_effect(pointer: str) -> bool:
    """Return whether for some vehicle two values of the field are answered differently."""
    for request in VEHICLES.values():
        for made in _without_size(request, pointer):
            answers = _answers(made, pointer)
            first = next(answers, None)
            if any(each != first for each in answers):
                return True
    return False


@pytest.mark.parametrize("pointer", sorted(FIELDS.keys() - WITHOUT_EFFECT - OPTIONS))
def test_a_field_that_is_asked_for_changes_some_answer(pointer: str) -> None:
    assert _has_effect(pointer)


@pytest.mark.parametrize("pointer", sorted(WITHOUT_EFFECT))
def test_a_field_that_is_excused_still_needs_it(pointer: str) -> None:
    assert not _has_effect(pointer)


def test_the_walk_has_found_the_fields() -> None:
    assert {"/candidate/front/tyre/size", "/vehicle/rear/clearance/radial_mm", "/date"} <= FIELDS.keys()
    assert [pointer for pointer in FIELDS if len(_values(pointer)) < 2] == []
