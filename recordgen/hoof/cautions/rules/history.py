"""Rules over several visits: what grew, thinned or changed beyond the error of measuring, and what came again.

A change is told against one earlier reading of the same foot and zone, taken at the same moment of a visit, and where
the rule for changes of a whole page tells it. Once told, later readings are compared with that same one, and it ends
when they are no longer that far from it.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import get_args

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.hoof.cautions.rules.foot import remaining_gap
from recordgen.hoof.measures.change import HALF_YEAR
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.hoof.measures.readings import Moment
from recordgen.hoof.naming import Naming
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit

# The measures that are compared, by their name in the table.
COMPARED = frozenset(
    {"toe_angle", "sole_depth", "groove_depth_medial", "groove_depth_lateral", "separation_length", "separation_depth"}
)
# Derived from: a trim changes the toe angle by 1.35 degrees (10 horses, Iran. J. Vet. Surg., article 79374), five weeks
# by nothing that was found (5 horses, University of Guelph thesis), and horses differ by an SD of 3.9 degrees in front
# (n = 225, as the table of measures tells): 5 is more than any of these.
SUDDEN_DEGREES = 5
# Derived from: the toe wall is renewed in 11 to 13 months (Lungwitz & Adams, section F), of 30.44 days: the wall that
# grew when the first abscess was seen is not yet worn off.
SAME_WALL = timedelta(days=396)


@dataclass(frozen=True)
class TwoReadings:
    """Two readings of one measure at the same moment of two visits, and the smallest change that is more than error."""

    key: str
    day: date
    then: float
    now: float
    least: float

    @property
    def change(self) -> float:
        """Now less then, in the unit of the measure."""
        return self.now - self.then


Far = Callable[[TwoReadings], bool]
Facts = Callable[[TwoReadings, Naming], dict[str, str]]


def separation_grows(seen: RuleContext) -> Answer:
    """A gap at the white line that is known to have grown in depth or length, since last time or half a year."""
    zone = (seen.zone or "").replace(" ", "_")
    keys = (f"separation_depth_{zone}", f"separation_length_{zone}")
    answer = _answer_change(seen, "separation-grows", keys, _has_grown, _size, known=True)
    return Cleared(left=remaining_gap(seen)) if isinstance(answer, Cleared) else answer


def sole_thinner(seen: RuleContext) -> Answer:
    """A sole that is known to be less hollow than last time or half a year ago."""
    return _answer_change(seen, "sole-thinner", ("sole_depth",), _has_shrunk, _lengths, known=True)


def angle_sudden(seen: RuleContext) -> Answer:
    """A toe angle that changed by 5 degrees or more, and by more than measuring error, from one visit to the next.

    As found, where it was taken so at both visits: what was trimmed on the day does not count. Visits more than half a
    year apart tell nothing sudden.
    """
    return _answer_change(seen, "angle-sudden", ("toe_angle",), _is_sudden, _degrees, known=False)


def abscess_again(seen: RuleContext) -> Answer:
    """Two abscesses and more at the same place of a foot within 13 months; no later record can say otherwise."""
    found = seen.found.abscess
    if found is None or seen.foot is None:
        return None
    recent = [visit for visit in seen.visits if seen.visit.date - visit.date <= SAME_WALL]
    starts = list(_abscesses(recent, seen.foot, found.where))
    if len(starts) < 2:
        return None
    facts = {"where": seen.naming.place(found.where), "count": str(len(starts)), "since": seen.naming.day(starts[0])}
    return Raised(facts, found.where)


def _abscesses(visits: Sequence[Visit], foot: Foot, place: str) -> Iterator[date]:
    """The first record of each; one that drained is over, and so is one that the next look at the foot did not find."""
    going_on = False
    for visit in visits:
        if foot in visit.feet:
            found = visit.feet[foot].abscess
            here = found is not None and found.where == place
            if here and not going_on:
                yield visit.date
            going_on = found is not None and here and found.state != "drained"


def _answer_change(seen: RuleContext, rule: str, keys: Sequence[str], far: Far, told: Facts, known: bool) -> Answer:
    """Raised by the first measure that is far from an earlier reading, cleared when that one is far no more.

    known: whether a page must be able to tell the change. Else the edge alone counts, within half a year.
    """
    before = seen.before(rule)
    still = _against(seen, before) if before else None
    pairs = [still] if still else []
    for key in keys:
        if still is None or key != still.key:
            pairs += _pairs(seen, key, within_half_a_year=not known)
    found = next((one for one in pairs if far(one) and (one is still or not known or _page_tells(seen, one))), None)
    if found is None:
        return Cleared() if still else None
    since = seen.naming.day(found.day)
    return Raised({"key": found.key, "where": seen.where, "since": since, **told(found, seen.naming)}, then=found.day)


def _page_tells(seen: RuleContext, pair: TwoReadings) -> bool:
    """Tell whether a page tells a change of this measure, the same way and up to today."""
    return any(
        (one.of.foot, one.of.measure.key) == (seen.foot, pair.key)
        and one.change * pair.change > 0
        and seen.look is not None
        and one.latest == seen.look.day
        for one in seen.changes().real
    )


def _against(seen: RuleContext, before: Raised) -> TwoReadings | None:
    """The reading of today against the one that was compared with before; None where it was not taken."""
    key = before.facts["key"]
    same_day = [look for look in seen.earlier if look.day == before.then]
    return next((pair for look in same_day for pair in [_pair(seen, key, look)] if pair), None)


def _pairs(seen: RuleContext, key: str, within_half_a_year: bool) -> list[TwoReadings]:
    """The reading of today against the last one before, and against the last one of half a year ago and more."""
    if seen.look is None or key not in seen.look.readings:
        return []
    day = seen.look.day
    pairs = (pair for look in reversed(seen.earlier) for pair in [_pair(seen, key, look)] if pair)
    last = list(itertools.islice(pairs, 1))
    if within_half_a_year:
        return [pair for pair in last if day - pair.day <= HALF_YEAR]
    return [*last, *itertools.islice((pair for pair in pairs if day - pair.day >= HALF_YEAR), 1)]


def _pair(seen: RuleContext, key: str, then: Look) -> TwoReadings | None:
    """Two readings of the same moment, as found before after the trim; None where there are none."""
    if seen.look is None or key not in seen.look.readings or key not in then.readings:
        return None
    for moment in get_args(Moment):
        before, now = (getattr(look.readings[key], moment) for look in (then, seen.look))
        if before is not None and now is not None:
            return TwoReadings(key, then.day, before, now, _least(seen, key, moment, (then, seen.look)))
    return None


def _least(seen: RuleContext, key: str, moment: Moment, looks: Sequence[Look]) -> float:
    measure = next(one for one in seen.ways.measures if one.key == key)
    return smallest_real_change(*(look.sd(measure, moment) for look in looks))


def _has_grown(pair: TwoReadings) -> bool:
    return pair.change >= pair.least


def _has_shrunk(pair: TwoReadings) -> bool:
    return -pair.change >= pair.least


def _is_sudden(pair: TwoReadings) -> bool:
    return abs(pair.change) >= max(pair.least, SUDDEN_DEGREES)


def _size(pair: TwoReadings, naming: Naming) -> dict[str, str]:
    deep = pair.key.startswith("separation_depth")
    size = naming.size(None, pair.now) if deep else naming.size(pair.now, None)
    return {"then": naming.mm(pair.then), "now": size}


def _lengths(pair: TwoReadings, naming: Naming) -> dict[str, str]:
    return {"then": naming.mm(pair.then), "now": naming.mm(pair.now)}


def _degrees(pair: TwoReadings, naming: Naming) -> dict[str, str]:
    return {"then": f"{pair.then:g}", "now": f"{pair.now:g}"}
