"""A page's part on a horse's tracings: by foot the latest of each view, its figures, and what lacks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta

from recordgen.hoof.context import Context
from recordgen.hoof.measures.balance import PAIRS
from recordgen.hoof.summary import FootSummary, HorseSummary
from recordgen.hoof.tracing.figures import Traced
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.tracing import TracedMoment, TracedView
from recordgen.site.photographs import Album, ShownPhoto
from recordgen.site.tracing.feet import VIEWS, DatedTracing, TracedFootPart, TracedPairPart, TracedViewPart, Tracings
from recordgen.site.tracing.words import TracedWords

# Of each foot so many earlier days are shown, the newest first.
MOST_EARLIER = 3
# Two rows of the strip of a year, which reaches a little further back than one.
MOST_FRAMES, YEAR = 10, timedelta(days=380)


def tracings_of(summary: HorseSummary, ways: Context, album: Album | None = None) -> Tracings:
    """The words on a horse's tracings; nothing where none was traced. album: the photographs of the same page."""
    words = TracedWords(ways)
    seen = {foot: list(_tracings_of_foot(summary, foot)) for foot in FEET}
    photos = {copy.file.name: shown for shown in (album.shown if album else ()) for copy in shown.copies}
    feet = tuple(_foot(summary.feet[foot], held, words, photos) for foot, held in seen.items() if held)
    return Tracings(feet, tuple(_pairs(seen)))


def _tracings_of_foot(summary: HorseSummary, foot: Foot) -> Iterator[DatedTracing]:
    """The tracings of one foot, newest day first, before the trim before after it."""
    for visit in summary.history:
        at = visit.feet.get(foot)
        for one in sorted(at.traced if at else (), key=lambda one: one.tracing.moment == "after"):
            yield DatedTracing(foot, visit.visit.date, one)


def _foot(
    one: FootSummary, held: Sequence[DatedTracing], words: TracedWords, photos: Mapping[str, ShownPhoto]
) -> TracedFootPart:
    by_view = {view: [seen for seen in held if seen.view == view] for view in VIEWS}
    views = tuple(_view(found, words, photos) for found in by_view.values() if found)
    shown = [seen for view in views for seen in view.moments]
    days = _by_day(seen for seen in held if seen not in shown)
    return TracedFootPart(
        one.foot,
        views,
        tuple(days[:MOST_EARLIER]),
        max(len(days) - MOST_EARLIER, 0),
        _year([seen for seen in held if seen.sole]),
    )


def _year(soles: Sequence[DatedTracing]) -> tuple[DatedTracing, ...]:
    """The soles of the last year at the moment that was traced most often, the oldest first; at most so many."""
    moments = Counter(seen.one.tracing.moment for seen in soles).most_common(1)
    since = max((seen.day for seen in soles), default=date.max) - YEAR
    kept = [seen for seen in soles if seen.day >= since and seen.one.tracing.moment == moments[0][0]]
    return tuple(reversed(kept[:MOST_FRAMES]))


def _by_day(held: Iterable[DatedTracing]) -> list[tuple[date, tuple[DatedTracing, ...]]]:
    """By day what is drawn: of each view the last moment."""
    days: dict[date, dict[TracedView, DatedTracing]] = {}
    for seen in held:
        days.setdefault(seen.day, {})[seen.view] = seen
    return [(day, tuple(found[view] for view in VIEWS if view in found)) for day, found in days.items()]


def _view(found: Sequence[DatedTracing], words: TracedWords, photos: Mapping[str, ShownPhoto]) -> TracedViewPart:
    moments = tuple(seen for seen in found if seen.day == found[0].day)[:2]
    before = [seen for seen in found if seen.day != found[0].day]
    last = moments[-1].one
    traced = [seen.one for seen in moments]
    return TracedViewPart(
        moments,
        _like(moments[-1], _of_last_day(before)),
        tuple(words.rows(traced)),
        tuple(words.zones(last)),
        tuple(words.lacking(last)),
        _photo(last, photos),
    )


def _like(shown: DatedTracing, day: Sequence[DatedTracing]) -> DatedTracing | None:
    """Of one day's tracings that of the same moment, else the last; None where there is none."""
    same = [seen for seen in day if seen.one.tracing.moment == shown.one.tracing.moment]
    return [*day, *same][-1] if day else None


def _photo(one: Traced, photos: Mapping[str, ShownPhoto]) -> ShownPhoto | None:
    """The photograph a tracing names, where it has the same form as the picture that was traced."""
    shown = photos.get(one.tracing.file or "")
    if shown is None:
        return None
    width, height = one.tracing.image
    same = abs(shown.large.width * height / (shown.large.height * width) - 1) < 0.01
    return shown if same else None


def _pairs(seen: Mapping[Foot, Sequence[DatedTracing]]) -> Iterator[TracedPairPart]:
    for pair, (left, right) in PAIRS.items():
        for view in VIEWS:
            both = _counterparts(*([one for one in seen[foot] if one.view == view] for foot in (left, right)))
            if both:
                yield TracedPairPart(pair, *both)


def _counterparts(
    lefts: Sequence[DatedTracing], rights: Sequence[DatedTracing]
) -> tuple[DatedTracing, DatedTracing] | None:
    """The latest of each foot, at the same moment of the visit: after the trim where both were traced then."""
    latest = [{seen.one.tracing.moment: seen for seen in _of_last_day(held)} for held in (lefts, rights)]
    moments: tuple[TracedMoment, ...] = ("after", "before")
    both = [(latest[0][moment], latest[1][moment]) for moment in moments if all(moment in held for held in latest)]
    return both[0] if both else None


def _of_last_day(held: Sequence[DatedTracing]) -> list[DatedTracing]:
    return [seen for seen in held if seen.day == held[0].day]
