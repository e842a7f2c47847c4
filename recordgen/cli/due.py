"""recordgen due."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.columns import cut
from recordgen.cli.options import exit_on_trouble, json_option, print_json, records_option, today_option
from recordgen.cli.places import stable_option
from recordgen.cli.terminal import echo, width
from recordgen.sentences import sentences

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.summary import HorseSummary


@click.command("due")
@records_option
@today_option
@json_option
@stable_option("List this stable alone.")
def command(records: Path, today: dt.date, as_json: bool, stable: str | None) -> None:
    """List who is due when, and why; the earliest first.

    \b
        recordgen due
        recordgen due --stable willowmere --json
    """
    with exit_on_trouble():
        from recordgen.site.kept.summaries import summarised

        ways, stables = summarised(records, today, stable)
        horses = [horse for one in stables for horse in one.present]
    horses.sort(key=lambda horse: (horse.due.best if horse.due else dt.date.max, horse.stable, horse.slug))
    if as_json:
        print_json([_plain(horse) for horse in horses])
        return
    if not horses:
        echo(sentences(ways.naming.phrase("rounds_none")))
    for horse in horses:
        for line in _lines(horse, ways.naming):
            echo(cut(line, width()))


def _plain(horse: HorseSummary) -> dict[str, Any]:
    from recordgen.hoof.export.summary_json import as_json

    told = as_json(horse)
    return {key: told[key] for key in ("stable", "horse", "name", "last_visit", "due", "cautions", "no_trim")}


def _lines(horse: HorseSummary, naming: Naming) -> Iterator[str]:
    """Tell when it is due, then what holds a trim back, then the open cautions by the names that end them."""
    from recordgen.hoof.cautions.typed_names import names_to_type
    from recordgen.hoof.rounds.rounds import explain_held

    yield _line(horse, naming)
    if horse.held:
        yield f"    {explain_held(horse, naming)}"
    yield from (f"    {named}" for named in names_to_type(horse.cautions, naming))


def _line(horse: HorseSummary, naming: Naming) -> str:
    name = f"{horse.stable}/{horse.slug}"
    if horse.due is None:
        return f"{name:32} {naming.phrase('due_no_visit')}"
    due = horse.due
    late = f"  {naming.counted('due_overdue', due.overdue_days)}" if due.overdue_days else ""
    window = naming.phrase("rounds_window", earliest=str(due.earliest), latest=str(due.latest))
    holiday = "; " + naming.phrase("due_holiday", name=due.holiday) if due.holiday else ""
    return f"{name:32} {due.best}  ({window}){late}  {due.reason}{holiday}"
