"""Rules for small steps over several visits: a sole or groove that is worn away, an angle that climbs.

No step of them is more than the error of reading. So no two readings are compared: the middle one of the last three
stands against the best of such middles within a year. A reading that is out raises nothing, on either end. The edges
are absolute, and wait for no proof by statistics; still feet hardly ever pass them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.readings import Moment

YEAR = timedelta(days=365)
# Three and a half times the error of a probe, four times that of a protractor (SD, as the table of measures tells), and
# of angles three times what a trim changes. Judgement.
FALL_MM = 3.5
CLIMB_DEGREES = 4
# It ends when a reading is back more than half the way. Judgement.
BACK = 0.5


@dataclass(frozen=True)
class _At:
    """A reading on a day, in the unit of its measure; the greater, the better."""

    day: date
    value: float


def sole_falls(seen: RuleContext) -> Answer:
    """A sole that lost 3.5 mm of its hollow by small steps within a year."""
    return _answer_drift(seen, "sole-falls", ("sole_depth",), FALL_MM, 1, told_by="sole-thinner")


def groove_falls(seen: RuleContext) -> Answer:
    """A groove beside the frog that lost 3.5 mm at its point by small steps within a year."""
    return _answer_drift(seen, "groove-falls", ("groove_depth_medial", "groove_depth_lateral"), FALL_MM, 1)


def angle_climbs(seen: RuleContext) -> Answer:
    """A toe angle that climbed by 4 degrees by small steps within a year."""
    return _answer_drift(seen, "angle-climbs", ("toe_angle",), CLIMB_DEGREES, -1, told_by="angle-sudden")


def _answer_drift(
    seen: RuleContext, rule: str, keys: tuple[str, ...], edge: float, sign: int, told_by: str = ""
) -> Answer:
    """Raised by the first measure that drifted; ends when the one it was raised by is back.

    sign: 1 for a measure that is bad when it falls, -1 for one that is bad when it climbs. told_by: a rule that, where
    it is open, has said it already.
    """
    before = seen.before(rule)
    if before:
        return _still(seen, before, edge, sign)
    for key in () if seen.is_open(told_by) else keys:
        readings = list(_readings(seen, key, sign))
        best = _best(readings, edge)
        if best:
            return _raised(seen, key, best, readings[-1], sign)
    return None


def _still(seen: RuleContext, before: Raised, edge: float, sign: int) -> Answer:
    """Today's reading against the best that was compared with when it was raised."""
    key, then = before.facts["key"], before.then
    readings = list(_readings(seen, key, sign))
    best = next((one for one in readings if one.day == then), None)
    if best is None:
        return None
    back = best.value - readings[-1].value < BACK * edge
    return Cleared() if back else _raised(seen, key, best, readings[-1], sign)


def _best(readings: Sequence[_At], edge: float) -> _At | None:
    """The best middle of three readings in a row within a year, where the last three lie the edge below it."""
    recent = [one for one in readings if readings[-1].day - one.day <= YEAR]
    if len(recent) < 6:
        return None
    best = max((_middle(recent[at : at + 3]) for at in range(len(recent) - 5)), key=lambda one: one.value)
    now, today = _middle(recent[-3:]), recent[-1]
    return best if best.value - now.value >= edge and best.value - today.value >= BACK * edge else None


def _middle(three: Sequence[_At]) -> _At:
    return sorted(three, key=lambda one: one.value)[1]


def _raised(seen: RuleContext, key: str, best: _At, now: _At, sign: int) -> Raised:
    told = _degrees if key == "toe_angle" else seen.naming.mm
    facts = {"then": told(sign * best.value), "now": told(sign * now.value)}
    return Raised({"key": key, "since": seen.naming.day(best.day), **facts}, then=best.day)


def _degrees(value: float) -> str:
    return f"{value:g}"


def _readings(seen: RuleContext, key: str, sign: int) -> Iterator[_At]:
    """The readings at the moment of today's, oldest first, today's last; none where it was not taken today.

    As found, where it was taken so today: what was trimmed on the day does not count.
    """
    if seen.look is None or key not in seen.look.readings:
        return
    moment: Moment = "before" if _value(seen.look, key, "before") is not None else "after"
    for look in (*seen.earlier, seen.look):
        value = _value(look, key, moment)
        if value is not None:
            yield _At(look.day, sign * value)


def _value(look: Look, key: str, moment: Moment) -> float | None:
    reading = look.readings.get(key)
    value: float | None = getattr(reading, moment) if reading else None
    return value
