"""The file of columns for a sheet that nobody told about yet: a first guess for the trimmer to correct."""

from __future__ import annotations

import re
import statistics
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Trouble
from recordgen.records.receive.whose import Horses
from recordgen.records.sheets.cells import cell_text, is_empty
from recordgen.records.sheets.columns import ColumnsFile
from recordgen.records.sheets.grid import Grid, Value, letters
from recordgen.records.sheets.headings import Guess, guess, is_unit, tells_foot_or_moment, words
from recordgen.records.sheets.layout import headings
from recordgen.records.sheets.targets import target_of
from recordgen.records.write.templates import render_template
from recordgen.records.yaml.read import Written
from recordgen.records.yaml.tree import document
from recordgen.records.yaml.write import on_one_line
from recordgen.sentences import say

# Rows in which headings are looked for.
LOOKED_AT = 25
# Usual lengths of a toe by the unit that a number alone then has; what lies between is left open. Judgement.
TOE_LENGTHS = {"mm": (40.0, 150.0), "cm": (5.5, 15.0), "in": (1.8, 3.9)}
_FRACTION = re.compile(r"[0-9]+/[0-9]+|[¼½¾⅛⅜⅝⅞]")
_PARTED_DATE = re.compile(r"([0-9]{1,2})[./-]([0-9]{1,2})[./-][0-9]{2,4}")


@dataclass(frozen=True)
class Proposal:
    """A file of columns that is not written yet."""

    text: str

    def as_read(self, file: Path) -> Written[ColumnsFile]:
        """The same as if it had been read from its file."""
        raw = self.text.encode()
        values = {key: value for key, value in document(file.name, raw).values.items() if value is not None}
        return Written(ColumnsFile.model_validate(values), file, file.name, raw)


def propose(grid: Grid, horses: Horses) -> Proposal:
    """A first guess at the columns of a sheet. Raises Trouble where it holds no row below any headings."""
    return _Proposing(grid, horses).proposal()


