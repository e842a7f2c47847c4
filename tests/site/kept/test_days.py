"""A finished page on another day: what names the day is said again, and nothing else is touched."""

from __future__ import annotations

from recordgen.site.kept.days import as_text, from_text, say_again
from recordgen.site.model import DatedPart, Placed

SOONER, LATER = DatedPart("dated/a.html", '{"of": 1}'), DatedPart("dated/b.html", "{}")
FILE = "<p>ü 1 day</p><p>1 day, Monday</p>".encode()
PLACED = [Placed(6, 11, SOONER), Placed(18, 23, SOONER), Placed(25, 31, LATER)]
WORDS = {SOONER: "zehn Tage", LATER: "Dienstag für alle"}


def test_each_part_is_said_once_and_stands_in_all_its_places() -> None:
    """Whether it grew longer or shorter."""
    asked: list[DatedPart] = []
    file, placed = say_again(FILE, PLACED, lambda part: (asked.append(part), WORDS[part])[1])

    assert file.decode() == "<p>ü zehn Tage</p><p>zehn Tage, Dienstag für alle</p>"
    assert [file[one.start : one.end].decode() for one in placed] == [WORDS[one.part] for one in PLACED]
    assert sorted(asked, key=lambda part: part.template) == [SOONER, LATER]


def test_said_again_as_before_it_is_the_same_file() -> None:
    """Forth and back again."""
    there, moved = say_again(FILE, PLACED, WORDS.__getitem__)
    back = say_again(there, moved, lambda part: "1 day" if part == SOONER else "Monday")

    assert back == (FILE, PLACED)


def test_parts_are_kept_as_they_are() -> None:
    """Their places, templates and values."""
    assert from_text(as_text(PLACED)) == PLACED
