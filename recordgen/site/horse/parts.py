"""One foot's part of a horse's page: its last readings, its tracings, its photographs and what was found and done."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.summary import FootAtVisit, FootSummary, HorseSummary
from recordgen.records.models.names import FEET, Foot
from recordgen.site.photographs import Album, PhotoDay
from recordgen.site.tracing.feet import Tracings

# The measures of a foot's own table; all others stand in the folded tables.
MEASURES = ("toe_length", "toe_angle", "heel_difference")
# About half a year of visits; the history holds all.
MOST_VISITS = 6
# So many words of a note are read at a glance; what is longer is folded after the sentence that fills them.
MOST_WORDS = 40

NO_TRACINGS, NO_PHOTOGRAPHS = Tracings(), Album()

_SENTENCE_ENDS = re.compile(r"(?<=[.!?])\s+")


@dataclass(frozen=True)
class OpeningWords:
    """A note of the trimmer: its first sentences, and what follows."""

    first: str
    rest: str = ""


@dataclass(frozen=True)
class FootPart:
    """All of one foot. summary: None of a foot that no visit looked at.

    rows: day and readings of the foot's own measures, the newest first. visits: the last ones that looked at it.
    """

    foot: Foot
    summary: FootSummary | None
    measures: tuple[Measure, ...] = ()
    rows: tuple[tuple[date, tuple[Reading | None, ...]], ...] = ()
    tracings: Tracings = NO_TRACINGS
    album: Album = NO_PHOTOGRAPHS
    visits: tuple[tuple[date, FootAtVisit], ...] = ()


def foot_parts(summary: HorseSummary, tracings: Tracings, album: Album) -> tuple[FootPart, ...]:
    """The four feet in their usual order, those without a record among them, so that each keeps its place."""
    return tuple(_part(foot, summary, tracings, album) for foot in FEET)


def opening_of_note(summary: HorseSummary, most_words: int = MOST_WORDS) -> OpeningWords | None:
    """The note of the last visit, cut after the sentence that fills so many words, or in one of twice as many.

    None where there is none.
    """
    note = summary.history[0].visit.note if summary.history else None
    if not note:
        return None
    first, rest = "", ""
    opening, *others = _SENTENCE_ENDS.split(note.strip())
    for sentence in (*_in_two(opening, most_words), *others):
        if first and (rest or len(f"{first} {sentence}".split()) > most_words):
            rest = f"{rest} {sentence}".strip()
        else:
            first = f"{first} {sentence}".strip()
    return OpeningWords(first, rest)


def _in_two(sentence: str, most_words: int) -> list[str]:
    words = sentence.split()
    return [" ".join(words[:most_words]), " ".join(words[most_words:])] if len(words) > 2 * most_words else [sentence]


def _part(foot: Foot, summary: HorseSummary, tracings: Tracings, album: Album) -> FootPart:
    one = summary.feet.get(foot)
    if one is None:
        return FootPart(foot, None)
    found = [one.measures[key] for key in MEASURES if key in one.measures]
    days = sorted({reading.day for held in found for reading in held.readings}, reverse=True)[:MOST_VISITS]
    by_day = [{reading.day: reading for reading in held.readings} for held in found]
    return FootPart(
        foot,
        one,
        tuple(held.measure for held in found),
        tuple((day, tuple(held.get(day) for held in by_day)) for day in days),
        Tracings(tuple(held for held in tracings.feet if held.foot == foot)),
        Album(tuple(day for held in album.days if (day := _of_foot(held, foot)).shown), album.days_left_out),
        tuple((at.visit.date, at.feet[foot]) for at in summary.history if foot in at.feet)[:MOST_VISITS],
    )


def _of_foot(day: PhotoDay, foot: Foot) -> PhotoDay:
    pairs = tuple(one for one in day.pairs if one.foot == foot)
    return PhotoDay(day.day, pairs, tuple(one for one in day.singles if one.subject.foot == foot))
