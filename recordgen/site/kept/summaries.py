"""Summaries of horses whose records did not change: what others ask of them is kept, the rest computed when asked for.

The trimmer's front page, the rounds and the calendars ask few things of each horse. Those that can be kept as plain
values are; any other field is computed with all the rest, so that no list of fields has to be right. What was computed
in this run stays packed in memory, and is unpacked where a page asks for it. A summary is kept for all days on which it
would come out the same but for `as_of`, as a watched day tells while it is computed.
"""

from __future__ import annotations

import json
import pickle
import zlib
from collections.abc import Mapping, Sequence
from copy import copy
from dataclasses import dataclass, fields
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from recordgen.cache.entries import Cache, user_cache
from recordgen.cache.values import as_json, from_json
from recordgen.cache.watched_day import AlikeDays, WatchedDay
from recordgen.hoof.care.jobs import Job
from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.cautions.cautions import Caution, ClosedCaution
from recordgen.hoof.context import Context
from recordgen.hoof.due import Due
from recordgen.hoof.growth.forecasts import Forecast, PastForecasts
from recordgen.hoof.missing import Gap
from recordgen.hoof.observations import Finding
from recordgen.hoof.remarks import Remark
from recordgen.hoof.stable.patterns import SharesInTime, SignsInTime, shares_together, signs_in_time
from recordgen.hoof.stable.prevalence import Share
from recordgen.hoof.summary import HorseSummary, StableSummary, summarise
from recordgen.progress import steps
from recordgen.records.load.everything import Whole, read_whole
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.sentences import say
from recordgen.site.context import ways_of
from recordgen.site.kept.digest import RecordsDigest
from recordgen.workers import map_over_cores

KIND = "summaries"
# From so many horses on they are shared among the cores. Judgement: fewer take no longer than the sharing.
MANY = 6
# The folders of a stable and of a horse.
HorsePlace = tuple[str, str]
CLASSES = {
    one.__name__: one
    for one in (
        AlikeDays,
        Caution,
        ClosedCaution,
        Due,
        PastForecasts,
        Finding,
        Forecast,
        Gap,
        Job,
        Remark,
        Share,
        Withheld,
    )
}
# Taken from the record itself.
_RECORDED = ("stable", "slug", "horse", "shared", "as_of")
# What was found last, which the next round asks, is kept beside the fields.
LAST = "_last_findings"
_FIELDS = frozenset(one.name for one in fields(HorseSummary))


class KeptSummary(HorseSummary):
    """A summary of which some fields are at hand; asked for any other, it is unpacked or computed whole."""

    @classmethod
    def of(cls, record: HorseRecord, ways: Context, today: date, computed: Computed) -> tuple[KeptSummary, SignsInTime]:
        """A summary with some fields at hand, and what was found of the horse."""
        held = computed.held
        recorded = {"stable": record.stable, "slug": record.slug, "horse": record.horse, "shared": record.shared}
        made = object.__new__(cls)
        made.__dict__.update(held["horse"], as_of=today, **recorded)
        made.__dict__.update(_made_from=(record, ways, today), _packed=computed.packed, _alike=held["alike"])
        return made, held["found"]

    def __getattr__(self, name: str) -> Any:
        """A field that is not at hand."""
        if name not in _FIELDS:
            raise AttributeError(name)
        packed = self.__dict__["_packed"]
        whole = pickle.loads(zlib.decompress(packed)) if packed else vars(summarise(*self.__dict__["_made_from"]))
        self.__dict__.update({**whole, **self.__dict__})
        return self.__dict__[name]

    @property
    def last_findings(self) -> tuple[Finding, ...]:
        """The findings of the last visit."""
        found: tuple[Finding, ...] | None = self.__dict__.get(LAST)
        return super().last_findings if found is None else found

    @property
    def visit_days(self) -> tuple[date, ...]:
        """The days of all visits, the last one first."""
        if "_made_from" not in self.__dict__:
            return super().visit_days
        return tuple(visit.day for visit in reversed(self.__dict__["_made_from"][0].prints))


