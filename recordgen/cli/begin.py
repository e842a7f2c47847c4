"""recordgen begin."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.asking import ask, can_ask
from recordgen.cli.changing import carry_out, dry_run_option, folder_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.places import StableName
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.records.change.change import Change

# Asked of a horse on a terminal, in this order; an empty answer is left out.
_ASKED = {
    "kind": say("Horse, pony, donkey or mule"),
    "sex": say("Mare, gelding, stallion, filly, colt, jenny or jack"),
    "born": say("Born (year or day)"),
    "height": say("Height (such as 14.2 hh or 150 cm)"),
}


@click.command("begin")
@click.argument("name", required=False, metavar="STABLE | STABLE/HORSE")
@records_option
@today_option
@click.option("--at", "stable", type=StableName(), help="The stable that a horse is begun at.")
@click.option("--kind", help="Horse, pony, donkey or mule.")
@click.option("--sex", help="Mare, gelding, stallion and so on.")
@click.option("--born", help="Year or day of birth.")
@click.option("--height", help="At the withers, such as 14.2 hh or 150 cm.")
@click.option("--note", help="About the horse, for the owner to read.")
@folder_option
@dry_run_option
def command(
    name: str | None, records: Path, today: dt.date, stable: str | None, folder: str | None, dry_run: bool, **told: str
) -> None:
    """Begin a stable, or a horse at one.

    \b
        recordgen begin "Hazel Bottom"
        recordgen begin hazel-bottom/Bilberry --kind pony --born 2014
        recordgen begin

    On a terminal it asks for what was not said; an empty answer leaves a thing out.
    """
    asks = can_ask()
    if name is None:
        if not asks:
            raise click.UsageError(say('Say what to begin, such as "Hazel Bottom" or hazel-bottom/Bilberry.'))
        name, stable = _ask_name(records)
    with exit_on_trouble():
        carry_out(_plan_change(records, name, stable, folder, told, asks), today, dry_run)


def _ask_name(records: Path) -> tuple[str, str | None]:
    from recordgen.records.load.named import all_stables

    slugs = [slug for slug, _ in all_stables(records)]
    name = ask(say("Name of the stable or the horse"))
    home = ask(
        say("At which stable is the horse ({stables}); empty for a stable", stables=", ".join(slugs)), default=""
    )
    return name, StableName().convert(home, None, click.get_current_context()) if home else None


def _plan_change(
    records: Path, name: str, stable: str | None, folder: str | None, told: dict[str, str], asks: bool
) -> Change:
    from recordgen.records.change.begin import begin_horse, begin_stable

    home, slash, horse = name.rpartition("/")
    if slash:
        stable, name = StableName().convert(home, None, click.get_current_context()), horse
    if stable is None:
        return begin_stable(records, name, folder)
    known = {key: value for key, value in told.items() if value}
    if asks and not known:
        known = {key: ask(words, default="", show_default=False) for key, words in _ASKED.items()}
    return begin_horse(records, stable, name, known, folder)
