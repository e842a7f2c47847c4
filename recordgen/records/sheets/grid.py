"""The cells of a sheet, out of CSV or a spreadsheet: text, numbers, days, yes and no, as they stand there."""

from __future__ import annotations

import csv
import datetime as dt
import io
import re
import zipfile
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from python_calamine import CalamineError, CalamineWorkbook, PasswordError, SheetTypeEnum

from recordgen.csv_text import unguarded
from recordgen.problems import Place, Trouble, quoted
from recordgen.records.sheets.merged_ods import MergedRange, merged_ranges_in_ods
from recordgen.sentences import say

Value = str | float | bool | dt.date | None

LARGEST_FILE_BYTES = 50_000_000
LARGEST_UNPACKED_BYTES = 500_000_000
MOST_CELLS = 2_000_000
# What parts the values of a line; a comma comes last, since it stands within text and numbers too.
DELIMITERS = (";", "\t", "|", ",")
_LOOKED_AT = 60
# A value in quotes, which may hold any of these signs, and ends of lines.
_QUOTED = re.compile(r'(?:^|(?<=[;\t|,]))"(?:[^"]|"")*"(?=[;\t|,\r\n]|$)', re.MULTILINE)
_MARKS = {b"\xef\xbb\xbf": "utf-8-sig", b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16"}
SHEET_ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".ods")


@dataclass(frozen=True)
class Grid:
    """One sheet. shown: the file's name. sheet: of a workbook, empty for CSV. rows: all rows from the top left cell.

    merged: ranges of cells that are one. others: the workbook's other sheets.
    """

    shown: str
    sheet: str
    rows: tuple[tuple[Value, ...], ...]
    merged: tuple[MergedRange, ...] = ()
    others: tuple[str, ...] = ()

    def at(self, row: int, column: int) -> Value:
        """The cell in a row and column, both counted from 0; None where nothing stands."""
        if row >= len(self.rows) or column >= len(self.rows[row]):
            return None
        return self.rows[row][column]

    @property
    def width(self) -> int:
        """Tell how many columns there are."""
        return max(map(len, self.rows), default=0)

    def place(self, row: int, column: int = 0) -> Place:
        """The place where a cell stands, for a problem; both counted from 0."""
        return Place(f"{self.shown}[{self.sheet}]" if self.sheet else self.shown, row + 1, column + 1)

    def above(self, row: int, column: int) -> Value:
        """The value of the merged range over several rows that a cell belongs to; None where it belongs to none."""
        for (top, left), (bottom, _) in self.merged:
            if left == column and top < row <= bottom:
                return self.at(top, left)
        return None


def letters(column: int) -> str:
    """The name of a column as spreadsheets show it: 0 is A, 26 is AA."""
    first, last = divmod(column, 26)
    return (letters(first - 1) if first else "") + chr(ord("A") + last)


def column_of(name: str) -> int | None:
    """The column of a name, counted from 0: A is 0, AA is 26; None where it is no such name."""
    if not (name.isascii() and name.isalpha() and len(name) <= 3):
        return None
    number = 0
    for letter in name.upper():
        number = number * 26 + ord(letter) - ord("A") + 1
    return number - 1


def cell_name(row: int, column: int) -> str:
    """The name of a cell as spreadsheets show it: C7."""
    return f"{letters(column)}{row + 1}"


def read_grid(raw: bytes, shown: str, sheet: str | None = None) -> Grid:
    """The cells of a file. sheet: which one of a workbook; the first that holds anything where None. Raises Trouble."""
    if len(raw) > LARGEST_FILE_BYTES:
        raise Trouble(
            say(
                "{shown} is larger than {largest_file_bytes} MB",
                shown=shown,
                largest_file_bytes=LARGEST_FILE_BYTES // 1000000,
            ),
            say("Take it in in several parts"),
        )
    if raw.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0")):
        return _of_workbook(raw, shown, sheet)
    return _of_text(raw, shown)


def _of_workbook(raw: bytes, shown: str, sheet: str | None) -> Grid:
    _refuse_swollen(raw, shown)
    try:
        with CalamineWorkbook.from_filelike(io.BytesIO(raw)) as book:
            name = _sheet_of(book, shown, sheet)
            found = book.get_sheet_by_name(name)
            if found.total_height * found.total_width > MOST_CELLS:
                raise Trouble(
                    say("the sheet {name} of {shown} has too many cells", name=quoted(name), shown=shown),
                    say("Take it in in several parts"),
                )
            rows = found.to_python(skip_empty_area=False)
            merged = tuple(found.merged_cell_ranges or merged_ranges_in_ods(raw, name))
            others = tuple(one for one in book.sheet_names if one != name)
    except PasswordError:
        raise Trouble(
            say("{shown} is locked with a password", shown=shown), say("Save a copy without one, and take that in")
        ) from None
    except CalamineError:
        way_out = say("Open it in your spreadsheet program, save it as CSV, and take that in")
        raise Trouble(say("{shown} cannot be read as a spreadsheet", shown=shown), way_out) from None
    return Grid(shown, name, tuple(tuple(map(_plain, row)) for row in rows), merged, others)


