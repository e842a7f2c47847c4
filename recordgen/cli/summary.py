"""recordgen summary."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import json_option, print_json, records_option, today_option, told_plainly
from recordgen.cli.places import horse_argument
from recordgen.cli.terminal import echo
from recordgen.problems import counted

if TYPE_CHECKING:
    from recordgen.hoof.claims.claims import Claim
    from recordgen.hoof.measures.changes import FootMeasure
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.summary import FootSummary, HorseSummary


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
    with told_plainly():
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
    from recordgen.hoof.cautions.typed_names import name_to_type
    from recordgen.hoof.rounds.rounds import explain_held

    seen = f"last visit {naming.day(summary.last_visit)}" if summary.last_visit else "no visit yet"
    echo(f"{summary.horse.name}, {seen}")
    for caution in summary.cautions:
        echo(f"  {caution.level}: {caution.text} ({name_to_type(caution, naming)})")
    if summary.held:
        echo(f"  {explain_held(summary, naming)}")
    if summary.due:
        due = summary.due
        echo(f"  next visit about {naming.day(due.best)} ({due.earliest} to {due.latest}): {due.reason}")
    for job in summary.jobs:
        echo(f"  until then: {job.what}" + (f", {job.how_often}" if job.how_often else ""))
    for kept in summary.withheld:
        echo(f"  not now: {kept.job.what} ({kept.cautions[0].seen})")
    for foot, one in summary.feet.items():
        echo(f"{naming.foot(foot)}")
        _print_foot(one)
    for told in (*summary.changes.real, *summary.changes.maybe):
        echo(f"  {_change_told(told, naming)}")


def _change_told(one: Claim[FootMeasure], naming: Naming) -> str:
    kind = "changed" if one.real else "may have changed"
    when = f"since {one.since}" if one.kind == "trend" else f"between {one.before} and {one.since}"
    name = f"{naming.foot(one.of.foot)}, {naming.measure(one.of.measure.words.name, one.of.measure.zone)}"
    return f"{kind}: {name} by {one.change:+.1f} ({one.low:+.1f} to {one.high:+.1f}) {one.of.measure.unit} {when}"


def _print_foot(one: FootSummary) -> None:
    for label, growth in (("net growth", one.growth.net), ("growth by a mark", one.growth.true)):
        if growth:
            spread = f"{growth.low:.2f} to {growth.high:.2f}, {counted(growth.cycles, 'cycle')}"
            echo(f"  {label:34} {growth.mean:.2f} mm a day ({spread})")
    for summary in one.measures.values():
        measure = summary.measure
        label = measure.words.name + (f", {measure.zone}" if measure.zone else "")
        taken = [f"{value:g}" for value in (summary.before, summary.after) if value is not None]
        told = f"  {label:34} {' -> '.join(taken)} {measure.unit}"
        if summary.last:
            change = summary.last
            told += f"; {change.change:+g} since {change.since}"
        echo(told)
    for finding in one.findings:
        echo(f"  {finding.place}: {finding.text}")
