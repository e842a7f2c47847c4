"""What a practice's own entries in the reference tables may get wrong: names nobody asks for, facts nobody fills in."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Mapping
from string import Formatter

from recordgen.problems import Problem, quoted
from recordgen.records.foot import FootVisit
from recordgen.records.names import ZONES
from recordgen.records.reading import Written
from recordgen.records.reference import MeasureWords, Reference
from recordgen.records.shape import extra, field_at


def table_problems(over: Written[Reference], under: Reference, both: Reference) -> Iterator[Problem]:
    """What is wrong with the entries of one file.

    under: the tables beneath it; ours has nothing beneath. both: the tables with its entries.
    """
    if under.phrases and under.cautions:
        yield from _unknown(over, "phrases", over.record.phrases, under.phrases)
        yield from _unknown(over, "cautions", over.record.cautions, under.cautions)
        yield from _phrases(over, under)
        yield from _cautions(over, under)
    for key, words in over.record.measures.items():
        for message, way_out in _measure(words, both.measures):
            yield Problem(over.place("measures", key), f"the measure {key} {message}", way_out)


def _unknown(over: Written[Reference], table: str, own: Iterable[str], known: Iterable[str]) -> Iterator[Problem]:
    for key in sorted(set(own) - set(known)):
        near = difflib.get_close_matches(key, list(known), n=1, cutoff=0.5)
        way_out = f"Did you mean {near[0]}?" if near else "Take it out"
        yield Problem(over.place(table, key), f"nothing asks for {quoted(key)} in {table}", way_out)


def _phrases(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    for key, text in over.record.phrases.items():
        if key in under.phrases:
            yield from _facts(over, ("phrases", key), text, facts_in(under.phrases[key]) or set())


def _cautions(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    for key, words in over.record.cautions.items():
        if key in under.cautions:
            known = (facts_in(under.cautions[key].seen) or set()) | {"day", "foot"}
            yield from _facts(over, ("cautions", key, "seen"), words.seen, known)


def _facts(over: Written[Reference], steps: tuple[str, ...], text: str, known: set[str]) -> Iterator[Problem]:
    found = facts_in(text)
    if found is None:
        yield Problem(over.place(*steps), "a brace is open or empty", "Write {day} and the like, or leave braces out")
        return
    for fact in sorted(found - known):
        named = ", ".join(f"{{{name}}}" for name in sorted(known)) or "none"
        yield Problem(over.place(*steps), f"nobody fills in {{{fact}}} here", f"What is filled in: {named}")


def facts_in(text: str) -> set[str] | None:
    """The names in braces in a text, or None where its braces do not fit together."""
    try:
        names = [name for _, name, _, _ in Formatter().parse(text) if name is not None]
    except ValueError:
        return None
    return set(names) if all(name.isidentifier() for name in names) else None


def _measure(words: MeasureWords, known: Mapping[str, MeasureWords]) -> Iterator[tuple[str, str]]:
    if words.path is not None:
        if not _stands(words.path):
            yield f"stands nowhere: {quoted(words.path)}", "Name a place of a foot's record, such as @.toe_length"
        if not words.methods:
            yield "has no way of taking it", "Add methods: {rule: {sd: 1, source: ...}}"
        return
    parts = words.minus or words.ratio
    if len(parts) != 2 or any(part not in known for part in parts):
        yield "is computed from nothing", "Name two measures that stand before it: minus: [one, other]"
    if not words.unit:
        yield "has no unit", "Add unit:"


def _stands(path: str) -> bool:
    names = {"@": "before", "*": ZONES[0]}
    steps = [names.get(step, step) for step in path.split(".")]
    return "unit" in extra(field_at(FootVisit, steps))
