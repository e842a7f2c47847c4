"""recordgen init."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.options import told_plainly
from recordgen.cli.terminal import echo


@click.command("init")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--practice", "practice_name", default="My practice", show_default=True, help="Name of the practice.")
@click.option("--trimmer", default="Your name", show_default=True, help="Who trims.")
@click.option("--stable", "stable_name", default="First stable", show_default=True, help="Name of the first stable.")
def command(folder: Path, practice_name: str, trimmer: str, stable_name: str) -> None:
    """Make a new private records repository, with help for the editor and a first stable.

    \b
        recordgen init my-practice
        recordgen init my-practice --practice "Hazel Hoof Care" --trimmer "Wren Ashdown" --stable Willowmere
    """
    with told_plainly():
        from recordgen.records.load.folders import slug_of
        from recordgen.records.write.practice import found_practice

        made = found_practice(folder, practice_name, trimmer, slug_of(stable_name), stable_name, dt.date.today())
    for path in made.files:
        echo(path)
    if made.not_in_git:
        echo(f"Not in git yet: {made.not_in_git.message}. {made.not_in_git.way_out}.")
    else:
        echo("Git looks through the records before it keeps an entry (core.hooksPath is set to .githooks).")
    echo(f"Begin with {folder / 'README.md'}. Keep the folder private: it holds clients' records.")