def _refuse_swollen(raw: bytes, shown: str) -> None:
    """Raises Trouble where a packed file would become larger than any sheet of visits."""
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed:
            size = sum(part.file_size for part in packed.infolist())
    except zipfile.BadZipFile:
        return
    if size > LARGEST_UNPACKED_BYTES:
        raise Trouble(
            say("{shown} is far larger inside than any sheet of visits", shown=shown),
            say("Save it as CSV, and take that in"),
        )


def _sheet_of(book: CalamineWorkbook, shown: str, wanted: str | None) -> str:
    names = [one.name for one in book.sheets_metadata if one.typ == SheetTypeEnum.WorkSheet]
    if wanted is not None:
        if wanted not in names:
            raise Trouble(
                say("{shown} has no sheet {wanted}", shown=shown, wanted=quoted(wanted)),
                say("Its sheets are: {names}", names=", ".join(map(quoted, names)) or say("none")),
            )
        return wanted
    for name in names:
        if book.get_sheet_by_name(name).total_height:
            return name
    raise Trouble(
        say("{shown} holds no sheet with anything in it", shown=shown), say("Look whether it is the right file")
    )


def _plain(value: object) -> Value:
    """A cell as text, a number, a day, or yes or no; an empty one is None. A time of day is left out of a day."""
    if isinstance(value, dt.datetime):
        return value.date()
    if isinstance(value, str):
        return value.strip() or None
    if isinstance(value, bool | int | float | dt.date) or value is None:
        return value
    return str(value)


def _of_text(raw: bytes, shown: str) -> Grid:
    text = _decode(raw, shown)
    first, _, rest = text.partition("\n")
    told = first.strip().lower()
    # A line by which a spreadsheet program is told what parts the values.
    delimiter = told[4] if len(told) == 5 and told.startswith("sep=") else None
    # Lines end where CSV says so; other signs that some programs take for an end stand within text.
    lines = [*([""] if delimiter else []), *io.StringIO(rest if delimiter else text, newline="")]
    try:
        rows = _split_cells(lines, delimiter or delimiter_of(lines))
    except csv.Error as fault:
        raise Trouble(
            say("{shown} cannot be read as CSV: {fault}", shown=shown, fault=fault),
            say("Save it anew as CSV from your program"),
        ) from None
    if not any(value.strip() for row in rows for value in row):
        raise Trouble(say("{shown} is empty", shown=shown), say("Look whether it is the right file"))
    return Grid(shown, "", tuple(tuple(_plain(unguarded(value)) for value in row) for row in rows))


def _decode(raw: bytes, shown: str) -> str:
    """The text of a file: by its mark, else UTF-8, else the code page of Windows for western Europe."""
    encoding = next((name for mark, name in _MARKS.items() if raw.startswith(mark)), "utf-8")
    for one in dict.fromkeys((encoding, "cp1252")):
        try:
            text = raw.decode(one)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise Trouble(
        say("{shown} is neither CSV nor a spreadsheet", shown=shown), say("Save it as CSV (UTF-8), .xlsx or .ods")
    )


def delimiter_of(lines: Sequence[str]) -> str:
    """The sign that parts the values of these lines: the one that cuts most of them into equally many, two or more.

    Where two signs do as well, a semicolon goes before a comma, since a comma may be a decimal one; `csv.Sniffer` takes
    the comma then. What stands in quotes does not count.
    """
    bare = [line for line in _QUOTED.sub("", "".join(lines[:_LOOKED_AT])).splitlines() if line.strip()]
    return max(DELIMITERS, key=lambda delimiter: _share_alike([line.split(delimiter) for line in bare]))


def _share_alike(rows: Sequence[Sequence[str]]) -> float:
    """The share of the rows that have the usual number of values; 0 where that is one."""
    widths = Counter(len(row) for row in rows if any(row))
    width, often = widths.most_common(1)[0] if widths else (0, 0)
    return often / widths.total() if width > 1 else 0


def _split_cells(lines: Sequence[str], delimiter: str) -> list[list[str]]:
    return list(csv.reader(lines, delimiter=delimiter))
