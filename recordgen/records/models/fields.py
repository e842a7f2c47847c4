"""The kinds of value a record holds, each read from what was typed and refused in words."""

from __future__ import annotations

import calendar
import datetime as dt
import re
from collections.abc import Callable, Mapping
from typing import Annotated, Any, NamedTuple

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, GetJsonSchemaHandler, WithJsonSchema
from pydantic.config import JsonDict
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError

from recordgen.days import days_meant
from recordgen.problems import is_visible, quoted
from recordgen.records.models import quantity as q
from recordgen.records.models.names import SizeClass
from recordgen.records.models.ranges import Likely
from recordgen.sentences import OR, Said, listed, say

FIRST_YEAR = 1950  # no animal in a record was born or seen before

_DAY = re.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}")
_SPAN = "^ *[0-9]{4}-[0-9]{2}-[0-9]{2}( to [0-9]{4}-[0-9]{2}-[0-9]{2})? *$"
_YEAR = re.compile("[0-9]{4}")
# What stands between the first and the last of several days, but for our own word.
_BETWEEN = re.compile(" +(?:to|until|bis|-|–|—) +")
_YEAR_MONTH = re.compile("[0-9]{4}-(0[1-9]|1[0-2])")
# A number, or a fraction with or without a whole in front of it, and perhaps a unit.
_WITH_UNIT = '^ *[-+]?[0-9][0-9./ -]*[¼½¾⅛⅜⅝⅞]? *[a-zA-Z"°″]*\\.?$'


class DaySpan(NamedTuple):
    """Days in a row, the last one included."""

    first: dt.date
    last: dt.date


def years_between(born: dt.date, day: dt.date) -> int:
    """Whole years from birth to a day; a horse born on 29 February has its birthday on 1 March in other years."""
    birthday = dt.date(day.year, born.month, 1) + dt.timedelta(days=born.day - 1)
    return day.year - born.year - (day < birthday)


class Birth(NamedTuple):
    """The birth of an animal, as far as it is known: the first and the last day that it can have been."""

    first: dt.date
    last: dt.date

    def __str__(self) -> str:
        """The day, or the month or the year where only that is known."""
        if self.first == self.last:
            return self.first.isoformat()
        return f"{self.first:%Y-%m}" if self.first.month == self.last.month else str(self.first.year)

    def youngest(self, day: dt.date) -> dt.date:
        """The day of birth by which it is youngest on a day; not after that day, but where it was born later."""
        return max(self.first, min(self.last, day))

    def years_on(self, day: dt.date) -> int:
        """Whole years on a day, as young as it can be."""
        return years_between(self.youngest(day), day)


class Record(BaseModel):
    """Base of all records: unknown keys are refused, and a record that was read does not change."""

    model_config = ConfigDict(extra="forbid", frozen=True, str_strip_whitespace=True)


def refusal(code: str, message: Said, way_out: Said, write: str = "", at: str = "") -> PydanticCustomError:
    """The error a value is refused with: its code, what is wrong, and the way out.

    write: the value that was probably meant, told behind its key in place of the way out. at: the key that is meant,
    where a record as a whole is refused.
    """
    told = {"code": code, "message": message, "way_out": way_out, "write": write, "at": at}
    return PydanticCustomError("refused", "{message}", told)


class NamedKeys:
    """Marks a mapping whose keys have one spelling inside and several typed: the schema offers the one, takes any."""

    def __init__(self, *names: str) -> None:
        self.names = names

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        value = handler(core)["additionalProperties"]
        return {"type": "object", "properties": dict.fromkeys(self.names, value), "additionalProperties": value}


class OrText:
    """Marks a record that may be written as one text instead; the schema allows both."""

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {"anyOf": [{"type": "string", "minLength": 1}, handler(core)]}


