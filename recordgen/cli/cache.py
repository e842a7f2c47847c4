"""recordgen cache."""

from __future__ import annotations

import click

from recordgen.cli.options import exit_on_trouble, json_option, print_json
from recordgen.cli.terminal import echo
from recordgen.sentences import counted, say, sentences


@click.command("cache")
@click.option("--clear", is_flag=True, help="Delete all of it.")
@json_option
def command(clear: bool, as_json: bool) -> None:
    """Tell where results are kept for the next time, and how large that is.

    \b
        recordgen cache
        recordgen cache --clear

    Nothing in it is a record: all of it is made again when it is needed. To go without it once: --no-cache.
    """
    from recordgen.cache import place
    from recordgen.cache.entries import user_cache

    with exit_on_trouble():
        folder, why_not = place.place_of_user(), user_cache().why_not
        gone = place.clear(folder) if clear and not why_not else 0
        found = [] if why_not else list(place.stored(folder))
    size = sum(one.size for one in found)
    if as_json:
        told = {"folder": str(folder), "files": len(found), "bytes": size, "most_bytes": place.MOST_BYTES}
        print_json({**told, "deleted": gone, "unused_because": why_not or None})
        return
    if why_not:
        echo(sentences(why_not, say("So nothing is kept; name another folder in RECORDGEN_CACHE")))
        return
    if clear:
        echo(say("{files} deleted.", files=counted(gone, "file")))
    echo(
        say(
            "{folder}: {files}, {size:.1f} MB of at most {most_bytes:.0f} MB.",
            folder=folder,
            files=counted(len(found), "file"),
            size=size / 1000000.0,
            most_bytes=place.MOST_BYTES / 1000000.0,
        )
    )
