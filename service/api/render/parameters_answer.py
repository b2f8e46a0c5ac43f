"""What fills a sentence as plain data, for callers who write sentences of their own."""

from __future__ import annotations

from math import isfinite

from service.api.render.numbers import Json
from service.core.saying import Amount
from service.core.unfolding import unfolded

# As finely as the other numbers of an answer are shown; what a sentence shows finer stays finer.
_DIGITS = 2


def parameters(message: str, *, whole: bool) -> Json:
    """Return what fills a sentence, by name; `whole` adds its English template.

    The texts are sayings still, so that they come in the caller's language and units.
    """
    template, filled = unfolded(message)
    shown: Json = {"template": template} if whole else {}
    if filled:
        shown["parameters"] = {name: _parameter(each) for name, each in filled.items()}
    return shown


def _parameter(text: str) -> Json:
    if not isinstance(text, Amount) or not isfinite(text.value):
        return {"text": text}
    shown: Json = {"text": text, "value": round(text.value, max(_DIGITS, text.digits)) + 0.0}
    if text.unit:
        shown["unit"] = text.unit
    return shown
