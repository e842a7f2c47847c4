"""The reference tables: the words people read, with sources; a practice may override any entry by its key.

The tables lie in `site_templates/words`. A practice that has a file of the same name under its own records, in
`site_templates/words`, adds to the table and replaces entries of the same key.
"""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, model_validator

from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import (
    Country,
    Day,
    Number,
    Record,
    Text,
    Whole,
    YesNo,
    field,
    list_field,
    measured,
    refusal,
)
from recordgen.records.models.names import CareClass, Kind
from recordgen.sentences import say

Level = Literal["call now", "call today", "arrange soon", "keep an eye on"]
# Whom a caution asks to ring.
Whom = Literal["vet", "trimmer"]
# The months a care note is for; which they are, a practice's file or its country tells.
CareSeason = Literal["wet", "dry", "warm", "cold"]
# What is recorded that a care note may suit.
CareReason = Literal[
    "infection of the frog",
    "deep groove",
    "gap at the white line",
    "crack",
    "chip",
    "sore after trimming",
    "tender sole",
    "warmth or pulse",
    "crest or condition",
    "boots",
    "foal",
    "wet months",
    "dry months",
]
# The parts of the page on safety, in its order.
SafetySection = Literal["vet now", "vet today", "handling", "hygiene", "chemicals", "records", "data"]


# The way of a measure that was traced on a picture.
TRACING = "tracing"


class Method(Record):
    """A way of taking a measure and how well it repeats."""

    sd: Number = Field(gt=0, description="standard deviation of one reading, in the measure's unit")
    source: Text = field("where the figure comes from", ...)
    assumed: YesNo = field("whether the figure is assumed rather than published", False)
    rounded: YesNo = field(
        "whether the sd comes of figures rounded as they are typed, so that rounding is in it", False
    )


class PublishedContext(Record):
    """A published figure, told as context and never as a verdict."""

    text: Text = field("the figure and how many horses exceed it", ...)
    source: Text = field("where it was published", ...)


class MeasureWords(Record):
    """One measure: its name, its meaning, its landmarks, where it stands in a visit, and how well it repeats."""

    name: Text = field("name in the trade", ...)
    plain: Text = field("what it is, for an owner", ...)
    landmarks: Text = field("from where to where it is taken", ...)
    view: Literal["side", "front", "sole", "tape", "computed"] = field("how the foot is looked at", ...)
    path: Text | None = field("where it stands in a foot's record; @ for the moment, * for the zone")
    minus: tuple[Text, ...] = list_field("two measures: the first less the second")
    ratio: tuple[Text, ...] = list_field("two measures: the first over the second")
    traced: Text | None = field("the figure of a tracing that gives it where it was not measured; * for the zone")
    together: Text | None = field(
        "of two measures: the figure of a tracing that tells it, where one tracing gives both"
    )
    unit: Text | None = field("unit of a measure that stands nowhere in a foot's record")
    detail: YesNo = field("whether it stands with the tracings alone, not among the measures of every visit", False)
    headline: YesNo = field("whether a change of it is told among what changed", False)
    decimals: Whole = field("digits shown behind the point", 0)
    methods: dict[str, Method] = field("how it may be taken; the first is the usual way", {})
    context: tuple[PublishedContext, ...] = list_field("published figures")

    @property
    def by_zone(self) -> bool:
        """Tell whether it is taken in each zone of the wall."""
        return "*" in (self.path or self.traced or "")


class CautionWords(Record):
    """One caution: how urgent, what was seen, what is safe meanwhile, what not to do, and why we say so."""

    level: Level = field("how urgent", ...)
    seen: Text = field("what was recorded, with {foot}, {day} and the facts of the rule", ...)
    meanwhile: Text = field("what is safe until somebody comes", ...)
    do_not: Text | None = field("what not to do")
    left_over: Text | None = field("what the record that ended it still told, with {size}")
    ring: tuple[Whom, ...] = field("whom to ring, whose number is then told", ("vet",))
    not_while: tuple[Text, ...] = list_field(
        "open cautions, by name or level, to which what is safe meanwhile gives way"
    )
    no_trim: YesNo = field("whether nothing is trimmed until the vet agrees", False)
    source: Text = field("where the advice comes from", ...)


