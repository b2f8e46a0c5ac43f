"""What `rims` is asked and what it answers."""

from __future__ import annotations

from service.api.schemas.asked_of_wheels import BothNeeds
from service.api.schemas.assessment import RulePackName
from service.api.schemas.base import AnswerPart, maybe, number, part, text
from service.api.schemas.finding_answer import FindingHead
from service.api.schemas.request import Candidate, FitmentRequest, RequestPart, Rim, Tyre
from service.api.schemas.vocabulary import ApprovedBy, AxleName, CoverMethod, Verdict
from service.core import ranges

MAX_TYRES = 12
MAX_COMBINATIONS = 12
# The tyres of an axle and those of the combinations.
MAX_LISTED = MAX_TYRES + MAX_COMBINATIONS
MAX_WIDTHS = 30
MAX_REASONS = 60
MAX_SHARED = 40
OFFSET_MM = (-190.0, 190.0)


def _tyres(description: str) -> list[Tyre]:
    """Return a field for the tyres of an axle."""
    field: list[Tyre] = part(description, default=[], min_length=1, max_length=MAX_TYRES)
    return field


class TyresAsked(RequestPart):
    """The tyres of interest; of an axle that has none, the present one."""

    front: list[Tyre] = _tyres("Tyres for the front axle, 1 to 12.")
    rear: list[Tyre] = _tyres("Tyres for the rear axle, 1 to 12.")


class TyrePair(RequestPart):
    """A front and a rear tyre to be driven together."""

    front: Tyre = part("The front tyre; absent: the front axle stays as it is.", default=None)
    rear: Tyre = part("The rear tyre; absent: the rear axle stays as it is.", default=None)
    label: str = text("A name of the caller's own, repeated in the answer.", 80, "225 and 255", default="")


class RimsRequest(FitmentRequest):
    """Which rims would do for these tyres on this vehicle."""

    tyres: TyresAsked = part("The tyres of interest on each axle.", default=TyresAsked())
    combinations: list[TyrePair] = part(
        "Front and rear tyres that belong together, up to 12; they are looked at on each axle like the others.",
        default=[],
        min_length=1,
        max_length=MAX_COMBINATIONS,
    )


class RimReason(FindingHead):
    """A question that is not met, with its number and its limit."""

    text: str = text("The same in words.", 400, "room to the strut (front axle): 4.5 mm, the limit is 5 mm")


class OffsetRun(AnswerPart):
    """Neighbouring offsets, both ends included."""

    from_mm: float = number("Least offset (ET)", "mm", OFFSET_MM, 38.0)
    to_mm: float = number("Greatest offset (ET)", "mm", OFFSET_MM, 46.0)


class OffsetWindow(OffsetRun):
    """The offsets that do, both ends included, and what bounds each end."""

    from_bound: RimReason = part("What comes out worse at an offset one millimetre less.", default=None)
    to_bound: RimReason = part("What comes out worse at an offset one millimetre more.", default=None)
    further: list[OffsetRun] = part(
        "Other offsets that do, where a rule of the place leaves a gap; mostly empty.", default=None, max_length=20
    )


class BestOffset(AnswerPart):
    """The offset that comes out best, and of those the one nearest to the present wheel's centre line."""

    offset_mm: float = number("Offset (ET)", "mm", OFFSET_MM, 45.0)
    rim: Rim = part("The rim as `check` takes it.")
    reasons: list[RimReason] = part(
        "What it is conditional on, worst first; empty where it is suitable.", max_length=MAX_REASONS
    )


class RimWidthWindow(AnswerPart):
    """What a tyre may have on one width of rim."""

    width_in: float = number("Rim width", "in", ranges.RIM_WIDTH_IN, 8.0)
    verdict: Verdict = part(
        "The verdict on this axle at the best offset: what a check finds of this axle alone.", "suitable"
    )
    suitable: OffsetWindow = part("The offsets that are suitable on this axle; absent: none.", default=None)
    with_conditions: OffsetWindow = part(
        "The offsets that are suitable or suitable with conditions on this axle; absent: none.", default=None
    )
    best: BestOffset = part("The best of them; absent where no offset does.", default=None)
    why_none: list[RimReason] = part(
        "Why no offset does, worst first: what stands against the one that comes nearest.",
        default=None,
        max_length=MAX_REASONS,
    )
    besides: list[RimReason] = part(
        "What a check finds of the vehicle and of the other axle, which stays as it is, whatever the offset.",
        max_length=MAX_REASONS,
    )


