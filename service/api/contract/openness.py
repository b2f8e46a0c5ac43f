"""Makes answers open in the document: a later version may add members and words without breaking a client.

What a caller sends stays closed. A fixed word of an answer is documented as a text with its known values, since a
generated client would refuse a value that its copy of an enum does not have.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from service.api.render.numbers import Json

_PREFIX: Final = "#/components/schemas/"
_LONGEST_WORD: Final = 100
# What the choices of a parameter are called where its own name would not tell.
_PARAMETERS: Final = {"name": "table_name", "axles": "axle_choice", "view": "drawing_view", "pack_id": "rule_pack_id"}


def open_answers(document: Json) -> None:
    """Open every model and word that only answers use, and drop the models that nothing names any more."""
    schemas: Json = document["components"]["schemas"]
    sent = _reached([path.get("requestBody", {}) for path in _operations(document)], schemas)
    for name, schema in schemas.items():
        if name in sent or "enum" in schema:
            continue
        if schema.get("additionalProperties") is False:
            del schema["additionalProperties"]
        for member in schema.get("properties", {}).values():
            _open_word(member, schemas)
    named = _reached([document["paths"], document["components"].get("responses", {})], schemas)
    for name in set(schemas) - named:
        del schemas[name]


def name_words(document: Json) -> None:
    """Give every choice of words that a caller sends a name of its own, so that a generated client has it once."""
    schemas: Json = document["components"]["schemas"]
    for schema in list(schemas.values()):
        for name, member in schema.get("properties", {}).items():
            _name(name, member, schemas)
    for operation in _operations(document):
        for parameter in operation.get("parameters", []):
            _name(_PARAMETERS.get(parameter["name"], parameter["name"]), parameter["schema"], schemas)


def without_titles(part: object) -> None:
    """Drop the titles that repeat a member's name."""
    if isinstance(part, dict):
        for name, schema in part.items():
            if name in ("properties", "$defs"):
                for each in schema.values():
                    each.pop("title", None)
            without_titles(schema)
    elif isinstance(part, list):
        for each in part:
            without_titles(each)


def _name(name: str, member: Json, schemas: Json) -> None:
    if "enum" not in member:
        return
    called = "".join(word.capitalize() for word in name.split("_"))
    named = {"type": "string", "enum": member["enum"], "description": member.get("description", "A choice of words.")}
    if schemas.setdefault(called, named)["enum"] != member["enum"]:
        msg = f"{called} would name two choices of words"
        raise ValueError(msg)
    for key in ("enum", "type", "const"):
        member.pop(key, None)
    member["$ref"] = f"{_PREFIX}{called}"


def _open_word(member: Json, schemas: Json) -> None:
    if member.get("type") == "array":
        _open_word(member["items"], schemas)
        return
    words = schemas.get(str(member.get("$ref", "")).removeprefix(_PREFIX), member)
    if "enum" not in words:
        return
    known = ", ".join(str(each) for each in words["enum"])
    told = [member.get("description"), words.get("description") if words is not member else None]
    for name in ("$ref", "enum", "const"):
        member.pop(name, None)
    member["type"], member["maxLength"] = "string", _LONGEST_WORD
    member["description"] = " ".join([*(each for each in told if each), f"Known values: {known}; more may come."])


def _operations(document: Json) -> Iterator[Json]:
    for methods in document["paths"].values():
        yield from methods.values()


def _reached(part: object, schemas: Json) -> set[str]:
    """Return the names of all models that a part of the document leads to."""
    found: set[str] = set()
    waiting = [part]
    while waiting:
        each = waiting.pop()
        if isinstance(each, list):
            waiting.extend(each)
        elif isinstance(each, dict):
            waiting.extend(each.values())
            name = str(each.get("$ref", "")).removeprefix(_PREFIX)
            if name in schemas and name not in found:
                found.add(name)
                waiting.append(schemas[name])
    return found
