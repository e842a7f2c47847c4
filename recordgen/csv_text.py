"""Rows of plain values as CSV that every spreadsheet reads, and that none takes for a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence

# Digits behind the point to which values and errors are rounded: far more than any of them holds.
DIGITS = 4

Plain = str | float | int | None
PlainRow = dict[str, Plain]

# What a spreadsheet takes for the beginning of a formula, the wide forms of East Asian keyboards included.
# Source: OWASP, CSV Injection. From memory, not read.
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def csv_of(columns: Sequence[str], rows: Iterable[Mapping[str, Plain]]) -> str:
    """Rows as CSV with a line of names on top; text that a spreadsheet could take for a formula is guarded.

    Numbers are written as they are. Source: RFC 4180, sections 2.1 to 2.7.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(columns)
    writer.writerows([_cell(row[column]) for column in columns] for row in rows)
    return text.getvalue()


def plain_number(value: float) -> float | int:
    """A number with as many digits as are given on; whole ones without a point."""
    near = round(value, DIGITS)
    return int(near) if near == int(near) else near


def _cell(value: Plain) -> Plain:
    return guarded(value) if isinstance(value, str) else value


def guarded(text: str) -> str:
    """Text as it was typed, with an apostrophe before it where a spreadsheet could take it for a formula."""
    return f"'{text}" if text.startswith(FORMULA) or unguarded(text) != text else text


def unguarded(text: str) -> str:
    """Text as it was before it was guarded."""
    return text[1:] if text.startswith("'") and text[1:].startswith(FORMULA) else text
