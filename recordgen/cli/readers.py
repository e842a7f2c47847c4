"""recordgen readers."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.asking import agrees, ask, must_be_askable, show_once
from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.places import StableName
from recordgen.cli.terminal import echo
from recordgen.sentences import counted, say

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming
    from recordgen.private.keystore.site_keys import Reader, SiteKeys

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("readers")
@click.argument("stable", required=False, type=StableName())
@records_option
@click.option("--add", metavar="NAME", help="Make six words for somebody, and show them once.")
@click.option("--link", metavar="NAME", help="Make a link that opens the site without words, and show it once.")
@click.option("--drop", metavar="NAME", help="Take out somebody's words or link, by name or id.")
@click.option("--moved-from", metavar="FOLDER", help="Bring along the keys of a stable whose folder was renamed.")
@click.option("--rotate", is_flag=True, help="Make new keys, and new words for every reader; all from before end.")
@click.option(
    "--export", "copy_to", metavar="FILE", type=_FILE, help="Keep a copy of all stables' keys, under six words."
)
@click.option("--restore", "copy_from", metavar="FILE", type=_FILE, help="Bring keys back from such a copy.")
@click.option("--yes", is_flag=True, help="Do it without asking.")
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
    somebody kept: what was read can be kept, and earlier editions open with the words of their time. New words are
    shown before they are kept: where the window is closed too early, nothing has changed.
    """
    chosen = {name: value for name, value in asked.items() if value}
    if len(chosen) > 1:
        raise click.UsageError(say("Do one thing at a time."))
    if bool(stable) == bool(chosen.keys() & {"copy_to", "copy_from"}):
        raise click.UsageError(say("Name the stable, such as willowmere; a copy is of all stables and takes none."))
    with exit_on_trouble():
        from recordgen.private.keystore.readers import naming_of

        desk = _Desk(records, stable or "", naming_of(records), yes)
        for name, value in chosen.items():
            _ACTIONS[name](desk, str(value))
        if not chosen:
            _list(desk)


@dataclass(frozen=True)
class _Desk:
    """Values that every action needs."""

    records: Path
    stable: str
    naming: Naming
    yes: bool

    def tell(self, key: str, **facts: str) -> None:
        """Print a phrase."""
        echo(self.naming.phrase(f"publish_{key}", **facts))

    def confirm(self, question: str) -> None:
        """Ask, and end the command unless the answer is yes; with exit code 2 where nobody can be asked."""
        must_be_askable(self.yes)
        if not agrees(self.naming.phrase(f"publish_question_{question}")):
            self.tell("rotate_not")
            raise click.exceptions.Exit(1)


def _list(desk: _Desk) -> None:
    from recordgen.private.keystore.readers import state_of

    for reader in state_of(desk.records, desk.stable).readers:
        by = desk.naming.phrase(f"publish_reader_{reader.by}")
        desk.tell("reader", id=reader.slot.id, by=by, name=reader.name)


def _add(desk: _Desk, name: str) -> None:
    from recordgen.private.keystore.readers import changing

    with changing(desk.records, desk.stable) as state:
        _ask_about_namesakes(desk, state, name)
        _show(desk, *state.add_words(name))
    desk.tell("next", slug=desk.stable)


def _link(desk: _Desk, name: str) -> None:
    from recordgen.private.keystore.readers import changing

    with changing(desk.records, desk.stable) as state:
        _ask_about_namesakes(desk, state, name)
        _show(desk, *state.add_link(name))
    desk.tell("link_how", slug=desk.stable)
    desk.tell("next", slug=desk.stable)


def _ask_about_namesakes(desk: _Desk, state: SiteKeys, name: str) -> None:
    """Asks before somebody gets a second way in; ends the command for an empty name, and where the answer is no."""
    from recordgen.private.keystore.readers import readers_named

    if not name.strip() or not name.isprintable():
        raise click.UsageError(say("A reader needs a name on one line."))
    found = readers_named(state, name)
    if found and not desk.yes:
        ways = desk.naming.listed([desk.naming.phrase(f"publish_reader_{reader.by}") for reader in found])
        desk.tell("reader_twice", name=found[0].name, ways=ways)
        desk.confirm("again")


def _show(desk: _Desk, reader: Reader, secret: str) -> None:
    """Show a reader's new words or link, once."""
    from recordgen.private.keystore.readers import link_of
    from recordgen.private.publishing.address import publish_of

    if reader.by == "link":
        secret = link_of(publish_of(desk.records, desk.stable).address, secret)
    show_once(
        desk.naming.phrase("publish_linked" if reader.by == "link" else "publish_added", name=reader.name), secret
    )


def _drop(desk: _Desk, name: str) -> None:
    from recordgen.private.keystore.readers import changing, the_reader

    with changing(desk.records, desk.stable) as state:
        reader = the_reader(state, name)
        state.drop(reader.slot.id)
    desk.tell("dropped", name=reader.name, slug=desk.stable)
    desk.tell("next", slug=desk.stable)


def _moved_from(desk: _Desk, old: str) -> None:
    from recordgen.private.keystore.moved_keys import bring_keys
    from recordgen.private.keystore.readers import refuse_unknown

    refuse_unknown(desk.records, desk.stable)
    bring_keys(desk.records, desk.stable, old)
    desk.tell("moved", slug=desk.stable, old=old)


def _rotate(desk: _Desk, _: str) -> None:
    from recordgen.private.keystore.readers import changing

    with changing(desk.records, desk.stable) as state:
        names = desk.naming.listed([reader.name for reader in state.readers])
        desk.tell("rotate", slug=desk.stable, names=names)
        if not desk.yes:
            desk.confirm("rotate")
        for reader, secret in state.rotate():
            _show(desk, reader, secret)
    desk.tell("rotated")
    desk.tell("next", slug=desk.stable)


def _export(desk: _Desk, path: str) -> None:
    from recordgen.private.crypto.passphrases import six_words
    from recordgen.private.keystore.backup import backup

    words = six_words()
    made = backup(Path(path), words)
    of: list[str] = [counted(made.stables, "stable")] if made.stables else []
    of += [desk.naming.phrase("publish_field_page")] if made.field_page else []
    show_once(desk.naming.phrase("publish_exported", count=desk.naming.listed(of)), words)
    made.write()
    desk.tell("exported_how", file=path)


def _restore(desk: _Desk, path: str) -> None:
    from recordgen.private.keystore.backup import restore

    words = ask(desk.naming.phrase("publish_typed"), hide_input=sys.stdin.isatty())
    found = restore(Path(path), words)
    for key, files in (("", found.put_back), ("_kept", found.already_here), ("_damaged", found.damaged)):
        if files:
            desk.tell(
                f"restored{key}",
                names=desk.naming.listed([file.removesuffix(".keys").removesuffix(".pem") for file in files]),
            )
    desk.tell("restored_how")


_ACTIONS: dict[str, Callable[[_Desk, str], None]] = {
    "add": _add,
    "link": _link,
    "drop": _drop,
    "moved_from": _moved_from,
    "rotate": _rotate,
    "copy_to": _export,
    "copy_from": _restore,
}