class TyreRims(AnswerPart):
    """The rims for one tyre on an axle."""

    tyre: str = text("The tyre in its canonical spelling.", 100, "235/40 R18 95Y XL")
    mass_reserve_kg: float = maybe("By how much the axle's tyres carry more than its maximum mass", "kg", 120.0)
    min_rim_width_in: float = maybe("Narrowest rim that the tyre takes", "in", 8.0)
    max_rim_width_in: float = maybe("Widest rim that the tyre takes", "in", 9.5)
    rim_width_by: ApprovedBy = part("How these widths are known.", "table")
    widths: list[RimWidthWindow] = part("Each half inch of width that the tyre takes.", max_length=MAX_WIDTHS)


class AxleRims(AnswerPart):
    """What was found for one axle."""

    tyres: list[TyreRims] = part("The tyres asked about, each once.", max_length=MAX_LISTED)


class BothRims(AnswerPart):
    """The same for both axles."""

    front: AxleRims = part("The front axle.")
    rear: AxleRims = part("The rear axle.")


class Served(AnswerPart):
    """A tyre on an axle."""

    axle: AxleName = part("The axle.", "front")
    tyre: str = text("The tyre.", 100, "235/40 R18 95Y XL")


class SharedRim(OffsetRun):
    """Rims of one width that serve several tyres."""

    diameter_in: float = number("Diameter code", "1", ranges.RIM_DIAMETER_IN, 18.0)
    width_in: float = number("Rim width", "in", ranges.RIM_WIDTH_IN, 8.0)
    best_mm: float = number("The best of these offsets (ET)", "mm", OFFSET_MM, 45.0)
    serves: list[Served] = part("What they serve, be it with conditions.", max_length=2 * MAX_LISTED)


class ChosenRim(AnswerPart):
    """One rim of the smallest set."""

    diameter_in: float = number("Diameter code", "1", ranges.RIM_DIAMETER_IN, 18.0)
    width_in: float = number("Rim width", "in", ranges.RIM_WIDTH_IN, 8.0)
    offset_mm: float = number("Offset (ET)", "mm", OFFSET_MM, 45.0)
    serves: list[Served] = part("What it serves.", max_length=2 * MAX_LISTED)
    with_conditions: list[Served] = part(
        "Those of them that it serves with conditions only.", max_length=2 * MAX_LISTED
    )


class SmallestSet(AnswerPart):
    """The fewest rims that serve every tyre that any rim serves."""

    rims: list[ChosenRim] = part(
        "The rims; of as few, those with the fewest conditions and nearest to the present wheels' centre lines.",
        max_length=2 * MAX_LISTED,
    )
    method: CoverMethod = part("How they were found.", "exact")
    unserved: list[Served] = part("The tyres that no rim serves.", max_length=2 * MAX_LISTED)


class CombinationRims(AnswerPart):
    """A combination on the rims of the smallest set."""

    label: str = text("The caller's name of it.", 80, "225 and 255")
    verdict: Verdict = part(
        "What a check says of the whole vehicle with these rims; absent where a tyre has no rim.",
        "suitable_with_conditions",
        default=None,
    )
    candidate: Candidate = part("The same as `check` takes it; absent where a tyre has no rim.", default=None)


class RimsResult(AnswerPart):
    """Which rims would do."""

    rule_pack: RulePackName = part("The rules they were held against.")
    needs: BothNeeds = part("What each axle asks of any tyre and any rim.")
    axles: BothRims = part("Widths and offsets for each tyre on each axle.")
    shared: list[SharedRim] = part(
        "Rims that serve several of the tyres, those that serve most first; the first 40.", max_length=MAX_SHARED
    )
    smallest_set: SmallestSet = part("The fewest rims that serve them all.")
    combinations: list[CombinationRims] = part(
        "The combinations asked about, in their order.", max_length=MAX_COMBINATIONS
    )
    notes: list[str] = part("What must be known about the answer.", max_length=10)
    cautions: list[str] = part("What this answer does not replace; always present.", max_length=20)
