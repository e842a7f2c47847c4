"""Tell how many horses of a stable have a finding, of how many that were looked at for it.

Foot by foot the record tells yes, no or nothing of a finding; where it tells nothing, the visit before is asked. What
is not recorded is not absent: a horse none of whose feet tells of it was not looked at for it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.summary import FootAtVisit, HorseSummary, StableSummary, VisitSummary
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import FEET, FindingKind, Foot
from recordgen.records.models.visit import Visit

# How far back a horse's last look may lie: the longest interval of horses and ponies, 8 weeks, and a month for a late
# visit; donkeys, at 10 weeks, have three weeks for it. A quarter of a year also keeps to one season.
# Judgement, built on: UK welfare code, hoofcare, 2008 consultation (4 to 8 weeks); The Donkey Sanctuary, Notes for
# farriers, 2016 (6 to 10).
WINDOW = timedelta(weeks=13)
NOT_BACK = timedelta(0)
# Of one other stable everybody knows which it is; of few horses one could tell which of them has the finding.
# Judgement.
LEAST_OTHER_STABLES = 2
LEAST_OTHER_HORSES = 8
# A foot was gone through, as for a trim, where one of these is recorded. A call for one abscess records none of them.
# Judgement.
GONE_THROUGH = ("before", "after", "frog", "wall", "bars", "sole", "marks", "done")

Shown = Callable[[FootAtVisit], bool]
Looked = Callable[[Visit, FootVisit], bool]


@dataclass(frozen=True)
class Share:
    """A share of horses: how many had a finding (count), were looked at for it (looked), and were seen (seen)."""

    count: int
    looked: int
    seen: int


# By the key of the finding.
Shares = dict[str, Share]
# Whether a horse has a finding, by its key; None where it was not looked at for it. Empty for a horse not seen.
Signs = dict[str, bool | None]


def shares(stable: StableSummary, day: date) -> Shares:
    """The share of each finding among the horses of a stable as of a day.

    A horse is seen where one of its feet was recorded in the thirteen weeks up to that day and it had not left by then.
    """
    return shares_of([signs_of(horse, day) for horse in stable.horses])


def shares_of(found: Sequence[Signs]) -> Shares:
    """The same for what was found of each horse."""
    seen = [one for one in found if one]
    return {key: _share([one[key] for one in seen]) for key in SIGNS}


def pool_shares(found: Sequence[Share]) -> Share | None:
    """Several stables' share as one, or None where it would tell of a single stable or of few horses.

    found: the share of the same finding, one for each stable.
    """
    count, looked, seen = (sum(getattr(one, part) for one in found) for part in ("count", "looked", "seen"))
    stables = sum(one.looked > 0 for one in found)
    return Share(count, looked, seen) if stables >= LEAST_OTHER_STABLES and looked >= LEAST_OTHER_HORSES else None


def _share(found: Sequence[bool | None]) -> Share:
    return Share(found.count(True), len(found) - found.count(None), len(found))


def signs_of(horse: HorseSummary, day: date, back: timedelta = NOT_BACK) -> Signs:
    """By finding: whether any foot had it when the record last told of that foot; None where it tells of none.

    back: how long before that day it is asked for.
    """
    left = horse.horse.left
    if left and left.date + back <= day:
        return {}
    visits = [one for one in horse.history if one.feet and _is_lately(one.visit.date + back, day)]
    return {key: _any_foot(key, visits) for key in SIGNS} if visits else {}


def _is_lately(seen: date, day: date) -> bool:
    return seen <= day <= seen + WINDOW


def _any_foot(key: str, visits: Sequence[VisitSummary]) -> bool | None:
    told = [answer for foot in FEET if (answer := _last_answer(key, foot, visits)) is not None]
    return any(told) if told else None


def _last_answer(key: str, foot: Foot, visits: Sequence[VisitSummary]) -> bool | None:
    shown, looked = SIGNS[key]
    for one in visits:
        at_visit = one.feet.get(foot)
        if at_visit and shown(at_visit):
            return True
        if at_visit and looked(one.visit, at_visit.look.found):
            return False
    return None


def _of_kind(kind: FindingKind) -> Shown:
    return lambda foot: any(finding.kind == kind for finding in foot.findings)


def _ring(foot: FootAtVisit) -> bool:
    return any(mark.kind == "event ring" for mark in foot.look.found.marks)


def _frog_looked_at(visit: Visit, found: FootVisit) -> bool:
    """A frog of which nothing was written may have been clean or not; `infection: none` says that it was."""
    return found.frog is not None and found.frog.infection is not None


def _sole_looked_at(visit: Visit, found: FootVisit) -> bool:
    """Thumbs are not put to the sole at each trim, so something of the sole must be recorded."""
    return found.sole is not None


def _foot_looked_at(visit: Visit, found: FootVisit) -> bool:
    """Signs that show by themselves are written down where they are there, so a trim silent about them saw none.

    A visit without a trim may have been for one thing only, so that its silence tells nothing.
    """
    return visit.trimmed and any(getattr(found, part) for part in GONE_THROUGH)


# By the key of its entry in the table: whether a foot shows it, and whether a foot that does not was looked at for it.
# Left out are a flare, which comes of how one horse is built and lands; tissue, wound, abscess and a thing that stuck
# in the foot, each of which is a caution at once; and marks that hands made or that follow a crack or an abscess.
SIGNS: dict[str, tuple[Shown, Looked]] = {
    "infection": (_of_kind("infection"), _frog_looked_at),
    "separation": (_of_kind("separation"), _foot_looked_at),
    "crack": (_of_kind("crack"), _foot_looked_at),
    "chip": (_of_kind("chip"), _foot_looked_at),
    "bruise": (_of_kind("bruise"), _foot_looked_at),
    "sensitive": (_of_kind("sensitive"), _sole_looked_at),
    "ring": (_ring, _foot_looked_at),
}
