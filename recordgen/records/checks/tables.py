"""Mistakes in a practice's own entries of the reference tables: names nobody asks for, facts nobody fills in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from string import Formatter
from typing import Any, get_args

from recordgen.nearest import did_you_mean
from recordgen.problems import Problem, quoted
from recordgen.records.load.folders import SLUG, slug_of
from recordgen.records.models.annotations import range_at
from recordgen.records.models.reference import TRACING, Level, MeasureWords, Reference
from recordgen.records.models.visit import ALL
from recordgen.records.yaml.read import Written
from recordgen.sentences import Said, say

# Where our own tables lie, as people see it; a practice's lie in its own folder.
OURS = "site_templates/words/"
# What is filled in of a pattern, whichever of it our own words use.
PATTERN_FACTS = {"count", "looked", "since", "name"}


def table_problems(over: Written[Reference], under: Reference, both: Reference) -> Iterator[Problem]:
    """Mistakes in the entries of one file.

    under: the tables beneath it; beneath ours is nothing, or ours so far. both: the tables with its entries.
    """
    if not over.shown.startswith(OURS):
        yield from _unknown(over, "phrases", over.record.phrases, under.phrases)
        yield from _unknown(over, "cautions", over.record.cautions, under.cautions)
        yield from _unknown(over, "patterns", over.record.patterns, under.patterns)
        yield from _phrases(over, under)
        yield from _cautions(over, under)
        yield from _patterns(over, under)
        yield from _unknown(over, "scales", over.record.scales, under.scales)
        yield from _ends_of_scales(over, under)
        for table in ("care", "cautions"):
            for key, words in getattr(over.record, table).items():
                yield from not_while_problems(words.not_while, (table, key), over, both)
    yield from _grades(over)
    yield from _care(over)
    for key, words in over.record.measures.items():
        for message, way_out in _measure(key, words, both.measures):
            yield Problem(
                over.place("measures", key),
                "measure-entry",
                message,
                way_out,
            )


def _unknown(over: Written[Reference], table: str, own: Iterable[str], known: Iterable[str]) -> Iterator[Problem]:
    for key in sorted(set(own) - set(known)):
        way_out = did_you_mean(key, known, say("Take it out"))
        yield Problem(
            over.place(table, key),
            "entry-not-asked-for",
            say("nothing asks for {key} in {table}", key=quoted(key), table=table),
            way_out,
        )


def _phrases(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    for key, text in over.record.phrases.items():
        if key in under.phrases:
            yield from _facts(over, ("phrases", key), text, facts_in(under.phrases[key]) or set())


def _cautions(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    for key, words in over.record.cautions.items():
        if key in under.cautions:
            known = (facts_in(under.cautions[key].seen) or set()) | {"day", "foot"}
            yield from _facts(over, ("cautions", key, "seen"), words.seen, known)
            left = facts_in(under.cautions[key].left_over or "") or set()
            yield from _facts(over, ("cautions", key, "left_over"), words.left_over or "", left)


def _patterns(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    for key, words in over.record.patterns.items():
        if key in under.patterns:
            yield from _facts(over, ("patterns", key, "seen"), words.seen, PATTERN_FACTS)


def is_note_name(key: str) -> bool:
    """Tell whether visits can call a care note so: small letters, digits, hyphens, no word that `care_ends` knows."""
    return bool(SLUG.fullmatch(key)) and key not in (ALL, "yes", "no", "true", "false")


def note_name(typed: str) -> str:
    """A name that visits can call a care note by, near to what was typed where that goes."""
    near = slug_of(typed)
    return near if is_note_name(near) else "dry-bed"


def _care(over: Written[Reference]) -> Iterator[Problem]:
    for key in over.record.care:
        if not is_note_name(key):
            way_out = say("Use small letters, digits and hyphens, such as {key}", key=note_name(key))
            yield Problem(
                over.place("care", key),
                "care-note-name",
                say("{key} cannot name a care note", key=quoted(key)),
                way_out,
            )


def not_while_problems(
    not_while: Sequence[str], steps: tuple[str, ...], over: Written[Any], known: Reference
) -> Iterator[Problem]:
    """The names under `not_while` that are neither a caution nor a level, so that nothing would ever be withheld.

    steps: where the entry stands in its file; nowhere for a file that is one entry.
    """
    names = [*known.cautions, *get_args(Level)]
    for index, name in enumerate(not_while):
        if name not in names:
            way_out = did_you_mean(
                name, names, say("Name a caution, or a level: {level}", level=", ".join(get_args(Level)))
            )
            message = say("no caution and no level is named {name}", name=quoted(name))
            yield Problem(over.place(*steps, "not_while", index), "not-while-unknown", message, way_out)


def _ends_of_scales(over: Written[Reference], under: Reference) -> Iterator[Problem]:
    """A practice may say a scale in its own words, but not make it longer, shorter or finer."""
    for key, words in over.record.scales.items():
        ours = under.scales.get(key, words)
        if (words.low, words.high, words.step) != (ours.low, ours.high, ours.step):
            way_out = say(
                "Write low: {low:g}, high: {high:g}, step: {step:g}", low=ours.low, high=ours.high, step=ours.step
            )
            yield Problem(
                over.place("scales", key),
                "scale-changed",
                say("{key} is another scale with these ends or steps", key=key),
                way_out,
            )


def _grades(over: Written[Reference]) -> Iterator[Problem]:
    for key, words in over.record.scales.items():
        for grade in words.grades:
            if not words.low <= grade <= words.high or grade % 1:
                message = say("{grade:g} is not a whole grade of the scale {key}", grade=grade, key=key)
                yield Problem(
                    over.place("scales", key),
                    "scale-grade",
                    message,
                    say("That scale runs from {low:g} to {high:g}", low=words.low, high=words.high),
                )


def _facts(over: Written[Reference], steps: tuple[str, ...], text: str, known: set[str]) -> Iterator[Problem]:
    found = facts_in(text)
    if found is None:
        yield Problem(
            over.place(*steps),
            "brace-open",
            say("a fact in braces is no plain name"),
            say("Write {{day}} and the like, or leave braces out"),
        )
        return
    for fact in sorted(found - known):
        named = ", ".join(f"{{{name}}}" for name in sorted(known)) or say("none")
        yield Problem(
            over.place(*steps),
            "brace-unknown",
            say("nobody fills in {{{fact}}} here", fact=fact),
            say("What is filled in: {named}", named=named),
        )


def facts_in(text: str) -> set[str] | None:
    """The names in braces in a text, or None where its braces do not fit together."""
    try:
        fields = [(name, form) for _, name, form, _ in Formatter().parse(text) if name is not None]
    except ValueError:
        return None
    # What a name has inside, and how it is to be formed, is no words; by either, words could reach what is no fact.
    return {name for name, _ in fields} if all(name.isidentifier() and not form for name, form in fields) else None


def _measure(key: str, words: MeasureWords, known: Mapping[str, MeasureWords]) -> Iterator[tuple[Said, Said]]:
    if words.traced is not None and TRACING not in words.methods:
        yield (
            say("the measure {key} is traced, but nothing tells how well that repeats", key=key),
            say("Add methods: {{tracing: {{sd: 1, source: ...}}}}"),
        )
    if words.path is not None:
        if range_at(words.path) is None:
            yield (
                say("the measure {key} stands nowhere: {path}", key=key, path=quoted(words.path)),
                say("Name a place of a foot's record, such as @.toe_length"),
            )
        if not words.methods:
            yield (
                say("the measure {key} has no way of taking it", key=key),
                say("Add methods: {{rule: {{sd: 1, source: ...}}}}"),
            )
        return
    if words.traced is not None:
        if not words.unit:
            yield say("the measure {key} has no unit", key=key), say("Add unit:")
        return
    parts = words.minus or words.ratio
    if len(parts) != 2 or any(part not in known for part in parts):
        yield (
            say("the measure {key} is computed from nothing", key=key),
            say("Name two measures that stand before it: minus: [one, other]"),
        )
    if not words.unit:
        yield say("the measure {key} has no unit", key=key), say("Add unit:")