def with_names(named: Callable[[str], str | None]) -> Callable[[Any], Any]:
    """A reader of mappings that gives each typed key its one name; an unknown or doubled one stays as typed."""

    def read(value: Any) -> Any:
        if not isinstance(value, dict):
            return value
        found: dict[str, Any] = {}
        for typed, inside in value.items():
            name = named(typed)
            doubled = name in found or (name != typed and name in value)
            found[typed if name is None or doubled else name] = inside
        return found

    return read


def spell_as(named: Callable[[str], str | None]) -> BeforeValidator:
    """Gives a typed name its one spelling; an unknown one stays as typed."""
    return BeforeValidator(lambda value: (named(value) or value) if isinstance(value, str) else value)


def stripped_text(value: Any, wanted: Said, example: str) -> str:
    """The text of a value, without blanks around it. wanted: what it should be. Raises refusal where it is none."""
    if isinstance(value, str):
        return value.strip()
    found = say("nothing was written") if value is None else say("several values stand here")
    raise refusal(
        "one-value-expected",
        say("{wanted} is expected, but {found}", wanted=wanted, found=found),
        say("Write it like {example}", example=example),
    )


def _number(read: Callable[[str], float], example: str) -> Callable[[Any], Any]:
    def parse(value: Any) -> Any:
        if isinstance(value, int | float):
            return value
        text = stripped_text(value, say("a number"), example)
        try:
            return read(text)
        except q.NotAQuantity as why:
            way_out = why.way_out or say("Write it like {example}", example=example)
            message = say("{text} does not read as a number: {why}", text=quoted(text), why=why)
            raise refusal("number-form", message, way_out, why.write) from None

    return parse


def _in(units: dict[str, float]) -> Callable[[str], float]:
    return lambda text: q.quantity(text, units)


def _whole(value: float) -> int:
    if value != int(value):
        raise refusal(
            "number-not-whole",
            say("{value:g} is not a whole number", value=value),
            say("Write a whole number such as 6"),
        )
    return int(value)


def _date(value: Any) -> dt.date:
    if isinstance(value, dt.date):
        return value
    text = stripped_text(value, say("a date"), "2026-10-14")
    if not _DAY.fullmatch(text):
        raise refusal("date-form", say("{text} is not a date", text=quoted(text)), *_day_to_write(text))
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        message, (_, write) = say("'{text}' is not a day in the calendar", text=text), _day_to_write(text)
        raise refusal("date-not-in-calendar", message, say("Look at the month and the day"), write) from None
    if day.year < FIRST_YEAR:
        raise refusal(
            "date-too-early",
            say("'{text}' is too long ago", text=text),
            say("Write a year from {first_year} on", first_year=FIRST_YEAR),
        )
    return day


def _day_to_write(text: str) -> tuple[Said, str]:
    """The way out of a day in another form, and the day to write where only one can be meant."""
    meant = [day.isoformat() for day in days_meant(text)]
    if len(meant) > 1:
        return say("Write {meant}: year, month, day", meant=listed(meant, OR)), ""
    return say("Write year-month-day, like 2026-10-14"), "".join(meant)


def _days(value: Any) -> DaySpan:
    if isinstance(value, DaySpan):
        return value
    text = stripped_text(value, say("a day, or days from one to another,"), "2026-12-24 to 2027-01-02")
    first, to, last = text.partition(" to ")
    parts = [days_meant(part) for part in _BETWEEN.split(text)]
    if len(parts) == 2 and all(len(days) == 1 for days in parts) and (not to or not _DAY.fullmatch(first.strip())):
        write = " to ".join(days[0].isoformat() for days in parts)
        raise refusal(
            "date-form",
            say("{text} is not in the form of days", text=quoted(text)),
            say("Write the days like that"),
            write,
        )
    span = DaySpan(_date(first), _date(last if to else first))
    if span.last < span.first:
        raise refusal(
            "days-backwards", say("{text} ends before it begins", text=quoted(text)), say("Write the earlier day first")
        )
    return span


