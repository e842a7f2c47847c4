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


def glance_of(summary: HorseSummary, naming: Naming) -> Glance | None:
    """Two years of a horse at a glance; None of one with fewer than three visits."""
    last = summary.last_visit
    if last is None or len(summary.history) < FEWEST_VISITS:
        return None
    end = last if summary.horse.left else max(summary.as_of, last)
    days = [one.visit.date for one in reversed(summary.history) if end - one.visit.date <= timedelta(days=DAYS_SHOWN)]
    if len(days) < FEWEST_VISITS:
        return None
    line = _Line(days[0], end)
    rows = [GlanceRow("visit", naming.phrase("glance_visits"), tuple(line.x(day) for day in days))]
    rows += [line.row(naming.phrase(f"glance_{key}"), found) for key, found in _stretches(summary, days[0], end)]
    vet = tuple(line.x(event.day) for event in summary.events if event.kind == "vet" and event.day >= days[0])
    rows += [GlanceRow("vet", naming.phrase("glance_vet"), vet)] if vet else []
    return Glance(tuple(rows), days[0], end, line.years, not summary.horse.left)


def found_in(visit: VisitSummary, naming: Naming) -> list[str]:
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


def _stretches(summary: HorseSummary, first: date, end: date) -> list[tuple[str, list[Days]]]:
    """Stretches in which something was found, by kind.

    Each goes from the first visit that recorded it to the first that looked and did not find it.
    """
    found: dict[str, list[Days]] = {}
    for foot in summary.feet:
        for kind in sorted({one.kind for at in summary.history if foot in at.feet for one in at.feet[foot].findings}):
            found.setdefault(kind, []).extend(_runs(_looks(summary, foot, kind), end))
    lame = [(one.visit.date, one.visit.lameness.grade > 0) for one in reversed(summary.history) if one.visit.lameness]
    found["lame"] = list(_runs(lame, end))
    joined = {kind: [days for days in _join(held) if days[1] >= first] for kind, held in found.items()}
    shown = [(kind, [(max(start, first), until) for start, until in held]) for kind, held in joined.items() if held]
    return sorted(shown, key=lambda one: (one[1][-1][1], one[1][-1][0], one[0]), reverse=True)[:MOST_KINDS]


def _looks(summary: HorseSummary, foot: Foot, kind: FindingKind) -> list[tuple[date, bool]]:
    """The visits that looked at a foot, oldest first, and whether each found this."""
    at = [(one.visit.date, one.feet[foot].findings) for one in reversed(summary.history) if foot in one.feet]
    return [(day, any(one.kind == kind for one in findings)) for day, findings in at]


def _runs(looks: Sequence[tuple[date, bool]], end: date) -> Iterator[Days]:
    start: date | None = None
    for day, there in looks:
        if there and start is None:
            start = day
        elif not there and start is not None:
            yield start, day
            start = None
    if start is not None:
        yield start, end


def _join(days: Sequence[Days]) -> list[Days]:
    """Stretches that touch or lie over each other as one."""
    joined: list[Days] = []
    for start, end in sorted(days):
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], end))
        else:
            joined.append((start, end))
    return joined