class _Proposing:
    """Looks for the headings, then at the cells below them."""

    def __init__(self, grid: Grid, horses: Horses) -> None:
        self.grid = grid
        self.horses = horses
        first, last = self._heading_rows()
        self.first_row = last + 2
        self.rows = last - first + 1
        if len(grid.rows) < self.first_row:
            raise Trouble(
                say("{grid} holds nothing below its headings", grid=grid.shown),
                say("Look whether it is the right file"),
            )
        over = headings(grid, self.first_row, self.rows)
        is_foot = any(guess(text, True).is_ == "foot" for text in over.values())
        self.each_row = "foot" if is_foot else "visit"
        self.heads = {
            index: over.get(index, "") for index in range(grid.width) if index in over or self._values_below(index)
        }
        self.guesses = _each_once({index: guess(text, is_foot) for index, text in self.heads.items()})

    def _heading_rows(self) -> tuple[int, int]:
        """The first and the last row of the headings, counted from 0."""
        known = [self._count_known(row) for row in range(min(LOOKED_AT, len(self.grid.rows)))]
        best = max(range(len(known)), key=lambda row: known[row], default=0)
        first = last = best
        if best and any(tells_foot_or_moment(text) for text in self._texts(best - 1)) and not self._has_data(best - 1):
            first = best - 1
        below = list(self._texts(best + 1))
        if (
            below
            and not self._has_data(best + 1)
            and all(is_unit(text) or tells_foot_or_moment(text) for text in below)
        ):
            last = best + 1
        return first, last

    def _count_known(self, row: int) -> int:
        return sum(guess(text, True).is_known for text in self._texts(row))

    def _texts(self, row: int) -> Iterator[str]:
        if row < len(self.grid.rows):
            yield from (cell_text(value) for value in self.grid.rows[row] if isinstance(value, str))

    def _has_data(self, row: int) -> bool:
        return any(not isinstance(value, str) and value is not None for value in self.grid.rows[row])

    def _values_below(self, index: int) -> list[Value]:
        below = range(self.first_row - 1, len(self.grid.rows))
        return [value for row in below if not is_empty(value := self.grid.at(row, index))]

    def proposal(self) -> Proposal:
        """The text of the file."""
        roles = {one.is_: index for index, one in self.guesses.items()}
        dates, ask_dates = self._dates(roles.get("date"))
        lengths, ask_lengths = self._lengths()
        stables = list(self.horses.stables)
        alone = "stable" not in roles
        return Proposal(
            render_template(
                "columns.yaml.jinja",
                shown=self.grid.shown,
                sheet=self.grid.sheet,
                others=self.grid.others,
                heading_rows=self.rows,
                first_row=self.first_row,
                each_row=self.each_row,
                dates=dates,
                ask_dates=ask_dates,
                decimals="comma" if self._has_commas() else "point",
                lengths=lengths,
                ask_lengths=ask_lengths,
                stable=stables[0] if alone and len(stables) == 1 else "",
                ask_stable=alone and len(stables) > 1,
                same_as_above=list(self._same_as_above(roles)),
                leave_out=self._sums(),
                columns=[self._column(index, one) for index, one in self.guesses.items()],
            )
        )

    def _column(self, index: int, one: Guess) -> tuple[str, str]:
        column: dict[str, object] = {"column": letters(index)}
        if self.heads[index]:
            column["heading"] = self.heads[index]
        column["is"] = one.is_
        if one.unit:
            column["unit"] = one.unit
        target = target_of(one.is_)
        if target and target.leaf and target.leaf.codes[:2] == ("yes", "no") and self._only_crosses(index):
            column["words"] = {"x": "yes"}
        if one.scale:
            column["with"] = {"lameness.scale": one.scale}
        return on_one_line(column), one.remark

    def _only_crosses(self, index: int) -> bool:
        return {cell_text(value).lower() for value in self._values_below(index)} == {"x"}

    def _dates(self, index: int | None) -> tuple[str, bool]:
        """The order of typed dates, and whether it is to be asked for."""
        texts = [value for value in self._values_below(index) if isinstance(value, str)] if index is not None else []
        found = [(int(one[1]), int(one[2])) for text in texts if (one := _PARTED_DATE.fullmatch(text.strip()))]
        first, second = any(one > 12 for one, _ in found), any(one > 12 for _, one in found)
        if first != second:
            return "day month year" if first else "month day year", False
        return "", bool(found)

    def _values(self) -> Iterator[tuple[Guess, Value]]:
        for index, one in self.guesses.items():
            target = target_of(one.is_)
            if target and target.leaf and target.leaf.unit:
                yield from ((one, value) for value in self._values_below(index))

    def _has_commas(self) -> bool:
        return any(isinstance(value, str) and re.fullmatch("[0-9]+,[0-9]+", value) for _, value in self._values())

    def _lengths(self) -> tuple[str, bool]:
        """The unit of lengths whose heading tells none, and whether it is to be asked for."""
        bare = [(one, value) for one, value in self._values() if one.unit is None and _is_length(one)]
        if not bare:
            return "", False
        if any(isinstance(value, str) and _FRACTION.search(value) for _, value in bare):
            return "in", False
        told = {one.unit for one, _ in self._values() if one.unit and _is_length(one)}
        if len(told) == 1:
            return str(told.pop()), False
        toes = [number for one, value in bare if one.is_.endswith("toe_length") and (number := _number(value))]
        middle = statistics.median(toes) if toes else 0.0
        found = next((unit for unit, (low, high) in TOE_LENGTHS.items() if low <= middle <= high), "")
        return found, not found

    def _same_as_above(self, roles: Mapping[str, int]) -> Iterator[str]:
        """The columns in which most cells are empty below a filled one, as where a name stands once for four feet."""
        rows = [row for row in range(self.first_row - 1, len(self.grid.rows)) if any(self.grid.rows[row])]
        for role in ("stable", "horse", "date"):
            index = roles.get(role)
            empty = sum(is_empty(self.grid.at(row, index)) for row in rows) if index is not None else 0
            if self.each_row == "foot" and empty * 2 > len(rows):
                yield role

    def _sums(self) -> list[str]:
        found = {}
        for row in self.grid.rows[self.first_row - 1 :]:
            first = next((cell_text(value) for value in row if value is not None), "")
            word = next((one for one in words()["sums"] if first.lower().startswith(one)), None)
            if word:
                found[word] = first[: len(word)]
        return list(found.values())


def _each_once(guesses: Mapping[int, Guess]) -> dict[int, Guess]:
    """The guesses with each meaning kept for the first column alone; later ones are left open."""
    found: dict[int, Guess] = {}
    for index, one in guesses.items():
        twice = one.is_known and not one.remark and one.is_ in {kept.is_ for kept in found.values()}
        found[index] = Guess(unit=one.unit, remark=say("{what}, as another column?", what=one.is_)) if twice else one
    return found


def _is_length(one: Guess) -> bool:
    target = target_of(one.is_)
    return target is not None and target.leaf is not None and target.leaf.unit in ("mm", "cm")


def _number(value: Value) -> float:
    text = cell_text(value).replace(",", ".")
    return float(text) if re.fullmatch(r"[0-9]+(\.[0-9]+)?", text) else 0.0
