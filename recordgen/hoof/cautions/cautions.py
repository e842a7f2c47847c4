"""The cautions of a horse in words: those that are open with their age, and those that ended with how they did.

`rules/table.py` lists the rules, `timeline.py` opens and ends them; levels and words come from the table.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from recordgen.hoof.cautions.context import KeptOpen, Key, Raised, RuleContext
from recordgen.hoof.cautions.not_while import against
from recordgen.hoof.cautions.rules.table import RULES
from recordgen.hoof.cautions.timeline import End, How, Timeline
from recordgen.hoof.context import Context
from recordgen.hoof.due import Due
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.reference import Level, Whom

LEVELS: tuple[Level, ...] = ("call now", "call today", "arrange soon", "keep an eye on")


@dataclass(frozen=True)
class Caution:
    """Something to act on: rule, level, foot (None for the whole horse), the day it was last recorded, and the words.

    about: the zone, the place or the scale it speaks of. since: the day it was first recorded without a break.
    days_open: from then to the day of the build. seen_again: how many later visits recorded it again. age: that in
    words, for the page; empty where no visit recorded it. part_of: the rule of an open caution that sums it up, and
    tells its advice; none where it is as urgent as that. ring: whom to ring. gives_way: whether what another open
    caution says goes before its own advice.
    no_trim: whether nothing is trimmed until the vet agrees. needs_a_vet: whether no word but a vet's ends it.
    """

    rule: str
    level: Level
    foot: Foot | None
    day: date
    seen: str
    meanwhile: str
    do_not: str | None
    source: str
    about: str | None
    since: date
    days_open: int
    seen_again: int
    age: str
    part_of: str | None = None
    ring: tuple[Whom, ...] = ("vet",)
    gives_way: bool = False
    no_trim: bool = False
    needs_a_vet: bool = False

    @property
    def text(self) -> str:
        """All sentences in one."""
        return " ".join(part for part in (self.seen, self.meanwhile, self.do_not) if part)


@dataclass(frozen=True)
class ClosedCaution:
    """A caution that ended: rule, level, foot, what was last seen on `day`, and when, how and by whom it ended.

    ending: that in words. left: what the record that ended it still told, in words, such as a smaller gap; may be
    empty. since: the day it was first recorded.
    """

    rule: str
    level: Level
    foot: Foot | None
    about: str | None
    since: date
    day: date
    seen: str
    ended: date
    how: How
    by: str
    ending: str
    left: str


@dataclass(frozen=True)
class CautionBook:
    """The cautions of a horse: those that are open, most urgent first, and those that ended, the latest first."""

    open: tuple[Caution, ...]
    closed: tuple[ClosedCaution, ...]


def compute_caution_book(timeline: Timeline, due: Due | None, today: date) -> CautionBook:
    """All cautions after the last visit, in words.

    due: the window of the next visit, for the caution about being overdue. Open ones stand most urgent first, those
    that give way last of their level, then newest, then by foot; closed ones by the day they ended, the latest first.
    """
    words = _Words(timeline.ways, today)
    found = [words.open_caution(key, kept, timeline) for key, kept in timeline.open.items()]
    if timeline.visits:
        day = timeline.visits[-1].date
        found += [words.of_today(rule, raised, day) for rule, raised in _today(timeline, due, today)]
    found = [words.beside(one, found) for one in found]
    closed = [words.closed_caution(key, kept, end) for key, kept, end in timeline.closed]
    return CautionBook(tuple(sorted(found, key=_urgency)), tuple(sorted(closed, key=_end_order, reverse=True)))


def _today(timeline: Timeline, due: Due | None, today: date) -> Iterator[tuple[str, Raised]]:
    """Cautions that the day alone raises, without a visit."""
    seen = RuleContext(timeline.horse, timeline.visits, timeline.ways, timeline.open, due=due, today=today)
    for rule in RULES:
        answer = rule.says(seen) if rule.of == "day" else None
        if isinstance(answer, Raised):
            yield rule.key, answer


class _Words:
    """Puts cautions into the words of the tables."""

    def __init__(self, ways: Context, today: date) -> None:
        self.words = ways.reference.cautions
        self.naming = ways.naming
        self.today = today

    def open_caution(self, key: Key, kept: KeptOpen, timeline: Timeline) -> Caution:
        """A caution that visits recorded, with its age and what it stands with in the timeline."""
        found = self._caution(key, kept.day, kept.raised, kept.since, kept.times - 1, self._age(kept))
        return replace(found, part_of=self._sum_of(key, timeline), needs_a_vet=timeline.needs_a_vet(key))

    def of_today(self, rule: str, raised: Raised, day: date) -> Caution:
        """A caution that the day alone brings. day: of the last visit."""
        return self._caution((rule, None, None), day, raised, raised.since or day, 0, "")

    def closed_caution(self, key: Key, kept: KeptOpen, end: End) -> ClosedCaution:
        """A caution that ended, with how it did."""
        rule, foot, about = key
        level, seen = self.words[rule].level, self._seen_text(key, kept.day, kept.raised)
        left = self._left_over_text(rule, end)
        ending = self._ending(end, left)
        return ClosedCaution(
            rule, level, foot, about, kept.since, kept.day, seen, end.day, end.how, end.by, ending, left
        )

    def _left_over_text(self, rule: str, end: End) -> str:
        """Words for what the record that ended a caution still told; empty where it told nothing."""
        words = self.words[rule].left_over
        return words.format(**self.naming.facts(end.left)) if words and end.left else ""

    def _ending(self, end: End, left: str) -> str:
        """Tell how a caution ended, and what was left."""
        phrase = f"caution_ended_{end.how.replace(' ', '_')}"
        ending = self.naming.phrase(phrase, day=self.naming.day(end.day), by=end.by)
        return self.naming.phrase("caution_ended_but", ending=ending, but=left) if left else ending

    def beside(self, caution: Caution, opened: Sequence[Caution]) -> Caution:
        """A caution as it may stand beside the open ones: its advice gives way where theirs goes first."""
        if not against(self.words[caution.rule].not_while, opened):
            return caution
        return replace(caution, meanwhile=self.naming.phrase("caution_gives_way"), gives_way=True)

    def _sum_of(self, key: Key, timeline: Timeline) -> str | None:
        """The rule of an open caution that sums this one up and is more urgent."""
        level = self.words[key[0]].level
        sums = (rule.key for rule in RULES if key[0] in rule.parts and (rule.key, None, None) in timeline.open)
        return next((one for one in sums if self.words[one].level != level), None)

    def _caution(self, key: Key, day: date, raised: Raised, since: date, again: int, age: str) -> Caution:
        rule, foot, about = key
        words, seen = self.words[rule], self._seen_text(key, day, raised)
        level, rest = words.level, (words.meanwhile, words.do_not, words.source)
        caution = Caution(rule, level, foot, day, seen, *rest, about, since, self._days(since), again, age)
        return replace(caution, ring=words.ring, no_trim=words.no_trim)

    def _seen_text(self, key: Key, day: date, raised: Raised) -> str:
        rule, foot, _ = key
        facts = {**raised.facts, "day": self.naming.day(day), "foot": self.naming.foot(foot) if foot else ""}
        seen = self.words[rule].seen.format(**self.naming.facts(facts))
        return seen[:1].upper() + seen[1:]

    def _age(self, kept: KeptOpen) -> str:
        days = self._days(kept.since)
        if days == 0:
            return self.naming.phrase("caution_age_today")
        ago = self.naming.lasting(days)
        since = self.naming.day(kept.since)
        if kept.times == 1:
            return self.naming.phrase("caution_age", since=since, ago=ago)
        times = self.naming.counted("caution_again", kept.times - 1)
        return self.naming.phrase("caution_age_again", since=since, ago=ago, again=times)

    def _days(self, since: date) -> int:
        return max(0, (self.today - since).days)


def _urgency(caution: Caution) -> tuple[int, bool, int, int, str, str]:
    foot = FEET.index(caution.foot) if caution.foot else -1
    level, newest = LEVELS.index(caution.level), -caution.day.toordinal()
    return level, caution.gives_way, newest, foot, caution.rule, caution.about or ""


def _end_order(closed: ClosedCaution) -> tuple[date, date, str, str, str]:
    return closed.ended, closed.day, closed.rule, closed.foot or "", closed.about or ""