@dataclass(frozen=True)
class Computed:
    """A summary as it was computed: what is kept of it, as JSON, and the other fields, packed for this run alone."""

    told: bytes
    packed: bytes = b""

    @classmethod
    def of(cls, record: HorseRecord, ways: Context, today: date) -> Computed:
        """The summary of a horse, computed now."""
        day = WatchedDay.of(today)
        made = summarise(record, ways, day)
        known, found = _to_keep(made), signs_in_time(made, day)
        rest = {name: getattr(made, name) for name in sorted(_FIELDS - {*_RECORDED, *known})}
        packed = zlib.compress(pickle.dumps(rest, pickle.HIGHEST_PROTOCOL), 1)
        # Only now: a field that holds the day itself tells so when it is packed.
        told = {"alike": day.alike, "horse": known, "found": found}
        return cls(json.dumps(as_json(told, CLASSES)).encode(), packed)

    @cached_property
    def held(self) -> Mapping[str, Any]:
        """The values kept: some fields of the horse, what was found of it, and the days on which both are the same."""
        found: Mapping[str, Any] = from_json(json.loads(self.told), CLASSES)
        return found


class Summaries:
    """The summaries of a practice's stables, and of each the shares of findings that are compared with the others'."""

    def __init__(self, whole: Whole, ways: Context, today: date, cache: Cache, read: RecordsDigest | None) -> None:
        """read: the records just before they were read; nothing is taken from the cache where None."""
        self._cache, self._ways, self._today = cache, ways, today
        self._keys = read.keys(whole).horses if read else {}
        self._fresh: dict[HorsePlace, bytes] = {}
        self.shares: dict[str, SharesInTime] = {}
        self.horses = len(whole.practice.horses)
        found = self._computed(whole.practice.horses)
        self.stables = tuple(self._stable(record, found) for record in whole.practice.stables)

    def _computed(self, records: Sequence[HorseRecord]) -> dict[HorsePlace, Computed]:
        """The summary of each horse, by its place; where many are not kept, all cores compute them."""
        kept = {_place(one): self._kept(one) for one in records}
        missing = [one for one in records if kept[_place(one)] is None]
        made = map_over_cores(self._compute, missing, 1 if len(missing) < MANY else None)
        for record, told in zip(steps(say("Computing horses"), missing), made, strict=True):
            kept[_place(record)] = told
            self._fresh[_place(record)] = told.told
        return {place: one for place, one in kept.items() if one}

    def _kept(self, record: HorseRecord) -> Computed | None:
        told = self._cache.get(KIND, self._keys[_place(record)]) if self._keys else None
        kept = Computed(told) if told else None
        return kept if kept and self._today in kept.held["alike"] else None

    def _compute(self, record: HorseRecord) -> Computed:
        return Computed.of(record, self._ways, self._today)

    def _stable(self, record: StableRecord, computed: Mapping[HorsePlace, Computed]) -> StableSummary:
        known = [KeptSummary.of(horse, self._ways, self._today, computed[_place(horse)]) for horse in record.horses]
        self.shares[record.slug] = shares_together([found for _, found in known])
        return StableSummary(record.slug, record.stable, tuple(horse for horse, _ in known))

    @property
    def kept_count(self) -> int:
        """Of how many horses what was computed before was used again."""
        return self.horses - len(self._fresh)

    def remember(self) -> None:
        """Keep what was computed now."""
        for place, told in self._fresh.items() if self._keys else ():
            self._cache.put(KIND, self._keys[place], told)


def watched(horse: HorseSummary, today: WatchedDay) -> HorseSummary:
    """The same summary for work that is kept for all days alike; what of it is unpacked goes with it.

    today: the day that it is of, on which alone it stands where it was not kept.
    """
    today.narrow(vars(horse).get("_alike", AlikeDays(today.plain, today.plain)))
    other = copy(horse)
    vars(other).update(as_of=today)
    return other


def _place(record: HorseRecord) -> HorsePlace:
    return record.stable, record.slug


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
