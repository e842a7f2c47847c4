"""The small changes that a line of code may suffer: another number, sign, comparison or joint."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

# By how much a number is changed, as a share of itself.
SHARE = 0.2
_COMPARE: dict[type[ast.cmpop], tuple[str, str]] = {
    ast.Lt: ("<", ">="),
    ast.LtE: ("<=", ">"),
    ast.Gt: (">", "<="),
    ast.GtE: (">=", "<"),
    ast.Eq: ("==", "!="),
    ast.NotEq: ("!=", "=="),
}
_ARITHMETIC: dict[type[ast.operator], tuple[str, str]] = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
}


@dataclass(frozen=True)
class Change:
    """One change: a place in a file, and what stands there instead."""

    file: Path
    line: int
    column: int
    before: str
    after: str

    def applied(self, text: str) -> str:
        """The text with the change."""
        lines = text.splitlines(keepends=True)
        line = lines[self.line - 1]
        lines[self.line - 1] = line[: self.column] + self.after + line[self.column + len(self.before) :]
        return "".join(lines)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.before} becomes {self.after}"


def changes_of(file: Path) -> Iterator[Change]:
    """Every change that a file may suffer, in the order of its lines."""
    text = file.read_text("utf-8")
    lines = text.splitlines()
    for node in ast.walk(ast.parse(text)):
        for line, column, before, after in _of(node, lines):
            if lines[line - 1][column : column + len(before)] == before:
                yield Change(file, line, column, before, after)


def _of(node: ast.AST, lines: list[str]) -> Iterator[tuple[int, int, str, str]]:
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not isinstance(node.value, bool):
        before = ast.get_source_segment("\n".join(lines), node) or ""
        changed = node.value + 1 if isinstance(node.value, int) else node.value * (1 + SHARE) or SHARE
        yield node.lineno, node.col_offset, before, repr(changed)
    elif isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in _COMPARE:
        yield from _between(node.left, *_COMPARE[type(node.ops[0])], lines)
    elif isinstance(node, ast.BinOp) and type(node.op) in _ARITHMETIC:
        yield from _between(node.left, *_ARITHMETIC[type(node.op)], lines)
    elif isinstance(node, ast.BoolOp):
        joints = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
        yield from _between(node.values[0], *joints, lines)


def _between(left: ast.expr, before: str, after: str, lines: list[str]) -> Iterator[tuple[int, int, str, str]]:
    """The sign that stands right behind an expression, where it stands on the same line."""
    line, end = left.end_lineno or 0, left.end_col_offset or 0
    rest = lines[line - 1][end:]
    sign = len(rest) - len(rest.lstrip(" )"))
    if rest[sign:].startswith(f"{before} "):
        yield line, end + sign, before, after
