"""recordgen init."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.asking import ask, can_ask
from recordgen.cli.options import exit_on_trouble
from recordgen.cli.terminal import echo
from recordgen.problems import quoted
from recordgen.records.models.names import PLACEHOLDERS
from recordgen.sentences import say

# Asked on a terminal, in this order.
_ASKED = {
    "practice": say("Name of your practice"),
    "trimmer": say("Your name, as owners know you"),
    "stable": say("First stable"),
}


@click.command("init")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--practice", help="Name of the practice.")
@click.option("--trimmer", help="Who trims.")
@click.option("--stable", help="Name of the first stable.")
def command(folder: Path, **told: str | None) -> None:
    """Make a new private records repository, with help for the editor and a first stable.

    \b
        recordgen init my-practice
        recordgen init my-practice --practice "Hazel Hoof Care" --trimmer "Wren Ashdown" --stable Willowmere

    On a terminal it asks for the names that were not said. Elsewhere it leaves words in their place, to be filled in
    before anything is built.
    """
    names = {what: told[what] or (ask(words) if can_ask() else PLACEHOLDERS[what]) for what, words in _ASKED.items()}
    stable_name, practice_name, trimmer = names["stable"], names["practice"], names["trimmer"]
    with exit_on_trouble():
        from recordgen.records.load.folders import slug_of
        from recordgen.records.write.practice import start_practice

        made = start_practice(folder, practice_name, trimmer, slug_of(stable_name), stable_name, dt.date.today())
    for path in made.files:
        echo(path)
    if made.not_in_git:
        echo(
            say(
                "Not in git yet: {message}. {way_out}.",
                message=made.not_in_git.message,
                way_out=made.not_in_git.way_out,
            )
        )
    else:
        echo(say("Git looks through the records before it keeps an entry (core.hooksPath is set to .githooks)."))
    for what in (what for what, name in names.items() if name == PLACEHOLDERS[what]):
        file = folder / (f"{slug_of(stable_name)}/stable.yaml" if what == "stable" else "practice.yaml")
        echo(
            say(
                "Fill in {names} in {file} first: nothing is built while it stands there.",
                names=quoted(names[what]),
                file=file,
            )
        )
    echo(say("Begin with {folder}. Keep the folder private: it holds clients' records.", folder=folder / "README.md"))
