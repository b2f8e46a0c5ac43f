"""Generated requests, valid and invalid, against every operation: all checks on, nothing left out.

The document is the reference: whatever it admits is answered with 200, whatever it excludes is refused, and every
answer has a documented status, media type, headers and schema. Examples, boundary values and generated cases run in
the first test, chains of requests along the document's links in the second.
"""

import schemathesis
from hypothesis import settings

from tests.contract.document import app

schema = schemathesis.openapi.from_asgi("/openapi.json", app())


def test_no_check_is_left_out():
    checks = schema.config.checks
    assert [name for name in dir(checks) if getattr(getattr(checks, name), "enabled", True) is False] == [
        # Only a limit on the time of an answer is: two test processes share two cores.
        "max_response_time"
    ]


@schema.parametrize()
@settings(max_examples=60)
def test_every_generated_request_is_answered_as_the_document_says(case):
    case.call_and_validate()


class TestChains(schema.as_state_machine().TestCase):
    settings = settings(max_examples=20, stateful_step_count=4)
