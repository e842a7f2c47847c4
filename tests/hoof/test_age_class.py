"""Age in whole years and months, and the class by which the usual interval goes."""

from datetime import date

import pytest

from recordgen.hoof.age_class import care_class, months_old
from recordgen.hoof.due import usual_weeks
from recordgen.records.models.fields import years_between
from tests.support.horse_records import REFERENCE, horse, practice


@pytest.mark.parametrize(
    ("born", "day", "expected"),
    [
        ("2020-06-15", "2026-06-14", 5),
        ("2020-06-15", "2026-06-15", 6),
        ("2020-06-15", "2020-06-15", 0),
        ("2024-02-29", "2025-02-28", 0),
        ("2024-02-29", "2025-03-01", 1),
        ("2024-02-29", "2028-02-28", 3),
        ("2024-02-29", "2028-02-29", 4),
    ],
)
def test_years_old(born: str, day: str, expected: int) -> None:
    """A year is full on the birthday; one born on 29 February has it on 1 March in other years."""
    assert years_between(date.fromisoformat(born), date.fromisoformat(day)) == expected


@pytest.mark.parametrize(
    ("kind", "expected"), [("horse", "adult"), ("pony", "adult"), ("mule", "adult"), ("donkey", "donkey")]
)
def test_class_of_a_grown_animal(kind: str, expected: str) -> None:
    """Donkeys have a class of their own; mules go with horses."""
    assert care_class(horse(kind=kind), date(2026, 10, 14)) == expected


@pytest.mark.parametrize("kind", ["horse", "donkey"])
def test_a_foal_is_one_until_its_first_birthday(kind: str) -> None:
    """The day before it is still a foal, donkeys too."""
    young = horse(kind=kind, born="2026-05-01")

    assert care_class(young, date(2027, 4, 30)) == "foal"
    assert care_class(young, date(2027, 5, 1)) == ("donkey" if kind == "donkey" else "yearling")


@pytest.mark.parametrize(
    ("day", "expected"),
    [("2024-02-01", "foal"), ("2025-12-30", "foal"), ("2025-12-31", "yearling"), ("2026-12-31", "adult")],
)
def test_of_a_year_alone_it_is_as_young_as_it_can_be(day: str, expected: str) -> None:
    """Born on the last day of the year, or on the day itself where that comes before."""
    assert care_class(horse(born="2024"), date.fromisoformat(day)) == expected


def test_without_a_birthday_it_is_grown() -> None:
    """Nobody knows how old it is, so it is no foal."""
    assert care_class(horse(born=None), date(2026, 10, 14)) == "adult"


def test_the_usual_weeks_of_a_practice_lie_in_the_range_of_each_class() -> None:
    """The settings a new practice starts with need no clamping."""
    assert all(
        words.weeks.at_least <= usual_weeks(practice(), group) <= words.weeks.at_most
        for group, words in REFERENCE.classes.items()
    )


@pytest.mark.parametrize(
    ("day", "expected"),
    [("2029-04-30", "yearling"), ("2029-05-01", "adult"), ("2047-04-30", "adult"), ("2047-05-01", "aged")],
)
def test_young_and_old_have_a_class_of_their_own(day: str, expected: str) -> None:
    """From one to two a yearling, aged from twenty on."""
    assert care_class(horse(born="2027-05-01"), date.fromisoformat(day)) == expected


@pytest.mark.parametrize(
    ("born", "day", "months"),
    [("2026-05-03", "2026-11-25", 6), ("2026-05-26", "2026-11-25", 5), ("2025-11-25", "2026-11-25", 12)],
)
def test_whole_months_are_counted(born: str, day: str, months: int) -> None:
    """A month is full on the day of the month of birth."""
    assert months_old(date.fromisoformat(born), date.fromisoformat(day)) == months
