"""The visit as a rule of the cautions sees it, and the answers it may give. All rules have this one shape."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from recordgen.hoof.context import Context
from recordgen.hoof.due import Due
from recordgen.hoof.measures.changes import Changes
from recordgen.hoof.measures.look import Look
from recordgen.hoof.naming import Naming
from recordgen.records.models.foot import FootVisit, WallZone
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import Foot, Zone
from recordgen.records.models.visit import Visit

# A rule, the foot it speaks of, and the zone, the place or the scale; None for the whole horse or foot.
Key = tuple[str, Foot | None, str | None]

UNSEEN, BARE = FootVisit.model_construct(), WallZone.model_construct()


@dataclass(frozen=True)
class Raised:
    """The record behind it: the facts its words are filled with.

    about: the place or the scale, where one of it clears nothing of another. then: the day of the reading compared
    with. since: from when on it holds, where that is not the day of the record. follows: a rule whose open caution it
    goes on from, with its first day.
    """

    facts: Mapping[str, str]
    about: str | None = None
    then: date | None = None
    since: date | None = None
    follows: str | None = None


@dataclass(frozen=True)
class Cleared:
    """The same thing was recorded otherwise. about: as in `Raised`. left: the facts of what was still recorded then."""

    about: str | None = None
    left: Mapping[str, str] = field(default_factory=dict)


# None: nothing was recorded about it, which clears nothing.
Answer = Raised | Cleared | None


def raised_if(found: object, bad: object) -> Answer:
    """Raised by one answer, cleared by any other, silent where there is none."""
    if found is None:
        return None
    return Raised({}) if found == bad else Cleared()


@dataclass(frozen=True)
class KeptOpen:
    """A caution that is open: its first and its latest record without a break, how often it was recorded, and that."""

    since: date
    day: date
    times: int
    raised: Raised


@dataclass(frozen=True)
class RuleContext:
    """A horse on one day: the visits up to then, the last one as recorded, and of it one foot and one zone of the wall.

    visits: oldest first. open: what is open so far. look: of this foot at this visit; None where it was not looked at.
    earlier: its looks before, oldest first. due, today: for what a day alone brings, without a visit.
    changes: finds what a page of this visit tells of all feet, where a rule asks.
    """

    horse: Horse
    visits: Sequence[Visit]
    ways: Context
    open: Mapping[Key, KeptOpen]
    foot: Foot | None = None
    look: Look | None = None
    earlier: Sequence[Look] = ()
    zone: Zone | None = None
    due: Due | None = None
    today: date | None = None
    changes: Callable[[], Changes] = Changes

    @property
    def visit(self) -> Visit:
        """The visit that is looked at."""
        return self.visits[-1]

    @property
    def found(self) -> FootVisit:
        """The foot as recorded; empty where it was not looked at."""
        return self.look.found if self.look else UNSEEN

    @property
    def wall(self) -> WallZone:
        """The zone as recorded; empty where it was not looked at."""
        return (self.found.wall or {}).get(self.zone, BARE) if self.zone else BARE

    @property
    def naming(self) -> Naming:
        """Tell how places and days are named."""
        return self.ways.naming

    @property
    def where(self) -> str:
        """The zone's name."""
        return self.naming.place(self.zone) if self.zone else ""

    def is_open(self, rule: str) -> bool:
        """Tell whether a caution of this rule is open of the horse, of this foot as a whole, or of this zone."""
        return any(
            (rule, foot, zone) in self.open for foot, zone in ((None, None), (self.foot, None), (self.foot, self.zone))
        )

    def before(self, rule: str) -> Raised | None:
        """Answers of a rule about the same horse, foot or zone, where that is still open."""
        kept = self.open.get((rule, self.foot, self.zone))
        return kept.raised if kept else None


@dataclass(frozen=True)
class Rule:
    """A rule: its key in the table of words, what it looks at, and how it answers.

    of: once a visit, for each foot, for each zone of the wall, or for the day of the build. parts: the rules that a
    rule sums up; it ends with the last of them.
    """

    key: str
    of: Literal["horse", "foot", "zone", "day"]
    says: Callable[[RuleContext], Answer]
    parts: tuple[str, ...] = ()
