"""Options that several commands share, and the ways in which all of them tell what went wrong."""

from __future__ import annotations

import datetime as dt
import errno
import json
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from recordgen.cli.excerpt import excerpt
from recordgen.cli.terminal import echo, show_waiting
from recordgen.days import days_meant
from recordgen.problems import Problem, Trouble, is_visible
from recordgen.sentences import OR, listed, say, say_counted, sentences

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache

# So many signs of why a sheet is sent leave its first page one page.
MOST_OF_WHY = 300
_COLOURS = {"error": "red", "warning": "yellow"}
Function = TypeVar("Function", bound=Callable[..., Any])


class DayType(click.ParamType):  # type: ignore[type-arg]
    """A day written as year-month-day."""

    name = "day"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dt.date:
        """The day a text means."""
        if isinstance(value, dt.date):
            return value
        try:
            return dt.datetime.strptime(value, "%Y-%m-%d").date()
        except ValueError:
            meant = [day.isoformat() for day in days_meant(value)]
            told = say("'{value}' is not a day; write it like 2026-11-25", value=value)
            if meant:
                told = say("'{value}' is not a day; write it {days}", value=value, days=listed(meant, OR))
            self.fail(told, param, ctx)


class WhyType(click.ParamType):  # type: ignore[type-arg]
    """A reason for sending a sheet: a sentence or two on one line, for the first page."""

    name = "words"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The words in one line; refused where there are none, too many, or signs that do not show."""
        text = " ".join(str(value).split())
        if not text:
            told = say('nothing stands there; say why in a sentence, such as --why "lame in front since Monday"')
            self.fail(told, param, ctx)
        if len(text) > MOST_OF_WHY:
            told = say(
                "{signs} signs are too many for the first page; say it in {most}, and leave the rest to the visit's "
                "notes",
                signs=len(text),
                most=MOST_OF_WHY,
            )
            self.fail(told, param, ctx)
        hidden = next((sign for sign in text if not is_visible(sign)), None)
        if hidden:
            self.fail(say("U+{sign:04X} is a sign that does not show; take it out", sign=ord(hidden)), param, ctx)
        return text


why_option = click.option("--why", type=WhyType(), help="Why you send it, in a sentence; stands first on page 1.")


def _records_folder(ctx: click.Context, param: click.Parameter, value: Path | None) -> Path:
    from recordgen.records.home import found_records

    return value or found_records()


def records_option(function: Function) -> Function:
    """--records: where the practice's files are."""
    return click.option(
        "--records",
        type=click.Path(path_type=Path),
        callback=_records_folder,
        is_eager=True,
        help="Folder of the records. Else this folder or one around it with practice.yaml, else ./records.",
    )(function)


def today_option(function: Function) -> Function:
    """--today: the day to count from."""
    return click.option(
        "--today", type=DayType(), default=lambda: dt.date.today(), help="Count from this day, such as 2026-11-25."
    )(function)


def json_option(function: Function) -> Function:
    """--json: plain values for other programs."""
    return click.option("--json", "as_json", is_flag=True, help="Print JSON for other programs.")(function)


def _cache(ctx: click.Context, param: click.Parameter, without: bool) -> Cache:
    from recordgen.cache.entries import Cache, user_cache

    return Cache(None) if without else user_cache()


def cache_option(function: Function) -> Function:
    """--no-cache: all of it made anew."""
    return click.option(
        "--no-cache", "cache", is_flag=True, callback=_cache, help="Make all of it anew, and keep nothing."
    )(function)


def csv_option(function: Function) -> Function:
    """--csv: a table for a spreadsheet."""
    return click.option("--csv", "as_csv", is_flag=True, help="Print CSV for a spreadsheet.")(function)


def print_csv(names: Sequence[str], rows: Iterable[Mapping[str, Any]]) -> None:
    """Print rows as CSV; to other programs as bytes, so that no system changes the ends of lines that CSV asks for."""
    from recordgen.csv_text import csv_of

    text = csv_of(names, rows)
    if sys.stdout.isatty():
        echo(text, nl=False)
    else:
        click.echo(text.encode(), nl=False)


