"""What `search` is asked and what it answers."""

from __future__ import annotations

from service.api.schemas.asked_of_wheels import BothNeeds
from service.api.schemas.assessment import RulePackName
from service.api.schemas.base import CODE, MAX_ID, AnswerPart, identity, maybe, number, part, text, whole
from service.api.schemas.by_numbers import TyreInStock
from service.api.schemas.comparison import Weighed
from service.api.schemas.error_answer import Fault
from service.api.schemas.finding_answer import CITED, Sources
from service.api.schemas.request import Candidate, FitmentRequest, RequestPart, Rim
from service.api.schemas.vocabulary import Detail, FittingVerdict, RankBy, Stagger
from service.assessment.batch.size_search import FITTING
from service.core import ranges
from service.core.numeric import UNKNOWN

MAX_STOCK = 5000
MAX_STOCK_TEXT = 64
MAX_RIMS = 16
MAX_RESULTS = 100
MAX_STOCK_FAULTS = 100
MAX_TRIED = 100_000_000


class OfferedRim(Rim):
    """A rim that could be fitted."""

    id: str = identity("The caller's own name of the rim; comes back in the rows that have it.")


class StockLine(TyreInStock, RequestPart):
    """A tyre of the stock: its designation, its numbers, or both where they agree."""

    id: str = identity("The caller's own name of the line; comes back in rows and among what is refused.")
    size: str = part(
        "Size designation and service description.", "235/40 R18 95Y XL", default="", max_length=MAX_STOCK_TEXT
    )
    section_width_mm: float = number("Nominal section width", "mm", ranges.SECTION_WIDTH_MM, 235.0, UNKNOWN)


class OfferedRims(RequestPart):
    """The rims that could be fitted."""

    front: list[OfferedRim] = part("Rims for the front axle, 1 to 16.", min_length=1, max_length=MAX_RIMS)
    rear: list[OfferedRim] = part(
        "Rims for the rear axle; absent: the same as in front.", default=[], min_length=1, max_length=MAX_RIMS
    )


class SearchLimits(RequestPart):
    """What is asked beyond the checks; each tightens the search, none loosens a check."""

    overall_diameter_percent: float = number(
        "Greatest change of overall diameter, up or down", "%", (0.0, 10.0), 1.5, UNKNOWN
    )
    min_section_width_mm: float = number("Least nominal section width", "mm", ranges.SECTION_WIDTH_MM, 205.0, UNKNOWN)
    max_section_width_mm: float = number(
        "Greatest nominal section width", "mm", ranges.SECTION_WIDTH_MM, 255.0, UNKNOWN
    )
    stagger: Stagger = part(
        "How the axles may differ; absent: square for a vehicle with tyres of one size all round, else keep.",
        "keep",
        default=None,
    )
    mixed: bool = part(
        "Whether summer, winter and all-season tyres, and passenger car and commercial tyres, may be paired.",
        example=False,
        default=False,
    )
    axle_ratio_percent: float = number(
        "Greatest change of the ratio of front to rear circumference; absent: where the check begins to forbid",
        "%",
        (0.0, 10.0),
        0.5,
        UNKNOWN,
    )
    load_margin_percent: float = number(
        "Least by which the tyres must carry more than the maximum axle mass", "%", (0.0, 100.0), 5.0, UNKNOWN
    )
    room_mm: float = number(
        "Least room to be left in every direction whose room was measured", "mm", (0.0, 100.0), 5.0, UNKNOWN
    )
    balance_deg_per_g: float = number(
        "Greatest change of the understeer gradient, up or down", "deg/g", (0.0, 10.0), 0.3, UNKNOWN
    )


class SearchRequest(FitmentRequest):
    """Which sizes would suit a vehicle."""

    rims: OfferedRims = part("The rims that could be fitted.")
    stock: list[StockLine] = part(
        "Tyres to choose from, up to 5,000; one that cannot be read is named in the answer, and the others "
        "stand. Absent: every size of a grid, section width 125 to 355 mm by 10, aspect ratio 25 to 85 % by 5, rim "
        "code 12 to 24.",
        [{"id": "A-1042", "size": "235/40 R18 95Y XL"}],
        default=[],
        min_length=1,
        max_length=MAX_STOCK,
    )
    limits: SearchLimits = part("What is asked beyond the checks.", default=SearchLimits())
    rank_by: RankBy = part(
        "What the results are ranked by, after the verdict and what speaks against them.",
        "closest_to_present",
        default="closest_to_present",
    )
    verdicts: list[FittingVerdict] = part(
        "The verdicts to be found; absent: all that go on the vehicle.",
        ["suitable", "suitable_with_conditions"],
        default=list(FITTING),
        min_length=1,
        max_length=len(FITTING),
    )
    detail: Detail = part("How much is answered of each row.", "short", default="standard")
    max_results: int = whole("How many results at most", "1", (1, MAX_RESULTS), 20, 20)
    explain_first: int = whole(
        "How many of the best results say their findings in sentences with remedies", "1", (0, MAX_RESULTS), 3, 3
    )


