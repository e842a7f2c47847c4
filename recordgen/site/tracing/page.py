"""What a page tells of a horse's tracings: by foot the latest of each view, figures, what lacks, what changed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date

from recordgen.hoof.context import Context
from recordgen.hoof.measures.balance import PAIRS
from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.hoof.summary import FootSummary, HorseSummary
from recordgen.hoof.tracing.figures import Traced
from recordgen.hoof.tracing.readings import reading_sd
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.tracing import TracedMoment, TracedView
from recordgen.site.photographs import Album, ShownPhoto
from recordgen.site.tracing.feet import VIEWS, DatedTracing, FootTold, PairTold, Tracings, ViewTold
from recordgen.site.tracing.words import TracedWords

# Of each foot so many earlier days are shown, the newest first.
MOST_EARLIER = 3
# So many sentences of a foot, and of a pair; every figure stands in the tables.
MOST_CHANGES, MOST_APART = 5, 5


def tracings_of(summary: HorseSummary, ways: Context, album: Album | None = None) -> Tracings:
    """What is told of a horse's tracings; nothing where none was traced. album: the photographs of the same page."""
    words = TracedWords(ways)
    seen = {foot: list(_seen(summary, foot)) for foot in FEET}
    photos = {copy.file.name: shown for shown in (album.shown if album else ()) for copy in shown.copies}
    feet = tuple(_foot(summary.feet[foot], held, words, photos) for foot, held in seen.items() if held)
    return Tracings(feet, tuple(_pairs(seen, words)))


def _seen(summary: HorseSummary, foot: Foot) -> Iterator[DatedTracing]:
    """The tracings of one foot, newest day first, before the trim before after it."""
    for visit in summary.history:
        at = visit.feet.get(foot)
        for one in sorted(at.traced if at else (), key=lambda one: one.tracing.moment == "after"):
            yield DatedTracing(foot, visit.visit.date, one)


def _foot(
    one: FootSummary, held: Sequence[DatedTracing], words: TracedWords, photos: Mapping[str, ShownPhoto]
) -> FootTold:
    by_view = {view: [seen for seen in held if seen.view == view] for view in VIEWS}
    views = tuple(_view(found, words, photos) for found in by_view.values() if found)
    shown = [seen for view in views for seen in view.moments]
    days = _by_day(seen for seen in held if seen not in shown)
    return FootTold(
        one.foot,
        views,
        tuple(_changes(one, held[0].day, words)),
        tuple(days[:MOST_EARLIER]),
        max(len(days) - MOST_EARLIER, 0),
    )


def _by_day(held: Iterable[DatedTracing]) -> list[tuple[date, tuple[DatedTracing, ...]]]:
    """By day what is drawn: of each view the last moment."""
    days: dict[date, dict[TracedView, DatedTracing]] = {}
    for seen in held:
        days.setdefault(seen.day, {})[seen.view] = seen
    return [(day, tuple(found[view] for view in VIEWS if view in found)) for day, found in days.items()]


def _view(found: Sequence[DatedTracing], words: TracedWords, photos: Mapping[str, ShownPhoto]) -> ViewTold:
    moments = tuple(seen for seen in found if seen.day == found[0].day)[:2]
    before = [seen for seen in found if seen.day != found[0].day]
    last = moments[-1].one
    traced = [seen.one for seen in moments]
    return ViewTold(
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


def _changes(one: FootSummary, day: date, words: TracedWords) -> Iterator[str]:
    """A sentence for each real change of what tracings alone tell: since the time before, or else since the first."""
    found = []
    for summary in one.measures.values():
        steps = [step for step in (summary.last, summary.first) if step and step.real]
        if summary.measure.words.detail and summary.day == day and steps:
            found.append((steps[0], summary))
    for step, summary in sorted(found, key=lambda pair: -pair[0].against_error)[:MOST_CHANGES]:
        yield words.changed(summary.measure, step)


def _pairs(seen: Mapping[Foot, Sequence[DatedTracing]], words: TracedWords) -> Iterator[PairTold]:
    for pair, (left, right) in PAIRS.items():
        for view in VIEWS:
            both = _counterparts(*([one for one in seen[foot] if one.view == view] for foot in (left, right)))
            if both:
                found = _apart(*both, words)
                told = sorted((one for one in found if one[0] >= 1), key=lambda one: -one[0])
                yield PairTold(pair, *both, tuple(sentence for _, sentence in told[:MOST_APART]), len(found))


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


def _apart(left: DatedTracing, right: DatedTracing, words: TracedWords) -> list[tuple[float, str]]:
    """For each figure of both feet their difference against the error of both, camera included, and the sentence."""
    found = []
    for figure, measure in words.measures.items():
        one, other = left.one.figures.get(figure), right.one.figures.get(figure)
        if one and other:
            sds = [reading_sd(measure, at.one.tracing, it) for at, it in ((left, one), (right, other))]
            against = abs(one.value - other.value) / smallest_real_change(*sds)
            found.append((against, words.apart(measure, (left.foot, one.value), (right.foot, other.value))))
    return found
