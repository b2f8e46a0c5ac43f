"""The fixed words of the contract, each a named choice in the document, so that a generated client has it once."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import AfterValidator, Field, GetJsonSchemaHandler
from typing_extensions import TypeAliasType

from service.api.schemas.base import as_fault
from service.core.errors import DomainError
from service.rules.reader import pack_ids, pack_named

Verdict = TypeAliasType(
    "Verdict",
    Annotated[
        Literal["suitable", "suitable_with_conditions", "undetermined", "unsuitable"],
        Field(
            description="Any finding not_met: unsuitable; else a required question not_assessed: undetermined; else "
            "any advisory: suitable_with_conditions; else suitable."
        ),
    ],
)
Outcome = TypeAliasType(
    "Outcome",
    Annotated[Literal["met", "advisory", "not_met", "not_assessed"], Field(description="How a question came out.")],
)
Where = TypeAliasType(
    "Where", Annotated[Literal["front", "rear", "vehicle"], Field(description="An axle, or the vehicle as a whole.")]
)
Status = TypeAliasType(
    "Status",
    Annotated[
        Literal["read", "second_hand", "memory", "derived", "own"],
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
DrivenAxle = TypeAliasType(
    "DrivenAxle", Annotated[Literal["front", "rear", "all"], Field(description="Which axle is driven.")]
)
RankBy = TypeAliasType(
    "RankBy",
    Annotated[
        Literal["closest_to_present", "dry_grip", "wet_margin", "load_margin", "balance"],
        Field(
            description="What is ranked by, after the verdict: least deviation of overall diameter; greatest dry grip, "
            "wet margin or load margin; least change of balance."
        ),
    ],
)
Trade = TypeAliasType(
    "Trade",
    Annotated[
        Literal["dry_grip", "wet_margin", "load_margin", "balance", "diameter", "room"],
        Field(description="What is better or worse than with the present fitment."),
    ],
)
Stagger = TypeAliasType(
    "Stagger",
    Annotated[
        Literal["keep", "square", "any"],
        Field(
            description="keep: the rear tyre as much wider, and its rim as much larger, than the front one as now; "
            "square: the same size on both axles; any: no matter."
        ),
    ],
)
Season = TypeAliasType("Season", Annotated[Literal["summer", "winter"], Field(description="A season of tyres.")])


def _known_pack(value: str) -> str:
    try:
        pack_named(value)
    except DomainError as error:
        raise as_fault(error) from None
    return value


class _Packs:
    """Names the packs in the schema, when it is asked for and not on import."""

    @staticmethod
    def __get_pydantic_json_schema__(core: Any, handler: GetJsonSchemaHandler) -> dict[str, Any]:  # noqa: ANN401 - pydantic's
        """Return the schema with the ids of the packs."""
        return handler(core) | {"enum": list(pack_ids())}


RulePackId = TypeAliasType(
    "RulePackId",
    Annotated[str, AfterValidator(_known_pack), _Packs(), Field(description="Id of a rule pack; see /v1/rule-packs.")],
)
