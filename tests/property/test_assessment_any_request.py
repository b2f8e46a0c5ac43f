"""Whatever the wire model admits is answered, with numbers only, within the published schema."""

import json

import orjson
import pytest
from hypothesis import given, reject, settings
from jsonschema import Draft202012Validator

from service.api.inbound.translate import SpacedTwins, case
from service.api.render import assessment_answer as render
from service.api.schemas.assessment import Assessment
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from tests.support.anything import EXTREME_RIMS, EXTREME_TYRES, any_requests
from tests.support.cases import changed, saloon, wheel
from tests.support.effort import cases

SCHEMA = Draft202012Validator(Assessment.model_json_schema(mode="serialization"))


def answered(request):
    """Return the bytes that a caller would get."""
    asked = CheckRequest.model_validate_json(orjson.dumps(request))
    try:
        question = case(asked)
    except SpacedTwins:
        # The one thing that a schema cannot say: it is refused in words, as tests of spacers hold.
        reject()
    return orjson.dumps(render.assessment(assess(question)))


def refuse(constant):
    """Refuse what is no number of JSON."""
    raise AssertionError(constant)


@settings(max_examples=cases(120, 3000))
@given(any_requests())
def test_every_valid_request_gets_a_valid_answer(request):
    """Strictly read: a null, an infinite number or a text beyond its length is a fault."""
    assert Assessment.model_validate_json(answered(request), strict=True).findings


@settings(max_examples=cases(50, 1000))
@given(any_requests())
def test_every_answer_keeps_the_published_schema(request):
    SCHEMA.validate(json.loads(answered(request), parse_constant=refuse))


# Every size on every rim, present and proposed, on the saloon.
@pytest.mark.parametrize("tyre", EXTREME_TYRES)
@pytest.mark.parametrize("rim", EXTREME_RIMS)
def test_the_strangest_sizes_are_answered(tyre, rim):
    strange = {f"/candidate/{name}": wheel(tyre, rim) for name in ("front", "rear")}
    for request in (changed(saloon(), strange), changed(saloon(), {"/vehicle/rear/fitted": wheel(tyre, rim)})):
        assert Assessment.model_validate_json(answered(request), strict=True).findings


@pytest.mark.parametrize(
    "changes",
    [
        {"/vehicle/rear/max_axle_mass_kg": 15000, "/candidate/rear/tyre/size": "60/15 R8 0B"},
        {"/vehicle/rear/kerb_axle_mass_kg": 15000},
        {"/vehicle/rear/kerb_axle_mass_kg": 20},
        {"/candidate/rear/tyre/overall_diameter_mm": 200},
        {"/candidate/rear/tyre/overall_diameter_mm": 432},
        {"/candidate/rear/tyre/overall_diameter_mm": 432.0001},
        {"/candidate/rear/tyre/overall_diameter_mm": 1500},
        {"/vehicle/rear/fitted/tyre/overall_diameter_mm": 200},
        {"/candidate/rear/tyre/approved_rim_widths_in": {"min": 9, "max": 8}},
        {"/candidate/rear/pressure_kpa": 50, "/vehicle/rear/fitted/pressure_kpa": 1000},
        {"/candidate/rear/tyre/tread_depth_mm": 0},
        {"/candidate/rear/tyre/tread_depth_mm": 25},
        {"/vehicle/rear/clearance": {"inboard_mm": 0, "outboard_mm": 0, "radial_mm": 0}},
        {"/vehicle/rear/clearance": {"inboard_mm": 1, "outboard_mm": 1, "radial_mm": 1}},
        {"/vehicle/max_speed_kmh": 450},
        {"/vehicle/max_speed_kmh": 10},
        {"/vehicle/centre_of_gravity_height_mm": 3000, "/vehicle/rear/track_mm": 500},
        {"/vehicle/speedometer": {"displayed_kmh": 450, "true_kmh": 10}},
        {"/candidate/rear/tyre/reference_pressure_kpa": 100, "/vehicle/rear/max_axle_mass_kg": 15000},
        {"/candidate/rear/tyre/section_width_mm": 600, "/candidate/rear/tyre/rolling_circumference_mm": 600},
        {"/candidate/rear/tyre/size": "155 R17 78S", "/candidate/rear/tyre/overall_diameter_mm": 1500},
    ],
)
def test_extremes_are_answered(changes):
    assert Assessment.model_validate_json(answered(changed(saloon(), changes)), strict=True).findings
