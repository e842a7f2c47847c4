"""The sites of a practice: each built apart from the others, and put in place only when all are whole."""

from __future__ import annotations

import datetime as dt
import multiprocessing
import os
import sys
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing.process import BaseProcess
from pathlib import Path

from recordgen.cache.entries import user_cache
from recordgen.files import filling
from recordgen.folders import replace_folder, workroom
from recordgen.locks import hold_lock
from recordgen.records.load.everything import read_whole
from recordgen.records.load.folders import FIELD
from recordgen.site.build_context import BuildContext
from recordgen.site.model import Site
from recordgen.site.pages.sites import PRACTICE, render_site
from recordgen.site.site_folders import is_site, mark_folder, refuse_place


@dataclass(frozen=True)
class Built:
    """A site that was put in place."""

    slug: str
    name: str
    folder: Path
    pages: int


def render_one_site(folder: Path, today: dt.date, stable: str | None = None) -> Site:
    """The site of one stable, or the trimmer's own over all. Raises RecordsTrouble."""
    context = BuildContext.of(read_whole(folder, today, stable), today, user_cache())
    return render_site(context, stable or PRACTICE)


def build_sites(context: BuildContext, slugs: Sequence[str], out: Path, processes: int | None = None) -> list[Built]:
    """Build the named sites into `out`, each apart from the others, and put them in place once all are whole.

    What stood in their places stays until then. Raises Trouble where that is anything but sites of ours, where another
    build works there, and where the disk is full, and what a builder raised; nothing has changed in that case.
    """
    _look_at(out, slugs)
    with filling(out, "The sites before stay as they are"):
        out.mkdir(mode=0o700, parents=True, exist_ok=True)
        with hold_lock(out, f"sites are being built in {out}"), workroom(Path(os.path.realpath(out))) as room:
            made = list(_build_each(context, slugs, room, processes or os.cpu_count() or 1))
            # Somebody may have put something there meanwhile, and a killed run may have moved something aside.
            _look_at(out, slugs)
            return [_put_in_place(site, Path(os.path.realpath(out)), out) for site in made]


def _look_at(out: Path, slugs: Sequence[str]) -> None:
    for slug in slugs:
        refuse_place(out / slug, slug)


def _build_each(context: BuildContext, slugs: Sequence[str], beside: Path, processes: int) -> Iterator[Built]:
    if processes == 1 or len(slugs) == 1:
        _begin(context)
        yield from (_build_one(slug, beside / slug) for slug in slugs)
        return
    _warm()
    # Forked builders share what was read and loaded; where forking is not safe, each gets a copy.
    way = multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")
    with ProcessPoolExecutor(min(processes, len(slugs)), way, initializer=_begin_apart, initargs=(context,)) as pool:
        largest_first = sorted(slugs, key=lambda slug: slug != PRACTICE)
        waiting: dict[str, Future[Built]] = {
            slug: pool.submit(_build_one, slug, beside / slug) for slug in largest_first
        }
        yield from (waiting[slug].result() for slug in slugs)


# The one run a builder's process works on.
_RUN: list[BuildContext] = []


def _begin(context: BuildContext) -> None:
    _RUN[:] = [context]


def _begin_apart(context: BuildContext) -> None:
    """Begin in a builder's own process, which ends with its parent: left alone it would hold the folder of sites."""
    _begin(context)
    threading.Thread(target=_end_with, args=(multiprocessing.parent_process(),), daemon=True).start()


def _end_with(parent: BaseProcess | None) -> None:
    if parent:
        parent.join()
        os._exit(1)


def _warm() -> None:
    """Load the engine before the builders part, so that each need not load it again."""
    import recordgen.site.engine  # noqa: F401


def _build_one(slug: str, folder: Path) -> Built:
    from recordgen.site.engine import write_site

    site = render_site(_RUN[0], slug)
    write_site(site, folder, _RUN[0].records)
    mark_folder(folder, slug)
    return Built(slug, site.name, folder, len(site.pages))


def _put_in_place(built: Built, out: Path, shown: Path) -> Built:
    """shown: the folder of sites as people named it."""
    replace_folder(built.folder, out / built.slug)
    return Built(built.slug, built.name, shown / built.slug, built.pages)


def find_strangers(out: Path, slugs: Sequence[str]) -> list[Path]:
    """The sites in `out` that were built here and belong to no stable of today."""
    known = {*slugs, PRACTICE, FIELD}
    return [path for path in sorted(out.iterdir()) if path.name not in known and is_site(path)]
