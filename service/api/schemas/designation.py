"""What a designation says, part by part."""

from __future__ import annotations

from typing import Literal

from service.api.schemas.base import AnswerPart, number, part, text, whole
from service.designation.rim import Flange, Hump
from service.designation.tyre_size import Construction, System
from service.designation.tyre_words import LoadVersion, Tube


class ServicePoint(AnswerPart):
    """Load index and speed symbol."""

    load_index: int = whole("Load index, single", "1", (0, 279), 115)
    load_index_twin: int = whole("Load index in twin mounting; absent when none is stated", "1", (0, 279), 113, None)
    speed_symbol: str = text("Speed symbol.", 2, "N")


class TyreParts(AnswerPart):
    """A tyre designation taken apart; a part that is absent is not stated."""

    canonical: str = text("The canonical spelling.", 100, "225/70 R15C 112/110R (115N)")
    system: System = part("The system of designation.", "commercial")
    section_width_mm: float = number("Nominal section width", "mm", (0.0, 1000.0), 225.0)
    aspect_ratio: float = number("Aspect ratio", "%", (0.0, 120.0), 70.0, None)
    construction: Construction = part("How the carcass is built.", "radial")
    structure_assumed: bool = part(
        "Whether the construction was taken from a dash, an x or a missing letter.", example=False
    )
    rim_code: float = number("Nominal rim diameter code", "in", (0.0, 60.0), 15.0)
    overall_diameter_in: float = number("Overall diameter of a flotation size", "in", (0.0, 80.0), 31.0, None)
    z_rated: bool = part("Whether ZR is stated: above 240 km/h.", example=False)
    run_flat: bool = part("Whether run-flat is stated.", example=False)
    commercial: Literal["C", "CP", "LT"] = part("The commercial marking.", "C", default=None)
    load_index: int = whole("Load index, single", "1", (0, 279), 112, None)
    load_index_twin: int = whole("Load index in twin mounting", "1", (0, 279), 110, None)
    speed_symbol: str = text("Speed symbol.", 2, "R", default=None)
    bracketed: bool = part("Whether the service description stands in brackets: above 300 km/h.", example=False)
    additional: ServicePoint = part("The additional service description.", default=None)
    load_version: LoadVersion = part("The load version.", "standard")
    load_range: str = text("Load range letter.", 2, "E", default=None)
    section_width_in: float = number("Nominal width of a size in inches", "in", (0.0, 30.0), 10.5, None)
    speed_letter: str = text("Speed letter that stands inside the size.", 2, "H", default=None)
    ply_rating: int = whole("Ply rating", "1", (0, 40), 8, None)
    tube: Tube = part("Whether it runs without a tube or with one.", "tubeless", default=None)
    unread: list[str] = part("Words that are not known and change nothing.", ["Meadow"], max_length=50)
    markings: list[str] = part("Further markings.", ["M+S", "3PMSF"], max_length=20)
    assumed: list[str] = part(
        "What was assumed, in sentences.", ["No load version is marked: standard load is assumed."], max_length=20
    )


class RimParts(AnswerPart):
    """A rim designation taken apart; a part that is absent is not stated."""

    canonical: str = text("The canonical spelling.", 100, "8J x 18 H2 ET45")
    width_in: float = number("Width between the flanges", "in", (0.0, 30.0), 8.0)
    diameter_code: float = number("Nominal diameter code", "in", (0.0, 60.0), 18.0)
    flange: Flange = part("Shape of the flange.", "J", default=None)
    hump: Hump = part("Hump on the bead seat.", "H2", default=None)
    one_piece: bool = part("Whether it is a one-piece drop centre (x), not of several pieces (-).", example=True)
    offset_mm: float = number(
        "Offset (ET); positive: mounting face outboard of the middle", "mm", (-200.0, 200.0), 45.0, None
    )
    assumed: list[str] = part("What was assumed, in sentences.", ["No flange is marked."], max_length=20)
