"""recordgen check"""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.options import json_option, print_json, print_problems, records_option, today_option
from recordgen.problems import counted


@click.command("check")
@click.argument("folder", required=False, type=click.Path(path_type=Path))
@records_option
@today_option
@json_option
@click.option("--stable", help="Look at this stable alone.")
def command(folder: Path | None, records: Path, today: dt.date, as_json: bool, stable: str | None) -> None:
    """Look through all records and list every problem with its line and the way out.

    \b
        recordgen check
        recordgen check records --json

    FOLDER is another way to say --records. Errors stop a build; warnings are unlikely things that may stand.
    """
    from recordgen.records.whole import look_through

    practice, _, problems = look_through(folder or records, today, stable)
    if as_json:
        print_json([problem.as_json() for problem in problems])
    else:
        print_problems(list(problems))
        if practice:
            horses = counted(len(practice.horses), "horse")
            click.echo(
                f"All is well: {counted(len(practice.stables), 'stable')}, {horses}, "
                f"{counted(practice.visit_count, 'visit')}; {problems.counted()}."
            )
        else:
            click.echo(f"{problems.counted()}.")
    if problems.errors:
        raise click.exceptions.Exit(1)
