"""Which two photographs are laid over each other."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.photos.files import Photo
from recordgen.records.photos.names import parse_photo_name
from recordgen.site.horse.overlay import overlay_of
from recordgen.site.photographs import album


def chosen(*names: str) -> list[str]:
    """The file names of the two, the earlier first; empty without two that go together."""
    held = []
    for name in sorted(names):
        found = parse_photo_name(f"{name}.jpg")
        assert found is not None
        held.append(Photo(found[0], found[1], Path(f"{name}.jpg"), 1200, 900))
    pair = overlay_of(album(held, "horses/bramble.md"))
    return [one.large.file.stem for one in (pair.earlier, pair.later)] if pair else []


def test_one_alone_has_nothing_to_lie_over() -> None:
    """Nor have two of other feet, other sides, or other moments on two days."""
    assert chosen("2026-05-01-left-fore-sole-after") == []
    assert chosen("2026-05-01-left-fore-sole-after", "2026-06-01-right-fore-sole-after") == []
    assert chosen("2026-05-01-left-fore-sole-after", "2026-06-01-left-fore-side-after") == []
    assert chosen("2026-05-01-left-fore-sole-after", "2026-06-01-left-fore-sole-before") == []


@pytest.mark.parametrize("moment", ["after", "before", "found"])
def test_the_first_and_the_last_of_one_foot_from_one_side(moment: str) -> None:
    """The days between them are left to the foot's own part."""
    names = [f"2026-{month:02}-01-left-fore-sole-{moment}" for month in (1, 4, 9)]

    assert chosen(*names) == [names[0], names[2]]


def test_two_days_go_before_before_and_after_one_trim() -> None:
    """A year tells more than a trim; and after the trim is how a foot stands."""
    days = [f"2026-{month:02}-01-left-fore-sole-{moment}" for month in (3, 9) for moment in ("before", "after")]

    assert chosen(*days) == ["2026-03-01-left-fore-sole-after", "2026-09-01-left-fore-sole-after"]


def test_before_and_after_one_trim_where_there_is_no_other_day() -> None:
    """The earlier one is before."""
    names = ["2026-09-01-left-fore-sole-before", "2026-09-01-left-fore-sole-after"]

    assert chosen(*names) == names


def test_the_pair_that_ends_last_is_shown() -> None:
    """An old pair of another foot waits in its part."""
    old = [f"2025-{month:02}-01-left-fore-sole-after" for month in (1, 12)]
    new = [f"2026-{month:02}-01-right-hind-sole-after" for month in (8, 9)]

    assert chosen(*old, *new) == new
