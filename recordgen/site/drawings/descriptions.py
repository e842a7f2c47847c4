"""The finding of a picture, told in one sentence for those who do not see it."""

from __future__ import annotations

from collections.abc import Sequence

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.naming import Naming
from recordgen.pictures.charts.growth_rates import RateRow
from recordgen.pictures.charts.limits import values_of
from recordgen.pictures.feet.growing_out import Defect
from recordgen.records.models.names import Foot


def describe_series(naming: Naming, measure: str, foot: Foot, readings: Sequence[Reading]) -> str:
    """The first and the last value of a foot's measure with their days; measure: as the phrases of charts name it."""
    taken = [one for one in sorted(readings, key=lambda one: one.day) if values_of([one])]
    ends = taken[:1] + taken[1:][-1:]
    told = [
        naming.phrase("chart_value", value=_value(naming, measure, values_of([one])[-1]), day=naming.day(one.day))
        for one in ends
    ]
    return naming.phrase(f"chart_{measure}", foot=naming.foot(foot), told=", ".join(told))


def _value(naming: Naming, measure: str, value: float) -> str:
    if measure == "toe_angle":
        return f"{naming.figures(f'{value:g}')}°"
    if measure == "toe_length":
        return naming.mm(value)
    side = "level" if value == 0 else "outer" if value > 0 else "inner"
    return naming.phrase(f"chart_heel_{side}", size=naming.mm(abs(value)))


def describe_rates(naming: Naming, rows: Sequence[RateRow]) -> str:
    """The growth of each foot in a month."""
    feet = [f"{row.label} {naming.quantities.span(round(row.middle, 1))}" for row in rows]
    return naming.phrase("chart_rates", told=naming.listed(feet))


def describe_growing_out(naming: Naming, foot: Foot, defects: Sequence[Defect]) -> str:
    """The marks that grow out of a foot's wall, where they are, and when they are gone."""
    marks = [
        naming.phrase(
            "chart_mark",
            mark=naming.phrase(f"mark_{one.kind.replace(' ', '_')}"),
            below=naming.mm(one.below_hairline_mm),
            when=one.label,
        )
        for one in defects
    ]
    return naming.phrase("chart_growing_out", foot=naming.foot(foot), told="; ".join(marks))