def _require_source(value: str) -> str:
    if not value:
        message = say("nothing says where this advice comes from")
        raise refusal(
            "source-missing", message, say('Add source: with a name and a year, or "Common practice, no source"')
        )
    return value


class CareWords(Record):
    """One care note of the library."""

    what: Text = field("what to do", ...)
    why: Text = field("why", ...)
    how_often: Text = field("how often", ...)
    until: Text | None = field("until when")
    until_next_visit: YesNo = field("whether it ends with the visit after it, whatever the words of until", False)
    stop_if: Text | None = field("what to stop at")
    caution: Text | None = field("what to beware of")
    not_while: tuple[Text, ...] = list_field("open cautions, by name or level, while which the job is withheld")
    times_a_week: Whole | None = measured(
        "days", (1, 7), (1, 7), "on how many days of a week, for the list of ticks", basis=basis.BY_DEFINITION
    )
    season: CareSeason | None = field("the months it is for, where it is not for all")
    suits: tuple[CareReason, ...] = list_field("what is recorded that it may be a help with")
    source: Annotated[Text, BeforeValidator(_require_source)] = Field(
        "", validate_default=True, description="where the advice comes from"
    )


class Interval(Record):
    """Weeks between visits, the least and the most that a class usually needs."""

    at_least: Number = measured("weeks", (0.5, 52), (2, 12), "the least", ..., basis=basis.JUDGEMENT)
    at_most: Number = measured("weeks", (0.5, 52), (3, 16), "the most", ..., basis=basis.JUDGEMENT)

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.at_least > self.at_most:
            raise refusal(
                "weeks-backwards", say("at_least is more than at_most"), say("Write the fewer weeks in at_least")
            )
        return self


class UsualGrowth(Record):
    """Net growth of a class, and how much its animals differ."""

    mm_per_day: Number = measured("mm a day", (0.01, 2), (0.1, 0.6), "mean of the class", ..., basis=basis.GROWTH)
    sd: Number = measured(
        "mm a day", (0.001, 1), (0.01, 0.2), "standard deviation between animals", ..., basis=basis.JUDGEMENT
    )
    assumed: YesNo = field("whether the figures are assumed rather than published", False)


class ClassWords(Record):
    """One class of animals: its name, the interval it usually needs, and how fast its hoof wall usually grows."""

    name: Text = field("name of the class, in the plural", ...)
    weeks: Interval = field("weeks between visits", ...)
    weeks_source: Text = field("where the interval comes from", ...)
    growth: UsualGrowth = field("net growth of the toe", ...)
    growth_source: Text = field("where the growth comes from", ...)


class PublishedShare(Record):
    """The share of animals that a survey found something in."""

    name: Text = field("what the survey calls it", ...)
    percent: Number = measured("per cent", (0, 100), (0, 100), "share of the animals", ..., basis=basis.BY_DEFINITION)
    of: Whole = Field(gt=0, description="animals in the survey")


class PublishedClass(Record):
    """A class of feet that somebody published: its rule, and how many animals it takes in. It is no verdict."""

    name: Text = field("what its author calls it", ...)
    of: Literal["foot", "pair", "horse"] = field(
        "whether it is of a foot, of two feet of a pair, or of a horse", "foot"
    )
    kinds: tuple[Kind, ...] = field("the animals it was published for", ("horse", "pony"))
    measure: Text = field("the measure it is about; of a horse: load_kg_per_cm2", ...)
    size: YesNo = field("whether only the size of the measure counts and not its sign", False)
    over: Number | None = field("it begins above this")
    at_least: Number | None = field("it begins at this")
    under: Number | None = field("it begins below this")
    unit: Text | None = field("unit, where the measure is not of the table")
    rule: Text = field("the rule in words", ...)
    share: Text = field("how many animals it takes in, as far as published", ...)
    source: Text = field("where rule and share were published", ...)

    @model_validator(mode="after")
    def _one_bound(self) -> Self:
        if sum(bound is not None for bound in (self.over, self.at_least, self.under)) != 1:
            raise refusal(
                "class-one-bound",
                say("a class begins over, at_least or under one value"),
                say("Write one of the three"),
            )
        return self

    def takes_in(self, value: float) -> bool:
        """Tell whether a value falls in the class."""
        size = abs(value) if self.size else value
        if self.over is not None:
            return size > self.over
        return size >= self.at_least if self.at_least is not None else size < (self.under or 0)


