"""The words of a fault in a field, in place of the validation library's: what came, what is expected, an example.

Numbers are those that the field takes, in the field's own unit: other units for people do not change them.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from pydantic.fields import FieldInfo

from service.api.schemas.base import PRINTABLE
from service.core.saying import Amount, Said, say, sentences

# Compared with the known names only up to here: the comparison is quadratic in the length.
MAX_COMPARED = 40
MOST_DECIMALS = 6

# What came, the context of the fault, the field if it is known.
Words = Callable[[Any, Mapping[str, Any], FieldInfo | None], Said]

# What JSON takes for a number, but for the quotation marks around it and perhaps the comma in it.
_QUOTED_NUMBER = re.compile(r"-?(?:0|[1-9][0-9]{0,8})(?:[.,][0-9]{1,9})?", re.ASCII)
_CHOICE = re.compile(r"'([^']*)'")
_SHOWN_PLAINLY = (1e-6, 1e15)


def fault_words(kind: str, given: object, context: Mapping[str, Any], field: FieldInfo | None) -> Said:
    """Return the words for a kind of fault of pydantic's; `given` is what came."""
    words: Words = _WORDS.get(kind, _other)
    said = words(given, {**context, "kind": kind}, field)
    return sentences(said, say("Leave out what is not known; null is no value.")) if given is None else said


def required(where: str, name: str, field: FieldInfo | None) -> Said:
    """Return that something is missing in the body, the query or the path; an empty name stands for the body."""
    if not name:
        return say("A body is required.")
    if where == "query":
        return say('The query parameter "{name}" is required.', name=name)
    return sentences(say('The field "{name}" is required.', name=name), _example(field))


def unknown_field(name: str, known: Sequence[str]) -> Said:
    """Return that there is no such field, and the nearest one or all that are known."""
    shown, nearest = _cut(name), _nearest(name, known)
    if nearest:
        return say('There is no field "{name}" here; did you mean "{nearest}"?', name=shown, nearest=nearest)
    if not known:
        return say('There is no field "{name}" here.', name=shown)
    return say('There is no field "{name}" here. Known: {names}.', name=shown, names=", ".join(known))


def unknown_parameter(name: str, known: Sequence[str]) -> Said:
    """Return that there is no such query parameter, and the nearest one or all that are known."""
    shown, nearest = _cut(name), _nearest(name, known)
    if nearest:
        return say('There is no query parameter "{name}" here; did you mean "{nearest}"?', name=shown, nearest=nearest)
    if not known:
        return say('There is no query parameter "{name}" here.', name=shown)
    return say('There is no query parameter "{name}" here. Known: {names}.', name=shown, names=", ".join(known))


def _nearest(name: str, known: Sequence[str]) -> str:
    return next(iter(difflib.get_close_matches(name[:MAX_COMPARED].lower(), known, n=1, cutoff=0.6)), "")


def _cut(text: str) -> str:
    return text if len(text) <= MAX_COMPARED else f"{text[:MAX_COMPARED]}…"


def _came(given: object) -> str:
    """Return what came, as it stands in JSON or by its kind."""
    if given is None or isinstance(given, bool):
        return {None: "null", True: "true", False: "false"}[given]
    if isinstance(given, int | float):
        return _plainly(given)
    if isinstance(given, str):
        return say('the text "{text}"', text=_cut(given))
    return say("a list") if isinstance(given, list | tuple) else say("an object")


def _plainly(number: float) -> str:
    """Return a number as a sentence shows it; a very large or small one as a computer writes it."""
    least, most = _SHOWN_PLAINLY
    return Amount(number, "", MOST_DECIMALS) if number == 0 or least <= abs(number) < most else f"{number:.6g}"


def _in_unit(number: float, unit: str) -> str:
    """Return a number with the unit of its field, which other units for people do not change."""
    if unit == "1":
        return _plainly(number)
    # Say: a number with its unit, such as 250 kPa.
    return say("{number} {unit}", number=_plainly(number), unit=say("inches") if unit == "in" else unit)


def _example(field: FieldInfo | None) -> str:
    example = field.examples[0] if field is not None and field.examples else None
    if isinstance(example, int | float) and not isinstance(example, bool):
        return say("Example: {example}.", example=_plainly(example))
    return say("Example: {example}.", example=f'"{example}"') if isinstance(example, str) else ""


def _object(given: object, _: Mapping[str, Any], __: FieldInfo | None) -> Said:
    # Say: {came} is a thing with its article ("a list", "an object"), a number, true, false or null; so below.
    return say("An object is expected here; {came} came.", came=_came(given))


def _list(given: object, _: Mapping[str, Any], __: FieldInfo | None) -> Said:
    return say("A list in square brackets is expected here; {came} came.", came=_came(given))


def _text(given: object, _: Mapping[str, Any], field: FieldInfo | None) -> Said:
    return sentences(
        say("A text in quotation marks is expected here; {came} came.", came=_came(given)), _example(field)
    )


def _flag(given: object, _: Mapping[str, Any], __: FieldInfo | None) -> Said:
    return say("true or false is expected here, without quotation marks; {came} came.", came=_came(given))


def _number(given: object, _: Mapping[str, Any], field: FieldInfo | None) -> Said:
    if not isinstance(given, str):
        return sentences(say("A number is expected here; {came} came.", came=_came(given)), _example(field))
    if _QUOTED_NUMBER.fullmatch(given):
        right = given.replace(",", ".")
        return say("A number is expected here: write {number}, without quotation marks.", number=right)
    return sentences(say("A number is expected here, without quotation marks and unit."), _example(field))


