"""The lines of the job card: what to do, its numbers, and the findings that it answers."""

from __future__ import annotations

from service.api.schemas.base import ANY, AnswerPart, number, part
from service.api.schemas.base import text as words
from service.api.schemas.finding_answer import FILLED, Parameters


class ActionNumbers(AnswerPart):
    """The numbers of one action; each is there where its action has it."""

    pressure_kpa: float = number(
        "Cold pressure to set; only with `set_pressure_...`, and absent where the tyre's maker must state it",
        "kPa",
        ANY,
        250.0,
        None,
    )
    ring_outer_mm: float = number(
        "Outer diameter of the rings, the rim's; only with `spigot_rings_...`", "mm", ANY, 72.6, None
    )
    ring_inner_mm: float = number(
        "Inner diameter of the rings, the hub's; only with `spigot_rings_...`, absent where the hub was not measured",
        "mm",
        ANY,
        66.6,
        None,
    )
    speed_kmh: float = number(
        "Speed to keep to; with `speed_label` it stands on the label", "km/h", ANY, 190.0, default=None
    )
    circumference_percent: float = number(
        "Change of the driven wheels' rolling circumference; only with `speedometer`", "%", ANY, 2.5, None
    )
    spacer_mm: float = number(
        "Thickness of the spacers to fit, 0 to take them off; only with `spacers_...`", "mm", ANY, 10.0, default=None
    )


class Action(AnswerPart):
    """One line of the job card."""

    code: str = words(
        "Which action it is; a stable code, once in an answer.", 80, "set_pressure_front", r"^[a-z0-9_]+$"
    )
    text: str = words("What to do.", 3000, "Set the front tyres to 250 kPa (2.5 bar), cold.")
    parameters: Parameters = part(
        "What fills `text`, by name, as with a finding; with `full` only, absent where nothing does.",
        FILLED,
        default=None,
    )
    template: str = words(
        "English template of `text`; with `full` only.",
        3000,
        "Set the front tyres to {kpa} ({bar}), cold.",
        default=None,
    )
    numbers: ActionNumbers = part("Its numbers; empty where it has none, absent with `short`.", default=None)
    findings: list[str] = part(
        "Codes of the findings that it answers; empty for what is done with every wheel, absent with `short`.",
        ["load.pressure"],
        default=None,
        max_length=60,
    )
