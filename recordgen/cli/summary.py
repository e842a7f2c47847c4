"""recordgen summary."""

from __future__ import annotations

import datetime as dt
import textwrap
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.feet_table import feet_table
from recordgen.cli.options import exit_on_trouble, json_option, print_json, records_option, today_option
from recordgen.cli.places import horse_argument
from recordgen.cli.terminal import echo, width

if TYPE_CHECKING:
    from recordgen.hoof.cautions.cautions import Caution
    from recordgen.hoof.claims.claims import Claim
    from recordgen.hoof.measures.changes import FootMeasure
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.summary import HorseSummary


COLOURS = {"call now": "red", "call today": "red", "arrange soon": "yellow"}


@click.command("summary")
@horse_argument
@records_option
@today_option
@json_option
def command(which: str, records: Path, today: dt.date, as_json: bool) -> None:
    """Tell what is known of one horse: cautions, next visit, and the figures of each foot.

    \b
        recordgen summary willowmere/bramble
        recordgen summary willowmere/bramble --json
    """
    stable, _, horse = which.partition("/")
    with exit_on_trouble():
        from recordgen.hoof.export.summary_json import as_json as plain
        from recordgen.hoof.summary import summarise
        from recordgen.records.load.everything import read_whole
        from recordgen.site.context import ways_of

        whole = read_whole(records, today, stable)
        ways = ways_of(whole)
        summary = summarise(whole.practice.horse(stable, horse), ways, today)
        if as_json:
            print_json(plain(summary))
        else:
            _print(summary, ways.naming)


def _print(summary: HorseSummary, naming: Naming) -> None:
    seen, name = summary.last_visit, summary.horse.name
    echo(
        naming.phrase("summary_seen" if seen else "summary_not_seen", horse=name, day=naming.day(seen) if seen else "")
    )
    for caution in summary.cautions:
        _say(f"{naming.level(caution.level)}: {caution.text} ({name_of(caution, naming)})", COLOURS.get(caution.level))
    for told in _due_lines(summary, naming):
        _say(told)
    for line in feet_table(summary, naming, width()):
        echo(line)
    for foot, one in summary.feet.items():
        for finding in one.findings:
            _say(f"{naming.foot(foot)}, {naming.place(finding.place)}: {finding.text}")
    for change in (*summary.changes.real, *summary.changes.maybe):
        _say(_describe_change(change, naming))


def name_of(caution: Caution, naming: Naming) -> str:
    """The name that ends a caution."""
    from recordgen.hoof.cautions.typed_names import name_to_type

    return name_to_type(caution, naming)


def _say(text: str, colour: str | None = None) -> None:
    """Print a sentence below the horse's name, folded to the terminal's width."""
    most = width()
    for line in textwrap.wrap(text, most - 4, subsequent_indent="  ") if most else [text]:
        echo(f"  {line}", colour=colour)


def _due_lines(summary: HorseSummary, naming: Naming) -> Iterator[str]:
    """Sentences on what holds a trim back, when it is due, and the jobs."""
    from recordgen.hoof.rounds.rounds import explain_held

    if summary.held:
        yield explain_held(summary, naming)
    if summary.due:
        due = summary.due
        window = naming.phrase("rounds_window", earliest=str(due.earliest), latest=str(due.latest))
        yield naming.phrase("summary_next", best=naming.day(due.best), window=window, why=due.reason)
        if due.holiday:
            yield naming.phrase("due_holiday", name=due.holiday)
    for job in summary.jobs:
        yield naming.phrase("summary_job", job=", ".join(filter(None, (job.what, job.how_often))))
    for kept in summary.withheld:
        yield naming.phrase("summary_not_now", job=kept.job.what, why=kept.cautions[0].seen)


def _describe_change(one: Claim[FootMeasure], naming: Naming) -> str:
    how = "summary_since" if one.kind == "trend" else "summary_between"
    when = naming.phrase(how, before=str(one.before), day=str(one.since))
    what = f"{naming.foot(one.of.foot)}, {naming.measure(one.of.measure.words.name, one.of.measure.zone)}"
    unit = one.of.measure.unit
    change, low, high = (_signed(value, unit, naming) for value in (one.change, one.low, one.high))
    told = {"what": what, "change": change, "low": low, "high": high, "unit": naming.unit(unit)}
    return naming.phrase("summary_change" if one.real else "summary_maybe", when=when, **told)


def _signed(value: float, unit: str, naming: Naming) -> str:
    digits = naming.quantities.digits(unit, 1)
    return naming.figures(f"{round(naming.units.shown(value, unit), digits) + 0.0:+.{digits}f}")
