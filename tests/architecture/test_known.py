"""Whether a quantity is known is asked by `known` and `unknown`, never by comparing it with itself."""

import ast
from pathlib import Path

import pytest

SERVICE = Path(__file__).parents[2] / "service"


def self_compared(text: str) -> list[int]:
    """Return the lines on which something is compared with itself."""
    return [
        node.lineno
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.Compare)
        for left, right in zip([node.left, *node.comparators], node.comparators, strict=False)
        if ast.dump(left) == ast.dump(right)
    ]


@pytest.mark.parametrize("text", ["x != x", "0 < a.b == a.b", "f(x)[1] == f(x)[1]"])
def test_a_comparison_with_itself_is_found(text):
    assert self_compared(text) == [1]


def test_nothing_is_compared_with_itself():
    found = {str(path): self_compared(path.read_text(encoding="utf-8")) for path in SERVICE.rglob("*.py")}
    assert {path: lines for path, lines in found.items() if lines} == {}
