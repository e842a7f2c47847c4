"""Words that end nothing: too early, of what was never recorded, or of what is the vet's; with their places."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from recordgen.hoof.cautions.resolutions import EndingWord, words_of
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.naming import Naming
from recordgen.hoof.remarks import Remark


def resolved_before_raised(timeline: Timeline) -> Iterator[Remark]:
    """The words by which a caution was over before a visit first recorded it, or on that very day: an error.

    Only the visits up to the one that holds the word are looked at.
    """
    for number, word, raised in _words(timeline):
        if raised and not word.is_after(min(raised)):
            yield _remark(number, word, "caution-over-too-early", timeline.ways.naming, min(raised))


def resolved_never_raised(timeline: Timeline) -> Iterator[Remark]:
    """The words that end a caution which no visit recorded, up to the one that holds the word: a warning.

    A name that no table knows is told elsewhere.
    """
    for number, word, raised in _words(timeline):
        if not raised:
            yield _remark(number, word, "caution-never-recorded", timeline.ways.naming)


def resolved_without_a_vet(timeline: Timeline) -> Iterator[Remark]:
    """The words of anybody that a caution is over which only a vet, or a later record, can end: a warning."""
    for number, word in timeline.unheard:
        yield _remark(number, word, "caution-needs-a-vet", timeline.ways.naming)


def _words(timeline: Timeline) -> Iterator[tuple[int, EndingWord, list[date]]]:
    """Each word with the number of its visit, and the days on which visits up to it recorded what it names."""
    for number, visit in enumerate(timeline.visits):
        for word in words_of(visit):
            if word.caution in timeline.ways.reference.cautions:
                yield number, word, list(_days_raised(timeline, word, number))


def _days_raised(timeline: Timeline, word: EndingWord, number: int) -> Iterator[date]:
    """The days on which visits up to one, by its number, recorded what a word names."""
    for at, (rule, foot, _) in timeline.raised:
        if at <= number and word.means(rule, foot):
            yield timeline.visits[at].date


def _remark(number: int, word: EndingWord, code: str, naming: Naming, raised: date | None = None) -> Remark:
    facts = {"day": naming.day(word.day), "raised": naming.day(raised) if raised else ""}
    caution = f"{word.caution} ({naming.foot(word.foot)})" if word.foot else word.caution
    phrase = code.replace("-", "_")
    text = naming.phrase(phrase, caution=caution, **facts)
    return Remark(number, word.steps, code, text, naming.phrase(f"{phrase}_way_out"))
