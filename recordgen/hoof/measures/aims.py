"""What a horse's trim aims at, and how far each foot is from it; told without praise or blame."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.measures.change import MeasureSummary
from recordgen.records.models.horse import Aim
from recordgen.records.models.names import FEET, Foot


@dataclass(frozen=True)
class Aimed:
    """One aim at one foot.

    value: the latest reading, on `day`. away: how much it is still to come down (below zero: to go up), in its unit; 0
    where it is reached. within_error: whether that is no more than the error of one reading.
    """

    aim: Aim
    foot: Foot
    summary: MeasureSummary
    value: float
    day: date
    away: float
    within_error: bool

    @property
    def reached(self) -> bool:
        """Whether the latest reading is where the aim wants it."""
        return self.away == 0


def aimed(aims: tuple[Aim, ...], feet: Mapping[Foot, Mapping[str, MeasureSummary]]) -> tuple[Aimed, ...]:
    """The aims of a horse at each foot they are for, in the order they were written; feet never measured left out.

    feet: the summaries of each foot by measure.
    """
    return tuple(one for aim in aims for one in _at_feet(aim, feet))


def _at_feet(aim: Aim, feet: Mapping[Foot, Mapping[str, MeasureSummary]]) -> Iterator[Aimed]:
    key = f"{aim.measure}_{aim.zone.replace(' ', '_')}" if aim.zone else aim.measure
    for foot in (aim.foot,) if aim.foot else FEET:
        summary = feet.get(foot, {}).get(key)
        if summary:
            away = _away(aim, summary)
            within = abs(away) <= summary.smallest_real_size
            yield Aimed(aim, foot, summary, summary.latest, summary.day, away, within)


def _away(aim: Aim, summary: MeasureSummary) -> float:
    """How far a reading is from an aim; a difference between two measures may lie to either side of nothing."""
    value = summary.latest
    if aim.over is not None:
        return min(value - aim.over, 0)
    most = aim.under or 0
    if value < 0 and summary.measure.words.minus:
        return min(value + most, 0)
    return max(value - most, 0)
