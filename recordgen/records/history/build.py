"""A file's versions to its trail: each change in words, and what git cannot tell for sure."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from recordgen.git.log import LogEntry
from recordgen.records.history.model import Amendment, Kind, State, VisitTrail, Words
from recordgen.records.history.renames import Version
from recordgen.records.history.versions import differences
from recordgen.records.models.visit import Visit

_ADDRESS = re.compile(r"\S@\S")


@dataclass(frozen=True)
class Past:
    """Facts that the trails of one practice share.

    visits: what each content held, None where it cannot be read. now: the content git keeps of each file at present.
    cut_off: the entries before which this computer's history holds nothing, though there is more.
    """

    visits: Mapping[str, Visit | None]
    now: Mapping[str, str]
    cut_off: Collection[str]
    words: Words


def contents(versions: Sequence[Version]) -> set[str]:
    """Git's names of the contents to compare; none where a file had one content all along."""
    found = {name for version in versions for name in (*version.olds, version.new) if name}
    return found if len(found) > 1 or any(version.new is None for version in versions) else set()


def trail_of(name: str, state: State, versions: Sequence[Version], past: Past) -> VisitTrail:
    """The trail of one file. name: its name in git; versions: oldest first."""
    if not versions:
        lost = (past.words.phrase("doubt_lost"),) if name in past.now else ()
        return VisitTrail(None, False, state, doubts=lost)
    stable = name.rsplit("/", 2)[0] + "/" if name.count("/") > 1 else ""
    changes = tuple(_Changes(stable, past).of(versions))
    days = [version.logged.day for version in _first_ones(versions, past.now.get(name)) if version.logged.day]
    cut_off = any(version.logged.id in past.cut_off for version in versions)
    doubts = tuple(_doubts(versions, past, past.now.get(name)))
    return VisitTrail(min(days, default=None), cut_off, state, changes, doubts)


def _first_ones(versions: Sequence[Version], now: str | None) -> Sequence[Version]:
    """The version that a file began with, or all of them where lines of work make it unsure which."""
    return versions[:1] if _in_one_line(versions, now) else versions


def _in_one_line(versions: Sequence[Version], now: str | None) -> bool:
    """Tell whether each version follows the one before, up to what git keeps at present."""
    olds = [version.olds for version in versions]
    return olds == [(None,), *((version.new,) for version in versions[:-1])] and versions[-1].new == now


def _doubts(versions: Sequence[Version], past: Past, now: str | None) -> Iterator[str]:
    entries = [version.logged for version in versions]
    phrase = past.words.phrase
    if any(entry.id in past.cut_off for entry in entries):
        yield phrase("doubt_cut_off")
    if any(version.guessed for version in versions):
        yield phrase("doubt_renamed")
    if versions[0].unsure:
        yield phrase("doubt_came")
    if not _in_one_line(versions, now):
        yield phrase("doubt_joined")
    elif any(later.seconds < earlier.seconds for earlier, later in pairwise(entries)):
        yield phrase("doubt_days")
    if any(entry.day is None for entry in entries):
        yield phrase("doubt_no_day")
    if anew := list(filter(None, map(_own_day_before, entries))):
        yield phrase("doubt_written_anew", day=past.words.language.day(anew[0]))


def _own_day_before(entry: LogEntry) -> dt.date | None:
    """The day an entry names as its own, where it was put into the history on a later one."""
    return entry.written if entry.written and entry.day and entry.written < entry.day else None


@dataclass
class _Changes:
    """Goes through a file's versions, and holds what the last one that can be read held."""

    stable: str
    past: Past
    last: Visit | None = None
    taken_out: bool = False
    unreadable: bool = False

    def of(self, versions: Sequence[Version]) -> Iterator[Amendment]:
        """The changes of these versions, oldest first."""
        for version in versions if contents(versions) else ():
            yield from self._of(version)

    def _of(self, version: Version) -> Iterator[Amendment]:
        before, was_out, was_unreadable = self.last, self.taken_out, self.unreadable
        self.taken_out = version.new is None
        if version.new is None:
            yield self._change(version, "taken out")
            return
        if version.new in version.olds:
            return
        visit = self.past.visits.get(version.new)
        self.unreadable = visit is None
        if visit is None:
            yield self._change(version, "unreadable")
            return
        self.last = visit
        olds = list(filter(None, (self.past.visits.get(old or "") for old in version.olds)))
        if was_out:
            yield self._change(version, "put back", [before] if before else [], visit)
        elif was_unreadable and not olds:
            yield self._change(version, "readable again", [before] if before else [], visit)
        elif olds:
            yield from self._compare(version, olds, visit)

    def _compare(self, version: Version, olds: Sequence[Visit], visit: Visit) -> Iterator[Amendment]:
        if all(old.is_blank for old in olds) and not visit.is_blank:
            yield self._change(version, "filled in")
            return
        change = self._change(version, "changed", olds, visit)
        if change.parts:
            yield change

    def _change(
        self, version: Version, kind: Kind, olds: Sequence[Visit] = (), visit: Visit | None = None
    ) -> Amendment:
        found = differences(olds, visit) if olds and visit else []
        parts = tuple(self.past.words.part(one) for one in found)
        entry = version.logged
        alone = entry.within.startswith(self.stable) if self.stable else False
        for_all = alone and not _ADDRESS.search(entry.reason) and not any(part.private for part in parts)
        return Amendment(entry.id, entry.day, kind, entry.reason, parts, for_all)
