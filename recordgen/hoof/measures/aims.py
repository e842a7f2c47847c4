"""The aims of a horse's trim, and how far each foot is from it; told without praise or blame."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from recordgen.hoof.claims.claims import Series
from recordgen.hoof.claims.differences import differences_of
from recordgen.hoof.measures.change import MeasureSummary
from recordgen.hoof.measures.changes import Looks
from recordgen.records.models.horse import Aim
from recordgen.records.models.names import FEET, Foot


@dataclass(frozen=True)
class AimAtFoot:
    """One aim at one foot.

    value: the latest reading, on `day`. away: how much it is still to come down (below zero: to go up), in its unit; 0
    where it is reached. within_error: whether that may be the error of reading alone, by one rule for all aims.
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
        """Tell whether the latest reading is where the aim wants it."""
        return self.away == 0


def aims_at_feet(
    aims: tuple[Aim, ...], feet: Mapping[Foot, Mapping[str, MeasureSummary]], looks: Looks
) -> tuple[AimAtFoot, ...]:
    """The aims of a horse at each foot they are for, in the order they were written; feet never measured left out.

    feet: the summaries of each foot by measure. looks: at each foot, oldest first.
    """
    found = [one for aim in aims for one in _at_feet(aim, feet)]
    missed = [number for number, one in enumerate(found) if not one.reached]
    apart = differences_of([_still_away(number, found[number], looks) for number in missed])
    sure = {one.of for one in apart if one.real}
    return tuple(replace(one, within_error=number not in sure) for number, one in enumerate(found))


def _at_feet(aim: Aim, feet: Mapping[Foot, Mapping[str, MeasureSummary]]) -> Iterator[AimAtFoot]:
    key = f"{aim.measure}_{aim.zone.replace(' ', '_')}" if aim.zone else aim.measure
    for foot in (aim.foot,) if aim.foot else FEET:
        summary = feet.get(foot, {}).get(key)
        if summary:
            yield AimAtFoot(aim, foot, summary, summary.latest, summary.day, _away(aim, summary), within_error=True)


def _still_away(number: int, one: AimAtFoot, looks: Looks) -> Series[int]:
    """Tell how far the readings of the same way as the last one lay from where the aim wants them."""
    measure, moment = one.summary.measure, one.summary.moment
    taken = [look for look in looks[one.foot] if look.has(measure, moment)]
    alike = [look for look in taken if look.way(measure, moment) == taken[-1].way(measure, moment)]
    values, sds = zip(*(look.mean(measure, moment) for look in alike), strict=True)
    bound = one.value - one.away
    return Series(number, measure.name, tuple(look.day for look in alike), tuple(x - bound for x in values), sds)


def _away(aim: Aim, summary: MeasureSummary) -> float:
    """Tell how far a reading is from an aim; a difference between two measures may lie to either side of nothing."""
    value = summary.latest
    if aim.over is not None:
        return min(value - aim.over, 0)
    most = aim.under or 0
    if value < 0 and summary.measure.words.minus:
        return min(value + most, 0)
    return max(value - most, 0)
