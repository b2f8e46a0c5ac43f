"""In which language and units a caller is answered, and an answer's sentences said in them.

`language` and `units` of the body come first, then the header `Accept-Language` (RFC 9110, section 12.5.4); a language
that the service does not speak is answered in English.
"""

from __future__ import annotations

from typing import Any, Final, get_args

from starlette.types import Scope

from service.api.transport.accept import quality
from service.core.saying import Amount, Said
from service.locales.speech import ENGLISH, LANGUAGES, Language, Speech, Units, speech

SPEECH: Final = "speech"
"""Where a request keeps how its caller is answered."""
# A header longer than this names no language that anybody reads.
_LONGEST_HEADER: Final = 400
_UNITS: Final[tuple[Units, ...]] = get_args(Units)


def speech_of(scope: Scope) -> Speech:
    """Return how the caller of this request is answered."""
    found: Speech = scope.get(SPEECH, ENGLISH)
    return found


def speech_for(header: bytes) -> Speech:
    """Return how a caller with this `Accept-Language` is answered where the body says nothing else."""
    return speech(preferred_language(header.decode("latin-1"))) if header else ENGLISH


def heed_body(scope: Scope, value: object) -> None:
    """Take language and units from a body that was read, be it valid or not; what is no word of ours is passed over."""
    if not isinstance(value, dict):
        return
    language, units = value.get("language"), value.get("units")
    said = speech_of(scope)
    if language in LANGUAGES or units in _UNITS:
        scope[SPEECH] = speech(
            language if language in LANGUAGES else said.language, units if units in _UNITS else said.units
        )


def language_headers(scope: Scope, present: frozenset[bytes] | set[bytes]) -> list[tuple[bytes, bytes]]:
    """Return the headers by which a cache and a reader know the language; `present` names those that are there."""
    found = [(b"content-language", speech_of(scope).language.encode("ascii"))]
    return found if b"vary" in present else [*found, (b"vary", b"Accept-Language")]


def preferred_language(header: str) -> Language:
    """Return the language of ours that the header prefers; English where it names none."""
    best: Language = "en"
    weight = 0.0
    for part in header[:_LONGEST_HEADER].split(","):
        name, *parameters = (piece.strip().lower() for piece in part.split(";"))
        asked = quality(parameters)
        for language in LANGUAGES:
            if name.partition("-")[0] == language and asked > weight:
                best, weight = language, asked
    return best


def spoken(answer: Any, said: Speech) -> Any:  # noqa: ANN401 - any value of JSON
    """Return the answer with every sentence of the house in the caller's language; the caller's own texts stay."""
    if said.is_plain:
        return answer
    if isinstance(answer, (Said, Amount)):
        return said.say(answer)
    if isinstance(answer, dict):
        return {name: spoken(each, said) for name, each in answer.items()}
    if isinstance(answer, (list, tuple)):
        return [spoken(each, said) for each in answer]
    return answer
