"""recordgen publish."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.asking import agrees, must_be_askable, show_once
from recordgen.cli.options import (
    cache_option,
    exit_on_trouble,
    from_here,
    json_option,
    print_json,
    print_warnings,
    records_option,
    today_option,
)
from recordgen.cli.places import StableName
from recordgen.cli.terminal import echo
from recordgen.problems import Trouble
from recordgen.sentences import counted, say

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache
    from recordgen.hoof.naming import Naming
    from recordgen.private.publishing.publish import Edition
    from recordgen.private.sealing.seal import SealedPage


@click.command("publish")
@click.argument("stable", type=StableName())
@records_option
@today_option
@click.option("--dry-run", is_flag=True, help="List what would change, and publish nothing.")
@click.option("--yes", is_flag=True, help="Publish without asking.")
@click.option("--plain", is_flag=True, help="Publish the site unsealed, so that anybody can read it.")
@json_option
@cache_option
def command(
    stable: str, records: Path, today: dt.date, dry_run: bool, yes: bool, plain: bool, as_json: bool, cache: Cache
) -> None:
    """Seal a stable's site, or the page for your phone, and put it where its readers open it.

    \b
        recordgen publish willowmere --dry-run
        recordgen publish willowmere
        recordgen publish willowmere --yes --json
        recordgen publish field-notes

    The page for your phone is published as field-notes, to where practice.yaml says. What is served is files that
    nobody can read without the words. The first time makes six words and shows them once.
    """
    from recordgen.private.publishing.publish import edition

    must_be_askable(yes or dry_run)
    with exit_on_trouble(as_json), edition(records, stable, today, plain, cache) as ready:
        if as_json:
            print_json(_as_json(ready, plain, dry_run))
            return
        print_warnings(list(ready.task.whole.warnings), ready.task.whole.seen_before)
        naming = ready.task.naming
        for line in _page_lines(ready, naming, plain):
            echo(line)
        question = "publish_question_plain" if plain else "publish_question"
        if dry_run or not (yes or agrees(naming.phrase(question))):
            echo(naming.phrase("publish_not"))
            raise click.exceptions.Exit(0 if dry_run else 1)
        if ready.words:
            show_once(naming.phrase("publish_words"), ready.words)
            echo(naming.phrase("publish_words_how", slug=stable))
        ready.begin()
        if ready.words:
            echo(naming.phrase("publish_words_hold"))
        arrived = ready.send(echo)
        echo(naming.phrase("publish_done" if arrived else "publish_same", address=ready.task.publish.address))


def _as_json(ready: Edition, plain: bool, dry_run: bool) -> dict[str, Any]:
    """Publishes, unless it is a dry run, and tells it as one document. Raises Trouble where words must be shown."""
    told = {
        "site": ready.task.slug,
        "name": ready.task.name,
        "address": ready.task.publish.address,
        "day": ready.day.isoformat(),
        **{kind: [_title(page, ready) for page in pages] for kind, pages in _kinds(ready).items()},
        "files": len(_sizes(ready)),
        "bytes": sum(_sizes(ready)),
        "remarks": list(_warnings(ready, ready.task.naming, plain)),
        "problems": [from_here(problem).as_json() for problem in ready.task.whole.warnings],
    }
    if dry_run:
        return {**told, "published": False, "same": not any(_kinds(ready).values())}
    if ready.words:
        raise Trouble(
            say("this makes six words, which somebody must see"), say("Publish the first time without --json")
        )
    ready.begin()
    arrived = ready.send(lambda line: echo(line, err=True))
    return {**told, "published": arrived, "same": not arrived}


def _kinds(ready: Edition) -> dict[str, tuple[SealedPage, ...]]:
    return {"new": ready.changes.new, "changed": ready.changes.changed, "removed": ready.changes.removed}


def _title(page: SealedPage, ready: Edition) -> str:
    """The title of a page without the name of the site."""
    return page.title.removesuffix(f" - {ready.task.name}")


def _sizes(ready: Edition) -> list[int]:
    return [path.stat().st_size for path in ready.folder.rglob("*") if path.is_file()]


def _page_lines(ready: Edition, naming: Naming, plain: bool) -> Iterator[str]:
    name = ready.task.name
    yield naming.phrase("publish_heading", stable=name, address=ready.task.publish.address)
    kinds = _kinds(ready)
    for kind, pages in kinds.items():
        for page in pages:
            yield f"  {naming.phrase(f'publish_{kind}', title=_title(page, ready))}"
    if not any(kinds.values()):
        yield naming.phrase("publish_unchanged")
    sizes = _sizes(ready)
    yield say("{files}, {size:.1f} MB", files=counted(len(sizes), "file"), size=sum(sizes) / 1e6)
    yield from _warnings(ready, naming, plain)


def _warnings(ready: Edition, naming: Naming, plain: bool) -> Iterator[str]:
    from recordgen.private.publishing.address import needs_https, sharing_origin

    if plain:
        yield naming.phrase("publish_plain")
        return
    if needs_https(ready.task.publish.address):
        yield naming.phrase("publish_insecure", address=ready.task.publish.address)
    if shared := sharing_origin(ready.task.publish, ready.task.others):
        yield naming.phrase("publish_shared", stables=naming.listed(shared))
    if ready.day > ready.task.today:
        yield naming.phrase("publish_clock", day=naming.day(ready.day))
