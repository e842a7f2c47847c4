"""The ways of a practice on this computer: with the cache of what was reckoned before."""

from __future__ import annotations

from collections.abc import Mapping

from recordgen.cache.entries import Cache, user_cache
from recordgen.hoof.context import Context
from recordgen.hoof.measures.repeatability import Own, Way
from recordgen.records.load.everything import Whole
from recordgen.site.kept.holidays import HolidayCache
from recordgen.site.tracing.figure_cache import FigureCache


def ways_of(
    whole: Whole,
    cache: Cache | None = None,
    errors: Mapping[Way, Own] | None = None,
    hand_times: float | None = None,
) -> Context:
    """The ways of a practice that was read.

    cache: of figures and holidays; else the user's own. errors, hand_times: the practice's own errors of reading, and
    how much larger those of its hands are than its tracings tell; else as the visits that were read tell both.
    """
    kept = cache or user_cache()
    figures, holidays = FigureCache(kept), HolidayCache(kept)
    return Context.of(whole.practice.file, whole.reference, whole.repeated, figures, holidays, errors, hand_times)
