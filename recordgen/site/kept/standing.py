"""The sites that stand from an earlier build, by all that each part of them was made from.

A part is a stable's own site, or what the trimmer's site holds of that stable. Its key covers every byte of the
stable's folder, what all stables share, what git and the other stables tell of it, the day and the program; the pages
of a part are rendered from nothing else (`BuildContext.alone`). A site that is not as it was left is made again whole.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any

from recordgen.cache.entries import Cache
from recordgen.cache.inputs import files_in, stat_digest
from recordgen.cache.spelling import key_of
from recordgen.records.load.everything import Whole
from recordgen.site.build_context import BuildContext
from recordgen.site.kept.digest import RecordsDigest
from recordgen.site.kept.search_entries import Entries
from recordgen.site.model import Page

PLACES, SITES = "places", "sites"
# The part of the trimmer's site that no stable has to itself; it is made again each time.
OVERALL = ""


@dataclass(frozen=True)
class KeptSite:
    """A site as it was built: its pages without their text, its other files, and what search reads, by page.

    keys: of its parts, by the folder that a part has in the site; a stable's own site is one part.
    """

    name: str
    keys: Mapping[str, str]
    pages: tuple[tuple[str, str, bool, bool], ...] = ()
    files: tuple[str, ...] = ()
    entries: Entries = field(default_factory=dict)

    def pages_of(self, part: str) -> list[Page]:
        """The pages of a part, finished in the folder of the site."""
        return [Page(*page[:2], "", (), *page[2:], finished=True) for page in self.pages if part_of(page[0]) == part]


def part_of(path: str) -> str:
    """The part that a page or file of the trimmer's site belongs to: the folder on top."""
    return path.partition("/")[0] if "/" in path else OVERALL


class Standing:
    """Knows what stands in a folder of sites, and whether it is what would be made now."""

    def __init__(self, cache: Cache, read: RecordsDigest, whole: Whole, context: BuildContext) -> None:
        """read: the records just before they were read."""
        self._cache, self._read, self._summaries = cache, read, context.summaries
        fronts = [(stable.slug, stable.stable.name) for stable in context.stables]
        no_git = context.no_trails and (context.no_trails.message, context.no_trails.way_out)
        trails = {
            stable.slug: [context.trails.get((stable.slug, horse.slug)) for horse in stable.horses]
            for stable in whole.practice.stables
        }
        first = {
            stable.slug: [context.first_places.get((stable.slug, horse.slug), "") for horse in stable.horses]
            for stable in whole.practice.stables
        }
        self._keys = {
            slug: key_of(key, no_git, trails[slug], first[slug], list(context.patterns.get(slug, ())))
            for slug, key in read.keys(whole, context.today).items()
        }
        self._below = {slug: key_of(key, fronts) for slug, key in self._keys.items()}

    def keys_of(self, slug: str) -> Mapping[str, str]:
        """The keys of a site's parts as it would be made now."""
        return {OVERALL: self._keys[slug]} if slug in self._keys else self._below

    def find(self, place: Path) -> KeptSite | None:
        """The site that stands in a place; None where it is not as it was left."""
        told = self._cache.get(PLACES, _place_key(place))
        if told is None:
            return None
        left = json.loads(told)
        content = self._cache.get(SITES, left["site"]) if left["stat"] == _stat(place) else None
        return None if content is None else KeptSite(**json.loads(content))

    def remember(self, sites: Mapping[Path, KeptSite]) -> None:
        """Keep what was put in these places and computed for it; nothing where a record changed since it was read."""
        if sites and self._read.is_current():
            if self._summaries:
                self._summaries.remember()
            for place, site in sites.items():
                content = json.dumps(asdict(site)).encode()
                key = hashlib.sha256(content).hexdigest()
                self._cache.put(SITES, key, content)
                left: dict[str, Any] = {"stat": _stat(place), "site": key}
                self._cache.put(PLACES, _place_key(place), json.dumps(left).encode())


def _place_key(place: Path) -> str:
    return key_of(os.path.realpath(place))


def _stat(place: Path) -> str:
    return stat_digest(files_in(Path(os.path.realpath(place))))
