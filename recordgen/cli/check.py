"""recordgen check."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import (
    cache_option,
    from_here,
    json_option,
    print_json,
    print_problems,
    records_option,
    today_option,
    told_plainly,
)
from recordgen.cli.places import StableName, stable_option
from recordgen.cli.remembered import Remembered, as_problems, as_values
from recordgen.cli.terminal import echo
from recordgen.private.keystore.location import key_files
from recordgen.problems import Problem, Trouble, counted, warning
from recordgen.progress import steps

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache
    from recordgen.records.models.practice import Practice
    from recordgen.records.models.reference import Reference


@click.command("check")
@click.argument("where", metavar="[STABLE]", required=False, type=StableName())
@records_option
@today_option
@json_option
@stable_option("Look at this stable alone.")
@cache_option
@click.option("--explain", "code", metavar="CODE", help="Tell what a code at the end of a line means, with an example.")
def command(
    where: str | None,
    records: Path,
    today: dt.date,
    as_json: bool,
    stable: str | None,
    cache: Cache,
    code: str | None,
) -> None:
    """Look through all records and list every problem with its line and the way out.

    \b
        recordgen check
        recordgen check willowmere
        recordgen check --json
        recordgen check --explain next-one-of-two

    A folder of records may stand in the place of STABLE. Errors stop a build; warnings are unlikely things that may
    stand.
    """
    if code is not None:
        from recordgen.cli.explain import explain

        explain(code)
        return
    records, stable = _looked_at(where, records, stable)
    with told_plainly(as_json):
        known = Remembered(cache, records, "check", today, stable, key_files())
        answer = known.answer()
        if answer is None:
            answer = _look(records, today, stable, cache)
            known.keep(answer)
    problems = as_problems(answer["problems"])
    if as_json:
        print_json([from_here(problem).as_json() for problem in problems])
    else:
        print_problems(problems, records)
        echo(answer["told"])
    if any(problem.level == "error" for problem in problems):
        raise click.exceptions.Exit(1)


def _look(records: Path, today: dt.date, stable: str | None, cache: Cache) -> dict[str, Any]:
    """The problems of all records in the order of their places, and how many records there are."""
    from recordgen.records.load.everything import look_through

    practice, reference, problems = look_through(records, today, stable, files=True, cache=cache)
    told = f"{problems.counted()}."
    if practice:
        problems.extend(_keys_to_bring(records))
        problems.extend(_remarks(practice, reference, today, cache))
        stables, horses = counted(len(practice.stables), "stable"), counted(len(practice.horses), "horse")
        answer = "Looked through" if problems.found else "All is well"
        told = f"{answer}: {stables}, {horses}, {counted(practice.visit_count, 'visit')}; {problems.counted()}."
    return {"problems": as_values(list(problems)), "told": told}


def _looked_at(where: str | None, records: Path, stable: str | None) -> tuple[Path, str | None]:
    """The folder of the records and the one stable in it: a stable's name, or a folder of records, may be told."""
    if where is None:
        return records, stable
    is_folder = not (records / where / "stable.yaml").is_file() and Path(where).is_dir()
    return (Path(where), stable) if is_folder else (records, where)


def _keys_to_bring(records: Path) -> list[Problem]:
    """The stables whose keys lie under an earlier name; none where the folder of keys cannot be looked at."""
    from recordgen.private.keystore.moved_keys import keys_to_bring

    try:
        return list(keys_to_bring(records))
    except Trouble:
        return []


def _remarks(practice: Practice, reference: Reference, today: dt.date, cache: Cache) -> Iterator[Problem]:
    """Remarks for the trimmer, as warnings with the line it stands in."""
    from recordgen.hoof.context import Context
    from recordgen.hoof.summary import compute_remarks
    from recordgen.site.tracing.figure_cache import FigureCache

    ways = Context.of(practice.file, reference, reckon=FigureCache(cache))
    for record in steps("Looking at horses", practice.horses):
        for remark in compute_remarks(record, ways, today):
            yield warning(record.written[remark.visit].place(*remark.steps), remark.code, remark.text, remark.way_out)
