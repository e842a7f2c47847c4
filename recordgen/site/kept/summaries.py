"""Summaries of horses whose records did not change: what others ask of them is kept, the rest computed when asked for.

The trimmer's front page, the rounds and the calendars ask few things of each horse. Those that can be kept as plain
values are; any other field is computed with all the rest, so that no list of fields has to be right.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from pathlib import Path
from typing import Any

from recordgen.cache.entries import Cache, user_cache
from recordgen.cache.values import as_json, from_json
from recordgen.hoof.care.jobs import Job
from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.cautions.cautions import Caution, ClosedCaution
from recordgen.hoof.context import Context
from recordgen.hoof.due import Due
from recordgen.hoof.growth.forecasts import Fared, Forecast
from recordgen.hoof.missing import Gap
from recordgen.hoof.observations import Finding
from recordgen.hoof.remarks import Remark
from recordgen.hoof.stable.patterns import FoundInTime, SharesInTime, found_in_time, shares_together
from recordgen.hoof.stable.prevalence import Share
from recordgen.hoof.summary import HorseSummary, StableSummary, summarise
from recordgen.progress import steps
from recordgen.records.load.everything import Whole, read_whole
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.site.context import ways_of
from recordgen.site.kept.digest import RecordsDigest

KIND = "summaries"
CLASSES = {
    one.__name__: one
    for one in (Caution, ClosedCaution, Due, Fared, Finding, Forecast, Gap, Job, Remark, Share, Withheld)
}
# Taken from the record itself.
_RECORDED = ("stable", "slug", "horse", "shared", "as_of")
# What was found last, which the next round asks, is kept beside the fields.
LAST = "_last_findings"
_FIELDS = frozenset(one.name for one in fields(HorseSummary))


class KeptSummary(HorseSummary):
    """A summary of which some fields are at hand; asked for any other, it is computed whole."""

    def __init__(self, record: HorseRecord, ways: Context, today: date, known: Mapping[str, Any]) -> None:
        """known: by name, the fields that were kept."""
        recorded = {"stable": record.stable, "slug": record.slug, "horse": record.horse, "shared": record.shared}
        self.__dict__.update(known, as_of=today, **recorded, _made_from=(record, ways, today))

    def __getattr__(self, name: str) -> Any:
        """A field that is not at hand."""
        if name not in _FIELDS:
            raise AttributeError(name)
        self.__dict__.update(vars(summarise(*self.__dict__["_made_from"])))
        return self.__dict__[name]

    @property
    def last_findings(self) -> tuple[Finding, ...]:
        """The findings of the last visit."""
        found: tuple[Finding, ...] = self.__dict__[LAST]
        return found

    @property
    def visit_days(self) -> tuple[date, ...]:
        """The days of all visits, the last one first."""
        return tuple(visit.day for visit in reversed(self.__dict__["_made_from"][0].prints))


class Summaries:
    """The summaries of a practice's stables, and of each the shares of findings that are compared with the others'."""

    def __init__(self, whole: Whole, ways: Context, today: date, cache: Cache, read: RecordsDigest | None) -> None:
        """read: the records just before they were read; nothing is taken from the cache where None."""
        self._cache, self._ways, self._today = cache, ways, today
        self._keys = read.keys(whole, today).horses if read else {}
        self._fresh: list[tuple[HorseSummary, FoundInTime]] = []
        self.shares: dict[str, SharesInTime] = {}
        self.horses = len(whole.practice.horses)
        self.stables = tuple(map(self._stable, steps("Computing stables", whole.practice.stables)))

    def _stable(self, record: StableRecord) -> StableSummary:
        known = [self._horse(horse) for horse in record.horses]
        self.shares[record.slug] = shares_together([found for _, found in known])
        return StableSummary(record.slug, record.stable, tuple(horse for horse, _ in known))

    def _horse(self, record: HorseRecord) -> tuple[HorseSummary, FoundInTime]:
        """A horse's summary, and what was found of it."""
        kept = self._cache.get(KIND, self._keys[record.stable, record.slug]) if self._keys else None
        if kept is None:
            made = summarise(record, self._ways, self._today)
            self._fresh.append((made, found_in_time(made, self._today)))
            return self._fresh[-1]
        known = from_json(json.loads(kept), CLASSES)
        return KeptSummary(record, self._ways, self._today, known["horse"]), known["found"]

    @property
    def kept(self) -> int:
        """Of how many horses what was computed before was used again."""
        return self.horses - len(self._fresh)

    def remember(self) -> None:
        """Keep what was computed now."""
        for horse, found in self._fresh if self._keys else ():
            told = {"horse": _to_keep(horse), "found": found}
            self._cache.put(KIND, self._keys[horse.stable, horse.slug], json.dumps(as_json(told, CLASSES)).encode())


def summarised(records: Path, today: date, stable: str | None = None) -> tuple[Context, tuple[StableSummary, ...]]:
    """The ways of a practice, and the summaries of its stables or of one; what is computed is kept for the next time.

    Raises RecordsTrouble.
    """
    cache = user_cache()
    read = None if cache.why_not else RecordsDigest.of(records)
    whole = read_whole(records, today, stable)
    ways = ways_of(whole, cache)
    found = Summaries(whole, ways, today, cache, read)
    if read and read.is_current():
        found.remember()
    return ways, found.stables


def _to_keep(horse: HorseSummary) -> dict[str, Any]:
    """The fields of a summary that can be kept."""
    found = {name: getattr(horse, name) for name in sorted(_FIELDS - {*_RECORDED})}
    return {LAST: horse.last_findings, **{name: value for name, value in found.items() if _is_plain(value)}}


def _is_plain(value: object) -> bool:
    try:
        as_json(value, CLASSES)
    except TypeError:
        return False
    return True
