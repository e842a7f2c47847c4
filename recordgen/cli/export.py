"""recordgen export."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from pathlib import Path

import click

from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.terminal import echo
from recordgen.sentences import counted, say


@click.command("export")
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False))
@records_option
@today_option
def command(folder: Path, records: Path, today: dt.date) -> None:
    """Write the whole practice as tables (CSV) into a folder, for any other program.

    \b
        recordgen export ../practice-as-tables

    One table each for stables, horses, visits, feet and every list in them; dictionary.csv tells what each column
    means, its unit and its words. Photographs and pages of your own are files already and stay where they are;
    photographs.csv names them. All of it stands there in plain text, private notes too: it is for yourself.
    """
    with exit_on_trouble():
        from recordgen.csv_text import csv_of
        from recordgen.private.sharing.output_folder import fit_place
        from recordgen.records.load.everything import read_whole
        from recordgen.records.sheets.dictionary import DICTIONARY, DICTIONARY_COLUMNS, dictionary_rows
        from recordgen.records.sheets.tables import tables_of

        fit_place(folder, records, "../practice-as-tables")
        whole = read_whole(records, today)
        tables = tables_of(whole.practice, whole.reference.care)
        texts = {
            f"{table.name}.csv": csv_of([one.name for one in table.filled_columns], table.rows) for table in tables
        }
        texts[f"{DICTIONARY}.csv"] = csv_of(DICTIONARY_COLUMNS, dictionary_rows(tables))
        _write_folder(folder, texts)
    for table in tables:
        echo(say("{table}.csv: {rows}", table=table.name, rows=counted(len(table.rows), "row")))
    echo(
        say(
            "Written: {folder}. What each column means stands in {dictionary}.csv.",
            folder=folder,
            dictionary=DICTIONARY,
        )
    )


def _write_folder(folder: Path, texts: Mapping[str, str]) -> None:
    """Write files into a folder, whole or not at all. Raises Trouble where it holds anything but an earlier export."""
    from recordgen.files import write_whole, writing
    from recordgen.folders import replace_folder, workroom

    _refuse_others(folder)
    with writing(folder):
        folder.parent.mkdir(parents=True, exist_ok=True)
        with workroom(folder.parent) as room:
            fresh = room / folder.name
            fresh.mkdir(mode=0o700)
            for name, text in texts.items():
                write_whole(fresh / name, text, mode=0o600, lasting=False)
            replace_folder(fresh, folder)


def _refuse_others(folder: Path) -> None:
    """Raises Trouble where a folder holds a file that no earlier export, by its own dictionary, wrote."""
    import csv

    from recordgen.problems import Trouble, quoted
    from recordgen.records.sheets.dictionary import DICTIONARY

    told = folder / f"{DICTIONARY}.csv"
    lines = told.read_text("utf-8", "replace").splitlines() if told.is_file() else []
    ours = {f"{row.get('table')}.csv" for row in csv.DictReader(lines)} | {told.name}
    others = sorted({path.name for path in folder.iterdir()} - ours) if folder.is_dir() else []
    if others:
        raise Trouble(
            say("{folder} holds {others}, which is of no export", folder=folder, others=quoted(others[0])),
            say("Name a new folder"),
        )
