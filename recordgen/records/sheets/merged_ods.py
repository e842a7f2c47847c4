"""MergedRange cells of an OpenDocument sheet, of which the library that reads its cells tells nothing.

Source: OASIS OpenDocument 1.2, part 1, sections 9.1 and 19.6: table:number-rows-spanned, table:number-rows-repeated.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from typing import IO
from xml.etree import ElementTree

# Rows and columns of a merged range, first and last, counted from 0.
MergedRange = tuple[tuple[int, int], tuple[int, int]]

CONTENT = "content.xml"
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_CELLS = (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell")


def merged_ranges_in_ods(raw: bytes, sheet: str) -> tuple[MergedRange, ...]:
    """Rows and columns of each merged range of a sheet, first and last, counted from 0; none where it is no .ods."""
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed, packed.open(CONTENT) as content:
            return tuple(_ranges(content, sheet))
    except (KeyError, zipfile.BadZipFile, ElementTree.ParseError, ValueError):
        return ()


def _ranges(content: IO[bytes], sheet: str) -> Iterator[MergedRange]:
    name, row, next_row, column = "", 0, 0, 0
    for event, element in ElementTree.iterparse(content, ("start", "end")):
        if event == "end":
            element.clear()
        elif element.tag == f"{_TABLE}table":
            name, next_row = element.get(f"{_TABLE}name", ""), 0
        elif element.tag == f"{_TABLE}table-row":
            row, next_row, column = next_row, next_row + _count(element, "number-rows-repeated"), 0
        elif element.tag in _CELLS:
            rows, columns = (_count(element, f"number-{many}-spanned") for many in ("rows", "columns"))
            if name == sheet and (rows, columns) != (1, 1):
                yield (row, column), (row + rows - 1, column + columns - 1)
            column += _count(element, "number-columns-repeated")


def _count(element: ElementTree.Element, name: str) -> int:
    return int(element.get(f"{_TABLE}{name}", "1"))
