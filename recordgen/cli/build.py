"""recordgen build."""

from __future__ import annotations

import datetime as dt
import os
import time
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import cache_option, print_problems, records_option, today_option, told_plainly
from recordgen.cli.places import stable_option
from recordgen.cli.remembered import Remembered, as_problems, as_values, outputs_told
from recordgen.cli.terminal import echo
from recordgen.problems import counted, sentences

if TYPE_CHECKING:
    from recordgen.cache.entries import Cache


@click.command("build")
@records_option
@today_option
@click.option("--out", type=click.Path(path_type=Path), default=Path("sites"), help="Folder for the sites.")
@stable_option("Build this stable's site alone.")
@click.option("--processes", type=click.IntRange(1), help="How many sites are built at once; else one for each core.")
@cache_option
@click.option("-v", "--verbose", is_flag=True, help="Print each stage with its time.")
def command(
    records: Path,
    today: dt.date,
    out: Path,
    stable: str | None,
    processes: int | None,
    cache: Cache,
    verbose: bool,
) -> None:
    """Build a private site for each stable, and the trimmer's own over all of them.

    \b
        recordgen build
        recordgen build --stable willowmere --out ../look

    The sites before stay until the new ones are whole. Nothing is ever replaced but sites that were built here.
    """
    stages = _Stages(verbose)
    with told_plainly():
        if stages.aloud and cache.why_not:
            echo(sentences(cache.why_not), err=True)
        known = Remembered(cache, records, "build", str(out), os.path.realpath(out), today, stable)
        stages.done("look")
        answer = known.answer()
        if answer and answer["outputs"] == _outputs(out, answer["slugs"]):
            _tell(answer)
            echo(f"Nothing has changed: {counted(len(answer['slugs']), 'site')} looked at in {stages.total():.1f} s.")
            return
        answer = _build(records, today, out, stable, processes, cache, stages)
        known.keep({**answer, "outputs": _outputs(out, answer["slugs"])})
        _tell(answer)
    made = counted(len(answer["slugs"]), "site")
    stood = f", {answer['stood']} of them as they stood" if answer["stood"] else ""
    echo(f"{made} in {stages.total():.1f} s{stood}. Open the pages above, or run: recordgen preview")


def _build(
    records: Path,
    today: dt.date,
    out: Path,
    stable: str | None,
    processes: int | None,
    cache: Cache,
    stages: _Stages,
) -> dict[str, Any]:
    """Builds the sites: their folders, the warnings, and a line for each."""
    from recordgen.cache.place import prune
    from recordgen.private.sharing.output_folder import refuse_sites
    from recordgen.records.load.everything import read_whole
    from recordgen.site.build import build_sites, find_strangers
    from recordgen.site.build_context import BuildContext
    from recordgen.site.kept.digest import RecordsDigest
    from recordgen.site.kept.standing import Standing
    from recordgen.site.pages.sites import PRACTICE

    stages.done("load")
    refuse_sites(out, records)
    before = None if cache.folder is None else RecordsDigest.of(records)
    whole = read_whole(records, today, stable)
    stages.done("read")
    context = BuildContext.of(whole, today, cache, before)
    stages.done("compute")
    slugs = [one.slug for one in context.stables]
    standing = Standing(cache, before, whole, context) if before else None
    built = build_sites(context, slugs if stable else [*slugs, PRACTICE], out, processes, standing)
    stages.done("build")
    if cache.folder and not cache.why_not:
        prune(cache.folder)
    strangers = [] if stable else find_strangers(out, slugs)
    return {
        "slugs": [site.slug for site in built],
        "stood": sum(site.stood for site in built),
        "warnings": as_values(whole.warnings),
        "lines": [
            *(f"{site.folder / 'index.html'}  {site.name}, {counted(site.pages, 'page')}" for site in built),
            *(f"{folder} is no stable of these records; delete it if it is not needed." for folder in strangers),
        ],
    }


def _tell(answer: dict[str, Any]) -> None:
    print_problems(as_problems(answer["warnings"]))
    for line in answer["lines"]:
        echo(line)


def _outputs(out: Path, slugs: Sequence[str]) -> str:
    """The sites as they stand, and which other folders beside them are sites built here."""
    return f"{outputs_told([out / slug for slug in slugs])} {sorted(map(str, out.glob('*/.recordgen-site.json')))}"


class _Stages:
    """Tells how long each stage took, where that is asked for."""

    def __init__(self, aloud: bool) -> None:
        self.aloud = aloud
        self.start = self.last = time.perf_counter()

    def done(self, name: str) -> None:
        """The end of a stage."""
        now = time.perf_counter()
        if self.aloud:
            echo(f"{name:8} {now - self.last:6.2f} s", err=True)
        self.last = now

    def total(self) -> float:
        """Seconds since the beginning."""
        return time.perf_counter() - self.start
