"""recordgen photo."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import click

from recordgen.cli.options import DayType, exit_on_trouble, records_option, today_option
from recordgen.cli.places import HorseName
from recordgen.cli.terminal import echo
from recordgen.problems import Trouble
from recordgen.records.models.names import MOMENTS, VIEWS, Foot, Moment, View, foot_named
from recordgen.sentences import Said, say, sentences


class FootType(click.ParamType):  # type: ignore[type-arg]
    """A foot by any of its names."""

    name = "foot"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Foot:
        """The foot a text means."""
        foot = foot_named(value)
        return foot or self.fail(
            say("'{value}' is no foot; write it like left_fore, near_fore or LF", value=value), param, ctx
        )


@click.command("photo")
@click.argument("words", nargs=-1, required=True, metavar="STABLE/HORSE FILE...")
@records_option
@today_option
@click.option("--date", "day", type=DayType(), help="Day of the photographs; else as the camera wrote it.")
@click.option("--foot", type=FootType(), help="Which foot: left_fore, near_fore or LF.")
@click.option("--view", type=click.Choice(VIEWS), help="From where it is seen; whole is the whole foot.")
@click.option("--moment", type=click.Choice(MOMENTS), help="Before or after the trim; else as found.")
@click.option("--clean", is_flag=True, help="Make photographs plain that lie in the records; name the files alone.")
def command(
    words: Sequence[str],
    records: Path,
    today: dt.date,
    day: dt.date | None,
    foot: Foot | None,
    view: View | None,
    moment: Moment | None,
    clean: bool,
) -> None:
    """Add photographs to a horse: upright, small, and without what a camera writes beside the picture.

    \b
        recordgen photo willowmere/bramble IMG_0412.jpg --foot RH --view sole --moment before
        recordgen photo willowmere/bramble 2026-10-14-left-fore-sole-after.png
        recordgen photo --clean willowmere/bramble/photos/2026-10-14-left-fore-sole-after.jpg

    JPEG, PNG, WebP and, with recordgen[heic], HEIC come in as JPEG of at most 1600 pixels. Place, time, camera and
    comments are left out. Foot and view may stand in a file's own name instead. The originals stay as they are.
    """
    with exit_on_trouble():
        from recordgen.records.photos.add import OnTheLine, add_photo, clean_photo, horse_folder

        if clean:
            _each(words, lambda file: clean_photo(records, file), say("made plain"), say("is plain already"))
            return
        if len(words) == 1:
            raise click.UsageError(say("Name the horse, then its pictures: willowmere/bramble IMG_0412.jpg"))
        horse = horse_folder(records, HorseName().one(records, words[0]))
        said = OnTheLine(day, foot, view, moment)
        added = say("added"), say("was there already and stays as it is")
        _each(words[1:], lambda file: add_photo(records, horse, file, said, today), *added)


def _each(files: Sequence[str], do: Callable[[Path], tuple[Path, bool]], done: Said, not_done: Said) -> None:
    """Do one thing to each file and tell what came of it; one that is refused does not stop the others."""
    refused = False
    for file in files:
        try:
            path, new = do(Path(file))
            echo(say("{file}  {done}", file=path, done=done if new else not_done))
        except Trouble as trouble:
            refused = True
            echo(sentences(trouble.message, trouble.way_out), err=True)
    if refused:
        raise click.exceptions.Exit(1)
