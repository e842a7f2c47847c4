"""recordgen seen."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import cache_option, exit_on_trouble, records_option, today_option
from recordgen.cli.places import HorseOrStable
from recordgen.problems import Trouble, quoted
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache


@click.command("seen")
@click.argument("about", metavar="[STABLE | STABLE/HORSE [DAY]] CODE", nargs=-1, required=True)
@records_option
@today_option
@cache_option
@click.option("--why", required=True, metavar="REASON", help="Why it may stand.")
@click.option("--at", metavar="PLACE", help="Which of several, such as feet.LF.before.toe_length or photos/NAME.")
@click.option("--all", "every", is_flag=True, help="All warnings of this code there.")
@dry_run_option
def command(
    about: tuple[str, ...],
    records: Path,
    today: dt.date,
    cache: Cache,
    why: str,
    at: str | None,
    every: bool,
    dry_run: bool,
) -> None:
    """Note that you saw a warning and leave it; it is told no more until it says something else.

    \b
        recordgen seen bramble 2026-11-04 value-unlikely --why "a Shetland, measured twice"
        recordgen seen bramble horse-twice --why "two ponies with one chip on paper; the vet looks into it"
        recordgen seen file-no-record --at plan-of-the-yard.pdf --why "stays on this computer"

    CODE stands at the end of the warning's line. The note goes into the file that the warning is about: of a visit, a
    horse, a stable, or the practice where you name none. recordgen check --seen lists them. An error cannot be left.
    """
    *where, code = about
    with exit_on_trouble():
        from recordgen.cli.looking import look_over
        from recordgen.records.change.seen import Seeing, leave

        file = _file(records, where)
        asked = Seeing(records, file, code.strip("[]"), at)
        _, problems = look_over(records, today, None, cache)
        carry_out(leave(asked, problems, why, today, every), today, dry_run)


def _file(records: Path, where: list[str]) -> Path:
    """The file that holds the note: a visit, a horse, a stable or the practice. Raises Trouble where it is missing."""
    from recordgen.records.change.correct import visit_file
    from recordgen.records.change.subject import horse_of, stable_of

    if len(where) > 2:
        raise click.UsageError(say("Name a stable, or a horse, and perhaps a day, and then the code of the warning."))
    if not where:
        return records / "practice.yaml"
    which = HorseOrStable().convert(where[0], None, click.get_current_context())
    if "/" not in which:
        if len(where) == 2:
            raise Trouble(
                say("{which} is a stable, and a stable has no visit", which=quoted(which)), say("Name the horse")
            )
        return stable_of(records, which).file
    horse = horse_of(records, which)
    return visit_file(horse, where[1]) if len(where) == 2 else horse.file
