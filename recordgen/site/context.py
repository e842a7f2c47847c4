"""The ways of a practice on this computer: with the cache of what was reckoned before."""

from __future__ import annotations

from recordgen.cache.entries import Cache, user_cache
from recordgen.hoof.context import Context
from recordgen.records.load.everything import Whole
from recordgen.site.kept.holidays import HolidayCache
from recordgen.site.tracing.figure_cache import FigureCache


def ways_of(whole: Whole, cache: Cache | None = None) -> Context:
    """The ways of a practice that was read. cache: of figures and holidays; else the user's own."""
    kept = cache or user_cache()
    return Context.of(whole.practice.file, whole.reference, whole.repeated, FigureCache(kept), HolidayCache(kept))
