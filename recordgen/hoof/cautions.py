"""The cautions that are open: what the rules say of each visit in turn, in the words of the table.

The absence of a sign never clears a horse: a caution stays open until a later record says otherwise of the same horse,
foot or zone of the wall, or `resolved` names it. The rules stand in `caution_rules.py`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.age import CLASS_RANGE_WEEKS, care_class
from recordgen.hoof.caution_rules import CLEARED, FOOT_RULES, HORSE_RULES, WALL_RULES, Answer, Facts
from recordgen.hoof.due import Due, plan_in_force
from recordgen.hoof.naming import Naming
from recordgen.records.horse import Horse
from recordgen.records.names import FEET, Foot, Zone
from recordgen.records.reference import CautionWords, Level
from recordgen.records.visit import Visit

LEVELS: tuple[Level, ...] = ("call now", "call today", "arrange soon", "keep an eye on")
# A rule, and the foot and the zone of the wall it speaks of; None for the whole horse or foot.
Key = tuple[str, Foot | None, Zone | None]


@dataclass(frozen=True)
class Caution:
    """Something to act on: rule, level, foot (None for the whole horse), the day it was recorded, and the words."""

    rule: str
    level: Level
    foot: Foot | None
    day: date
    seen: str
    meanwhile: str
    do_not: str | None
    source: str

    @property
    def text(self) -> str:
        """All sentences in one."""
        return " ".join(part for part in (self.seen, self.meanwhile, self.do_not) if part)


def cautions(
    horse: Horse, visits: Sequence[Visit], due: Due | None, words: dict[str, CautionWords], naming: Naming, today: date
) -> tuple[Caution, ...]:
    """The cautions that are open after the last visit, most urgent first, then newest, then by foot.

    visits: oldest first. due: the window of the next visit, for the caution about being overdue.
    """
    open_now: dict[Key, Caution] = {}
    for visit in visits:
        for key, answer in _answers(visit, naming):
            if answer == CLEARED:
                open_now.pop(key, None)
            elif answer is not None:
                open_now[key] = _worded(key[0], key[1], visit.date, answer, words, naming)
        _resolve(open_now, visit)
    found = [*open_now.values(), *_overdue(horse, visits, due, words, naming, today)]
    return tuple(sorted(found, key=_urgency))


def _answers(visit: Visit, naming: Naming) -> Iterator[tuple[Key, Answer]]:
    for name, horse_rule in HORSE_RULES.items():
        yield (name, None, None), horse_rule(visit, naming)
    for foot, found in visit.feet.items():
        for name, foot_rule in FOOT_RULES.items():
            yield (name, foot, None), foot_rule(found, naming)
        for zone, wall in (found.wall or {}).items():
            for name, wall_rule in WALL_RULES.items():
                yield (name, foot, zone), wall_rule(wall, naming.place(zone), naming)


def _resolve(open_now: dict[Key, Caution], visit: Visit) -> None:
    for ended in visit.resolved:
        for key, caution in list(open_now.items()):
            same_foot = ended.foot is None or caution.foot in (None, ended.foot)
            if caution.rule == ended.caution and same_foot and caution.day <= ended.date:
                del open_now[key]


def _overdue(
    horse: Horse, visits: Sequence[Visit], due: Due | None, words: dict[str, CautionWords], naming: Naming, today: date
) -> Iterator[Caution]:
    if due is None:
        return
    limit: float = CLASS_RANGE_WEEKS[care_class(horse, visits[-1].date)][1]
    plan = plan_in_force(horse.vet_plan, visits[-1].date, today)
    if plan and plan.weeks:
        limit = min(limit, plan.weeks)
    days = (today - visits[-1].date).days
    if days > 7 * limit and today > due.latest:
        facts = {"weeks": naming.weeks(days // 7), "limit": naming.weeks(limit)}
        yield _worded("overdue", None, visits[-1].date, facts, words, naming)


def _worded(
    rule: str, foot: Foot | None, day: date, facts: Facts, words: dict[str, CautionWords], naming: Naming
) -> Caution:
    entry = words[rule]
    told = {**facts, "day": naming.day(day), "foot": naming.foot(foot) if foot else ""}
    seen = entry.seen.format(**told)
    seen = seen[:1].upper() + seen[1:]
    return Caution(rule, entry.level, foot, day, seen, entry.meanwhile, entry.do_not, entry.source)


def _urgency(caution: Caution) -> tuple[int, int, int, str]:
    foot = FEET.index(caution.foot) if caution.foot else -1
    return LEVELS.index(caution.level), -caution.day.toordinal(), foot, caution.rule
