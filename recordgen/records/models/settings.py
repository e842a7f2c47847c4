"""A practice's own settings, as `practice.yaml` holds them: who trims, when, how often and how it measures."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from recordgen.language.catalogs import ENGLISH_CODE, languages
from recordgen.problems import quoted
from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import (
    Country,
    Day,
    Days,
    Millimetres,
    Number,
    OneLine,
    Record,
    Text,
    Whole,
    YesNo,
    field,
    list_field,
    measured,
    refusal,
)
from recordgen.records.models.names import FindingKind
from recordgen.records.models.stable import SEEN, Publish, SeenEntry
from recordgen.sentences import say
from recordgen.units import UNITS, UnitsName

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


class Weeks(Record):
    """Usual interval by class of animal, in weeks."""

    adult: Number = measured("weeks", (1, 26), (3, 12), "horses and ponies", 6, basis=basis.USUAL_WEEKS)
    donkey: Number = measured("weeks", (1, 26), (4, 14), "donkeys", 8, basis=basis.USUAL_WEEKS)
    foal: Number = measured("weeks", (1, 26), (2, 8), "foals, up to one year", 4, basis=basis.JUDGEMENT)


class Allowances(Record):
    """The length a toe may grow from trim to trim, by class of animal; left out, what grows in the usual weeks."""

    adult: Millimetres | None = measured("mm", (2, 40), (6, 16), "horses and ponies", basis=basis.GROWN)
    donkey: Millimetres | None = measured("mm", (2, 40), (6, 16), "donkeys", basis=basis.GROWN)
    foal: Millimetres | None = measured("mm", (2, 40), (6, 16), "foals, up to one year", basis=basis.JUDGEMENT)


class Sooner(Record):
    """A rule of the practice: after a finding, the next visit comes no later than so many weeks after the last."""

    finding: FindingKind = field("what was found on any foot", ...)
    from_mm: Millimetres | None = measured(
        "mm", (0, 200), (1, 60), "the least size of it that counts", basis=basis.JUDGEMENT
    )
    weeks: Number = measured(
        "weeks", (0.5, 26), (2, 8), "the longest time until the next visit", ..., basis=basis.JUDGEMENT
    )


def _month(number: int) -> int:
    if not 1 <= number <= 12:
        raise refusal(
            "month-unknown",
            say("{number} is no month", number=number),
            say("Write the months as numbers, from 1 for January to 12 for December"),
        )
    return number


Month = Annotated[Whole, AfterValidator(_month)]


class Seasons(Record):
    """The months by which care notes go here; what is left out, the country tells."""

    wet_months: tuple[Month, ...] | None = field(
        "months of wet ground, such as [10, 11, 12, 1, 2, 3]; the others are dry"
    )
    warm_months: tuple[Month, ...] | None = field("months of warmth, such as [4, 5, 6, 7, 8, 9]; the others are cold")


def _language(code: str) -> str:
    if code not in languages():
        known = ", ".join(languages())
        raise refusal(
            "language-unknown",
            say("there are no words in the language {code}", code=quoted(code)),
            say("Choose from {known}", known=known),
        )
    return code


class PracticeFile(Record):
    """The trimmer and the ways of the practice."""

    name: OneLine = field("name of the practice", ...)
    trimmer: OneLine = field("who trims", ...)
    phone: OneLine | None = field("telephone number, as dialled")
    email: OneLine | None = field("address")
    country: Country | None = field("two letters, such as GB; local law decides")
    region: OneLine | None = field("part of the country whose public holidays are kept, such as SCT in GB or BY in DE")
    language: Annotated[OneLine, AfterValidator(_language)] = field("in which readers read, such as de", ENGLISH_CODE)
    feet: Literal["left and right", "near and off"] = field("how feet are named on the pages", "left and right")
    units: UnitsName = field(
        "in which pages, the phone and the terminal show lengths, heights and weights: metric (mm, cm, kg), metric and "
        "hands, or inches (inches in sixteenths, hands, pounds)",
        "metric",
    )
    inches_since: Day | None = field("with units: inches, the first day whose visits may be typed in inches")
    usual_weeks: Weeks = Field(default_factory=Weeks.model_construct, description="usual interval by class")
    allowances: Allowances = Field(default_factory=Allowances.model_construct, description="growth by class")
    sooner: tuple[Sooner, ...] = list_field("findings after which this practice comes sooner")
    leeway_days: Whole = measured("days", (0, 28), (0, 14), "before and after the best day", 7, basis=basis.JUDGEMENT)
    working_days: tuple[Weekday, ...] = field("days of work", ("mon", "tue", "wed", "thu", "fri"))
    holidays: tuple[Days, ...] = list_field("days nobody works, such as 2026-12-24 to 2027-01-02")
    work_on_public_holidays: YesNo = field("whether rounds may fall on a public holiday of the country", False)
    horses_a_day: Whole = measured("horses", (1, 40), (2, 16), "most horses in one day", 8, basis=basis.COMMON_PRACTICE)
    seasons: Seasons | None = field(
        "which months are wet and which are warm, where the country does not tell it rightly"
    )
    field_page: Publish | None = field("where and how the page for the phone is published")
    methods: dict[str, Text] = field("how each measure is usually taken, such as toe_angle: gauge", {})
    hand_error: Number | None = measured(
        "px",
        (0.1, 30),
        (0.3, 6),
        "SD of one point picked on a picture, at an image 1000 px wide",
        basis=basis.JUDGEMENT,
    )
    seen: tuple[SeenEntry, ...] = list_field(SEEN)


def inches_since(practice: PracticeFile) -> dt.date | None:
    """The first day whose visits may be typed in inches; None of a practice that measures in millimetres."""
    return (practice.inches_since or dt.date.min) if UNITS[practice.units].inches else None
