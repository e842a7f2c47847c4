"""recordgen backup."""

from __future__ import annotations

import sys
from pathlib import Path
from shlex import quote

import click

from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.terminal import echo
from recordgen.sentences import Said, and_more, counted, say, say_counted

MOST_NAMED = 5


@click.command("backup")
@click.argument("to", required=False)
@records_option
@click.option(
    "--restore",
    "folder",
    metavar="FOLDER",
    type=click.Path(path_type=Path),
    help="Make new records in this folder out of a copy, on this or another computer.",
)
def command(to: str | None, records: Path, folder: Path | None) -> None:
    """Copy all records with their history to a stick or another place, and read the copy back.

    \b
        recordgen backup /media/stick/my-practice.git
        recordgen backup
        recordgen backup /media/stick/my-practice.git --restore my-practice

    TO is a folder of its own, which is made, or the address of an empty git repository; the second time it is known.
    The keys of your sites go with it, sealed under six words that are shown once. A copy only ever grows. What is not
    kept in git yet is named. On a second computer, restore it once; then fetch and backup join the two.
    """
    with exit_on_trouble():
        if folder is not None:
            _restore(to, folder)
        else:
            _back_up(to, records)


def _back_up(to: str | None, records: Path) -> None:
    from recordgen.cli.asking import show_once
    from recordgen.private.backup.back_up import back_up
    from recordgen.private.backup.place import copy_address, refuse_shared
    from recordgen.private.keystore.readers import naming_of

    refuse_shared(records)
    phrase = naming_of(records).phrase
    address = copy_address(to, records)
    done = back_up(records, address, lambda words: show_once(phrase("backup_words"), words), lambda: ask_words(records))
    echo(phrase("backup_done", address=done.address, new=_entries(done.new)))
    if done.keys:
        echo(phrase("backup_keys", count=counted(done.keys, "file")))
    echo(phrase("backup_plain"))
    if done.not_kept:
        more = len(done.not_kept) - MOST_NAMED
        names = and_more(", ".join(done.not_kept[:MOST_NAMED]), more)
        echo(phrase("backup_not_kept", names=names))


def _entries(count: int) -> Said:
    return say_counted("{count} entry", "{count} entries", count)


def ask_words(records: Path) -> str:
    """Ask for the six words of a copy; empty where nobody has them now."""
    from recordgen.private.keystore.readers import naming_of

    told = naming_of(records).phrase("backup_typed")
    return str(click.prompt(told, default="", show_default=False, hide_input=sys.stdin.isatty()))


def _restore(to: str | None, folder: Path) -> None:
    from recordgen.git.remotes import address_of
    from recordgen.private.backup.restore import restore_copy
    from recordgen.private.keystore.readers import naming_of

    if to is None:
        raise click.UsageError(say("Name the copy, such as /media/stick/my-practice.git."))
    place = folder.absolute()
    done = restore_copy(address_of(to, Path.cwd()), place, lambda: ask_words(place))
    phrase = naming_of(place).phrase
    echo(phrase("restore_done", folder=str(folder), count=_entries(done.entries)))
    if done.keys:
        echo(phrase("restore_keys", count=counted(len(done.keys), "file")))
    if done.without_words:
        echo(phrase("restore_no_words"))
    echo(phrase("restore_next", folder=quote(str(folder))))
