"""The book of a horse's cautions: each visit in turn raises, keeps and ends them.

The absence of a sign ends nothing. A caution is open until a later record says otherwise of the same horse, foot, zone,
place or scale, until `resolved` names it with a later day, or until a vet who saw the horse ends it. One that calls for
the vet now, and what it sums up, `resolved` does not end. The rules stand in `rules/table.py`, the words in
`cautions.py`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from typing import Literal

from recordgen.hoof.cautions.context import Cleared, KeptOpen, Key, Raised, Rule, RuleContext
from recordgen.hoof.cautions.resolutions import EndingWord, words_of
from recordgen.hoof.cautions.rules.history import COMPARED
from recordgen.hoof.cautions.rules.table import RULES
from recordgen.hoof.context import Context
from recordgen.hoof.measures.changes import Changes, changes_of
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure, readings_at
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import FEET, ZONES, Foot
from recordgen.records.models.visit import Visit

How = Literal["recorded otherwise", "resolved", "vet"]


@dataclass(frozen=True)
class End:
    """The end of a caution: on which day, by a record or a word, and by whose. left: as in `Cleared`."""

    day: date
    how: How
    by: str
    left: Mapping[str, str] = field(default_factory=dict)


class Timeline:
    """The cautions of one horse after its visits.

    open: those that nothing ended. closed: those that ended, in the order in which they did. raised: the number of a
    visit and a caution that it raised. unheard: the number of a visit and a word of it that may not end what it names.
    """

    def __init__(self, horse: Horse, visits: Sequence[Visit], ways: Context) -> None:
        self.horse = horse
        self.visits = visits
        self.ways = ways
        self.open: dict[Key, KeptOpen] = {}
        self.closed: list[tuple[Key, KeptOpen, End]] = []
        self.raised: list[tuple[int, Key]] = []
        self.unheard: list[tuple[int, EndingWord]] = []
        self._rules = {of: [rule for rule in RULES if rule.of == of] for of in ("horse", "foot", "zone")}
        self._sums = [rule for rule in RULES if rule.parts]
        self._compared = [measure for measure in ways.measures if measure.name in COMPARED]
        self._told: dict[int, Changes] = {}
        self._looks: dict[Foot, list[Look]] = {foot: [] for foot in FEET}
        for count in range(len(visits)):
            self._process(visits[: count + 1])

    def _process(self, visits: Sequence[Visit]) -> None:
        """Ask all rules of the last of some visits."""
        self._ask(RuleContext(self.horse, visits, self.ways, self.open), "horse")
        for foot in FEET:
            self._process_foot(visits, foot)
        for word in words_of(visits[-1]):
            self._end_by(word, len(visits) - 1)
        self._end_sums(visits[-1])

    def _process_foot(self, visits: Sequence[Visit], foot: Foot) -> None:
        """Ask the rules of one foot, where it was looked at or something of it is open."""
        look, earlier = self._look(visits[-1], foot), self._looks[foot]
        places = {about for _, of, about in self.open if of == foot}
        if look is None and not places:
            return
        changes = partial(self._changes, visits)
        seen = RuleContext(self.horse, visits, self.ways, self.open, foot, look, earlier, changes=changes)
        self._ask(seen, "foot")
        wall = (look.found.wall if look else None) or {}
        for zone in ZONES:
            if zone in wall or zone in places:
                self._ask(replace(seen, zone=zone), "zone")
        if look:
            earlier.append(look)

    def _look(self, visit: Visit, foot: Foot, measures: Sequence[Measure] = ()) -> Look | None:
        if foot not in visit.feet:
            return None
        methods = {**self.ways.practice.methods, **visit.methods}
        found = visit.feet[foot]
        return Look(visit.date, found, readings_at(measures or self._compared, found, visit.date), methods)

    def _changes(self, visits: Sequence[Visit]) -> Changes:
        """The claims of a page of the last of some visits from all that was typed, found once."""
        if len(visits) not in self._told:
            looks = {foot: [self._look(one, foot, self.ways.measures) for one in visits] for foot in FEET}
            taken = {foot: [look for look in found if look] for foot, found in looks.items()}
            self._told[len(visits)] = changes_of(taken, self.ways.measures)
        return self._told[len(visits)]

    def _ask(self, seen: RuleContext, of: str) -> None:
        for rule in self._rules[of]:
            answer = rule.says(seen)
            if answer is not None:
                self._take(rule, seen, answer)

    def _take(self, rule: Rule, seen: RuleContext, answer: Raised | Cleared) -> None:
        key = (rule.key, seen.foot, answer.about or seen.zone)
        if isinstance(answer, Cleared):
            self._close(key, replace(self._end_by_record(seen.visit), left=answer.left))
            return
        before = self.open.get(key) or self.open.pop((answer.follows or "", seen.foot, key[2]), None)
        since, times = (before.since, before.times) if before else (seen.visit.date, 0)
        self.open[key] = KeptOpen(since, seen.visit.date, times + 1, answer)
        self.raised.append((len(seen.visits) - 1, key))

    def _close(self, key: Key, end: End) -> None:
        kept = self.open.pop(key, None)
        if kept:
            self.closed.append((key, kept, end))

    def _end_by(self, word: EndingWord, visit: int) -> None:
        """A word ends what it names and was recorded before it; of what is the vet's, only that of a vet."""
        named = [
            (key, kept) for key, kept in self.open.items() if word.means(key[0], key[1]) and word.is_after(kept.day)
        ]
        if word.how == "resolved" and any(self.needs_a_vet(key) for key, _ in named):
            self.unheard.append((visit, word))
        for key, _ in named:
            if word.how == "vet" or not self.needs_a_vet(key):
                self._close(key, End(word.day, word.how, word.by))

    def needs_a_vet(self, key: Key) -> bool:
        """Tell whether a caution, or an open one that sums it up, calls for the vet now."""
        sums = [rule.key for rule in self._sums if key[0] in rule.parts and (rule.key, None, None) in self.open]
        return any(self.ways.reference.cautions[rule].level == "call now" for rule in (key[0], *sums))

    def _end_by_record(self, visit: Visit) -> End:
        return End(visit.date, "recorded otherwise", visit.by or self.ways.practice.trimmer)

    def _end_sums(self, visit: Visit) -> None:
        """A caution that sums up others ends with the last of them, and as that one did."""
        for rule in self._sums:
            if not any(key in rule.parts for key, _, _ in self.open):
                ends = (end for key, _, end in reversed(self.closed) if key[0] in rule.parts)
                self._close((rule.key, None, None), next(ends, self._end_by_record(visit)))