class PatternWords(Record):
    """One finding that says something about a place where several horses have it."""

    name: Text = field("the finding", ...)
    seen: Text = field("how many had it, with {count}, {looked}, {since} and {name}", ...)
    maybe: Text = field("what it may come of, as a kind question in one sentence", ...)
    published: PublishedShare | None = field("the nearest published figure")
    source: Text = field("where the figure and the question come from", ...)


class ScaleWords(Record):
    """One scale of lameness, pain or condition: its ends, its steps, and what each grade means."""

    name: Text = field("name of the scale, as it stands beside a grade", ...)
    called: Literal["grade", "score", "total"] = field("what a value on it is called", ...)
    meaning: Text = field("what it tells, for an owner", ...)
    low: Number = field("lowest grade", ...)
    high: Number = field("highest grade", ...)
    step: Number = measured(
        "grades",
        (0.1, 1),
        (0.5, 1),
        "from one grade to the next: 1, or 0.5 where people write halves",
        ...,
        basis=basis.BY_DEFINITION,
    )
    grades: dict[Number, Text] = field("what each grade means; left out where only the total is known", {})
    source: Text = field("where the scale was published", ...)


class SafetyWords(Record):
    """One statement of the page on safety: where it stands there, what it says, and where that comes from."""

    section: SafetySection = field("where on the page; data is for the trimmer alone", ...)
    text: Text = field("what is so, or what to do", ...)
    meanwhile: Text | None = field("what is safe until somebody comes")
    source: Text = field("where it comes from", ...)


class ScopeWords(Record):
    """One note on what law asks in some countries, or in general: no legal advice, and true on the day it was read."""

    about: Literal["work", "data"] = field("what a trimmer may do, or what is kept on people", ...)
    countries: tuple[Country, ...] = list_field("where it holds, in two letters each; left out, everywhere")
    text: Text = field("what it says", ...)
    source: Text = field("where it was read", ...)
    read: Day = field("the day it was read", ...)


class Word(Record):
    """A word of the trade, explained."""

    name: Text = field("the word", ...)
    meaning: Text = field("what it means, for an owner", ...)


class ProblemWords(Record):
    """One code of problems: what it means, and an example that raises it with its mend; or its look in words.

    The example is lines of a file that is right otherwise.
    """

    meaning: Text = field("what is wrong, in one or two sentences", ...)
    file: Literal["practice", "stable", "horse", "visit", "shared", "words"] = field("the file it stands in", "visit")
    wrong: Text | None = field("lines that raise it")
    right: Text | None = field("the same lines, mended")
    beside: Text | None = field("another code that these lines may raise")
    shown: Text | None = field("what it looks like, where no lines can show it")

    @model_validator(mode="after")
    def _has_an_example(self) -> Self:
        if (self.wrong is None) != (self.right is None) or (self.wrong is None) == (self.shown is None):
            raise refusal(
                "problem-example", say("an example is wrong and right, or shown"), say("Write the two, or the one")
            )
        return self


class Reference(Record):
    """All tables, each by key."""

    measures: dict[str, MeasureWords] = field("the measures", {})
    cautions: dict[str, CautionWords] = field("the cautions", {})
    care: dict[str, CareWords] = field("the care notes", {})
    glossary: dict[str, Word] = field("words of the trade", {})
    safety: dict[str, SafetyWords] = field("the statements of the page on safety", {})
    scope: dict[str, ScopeWords] = field("notes on what law asks", {})
    classes: dict[CareClass, ClassWords] = field("the classes of animals", {})
    patterns: dict[str, PatternWords] = field("the patterns of a stable", {})
    published: dict[str, PublishedClass] = field("published classes of feet, as context", {})
    scales: dict[str, ScaleWords] = field("the scales of lameness, pain and condition", {})
    problems: dict[str, ProblemWords] = field("the codes of problems", {})
    phrases: dict[str, Text] = field("sentences that are put together while computing", {})
