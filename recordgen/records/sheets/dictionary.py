"""The columns of the tables explained: meaning, form, unit, words that may stand there, and what is possible."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from recordgen.csv_text import PlainRow
from recordgen.records.models.annotations import bare, extra
from recordgen.records.models.names import FEET
from recordgen.records.sheets.leaves import Leaf
from recordgen.records.sheets.tables import PlainTable, TableColumn, key_of

DICTIONARY = "dictionary"
DICTIONARY_COLUMNS = ("table", "column", "key", "meaning", "form", "unit", "codes", "lowest", "highest")


def dictionary_rows(tables: Iterable[PlainTable]) -> Iterator[PlainRow]:
    """One row for each column of the tables, in their order."""
    for table in tables:
        for column in table.filled_columns:
            yield _entry(table.name, column)


def _entry(table: str, column: TableColumn) -> PlainRow:
    possible = extra(column.leaf.info).get("possible", (None, None)) if column.leaf else (None, None)
    return {
        "table": table,
        "column": column.name,
        "key": "yes" if column.is_key else "no",
        "meaning": " ".join(column.meaning.split()),
        "form": _form(column),
        "unit": column.unit or ("px" if table == "photographs" and column.name in ("width", "height") else ""),
        "codes": "; ".join(_codes(column)),
        "lowest": possible[0],
        "highest": possible[1],
    }


def _codes(column: TableColumn) -> tuple[str, ...]:
    if column.leaf:
        return column.leaf.codes
    return FEET if column.name == "foot" else ()


def _form(column: TableColumn) -> str:
    """Tell how a value is written: number, day, text, one of the codes, several of them, or JSON."""
    leaf = column.leaf
    if leaf is None:
        return _KEY_FORMS.get(key_of(column.name), "text")
    if leaf.kind == "named":
        return "text"
    if leaf.kind == "words":
        return "several, parted by ; or by lines" if _is_words(leaf) else "JSON"
    if leaf.codes:
        return "one of the codes"
    name = getattr(bare(leaf.info.annotation), "__name__", "")
    return _FORMS.get(name, "JSON")


def _is_words(leaf: Leaf) -> bool:
    return bool(leaf.codes) or any(one in str(leaf.info.annotation) for one in ("str", "DaySpan"))


_KEY_FORMS = {
    "date": "year-month-day",
    "foot": "one of the codes",
    **dict.fromkeys(("number", "position", "width", "height"), "whole number"),
}
_FORMS = {
    "str": "text",
    "float": "number",
    "int": "whole number",
    "date": "year-month-day",
    "Birth": "year-month-day, or year",
    "DaySpan": "year-month-day, or two with `to` between",
}
