"""Numbers of a tyre that are far from what its size makes: told, since one of the two must be wrong.

Makes differ from their size by a few per cent (common practice, no source); how much is too much is this project's
judgement.
"""

from __future__ import annotations

from collections.abc import Iterator

from service.assessment.case import Tyre
from service.assessment.checks.words import plain
from service.assessment.view.facts import tyre_facts
from service.core.numeric import known
from service.core.saying import Said, say
from service.physics.rolling import DIAGONAL_FACTOR, RADIAL_FACTOR

# The width goes with the rim, by 5 mm for half an inch, so it may differ by more.
DIAMETER_SHARE, WIDTH_SHARE = 0.1, 0.25


def unlikely(tyre: Tyre) -> Iterator[Said]:
    """Yield a sentence for each number that was given of a tyre and is far from what its designation makes."""
    given = tyre.measured
    if given is None:
        return
    designation, made = tyre.designation, tyre_facts(tyre.designation)
    outer_mm = given.overall_diameter_mm if known(given.overall_diameter_mm) else made.overall_diameter_mm
    factor = RADIAL_FACTOR if designation.construction == "radial" else DIAGONAL_FACTOR
    for name, value, usual, share in (
        (say("overall diameter"), given.overall_diameter_mm, made.overall_diameter_mm, DIAMETER_SHARE),
        (say("section width"), given.section_width_mm, made.design_width_mm, WIDTH_SHARE),
        (say("rolling circumference"), given.rolling_circumference_mm, factor * outer_mm, DIAMETER_SHARE),
    ):
        # False where either is not known.
        if abs(value - usual) > share * usual:
            yield say(
                "The {dimension} of {size} is given as {given}, not some {expected}; one must be wrong.",
                dimension=name,
                size=designation.canonical,
                given=plain(value, 0, "mm"),
                expected=plain(usual, 0, "mm"),
            )
