"""recordgen readers"""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.asking import must_be_askable, show_once
from recordgen.cli.options import records_option, told_plainly
from recordgen.problems import counted

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("readers")
@click.argument("stable", required=False)
@records_option
@click.option("--add", metavar="NAME", help="Make six words for somebody, and show them once.")
@click.option("--link", metavar="NAME", help="Make a link that opens the site without words, and show it once.")
@click.option("--drop", metavar="NAME", help="Take out somebody's words or link, by name or id.")
@click.option("--moved-from", metavar="FOLDER", help="Bring along the keys of a stable whose folder was renamed.")
@click.option("--rotate", is_flag=True, help="Make new keys and new words; all words and links so far end.")
@click.option(
    "--export", "copy_to", metavar="FILE", type=_FILE, help="Keep a copy of all stables' keys, under six words."
)
@click.option("--restore", "copy_from", metavar="FILE", type=_FILE, help="Bring keys back from such a copy.")
@click.option("--yes", is_flag=True, help="Rotate without asking.")
def command(stable: str | None, records: Path, yes: bool, **asked: str | bool | Path | None) -> None:
    """Tell who can open a stable's published site, and change it.

    \b
        recordgen readers willowmere
        recordgen readers willowmere --add "Mara Tilling"
        recordgen readers willowmere --link "the board in the tack room"
        recordgen readers willowmere --drop "Mara Tilling"
        recordgen readers willowmere --rotate
        recordgen readers old-mill --moved-from willowmere
        recordgen readers --export keys-of-november

    Names stay on this computer. A change takes effect when the site is published again, and reaches no copy that
    somebody kept: what was read can be kept, and earlier editions open with the words of their time.
    """
    chosen = {name: value for name, value in asked.items() if value}
    if len(chosen) > 1:
        raise click.UsageError("Do one thing at a time.")
    if bool(stable) == bool(chosen.keys() & {"copy_to", "copy_from"}):
        raise click.UsageError("Name the stable, such as willowmere; a copy is of all stables and takes none.")
    with told_plainly():
        from recordgen.private.readers import naming_of

        desk = _Desk(records, stable or "", naming_of(records), yes)
        for name, value in chosen.items():
            _ACTIONS[name](desk, str(value))
        if not chosen:
            _list(desk)


@dataclass(frozen=True)
class _Desk:
    """What every action needs."""

    records: Path
    stable: str
    naming: Naming
    yes: bool

    def say(self, key: str, **facts: str) -> None:
        """Print a phrase."""
        click.echo(self.naming.phrase(f"publish_{key}", **facts))


def _list(desk: _Desk) -> None:
    from recordgen.private.readers import state_of, ways_in

    for way in ways_in(state_of(desk.records, desk.stable)):
        by = desk.naming.phrase(f"publish_reader_{way.by}")
        desk.say("reader", id=way.id, by=by, name=way.name or desk.naming.phrase("publish_reader_unnamed"))


def _add(desk: _Desk, name: str) -> None:
    from recordgen.private.readers import changing

    with changing(desk.records, desk.stable) as state:
        words = state.add_words(name)[1]
    show_once(desk.naming.phrase("publish_added", name=name), words)
    desk.say("next", slug=desk.stable)


def _link(desk: _Desk, name: str) -> None:
    from recordgen.private.address import publish_of
    from recordgen.private.readers import changing, link_of

    address = publish_of(desk.records, desk.stable).address
    with changing(desk.records, desk.stable) as state:
        secret = state.add_link(name)[1]
    show_once(desk.naming.phrase("publish_linked", name=name), link_of(address, secret))
    desk.say("link_how", slug=desk.stable)
    desk.say("next", slug=desk.stable)


def _drop(desk: _Desk, name: str) -> None:
    from recordgen.private.readers import changing, way_named

    with changing(desk.records, desk.stable) as state:
        way = way_named(state, name)
        state.drop(way.id)
    desk.say("dropped", name=way.name or way.id, slug=desk.stable)
    desk.say("next", slug=desk.stable)


def _moved_from(desk: _Desk, old: str) -> None:
    from recordgen.private.moved_keys import bring_keys
    from recordgen.private.readers import refuse_unknown

    refuse_unknown(desk.records, desk.stable)
    bring_keys(desk.records, desk.stable, old)
    desk.say("moved", slug=desk.stable, old=old)


def _rotate(desk: _Desk, _: str) -> None:
    from recordgen.private.readers import changing

    must_be_askable(desk.yes)
    with changing(desk.records, desk.stable) as state:
        desk.say("rotate", slug=desk.stable)
        if not (desk.yes or click.confirm(desk.naming.phrase("publish_question_rotate"))):
            desk.say("rotate_not")
            raise click.exceptions.Exit(1)
        words = state.rotate()
    show_once(desk.naming.phrase("publish_words"), words)
    desk.say("rotated")
    desk.say("next", slug=desk.stable)


def _export(desk: _Desk, path: str) -> None:
    from recordgen.private.backup import export
    from recordgen.private.words import six_words

    words = six_words()
    count = export(Path(path), words)
    show_once(desk.naming.phrase("publish_exported", file=path, count=counted(count, "stable")), words)
    desk.say("exported_how")


def _restore(desk: _Desk, path: str) -> None:
    from recordgen.private.backup import restore

    words = click.prompt(desk.naming.phrase("publish_typed"), hide_input=sys.stdin.isatty())
    found = restore(Path(path), words)
    for key, files in (("restored", found.put_back), ("restored_kept", found.already_here)):
        if files:
            desk.say(key, names=desk.naming.listed([file.removesuffix(".json") for file in files]))
    desk.say("restored_how")


_ACTIONS: dict[str, Callable[[_Desk, str], None]] = {
    "add": _add,
    "link": _link,
    "drop": _drop,
    "moved_from": _moved_from,
    "rotate": _rotate,
    "copy_to": _export,
    "copy_from": _restore,
}
