"""Reads the reference tables: ours, a practice's own entries over them, and its own care notes, a file each."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from functools import lru_cache
from pathlib import Path
from typing import TypeVar

from recordgen.language.catalogs import ENGLISH_CODE, catalog_of
from recordgen.packaged import packaged
from recordgen.problems import Problem, quoted, warning
from recordgen.records.checks.tables import OURS, is_note_name, not_while_problems, note_name, table_problems
from recordgen.records.load.folders import Walk
from recordgen.records.load.translated import translate_tables
from recordgen.records.models.reference import CareWords, CautionWords, Reference
from recordgen.records.yaml.read import Written, read_record
from recordgen.sentences import say

Entry = TypeVar("Entry", CareWords, CautionWords)

WORDS = Path(OURS)
TEMPLATES = WORDS.parent
CARE = "care"


def read_reference(records: Path | None, language: str = ENGLISH_CODE) -> tuple[Reference, list[Problem]]:
    """The tables, with a practice's own entries over ours, and what is wrong with them.

    records: the practice's folder, whose `site_templates/words` holds tables and whose `care` holds care notes, each in
    a file named by its key; None for our tables alone. Own care notes come before ours.
    language: in which our own words are wanted; a practice's are in its own as they stand.
    """
    files = tuple(sorted((packaged() / WORDS).glob("*.yaml")))
    ours, told = _ours(files, tuple((file.stat().st_mtime_ns, file.stat().st_size) for file in files))
    problems = list(told)
    if language != ENGLISH_CODE:
        ours = translate_tables(ours, catalog_of(language))
    if records is None:
        return ours, problems
    walk = Walk(records)
    if _leads_out(walk):
        return ours, [*problems, *walk.problems]
    tables, wrong = _with_words(records / WORDS, f"{records.resolve().name}/{OURS}", ours)
    notes = dict(_care_notes(walk))
    for key, note in notes.items():
        for problem in not_while_problems(note.record.not_while, (), note, tables):
            walk.problems.add(problem)
        if key in tables.care and tables.care[key] is not ours.care.get(key):
            message = say(
                "the care note {key} is written twice; this one counts, not the one in {ours}", key=key, ours=OURS
            )
            walk.problems.add(warning(note.place(), "care-note-twice", message, say("Keep one of the two")))
    own = Reference.model_construct(care={key: note.record for key, note in notes.items()})
    return _over(tables, own), [*problems, *wrong, *walk.problems]


def _leads_out(walk: Walk) -> bool:
    """Tell whether a link of a practice's own templates leads out of their folder; each is told.

    What lies there is published, so a link to a horse would be as bad as one to another folder of this computer.
    """
    own = walk.root / TEMPLATES
    links = [own] if os.path.islink(own) else []
    for at, folders, files in os.walk(own):
        links += [path for name in sorted((*folders, *files)) if os.path.islink(path := Path(at, name))]
    out = [path for path in links if walk.leads_out(path, None if path == own else TEMPLATES)]
    return bool(out)


def _with_words(folder: Path, shown: str, under: Reference) -> tuple[Reference, list[Problem]]:
    """The tables of a folder over those beneath, and what is wrong with them. shown: the folder as people see it."""
    return _with_files(sorted(folder.glob("*.yaml")), shown, under)


@lru_cache(maxsize=4)
def _ours(files: tuple[Path, ...], written: tuple[tuple[int, int], ...]) -> tuple[Reference, tuple[Problem, ...]]:
    """Our own tables, which a process reads again only where a file was written since. written: when, and how long."""
    found, problems = _with_files(files, OURS, Reference())
    return found, tuple(problems)


def _with_files(files: Sequence[Path], shown: str, under: Reference) -> tuple[Reference, list[Problem]]:
    found = under
    problems: list[Problem] = []
    for file in files:
        written, wrong = read_record(file, f"{shown}{file.name}", Reference)
        problems += wrong
        if written:
            beneath, found = found, _over(found, written.record)
            problems += table_problems(written, beneath, found)
    return found, problems


def _over(under: Reference, over: Reference) -> Reference:
    tables = {name: {**getattr(under, name), **getattr(over, name)} for name in Reference.model_fields}
    # Of several notes that suit, the first is suggested: a practice's own.
    own = {key: _as_safe(note, under.care.get(key)) for key, note in over.care.items()}
    tables["care"] = {**own, **under.care, **own}
    tables["cautions"] |= {key: _as_safe(words, under.cautions.get(key)) for key, words in over.cautions.items()}
    return Reference.model_construct(None, **tables)


def _as_safe(over: Entry, under: Entry | None) -> Entry:
    """An entry over another: where it does not say beside what it may not stand, what the other says holds on."""
    if under is None or "not_while" in over.model_fields_set:
        return over
    return over.model_copy(update={"not_while": under.not_while})


def _care_notes(walk: Walk) -> Iterator[tuple[str, Written[CareWords]]]:
    """A practice's own care notes by key, those alone that are right; what is wrong goes to the walk."""
    folder = walk.root / CARE
    if not os.path.isdir(folder):
        return
    if not Path(os.path.realpath(folder)).is_relative_to(walk.inside):
        walk.tell(
            folder, "link-leads-out", say("this link leads out of the records"), say("Put the folder itself here")
        )
        return
    for path in walk.entries(folder):
        if _is_note(walk, path):
            written, wrong = read_record(path, walk.shown(path), CareWords)
            walk.problems.extend(wrong)
            if written:
                yield path.stem, written


def _is_note(walk: Walk, path: Path) -> bool:
    """Tell whether a file holds a care note; a problem where it seems to be meant as one and cannot be."""
    stem, ending = os.path.splitext(path.name)
    # Of a stable in this folder the walk through the stables tells.
    if path.name.startswith(".") or path.name == "stable.yaml" or ending.lower() not in (".yaml", ".yml"):
        return False
    if not is_note_name(stem):
        way_out = say("Use small letters, digits and hyphens, such as {stem}.yaml", stem=note_name(stem))
        walk.tell(path, "care-note-name", say("{stem} cannot name a care note", stem=quoted(stem)), way_out)
        return False
    if ending != ".yaml":
        walk.tell(path, "file-misnamed", say("this file is not read"), say("Name it {stem}.yaml", stem=stem))
        return False
    return walk.may_read(path)
