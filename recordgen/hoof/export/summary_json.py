"""A `HorseSummary` as plain values for JSON: what other programs read."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.cautions.cautions import Caution, ClosedCaution
from recordgen.hoof.claims.claims import Claim
from recordgen.hoof.due import Due
from recordgen.hoof.growth.forecasts import Forecast
from recordgen.hoof.growth.growing_out import GrowingOut
from recordgen.hoof.growth.rate import Rate
from recordgen.hoof.measures.balance import PairDifference
from recordgen.hoof.measures.change import MeasureSummary, Step
from recordgen.hoof.measures.changes import FootMeasure
from recordgen.hoof.measures.published_classes import ClassFindings
from recordgen.hoof.measures.rounding import significant
from recordgen.hoof.summary import FootSummary, HorseSummary
from recordgen.records.models.names import Foot

ToldMeasures = Mapping[tuple[Foot, str], bool]


def as_json(summary: HorseSummary) -> dict[str, Any]:
    """Stable, horse, day, due window, cautions, and growth and measures by foot; days as ISO 8601, lengths in mm."""
    return {
        "stable": summary.stable,
        "horse": summary.slug,
        "name": summary.horse.name,
        "as_of": summary.as_of.isoformat(),
        **lasting_json(summary),
    }


def lasting_json(summary: HorseSummary) -> dict[str, Any]:
    """The same without whose summary it is and of which day."""
    return {
        "last_visit": summary.last_visit.isoformat() if summary.last_visit else None,
        "due": summary.due and _due(summary.due),
        "growth": _growth(summary),
        "forecasts": [_forecast(one) for one in summary.past_forecasts.forecasts],
        "cautions": [_open_caution(caution) for caution in summary.cautions],
        "no_trim": [{"rule": one.rule, "foot": one.foot} for one in summary.held],
        "closed_cautions": [_closed_caution(caution) for caution in summary.closed_cautions],
        "care": [{"key": job.key, "what": job.what, "since": job.since.isoformat()} for job in summary.jobs],
        "care_withheld": [_withheld(one) for one in summary.withheld],
        "published": [_published_class(one) for one in summary.published],
        "changes": [_change(one) for one in (*summary.changes.real, *summary.changes.maybe)],
        "pairs": [_pair(one) for one in summary.pairs],
        "feet": {foot: _foot(one, _told_measures(summary)) for foot, one in summary.feet.items()},
    }


def _due(due: Due) -> dict[str, Any]:
    return {
        "earliest": due.earliest.isoformat(),
        "best": due.best.isoformat(),
        "holiday": due.holiday,
        "latest": due.latest.isoformat(),
        "whose": due.whose,
        "reason": due.reason,
        "earliest_reason": due.earliest_reason,
        "latest_reason": due.latest_reason,
        "overdue_days": due.overdue_days,
    }


def _growth(summary: HorseSummary) -> dict[str, Any]:
    growth, season = summary.growth, summary.growth.season
    return {
        "together": _rate(growth.together),
        "season": season
        and {
            "swing": _rounded(season.swing),
            "slowest": season.slowest_day(summary.as_of.year).isoformat(),
        },
        "apart": [
            {"foot": apart.foot, "mm_per_day": _rounded(apart.mm_per_day, 4), "cycles": apart.cycles}
            for apart in growth.apart
        ],
    }


def _forecast(one: Forecast) -> dict[str, Any]:
    return {
        "made": one.made.isoformat(),
        "about": one.about.isoformat(),
        "came": one.came.isoformat(),
        "expected_mm": _rounded(one.expected_mm),
        "grown_mm": _rounded(one.grown_mm),
    }


def _open_caution(caution: Caution) -> dict[str, Any]:
    return {
        "rule": caution.rule,
        "level": caution.level,
        "foot": caution.foot,
        "day": caution.day.isoformat(),
        "about": caution.about,
        "since": caution.since.isoformat(),
        "days_open": caution.days_open,
        "seen_again": caution.seen_again,
        "text": caution.text,
        "source": caution.source,
        "ring": list(caution.ring),
    }


def _withheld(one: Withheld) -> dict[str, Any]:
    because = [{"rule": caution.rule, "foot": caution.foot} for caution in one.cautions]
    return {"key": one.job.key, "what": one.job.what, "since": one.job.since.isoformat(), "because": because}


def _closed_caution(caution: ClosedCaution) -> dict[str, Any]:
    return {
        "rule": caution.rule,
        "level": caution.level,
        "foot": caution.foot,
        "about": caution.about,
        "since": caution.since.isoformat(),
        "day": caution.day.isoformat(),
        "ended": caution.ended.isoformat(),
        "how": caution.how,
        "by": caution.by,
        "text": caution.seen,
        "left": caution.left or None,
    }


def _published_class(one: ClassFindings) -> dict[str, Any]:
    """A published class with what was measured for it; context, and no verdict."""
    return {
        "name": one.words.name,
        "rule": one.words.rule,
        "share": one.words.share,
        "source": one.words.source,
        "found": [
            {
                "where": at.where,
                "day": at.day and at.day.isoformat(),
                "value": _rounded(at.value),
                "taken_in": at.taken_in,
                "within_error": at.within_error,
            }
            for at in one.found
        ],
    }


def _told_measures(summary: HorseSummary) -> ToldMeasures:
    """By foot and measure whether a change of it is told; those that the page does not look at are left out."""
    looked_at = {
        (foot, key): False
        for foot, one in summary.feet.items()
        for key, measure in one.measures.items()
        if measure.measure.words.headline and measure.last
    }
    return looked_at | {(one.of.foot, one.of.measure.key): True for one in summary.changes.real}


def _change(one: Claim[FootMeasure]) -> dict[str, Any]:
    """A change that is told (real), or one that may be and wants to be read again."""
    return {
        "foot": one.of.foot,
        "measure": one.of.measure.key,
        "unit": one.of.measure.unit,
        "kind": one.kind,
        "before": one.before.isoformat(),
        "since": one.since.isoformat(),
        "latest": one.latest.isoformat(),
        "change": _rounded(one.change),
        "low": _rounded(one.low),
        "high": _rounded(one.high),
        "chance": significant(one.chance),
        "real": one.real,
    }


def _pair(one: PairDifference) -> dict[str, Any]:
    """Left less right of two feet of a pair."""
    return {
        "pair": one.pair,
        "measure": one.measure,
        "day": one.day.isoformat(),
        "left": _rounded(one.left),
        "right": _rounded(one.right),
        "difference": _rounded(one.difference),
        "low": _rounded(one.low),
        "high": _rounded(one.high),
        "real": one.real,
    }


def _foot(foot: FootSummary, told: ToldMeasures) -> dict[str, Any]:
    growth = foot.growth
    return {
        "last_seen": foot.last_seen.isoformat(),
        "growth": {
            "net": _rate(growth.net),
            "by_mark": growth.true and _rate(growth.true),
            "wear": growth.wear and _rate(growth.wear),
            "left_out": [
                {"start": one.cycle.start.isoformat(), "end": one.cycle.end.isoformat(), "why": one.why}
                for one in growth.left_out
            ],
        },
        "growing_out": [_growing_out(one) for one in foot.growing_out],
        "measures": {key: _measure(one, told.get((foot.foot, key))) for key, one in foot.measures.items()},
        "findings": [{"place": finding.place, "kind": finding.kind, "text": finding.text} for finding in foot.findings],
    }


def _rate(rate: Rate) -> dict[str, Any]:
    return {
        "mm_per_day": _rounded(rate.mean, 4),
        "low": _rounded(rate.low, 4),
        "high": _rounded(rate.high, 4),
        "cycles": rate.cycles,
    }


def _growing_out(one: GrowingOut) -> dict[str, Any]:
    return {
        "kind": one.kind,
        "zone": one.zone,
        "seen": one.last.day.isoformat(),
        "below_hairline_mm": _rounded(one.last.below_hairline_mm),
        "earliest": one.earliest.isoformat(),
        "about": one.about.isoformat(),
        "latest": one.latest.isoformat() if one.latest else None,
        "as_expected": one.as_expected,
    }


def _measure(summary: MeasureSummary, real: bool | None) -> dict[str, Any]:
    return {
        "unit": summary.measure.unit,
        "day": summary.day.isoformat(),
        "before": _rounded(summary.before),
        "after": _rounded(summary.after),
        "compared": summary.moment,
        "change": _rounded(summary.last.change) if summary.last else None,
        "smallest_real_change": significant(summary.smallest_real_change),
        "real": real,
        "since": _since(summary.last),
        "since_half_year": _since(summary.half_year),
        "since_first": _since(summary.first),
    }


def _since(step: Step | None) -> dict[str, Any] | None:
    if step is None:
        return None
    return {"day": step.since.isoformat(), "change": _rounded(step.change)}


def _rounded(value: float | None, digits: int = 2) -> float | None:
    return None if value is None else round(value, digits)
