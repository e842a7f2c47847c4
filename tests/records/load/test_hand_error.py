"""The hand error of a practice, and how an editor sees a point."""

from pathlib import Path

import pytest

from tests.support.practice_folders import FILES, practice, told
from tests.support.schema import complaints
from tests.support.tracing_text import text


def test_a_practice_may_tell_the_error_of_its_hand(tmp_path: Path) -> None:
    """In px at an image 1000 px wide."""
    found = practice(tmp_path, {"practice.yaml": FILES["practice.yaml"] + "hand_error: 2.5\n"})

    assert found.file.hand_error == 2.5


def test_an_impossible_error_of_the_hand_is_told(tmp_path: Path) -> None:
    """At its line."""
    (line,) = told(tmp_path, {"practice.yaml": FILES["practice.yaml"] + "hand_error: 0\n"})

    assert line.startswith("practice.yaml:3:1: error: hand_error: 0 is not possible; 0.1 to 30 px is.")


@pytest.mark.parametrize("point", ["[800]", "[800, 612, 1]", "[800, low]", "middle"])
def test_an_editor_underlines_a_point_that_is_not_two_numbers(point: str) -> None:
    """A point is an array of two numbers."""
    (place,) = complaints(text(f"frog_apex: {point}"))

    assert place.startswith("feet/left_fore/tracings/0/frog_apex")
