"""Words that end nothing: too early, of what was never recorded, or of what is the vet's; with their places."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from recordgen.hoof.cautions.resolutions import EndingWord, words_of
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.context import Context
from recordgen.hoof.naming import Naming
from recordgen.hoof.remarks import Remark
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import Visit


def resolved_before_raised(horse: Horse, visits: Sequence[Visit], ways: Context) -> Iterator[Remark]:
    """The words by which a caution was over before a visit first recorded it, or on that very day: an error.

    visits: oldest first; only those up to the one that holds the word are looked at.
    """
    for number, word, raised in _words(horse, visits, ways):
        if raised and not word.is_after(min(raised)):
            yield _remark(number, word, "caution-over-too-early", ways.naming, min(raised))


def resolved_never_raised(horse: Horse, visits: Sequence[Visit], ways: Context) -> Iterator[Remark]:
    """The words that end a caution which no visit recorded, up to the one that holds the word: a warning.

    visits: oldest first. A name that no table knows is told elsewhere.
    """
    for number, word, raised in _words(horse, visits, ways):
        if not raised:
            yield _remark(number, word, "caution-never-recorded", ways.naming)


def resolved_without_a_vet(horse: Horse, visits: Sequence[Visit], ways: Context) -> Iterator[Remark]:
    """The words of anybody that a caution is over which only a vet, or a later record, can end: a warning."""
    for number, word in Timeline(horse, visits, ways).unheard if any(visit.resolved for visit in visits) else ():
        yield _remark(number, word, "caution-needs-a-vet", ways.naming)


def _words(horse: Horse, visits: Sequence[Visit], ways: Context) -> Iterator[tuple[int, EndingWord, list[date]]]:
    """Each word with the number of its visit, and the days on which visits up to it recorded what it names."""
    words = [(number, word) for number, visit in enumerate(visits) for word in words_of(visit)]
    if not words:
        return
    book = Timeline(horse, visits, ways)
    for number, word in words:
        if word.caution in ways.reference.cautions:
            raised = [at for at, (rule, foot, _) in book.raised if at <= number and word.means(rule, foot)]
            yield number, word, [visits[at].date for at in raised]


def _remark(number: int, word: EndingWord, code: str, naming: Naming, raised: date | None = None) -> Remark:
    facts = {"day": naming.day(word.day), "raised": naming.day(raised) if raised else ""}
    caution = f"{word.caution} ({naming.foot(word.foot)})" if word.foot else word.caution
    phrase = code.replace("-", "_")
    text = naming.phrase(phrase, caution=caution, **facts)
    return Remark(number, word.steps, code, text, naming.phrase(f"{phrase}_way_out"))
