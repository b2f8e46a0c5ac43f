"""Every number from outside carries the key of a document that is listed in service/core/sources.py."""

import ast
import csv
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from service.core.sources import SOURCES

SERVICE = Path(__file__).parents[2] / "service"
REFERENCE = re.compile(r"^\s*\.\. \[([^\]]+)\]", re.MULTILINE)
READERS = ("basis",)


def _strings(node: ast.AST | None) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value


def _keys_in_python(path: Path) -> Iterator[str]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
            yield from REFERENCE.findall(ast.get_docstring(node) or "")
        elif isinstance(node, ast.Call):
            if isinstance(node.func, ast.Name) and node.func.id in READERS and node.args:
                yield from _strings(node.args[0])
            for keyword in node.keywords:
                if keyword.arg == "source":
                    yield from _strings(keyword.value)
        elif isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name) and node.value.id == "SOURCES":
            yield from _strings(node.slice)


def _values_of_source(node: object) -> Iterator[str]:
    if isinstance(node, dict):
        for name, value in node.items():
            if name == "source" or name.endswith("_source"):
                yield str(value)
            else:
                yield from _values_of_source(value)
    elif isinstance(node, list):
        for item in node:
            yield from _values_of_source(item)


def _keys_in_toml(path: Path) -> Iterator[str]:
    yield from _values_of_source(tomllib.loads(path.read_text(encoding="utf-8")))


def _keys_in_csv(path: Path) -> Iterator[str]:
    with path.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(line for line in lines if not line.startswith("#")):
            if "source" in row:
                yield row["source"]


def _keys() -> dict[str, set[str]]:
    """Return each key that is used, with the files that use it."""
    found: dict[str, set[str]] = {}
    for suffix, keys_in in ((".py", _keys_in_python), (".toml", _keys_in_toml), (".csv", _keys_in_csv)):
        for path in sorted(SERVICE.rglob(f"*{suffix}")):
            for key in keys_in(path):
                found.setdefault(key, set()).add(str(path.relative_to(SERVICE)))
    return found


def _references() -> dict[str, str]:
    """Return the References section of each docstring that has one, under the place of the docstring."""
    found: dict[str, str] = {}
    for path in sorted(SERVICE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef | ast.FunctionDef):
                _, heading, section = (ast.get_docstring(node) or "").partition("References\n----------\n")
                if heading:
                    found[f"{path.stem}.{node.name}"] = section
    return found


USED = _keys()
REFERENCES = _references()


@pytest.mark.parametrize("key", sorted(USED))
def test_a_key_that_is_used_is_listed(key):
    assert key in SOURCES, f"used in {sorted(USED[key])}"


@pytest.mark.parametrize("key", sorted(SOURCES))
def test_a_source_that_is_listed_is_cited(key):
    assert key in USED


@pytest.mark.parametrize("place", sorted(REFERENCES))
def test_a_section_of_references_names_a_key(place):
    assert REFERENCE.search(REFERENCES[place])


@pytest.mark.parametrize("path", sorted(SERVICE.rglob("*.toml")), ids=lambda path: path.stem)
def test_every_limit_in_a_file_of_limits_names_a_source(path):
    limits = tomllib.loads(path.read_text(encoding="utf-8")).get("limits", {})
    assert [name for name, limit in limits.items() if "source" not in limit] == []