class Removed(AnswerPart):
    """How many one reason sent away."""

    code: str = text(
        "The question that was not met; `limits.` and the name of a limit of the request; or `search.` and what the "
        "search left out.",
        60,
        "rim.width",
        CODE,
    )
    count: int = whole("How many it sent away", "1", (1, MAX_TRIED), 1446)
    text: str = text("For what, in words.", 200, "too low a load index")
    by_default: bool = part("Whether the request may ask otherwise and did not.", example=False)


class Sieve(AnswerPart):
    """Why there are so few."""

    tried: int = whole("How many were tried", "1", (0, MAX_TRIED), 32448)
    kept: int = whole("How many were left", "1", (0, MAX_TRIED), 78)
    removed_by: list[Removed] = part("What sent the others away, each counted once, most first.", max_length=100)


class Sieves(AnswerPart):
    """The steps of the search."""

    front: Sieve = part("Sizes on rims, for the front axle.")
    rear: Sieve = part("Sizes on rims, for the rear axle.")
    pairs: Sieve = part("Front and rear together.")


class FoundAxle(AnswerPart):
    """One axle of a result."""

    tyre: str = text("The tyre; one of the grid bears the description that is needed.", 100, "235/40 R18 93V")
    rim_index: int = whole("Place of the rim among the rims of the axle, from 0", "1", (0, MAX_RIMS - 1), 2)
    stock_index: int = whole(
        "Place of the tyre in the stock, from 0; absent for the grid", "1", (0, MAX_STOCK - 1), 17, None
    )
    stock_id: str = text("The `id` of the line of the stock, where it has one.", MAX_ID, "A-1042", default=None)
    rim_id: str = text("The `id` of the rim, where it has one.", MAX_ID, "R-17-45", default=None)
    pressure_kpa: float = maybe("Cold pressure to set, enough for the axle", "kPa", 250.0)


class FoundAxles(AnswerPart):
    """Both axles of a result."""

    front: FoundAxle = part("The front axle.")
    rear: FoundAxle = part("The rear axle.")


class FoundRow(Weighed):
    """One result."""

    fitment: FoundAxles = part("What would be fitted.")
    candidate: Candidate = part("The same as `check` takes it; remedies point into it.")


class RefusedLine(Fault):
    """A line of the stock that cannot be read."""

    id: str = text("The `id` of the line, where it has one.", MAX_ID, "A-1042", default=None)


class SearchResult(AnswerPart):
    """What would suit, best first."""

    rule_pack: RulePackName = part("The rules the sizes were held against.")
    rank_by: RankBy = part("What they are ranked by, after the verdict.", "closest_to_present")
    rows: list[FoundRow] = part("The best fitments; `not_bettered` is among these.", max_length=MAX_RESULTS)
    why_none: str = text(
        "Why nothing was found, and which limit or default did it; absent where something was.",
        1500,
        "No tyre is left for the front axle. Left out of 24 tyres on rims: 20 for another rim diameter and 4 for too "
        "low a load index.",
        default=None,
    )
    needs: BothNeeds = part(
        "What each axle asks for: least load index and speed symbol, so that its tyres carry it, and no less than the "
        "present ones do; diameters, widths, and what a rim must have. Of a stock, a tyre with less is listed with "
        "conditions where it carries the axle."
    )
    sieves: Sieves = part("How many were tried, how many are left, and why so few.")
    refused: list[RefusedLine] = part(
        "Lines of the stock that cannot be read, the first 100.", max_length=MAX_STOCK_FAULTS
    )
    refused_count: int = whole("How many cannot be read, listed or not", "1", (0, MAX_STOCK), 0)
    notes: list[str] = part("What must be known about the results.", max_length=10)
    sources: Sources = part("The documents that the bases name, by key; with `full` only.", CITED, default=None)
    cautions: list[str] = part("What this answer does not replace; always present.", max_length=20)
