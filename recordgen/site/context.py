"""The ways of a practice on this computer: with the cache of what was reckoned before."""

from __future__ import annotations

from recordgen.cache.entries import Cache, user_cache
from recordgen.hoof.context import Context
from recordgen.records.load.everything import Whole
from recordgen.site.tracing.figure_cache import FigureCache


def ways_of(whole: Whole, cache: Cache | None = None) -> Context:
    """The ways of a practice that was read. cache: of figures of tracings; else the user's own."""
    return Context.of(whole.practice.file, whole.reference, whole.repeated, FigureCache(cache or user_cache()))
