"""The file that tells what stands in which column of a sheet: proposed by the program, corrected by the trimmer."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import Field

from recordgen.problems import Trouble
from recordgen.records.models.fields import OneLine, Record, Text, Whole, YesNo, field, list_field
from recordgen.records.yaml.read import Written, read_record
from recordgen.sentences import say, sentences

NOTHING = "nothing"
DateOrder = Literal["day month year", "month day year", "year month day"]
DecimalSign = Literal["point", "comma"]
LengthUnit = Literal["mm", "cm", "in"]


class SheetColumn(Record):
    """One column: where it stands, what is written over it, and what it is."""

    column: OneLine = field("its letters, such as C", ...)
    heading: Text | None = field("what is written over it, so that a moved column is noticed")
    is_: OneLine = Field(NOTHING, alias="is", description="what it is, such as date or foot.before.toe_length")
    unit: LengthUnit | None = field("unit of its lengths, where neither cell nor heading tells another")
    words: dict[str, Text] = field("what a word in its cells stands for, such as {x: yes}", {})
    with_: dict[str, Text] = Field(
        {}, alias="with", description="what else is meant wherever a cell is filled, such as {lameness.scale: AAEP}"
    )


class ColumnsFile(Record):
    """The way a sheet is read."""

    sheet: OneLine | None = field("which sheet of a workbook")
    first_row: Whole = field("the first row below the headings", ...)
    heading_rows: Whole = field("how many rows of headings stand above it", 1)
    each_row: Literal["visit", "foot"] = field("a row is a whole visit, or one foot of a visit", ...)
    dates: DateOrder | None = field("the order in dates that were typed as text")
    decimals: DecimalSign = field("the sign in numbers that were typed as text", "point")
    lengths: LengthUnit | None = field("unit of lengths where neither the column nor the cell tells one")
    stable: OneLine | None = field("folder of the stable, where no column tells it")
    stables: dict[str, OneLine] = field("folders of stables by their names in the sheet", {})
    new_horses: YesNo = field("whether a horse that is not known yet is begun without asking", False)
    same_as_above: tuple[Text, ...] = list_field("columns in which an empty cell means the same as above")
    leave_out: tuple[Text, ...] = list_field("rows whose first filled cell begins so are left out, such as [Total]")
    columns: tuple[SheetColumn, ...] = field("the columns, from left to right", ...)


def read_columns(file: Path) -> Written[ColumnsFile]:
    """The file of columns. Raises Trouble where anything in it is wrong."""
    written, problems = read_record(file, file.name, ColumnsFile)
    if written is None:
        first = problems[0]
        way_out = sentences(first.way_out, say("Or delete the file, and have a new one made"))
        raise Trouble(
            say("the columns cannot be read: {place}: {message}", place=first.place, message=first.message), way_out
        )
    return written
