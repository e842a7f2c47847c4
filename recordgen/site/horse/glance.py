"""Visits, what was found, and the vet along the days, placed in per cent of a line that the page stretches."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary, VisitSummary
from recordgen.records.models.names import FindingKind, Foot

# One visit or two are no line.
FEWEST_VISITS = 3
# Two years are what an owner remembers.
DAYS_SHOWN = 740
# So many kinds of finding; those seen last come first.
MOST_KINDS = 5

Days = tuple[date, date]
# The end of what was there at the last look.
GOES_ON = date.max


@dataclass(frozen=True)
class GlanceRow:
    """One line: its name, spots in per cent from the left, and stretches as (from, width) in per cent.

    days: the stretches as days, for whoever opens the dates.
    """

    kind: str
    name: str
    spots: tuple[float, ...] = ()
    stretches: tuple[tuple[float, float], ...] = ()
    days: tuple[Days, ...] = ()


@dataclass(frozen=True)
class Glance:
    """All lines, the first and the last day, the years that begin between them, and whether today is the last day."""

    rows: tuple[GlanceRow, ...]
    first: date
    last: date
    years: tuple[tuple[int, float], ...]
    until_today: bool


@dataclass(frozen=True)
class Lasting:
    """Stretches of days in which one kind of finding was there, by the name of its line; the last may still go on."""

    name: str
    days: tuple[Days, ...]


@dataclass(frozen=True)
class DaysSeen:
    """All that was ever seen of a horse along the days: its visits, oldest first, what was found, and the vet.

    visits_name, vet_name: of their lines. left: whether the days end with the last visit.
    """

    visits: tuple[date, ...]
    visits_name: str
    found: tuple[Lasting, ...]
    vet: tuple[date, ...]
    vet_name: str
    left: bool

    def by(self, day: date) -> Glance | None:
        """Two years up to a day at a glance, or up to the last visit of a horse that left; None of too few visits."""
        end = self.visits[-1] if self.left else max(day, self.visits[-1])
        days = [visit for visit in self.visits if end - visit <= timedelta(days=DAYS_SHOWN)]
        if len(days) < FEWEST_VISITS:
            return None
        line, first = _Line(days[0], end), days[0]
        rows = [GlanceRow("visit", self.visits_name, tuple(line.x(visit) for visit in days))]
        rows += [line.row(name, held) for name, held in _shown(self.found, first, end)]
        vet = tuple(line.x(one) for one in self.vet if one >= first)
        rows += [GlanceRow("vet", self.vet_name, vet)] if vet else []
        return Glance(tuple(rows), first, end, line.years, not self.left)


def days_seen(summary: HorseSummary, naming: Naming) -> DaysSeen | None:
    """All that was seen of a horse along the days; None of one with fewer than three visits."""
    if len(summary.history) < FEWEST_VISITS:
        return None
    return DaysSeen(
        tuple(one.visit.date for one in reversed(summary.history)),
        naming.phrase("glance_visits"),
        tuple(Lasting(naming.phrase(f"glance_{kind}"), days) for kind, days in _stretches(summary)),
        tuple(event.day for event in summary.events if event.kind == "vet"),
        naming.phrase("glance_vet"),
        summary.horse.left is not None,
    )


def kinds_found(visit: VisitSummary, naming: Naming) -> list[str]:
    """The kinds of what one visit found, each once, the horse's before those of its feet, in lower case."""
    lame = visit.visit.lameness is not None and visit.visit.lameness.grade > 0
    kinds = dict.fromkeys(one.kind for at in visit.feet.values() for one in at.findings)
    return [naming.language.inside(naming.phrase(f"glance_{kind}")) for kind in (*(["lame"] if lame else []), *kinds)]


@dataclass(frozen=True)
class _Line:
    first: date
    last: date

    def x(self, day: date) -> float:
        return round(100 * (day - self.first).days / max((self.last - self.first).days, 1), 1)

    @property
    def years(self) -> tuple[tuple[int, float], ...]:
        return tuple((year, self.x(date(year, 1, 1))) for year in range(self.first.year + 1, self.last.year + 1))

    def row(self, name: str, days: Sequence[Days]) -> GlanceRow:
        placed = tuple((self.x(start), round(self.x(end) - self.x(start), 1)) for start, end in days)
        return GlanceRow("stretch", name, (), placed, tuple(days))


def _stretches(summary: HorseSummary) -> Iterator[tuple[str, tuple[Days, ...]]]:
    """Stretches in which something was found, by kind.

    Each goes from the first visit that recorded it to the first that looked and did not find it, or goes on.
    """
    found: dict[str, list[Days]] = {}
    for foot in summary.feet:
        for kind in sorted({one.kind for at in summary.history if foot in at.feet for one in at.feet[foot].findings}):
            found.setdefault(kind, []).extend(_runs(_looks(summary, foot, kind)))
    lame = [(one.visit.date, one.visit.lameness.grade > 0) for one in reversed(summary.history) if one.visit.lameness]
    found["lame"] = list(_runs(lame))
    return ((kind, tuple(_join(found[kind]))) for kind in sorted(found, reverse=True) if found[kind])


def _shown(found: Sequence[Lasting], first: date, end: date) -> list[tuple[str, list[Days]]]:
    """The stretches of some kinds between two days, what was there last coming first."""
    shown = []
    for one in found:
        days = [(max(start, first), min(until, end)) for start, until in one.days if until >= first]
        shown += [(one.name, days)] if days else []
    return sorted(shown, key=lambda one: (one[1][-1][1], one[1][-1][0]), reverse=True)[:MOST_KINDS]


def _looks(summary: HorseSummary, foot: Foot, kind: FindingKind) -> list[tuple[date, bool]]:
    """The visits that looked at a foot, oldest first, and whether each found this."""
    at = [(one.visit.date, one.feet[foot].findings) for one in reversed(summary.history) if foot in one.feet]
    return [(day, any(one.kind == kind for one in findings)) for day, findings in at]


def _runs(looks: Sequence[tuple[date, bool]]) -> Iterator[Days]:
    start: date | None = None
    for day, there in looks:
        if there and start is None:
            start = day
        elif not there and start is not None:
            yield start, day
            start = None
    if start is not None:
        yield start, GOES_ON


def _join(days: Sequence[Days]) -> list[Days]:
    """Stretches that touch or lie over each other as one."""
    joined: list[Days] = []
    for start, end in sorted(days):
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], end))
        else:
            joined.append((start, end))
    return joined
