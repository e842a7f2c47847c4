"""Reads the reference tables: ours, and a practice's own entries over them."""

from __future__ import annotations

from pathlib import Path

from recordgen.packaged import packaged
from recordgen.problems import Problem
from recordgen.records.reading import read
from recordgen.records.reference import Reference
from recordgen.records.table_checks import table_problems


def read_reference(records: Path | None) -> tuple[Reference, list[Problem]]:
    """The tables, with the entries of a practice's own `site_templates/words` over ours, and what is wrong with them.

    records: the practice's folder; None for our tables alone.
    """
    found = Reference()
    problems: list[Problem] = []
    for folder, shown in _folders(records):
        for file in sorted(folder.glob("*.yaml")):
            written, wrong = read(file, f"{shown}/{file.name}", Reference)
            problems += wrong
            if written:
                found, under = _over(found, written.record), found
                problems += table_problems(written, under, found)
    return found, problems


def _folders(records: Path | None) -> list[tuple[Path, str]]:
    words = Path("site_templates") / "words"
    ours = (packaged() / words, words.as_posix())
    return [ours] if records is None else [ours, (records / words, f"{records.resolve().name}/{words.as_posix()}")]


def _over(under: Reference, over: Reference) -> Reference:
    tables = {name: {**getattr(under, name), **getattr(over, name)} for name in Reference.model_fields}
    return Reference.model_construct(None, **tables)
