"""One name, one meaning: what is found by its name is found once."""

import ast
from collections import defaultdict
from pathlib import Path

SERVICE = Path(__file__).parents[2] / "service"
API = SERVICE / "api"
FILES = sorted(path.relative_to(SERVICE) for path in SERVICE.rglob("*.py") if path.name != "__init__.py")
# One quantity may have a printed table, a formula and a question: these rooms name their files after it.
ROOMS_OF_A_QUANTITY = {"standards", "physics", "assessment/checks"}


def _classes(path: Path) -> list[str]:
    return [
        node.name for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.ClassDef)
    ]


def test_a_file_name_stands_once_but_for_the_table_the_formula_and_the_question_of_a_quantity():
    rooms = defaultdict(set)
    for path in FILES:
        rooms[path.name].add(path.parent.as_posix())
    assert {name: found for name, found in rooms.items() if len(found) > 1 and not found <= ROOMS_OF_A_QUANTITY} == {}


def test_a_class_name_stands_once_in_api():
    places = defaultdict(list)
    for path in sorted(API.rglob("*.py")):
        for name in _classes(path):
            places[name].append(path.name)
    assert {name: found for name, found in places.items() if len(found) > 1} == {}


def test_only_a_wire_model_bears_the_name_of_what_it_shows():
    below = {name for path in SERVICE.rglob("*.py") if not path.is_relative_to(API) for name in _classes(path)}
    above = {name for path in API.rglob("*.py") if path.parent.name != "schemas" for name in _classes(path)}
    assert above & below == set()
