"""The sites that stand from an earlier build, by all that each part of them was made from.

A part is a horse: its pages, pictures and dates. Its key covers every byte of the horse's folder, what its stable and
all stables share, what git tells of it, the menu and the program; its pages are rendered from nothing else
(`BuildContext.alone`). Each page that explains the others is a part too, which goes by what all stables share and the
menu. Another part is all else of a stable, whose key covers those of its horses, and what the other stables tell of it.
The day is in no key: a part stands on the days on which its pages would be the same, as the day told while they were
made, and what names the day in them is said again (`days.py`). A site that is not as it was left is made again whole.
"""

from __future__ import annotations

import hashlib
import json
import os
import posixpath
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Any

from recordgen.cache.entries import Cache
from recordgen.cache.inputs import files_in, stat_digest
from recordgen.cache.spelling import key_of
from recordgen.cache.values import as_json, from_json
from recordgen.cache.versions import program_version
from recordgen.cache.watched_day import AlikeDays
from recordgen.records.load.everything import Whole
from recordgen.site.build_context import BuildContext
from recordgen.site.frame.search_index import Entry
from recordgen.site.kept.digest import RecordsDigest
from recordgen.site.model import Finished, Page
from recordgen.site.pages.explanations import EXPLAIN, PROBLEMS
from recordgen.site.pages.horse import SHEET
from recordgen.site.prose.guide import GUIDE, guide_pictures

PLACES, SITES = "places", "sites"
# The part of a site that belongs to no horse, and in the trimmer's to no stable; there it is made again each time.
OVERALL = ""
# The folder of the horses' pages in a stable's own site.
HORSES = "horses"
# What explains the trimmer's pages alone; the guide's pictures go with it.
EXPLAIN_MORE = (PROBLEMS, *GUIDE)


@dataclass(frozen=True)
class KeptPage:
    """A page as it was built, without its text. stands: on which days it is the same but for what is dated.

    entry: what search reads of it. dated: what names the day, where it stands in the file, as `days.py` writes it.
    """

    uri: str
    title: str
    in_menu: bool
    searched: bool
    stands: AlikeDays
    entry: Entry | None
    dated: str

    @classmethod
    def of(cls, page: Page, dated: str) -> KeptPage:
        """A page that was built now, or stood."""
        return cls(page.uri, page.title, page.in_menu, page.searched, page.stands, page.entry, dated)

    @property
    def finished(self) -> Page:
        """The page whose file stands."""
        page = Page(self.uri, self.title, "", in_menu=self.in_menu, searched=self.searched)
        return replace(page, stands=self.stands, entry=self.entry, finished=True)


@dataclass(frozen=True)
class KeptSite:
    """A site as it was built as of a day: its pages, and its other files.

    keys: of its parts, by the folder that a part has in the site; a stable's own site is one part.
    """

    name: str
    day: date
    keys: Mapping[str, str]
    pages: tuple[KeptPage, ...] = ()
    files: tuple[str, ...] = ()

    def finished_files(self, keys: Mapping[str, str], today: date) -> Finished:
        """The files that stand in the folder of the site: of the parts that have the same keys and stand today."""
        same, same_day = {part for part, key in keys.items() if self.keys.get(part) == key}, self.day == today
        same -= {part_of(page.uri, self.keys) for page in self.pages if today not in page.stands}
        pages = {page.uri: page.finished for page in self.pages if part_of(page.uri, self.keys) in same}
        files = (file for file in self.files if part_of(file, self.keys) in same)
        return Finished(pages, tuple(file for file in files if same_day or not file.endswith(".ics")), same_day)


# What is read again from what was kept, and nothing else.
CLASSES = {one.__name__: one for one in (AlikeDays, KeptPage, KeptSite)}


def part_of(path: str, parts: Collection[str]) -> str:
    """The part that a page or file of a site belongs to: a horse's, whose page it is or lies beside, or a stable's."""
    page = path.removesuffix(".md").removesuffix(".ics")
    found = (path, page, page.removesuffix(SHEET), posixpath.dirname(path), path.partition("/")[0])
    return next((one for one in found if one in parts), OVERALL)


class Standing:
    """Knows what stands in a folder of sites, and whether it is what would be made now."""

    def __init__(self, cache: Cache, read: RecordsDigest, whole: Whole, context: BuildContext) -> None:
        """read: the records just before they were read."""
        self._cache, self._read, self._summaries = cache, read, context.summaries
        records, self._keys = read.keys(whole), dict[str, dict[str, str]]()
        fronts = [(stable.slug, stable.stable.name) for stable in context.stables]
        no_git = context.no_trails and (context.no_trails.message, context.no_trails.way_out)
        self._below = dict.fromkeys((*EXPLAIN, *EXPLAIN_MORE, *guide_pictures()), key_of(records.shared, fronts))
        for stable in context.stables:
            slug, menu = stable.slug, [(horse.slug, horse.horse.name) for horse in stable.present]
            git = {
                one.slug: [no_git, *(held.get((slug, one.slug)) for held in (context.trails, context.first_places))]
                for one in stable.horses
            }
            each = {one: key_of(records.horses[slug, one], menu, told) for one, told in git.items()}
            rest = key_of(records.stables[slug], list(git), each, list(context.patterns.get(slug, ())))
            explained = dict.fromkeys(EXPLAIN, key_of(records.stables[slug], menu))
            self._keys[slug] = {OVERALL: rest, **explained, **{f"{HORSES}/{one}": key for one, key in each.items()}}
            below = {slug: rest, **{f"{slug}/{one}": key for one, key in each.items()}}
            self._below |= {part: key_of(key, fronts) for part, key in below.items()}

    def keys_of(self, slug: str) -> Mapping[str, str]:
        """The keys of a site's parts as it would be made now."""
        return self._keys.get(slug, self._below)

    def find(self, place: Path) -> KeptSite | None:
        """The site that stands in a place; None where it is not as it was left."""
        told = self._cache.get(PLACES, _place_key(place))
        if told is None:
            return None
        left = json.loads(told)
        content = self._cache.get(SITES, left["site"]) if left["stat"] == _stat(place) else None
        if content is None:
            return None
        site: KeptSite = from_json(json.loads(content), CLASSES)
        return site

    def remember(self, sites: Mapping[Path, KeptSite]) -> None:
        """Keep what was put in these places and computed for it; nothing where a record changed since it was read."""
        if sites and self._read.is_current():
            if self._summaries:
                self._summaries.remember()
            for place, site in sites.items():
                content = json.dumps(as_json(site, CLASSES)).encode()
                key = hashlib.sha256(content).hexdigest()
                self._cache.put(SITES, key, content)
                left: dict[str, Any] = {"stat": _stat(place), "site": key}
                self._cache.put(PLACES, _place_key(place), json.dumps(left).encode())


def _place_key(place: Path) -> str:
    """By the program too: what another version left is in its form, and would be made again in any case."""
    return key_of(program_version(), os.path.realpath(place))


def _stat(place: Path) -> str:
    return stat_digest(files_in(Path(os.path.realpath(place))))
