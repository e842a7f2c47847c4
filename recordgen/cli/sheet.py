"""recordgen sheet."""

from __future__ import annotations

import datetime as dt
import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import exit_on_trouble, json_option, records_option, today_option, why_option
from recordgen.cli.places import horse_argument
from recordgen.cli.terminal import echo
from recordgen.problems import Trouble
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.hoof.context import Context
    from recordgen.hoof.export.sheet import Sheet
    from recordgen.records.models.horse import Horse


@click.command("sheet")
@horse_argument
@records_option
@today_option
@click.option("--out", type=click.Path(path_type=Path, dir_okay=False), help="Write into this file.")
@click.option("--csv", "as_csv", is_flag=True, help="Every reading as CSV, a row each, with its error.")
@json_option
@click.option("--dictionary", is_flag=True, help="What each field of the CSV and the JSON means, as CSV.")
@why_option
@click.option("--for-myself", is_flag=True, help="Also without an agreement to share; the sheet says so.")
def command(
    which: str,
    records: Path,
    today: dt.date,
    out: Path | None,
    as_csv: bool,
    as_json: bool,
    dictionary: bool,
    why: str | None,
    for_myself: bool,
) -> None:
    """Write the sheet of one horse for a vet: two pages of A4, three with tracings, in one file.

    \b
        recordgen sheet willowmere/bramble --out ../bramble.html
        recordgen sheet willowmere/bramble --why "Lame in front since Monday." --out ../bramble.html
        recordgen sheet willowmere/bramble --csv --out ../bramble.csv

    Without --out the sheet goes into this folder, and CSV or JSON is printed. A sheet is not sealed, so that none is
    written into the records, where git might keep it.
    """
    stable, _, horse = which.partition("/")
    if as_csv + as_json + dictionary > 1:
        raise click.UsageError(say("Ask for one of --csv, --json and --dictionary."))
    if why and (as_csv or dictionary):
        raise click.UsageError(say("--why has no place in CSV; leave it out."))
    with exit_on_trouble():
        sheet, ways = _make_sheet(records, today, stable, horse, why)
        if out or not (as_csv or as_json or dictionary):
            _fit(out, records, horse)
        if dictionary:
            _print_or_write(_dictionary(ways), out)
            return
        if not for_myself:
            _require_agreement(sheet.summary.horse)
        if as_csv:
            _print_or_write(_csv(sheet), out)
        elif as_json:
            _print_or_write(_json(sheet, ways), out)
        else:
            _print_or_write(_html(sheet, ways, records), out or Path(f"{horse}-{today}.html"))


def _make_sheet(records: Path, today: dt.date, stable: str, horse: str, why: str | None) -> tuple[Sheet, Context]:
    from recordgen.hoof.export.sheet import sheet_of
    from recordgen.hoof.summary import summarise
    from recordgen.records.load.everything import read_whole
    from recordgen.site.amendments import bare_amendments
    from recordgen.site.context import ways_of

    whole = read_whole(records, today, stable)
    practice = whole.practice
    ways = ways_of(whole)
    summary = summarise(practice.horse(stable, horse), ways, today)
    home = next(one.stable for one in practice.stables if one.slug == stable)
    return sheet_of(summary, home, ways, bare_amendments(whole, summary, ways.naming), why=why), ways


def _fit(out: Path | None, records: Path, horse: str) -> None:
    """Raises Trouble where a sheet would lie in the records."""
    from recordgen.private.sharing.output_folder import fit_place

    fit_place(out.parent if out else None, records, f"--out ../{horse}.html")


def _require_agreement(horse: Horse) -> None:
    """Raises Trouble where nobody agreed, as the record says, that a vet may have it."""
    from recordgen.hoof.export.sheet import may_be_shared

    if may_be_shared(horse):
        return
    message = say(
        "nobody's agreement is recorded that the record of {horse} may be shared with a vet", horse=horse.name
    )
    if horse.consent:
        told = {"by": horse.consent.by, "horse": horse.name}
        message = say("{by} did not agree that the record of {horse} may be shared with a vet", **told)
    way_out = say(
        "Write consent: {{vet: yes, by: ..., date: ...}} into horse.yaml once the owner agrees, or add "
        "--for-myself for a sheet of your own"
    )
    raise Trouble(message, way_out)


def _csv(sheet: Sheet) -> str:
    from recordgen.csv_text import csv_of
    from recordgen.hoof.export.sheet_csv import COLUMNS, reading_rows

    return csv_of(COLUMNS, reading_rows(sheet))


def _json(sheet: Sheet, ways: Context) -> str:
    from recordgen.hoof.export.sheet_json import sheet_json

    return json.dumps(sheet_json(sheet, ways), indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def _dictionary(ways: Context) -> str:
    from recordgen.csv_text import csv_of
    from recordgen.hoof.export.sheet_json import DICTIONARY_COLUMNS, dictionary

    return csv_of(DICTIONARY_COLUMNS, dictionary(ways))


def _html(sheet: Sheet, ways: Context, records: Path) -> str:
    from recordgen.cache.entries import user_cache
    from recordgen.site.build_context import BuildContext
    from recordgen.site.sheet import sheet_alone

    return sheet_alone(sheet, BuildContext(records, ways, sheet.summary.as_of, user_cache()))


def _print_or_write(text: str, out: Path | None) -> None:
    """Print a text as it is, or write it to a file and say where."""
    from recordgen.files import refuse_other, write_whole, writing
    from recordgen.site.sheet import is_sheet

    if out is None:
        # To other programs as bytes, so that no system changes the ends of lines that CSV asks for.
        if sys.stdout.isatty():
            echo(text, nl=False)
        else:
            click.echo(text.encode(), nl=False)
        return
    refuse_other(out, is_sheet, say("sheet"))
    with writing(out):
        out.parent.mkdir(parents=True, exist_ok=True)
        write_whole(out, text, mode=0o600)
    echo(say("Written: {out}", out=out))
