"""One horse's sheet for the vet as a document that stands alone, with nothing in it of any other horse."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from recordgen.hoof.sheet import SheetPicture, sheet_of
from recordgen.hoof.sheet_json import edition_of
from recordgen.hoof.summary import summarise
from recordgen.hoof.ways import Ways
from recordgen.pictures.kept import Kept
from recordgen.records.practice import HorseRecord
from recordgen.records.whole import Whole
from recordgen.site.amended import bare_amendments
from recordgen.site.sheet import sheet_alone
from recordgen.site.templates import environment
from recordgen.site.ways_here import picture_folder


@dataclass(frozen=True)
class HorseSheet:
    """A whole HTML document that needs no other file, and the short name of all that it says."""

    html: str
    edition: str


def horse_sheet(
    whole: Whole, horse: HorseRecord, ways: Ways, today: dt.date, pictures: Sequence[SheetPicture] = ()
) -> HorseSheet:
    """The sheet of one horse as of a day.

    pictures: photographs and tracings to show, each with a data: address. Raises Trouble where a template of the
    practice's own cannot be filled in.
    """
    stable = next(one.stable for one in whole.practice.stables if one.slug == horse.stable)
    summary = summarise(horse, ways, today)
    sheet = sheet_of(summary, stable, ways, bare_amendments(whole, summary, ways.naming), pictures)
    templates = environment(whole.practice.folder, ways.naming)
    return HorseSheet(sheet_alone(sheet, ways, templates, Kept(picture_folder())), edition_of(sheet))
