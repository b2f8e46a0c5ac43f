"""A remedy is computed, not a phrase: doing what it says and asking again settles its finding.

Taken as the answer shows it, rounded, and done by `tests.support.remedies` as a caller would: a load index written into
the designation, an offset into the rim's, a measured field filled in.
"""

import json
import re
from pathlib import Path

import pytest
from hypothesis import Phase, given, settings

from service.assessment.answer.keep_present import ASKING
from service.core.findings import ADVISORY, MET, NOT_RECOMMENDED
from service.designation.tyre import TYRE_PATTERN
from tests.support.cases import Json, at, check
from tests.support.effort import cases
from tests.support.remedies import NotApplicable, settles
from tests.support.stories import stories

FASTEST_SYMBOL_KMH = 300
DEMOS = Path(__file__).parents[2] / "demo_requests"


def _beyond_a_request(request: Json, code: str) -> bool:
    """Return whether only somebody else can settle it: above 300 km/h the tyre's maker states what it may do."""
    return code == "speed.capability" and request["vehicle"]["max_speed_kmh"] > FASTEST_SYMBOL_KMH


def demo_requests():
    """Return the requests to check among the demonstrations, those with a slip of the pen apart."""
    demos = (json.loads(path.read_text(encoding="utf-8")) for path in sorted(DEMOS.glob("*.check.json")))
    return [demo for demo in demos if all(map(_is_readable, _sizes(demo)))]


def _sizes(demo):
    wheels = [at(demo, f"{place}/tyre/size") for place in ("/candidate/front", "/candidate/rear")]
    return wheels + [at(demo, f"/vehicle/{name}/fitted/tyre/size") for name in ("front", "rear")]


def _is_readable(size):
    return re.match(TYRE_PATTERN, size) is not None


@pytest.mark.parametrize("request_", demo_requests(), ids=lambda demo: demo["candidate"].get("label"))
def test_every_remedy_of_the_demonstrations_settles_its_finding(request_):
    settle_all(request_)


# Not shrunk: the finding that fails says enough, and each attempt searches for a size.
@settings(max_examples=cases(150, 2000), phases=[Phase.explicit, Phase.generate])
@given(stories())
def test_every_remedy_settles_its_finding(request):
    settle_all(request)


def settle_all(request):
    """Do what each remedy says, one by one, and see that its finding is settled."""
    for finding in check(request).findings:
        # What towing asks for is a condition of use, which no change of the fitment takes away.
        if finding.remedy is None or (finding.code == "load.towing" and finding.outcome == ADVISORY):
            continue
        try:
            settled = settles(request, finding)
        except NotApplicable:
            settled = _beyond_a_request(request, finding.code)
        assert settled, finding


@settings(max_examples=cases(100, 2000))
@given(stories())
def test_whatever_is_not_met_or_not_known_has_a_remedy_and_what_is_met_has_none(request):
    for finding in check(request).findings:
        # Of balance and standing water only what nothing else refuses is named, which may be nothing.
        if finding.outcome in (ADVISORY, NOT_RECOMMENDED) and finding.code in ASKING:
            continue
        # Whether left and right are alike is seen on the car; no field of a request could tell.
        if finding.code == "law.same_size_on_axle":
            continue
        assert (finding.remedy is None) == (finding.outcome == MET), finding
