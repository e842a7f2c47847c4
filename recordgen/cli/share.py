"""recordgen share."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.asking import show_once
from recordgen.cli.options import DayType, exit_on_trouble, records_option, today_option, why_option
from recordgen.cli.places import horse_argument
from recordgen.cli.terminal import echo
from recordgen.sentences import say, sentences

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming
    from recordgen.private.sharing.share import Handing, SealedFile


@click.command("share")
@horse_argument
@click.option("--with", "to", required=True, metavar="NAME", help="The vet who gets it.")
@click.option("--until", type=DayType(), help="Ask them to delete it after this day; nothing enforces that.")
@click.option(
    "--photos",
    "photo_days",
    metavar="DAY",
    type=DayType(),
    multiple=True,
    help="A day whose photographs go with it; may be said several times.",
)
@why_option
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Folder for the files; else this one.")
@click.option("--no-pdf", is_flag=True, help="Make the HTML file alone.")
@records_option
@today_option
def command(
    which: str,
    to: str,
    until: dt.date | None,
    photo_days: tuple[dt.date, ...],
    why: str | None,
    out: Path | None,
    no_pdf: bool,
    records: Path,
    today: dt.date,
) -> None:
    """Make one horse's sheet for the vet as files that open with six words alone: HTML, and PDF.

    \b
        recordgen share willowmere/bramble --with "Three Larches Equine Vets" --out ..
        recordgen share willowmere/bramble --with "Three Larches Equine Vets" --until 2027-01-31 --photos 2026-10-14
        recordgen share willowmere/bramble --with "Three Larches Equine Vets" --why "Lame in front since Monday."

    The owner must have agreed (consent in horse.yaml). Send the files one way and the words another, such as by
    telephone; the words are shown once. Each time is kept in the horse's shared.yaml.
    """
    from recordgen.private.sharing.share import Handing

    stable, _, horse = which.partition("/")
    if until and until < today:
        raise click.UsageError(say("--until {until} is over already.", until=until))
    if not to.strip() or not to.isprintable():
        raise click.UsageError(say("--with needs a name on one line."))
    handing = Handing(to.strip(), today, until, photo_days, not no_pdf, why)
    with exit_on_trouble():
        _share(records, stable, horse, out, handing)


def _share(records: Path, stable: str, horse: str, out: Path | None, handing: Handing) -> None:
    from recordgen.private.sharing.output_folder import fit_place
    from recordgen.private.sharing.share import hand_over, require_consent, seal_sheet
    from recordgen.private.sharing.sheet import horse_sheet, photographs
    from recordgen.records.load.everything import read_whole
    from recordgen.site.context import ways_of

    whole = read_whole(records, handing.on, stable)
    record = whole.practice.horse(stable, horse)
    require_consent(whole.practice, record, handing.on)
    place = fit_place(out, records)
    ways = ways_of(whole)
    pictures = tuple(photographs(record.photos, handing.photo_days, ways.naming))
    sheet = horse_sheet(whole, record, ways, handing.on, pictures, handing.why)
    sealed = seal_sheet(sheet, handing, ways.naming, whole.practice)
    # Shown before anything is written: no file lies there, and none is in the log, whose words nobody saw.
    _tell_words(sealed, ways.naming)
    for path in hand_over(sealed, whole.practice, record, place):
        echo(path)


def _tell_words(sealed: SealedFile, naming: Naming) -> None:
    if sealed.no_pdf:
        echo(sentences(sealed.no_pdf.message, sealed.no_pdf.way_out), err=True)
    show_once(naming.phrase("share_words"), sealed.words)
    echo(naming.phrase("share_words_how"))
    if "pdf" in sealed.files:
        echo(naming.phrase("share_words_pdf"))
