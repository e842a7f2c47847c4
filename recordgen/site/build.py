"""The sites of a practice: each built apart from the others, and put in place only when all are whole."""

from __future__ import annotations

import datetime as dt
import multiprocessing
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from dataclasses import dataclass, replace
from pathlib import Path

from recordgen.cache.entries import user_cache
from recordgen.files import filling
from recordgen.folders import replace_folder, workroom
from recordgen.locks import hold_lock
from recordgen.progress import steps, tell
from recordgen.records.load.everything import read_whole
from recordgen.records.load.folders import FIELD
from recordgen.sentences import say
from recordgen.site.build_context import BuildContext
from recordgen.site.drawings.dated import DaySayer
from recordgen.site.kept.days import as_text, bring_finished
from recordgen.site.kept.standing import KeptPage, KeptSite, Standing
from recordgen.site.model import Finished, Site
from recordgen.site.pages.sites import PRACTICE, render_site
from recordgen.site.site_folders import is_site, mark_folder, refuse_place
from recordgen.site.templates import compile_all
from recordgen.workers import end_with_parent


@dataclass(frozen=True)
class Built:
    """A site that was put in place, or stands there as it would be made again.

    kept: what it was made from, where that is to be known the next time; None where it stood. pages_again: how many of
    its pages stood. pictures, drawn: how many pictures the others asked for, and how many of these were drawn now.
    """

    slug: str
    name: str
    folder: Path
    pages: int
    kept: KeptSite | None = None
    stood: bool = False
    pages_again: int = 0
    pictures: int = 0
    drawn: int = 0


def render_one_site(folder: Path, today: dt.date, stable: str | None = None) -> Site:
    """The site of one stable, or the trimmer's own over all. Raises RecordsTrouble."""
    context = BuildContext.of(read_whole(folder, today, stable), today, user_cache())
    return render_site(context, stable or PRACTICE)


def build_sites(
    context: BuildContext,
    slugs: Sequence[str],
    out: Path,
    processes: int | None = None,
    standing: Standing | None = None,
) -> list[Built]:
    """Build the named sites into `out`, each apart from the others, and put them in place once all are whole.

    standing: what stands there from earlier builds, so that it need not be made again; nothing is known of it if None.
    What stood in their places stays until then. Raises Trouble where that is anything but sites of ours, where another
    build works there, and where the disk is full, and what a builder raised; nothing has changed in that case.
    """
    _look_at(out, slugs)
    with filling(out, say("The sites before stay as they are")):
        out.mkdir(mode=0o700, parents=True, exist_ok=True)
        place = Path(os.path.realpath(out))
        with hold_lock(out, say("sites are being built in {out}", out=out)):
            with workroom(place) as room:
                run = _Run(context, standing, place)
                made = list(_build_each(run, slugs, room, processes or os.cpu_count() or 1))
                # Somebody may have put something there meanwhile, and a killed run may have moved something aside.
                _look_at(out, slugs)
                put = [_put_in_place(site, place, out) for site in made]
            if standing:
                standing.remember({place / site.slug: site.kept for site in put if site.kept})
            return put


def _look_at(out: Path, slugs: Sequence[str]) -> None:
    for slug in slugs:
        refuse_place(out / slug, slug)


def _build_each(run: _Run, slugs: Sequence[str], beside: Path, processes: int) -> Iterator[Built]:
    if processes == 1 or len(slugs) == 1:
        _begin(run)
        in_turn = steps(say("Building sites"), slugs) if len(slugs) > 1 else slugs
        yield from (_build_one(slug, beside / slug) for slug in in_turn)
        return
    _warm(run)
    # Forked builders share what was read and loaded; where forking is not safe, each gets a copy.
    way = multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")
    with ProcessPoolExecutor(min(processes, len(slugs)), way, initializer=_begin_apart, initargs=(run,)) as pool:
        largest_first = sorted(slugs, key=lambda slug: slug != PRACTICE)
        waiting: dict[str, Future[Built]] = {
            slug: pool.submit(_build_one, slug, beside / slug) for slug in largest_first
        }
        for done, _ in enumerate(as_completed(waiting.values())):
            tell(say("Building sites"), done + 1, len(slugs))
        yield from (waiting[slug].result() for slug in slugs)


@dataclass(frozen=True)
class _Run:
    """One run: what sites are made with, what stands, and in which folder."""

    context: BuildContext
    standing: Standing | None
    out: Path


# The one run a builder's process works on.
_RUN: list[_Run] = []


def _begin(run: _Run) -> None:
    _RUN[:] = [run]


def _begin_apart(run: _Run) -> None:
    """Begin in a builder's own process, which ends with its parent: left alone it would hold the folder of sites."""
    _begin(run)
    end_with_parent()


def _warm(run: _Run) -> None:
    """Load the engine and compile the templates before the builders part, so that each need not do it again.

    Where nothing was computed of any horse, most of their pages stand: their templates wait for one that does not.
    """
    import recordgen.site.engine  # noqa: F401

    summaries = run.context.summaries
    all_known = summaries is not None and summaries.kept_count == summaries.horses
    compile_all(run.context.templates, ("horse/", "sheet/") if all_known else ())


def _build_one(slug: str, folder: Path) -> Built:
    """One site in its workroom, unless it stands as it would be made."""
    run = _RUN[0]
    place = run.out / slug
    before = run.standing.find(place) if run.standing else None
    keys = run.standing.keys_of(slug) if run.standing else {}
    today = run.context.today
    if before and (before.keys, before.day) == (keys, today) and slug != PRACTICE:
        return Built(slug, before.name, place, len(before.pages), stood=True, pages_again=len(before.pages))
    pictures = run.context.pictures
    asked, drawn = pictures.asked, pictures.drawn
    site = render_site(run.context, slug, before.finished_files(keys, today) if before else Finished())
    dated = _write_site(site, folder, run, before)
    pages = tuple(KeptPage.of(page, dated[page.uri]) for page in site.pages)
    files = tuple(dict.fromkeys((*site.files, *site.finished)))
    kept = KeptSite(site.name, today, keys, pages, files) if run.standing else None
    again = sum(page.finished for page in site.pages)
    made = Built(slug, site.name, folder, len(pages), kept, pages_again=again)
    return replace(made, pictures=pictures.asked - asked, drawn=pictures.drawn - drawn)


def _write_site(site: Site, folder: Path, run: _Run, before: KeptSite | None) -> Mapping[str, str]:
    """Writes a site into its workroom; what names the day in its pages, by their uri."""
    from recordgen.site.engine import write_site

    dated = {uri: as_text(placed) for uri, placed in write_site(site, folder, run.context.records).items()}
    if before:
        sayer = None if before.day == run.context.today else DaySayer(run.context.templates, run.context.today)
        dated |= bring_finished(site, before, run.out / site.slug, folder, sayer.say if sayer else None)
    mark_folder(folder, site.slug)
    return dated


def _put_in_place(built: Built, out: Path, shown: Path) -> Built:
    """shown: the folder of sites as people named it."""
    if not built.stood:
        replace_folder(built.folder, out / built.slug)
    return replace(built, folder=shown / built.slug)


def find_strangers(out: Path, slugs: Sequence[str]) -> list[Path]:
    """The sites in `out` that were built here and belong to no stable of today."""
    known = {*slugs, PRACTICE, FIELD}
    return [path for path in sorted(out.iterdir()) if path.name not in known and is_site(path)]
