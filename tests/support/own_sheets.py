"""Awkward sheets of our own making, as people keep them, written by other programs than the one that reads them."""

from __future__ import annotations

import datetime as dt
import io
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

import odfdo
import openpyxl

from recordgen.records.models.horse import Horse
from recordgen.records.receive.incoming import Incoming
from recordgen.records.receive.whose import Horses
from recordgen.records.sheets.columns import ColumnsFile
from recordgen.records.sheets.grid import read_grid
from recordgen.records.sheets.propose import propose
from recordgen.records.sheets.rows import read_visits
from recordgen.records.yaml.read import Written

HORSES = Horses(
    {"willowmere/bramble": Horse(name="Bramble"), "willowmere/fennel": Horse(name="Fennel")},
    {"willowmere": "Willowmere"},
)
DAY = dt.date(2024, 3, 14)


def csv_of(rows: Iterable[Sequence[str]], delimiter: str = ",") -> str:
    """Rows as lines of CSV, with nothing in them that needs quotes."""
    return "".join(delimiter.join(row) + "\r\n" for row in rows)


def xlsx_of(rows: Iterable[Sequence[Any]], merged: Sequence[str] = (), title: str = "Visits") -> bytes:
    """A workbook of one sheet. merged: ranges such as A2:A5."""
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = title
    for row in rows:
        sheet.append(list(row))
    for part in merged:
        sheet.merge_cells(part)
    return _bytes(book.save)


def ods_of(rows: Iterable[Sequence[Any]]) -> bytes:
    """The same as an OpenDocument sheet. Source: OASIS OpenDocument 1.2, as odfdo writes it."""
    document = odfdo.Document("spreadsheet")
    document.body.clear()
    table = odfdo.Table("Visits")
    for row in rows:
        table.append_row(odfdo.Row())
        for column, value in enumerate(row):
            if value is not None:
                table.set_value((column, table.height - 1), value)
    document.body.append(table)
    return _bytes(document.save)


def _bytes(save: Any) -> bytes:
    made = io.BytesIO()
    save(made)
    return made.getvalue()


def proposed(raw: bytes | str, name: str = "visits.csv", horses: Horses = HORSES) -> Written[ColumnsFile]:
    """The file of columns that is proposed for a sheet."""
    return propose(read_grid(_raw(raw), name), horses).as_read(Path(f"{name}.columns.yaml"))


def corrected(written: Written[ColumnsFile], **values: Any) -> Written[ColumnsFile]:
    """The same file with some values corrected."""
    return Written(written.record.model_copy(update=values), written.file, written.shown, written.text)


def incoming(raw: bytes | str, name: str = "visits.csv", **values: Any) -> Incoming:
    """The visits of a sheet by its proposed columns. values: corrections in them."""
    grid = read_grid(_raw(raw), name)
    return read_visits(grid, corrected(proposed(raw, name), **values), HORSES)


def feet(raw: bytes | str, name: str = "visits.csv", **values: Any) -> list[tuple[str, str, Any]]:
    """Horse, day and feet of each visit of a sheet in which everything fits."""
    found = incoming(raw, name, **values)
    assert [problem.as_line() for problem in found.problems] == []
    return [(one.horse.partition("/")[2], one.day.isoformat(), one.record["feet"]) for one in found.visits]


def _raw(raw: bytes | str) -> bytes:
    return raw.encode() if isinstance(raw, str) else raw
