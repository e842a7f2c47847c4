"""Rows as columns for a terminal, no wider than it is."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Iterator, Sequence

GAP = "  "


def width() -> int | None:
    """How many signs a line holds on this terminal; None where it goes to a file or another program."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else None


def has_colour() -> bool:
    """Whether colour may be used: on a terminal, unless NO_COLOR is set.

    Source: no-color.org. From memory, not read.
    """
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def columns(rows: Sequence[Sequence[str]], most: int | None, indent: str = "") -> Iterator[str]:
    """The rows as lines in which each column begins at one place; a line too long is cut with an ellipsis.

    most: signs to a line; all where None. indent: before each line.
    """
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        line = indent + GAP.join(cell.ljust(wide) for cell, wide in zip(row, widths, strict=True)).rstrip()
        yield line if most is None or len(line) <= most else f"{line[: most - 1].rstrip()}…"
