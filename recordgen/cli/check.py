"""recordgen check."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import (
    cache_option,
    exit_on_trouble,
    from_here,
    json_option,
    print_json,
    print_problems,
    records_option,
    today_option,
)
from recordgen.cli.places import StableName, stable_option
from recordgen.cli.remembered import Remembered
from recordgen.cli.terminal import echo
from recordgen.private.keystore.location import key_files
from recordgen.problems import Problem, Problems
from recordgen.sentences import Said, counted, listed, say, say_counted, sentences, spoken_day

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache
    from recordgen.records.models.practice import Practice


@click.command("check")
@click.argument("where", metavar="[STABLE]", required=False, type=StableName())
@records_option
@today_option
@json_option
@stable_option("Look at this stable alone.")
@cache_option
@click.option("--seen", is_flag=True, help="List the warnings that were seen and left, with the day and the reason.")
@click.option("--explain", "code", metavar="CODE", help="Tell what a code at the end of a line means, with an example.")
def command(
    where: str | None,
    records: Path,
    today: dt.date,
    as_json: bool,
    stable: str | None,
    cache: Cache,
    seen: bool,
    code: str | None,
) -> None:
    """Look through all records and list every problem with its line and the way out.

    \b
        recordgen check
        recordgen check willowmere
        recordgen check --json
        recordgen check --seen
        recordgen check --explain next-one-of-two

    A folder of records may stand in the place of STABLE. Errors stop a build; warnings are unlikely things that may
    stand. One that you looked at and leave is told no more: recordgen seen.
    """
    if code is not None:
        from recordgen.cli.explain import explain

        explain(code)
        return
    records, stable = _records_to_check(where, records, stable)
    with exit_on_trouble(as_json):
        known = Remembered(cache, records, "check", today, stable, key_files())
        answer = known.answer()
        if answer is None:
            answer = _look(records, today, stable, cache)
            known.keep(answer)
    problems = answer["problems"]
    if seen:
        _print_seen(answer["seen"], records, as_json)
    elif as_json:
        print_json([from_here(problem).as_json() for problem in problems])
    else:
        print_problems(problems, records)
        echo(answer["told"])
    if any(problem.level == "error" for problem in problems):
        raise click.exceptions.Exit(1)


def _print_seen(seen: Sequence[tuple[Problem, dt.date, str]], records: Path, as_json: bool) -> None:
    """The warnings that were seen and left, each with the day and the reason."""
    if as_json:
        print_json([{**from_here(problem).as_json(), "on": on.isoformat(), "why": why} for problem, on, why in seen])
        return
    for problem, on, why in seen:
        print_problems([problem], records)
        echo(say("    seen on {day}: {why}", day=spoken_day(on), why=why))
    left = say_counted("{count} warning seen and left.", "{count} warnings seen and left.", len(seen))
    echo(left if seen else say("No warning was seen and left."))


def _look(records: Path, today: dt.date, stable: str | None, cache: Cache) -> dict[str, Any]:
    """The problems of all records in the order of their places, which of them were seen, and how many records are."""
    from recordgen.cli.looking import look_over

    practice, problems = look_over(records, today, stable, cache)
    return {
        "problems": tuple(problems.open),
        "seen": tuple((one, to.on, to.why) for one, to in problems.left),
        "told": sentences(problems.counted()) if practice is None else _closing_line(practice, problems),
    }


def _closing_line(practice: Practice, problems: Problems) -> Said:
    """The last line: whether all is well, what was looked at, and what is left to look at."""
    stables, horses = counted(len(practice.stables), "stable"), counted(len(practice.horses), "horse")
    looked_at = listed((stables, horses, counted(practice.visit_count, "visit")), ", ")
    if left := 0 if problems.open else len(problems.left):
        return say_counted(
            "Nothing left to look at: {looked_at}; {count} warning was seen and left.",
            "Nothing left to look at: {looked_at}; {count} warnings were seen and left.",
            left,
            looked_at=looked_at,
        )
    if problems.open:
        return say("Looked through: {looked_at}; {problems}.", looked_at=looked_at, problems=problems.counted())
    return say("All is well: {looked_at}; {problems}.", looked_at=looked_at, problems=problems.counted())


def _records_to_check(where: str | None, records: Path, stable: str | None) -> tuple[Path, str | None]:
    """The folder of the records and the one stable in it: a stable's name, or a folder of records, may be told."""
    if where is None:
        return records, stable
    is_folder = not (records / where / "stable.yaml").is_file() and Path(where).is_dir()
    return (Path(where), stable) if is_folder else (records, where)