def _born(value: Any) -> Birth:
    if isinstance(value, Birth):
        return value
    text = value.strip() if isinstance(value, str) else value
    if isinstance(text, str) and _YEAR.fullmatch(text):
        return Birth(_date(f"{text}-01-01"), _date(f"{text}-12-31"))
    if isinstance(text, str) and (month := _month(text)):
        first = _date(f"{month}-01")
        return Birth(first, first.replace(day=calendar.monthrange(first.year, first.month)[1]))
    if isinstance(text, str) and not days_meant(text) and not _DAY.fullmatch(text):
        years = re.findall(r"(?<![0-9])(?:19|20)[0-9]{2}(?![0-9])", text)
        way_out = say("Write the day, the month or the year, like 2015-05-12, May 2015 or 2015")
        raise refusal(
            "date-form", say("{text} is not a date", text=quoted(text)), way_out, years[0] if len(years) == 1 else ""
        )
    day = _date(text)
    return Birth(day, day)


def _month(text: str) -> str | None:
    """A typed month such as May 2026 or 2026-05, as year and month with a hyphen; None for anything else."""
    if _YEAR_MONTH.fullmatch(text):
        return text
    name, _, year = text.partition(" ")
    names = [name_of.lower() for name_of in (*calendar.month_name, *calendar.month_abbr)]
    at = names.index(name.lower()) % len(calendar.month_name) if name and name.lower() in names else 0
    return f"{year}-{at:02}" if at and _YEAR.fullmatch(year) else None


_ANSWERS = {"true": True, "yes": True, "false": False, "no": False}


def _yes_or_no(value: Any) -> bool:
    if isinstance(value, bool):
        return value
    text = stripped_text(value, say("yes or no"), "yes")
    if text.lower() not in _ANSWERS:
        raise refusal(
            "yes-or-no-expected", say("{text} is neither yes nor no", text=quoted(text)), say("Write yes or no")
        )
    return _ANSWERS[text.lower()]


# What turns the direction of writing until it is ended, by what ends it.
# Source: Unicode Standard Annex 9, explicit directional embeddings, overrides and isolates. From memory, not read.
_TURN_ENDS = dict.fromkeys("\u202a\u202b\u202d\u202e", "\u202c") | dict.fromkeys("\u2066\u2067\u2068", "\u2069")


def end_turns(text: str) -> str:
    """Text in which each turn of direction ends, so that it turns no words that a page puts behind it."""
    if text.isascii():
        return text
    ends: list[str] = []
    for sign in text:
        if sign in _TURN_ENDS:
            ends.append(_TURN_ENDS[sign])
        elif sign == "\u2069" and sign in ends:
            while ends.pop() != sign:  # It ends what began within, too.
                pass
        elif ends and sign == ends[-1]:
            ends.pop()
    return text + "".join(reversed(ends))


# Quotes of a word processor, which YAML takes for letters.
CURLY = "“”„‟‘’‚‛«»"


def without_quotes(text: str) -> str:
    """Text less the quotes of a word processor that stand around all of it."""
    plain = text.strip()
    whole = len(plain) > 2 and plain[0] in CURLY and plain[-1] in CURLY and not {*plain[1:-1]} & {*CURLY}
    return plain[1:-1].strip() if whole else text


def _one_line(text: str) -> str:
    hidden = next((sign for sign in text if not is_visible(sign)), None)
    if hidden is not None:
        message = say(
            "a line's end or a sign that does not show stands in {text} (U+{hidden:04X})",
            text=quoted(text),
            hidden=ord(hidden),
        )
        raise refusal("one-line-expected", message, say("Type it anew, on one line"))
    return text


def _country(value: Any) -> str:
    text = stripped_text(value, say("a country"), "GB")
    if not re.fullmatch("[A-Z]{2}", text):
        raise refusal(
            "country-form",
            say("{text} is not a country in two capital letters", text=quoted(text)),
            say("Write it like GB, DE or US"),
        )
    return text


def _schema(unit: str) -> WithJsonSchema:
    return WithJsonSchema({"type": ["number", "string"], "pattern": _WITH_UNIT, "x-unit": unit})


