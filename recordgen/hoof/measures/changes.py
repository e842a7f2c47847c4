"""Claims of a page about a horse's measures, by one rule for all it looks at: what changed, and left against right."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.claims.claims import Claims, Series, claims_of
from recordgen.hoof.claims.differences import DifferenceClaim, differences_of
from recordgen.hoof.measures.balance import PAIRED_MEASURES, PAIRS, Pair, PairDifference
from recordgen.hoof.measures.change import HALF_YEAR, moment_of
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure, smallest_real_change
from recordgen.hoof.measures.readings import Moment
from recordgen.records.models.names import Foot

# The looks at each foot, oldest first.
Looks = Mapping[Foot, Sequence[Look]]


@dataclass(frozen=True)
class FootMeasure:
    """A measure of a foot: what a change is told of. value: its latest reading, in the unit of the measure."""

    foot: Foot
    measure: Measure
    value: float


Changes = Claims[FootMeasure]


def changes_of(looks: Looks, measures: Sequence[Measure]) -> Changes:
    """The changes of a horse's feet: those of the measures that the table calls headlines, typed and traced alike.

    The others are parts of these or are read beside them; to look at all would raise the bar for each. What was last
    read more than half a year before the last visit is over, and not looked at either.
    """
    told = [measure for measure in measures if measure.words.headline]
    last = max((look.day for taken in looks.values() for look in taken), default=None)
    page = [one for foot, taken in looks.items() for one in _series(foot, taken, told)]
    return claims_of([one for one in page if last and last - one.days[-1] <= HALF_YEAR])


def _series(foot: Foot, looks: Sequence[Look], measures: Sequence[Measure]) -> Iterator[Series[FootMeasure]]:
    for measure in measures:
        readings = [look.readings[measure.key] for look in looks if measure.key in look.readings]
        if not readings:
            continue
        moment = moment_of(readings)
        same = [look for look in looks if look.has(measure, moment)]
        values, sds = zip(*(look.mean(measure, moment) for look in same), strict=True)
        days, ways = tuple(look.day for look in same), tuple(look.way(measure, moment) for look in same)
        latest = same[-1].values(moment)[measure.key]
        yield Series(FootMeasure(foot, measure, latest), measure.name, days, values, sds, ways)


@dataclass(frozen=True)
class _Both:
    """The looks at both feet of a pair in which one measure was taken at one moment of one visit in one way."""

    pair: Pair
    measure: Measure
    moment: Moment
    looks: tuple[tuple[Look, Look], ...]


def pairs_of(looks: Looks, measures: Sequence[Measure]) -> tuple[PairDifference, ...]:
    """Tell how far left and right are apart, in what was last measured on both feet of a pair at a moment of a visit.

    By one rule for all of them: over the visits at which both were measured, or the last of those. Zones whose changes
    are not told are left out, as they would raise the bar for the others.
    """
    detailed = [one for one in measures if one.words.detail and (one.words.headline or one.zone is None)]
    compared = [one for one in measures if one.key in PAIRED_MEASURES or one in detailed]
    both = [found for pair in PAIRS for measure in compared for found in [_both(pair, measure, looks)] if found]
    found = differences_of([_apart(one) for one in both])
    return tuple(_pair_difference(one) for one in found)


def _pair_difference(found: DifferenceClaim[_Both]) -> PairDifference:
    one = found.of
    left, right = (look.values(one.moment)[one.measure.key] for look in one.looks[-1])
    least = smallest_real_change(*(look.sd(one.measure, one.moment) for look in one.looks[-1]))
    return PairDifference(
        one.pair, one.measure.key, found.latest, left, right, found.low, found.high, least, found.real
    )


def _both(pair: Pair, measure: Measure, looks: Looks) -> _Both | None:
    """None where the latest readings of both feet are not of one visit, one moment and one way."""
    sides = [[look for look in looks.get(foot, ()) if measure.key in look.readings] for foot in PAIRS[pair]]
    if not all(sides):
        return None
    moments = {moment_of([look.readings[measure.key] for look in side]) for side in sides}
    if len(moments) > 1 or sides[0][-1].day != sides[1][-1].day:
        return None
    (moment,) = moments
    rights = {look.day: look for look in sides[1] if look.has(measure, moment)}
    taken = [(look, rights[look.day]) for look in sides[0] if look.has(measure, moment) and look.day in rights]
    alike = [one for one in taken if len({look.way(measure, moment) for look in one}) == 1]
    if not alike or alike[-1][0].day != sides[0][-1].day:
        return None
    return _Both(pair, measure, moment, tuple(alike))


def _apart(both: _Both) -> Series[_Both]:
    """Left less right at each visit."""
    readings = [tuple(look.mean(both.measure, both.moment) for look in one) for one in both.looks]
    return Series(
        both,
        both.measure.name,
        tuple(left.day for left, _ in both.looks),
        tuple(left[0] - right[0] for left, right in readings),
        tuple((left[1] ** 2 + right[1] ** 2) ** 0.5 for left, right in readings),
    )
