"""Ways to break a line of Python: each site is a place in a file and the text that would stand there instead."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple


class Site(NamedTuple):
    """A place that can be broken: where, what stands there and what would stand there instead."""

    path: Path
    line: int
    start: int
    end: int
    before: str
    after: str


# What a slip makes of an operator, a word or a function.
_SWAPPED = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.And: ast.Or,
    ast.Or: ast.And,
}
_OTHER_WORD = {
    "front": "rear",
    "rear": "front",
    "present": "proposed",
    "proposed": "present",
    "inboard": "outboard",
    "outboard": "inboard",
    "strong": "noticeable",
    "noticeable": "negligible",
    "met": "advisory",
    "not_met": "advisory",
    "advisory": "met",
    "not_assessed": "met",
    "not_recommended": "advisory",
    "kg": "kPa",
    "mm": "%",
    "%": "mm",
}
_OTHER_NAME = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}


def python_sites(path: Path) -> list[Site]:
    """Return the places of a file that can be broken, in their order."""
    source = path.read_text(encoding="utf-8")
    starts = [0]
    for line in source.splitlines(keepends=True):
        starts.append(starts[-1] + len(line.encode()))
    raw = source.encode()
    found = []
    for node, after in _broken(ast.parse(source)):
        start = starts[node.lineno - 1] + node.col_offset
        end = starts[node.end_lineno - 1] + node.end_col_offset
        before = raw[start:end].decode()
        if before != after:
            found.append(Site(path, node.lineno, start, end, before, after))
    return sorted(found, key=lambda site: (site.start, site.end, site.after))


def _broken(tree: ast.Module) -> Iterator[tuple[ast.expr, str]]:
    skipped = _without_effect(tree)
    for node in ast.walk(tree):
        if id(node) not in skipped and isinstance(node, ast.expr):
            text = _slip(node)
            if text is not None:
                yield node, text
        if isinstance(node, (ast.If, ast.IfExp)) and not isinstance(node.test, (ast.Compare, ast.BoolOp)):
            yield node.test, f"not ({ast.unparse(node.test)})"


def _slip(node: ast.expr) -> str | None:
    if isinstance(node, ast.Constant):
        return _other_value(node.value)
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _OTHER_NAME:
        return ast.unparse(ast.Call(ast.Name(_OTHER_NAME[node.func.id]), node.args, node.keywords))
    other = _other_operation(node)
    return None if other is None else f"({ast.unparse(ast.fix_missing_locations(other))})"


def _other_operation(node: ast.expr) -> ast.expr | None:
    match node:
        case ast.Compare(left, [op], comparators) if type(op) in _SWAPPED:
            return ast.Compare(left, [_SWAPPED[type(op)]()], comparators)
        case ast.BinOp(left, op, right) if type(op) in _SWAPPED and not (_is_text(left) or _is_text(right)):
            return ast.BinOp(left, _SWAPPED[type(op)](), right)
        case ast.BoolOp(op, values):
            return ast.BoolOp(_SWAPPED[type(op)](), values)
        case ast.UnaryOp(ast.Not() | ast.USub(), operand):
            return operand
    return None


def _other_value(value: object) -> str | None:
    match value:
        case bool():
            return str(not value)
        case int():
            return str(value + 1)
        case float():
            return repr(value * 1.01 if value else 0.01)
        case str() if value in _OTHER_WORD:
            return repr(_OTHER_WORD[value])
    return None


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, (ast.JoinedStr, ast.List, ast.Tuple)) or (
        isinstance(node, ast.Constant) and isinstance(node.value, str)
    )


def _without_effect(tree: ast.Module) -> set[int]:
    """Return the parts that no run tells apart: annotations, decorators, literal types, the wording of f-strings."""
    return {id(each) for node in ast.walk(tree) for part in _silent_parts(node) for each in ast.walk(part)}


def _silent_parts(node: ast.AST) -> list[ast.AST]:
    match node:
        case ast.FunctionDef() | ast.AsyncFunctionDef():
            return [*node.decorator_list, *([node.returns] if node.returns else [])]
        case ast.arg() | ast.AnnAssign():
            return [node.annotation] if node.annotation else []
        case ast.JoinedStr():
            return [each for each in node.values if isinstance(each, ast.Constant)]
        case ast.FormattedValue():
            return [node.format_spec] if node.format_spec else []
        case ast.Subscript(ast.Name("Literal" | "Final")):
            return [node.slice]
    return []
