"""A finding as it is answered: how it came out, what it rests on, what would settle it."""

from __future__ import annotations

from service.api.schemas.base import ANY, CODE, AnswerPart, maybe, number, part
from service.api.schemas.base import text as words
from service.api.schemas.vocabulary import Outcome, Status, Where
from service.core.findings import BasisKind


class Basis(AnswerPart):
    """What a finding rests on."""

    kind: BasisKind = part("What kind of ground it is.", "regulation")
    source: str = words("Key of the document; `sources` of the answer says which it is.", 80, "UN-R30 2.31")
    status: Status = part("How far its text was really read.", "read")
    place: str = words(
        "Where it stands in the document, or what is meant; with `full` only, absent for the whole of it.",
        400,
        "the symbol must suit the maximum design speed",
        default=None,
    )


class Ground(Basis):
    """What a number of a rule pack rests on."""

    reference: str = words("Document, article and the day it was checked.", 400, "UN Regulation No. 30, para. 2.31")


class Source(AnswerPart):
    """A document that the answer rests on."""

    reference: str = words("Its title.", 400, "UN Regulation No. 30, para. 2.31, load at speed")
    status: Status = part("How far it was really read; a finding may rest on less.", "read")
    edition: str = words("Its edition; absent where none is known.", 200, "2014", default=None)
    checked: str = words(
        "The day on which it was held against the numbers; absent where it was not.", 10, "2026-11-24", default=None
    )


Sources = dict[str, Source]
CITED = {"ISO-4000-2": {"reference": "ISO 4000-2, rims", "status": "second_hand"}}


class Parameter(AnswerPart):
    """What fills one place of a sentence."""

    text: str = words("As the sentence shows it, in the caller's language and units.", 400, "1138 kg")
    value: float = number("The number behind it, in `unit`; absent where it is a text", "1", ANY, 1137.75, None)
    unit: str = words("Metric unit of `value`; absent for plain numbers and texts.", 20, "kg", default=None)


Parameters = dict[str, Parameter]
FILLED = {"carried": {"text": "1138 kg", "value": 1137.75, "unit": "kg"}}


class Remedy(AnswerPart):
    """The least change that settles a finding, in words and as data."""

    text: str = words("What to change, in words.", 400, "load index 95 or more")
    pointer: str = words(
        "RFC 6901 pointer into the request: where to change it; absent with `short`.",
        200,
        "/candidate/rear/tyre/size",
        default=None,
    )
    quantity: str = words("What has to change there; absent with `short`.", 80, "load_index", default=None)
    at_least: float = maybe("Least value that settles it", "of the quantity", 95.0)
    at_most: float = maybe("Greatest value that settles it", "of the quantity", 104.0)
    equals: str = words("The text that settles it; absent when a range does.", 80, "5x112", default=None)
    unit: str = words("Unit of the two values; absent for plain numbers.", 20, "kg", default=None)


class FindingHead(AnswerPart):
    """What any answered question says: which it is, where, how it came out, by which numbers."""

    code: str = words("Which question it answers; a stable code.", 60, "load.capacity", CODE)
    axle: Where = part("The axle it concerns, or the vehicle.", "rear")
    outcome: Outcome = part("How the question came out.", "not_met")
    measured: float = maybe("The number found", "in `unit`", 1137.8)
    limit: float = maybe("The limit it was held against", "in `unit`", 1180.0)
    unit: str = words("Unit of both; absent where there is no number.", 20, "kg", default=None)
    holds_within_tolerance: bool = part(
        "Whether it comes out so at either end of what was measured; it is told for the worse end. Absent where no "
        "stated tolerance bears on it.",
        example=False,
        default=None,
    )


class Finding(FindingHead):
    """One answered question."""

    already: bool = part(
        "Whether the present fitment has it too, and no less; of what is met with `full` only.",
        example=False,
        default=None,
    )
    decides: bool = part(
        "Only with `not_assessed`: whether the verdict waits for it; else it is open and decides nothing.",
        example=True,
        default=None,
    )
    message: str = words(
        "The answer in a sentence; of what is met with `full` only.",
        600,
        "The axle's tyres carry 1137.8 kg; the axle needs 1180 kg.",
        default=None,
    )
    parameters: Parameters = part(
        "What fills `message`, by name, for a sentence of one's own; absent where nothing does, and with `short`.",
        FILLED,
        default=None,
    )
    template: str = words(
        "English template of `message`: with `parameters` in its braces it is the sentence; with `full` only.",
        2000,
        "The axle's tyres carry {carried}; the axle needs {mass}.",
        default=None,
    )
    basis: Basis = part("What it rests on; absent with `short`, of what is met with `full` only.", default=None)
    remedy: Remedy = part("What would settle it; absent when met, and of an advisory with `short`.", default=None)
