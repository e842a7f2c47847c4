"""Words under a line: near their places, in order, never touching each other or a line that leads to another."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from recordgen.pictures.labels_below import (
    ASCENT,
    DESCENT,
    FIRST_LINE,
    LINES_APART,
    Placed,
    leader_form,
    placed_below,
    room_below,
    spread,
)

ROOM = (1.0, 279.0)
MONTHS = ["May 2027", "March 2027", "September 2027", "soon", "in the spring of 2028"]
LABELS = st.lists(st.tuples(st.floats(8, 272), st.sampled_from(MONTHS)), min_size=1, max_size=8)


def boxes(placed: list[Placed]) -> list[tuple[float, ...]]:
    """The room of each label's words, the line at height 0."""
    heights = [FIRST_LINE + LINES_APART * (len(label.middles) - 1) for label in placed]
    return [(*label.ends, y - ASCENT, y + DESCENT) for label, y in zip(placed, heights, strict=True)]


def test_a_label_with_room_stands_under_its_place() -> None:
    """One label is not moved and its line is upright."""
    (label,) = placed_below([(100, "March 2027")], ROOM, 12)

    assert label.middles == (100,)
    assert {x for x, _ in leader_form(label, 0).points} == {100}


def test_labels_apart_share_one_line() -> None:
    """Labels that fit side by side near their places take no second line."""
    placed = placed_below([(40, "March 2027"), (150, "May 2027"), (240, "May 2027")], ROOM, 12)

    assert [len(label.middles) for label in placed] == [1, 1, 1]


def test_labels_at_one_place_are_staggered() -> None:
    """Two labels at one place stand one below the other rather than far aside."""
    placed = placed_below([(140, "March 2027"), (142, "September 2027")], ROOM, 12)

    assert [len(label.middles) for label in placed] == [1, 2]


def test_nothing_to_write_takes_no_room() -> None:
    """Neither no labels nor empty ones are placed."""
    assert placed_below([], ROOM, 12) == placed_below([(10, "")], ROOM, 12) == []
    assert room_below([]) == 0


def test_a_label_wider_than_the_room_is_shortened() -> None:
    """Even then it stays on the sheet."""
    (label,) = placed_below([(10, "a" * 80)], ROOM, 12)

    assert label.words.endswith("…")
    assert ROOM[0] <= label.ends[0] < label.ends[1] <= ROOM[1]


@settings(deadline=None)
@given(LABELS)
def test_labels_never_touch_and_never_leave_the_room(labels: list[tuple[float, str]]) -> None:
    """However many labels crowd together, their words stand clear of each other and on the sheet."""
    found = boxes(placed_below(labels, ROOM, 12))
    pairs = [(a, b) for number, a in enumerate(found) for b in found[number + 1 :]]

    assert len(found) == len(labels)
    assert all(ROOM[0] - 1e-6 <= left and right <= ROOM[1] + 1e-6 for left, right, _, _ in found)
    assert not [(a, b) for a, b in pairs if a[0] < b[1] and b[0] < a[1] and a[2] < b[3] and b[2] < a[3]]


@settings(deadline=None)
@given(LABELS)
def test_a_leader_never_crosses_other_words(labels: list[tuple[float, str]]) -> None:
    """On every line that it passes a leader runs beside the words that stand there."""
    placed = placed_below(labels, ROOM, 12)
    passing = [(x, number, label) for label in placed for number, x in enumerate(label.middles[:-1])]
    standing = [(len(label.middles) - 1, *label.ends) for label in placed]

    assert not [1 for x, number, _ in passing for line, left, right in standing if line == number and left < x < right]


@settings(deadline=None)
@given(LABELS)
def test_a_leader_ends_above_its_own_words(labels: list[tuple[float, str]]) -> None:
    """The line from a place leads to the words of that place."""
    for label in placed_below(labels, ROOM, 12):
        assert label.ends[0] <= leader_form(label, 0).points[-1][0] <= label.ends[1]


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0, 100), st.floats(1, 10)), min_size=1, max_size=6))
def test_spreading_keeps_order_and_distance(items: list[tuple[float, float]]) -> None:
    """Spread labels keep their order and the gap, and do not leave the room."""
    ordered = sorted(items)
    widths = [width for _, width in ordered]
    middles = spread([x for x, _ in ordered], widths, (0, 100))
    edges = [(m - w / 2, m + w / 2) for m, w in zip(middles, widths, strict=True)]

    assert edges[0][0] >= -1e-6
    assert edges[-1][1] <= 100 + 1e-6
    assert all(b[0] - a[1] >= 5 - 1e-6 for a, b in pairwise(edges))


def test_spreading_is_alike_on_both_sides() -> None:
    """Three in one place are moved evenly to the left and to the right."""
    assert spread([50, 50, 50], [10, 10, 10], (0, 100)) == pytest.approx([35, 50, 65])
