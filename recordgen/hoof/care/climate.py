"""Tell which months are wet, dry, warm or cold where a practice works: by its file, or by the half of the earth."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Literal

from recordgen.records.models.reference import CareSeason
from recordgen.records.models.settings import PracticeFile

Whose = Literal["practice", "north", "south", "assumed"]

# The half of the year in which the ground is wet in the north, and the one that is warm. Common practice, no source.
# Near the equator, and where rain falls in summer, it is otherwise: there a practice writes its own months.
NORTHERN_WET = (10, 11, 12, 1, 2, 3)
NORTHERN_WARM = (4, 5, 6, 7, 8, 9)
ALL_MONTHS = range(1, 13)

# Countries that lie wholly or mostly south of the equator, two letters each (ISO 3166). From memory, not read.
SOUTHERN = {
    *("AO", "AR", "AU", "BO", "BR", "BW", "CL", "FJ", "FK", "LS", "MG", "MU", "MW", "MZ"),
    *("NA", "NC", "NZ", "PE", "PF", "PY", "RE", "SZ", "TZ", "UY", "VU", "ZA", "ZM", "ZW"),
}


def is_in_season(season: CareSeason, practice: PracticeFile, day: date) -> bool:
    """Tell whether a day falls into the wet, dry, warm or cold months of a practice."""
    return day.month in months_of(season, practice)


def months_of(season: CareSeason, practice: PracticeFile) -> tuple[int, ...]:
    """The wet, dry, warm or cold months of a practice, 1 for January to 12 for December, in order."""
    by_wet = season in ("wet", "dry")
    named = _own_months(practice, by_wet)
    if named is None:
        northern = NORTHERN_WET if by_wet else NORTHERN_WARM
        named = [_half_a_year_on(month) for month in northern] if practice.country in SOUTHERN else northern
    return tuple(month for month in ALL_MONTHS if (month in named) == (season in ("wet", "warm")))


def whose_months(season: CareSeason, practice: PracticeFile) -> Whose:
    """Tell where a practice's months come from: its own file, the half of the earth of its country, or assumed."""
    if _own_months(practice, season in ("wet", "dry")) is not None:
        return "practice"
    if practice.country is None:
        return "assumed"
    return "south" if practice.country in SOUTHERN else "north"


def _own_months(practice: PracticeFile, by_wet: bool) -> Sequence[int] | None:
    if practice.seasons is None:
        return None
    return practice.seasons.wet_months if by_wet else practice.seasons.warm_months


def _half_a_year_on(month: int) -> int:
    return (month + 5) % 12 + 1
