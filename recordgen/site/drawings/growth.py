"""Data for the pictures of growth, taken out of the summaries."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

from recordgen.hoof.growth.growing_out import GrowingOut
from recordgen.hoof.growth.growth import FootGrowth
from recordgen.hoof.growth.rate import Rate
from recordgen.hoof.growth.season import growing_days
from recordgen.hoof.naming import MONTH_DAYS, Naming
from recordgen.hoof.summary import FootSummary, HorseSummary
from recordgen.pictures.charts.forecast import ForecastCone
from recordgen.pictures.charts.growth_rates import RateRow
from recordgen.pictures.feet.growing_out import Defect
from recordgen.records.models.names import FEET, Foot, Zone

# How far the wall's growth is drawn past today and past the window.
BEYOND = timedelta(weeks=4)


def forecasts(summary: HorseSummary, naming: Naming) -> dict[Foot, ForecastCone]:
    """The growth still to come, by foot: from the length after the last trim past today and past the window.

    None of a horse without a window, or of a foot whose length after the last visit is not known.
    """
    due = summary.due
    if due is None:
        return {}
    end = max(due.latest, due.best, summary.as_of) + BEYOND
    told = naming.phrase("chart_forecast", day=naming.day(due.best))
    found = {}
    for foot, one in summary.feet.items():
        length = one.measures.get("toe_length")
        if length and length.after is not None and one.growth.net.cycles and length.day == summary.last_visit:
            found[foot] = ForecastCone(length.day, length.after, due.best, end, _a_day(summary, one, end), told)
    return found


def _a_day(summary: HorseSummary, one: FootSummary, end: date) -> tuple[float, float, float]:
    """Net growth on a day of the stretch from the last visit to a day, low, middle and high, as its season makes it."""
    start = summary.last_visit or end
    return _interval(one.growth.net, growing_days(summary.growth.season, start, end) / max((end - start).days, 1))


def rate_rows(summary: HorseSummary, naming: Naming) -> list[RateRow]:
    """A row for each foot that has a cycle of growth, mm a month."""
    return [_rate_row(foot, growth, naming) for foot, growth in summary.growth.feet.items() if growth.net.cycles]


def usual_a_month(summary: HorseSummary) -> tuple[float, float]:
    """From where to where growth is usual for the horse's class, mm a month: one standard deviation about its mean."""
    usual = summary.growth.usual
    return MONTH_DAYS * max(usual.mm_per_day - usual.sd, 0), MONTH_DAYS * (usual.mm_per_day + usual.sd)


def defects(one: FootSummary, naming: Naming) -> list[Defect]:
    """Marks that grow out of one foot's wall, each with the month in which it will have."""
    return [_defect(mark, naming) for mark in one.growing_out]


def heights(one: FootSummary) -> dict[Zone, float]:
    """The wall's height by zone, mm, where something grows out and it was measured."""
    return {mark.zone: mark.height_mm for mark in one.growing_out if mark.height_measured}


def by_foot(found: Mapping[Foot, FootSummary]) -> list[tuple[Foot, FootSummary]]:
    """The feet on which something grows out, in their usual order."""
    return [(foot, found[foot]) for foot in FEET if foot in found and found[foot].growing_out]


def _rate_row(foot: Foot, growth: FootGrowth, naming: Naming) -> RateRow:
    return RateRow(
        foot,
        naming.foot(foot),
        *_interval(growth.net, MONTH_DAYS),
        tuple(round(MONTH_DAYS * cycle.mm_per_day, 4) for cycle in growth.cycles),
        tuple(round(MONTH_DAYS * one.cycle.mm_per_day, 4) for one in growth.left_out if one.why != "too long"),
        _interval(growth.true, MONTH_DAYS) if growth.true else None,
    )


def _interval(rate: Rate, by: float) -> tuple[float, float, float]:
    return round(by * rate.low, 5), round(by * rate.mean, 5), round(by * rate.high, 5)


def _defect(mark: GrowingOut, naming: Naming) -> Defect:
    expected = mark.expected_mm and (max(mark.expected_mm[0], 0), max(mark.expected_mm[2], 0))
    return Defect(
        mark.zone,
        mark.kind,
        mark.last.below_hairline_mm,
        None,
        tuple(one.below_hairline_mm for one in mark.sightings[:-1]),
        expected or None,
        naming.phrase("chart_grown_out", month=naming.language.month_year(mark.about)),
    )
