"""What differs between two OpenAPI documents for a caller, and which version that asks for.

The rule is Semantic Versioning 2.0.0: a break asks for a new major version, an addition for a new minor one; while the
major version is 0 (item 4), a break asks for a new minor version and an addition for a new patch.
"""

from collections.abc import Iterator
from typing import Any, NamedTuple

# Words for people: a better one is no change of the contract.
PROSE = frozenset({"description", "summary", "title", "example", "examples", "info", "servers", "tags", "links"})
# A bound may move this way without turning away what was let in before.
WIDER = {"maximum": 1, "maxLength": 1, "maxItems": 1, "minimum": -1, "minLength": -1, "minItems": -1}

Version = tuple[int, int, int]


class Change(NamedTuple):
    """One difference: where, what, and whether a caller may break on it."""

    where: str
    what: str
    breaks: bool

    def __str__(self) -> str:
        """Return it as a line of a report."""
        return f"{'BREAK' if self.breaks else 'addition'}: {self.where}: {self.what}"


def version(document: dict[str, Any]) -> Version:
    """Return the version of a document."""
    major, minor, patch = (int(part) for part in document["info"]["version"].split("."))
    return major, minor, patch


def changes(old: Any, new: Any, where: str = "", names: bool = False) -> Iterator[Change]:
    """Yield what differs; `names` says that the keys at this place are names of fields, not words of the schema."""
    if isinstance(old, dict) and isinstance(new, dict):
        yield from _members(old, new, where, names=names)
    elif isinstance(old, list) and isinstance(new, list):
        yield from _items(old, new, where)
    elif old != new:
        wider = WIDER.get(where.rpartition("/")[2])
        breaks = wider is None or (new - old) * wider < 0
        yield Change(where, f"{old!r} became {new!r}", breaks)


def _members(old: dict[str, Any], new: dict[str, Any], where: str, *, names: bool) -> Iterator[Change]:
    for key in old.keys() | new.keys():
        if key in PROSE and not names:
            continue
        inner = f"{where}/{key}"
        if key not in new:
            yield Change(inner, "is gone", breaks=True)
        elif key not in old:
            yield Change(inner, "is new", breaks=key in WIDER or key in ("pattern", "enum", "required"))
        else:
            yield from changes(old[key], new[key], inner, names=key == "properties")


def _items(old: list[Any], new: list[Any], where: str) -> Iterator[Change]:
    last = where.rpartition("/")[2]
    if any(isinstance(item, dict) for item in old + new):
        old_named, new_named = (dict(map(_named, items)) for items in (old, new))
        for name in old_named.keys() | new_named.keys():
            inner = f"{where}/{name}"
            if name not in new_named:
                yield Change(inner, "is gone", breaks=True)
            elif name not in old_named:
                yield Change(inner, "is new", breaks=bool(new_named[name].get("required")))
            else:
                yield from changes(old_named[name], new_named[name], inner)
        return
    for item in old:
        if item not in new:
            yield Change(where, f"{item!r} is gone", breaks=True)
    for item in new:
        if item not in old:
            yield Change(where, f"{item!r} is new", breaks=last == "required")


def _named(item: dict[str, Any]) -> tuple[str, dict[str, Any]]:
    """Return an item of a list with the name that it keeps: a parameter's, else all of it."""
    return (item["name"], item) if "name" in item else (repr(sorted(item.items())), item)


def least_version(released: Version, found: list[Change]) -> Version:
    """Return the lowest version that may follow the released one with these changes."""
    major, minor, patch = released
    if not found:
        return released
    breaks = any(change.breaks for change in found)
    if major == 0:
        return (0, minor + 1, 0) if breaks else (0, minor, patch + 1)
    return (major + 1, 0, 0) if breaks else (major, minor + 1, 0)
