"""recordgen build."""

from __future__ import annotations

import datetime as dt
import os
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

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
from recordgen.cli.places import stable_option
from recordgen.cli.remembered import Remembered, outputs_digest
from recordgen.cli.terminal import echo
from recordgen.sentences import counted, say, sentences

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache
    from recordgen.records.load.everything import Whole
    from recordgen.site.apart.counts import Counts
    from recordgen.site.build import Built
    from recordgen.site.build_context import BuildContext
    from recordgen.site.kept.standing import Standing


@click.command("build")
@records_option
@today_option
@click.option("--out", type=click.Path(path_type=Path), default=Path("sites"), help="Folder for the sites.")
@stable_option("Build this stable's site alone; practice is your own site over all.")
@click.option(
    "--with",
    "counts",
    type=click.Path(path_type=Path, dir_okay=False),
    help="With --stable: what recordgen stables --counts wrote, so that it is the same as in a build of all.",
)
@click.option("--processes", type=click.IntRange(1), help="How many sites are built at once; else one for each core.")
@json_option
@cache_option
@click.option("-v", "--verbose", is_flag=True, help="Print each stage with its time, and what was used again.")
def command(
    records: Path,
    today: dt.date,
    out: Path,
    stable: str | None,
    counts: Path | None,
    processes: int | None,
    as_json: bool,
    cache: Cache,
    verbose: bool,
) -> None:
    """Build a private site for each stable, and the trimmer's own over all of them.

    \b
        recordgen build
        recordgen build --stable willowmere --out ../look
        recordgen build --stable willowmere --with ../counts.json --json

    The sites before stay until the new ones are whole. Nothing is ever replaced but sites that were built here.
    """
    from recordgen.records.load.folders import TAKEN

    if counts and stable in (None, TAKEN):
        raise click.UsageError(say("--with goes with --stable NAME."))
    stages = Stages(verbose)
    with exit_on_trouble(as_json):
        if stages.aloud and cache.why_not:
            echo(sentences(cache.why_not), err=True)
        asked = BuildAsked(records, today, out, stable, _counts(counts), processes, cache)
        known = asked.remembered()
        stages.done("look")
        answer = known.answer()
        unchanged = bool(answer) and answer["outputs"] == _outputs(out, answer)
        if not unchanged:
            answer = _build(asked, stages)
            known.keep({**answer, "outputs": _outputs(out, answer)})
    if as_json:
        _print_json(answer, unchanged)
    else:
        _tell(answer, unchanged, stages)


@dataclass(frozen=True)
class BuildAsked:
    """The sites to build, and how. stable: it alone, or the trimmer's own site."""

    records: Path
    today: dt.date
    out: Path
    stable: str | None
    counts: Counts | None
    processes: int | None
    cache: Cache

    def remembered(self) -> Remembered:
        """The answer of an earlier build by all that it went by."""
        place = (str(self.out), os.path.realpath(self.out))
        counts = self.counts and self.counts.model_dump_json()
        return Remembered(self.cache, self.records, "build", *place, self.today, self.stable, counts)


def _counts(path: Path | None) -> Counts | None:
    if path is None:
        return None
    from recordgen.site.apart.counts import read_counts

    return read_counts(path)


def _build(asked: BuildAsked, stages: Stages) -> dict[str, Any]:
    """Builds the sites: each with its folder, the warnings, and what else lies among them."""
    from recordgen.cache.place import prune
    from recordgen.private.sharing.output_folder import refuse_sites
    from recordgen.records.load.folders import TAKEN
    from recordgen.site.build import build_sites, find_strangers

    stages.done("load")
    refuse_sites(asked.out, asked.records)
    context, standing, whole = _read(asked, stages)
    slugs = [one.slug for one in context.stables]
    wanted = [asked.stable] if asked.stable else [*slugs, TAKEN]
    built = build_sites(context, wanted, asked.out, asked.processes, standing)
    stages.done("build", *_reused(built))
    if asked.cache.folder and not asked.cache.why_not:
        prune(asked.cache.folder)
    strangers = [] if asked.stable else find_strangers(asked.out, slugs)
    return {
        "sites": tuple(_site(one) for one in built),
        "strangers": tuple(str(folder) for folder in strangers),
        "warnings": tuple(whole.warnings),
        "seen_before": whole.seen_before,
    }


