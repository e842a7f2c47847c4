"""The context of a run: read once, summarised once, and shared by all builders."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from jinja2 import Environment

from recordgen.cache.entries import Cache
from recordgen.cache.watched_day import WatchedDay
from recordgen.git.troubles import GitTrouble
from recordgen.hoof.context import Context
from recordgen.hoof.stable.patterns import Pattern, patterns_by_stable
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.pictures.cache import PictureCache
from recordgen.records.history.earlier_names import find_first_places
from recordgen.records.history.trails import trails
from recordgen.records.load.everything import Whole
from recordgen.records.pages.model import OwnPages
from recordgen.records.photos.files import Photo
from recordgen.site.amendments import HorseTrails
from recordgen.site.apart.counts import Counts
from recordgen.site.context import ways_of
from recordgen.site.kept.digest import RecordsDigest
from recordgen.site.kept.summaries import HorsePlace, Summaries, watched
from recordgen.site.templates import environment


@dataclass(frozen=True)
class BuildContext:
    """The one thing that pages, sheets and sites are made with.

    records: the practice's folder. ways: its ways of measuring, the tables and the naming. cache: of pictures,
    figures and small photographs. patterns: by the stable's folder. first_places: where the folder of each horse
    lay first. no_trails: why git tells no trail of any visit, where it tells none. page_name: names a horse's page
    on its stable's own site by the horse's folder; a published site takes names that tell a host nothing.
    own_pages: by the stable's folder, the practice's by an empty name.
    """

    records: Path
    ways: Context
    today: date
    cache: Cache
    stables: tuple[StableSummary, ...] = ()
    patterns: Mapping[str, Sequence[Pattern]] = field(default_factory=dict)
    photos: Mapping[HorsePlace, tuple[Photo, ...]] = field(default_factory=dict)
    trails: Mapping[HorsePlace, HorseTrails] = field(default_factory=dict)
    first_places: Mapping[HorsePlace, str] = field(default_factory=dict)
    no_trails: GitTrouble | None = None
    own_pages: Mapping[str, OwnPages] = field(default_factory=dict)
    page_name: Callable[[str], str] = str
    summaries: Summaries | None = None

    @classmethod
    def of(
        cls,
        whole: Whole,
        today: date,
        cache: Cache | None,
        read: RecordsDigest | None = None,
        counts: Counts | None = None,
    ) -> BuildContext:
        """The context of a practice that was read, with the summaries of all that was read. cache: None for none.

        read: the records just before they were read, by which summaries are known again; all are computed where None.
        counts: of the practice's other stables, where one was read alone.
        """
        cache = cache or Cache(None)
        known_errors = (counts.own_errors, counts.hand_times) if counts else (None, None)
        practice, ways = whole.practice, ways_of(whole, cache, *known_errors)
        summaries = Summaries(whole, ways, today, cache, read)
        known = trails(practice, whole.reference, counts.private_entries if counts else ())
        others = counts.shares if counts else None
        return cls(
            records=practice.folder,
            ways=ways,
            today=today,
            cache=cache,
            stables=summaries.stables,
            patterns=patterns_by_stable(summaries.shares, whole.reference.patterns, ways.naming, today, others),
            photos={(horse.stable, horse.slug): horse.photos for horse in practice.horses if horse.photos},
            trails={(one.stable, one.slug): known.of_horse(one.stable, one.slug) for one in practice.horses},
            first_places=find_first_places(practice.folder, [(one.stable, one.slug) for one in practice.horses]),
            no_trails=known.trouble,
            summaries=summaries,
            own_pages={"": practice.pages, **{stable.slug: stable.pages for stable in practice.stables}},
        )

    def __getstate__(self) -> dict[str, Any]:
        """The state that another process gets: the fields; templates and pictures it opens itself."""
        return {one.name: getattr(self, one.name) for one in fields(self)}

    @cached_property
    def templates(self) -> Environment:
        """The templates of the pages, a practice's own before ours."""
        return environment(self.records, self.ways.naming)

    @cached_property
    def pictures(self) -> PictureCache:
        """The pictures that were drawn before, in this run or an earlier one."""
        return PictureCache(self.cache)

    def alone(self, slug: str, horse: str | None = None) -> BuildContext:
        """The same with nothing of any other stable in it, so that what is made with it goes by this one alone.

        horse: and with nothing of any other horse either, nor of the stable as a whole. Its day is watched, for how
        long that will stand. What is unpacked of a summary to be shown goes with this, so that a large practice is
        never unpacked whole.
        """
        day = WatchedDay.of(self.today)
        found = self.stable(slug)
        stable = replace(found, horses=tuple(watched(one, day) for one in found.horses if horse in (None, one.slug)))
        places = {(one.stable, one.slug) for one in stable.horses}
        return self._narrowed(
            today=day,
            stables=(stable,),
            patterns={slug: self.patterns[slug]} if slug in self.patterns and horse is None else {},
            photos={place: found for place, found in self.photos.items() if place in places},
            trails={place: found for place, found in self.trails.items() if place in places},
            first_places={place: found for place, found in self.first_places.items() if place in places},
            own_pages={name: found for name, found in self.own_pages.items() if name in ("", slug)},
        )

    def without_records(self) -> BuildContext:
        """The same without any stable, its day watched, for pages that go by the practice's settings and tables."""
        return self._narrowed(today=WatchedDay.of(self.today), stables=(), patterns={}, photos={}, trails={})

    def _narrowed(self, **fewer: Any) -> BuildContext:
        own = replace(self, summaries=None, **fewer)
        own.__dict__.update(templates=self.templates, pictures=self.pictures)
        return own

    def stable(self, slug: str) -> StableSummary:
        """The stable of a folder."""
        return next(one for one in self.stables if one.slug == slug)

    def photos_of(self, horse: HorseSummary) -> tuple[Photo, ...]:
        """The photographs of a horse."""
        return self.photos.get((horse.stable, horse.slug), ())

    def own_pages_of(self, slug: str = "") -> OwnPages:
        """The own pages of a stable, or of the practice."""
        return self.own_pages.get(slug, OwnPages())

    def trails_of(self, horse: HorseSummary) -> HorseTrails:
        """The trails of a horse's visits, oldest first; none where git tells nothing."""
        return self.trails.get((horse.stable, horse.slug), ())
