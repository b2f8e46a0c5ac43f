"""What fills a sentence, as data, so that a caller can write a sentence of its own.

A `Said` may hold others: clauses, sentences behind one another. Unfolded, it is one template and what is put into it
in the end: amounts, and texts that no language changes.
"""

from __future__ import annotations

from functools import lru_cache
from string import Formatter
from typing import NamedTuple

from service.core.saying import Amount, Said, capitalised

# What `joined` calls its parts; a caller need not know in how many parts a sentence was made.
_PART = "part"
# What a part is called that is a plain text.
_PLAIN = "text"
_FORMATTER = Formatter()


class Unfolded(NamedTuple):
    """A sentence as one English template, as `str.format` reads it, and what fills it, by name.

    The names hang on the template alone: one inside a clause begins with the clause's own (`approved_low`), and of two
    that would be alike the second ends in `_2`.
    """

    template: str
    parameters: dict[str, str]


def unfolded(text: str) -> Unfolded:
    """Return template and parameters of a text; one that is no `Said` is its own template."""
    parameters: dict[str, str] = {}
    return Unfolded(_unfold(text, "", parameters), parameters)


def _unfold(text: str, path: str, parameters: dict[str, str]) -> str:
    """Return the template of a text, and put what fills it among the parameters."""
    if not isinstance(text, Said) or not text.parameters:
        return _escaped(text)
    pieces: list[str] = []
    filled: dict[str, str] = {}
    for literal, name, is_part in _steps(text.template):
        pieces.append(literal)
        if name is None:
            continue
        if name not in filled:
            # What stands inside a clause begins with the clause's own name; a part of joined sentences adds none.
            inner = path if is_part else f"{path}_{name}" if path else name
            filled[name] = _filling(text.parameters[name], inner, parameters)
        pieces.append(filled[name])
    template = "".join(pieces)
    return _begun(template, parameters) if text.capital else template


def _filling(value: str, path: str, parameters: dict[str, str]) -> str:
    """Return what stands in a template for one of its parameters."""
    if isinstance(value, Said):
        return _unfold(value, path, parameters)
    plain = name = path or _PLAIN
    count = 1
    while name in parameters:
        count += 1
        name = f"{plain}_{count}"
    parameters[name] = value
    return f"{{{name}}}"


def _begun(template: str, parameters: dict[str, str]) -> str:
    """Return the template as the beginning of a sentence; where a plain text begins it, that gets the capital."""
    first = next((name for name in parameters if template.startswith(f"{{{name}}}")), None)
    if first is not None and not isinstance(parameters[first], Amount):
        parameters[first] = capitalised(parameters[first])
    return capitalised(template)


def _escaped(text: str) -> str:
    return text.replace("{", "{{").replace("}", "}}")


@lru_cache(maxsize=2048)
def _steps(template: str) -> tuple[tuple[str, str | None, bool], ...]:
    """Return the texts of a template, escaped again, each with the name behind it and whether that is a mere part."""
    return tuple(
        (_escaped(literal), name, name is not None and name.removeprefix(_PART).isdigit())
        for literal, name, _, _ in _FORMATTER.parse(template)
    )
