"""recordgen find."""

from __future__ import annotations

import os
from pathlib import Path

import click

from recordgen.cli.columns import cut
from recordgen.cli.options import csv_option, exit_on_trouble, json_option, print_csv, print_json, records_option
from recordgen.cli.terminal import echo, width
from recordgen.sentences import say, say_counted

_COLUMNS = ("file", "line", "where", "text")


@click.command("find")
@click.argument("words", nargs=-1, required=True, metavar="WORDS...")
@records_option
@json_option
@csv_option
def command(words: tuple[str, ...], records: Path, as_json: bool, as_csv: bool) -> None:
    """Search everything that was typed, with file and line: words, findings, remarks, days and numbers.

    \b
        recordgen find thrush
        recordgen find bramble infection deep
        recordgen find "14 October" wet
        recordgen find "toe_length>90"

    All words must fit, in any case; each is a part of a value, its name, its file's name or its day. Exit code 1 means
    that nothing was found.
    """
    with exit_on_trouble():
        from recordgen.records.load.search import search

        rows = [
            {"file": os.path.relpath(hit.file), "line": hit.line, "where": hit.where, "text": hit.text}
            for hit in search(records, words)
        ]
    if as_json:
        print_json(rows)
    elif as_csv:
        print_csv(_COLUMNS, rows)
    else:
        wide = width()
        for row in rows:
            line = f"{row['file']}:{row['line']}: {row['where']}{': ' if row['where'] else ''}{row['text']}"
            echo(cut(line, wide))
        echo(
            say_counted("Found in {count} place.", "Found in {count} places.", len(rows))
            if rows
            else say("Nothing that was typed fits all of it."),
            err=True,
        )
    if not rows:
        raise click.exceptions.Exit(1)
