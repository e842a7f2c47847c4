"""What is worth telling of a horse's measures: changes since other visits, and left against right."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.measures.balance import PAIRS, PairDifference, pair_differences
from recordgen.hoof.measures.change import MeasureSummary, Step
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit

# The summaries of each foot by measure.
ByFoot = Mapping[Foot, Mapping[str, MeasureSummary]]


@dataclass(frozen=True)
class Change:
    """A change that is worth telling; `step` holds since when, its size and whether it is real."""

    foot: Foot
    summary: MeasureSummary
    step: Step


def changes_of(feet: ByFoot, visits: Sequence[Visit]) -> tuple[Change, ...]:
    """What was measured at the last visit against the visit before, real or not; the largest against error first."""
    told = [Change(foot, summary, summary.last) for foot, summary in _told(feet, visits) if summary.last]
    return tuple(sorted(told, key=_by_size))


def long_changes_of(feet: ByFoot, visits: Sequence[Visit]) -> tuple[Change, ...]:
    """The same against half a year ago or the first visit, whichever shows the larger change; real ones alone."""
    found = []
    for foot, summary in _told(feet, visits):
        steps = [step for step in (summary.half_year, summary.first) if step and step.real]
        if steps:
            found.append(Change(foot, summary, max(steps, key=lambda step: step.against_error)))
    return tuple(sorted(found, key=_by_size))


def _told(feet: ByFoot, visits: Sequence[Visit]) -> Iterator[tuple[Foot, MeasureSummary]]:
    for foot, measures in feet.items():
        for summary in measures.values():
            words = summary.measure.words
            # Details of tracings are told with the tracings.
            if words.headline and not words.detail and summary.day == visits[-1].date:
                yield foot, summary


def _by_size(change: Change) -> float:
    return -change.step.against_error


def pairs_of(feet: ByFoot) -> tuple[PairDifference, ...]:
    """The differences from left to right, of what was measured on both feet of a pair at one moment of one visit."""
    latest: dict[Foot, dict[str, float]] = {foot: {} for foot in feet}
    for left, right in PAIRS.values():
        for key in _measured_together(feet, left, right):
            latest[left][key], latest[right][key] = feet[left][key].latest, feet[right][key].latest
    least: dict[str, float] = {}
    for measures in feet.values():
        for key, summary in measures.items():
            least[key] = max(least.get(key, 0), summary.smallest_real_change)
    return pair_differences(latest, least)


def _measured_together(feet: ByFoot, left: Foot, right: Foot) -> list[str]:
    if left not in feet or right not in feet:
        return []
    ours, theirs = feet[left], feet[right]
    both = [key for key in ours if key in theirs]
    return [key for key in both if (ours[key].day, ours[key].moment) == (theirs[key].day, theirs[key].moment)]
