"""Days of the next visit, and usual intervals, against what is published about them."""

from datetime import date
from typing import Any

import pytest

from recordgen.records.models.names import CareClass
from tests.support.horse_records import REFERENCE, practice, summary, visit


def best(last: str, weeks: float, **values: Any) -> date:
    """The best day for a horse whose trimmer asked for so many weeks."""
    found = summary(visit(last, next={"weeks": weeks}), **values).due
    assert found is not None
    return found.best


def weeks(group: CareClass) -> tuple[float, float]:
    """The least and the most weeks of a class, as our own table has them."""
    found = {name: words.weeks for name, words in REFERENCE.classes.items()}[group]
    return found.at_least, found.at_most


@pytest.mark.parametrize(
    ("last", "weeks", "expected"),
    [
        ("2024-03-01", 6, "2024-04-12"),
        ("2024-02-01", 8, "2024-03-28"),
        ("2023-02-01", 8, "2023-03-29"),
        ("2024-12-20", 6, "2025-01-31"),
        ("2024-02-29", 52, "2025-02-27"),
    ],
)
def test_weeks_across_the_calendar(last: str, weeks: int, expected: str) -> None:
    """Across a month, a leap day, a year's end, and from 29 February.

    Derived from: weeks of seven days in the Gregorian calendar.
    """
    assert best(last, weeks) == date.fromisoformat(expected)
    assert (best(last, weeks) - date.fromisoformat(last)).days == 7 * weeks


def test_usual_interval_of_grown_horses() -> None:
    """Most horses need hoof attention every 4 to 8 weeks.

    Source: UK welfare code, hoofcare, 2008 consultation, as reported in Horsetalk, 12 April 2008.
    """
    assert weeks("adult") == (4, 8)


def test_usual_interval_of_donkeys() -> None:
    """6 to 10 weeks.

    Source: The Donkey Sanctuary, Notes for farriers, September 2016.
    """
    assert weeks("donkey") == (6, 10)


def test_foals_are_seen_oftener_than_grown_horses() -> None:
    """Foal hoof renews in 145 days against about 330; the interval is shorter on both ends, though not by as much.

    Source: Curtis, Thoroughbred Owner & Breeder, May 2017; Curtis, Martin & Hobbs 2014, Vet J 201(1):116-117.
    Derived from: 145 over 330, and a judgement.
    """
    (low, high), (grown_low, grown_high) = weeks("foal"), weeks("adult")

    assert low / grown_low > 145 / 330
    assert (low, high) < (grown_low, grown_high)


@pytest.mark.parametrize(("group", "weeks"), [("adult", 6), ("donkey", 8), ("foal", 4)])
def test_what_a_practice_starts_with(group: str, weeks: int) -> None:
    """Six weeks, eight for a donkey, four for a foal; a practice may change them.

    Derived from: the middle of the published ranges, a judgement.
    """
    assert getattr(practice().usual_weeks, group) == weeks