def _quantity(units: dict[str, float], example: str) -> BeforeValidator:
    return BeforeValidator(_number(_in(units), example))


_MM = "88 (millimetres), 8.8 cm or 3 1/4 in"
_HEIGHT = BeforeValidator(_number(q.height_cm, "148 (centimetres) or 14.2 hh"))
_WHOLE = BeforeValidator(lambda value: _whole(_number(_in(q.NO_UNIT), "6")(value)))
_ONE_VALUE = {"type": ["string", "number", "boolean"]}

Millimetres = Annotated[float, _quantity(q.MILLIMETRES, _MM), _schema("mm")]
Centimetres = Annotated[float, _quantity(q.CENTIMETRES, "180 (centimetres) or 71 in"), _schema("cm")]
Height = Annotated[float, _HEIGHT, _schema("cm")]
# A value of a measure that its table names: a length in any unit, or an angle.
OfAnyMeasure = Annotated[float, _quantity({**q.MILLIMETRES, **q.DEGREES}, "2, or 1/8 in"), _schema("of the measure")]
Degrees = Annotated[float, _quantity(q.DEGREES, "51 or 51.5"), _schema("degrees")]
Number = Annotated[float, _quantity(q.NO_UNIT, "5 or 5.5"), WithJsonSchema({"type": "number"})]
Whole = Annotated[int, _WHOLE, WithJsonSchema({"type": "integer"})]
Day = Annotated[dt.date, BeforeValidator(_date), WithJsonSchema({"type": "string", "format": "date"})]
Days = Annotated[DaySpan, BeforeValidator(_days), WithJsonSchema({"type": "string", "pattern": _SPAN})]
Born = Annotated[Birth, BeforeValidator(_born), WithJsonSchema({"type": ["string", "integer"]})]
YesNo = Annotated[bool, BeforeValidator(_yes_or_no), WithJsonSchema({"enum": [True, False, "yes", "no"]})]
# In characters. Judgement: a note of 5,000 words, and a line.
LONGEST_TEXT, LONGEST_LINE = 40_000, 4_000
_WORDS = WithJsonSchema(_ONE_VALUE)
Text = Annotated[str, Field(min_length=1, max_length=LONGEST_TEXT), _WORDS, AfterValidator(end_turns)]
_Line = Annotated[str, Field(min_length=1, max_length=LONGEST_LINE), _WORDS]
OneLine = Annotated[_Line, AfterValidator(_one_line), AfterValidator(without_quotes)]
Country = Annotated[str, BeforeValidator(_country), WithJsonSchema({"type": "string", "pattern": "^[A-Z]{2}$"})]


def measured(
    unit: str,
    possible: tuple[float, float],
    likely: tuple[float, float],
    description: str,
    default: Any = None,
    *,
    basis: str,
    by_class: Mapping[SizeClass, Likely] | None = None,
) -> Any:
    """A field for a quantity: its unit, the range that is possible and the range that is likely.

    Outside `possible` a value is refused; outside `likely` it is asked about. Both: low and high in `unit`.
    default: None where it may be left out, ... where it must be there. basis: where `likely` comes from (`ranges.py`).
    by_class: what is likely for a class of animals, where that is known; `likely` holds where the class is not.
    """
    extra: JsonDict = {"unit": unit, "possible": list(possible), "likely": list(likely), "basis": basis}
    if by_class:
        extra["by_class"] = {name: [one.low, one.high, one.basis] for name, one in by_class.items()}
    told = description if unit in description.split() else f"{description} ({unit})"
    return Field(default, ge=possible[0], le=possible[1], description=told, json_schema_extra=extra)


def field(description: str, default: Any = None) -> Any:
    """A field with a description and a default (None: it may be left out)."""
    return Field(default, description=description)


def list_field(description: str) -> Any:
    """A field for a list that may be left out."""
    return Field((), description=description)
