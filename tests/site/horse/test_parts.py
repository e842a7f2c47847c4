"""One foot's part, and the trimmer's words."""

from __future__ import annotations

from datetime import date

from recordgen.records.models.names import FEET
from recordgen.site.horse.comparing import comparison_of
from recordgen.site.horse.parts import MOST_VISITS, foot_parts, opening_of_note
from recordgen.site.photographs import Album
from recordgen.site.tracing.feet import Tracings
from tests.support.horse_records import NAMING, WAYS, summary, toes, visit

LONG = "The heels came down. " + "The wall grew straight and even all around the foot. " * 8


def test_each_foot_keeps_its_place() -> None:
    """Also one that no visit looked at."""
    parts = foot_parts(summary(*toes(("2026-10-14", 84, 74))), Tracings(), Album())

    assert [one.foot for one in parts] == list(FEET)
    assert [one.summary is not None for one in parts] == [True, False, False, False]


def test_a_foot_tells_its_last_visits() -> None:
    """The newest first, half a year of them."""
    visits = toes(*((f"2026-{month:02}-01", 84.0, 74.0) for month in range(1, 10)))
    (part, *_) = foot_parts(summary(*visits), Tracings(), Album())

    assert [day for day, _ in part.rows] == [date(2026, month, 1) for month in range(9, 3, -1)]
    assert len(part.visits) == MOST_VISITS


def test_the_trimmers_words_are_those_of_the_last_visit() -> None:
    """An older note may be over."""
    told = opening_of_note(summary(visit("2026-09-01", note="Old."), visit("2026-10-14", note="It is working.")))

    assert told is not None
    assert (told.first, told.rest) == ("It is working.", "")
    assert opening_of_note(summary(visit("2026-09-01", note="Old."), visit("2026-10-14"))) is None
    assert opening_of_note(summary()) is None


def test_a_long_note_is_cut_after_a_sentence() -> None:
    """Nothing is lost; within a first sentence only where that has no end."""
    told, endless = (
        opening_of_note(summary(visit("2026-10-14", note=LONG))),
        opening_of_note(summary(visit("2026-10-14", note="word " * 790))),
    )

    assert told is not None
    assert f"{told.first} {told.rest}" == LONG.strip()
    assert told.first.endswith(".")
    assert len(told.first.split()) <= 40
    assert endless is not None
    assert [len(part.split()) for part in (endless.first, endless.rest)] == [40, 750]


def test_two_days_are_compared_by_what_both_hold() -> None:
    """Each measure that was taken on two days at least, as the page writes it, by the order of the feet."""
    horse = summary(*toes(("2026-09-01", 84, 74.5), ("2026-10-14", 85, None)))
    found = comparison_of(horse, WAYS.measures, NAMING)
    assert found is not None
    (row,) = found.data

    assert row["name"] == "toe length"
    assert row["days"] == {"2026-10-14": ["85", "", "", ""], "2026-09-01": ["74.5", "", "", ""]}
    assert comparison_of(summary(*toes(("2026-09-01", 84, 74))), WAYS.measures, NAMING) is None