def _read(asked: BuildAsked, stages: Stages) -> tuple[BuildContext, Standing | None, Whole]:
    """Reads and computes; what stands of earlier builds, where that can be known; what was read."""
    from recordgen.records.load.everything import read_whole
    from recordgen.records.load.folders import TAKEN
    from recordgen.site.apart.count import read_counted
    from recordgen.site.build_context import BuildContext
    from recordgen.site.kept.digest import RecordsDigest
    from recordgen.site.kept.standing import Standing

    only = None if asked.stable == TAKEN else asked.stable
    before = None if asked.cache.folder is None or asked.counts else RecordsDigest.of(asked.records)
    if asked.counts and only:
        whole = read_counted(asked.records, asked.today, only, asked.counts, asked.cache)
    else:
        whole = read_whole(asked.records, asked.today, only, cache=asked.cache)
    stages.done("read")
    context = BuildContext.of(whole, asked.today, asked.cache, before, asked.counts)
    found = context.summaries
    stages.done("compute", (found.kept_count if found else 0, found.horses if found else 0, "horses"))
    return context, Standing(asked.cache, before, whole, context) if before else None, whole


def _reused(built: Sequence[Built]) -> Iterator[tuple[int, int, str]]:
    yield sum(site.stood for site in built), len(built), "sites"
    yield sum(site.pages_again for site in built), sum(site.pages for site in built), "pages"
    yield sum(site.pictures - site.drawn for site in built), sum(site.pictures for site in built), "pictures"


def _site(built: Built) -> dict[str, Any]:
    page = str(built.folder / "index.html")
    return {"site": built.slug, "name": built.name, "page": page, "pages": built.pages, "stood": built.stood}


def _print_json(answer: dict[str, Any], unchanged: bool) -> None:
    """One document: the sites, other sites that lie among them, the warnings, and whether nothing had changed."""
    warnings = [from_here(problem).as_json() for problem in answer["warnings"]]
    told = {"sites": answer["sites"], "strangers": answer["strangers"], "problems": warnings, "unchanged": unchanged}
    print_json(told)


def _tell(answer: dict[str, Any], unchanged: bool, stages: Stages) -> None:
    print_warnings(answer["warnings"], answer["seen_before"])
    for site in answer["sites"]:
        echo(say("{page}  {name}, {pages}", page=site["page"], name=site["name"], pages=counted(site["pages"], "page")))
    for folder in answer["strangers"]:
        echo(say("{folder} is no stable of these records; delete it if it is not needed.", folder=folder))
    made, seconds = counted(len(answer["sites"]), "site"), f"{stages.total():.1f}"
    if unchanged:
        echo(say("Nothing has changed: {sites} looked at in {seconds} s.", sites=made, seconds=seconds))
        return
    told = say("{sites} in {seconds} s", sites=made, seconds=seconds)
    if stood := sum(site["stood"] for site in answer["sites"]):
        told = say("{sites_in_seconds}, {stood} of them as they stood", sites_in_seconds=told, stood=stood)
    echo(say("{built}. Open the pages above, or run: recordgen preview", built=told))


def _outputs(out: Path, answer: dict[str, Any]) -> str:
    """The sites as they stand, and which other folders beside them are sites built here."""
    slugs: Sequence[str] = [site["site"] for site in answer["sites"]]
    return f"{outputs_digest([out / slug for slug in slugs])} {sorted(map(str, out.glob('*/.recordgen-site.json')))}"


class Stages:
    """Tells how long each stage took and what of it was used again, where that is asked for."""

    def __init__(self, aloud: bool) -> None:
        self.aloud = aloud
        self.start = self.last = time.perf_counter()

    def done(self, name: str, *reused: tuple[int, int, str]) -> None:
        """The end of a stage. reused: how many were used again, of how many, and of which kind."""
        now = time.perf_counter()
        if self.aloud:
            told = ", ".join(f"{again} of {of} {kind}" for again, of, kind in reused if of)
            echo(f"{name:8} {now - self.last:6.2f} s{f'  {told} as before' if told else ''}", err=True)
        self.last = now

    def total(self) -> float:
        """Seconds since the beginning."""
        return time.perf_counter() - self.start
