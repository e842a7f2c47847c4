"""recordgen stables."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import cache_option, exit_on_trouble, json_option, print_json, records_option, today_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache
    from recordgen.site.apart.counts import Counts

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("stables")
@records_option
@today_option
@json_option
@click.option(
    "--changed", "revision", metavar="REVISION", help="List those alone that changed since this one of git's."
)
@click.option("--counts", "out", type=_FILE, help="Write what stables are told of each other into this file.")
@click.option("--before", type=_FILE, help="The counts of the last build: what they tell otherwise counts as a change.")
@cache_option
def command(
    records: Path,
    today: dt.date,
    as_json: bool,
    revision: str | None,
    out: Path | None,
    before: Path | None,
    cache: Cache,
) -> None:
    """List the stables, or those that changed, for a build on several computers.

    \b
        recordgen stables
        recordgen stables --changed HEAD~1 --json
        recordgen stables --counts ../counts.json
        recordgen build --stable willowmere --with ../counts.json

    With the counts each stable is built from its own folder and what lies beside the stables' folders, to the bytes of
    a build of all. They hold numbers and no record; keep them as private as the records.
    """
    with exit_on_trouble(as_json):
        from recordgen.records.history.changed_stables import why_changed
        from recordgen.records.load.named import all_stables

        names = dict(all_stables(records))
        why = why_changed(records, list(names), revision) if revision else {}
        if out or before:
            why = _with_counts(records, today, cache, out, before, why)
    listed = [slug for slug in names if why.get(slug) or not (revision or before)]
    if as_json:
        print_json({"stables": [{"stable": slug, "name": names[slug], "why": why.get(slug, [])} for slug in listed]})
        return
    for slug in listed:
        echo(f"{slug:24} {names[slug]}{_because(why.get(slug, []))}")
    if not listed:
        echo(say("No stable has changed."))
    if out:
        echo(say("The counts lie in {out}. Build one with: recordgen build --stable NAME --with {out}", out=out))


def _because(why: Sequence[str]) -> str:
    return f"  ({', '.join(why)})" if why else ""


def _with_counts(
    records: Path, today: dt.date, cache: Cache, out: Path | None, before: Path | None, why: dict[str, list[str]]
) -> dict[str, list[str]]:
    """The reasons, with those of the counts; the counts are written where that is asked for."""
    from recordgen.files import writing
    from recordgen.site.apart.counts import read_counts

    earlier = read_counts(before) if before else None
    counts = _count(records, today, cache)
    if out:
        with writing(out):
            counts.write(out)
    if earlier is None:
        return why
    told: dict[str, Any] = {slug: counts.told_to(slug) != earlier.told_to(slug) for slug in counts.stables}
    return {slug: [*why.get(slug, []), *(["counts"] if other else [])] for slug, other in told.items()}


def _count(records: Path, today: dt.date, cache: Cache) -> Counts:
    from recordgen.records.load.everything import read_whole
    from recordgen.site.apart.count import count
    from recordgen.site.build_context import BuildContext
    from recordgen.site.kept.digest import RecordsDigest

    read = None if cache.folder is None else RecordsDigest.of(records)
    whole = read_whole(records, today, cache=cache)
    return count(whole, BuildContext.of(whole, today, cache, read))
