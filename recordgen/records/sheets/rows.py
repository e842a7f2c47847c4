"""The rows of a sheet as visits on their way into the records: each visit wholly or not at all, nothing invented."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from recordgen import progress
from recordgen.problems import Problem, Problems, Step, Trouble, quoted
from recordgen.records.load.folders import slug_of
from recordgen.records.models.names import Foot
from recordgen.records.receive.doubts import refusals
from recordgen.records.receive.incoming import Incoming, IncomingVisit
from recordgen.records.receive.whose import Horses
from recordgen.records.sheets.cells import Unfit, as_typed_value, cell_text, day, foot, is_empty
from recordgen.records.sheets.columns import ColumnsFile
from recordgen.records.sheets.grid import Grid, Value, cell_name
from recordgen.records.sheets.layout import LaidColumn, Layout, headings, lay_out
from recordgen.records.sheets.owners import Owner, owner_of
from recordgen.records.sheets.targets import ROLES, Role
from recordgen.records.yaml.read import Written
from recordgen.sentences import Said, and_more, say

MOST_CELLS_NAMED = 8
ID_SIGNS = 16

Cell = tuple[int, int]
Steps = tuple[Step, ...]


@dataclass
class _Visit:
    """One visit as it is put together. cells: where each of its values stands. wrong: it cannot be taken in."""

    owner: Owner
    day: dt.date
    number: str
    first: Cell
    record: dict[str, Any] = field(default_factory=dict)
    cells: dict[Steps, Cell] = field(default_factory=dict)
    feet: dict[Foot, int] = field(default_factory=dict)
    wrong: bool = False


@dataclass
class _CellProblems:
    """Gathers what does not fit, each thing once with all the cells it stands in."""

    grid: Grid
    found: dict[tuple[str, Said, Said, str], list[Cell]] = field(default_factory=dict)

    def note_cell(self, code: str, cell: Cell, message: Said, way_out: Said, level: str = "error") -> None:
        self.found.setdefault((code, message, way_out, level), []).append(cell)

    def problems(self) -> Iterator[Problem]:
        for (code, message, way_out, level), cells in self.found.items():
            named = ", ".join(cell_name(*cell) for cell in cells[:MOST_CELLS_NAMED])
            whole = say("{cells}: {message}", cells=and_more(named, len(cells) - MOST_CELLS_NAMED), message=message)
            yield Problem(
                self.grid.place(*cells[0]), code, whole, way_out, "warning" if level == "warning" else "error"
            )


def read_visits(grid: Grid, written: Written[ColumnsFile], horses: Horses) -> Incoming:
    """The visits in a sheet, and what of it does not fit, each with its cell.

    Nothing is read where the file of columns does not fit the sheet.
    """
    layout = lay_out(written, grid)
    id_ = f"sheet-{slug_of(grid.shown.rpartition('.')[0]) or 'visits'}"
    if layout.problems.found:
        return Incoming(id_, (), layout.problems, whole=False)
    rows = _Rows(grid, layout, horses)
    rows.read()
    visits = rows.visits()
    problems = Problems(list(rows.told.problems()))
    return Incoming(id_, visits, problems, whole=not problems.errors)


class _Rows:
    """Reads one row after the other."""

    def __init__(self, grid: Grid, layout: Layout, horses: Horses) -> None:
        self.grid = grid
        self.layout = layout
        self.horses = horses
        self.told = _CellProblems(grid)
        self.found: dict[tuple[str, dt.date, str], _Visit] = {}
        self.above: dict[int, Value] = {}
        file = layout.file
        over = headings(grid, file.first_row, file.heading_rows)
        self.heads = {index: over.get(index) for index in (one.index for one in layout.columns)}

    def read(self) -> None:
        """Read every row below the headings."""
        for row in progress.steps(say("Reading rows"), range(self.layout.file.first_row - 1, len(self.grid.rows))):
            if not self._is_passed_over(row):
                self._row(row)

    def _is_passed_over(self, row: int) -> bool:
        """Tell whether a row is empty, holds the headings once more, or is one to be left out."""
        filled = [cell_text(value) for value in self.grid.rows[row] if value is not None]
        if not filled:
            return True
        if all(cell_text(self.grid.at(row, index)) == (head or "") for index, head in self.heads.items()):
            return True
        first = filled[0].lower()
        return any(first.startswith(word.lower()) for word in self.layout.file.leave_out)

    def _row(self, row: int) -> None:
        roles = {role: self._role(row, role) for role in ROLES}
        try:
            owner = self._owner(row, roles)
            on = self._day(row, roles["date"])
        except _RowUnfit as unfit:
            self.told.note_cell("sheet-row", unfit.cell, unfit.message, unfit.way_out)
            return
        number = cell_text(roles["number"])
        visit = self._visit(row, owner, on, number)
        which = self._foot(row, roles["foot"], visit) if self.layout.role("foot") else None
        if not visit.wrong:
            for column in self.layout.values:
                self._value(row, column, which, visit)

    def _role(self, row: int, role: Role) -> Value:
        column = self.layout.role(role)
        if column is None:
            return None
        value = self.grid.at(row, column.index)
        if is_empty(value):
            value = self.grid.above(row, column.index)
        if is_empty(value) and role in self.layout.file.same_as_above:
            value = self.above.get(column.index)
        if not is_empty(value):
            self.above[column.index] = value
        return value

    def _cell(self, row: int, role: Role) -> Cell:
        column = self.layout.role(role)
        return row, column.index if column else 0

    def _owner(self, row: int, roles: dict[Role, Value]) -> Owner:
        cell = self._cell(row, "horse")
        if is_empty(roles["horse"]):
            first = next((cell_text(value) for value in self.grid.rows[row] if value is not None), "")
            way_out = say(
                "Fill it in, or leave such rows out: leave_out: [{first}] in the file of columns",
                first=first[:20].strip(),
            )
            raise _RowUnfit(cell, say("this row names no horse"), way_out)
        try:
            return owner_of(cell_text(roles["horse"]), cell_text(roles["stable"]), self.horses, self.layout.file)
        except Trouble as trouble:
            where = self._cell(row, "stable") if self.layout.role("stable") else cell
            raise _RowUnfit(where, trouble.message, trouble.way_out) from None

    def _day(self, row: int, value: Value) -> dt.date:
        cell = self._cell(row, "date")
        column = self.layout.role("date")
        assert column is not None
        if is_empty(value):
            first = next((cell_text(one) for one in self.grid.rows[row] if one is not None), "")
            way_out = say(
                "Fill it in, or leave such rows out: leave_out: [{first}] in the file of columns",
                first=first[:20].strip(),
            )
            raise _RowUnfit(cell, say("this row has no day"), way_out)
        try:
            return day(value, column.how)
        except Unfit as unfit:
            raise _RowUnfit(cell, unfit.why, unfit.way_out) from None

    def _visit(self, row: int, owner: Owner, on: dt.date, number: str) -> _Visit:
        # Where each row is a whole visit and nothing tells them apart, each is one of its own.
        own = number if self.layout.file.each_row == "foot" or number else f"row {row}"
        key = (owner.key, on, own)
        if key not in self.found:
            self.found[key] = _Visit(owner, on, number, self._cell(row, "horse"))
        return self.found[key]

    def _foot(self, row: int, value: Value, visit: _Visit) -> Foot | None:
        cell = self._cell(row, "foot")
        column = self.layout.role("foot")
        assert column is not None
        try:
            if is_empty(value):
                raise Unfit(say("this row names no foot"), say("Write LF, RF, LH, RH or near fore"))
            which = foot(value, column.how)
            if which in visit.feet:
                message = say(
                    "the {which} of that visit stands in row {feet} already",
                    which=which.replace("_", " "),
                    feet=visit.feet[which] + 1,
                )
                way_out = say("Correct the foot, or tell two visits of one day apart by a column that is: number")
                raise Unfit(message, way_out)
        except Unfit as unfit:
            visit.wrong = True
            message = say("{unfit}, so nothing of that visit is taken in", unfit=unfit)
            self.told.note_cell("sheet-row", cell, message, unfit.way_out)
            return None
        visit.feet[which] = row
        return which

    def _value(self, row: int, column: LaidColumn, which: Foot | None, visit: _Visit) -> None:
        value, cell = self.grid.at(row, column.index), (row, column.index)
        if is_empty(value):
            return
        try:
            text = as_typed_value(value, column.target.leaf, column.how)
        except Unfit:
            text = cell_text(value)
        for target, one in ((column.target, text), *column.also):
            steps = target.at(which)
            if _set_at(visit.record, steps, one):
                visit.cells.setdefault(steps, cell)
            else:
                visit.wrong = True
                before = visit.cells.get(steps)
                other = cell_name(*before) if before else say("another cell")
                message = say(
                    "{value} does not fit: {other} says otherwise, so nothing of that visit is taken in",
                    value=quoted(cell_text(value)),
                    other=other,
                )
                self.told.note_cell(
                    "sheet-row", cell, message, say("Make both the same, or give each a column of its own")
                )

    def visits(self) -> tuple[IncomingVisit, ...]:
        """The visits that can be taken in, in the order of the sheet; what the models refuse in them is told."""
        return tuple(self._incoming(visit) for visit in self.found.values() if not visit.wrong and self._tell(visit))

    def _tell(self, visit: _Visit) -> bool:
        """Tell each value that no record can hold, with its cell; False where nothing of the visit can be taken in."""
        if not visit.record:
            self.told.note_cell(
                "sheet-row", visit.first, say("nothing is recorded of this visit"), say("Fill it in, or leave it out")
            )
            return False
        try:
            refused = refusals({**visit.record, "date": visit.day.isoformat()})
        except Trouble as trouble:
            self.told.note_cell("sheet-row", visit.first, trouble.message, trouble.way_out)
            return False
        for steps, why in refused:
            cell = _cell_of(visit, steps)
            message = why or say("it was seen and not measured")
            self.told.note_cell(
                "sheet-cell", cell, message, say("Until it is corrected it stands in the private note"), "warning"
            )
        return True

    def _incoming(self, visit: _Visit) -> IncomingVisit:
        content = json.dumps([visit.owner.key, visit.day.isoformat(), visit.number, visit.record], sort_keys=True)
        id_ = hashlib.sha256(content.encode("utf-8", "replace")).hexdigest()[:ID_SIGNS]
        place = self.grid.place(*visit.first)
        owner, source = visit.owner, f"{self.grid.shown}, row {visit.first[0] + 1}"
        return IncomingVisit(id_, 1, owner.which, owner.name, visit.day, visit.record, place, source=source)


class _RowUnfit(Exception):
    """A row of which nothing can be taken in: its cell, why, and the way out."""

    def __init__(self, cell: Cell, message: Said, way_out: Said) -> None:
        super().__init__(message)
        self.cell = cell
        self.message = message
        self.way_out = way_out


def _set_at(record: dict[str, Any], steps: Sequence[str], value: Any) -> bool:
    """Put a value at some steps; False where another stands there, or in the way."""
    around: Any = record
    for step in steps[:-1]:
        around = around.setdefault(step, {}) if isinstance(around, dict) else None
    if not isinstance(around, dict):
        return False
    there = around.get(steps[-1])
    if isinstance(value, dict):
        return isinstance(around.setdefault(steps[-1], {}), dict)
    if there is not None and there != value:
        return False
    around[steps[-1]] = value
    return True


def _cell_of(visit: _Visit, steps: Steps) -> Cell:
    """The cell of the value at some steps, or of one within or around it."""
    for length in range(len(steps), 0, -1):
        for at, cell in visit.cells.items():
            if at[:length] == steps[:length]:
                return cell
    return visit.first
