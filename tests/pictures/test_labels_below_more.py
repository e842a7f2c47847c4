"""The room that words take, and what becomes of words without room."""

from __future__ import annotations

import pytest

from recordgen.pictures.labels_below import shortened, width_of
from tests.support.text_boxes import measured_width

NAMES = [
    "Bramble",
    "left fore",
    "off hind",
    "September 2027",
    "mm a month",
    "Wildgänsle",
    "WILLOW II",
    "30 Nov",
    "Ötzi",
]


@pytest.mark.parametrize("words", NAMES)
def test_the_estimate_is_ample_and_not_wasteful(words: str) -> None:
    """Words are thought to be at least as wide as in a wide font, and at most a quarter more."""
    real = measured_width(words, 12)

    assert real <= width_of(words, 12) <= real * 1.25


def test_letters_of_every_script_have_a_width() -> None:
    """A mark above a letter takes no room of its own; a full-width letter takes all of it."""
    assert width_of("e\N{COMBINING ACUTE ACCENT}", 10) == width_of("e", 10)
    assert width_of("\N{HIRAGANA LETTER A}", 10) == 10
    assert width_of("a\x00", 10) == width_of("a", 10)


def test_words_with_room_are_left_alone() -> None:
    """Text that fits stands as typed."""
    assert shortened("Otter", 60, 12) == "Otter"


def test_words_without_room_end_in_an_ellipsis() -> None:
    """A long name keeps its beginning, no space before the ellipsis, and fits."""
    cut = shortened("Sir Marmaduke of the Glen", 34, 12)

    assert cut == "Sir…"
    assert width_of(cut, 12) <= 34


def test_no_room_at_all_leaves_the_ellipsis() -> None:
    """Even then something tells that there is a name."""
    assert shortened("Otter", 0, 12) == "…"
