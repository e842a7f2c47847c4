"""The sites of a practice: read once, summarised once, each site built apart and put in place only when whole."""

from __future__ import annotations

import datetime as dt
import multiprocessing
import os
import sys
import threading
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from dataclasses import dataclass, field
from multiprocessing.process import BaseProcess
from pathlib import Path

from recordgen.files import filling
from recordgen.folders import replace_folder, workroom
from recordgen.git.troubles import GitTrouble
from recordgen.hoof.context import Context
from recordgen.hoof.rounds.rounds import Calendar, plan_of
from recordgen.hoof.stable.patterns import Pattern, patterns_by_stable
from recordgen.hoof.summary import StableSummary, summarise_stable
from recordgen.locks import held
from recordgen.pictures.cache import PictureCache
from recordgen.records.history.trails import trails
from recordgen.records.load.everything import Whole, read_whole
from recordgen.records.photos.files import Photo
from recordgen.site.amendments import HorseTrails
from recordgen.site.context import picture_folder, ways_of
from recordgen.site.model import Site
from recordgen.site.pages import PRACTICE, Desk, practice_site, stable_site
from recordgen.site.site_folders import FIELD, is_site, mark_folder, refuse_place
from recordgen.site.templates import environment


@dataclass(frozen=True)
class Built:
    """A site that was put in place."""

    slug: str
    name: str
    folder: Path
    pages: int


@dataclass(frozen=True)
class Work:
    """What every builder of one run shares: records, ways, summaries, patterns, the day, the folder of pictures.

    no_trails: why git tells no trail of any visit, where it tells none.
    """

    records: Path
    ways: Context
    stables: tuple[StableSummary, ...]
    patterns: Mapping[str, Sequence[Pattern]]
    today: dt.date
    pictures: Path | None
    photos: Mapping[tuple[str, str], tuple[Photo, ...]] = field(default_factory=dict)
    trails: Mapping[tuple[str, str], HorseTrails] = field(default_factory=dict)
    no_trails: GitTrouble | None = None

    def desk(self) -> Desk:
        """What pages are made with."""
        made = environment(self.records, self.ways.naming)
        kept = PictureCache(self.pictures)
        return Desk(
            *(self.ways, made, kept, self.today),
            photos=self.photos,
            kept_photos=self.pictures,
            trails=self.trails,
            no_trails=self.no_trails,
        )

    def site(self, slug: str, desk: Desk) -> Site:
        """One site, ready for the engine."""
        if slug == PRACTICE:
            plan = plan_of(self.stables, Calendar.of(self.ways.practice, self.today))
            return practice_site(self.stables, self.patterns, plan, desk)
        return stable_site(next(one for one in self.stables if one.slug == slug), self.patterns[slug], desk)


def prepare(whole: Whole, today: dt.date, pictures: Path | None) -> Work:
    """The summaries of a practice that was read, for the builders to share."""
    ways = ways_of(whole, pictures)
    stables = tuple(summarise_stable(stable, ways, today) for stable in whole.practice.stables)
    patterns = patterns_by_stable(stables, whole.reference.patterns, ways.naming, today)
    photos = {(horse.stable, horse.slug): horse.photos for horse in whole.practice.horses if horse.photos}
    known = trails(whole.practice, whole.reference)
    by_horse = {(horse.stable, horse.slug): known.of_horse(horse.stable, horse.slug) for horse in whole.practice.horses}
    return Work(whole.practice.folder, ways, stables, patterns, today, pictures, photos, by_horse, known.trouble)


def one_site(folder: Path, today: dt.date, stable: str | None = None) -> Site:
    """The site of one stable, or the trimmer's own over all. Raises RecordsTrouble."""
    work = prepare(read_whole(folder, today, stable), today, picture_folder())
    return work.site(stable or PRACTICE, work.desk())


def build_sites(work: Work, slugs: Sequence[str], out: Path, processes: int | None = None) -> list[Built]:
    """Build the named sites into `out`, each apart from the others, and put them in place once all are whole.

    What stood in their places stays until then. Raises Trouble where that is anything but sites of ours, where another
    build works there, and where the disk is full, and what a builder raised; nothing has changed in that case.
    """
    _look_at(out, slugs)
    with filling(out, "The sites before stay as they are"):
        out.mkdir(mode=0o700, parents=True, exist_ok=True)
        with held(out, f"sites are being built in {out}"), workroom(Path(os.path.realpath(out))) as room:
            made = list(_made(work, slugs, room, processes or os.cpu_count() or 1))
            # Somebody may have put something there meanwhile, and a killed run may have moved something aside.
            _look_at(out, slugs)
            return [_put_in_place(site, Path(os.path.realpath(out)), out) for site in made]


def _look_at(out: Path, slugs: Sequence[str]) -> None:
    for slug in slugs:
        refuse_place(out / slug, slug)


def _made(work: Work, slugs: Sequence[str], beside: Path, processes: int) -> Iterator[Built]:
    if processes == 1 or len(slugs) == 1:
        _begin(work)
        yield from (_build_one(slug, beside / slug) for slug in slugs)
        return
    _warm()
    # Forked builders share what was read and loaded; where forking is not safe, each gets a copy.
    context = multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")
    with ProcessPoolExecutor(min(processes, len(slugs)), context, initializer=_begin_apart, initargs=(work,)) as pool:
        largest_first = sorted(slugs, key=lambda slug: slug != PRACTICE)
        waiting: dict[str, Future[Built]] = {
            slug: pool.submit(_build_one, slug, beside / slug) for slug in largest_first
        }
        yield from (waiting[slug].result() for slug in slugs)


# The one run a builder's process works on: what it shares with the others, and its own desk.
_RUN: list[tuple[Work, Desk]] = []


def _begin(work: Work) -> None:
    _RUN[:] = [(work, work.desk())]


def _begin_apart(work: Work) -> None:
    """Begin in a builder's own process, which ends with its parent: left alone it would hold the folder of sites."""
    _begin(work)
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

    work, desk = _RUN[0]
    site = work.site(slug, desk)
    write_site(site, folder, work.records)
    mark_folder(folder, slug)
    return Built(slug, site.name, folder, len(site.pages))


def _put_in_place(built: Built, out: Path, shown: Path) -> Built:
    """shown: the folder of sites as people named it."""
    replace_folder(built.folder, out / built.slug)
    return Built(built.slug, built.name, shown / built.slug, built.pages)


def strangers(out: Path, slugs: Sequence[str]) -> list[Path]:
    """The sites in `out` that were built here and belong to no stable of today."""
    known = {*slugs, PRACTICE, FIELD}
    return [path for path in sorted(out.iterdir()) if path.name not in known and is_site(path)]
