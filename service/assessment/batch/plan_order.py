"""In which order are the combinations driven: reference, one of them, reference, the next, reference.

Road, weather, tyres and driver change while one tests. The present wheels are driven before and after each combination,
and each is held against the mean of the two, so that what changes steadily falls out.
"""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.verdict import NOT_RECOMMENDED, UNSUITABLE
from service.assessment.batch.plan_pairs import REFERENCE


def running_order(verdicts: Sequence[int]) -> list[int]:
    """Return the runs of one block by the places of the combinations, `REFERENCE` between them and at both ends.

    What must not be fitted is not driven; what is advised against comes last, when the driver knows the others.
    """
    driven = [at for at, verdict in enumerate(verdicts) if verdict < UNSUITABLE]
    driven.sort(key=lambda at: verdicts[at] == NOT_RECOMMENDED)
    if not driven:
        return []
    order = [REFERENCE]
    for at in driven:
        order += [at, REFERENCE]
    return order
