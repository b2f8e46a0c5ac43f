"""The fixed words of the contract, each a named choice in the document, so that a generated client has it once.

The words themselves stand where they are used, in the domain; here they get what a caller is told of them.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, GetJsonSchemaHandler
from typing_extensions import TypeAliasType

from service.api.schemas.base import readable
from service.assessment import case
from service.assessment.answer import verdict
from service.assessment.batch import (
    comparison_measures,
    plan_case,
    plan_effects,
    plan_rims,
    rim_search,
    search_pairs,
)
from service.core import findings
from service.locales import speech
from service.physics import tyre_label
from service.rules.reader import pack_ids, pack_named

Verdict = TypeAliasType(
    "Verdict",
    Annotated[
        verdict.Verdict,
        Field(
            description="The worst finding decides: not_met makes it unsuitable, not_recommended the same by name, a "
            "missing fact that decides undetermined, an advisory suitable_with_conditions; else it is suitable."
        ),
    ],
)
FittingVerdict = TypeAliasType(
    "FittingVerdict",
    Annotated[
        Literal["suitable", "suitable_with_conditions", "undetermined", "not_recommended"],
        Field(description="A verdict on what goes on the vehicle: any but unsuitable."),
    ],
)
Outcome = TypeAliasType(
    "Outcome",
    Annotated[findings.OutcomeName, Field(description="How a question came out.")],
)
AxleName = TypeAliasType("AxleName", Annotated[findings.AxleName, Field(description="An axle.")])
Where = TypeAliasType("Where", Annotated[findings.Where, Field(description="An axle, or the vehicle as a whole.")])
Status = TypeAliasType(
    "Status",
    Annotated[
        findings.BasisStatus,
        Field(
            description="How far a text was read: read; known from a quotation (second_hand); from memory; derived "
            "from something read; or this project's own."
        ),
    ],
)
Category = TypeAliasType(
    "Category",
    Annotated[
        Literal["M1", "M1G", "M2", "M3", "N1", "N2", "N3", "O1", "O2", "O3", "O4"],
        Field(description="Vehicle category by the UN's classes: M passengers, N goods, O trailers; G off-road."),
    ],
)
DrivenAxle = TypeAliasType("DrivenAxle", Annotated[case.DrivenAxle, Field(description="Which axle is driven.")])
RankBy = TypeAliasType(
    "RankBy",
    Annotated[
        comparison_measures.RankBy,
        Field(
            description="What is ranked by, after the verdict and the weight of what speaks against a fitment and is "
            "not so today: closest to the present fitment in width, diameter, rim, offset, load, speed and season; "
            "greatest dry grip, wet margin or load margin; least change of balance; shortest braking distance."
        ),
    ],
)
Trade = TypeAliasType(
    "Trade",
    Annotated[
        comparison_measures.Trade,
        Field(description="What is better or worse than with the present fitment."),
    ],
)
Stagger = TypeAliasType(
    "Stagger",
    Annotated[
        search_pairs.Stagger,
        Field(
            description="keep: the rear tyre as much wider, and its rim as much larger, than the front one as now; "
            "square: the same tyre on both axles; any: no matter. With the first two, a vehicle whose rims are as wide "
            "front and rear keeps them so."
        ),
    ],
)
ApprovedBy = TypeAliasType(
    "ApprovedBy",
    Annotated[
        rim_search.ApprovedBy,
        Field(
            description="How the rim widths of a tyre are known: by a table row of its size, by its maker as the "
            "request says, or estimated by the design guide's rule."
        ),
    ],
)
CoverMethod = TypeAliasType(
    "CoverMethod",
    Annotated[
        rim_search.CoverMethod,
        Field(
            description="exact: there is no smaller set; greedy: each time the rim that serves most of what is left, "
            "since more than 12 tyres on axles had too many ways."
        ),
    ],
)
LabelLetter = TypeAliasType(
    "LabelLetter", Annotated[tyre_label.LabelClass, Field(description="A class of the tyre label, A the best.")]
)
TyreTolerance = TypeAliasType(
    "TyreTolerance",
    Annotated[
        case.TyreTolerance,
        Field(
            description="design: tyres roll as designed; standard: they may roll as differently as the standard "
            "allows, 1.5 % more and 2.5 % less (from memory). Rooms always count a tyre as large as it may be."
        ),
    ],
)
PressureRule = TypeAliasType(
    "PressureRule",
    Annotated[
        plan_case.PressureRule,
        Field(
            description="share_of_load_index: every tyre may carry, at its pressure, the same share of its load index "
            "as the present one; load_over_capacity: every tyre carries its load as the same share of its capacity."
        ),
    ],
)
EffectName = TypeAliasType(
    "EffectName",
    Annotated[plan_effects.EffectName, Field(description="Something that a test may measure.")],
)
EffectBetter = TypeAliasType(
    "EffectBetter", Annotated[plan_effects.Better, Field(description="What is better of an effect.")]
)
RimOrigin = TypeAliasType(
    "RimOrigin",
    Annotated[
        plan_rims.RimOrigin,
        Field(description="given: by the caller; present: the one on the axle; found: one that does, to be bought."),
    ],
)
Season = TypeAliasType("Season", Annotated[case.Season, Field(description="A season of tyres.")])


DetailName = Literal["short", "standard", "full"]
Detail = TypeAliasType(
    "Detail",
    Annotated[
        DetailName,
        Field(
            description="How much is answered. short: verdict, summary, what is not met, the job card, key numbers; "
            "standard: every finding and the numbers of both axles; full: every sentence, number and source."
        ),
    ],
)


LanguageCode = TypeAliasType("LanguageCode", Annotated[speech.Language, Field(description="A language by ISO 639-1.")])
UnitSystem = TypeAliasType(
    "UnitSystem",
    Annotated[speech.Units, Field(description="metric: mm, kPa, kg, km/h; imperial: in, psi, lb, mph.")],
)


class _Packs:
    """Names the packs in the schema, when it is asked for and not on import."""

    @staticmethod
    def __get_pydantic_json_schema__(core: Any, handler: GetJsonSchemaHandler) -> dict[str, Any]:  # noqa: ANN401 - pydantic's
        """Return the schema with the ids of the packs."""
        return handler(core) | {"enum": list(pack_ids())}


RulePackId = TypeAliasType(
    "RulePackId",
    Annotated[str, readable(pack_named), _Packs(), Field(description="Id of a rule pack; see /v1/rule-packs.")],
)
