"""Loaded packs as JSON texts, so that a change of law is a visible difference.

Render anew after a change of law: python -m tests.unit.rules.rendering
"""

import dataclasses
import json
from pathlib import Path

from service.rules.limits import Limit
from service.rules.pack import RulePack
from service.rules.reader import default_packs

GOLDEN = Path(__file__).parent / "golden"

# A rendering tells first what a thing says, then where it comes from; the classes have it the other way round.
LAST = [
    "article",
    "source",
    "status",
    "checked",
    "basis",
    "pack",
    "divisor",
    "stand_in",
    "valid_from",
    "valid_to",
    "note",
]
# The status of a limit stands in its basis.
OF_A_LIMIT = ["value", "unit", "basis", "article", "source", "checked", "note"]


def render(pack: RulePack) -> str:
    """Return everything a pack says, one key a line; of the limits only those that it does not inherit as they are."""
    plain = _plain(pack)
    for parent in pack.inherits:
        inherited = _plain(default_packs()[parent].limits)
        plain["limits"] = {name: limit for name, limit in plain["limits"].items() if limit != inherited[name]}
    return json.dumps(plain, ensure_ascii=False, indent=1) + "\n"


def _plain(value):
    if dataclasses.is_dataclass(value):
        return {name: _plain(getattr(value, name)) for name in _names(value)}
    if hasattr(value, "_asdict"):
        return {key: _plain(item) for key, item in value._asdict().items()}
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value


def _names(value):
    if isinstance(value, Limit):
        return OF_A_LIMIT
    names = [field.name for field in dataclasses.fields(value)]
    return sorted(names, key=lambda name: LAST.index(name) if name in LAST else -1)


if __name__ == "__main__":
    for name, pack in default_packs().items():
        (GOLDEN / f"{name}.json").write_text(render(pack), encoding="utf-8")
