"""A cell of a sheet as a person would have typed it into a visit's file."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from recordgen.problems import quoted
from recordgen.records.models.names import Foot, foot_named
from recordgen.records.sheets.columns import DateOrder, DecimalSign
from recordgen.records.sheets.grid import Value
from recordgen.records.sheets.leaves import SEEN, Leaf
from recordgen.sentences import Said, say

# Cells in which somebody wrote that there is nothing. Common practice, no source.
EMPTY = {"-", "–", "—", "n/a", "."}
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
LENGTHS = ("mm", "cm")

_BARE = re.compile(r"[-+]?[0-9][0-9 ./]*[0-9]?(?:[¼½¾⅛⅜⅝⅞])?|[¼½¾⅛⅜⅝⅞]|[-+]?\.[0-9]+")
_DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")
_THREE = re.compile(r"([0-9]{1,4})[./\- ]+([0-9]{1,2}|[A-Za-z]{3,9})[.,/\- ]+([0-9]{1,4})")
_MONTH_FIRST = re.compile(r"([A-Za-z]{3,9})[. ]+([0-9]{1,2})(?:st|nd|rd|th)?,? +([0-9]{4})")
_YES_NO = {"y": "yes", "n": "no", "true": "yes", "false": "no"}
_FRONTS = ("front", "fore")


class Unfit(ValueError):
    """A cell that cannot be what its column is: why, and the way out."""

    def __init__(self, why: Said, way_out: Said) -> None:
        super().__init__(why)
        self.why = why
        self.way_out = way_out


@dataclass(frozen=True)
class CellForm:
    """The form of the cells of a column. unit: of its lengths. words: what a word in them stands for."""

    dates: DateOrder | None = None
    decimals: DecimalSign = "point"
    unit: str | None = None
    words: Mapping[str, str] = field(default_factory=dict)


def is_empty(value: Value) -> bool:
    """Tell whether a cell says nothing."""
    return value is None or (isinstance(value, str) and value.strip().lower() in EMPTY)


def cell_text(value: Value) -> str:
    """A cell as text: a number without needless digits, a day as year-month-day."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:.4f}".rstrip("0").rstrip(".")
    return value.isoformat() if isinstance(value, dt.date) else str(value or "").strip()


def as_typed_value(value: Value, leaf: Leaf | None, how: CellForm) -> Any:
    """A filled cell as the value that somebody would have typed: text, or a list of it, or an empty finding.

    What cannot be such a value comes back as it stands, for the record's own model to refuse.
    """
    text = _in_words(cell_text(value), how)
    if leaf is None:
        return text
    if leaf.kind == "seen":
        return {} if text.lower() in (SEEN, "yes", "y", "true") else text
    if leaf.kind == "words":
        return _several(text, leaf)
    if leaf.unit:
        return quantity(value, text, leaf, how)
    if leaf.path in ("next.date",):
        return day(value, how).isoformat()
    if leaf.is_yes_or_no:
        return _YES_NO.get(text.lower(), text)
    return _code(text, leaf)


def _in_words(text: str, how: CellForm) -> str:
    words = {word.lower(): means for word, means in how.words.items()}
    return words.get(text.lower(), text)


def _several(text: str, leaf: Leaf) -> Any:
    parts = [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]
    if leaf.codes and [part.lower() for part in parts] in (["none"], ["no"]):
        return "none"
    return [_code(part, leaf) for part in parts]


def _code(text: str, leaf: Leaf) -> str:
    """A word as the models spell it, where it is one of theirs but for capital letters and blanks."""
    plain = " ".join(text.lower().replace("_", " ").replace("-", " ").split())
    return next((code for code in leaf.codes if code.lower() == plain), text)


def quantity(value: Value, text: str, leaf: Leaf, how: CellForm) -> str:
    """A number with its unit, where it is bare and no unit of the model's own is meant."""
    if how.decimals == "comma":
        text = _DECIMAL_COMMA.sub(".", text)
    if leaf.unit not in LENGTHS or how.unit in (None, leaf.unit):
        return text
    return f"{text} {how.unit}" if _BARE.fullmatch(text) else text


def day(value: Value, how: CellForm) -> dt.date:
    """The day that a cell tells. Raises Unfit."""
    if isinstance(value, dt.date):
        return value
    if isinstance(value, int | float):
        raise Unfit(
            say("{value} is a number, not a day", value=cell_text(value)),
            say("Give the column the form of a date in your program"),
        )
    text = re.sub(r"[T ][0-9]{1,2}:[0-9]{2}(:[0-9]{2})?$", "", str(value or "").strip())
    found = _THREE.fullmatch(text)
    if english := _MONTH_FIRST.fullmatch(text):
        return _calendar(text, english[3], english[1], english[2])
    if found is None:
        raise Unfit(say("{text} is no day", text=quoted(text)), say("Write it like 2026-10-14"))
    first, second, third = found.groups()
    if len(first) == 4:
        return _calendar(text, first, second, third)
    if second[0].isalpha():
        return _calendar(text, third, second, first)
    match how.dates:
        case "day month year":
            return _calendar(text, third, second, first)
        case "month day year":
            return _calendar(text, third, first, second)
        case "year month day":
            return _calendar(text, first, second, third)
    way_out = say("Write dates: day month year, or dates: month day year, into the file of columns")
    raise Unfit(say("{text} does not tell which number is the day and which the month", text=quoted(text)), way_out)


def _calendar(text: str, year: str, month: str, day_: str) -> dt.date:
    if not (year.isdigit() and day_.isdigit() and len(year) in (2, 4)):
        raise Unfit(say("{text} is no day", text=quoted(text)), say("Write it like 2026-10-14"))
    number = int(month) if month.isdigit() else _month(month)
    try:
        return dt.date(int(year) + (2000 if len(year) == 2 else 0), number, int(day_))
    except ValueError:
        way_out = say("Look at the day and the month, and at `dates` in the file of columns")
        raise Unfit(say("{text} is not in the calendar", text=quoted(text)), way_out) from None


def _month(word: str) -> int:
    return MONTHS.index(word[:3].lower()) + 1 if word[:3].lower() in MONTHS else 0


def foot(value: Value, how: CellForm) -> Foot:
    """The foot that a cell tells: LF, near fore, left front. Raises Unfit."""
    text = _in_words(cell_text(value), how)
    plain = re.sub(r"[^a-z]+", " ", text.lower()).strip()
    for front in _FRONTS:
        plain = plain.replace(front, "fore")
    named = foot_named(plain.replace("back", "hind").replace("rear", "hind")) or foot_named(plain.replace(" ", ""))
    if named is None:
        way_out = say(
            "Write LF, RF, LH, RH or near fore, or tell the word in the file of columns: words: {{VL: left_fore}}"
        )
        raise Unfit(say("{text} is no foot", text=quoted(text)), way_out)
    return named
