"""Everything that `recordgen check` looks at: the records, the keys that belong to them, and remarks on each horse."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

from recordgen.cache.entries import Cache
from recordgen.hoof.context import Context
from recordgen.hoof.summary import compute_remarks
from recordgen.private.keystore.moved_keys import keys_to_bring
from recordgen.problems import Problem, Problems, Trouble, warning
from recordgen.progress import steps
from recordgen.records.checks.seen import seen_in_vain
from recordgen.records.load.everything import find_repeated_visits, look_through
from recordgen.records.models.practice import Practice
from recordgen.sentences import say, worded
from recordgen.site.tracing.figure_cache import FigureCache


def look_over(records: Path, today: dt.date, stable: str | None, cache: Cache) -> tuple[Practice | None, Problems]:
    """The practice, or None where an error stands in it, and all there is to tell of it.

    stable: the one to look at. Entries about warnings that are there no more are told where all of them were looked at.
    """
    practice, reference, problems = look_through(records, today, stable, files=True, cache=cache)
    if practice is None:
        return None, problems
    repeated = find_repeated_visits(practice, stable)
    ways = Context.of(practice.file, reference, repeated, FigureCache(cache))
    problems.extend(_keys_to_bring(records))
    problems.extend(_remarks(practice, ways, today))
    if stable is None:
        problems.extend(seen_in_vain(problems))
    return practice, problems


def _keys_to_bring(records: Path) -> list[Problem]:
    """The stables whose keys lie under an earlier name; none where the folder of keys cannot be looked at."""
    try:
        return list(keys_to_bring(records))
    except Trouble:
        return []


def _remarks(practice: Practice, ways: Context, today: dt.date) -> Iterator[Problem]:
    """Remarks for the trimmer, as warnings with the line it stands in."""
    for record in steps(say("Looking at horses"), practice.horses):
        for remark in compute_remarks(record, ways, today):
            place = record.written[remark.visit].place(*remark.steps)
            yield warning(place, remark.code, worded(remark.text), worded(remark.way_out))