def _whole(given: object, _: Mapping[str, Any], field: FieldInfo | None) -> Said:
    if not isinstance(given, str):
        return sentences(say("A whole number is expected here; {came} came.", came=_came(given)), _example(field))
    if _QUOTED_NUMBER.fullmatch(given) and given.lstrip("-").isdigit():
        return say("A whole number is expected here: write {number}, without quotation marks.", number=given)
    return sentences(say("A whole number is expected here, without quotation marks and unit."), _example(field))


def _finite(_: object, __: Mapping[str, Any], field: FieldInfo | None) -> Said:
    return sentences(say("A finite number is expected here."), _example(field))


def _range(given: object, context: Mapping[str, Any], field: FieldInfo | None) -> Said:
    """Return the whole range of a number with its unit, or the end that was passed where the field is not known."""
    rules, extra = ([], None) if field is None else (field.metadata, field.json_schema_extra)
    ends = {name: getattr(rule, name) for rule in rules for name in ("ge", "le") if hasattr(rule, name)}
    ends |= {name: end for name, end in context.items() if name in ("ge", "le")}
    unit = str(extra.get("x-unit", "1")) if isinstance(extra, dict) else "1"
    came = _came(given)
    if "ge" not in ends:
        said = say(
            "A number of at most {most} is expected here; {came} came.", most=_in_unit(ends["le"], unit), came=came
        )
    elif "le" not in ends:
        said = say(
            "A number of at least {least} is expected here; {came} came.", least=_in_unit(ends["ge"], unit), came=came
        )
    else:
        said = say(
            "A number from {least} to {most} is expected here; {came} came.",
            least=_plainly(ends["ge"]),
            most=_in_unit(ends["le"], unit),
            came=came,
        )
    return sentences(said, _example(field))


def _choice(given: object, context: Mapping[str, Any], _: FieldInfo | None) -> Said:
    choices = _CHOICE.findall(context["expected"]) or [context["expected"]]
    quoted = ", ".join(f'"{each}"' for each in choices)
    if len(choices) == 1:
        return say("{choice} is expected here; {came} came.", choice=quoted, came=_came(given))
    nearest = _nearest(given, choices) if isinstance(given, str) else ""
    if nearest:
        return say('One of {choices} is expected here; did you mean "{nearest}"?', choices=quoted, nearest=nearest)
    return say("One of {choices} is expected here; {came} came.", choices=quoted, came=_came(given))


def _form(given: object, context: Mapping[str, Any], field: FieldInfo | None) -> Said:
    """Return what is wrong with a text that has not the form of its field; the pattern itself would say less."""
    if context["pattern"] == PRINTABLE:
        return say("The text has a control character or another one that cannot be printed.")
    came = _cut(str(given))
    if field is None or not field.examples:
        return say('The text "{text}" does not have the form that is expected here.', text=came)
    return say(
        'The text "{text}" does not have the form that is expected here, such as "{example}".',
        text=came,
        example=str(field.examples[0]),
    )


def _text_too_long(given: str, context: Mapping[str, Any], _: FieldInfo | None) -> Said:
    return say(
        "A text of at most {most} characters is expected here; {count} came.",
        most=Amount(context["max_length"]),
        count=Amount(len(given)),
    )


def _text_too_short(given: str, context: Mapping[str, Any], field: FieldInfo | None) -> Said:
    if not given:
        return sentences(say("The text is empty; one that says something is expected here."), _example(field))
    return say(
        "A text of at least {least} characters is expected here; {count} came.",
        least=Amount(context["min_length"]),
        count=Amount(len(given)),
    )


def _list_too_long(given: Sequence[object], context: Mapping[str, Any], _: FieldInfo | None) -> Said:
    return say(
        "A list of at most {most} entries is expected here; {count} came.",
        most=Amount(context["max_length"]),
        count=Amount(len(given)),
    )


def _list_too_short(given: Sequence[object], context: Mapping[str, Any], _: FieldInfo | None) -> Said:
    if not given:
        return say("The list is empty; one entry or more is expected here.")
    return say(
        "A list of at least {least} entries is expected here; {count} came.",
        least=Amount(context["min_length"]),
        count=Amount(len(given)),
    )


def _other(_: object, context: Mapping[str, Any], field: FieldInfo | None) -> Said:
    return sentences(say("This value cannot stand here ({kind}).", kind=context["kind"]), _example(field))


_WORDS: Mapping[str, Words] = {
    **dict.fromkeys(("model_type", "model_attributes_type", "dict_type"), _object),
    **dict.fromkeys(("list_type", "tuple_type"), _list),
    "string_type": _text,
    **dict.fromkeys(("bool_type", "bool_parsing"), _flag),
    **dict.fromkeys(("float_type", "float_parsing"), _number),
    **dict.fromkeys(("int_type", "int_parsing", "int_from_float"), _whole),
    "finite_number": _finite,
    **dict.fromkeys(("greater_than_equal", "less_than_equal"), _range),
    **dict.fromkeys(("literal_error", "enum"), _choice),
    "string_pattern_mismatch": _form,
    "string_too_long": _text_too_long,
    "string_too_short": _text_too_short,
    "too_long": _list_too_long,
    "too_short": _list_too_short,
}