def print_json(value: Any) -> None:
    """Print values as JSON."""
    echo(json.dumps(value, indent=2, ensure_ascii=False))


def print_problems(problems: Sequence[Problem], records: Path | None = None) -> None:
    """Print problems a line each, in the order of their places; on a terminal with the line of the file and a mark.

    records: the practice's folder, where the lines of its files are to be shown.
    """
    on_terminal = records is not None and sys.stdout.isatty()
    for problem in problems:
        echo(from_here(problem).line, colour=_COLOURS[problem.level])
        if records and on_terminal:
            for line in excerpt(problem.place, records, shutil.get_terminal_size().columns):
                echo(line)


def print_warnings(warnings: Sequence[Problem], seen_before: int) -> None:
    """Print what is unlikely, and how many warnings were seen and left."""
    print_problems(warnings)
    if seen_before:
        told = say_counted("{count} warning seen before", "{count} warnings seen before", seen_before)
        echo(say("{warnings}: recordgen check --seen", warnings=told))


def from_here(problem: Problem) -> Problem:
    """The problem, of a file in the records, with a path that can be opened from this folder where its own cannot.

    Paths of records begin with the name of their folder; those of a sheet or of notes from elsewhere stay as they are.
    """
    ctx = click.get_current_context(silent=True)
    records = ctx.params.get("records") if ctx else None
    path = problem.place.path
    if records is None or os.path.lexists(path) or not _is_near(records):
        return problem
    folder, _, inside = path.partition("/")
    if not inside or folder != os.path.basename(os.path.realpath(records)):
        return problem
    return replace(problem, place=replace(problem.place, path=Path(records, inside).as_posix()))


def _is_near(records: Path) -> bool:
    """Tell whether this folder lies in the records, or around them: so a short path leads there."""
    here, there = Path.cwd(), records.absolute().resolve()
    return here.is_relative_to(there) or there.is_relative_to(here)


@contextmanager
def exit_on_trouble(as_json: bool = False) -> Iterator[None]:
    """Turn every trouble that is somebody's to mend into sentences and exit code 1, without a traceback.

    From a second on it tells on a terminal how far the command has come. A closed pipe is nobody's trouble.
    as_json: trouble is told as JSON, with the keys error, way_out and problems.
    """
    with show_waiting(), _explain_troubles(as_json):
        yield


@contextmanager
def _explain_troubles(as_json: bool) -> Iterator[None]:
    try:
        yield
    except BrokenPipeError:
        raise
    except Trouble as trouble:
        _tell(trouble, as_json)
        raise click.exceptions.Exit(1) from None
    except OSError as fault:
        _tell(_os_trouble(fault), as_json)
        raise click.exceptions.Exit(1) from None


def _tell(trouble: Trouble, as_json: bool) -> None:
    from recordgen.records.load.everything import RecordsTrouble

    if as_json:
        problems = trouble.problems.open if isinstance(trouble, RecordsTrouble) else ()
        told = [from_here(problem).as_json() for problem in problems]
        print_json({"error": trouble.message, "way_out": trouble.way_out, "problems": told})
    elif isinstance(trouble, RecordsTrouble):
        print_problems(trouble.problems.open)
        echo(say("{problems}. Nothing was written.", problems=trouble.problems.counted()), err=True)
    else:
        echo(sentences(trouble.message, trouble.way_out), err=True)


@contextmanager
def explain_taken_port(port: int) -> Iterator[None]:
    """Turns a port that is taken into sentences that name the option for another one. Raises Trouble."""
    try:
        yield
    except OSError as fault:
        if fault.errno != errno.EADDRINUSE:
            raise
        taken = say("port {port} is taken on this machine", port=port)
        raise Trouble(taken, say("Say another, such as --port {port}", port=port + 1)) from None


def _os_trouble(fault: OSError) -> Trouble:
    """The refusal of the system; of a copy that found no room, where it was to go."""
    from recordgen.files import FULL, disk_trouble

    if fault.errno in FULL:
        target = fault.filename2 or fault.filename or tempfile.gettempdir()
        return disk_trouble(fault, str(target), say("What was there before stays"))
    return Trouble(say("{who} says: {what}", who=fault.filename or say("The system"), what=fault.strerror or fault))
