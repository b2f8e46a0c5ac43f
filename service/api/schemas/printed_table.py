"""A printed table as the service holds it."""

from __future__ import annotations

from typing import Any

from service.api.schemas.base import AnswerPart, part, text
from service.api.schemas.vocabulary import Status


def _one_cell(schema: dict[str, Any]) -> None:
    """Say of a cell in one line what it may be; a union of three branches says it worse."""
    schema["items"] = {"type": "object", "additionalProperties": {"type": ["number", "string"]}}


class TableColumn(AnswerPart):
    """One column."""

    name: str = text("The name.", 60, "load_index")
    unit: str = text("Unit; empty for a bare number or text.", 20, "kg")
    description: str = text("What it holds.", 300, "Load index.")


class Table(AnswerPart):
    """A table with its source and how far it was read."""

    name: str = text("The name.", 40, "load-index")
    title: str = text("What it holds, as a title.", 200, "Load-capacity index")
    source: str = text("What it rests on.", 400, "Load-capacity index table")
    status: Status = part("How far the source was read.", "read")
    edition: str = text("Edition of the source.", 200, "annex 4")
    note: str = text("What a user must know.", 2000, "LI 50 is from memory.")
    interpolate: bool = part("Whether the source interpolates between rows.", example=False)
    columns: list[TableColumn] = part("The columns, left to right.", max_length=20)
    rows: list[dict[str, Any]] = part(
        "The rows: column name to cell; a blank cell is absent.",
        [{"load_index": 91, "mass_kg": 615}],
        max_length=500,
        json_schema_extra=_one_cell,
    )
