"""A `HorseSummary` as plain values for JSON: what other programs read."""

from __future__ import annotations

from typing import Any

from recordgen.hoof.change import MeasureSummary, Step
from recordgen.hoof.summary import FootSummary, HorseSummary


def as_json(summary: HorseSummary) -> dict[str, Any]:
    """Stable, horse, day, due window, cautions, and growth and measures by foot; days as ISO 8601, lengths in mm."""
    due = summary.due
    return {
        "stable": summary.stable,
        "horse": summary.slug,
        "name": summary.horse.name,
        "as_of": summary.as_of.isoformat(),
        "last_visit": summary.last_visit.isoformat() if summary.last_visit else None,
        "due": due
        and {
            "earliest": due.earliest.isoformat(),
            "best": due.best.isoformat(),
            "latest": due.latest.isoformat(),
            "reason": due.reason,
            "overdue_days": due.overdue_days,
        },
        "cautions": [
            {
                "rule": caution.rule,
                "level": caution.level,
                "foot": caution.foot,
                "day": caution.day.isoformat(),
                "text": caution.text,
                "source": caution.source,
            }
            for caution in summary.cautions
        ],
        "care": [{"key": job.key, "what": job.what, "since": job.since.isoformat()} for job in summary.jobs],
        "feet": {foot: _foot(one) for foot, one in summary.feet.items()},
    }


def _foot(foot: FootSummary) -> dict[str, Any]:
    growth = foot.growth
    return {
        "last_seen": foot.last_seen.isoformat(),
        "growth": growth
        and {
            "mm_per_day": _rounded(growth.mm_per_day, 4),
            "low": _rounded(growth.low, 4),
            "high": _rounded(growth.high, 4),
            "cycles": growth.cycles,
        },
        "measures": {key: _measure(summary) for key, summary in foot.measures.items()},
        "findings": [{"place": finding.place, "kind": finding.kind, "text": finding.text} for finding in foot.findings],
    }


def _measure(summary: MeasureSummary) -> dict[str, Any]:
    return {
        "unit": summary.measure.unit,
        "day": summary.day.isoformat(),
        "before": _rounded(summary.before),
        "after": _rounded(summary.after),
        "compared": summary.moment,
        "change": _rounded(summary.last.change) if summary.last else None,
        "smallest_real_change": _rounded(summary.smallest_real_change),
        "real": summary.last.real if summary.last else None,
        "since": _since(summary.last),
        "since_half_year": _since(summary.half_year),
        "since_first": _since(summary.first),
    }


def _since(step: Step | None) -> dict[str, Any] | None:
    if step is None:
        return None
    return {"day": step.since.isoformat(), "change": _rounded(step.change), "real": step.real}


def _rounded(value: float | None, digits: int = 2) -> float | None:
    return None if value is None else round(value, digits)
