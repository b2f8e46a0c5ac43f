"""What each axle asks of a tyre and of a rim, as `rims` and `search` tell it."""

from __future__ import annotations

from service.api.schemas.base import CODE, AnswerPart, maybe, number, part, text, whole
from service.api.schemas.vocabulary import Where

MAX_QUESTIONS = 60


class SizeSpan(AnswerPart):
    """From where to where a size does, both ends included."""

    at_least: float = number("Least size; absent where nothing bounds it", "mm", (0.0, 2000.0), 620.0, None)
    at_most: float = number("Greatest size; absent where nothing bounds it", "mm", (0.0, 2000.0), 640.0, None)


class SizeWindow(AnswerPart):
    """The sizes that do."""

    suitable: SizeSpan = part("Those that are suitable; absent where none is.", default=None)
    with_conditions: SizeSpan = part(
        "Those that are suitable or suitable with conditions; absent where none is.", default=None
    )


class SizeBound(SizeWindow):
    """What one question asks of a size."""

    code: str = text("Which question; a stable code.", 60, "diameter.axle_ratio", CODE)
    axle: Where = part("The axle it concerns, or the vehicle.", "vehicle")
    text: str = text("What it is about, in words.", 200, "front against rear circumference")


class SizeNeed(SizeWindow):
    """What an axle asks of a size of its tyres, the rest of the vehicle staying as it is."""

    by: list[SizeBound] = part("What each question by itself asks, where it bounds an end.", max_length=MAX_QUESTIONS)


class RimNeeds(AnswerPart):
    """What an axle asks of a rim; absent where it is not known."""

    min_diameter_in: float = maybe("Least diameter code that clears the brake", "1", 17.0)
    bolt_circle: str = text("Bolt circle.", 20, "5x112", default=None)
    centre_bore_mm: float = maybe("Centre bore; a larger one needs spigot rings", "mm", 66.6)
    load_rating_kg: float = maybe("Least load rating", "kg", 480.0)


class AxleNeeds(AnswerPart):
    """What an axle asks of its tyres and rims; absent where no symbol or index is enough, or where it is not known."""

    load_index: int = whole(
        "Least load index, at the slowest symbol; for twin wheels the single index that usually stands before the twin "
        "one, two above it",
        "1",
        (0, 279),
        93,
        None,
    )
    load_index_twin: int = whole("Least load index in twin mounting; with twin wheels only", "1", (0, 279), 105, None)
    speed_symbol: str = text("Slowest speed symbol.", 4, "V", r"^[A-Z][1-8]?$", default=None)
    winter_floor_kmh: float = maybe("Least speed that a winter tyre must be marked for here", "km/h", 160.0)
    winter_speed_symbol: str = text("The slowest symbol for it.", 4, "Q", r"^[A-Z][1-8]?$", default=None)
    overall_diameter_mm: SizeNeed = part(
        "Overall diameters, in whole millimetres: by the speedometer, the law, the arch and the other axle.",
        default=None,
    )
    nominal_width_mm: SizeNeed = part(
        "Nominal widths, of tyres of the present aspect ratio on the present rim: by the room and by the rim.",
        default=None,
    )
    rim: RimNeeds = part("What the axle asks of any rim.")


class BothNeeds(AnswerPart):
    """The same for both axles."""

    front: AxleNeeds = part("The front axle.")
    rear: AxleNeeds = part("The rear axle.")
