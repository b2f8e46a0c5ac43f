"""An estimate on the wire: the number and the band in which the true one is expected."""

from __future__ import annotations

from service.api.schemas.base import ANY, AnswerPart, number


class Estimate(AnswerPart):
    """An estimated number with the band in which the true one is expected; the unit is in the field's name."""

    value: float = number("The estimate", "unit in the field's name", ANY, 7.1)
    low: float = number("Lower end of its band", "unit in the field's name", ANY, 3.4)
    high: float = number("Upper end of its band", "unit in the field's name", ANY, 12.9)


class Band(AnswerPart):
    """Between which two values the true one is expected; the unit is in the field's name."""

    low: float = number("Lower end", "unit in the field's name", ANY, 1947.5)
    high: float = number("Upper end", "unit in the field's name", ANY, 1986.9)
