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

# The national code has 38 bits: 2**38 - 1. Source: ISO 11784 (bit layout).
LARGEST_CHIP_NUMBER = 274_877_906_943


def microchip_fault(text: str) -> str | None:
    """The mistake in the form of a microchip number, or None.

    15 digits: 3 for a country or maker, 12 for the animal, which must fit into 38 bits.
    Source: ISO 11784; ICAR, code structure.
    """
    if not re.fullmatch(r"[0-9]*", text):
        return "a microchip number holds digits alone, 0 to 9"
    if len(text) != 15:
        return f"a microchip number has 15 digits; this has {len(text)}"
    if text.startswith("000"):
        return "a microchip number does not start with 000"
    if int(text[3:]) > LARGEST_CHIP_NUMBER:
        return f"the last 12 digits of a microchip number are {LARGEST_CHIP_NUMBER} at the most"
    return None


def ueln_fault(text: str) -> str | None:
    """The mistake in the form of a UELN, or None.

    15 characters: 3 digits for the country, 3 for the database, 9 for the animal; the last two may hold letters.
    Source: Regulation (EU) 2021/963; ueln.net, structure of the number.
    """
    if len(text) != 15:
        return f"a UELN has 15 characters; this has {len(text)}"
    if not re.fullmatch(r"[0-9]{3}[0-9A-Z]{12}", text):
        return "a UELN is 3 digits for the country, then 12 digits or letters without other signs"
    return None


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
    return day.year - born.year - ((day.month, day.day) < (born.month, born.day))


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


def refusal(code: str, message: str, way_out: str, write: str = "", at: str = "") -> PydanticCustomError:
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


def _stripped_text(value: Any, wanted: str, example: str) -> str:
    if isinstance(value, str):
        return value.strip()
    found = "nothing was written" if value is None else "several values stand here"
    raise refusal("one-value-expected", f"{wanted} is expected, but {found}", f"Write it like {example}")


def _number(read: Callable[[str], float], example: str) -> Callable[[Any], Any]:
    def parse(value: Any) -> Any:
        if isinstance(value, int | float):
            return value
        text = _stripped_text(value, "a number", example)
        try:
            return read(text)
        except q.NotAQuantity as why:
            way_out = why.way_out or f"Write it like {example}"
            message = f"{quoted(text)} does not read as a number: {why}"
            raise refusal("number-form", message, way_out, why.write) from None

    return parse


def _in(units: dict[str, float]) -> Callable[[str], float]:
    return lambda text: q.quantity(text, units)


def _whole(value: float) -> int:
    if value != int(value):
        raise refusal("number-not-whole", f"{value:g} is not a whole number", "Write a whole number such as 6")
    return int(value)


def _date(value: Any) -> dt.date:
    if isinstance(value, dt.date):
        return value
    text = _stripped_text(value, "a date", "2026-10-14")
    if not _DAY.fullmatch(text):
        raise refusal("date-form", f"{quoted(text)} is not a date", *_day_to_write(text))
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        message, (_, write) = f"'{text}' is not a day in the calendar", _day_to_write(text)
        raise refusal("date-not-in-calendar", message, "Look at the month and the day", write) from None
    if day.year < FIRST_YEAR:
        raise refusal("date-too-early", f"'{text}' is too long ago", f"Write a year from {FIRST_YEAR} on")
    return day


def _day_to_write(text: str) -> tuple[str, str]:
    """The way out of a day in another form, and the day to write where only one can be meant."""
    meant = [day.isoformat() for day in days_meant(text)]
    if len(meant) > 1:
        return f"Write {' or '.join(meant)}: year, month, day", ""
    return "Write year-month-day, like 2026-10-14", "".join(meant)


def _days(value: Any) -> DaySpan:
    if isinstance(value, DaySpan):
        return value
    text = _stripped_text(value, "a day, or days from one to another,", "2026-12-24 to 2027-01-02")
    first, to, last = text.partition(" to ")
    parts = [days_meant(part) for part in _BETWEEN.split(text)]
    if len(parts) == 2 and all(len(days) == 1 for days in parts) and (not to or not _DAY.fullmatch(first.strip())):
        write = " to ".join(days[0].isoformat() for days in parts)
        raise refusal("date-form", f"{quoted(text)} is not in the form of days", "Write the days like that", write)
    span = DaySpan(_date(first), _date(last if to else first))
    if span.last < span.first:
        raise refusal("days-backwards", f"{quoted(text)} ends before it begins", "Write the earlier day first")
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
        way_out = "Write the day, the month or the year, like 2015-05-12, May 2015 or 2015"
        raise refusal("date-form", f"{quoted(text)} is not a date", way_out, years[0] if len(years) == 1 else "")
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
    text = _stripped_text(value, "yes or no", "yes")
    if text.lower() not in _ANSWERS:
        raise refusal("yes-or-no-expected", f"{quoted(text)} is neither yes nor no", "Write yes or no")
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
        message = f"a line's end or a sign that does not show stands in {quoted(text)} (U+{ord(hidden):04X})"
        raise refusal("one-line-expected", message, "Type it anew, on one line")
    return text


def _country(value: Any) -> str:
    text = _stripped_text(value, "a country", "GB")
    if not re.fullmatch("[A-Z]{2}", text):
        raise refusal(
            "country-form", f"{quoted(text)} is not a country in two capital letters", "Write it like GB, DE or US"
        )
    return text


def _checked(fault: Callable[[str], str | None], name: str, example: str) -> Callable[[Any], str]:
    def parse(value: Any) -> str:
        text = _stripped_text(value, "a number as text", example).replace(" ", "").upper()
        if why := fault(text):
            raise refusal("identity-number", why, f"Compare it with the passport and scan again, or leave {name} out")
        return text

    return parse


def _schema(unit: str) -> WithJsonSchema:
    return WithJsonSchema({"type": ["number", "string"], "pattern": _WITH_UNIT, "x-unit": unit})


def _quantity(units: dict[str, float], example: str) -> BeforeValidator:
    return BeforeValidator(_number(_in(units), example))


_MM = "88 (millimetres), 8.8 cm or 3 1/4 in"
_HEIGHT = BeforeValidator(_number(q.height_cm, "148 (centimetres) or 14.2 hh"))
_WHOLE = BeforeValidator(lambda value: _whole(_number(_in(q.NO_UNIT), "6")(value)))
_CHIP = BeforeValidator(_checked(microchip_fault, "microchip", "968000004531234"))
_UELN = BeforeValidator(_checked(ueln_fault, "ueln", "372414001234567"))
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
Microchip = Annotated[str, _CHIP, WithJsonSchema({"type": ["string", "integer"]})]
Ueln = Annotated[str, _UELN, WithJsonSchema({"type": ["string", "integer"]})]


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


def told(description: str, default: Any = None) -> Any:
    """A field with a description and a default (None: it may be left out)."""
    return Field(default, description=description)


def several(description: str) -> Any:
    """A field for a list that may be left out."""
    return Field((), description=description)
