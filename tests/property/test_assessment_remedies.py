"""A remedy is computed, not a phrase: doing what it says and asking again settles its finding.

Taken as the answer shows it, rounded, and done by `tests.support.remedies` as a caller would: a load index written into
the designation, an offset into the rim's, a measured field filled in.
"""

from hypothesis import given, settings

from service.core.findings import ADVISORY, MET
from tests.support.cases import Json, check
from tests.support.remedies import NotApplicable, settles
from tests.support.stories import stories

FASTEST_SYMBOL_KMH = 300


def _beyond_a_request(request: Json, code: str) -> bool:
    """Return whether only somebody else can settle it: above 300 km/h the tyre's maker states what it may do."""
    return code == "speed.capability" and request["vehicle"]["max_speed_kmh"] > FASTEST_SYMBOL_KMH


@settings(max_examples=400)
@given(stories())
def test_every_remedy_settles_its_finding(request):
    for finding in check(request).findings:
        # What towing asks for is a condition of use, which no change of the fitment takes away.
        if finding.outcome == MET or (finding.code == "load.towing" and finding.outcome == ADVISORY):
            continue
        try:
            settled = settles(request, finding)
        except NotApplicable:
            settled = _beyond_a_request(request, finding.code)
        assert settled, finding


@settings(max_examples=200)
@given(stories())
def test_whatever_is_not_met_or_not_known_has_a_remedy_and_what_is_met_has_none(request):
    for finding in check(request).findings:
        assert (finding.remedy is None) == (finding.outcome == MET), finding
