"""Rows as columns for a terminal, no wider than it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

GAP = "  "


def columns(rows: Sequence[Sequence[str]], most: int | None, indent: str = "") -> Iterator[str]:
    """The rows as lines in which each column begins at one place; a line too long is cut with an ellipsis.

    most: signs to a line; all where None. indent: before each line.
    """
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        line = indent + GAP.join(cell.ljust(wide) for cell, wide in zip(row, widths, strict=True)).rstrip()
        yield cut(line, most)


def cut(line: str, most: int | None) -> str:
    """A line of at most so many signs, with an ellipsis where some were cut; as it is where None."""
    return line if most is None or len(line) <= most else f"{line[: most - 1].rstrip()}…"
