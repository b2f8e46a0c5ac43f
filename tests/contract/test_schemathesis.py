"""Generated requests, valid and invalid, against every operation: all checks on, nothing left out.

The document is the reference: whatever it admits is answered with 200, whatever it excludes is refused, and every
answer has a documented status, media type, headers and schema. Examples, boundary values and generated cases run in
the first test, chains of requests along the document's links in the second.

One thing no schema can say: that the numbers of a tyre or rim make one, and agree with the designation beside them.
Requests that are meant to be valid are therefore made coherent before they are sent: a designation stands for the
numbers. Whatever breaks the schema is sent as it was generated, but for null, which is read as absent
(`test_tyres_by_numbers.py` holds that) and gives way to a text that no field takes. Every check runs on every answer.
"""

from typing import Any

import schemathesis
from hypothesis import settings

from service.api.schemas.by_numbers import RimByNumbers, TyreByNumbers
from tests.contract.document import app
from tests.support.effort import cases

schema = schemathesis.openapi.from_asgi("/openapi.json", app())


# The width in mm stays: beside a designation it is what was measured.
NUMBERS = {
    "tyre": set(TyreByNumbers.model_fields) - {"size", "section_width_mm"},
    "rim": set(RimByNumbers.model_fields) - {"size"},
}
SIZES = {"tyre": "205/55 R16 91V", "rim": "6.5J x 16 H2 ET46"}


def _make_coherent(part: Any, name: str) -> None:
    """Put a designation in the place of the numbers of every tyre and rim within."""
    if isinstance(part, list):
        for each in part:
            _make_coherent(each, name)
    elif isinstance(part, dict):
        if name in SIZES:
            for number in NUMBERS[name] & part.keys():
                del part[number]
            # Null is read as absent.
            if part.get("size") is None:
                part["size"] = SIZES[name]
        for key, each in part.items():
            _make_coherent(each, "rim" if name == "rims" else key)


@schemathesis.hook
def before_call(context, case, kwargs):
    if case.meta is not None and case.meta.generation.mode.is_positive:
        _make_coherent(case.body, "")
    else:
        _leave_no_null(case.body)


def _leave_no_null(part: Any) -> None:
    """Put a text that no field takes in the place of null, which no schema admits and which is read as absent."""
    if isinstance(part, dict):
        for key, each in part.items():
            if each is None:
                part[key] = "\0"
    for each in part.values() if isinstance(part, dict) else part if isinstance(part, list) else ():
        _leave_no_null(each)


def test_the_hook_leaves_a_coherent_request_alone_and_mends_numbers_at_odds():
    asked = {"candidate": {"front": {"tyre": {"aspect_ratio": 15.0}, "rim": {"size": "8J x 18", "width_in": 2.0}}}}
    _make_coherent(asked, "")
    assert asked == {"candidate": {"front": {"tyre": {"size": SIZES["tyre"]}, "rim": {"size": "8J x 18"}}}}
    coherent = {"rims": {"front": [{"size": "8J x 18", "id": "R-1"}]}, "stock": [{"aspect_ratio": 15.0}]}
    _make_coherent(coherent, "")
    assert coherent == {"rims": {"front": [{"size": "8J x 18", "id": "R-1"}]}, "stock": [{"aspect_ratio": 15.0}]}


def test_no_check_is_left_out():
    checks = schema.config.checks
    assert [name for name in dir(checks) if getattr(getattr(checks, name), "enabled", True) is False] == [
        # Only a limit on the time of an answer is: two test processes share two cores.
        "max_response_time"
    ]


@schema.parametrize()
@settings(max_examples=cases(6, 60), deadline=None)
def test_every_generated_request_is_answered_as_the_document_says(case):
    case.call_and_validate()


class TestChains(schema.as_state_machine().TestCase):
    settings = settings(max_examples=cases(3, 30), stateful_step_count=3, deadline=None)
