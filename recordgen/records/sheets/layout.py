"""The columns of a sheet as its file tells them, held against the sheet itself and against what a record can hold."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from recordgen.problems import Place, Problem, Problems, quoted
from recordgen.records.sheets.cells import LENGTHS, CellForm, cell_text
from recordgen.records.sheets.columns import NOTHING, ColumnsFile, SheetColumn
from recordgen.records.sheets.grid import Grid, cell_name, column_of
from recordgen.records.sheets.targets import THE_FOOT, Role, Target, target_meant, target_of
from recordgen.records.yaml.read import Written
from recordgen.sentences import Said, say


@dataclass(frozen=True)
class LaidColumn:
    """One column that is read. index: from 0. also: what else is meant where a cell is filled."""

    index: int
    name: str
    target: Target
    how: CellForm
    also: tuple[tuple[Target, str], ...] = ()


@dataclass
class Layout:
    """All columns that are read. problems: what does not fit; nothing is read while there are any."""

    file: ColumnsFile
    columns: list[LaidColumn] = field(default_factory=list)
    problems: Problems = field(default_factory=Problems)

    def role(self, role: Role) -> LaidColumn | None:
        """The column that tells whose row it is in one way."""
        return next((one for one in self.columns if one.target.role == role), None)

    @property
    def values(self) -> Iterator[LaidColumn]:
        """The columns that hold values of a record."""
        return (one for one in self.columns if one.target.role is None)


def lay_out(written: Written[ColumnsFile], grid: Grid) -> Layout:
    """The columns of a sheet, ready to be read."""
    return _LayingOut(written, grid).layout()


def headings(grid: Grid, first_row: int, rows: int) -> dict[int, str]:
    """The words over each column, in so many rows above the first one; several rows joined by a blank.

    An empty cell of an upper row takes what stands on its left, as where cells are merged. first_row: from 1.
    """
    found: dict[int, str] = {}
    for row in range(max(0, first_row - 1 - rows), first_row - 1):
        is_last, before = row == first_row - 2, ""
        for column in range(grid.width):
            text = " ".join(cell_text(grid.at(row, column)).split())
            before = text or ("" if is_last else before)
            below = is_last or any(grid.at(lower, column) is not None for lower in range(row + 1, first_row - 1))
            if before and below:
                found[column] = f"{found.get(column, '')} {before}".strip()
    return found


class _LayingOut:
    """Looks at one column after the other."""

    def __init__(self, written: Written[ColumnsFile], grid: Grid) -> None:
        self.written = written
        self.grid = grid
        self.found = Layout(written.record)
        self.taken: dict[tuple[str, ...], str] = {}

    def layout(self) -> Layout:
        file = self.written.record
        over: Mapping[int, str] = headings(self.grid, file.first_row, file.heading_rows)
        for number, column in enumerate(file.columns):
            if column.is_ != NOTHING:
                self._column(number, column, over)
        self._roles(file)
        return self.found

    def _refuse(self, message: Said, way_out: Said, *steps: str | int) -> None:
        self.found.problems.add(Problem(self._place(*steps), "sheet-columns", message, way_out))

    def _place(self, *steps: str | int) -> Place:
        return self.written.place(*steps)

    def _column(self, number: int, column: SheetColumn, over: Mapping[int, str]) -> None:
        at = ("columns", number)
        index = column_of(column.column)
        if index is None:
            return self._refuse(
                say("{column} is no column", column=quoted(column.column)),
                say("Write its letters, such as C"),
                *at,
                "column",
            )
        heading = over.get(index, "")
        if column.heading is not None and _plain(column.heading) != _plain(heading):
            above = cell_name(self.written.record.first_row - 2, index)
            message = say(
                "over column {column} ({above}) stands {heading}, not {named}",
                column=column.column,
                above=above,
                heading=quoted(heading),
                named=quoted(column.heading),
            )
            return self._refuse(
                message, say("Name the column where it is now, or the heading as it is"), *at, "heading"
            )
        target = target_of(column.is_)
        if target is None:
            return self._refuse(
                say("no column can be {what}", what=quoted(column.is_)), target_meant(column.is_), *at, "is"
            )
        if self._clashes(column, target, number):
            return None
        also = tuple(self._also(column, number, target))
        self.found.columns.append(LaidColumn(index, column.column, target, self._reading(column, target, number), also))
        return None

    def _clashes(self, column: SheetColumn, target: Target, number: int) -> bool:
        """Tell whether a value stands in another column already, or around or within one that does."""
        steps = (target.role,) if target.role else (target.foot or "", *target.steps)
        clash = next((one for one in self.taken if one == steps or _holds_line(one, steps)), None)
        if clash is not None:
            message = say(
                "columns {taken} and {column} are both {what}",
                taken=self.taken[clash],
                column=column.column,
                what=quoted(column.is_),
            )
            self._refuse(
                message,
                say("Keep one, and write is: {nothing} for the other", nothing=NOTHING),
                "columns",
                number,
                "is",
            )
        self.taken[steps] = column.column
        return clash is not None

    def _also(self, column: SheetColumn, number: int, target: Target) -> Iterator[tuple[Target, str]]:
        for typed, text in column.with_.items():
            found = target_of(typed)
            if found is None or found.role or (found.foot == THE_FOOT and target.foot != THE_FOOT):
                way_out = say("Write it like with: {{lameness.scale: AAEP}}")
                self._refuse(
                    say("nothing can be meant by {typed} here", typed=quoted(typed)), way_out, "columns", number, "with"
                )
            else:
                yield found, text

    def _reading(self, column: SheetColumn, target: Target, number: int) -> CellForm:
        file = self.written.record
        unit = column.unit or file.lengths
        is_length = target.leaf is None if target.role is None else False
        is_length = is_length or (target.leaf is not None and target.leaf.unit in LENGTHS)
        if is_length and target.leaf and unit is None:
            message = say("column {column} holds lengths, and nothing tells their unit", column=column.column)
            self._refuse(message, say("Write lengths: mm, lengths: cm or lengths: in"), "columns", number)
        return CellForm(file.dates, file.decimals, unit, column.words)

    def _roles(self, file: ColumnsFile) -> None:
        if self.found.problems.found:
            return
        wanted: tuple[Role, ...] = ("horse", "date", *(("foot",) if file.each_row == "foot" else ()))
        for role in wanted:
            if self.found.role(role) is None:
                self._refuse(
                    say("no column is the {role}", role=role),
                    say("Write is: {role} for the one that is", role=role),
                    "columns",
                )
        if file.each_row == "visit":
            for column in self.found.columns:
                if column.target.foot == THE_FOOT or column.target.role == "foot":
                    message = say(
                        "column {column} is of the foot of its row, and each row is a whole visit", column=column.name
                    )
                    self._refuse(
                        message, say("Name the foot, as left_fore.before.toe_length; or each_row: foot"), "each_row"
                    )


def _plain(text: str) -> str:
    return " ".join(text.lower().split())


def _holds_line(one: tuple[str, ...], other: tuple[str, ...]) -> bool:
    """Tell whether one of two is a line of measures that the other is a measure of."""
    short, long = sorted((one, other), key=len)
    return len(short) == 2 and len(long) > 2 and long[:2] == short and short[1] in ("before", "after")
