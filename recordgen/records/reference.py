"""The reference tables: the words people read, with sources; a practice may override any entry by its key.

The tables lie in `site_templates/words`. A practice that has a file of the same name under its own records, in
`site_templates/words`, adds to the table and replaces entries of the same key.
"""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from recordgen.records.fields import Number, Record, Text, Whole, YesNo, several, told

Level = Literal["call now", "call today", "arrange soon", "keep an eye on"]


class Method(Record):
    """A way of taking a measure and how well it repeats."""

    sd: Number = Field(gt=0, description="standard deviation of one reading, in the measure's unit")
    source: Text = told("where the figure comes from", ...)
    assumed: YesNo = told("whether the figure is assumed rather than published", False)


class Context(Record):
    """A published figure, told as context and never as a verdict."""

    text: Text = told("the figure and how many horses exceed it", ...)
    source: Text = told("where it was published", ...)


class MeasureWords(Record):
    """One measure: its name, its meaning, its landmarks, where it stands in a visit, and how well it repeats."""

    name: Text = told("name in the trade", ...)
    plain: Text = told("what it is, for an owner", ...)
    landmarks: Text = told("from where to where it is taken", ...)
    view: Literal["side", "front", "sole", "tape", "computed"] = told("how the foot is looked at", ...)
    path: Text | None = told("where it stands in a foot's record; @ for the moment, * for the zone")
    minus: tuple[Text, ...] = several("two measures: the first less the second")
    ratio: tuple[Text, ...] = several("two measures: the first over the second")
    unit: Text | None = told("unit of a computed measure")
    headline: YesNo = told("whether a change of it is told among what changed", False)
    decimals: Whole = told("digits shown behind the point", 0)
    methods: dict[str, Method] = told("how it may be taken; the first is the usual way", {})
    context: tuple[Context, ...] = several("published figures")


class CautionWords(Record):
    """One caution: how urgent, what was seen, what is safe meanwhile, what not to do, and why we say so."""

    level: Level = told("how urgent", ...)
    seen: Text = told("what was recorded, with {foot}, {day} and the facts of the rule", ...)
    meanwhile: Text = told("what is safe until somebody comes", ...)
    do_not: Text | None = told("what not to do")
    source: Text = told("where the advice comes from", ...)


class CareWords(Record):
    """One care note of the library."""

    what: Text = told("what to do", ...)
    why: Text = told("why", ...)
    how_often: Text = told("how often", ...)
    until: Text | None = told("until when")
    stop_if: Text | None = told("what to stop at")
    caution: Text | None = told("what to beware of")
    source: Text = told("where the advice comes from", ...)


class Word(Record):
    """A word of the trade, explained."""

    name: Text = told("the word", ...)
    meaning: Text = told("what it means, for an owner", ...)


class Reference(Record):
    """All tables, each by key."""

    measures: dict[str, MeasureWords] = told("the measures", {})
    cautions: dict[str, CautionWords] = told("the cautions", {})
    care: dict[str, CareWords] = told("the care notes", {})
    glossary: dict[str, Word] = told("words of the trade", {})
    phrases: dict[str, Text] = told("sentences that are put together while computing", {})
