"""The panels through time: growing, trimming, gaps, axes and events."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from datetime import date, timedelta
from itertools import pairwise

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event, EventKind
from recordgen.pictures.charts.axes import (
    FONT_SIZE,
    WIDTH,
    Axes,
    day_ticks,
    scale_about_zero,
    shared_scale,
    shared_span,
    value_ticks,
)
from recordgen.pictures.charts.events import event_key, marks_of, rows_of
from recordgen.pictures.charts.through_time import angle_panel, difference_panel, toe_length_panel
from recordgen.records.models.names import Foot
from tests.support.svg import group_titled, root_of, strokes_of, words_in

SPAN = (date(2026, 1, 1), date(2026, 12, 31))
SCALE = (70.0, 100.0)
FRAME = Axes(SPAN, SCALE)
FIRST, SECOND, THIRD = date(2026, 2, 1), date(2026, 3, 15), date(2026, 4, 26)
VISITS = [Reading(FIRST, 88, 80), Reading(SECOND, 90, 81), Reading(THIRD, 91, 79)]
CLIMB, DROP, DOTTED = "1.9", "0.9", "1,2.6"


def panel(readings: Sequence[Reading] = VISITS, foot: Foot = "left_fore", events: Sequence[Event] = ()) -> str:
    """A toe length panel on fixed axes."""
    return toe_length_panel(foot, readings, events, SPAN, SCALE, "toe length")


def drops(picture: str) -> list[list[tuple[float, float]]]:
    """The strokes that tell of a trim."""
    return strokes_of(picture, stroke_width=DROP)


def climbs(picture: str) -> list[list[tuple[float, float]]]:
    """The strokes that tell of growing."""
    return strokes_of(picture, stroke_width=CLIMB)


def value_at(y: float) -> float:
    """The value that stands at a height of the panel."""
    low, high = SCALE
    return low + (FRAME.bottom - y) / (FRAME.bottom - FRAME.top) * (high - low)


def test_each_trim_is_a_vertical_drop_as_tall_as_what_was_trimmed() -> None:
    """Three trims of 8, 9 and 12 mm are three upright strokes of those heights."""
    strokes = drops(panel())

    assert [start[0] for start, _ in strokes] == [end[0] for _, end in strokes]
    assert [value_at(start[1]) - value_at(end[1]) for start, end in strokes] == pytest.approx([8, 9, 12], abs=0.05)


def test_the_wall_climbs_from_after_one_trim_to_before_the_next() -> None:
    """Growing runs from 80 to 90 and from 81 to 91 mm."""
    strokes = climbs(panel())

    assert [(value_at(a[1]), value_at(b[1])) for a, b in strokes] == [
        pytest.approx((80, 90), abs=0.05),
        pytest.approx((81, 91), abs=0.05),
    ]


def test_visits_may_come_in_any_order() -> None:
    """A picture shows the same history however its visits are listed."""
    assert panel(VISITS[::-1]) == panel(VISITS)


@pytest.mark.parametrize(
    ("second", "grown", "trimmed", "unknown"),
    [
        (Reading(SECOND, None, 81), 1, 2, 1),
        (Reading(SECOND, 90, None), 1, 2, 1),
        (Reading(SECOND, None, None), 1, 2, 0),
    ],
)
def test_a_gap_is_dotted_or_left_out_and_never_filled_in(
    second: Reading, grown: int, trimmed: int, unknown: int
) -> None:
    """Where a value is missing no growing and no trim is drawn from it."""
    picture = panel([VISITS[0], second, VISITS[2]])

    assert len(climbs(picture)) == grown
    assert len(drops(picture)) == trimmed
    assert len(strokes_of(picture, stroke_dasharray=DOTTED)) == unknown


def test_one_reading_is_one_point() -> None:
    """A first visit measured only after the trim is a point and no line."""
    picture = panel([Reading(FIRST, None, 80)])

    assert (climbs(picture), drops(picture)) == ([], [])
    assert strokes_of(picture, stroke_linecap="round") == [[pytest.approx(FRAME.at(FIRST, 80), abs=0.051)] * 2]


@pytest.mark.parametrize("readings", [[], [Reading(FIRST, None, None)]])
def test_nothing_measured_is_no_picture(readings: list[Reading]) -> None:
    """An empty axis would only look like a fault: the page says so in words instead."""
    with pytest.raises(ValueError, match="no reading to draw"):
        panel(readings)


@pytest.mark.parametrize(("foot", "dashed"), [("left_fore", 0), ("right_fore", 2), ("left_hind", 0), ("right_hind", 2)])
def test_right_feet_are_dashed(foot: Foot, dashed: int) -> None:
    """The side is told by the line, not by its colour."""
    assert len(strokes_of(panel(foot=foot), stroke_dasharray="4,2.4")) == dashed


@pytest.mark.parametrize(("foot", "hollow"), [("left_fore", 0), ("right_fore", 0), ("left_hind", 3), ("right_hind", 3)])
def test_hind_feet_have_hollow_points(foot: Foot, hollow: int) -> None:
    """Fore or hind is told by the point, not by its colour."""
    assert len(strokes_of(panel(foot=foot), stroke="var(--card)")) == hollow


def test_text_is_large_enough_on_the_narrowest_panel() -> None:
    """At 260 CSS pixels wide the text is 11 pixels or more."""
    assert float(root_of(panel()).attrib["font-size"]) == FONT_SIZE
    assert FONT_SIZE * 260 / WIDTH >= 11


def test_events_tell_their_day_and_words() -> None:
    """Pointing at a mark shows what happened, as it was typed."""
    picture = panel(events=[Event(FIRST, "feed", "hay & <b>oats</b> $5")])

    assert group_titled(picture, "1 Feb 2026: hay & <b>oats</b> $5") is not None


def test_near_events_of_one_kind_share_a_mark_and_others_stand_above_each_other() -> None:
    """Three kinds on one day stand in three rows; two of a kind a day apart are one mark."""
    kinds: tuple[EventKind, ...] = ("feed", "boots", "vet")
    events = [Event(FIRST, kind, kind) for kind in kinds] + [Event(FIRST + timedelta(1), "vet", "again")]
    marks = marks_of(events, FRAME)

    assert [len(shared) for _, _, shared in marks] == [1, 1, 2]
    assert rows_of(marks) == [0, 1, 2]


def test_each_kind_of_event_has_a_form_of_its_own() -> None:
    """The legend's pictures differ in form, and each is named."""
    key = event_key({"feed": "feed changed", "boots": "boots", "vet": "vet"})

    assert len({str(strokes_of(picture)) for picture in key.values()}) == 3
    assert root_of(key["feed"])[0].text == "feed changed"


def test_angles_are_joined_after_and_ticked_before() -> None:
    """The line runs through the readings after each trim; a level tick marks each one before it."""
    picture = angle_panel("left_fore", [Reading(FIRST, 48, 51), Reading(SECOND, 49, 51.5)], (), SPAN, (45, 55), "angle")

    assert [len(stroke) for stroke in climbs(picture)] == [2]
    assert all(start[1] == end[1] for start, end in strokes_of(picture, opacity="0.6"))
    assert "°" in words_in(picture)


def test_the_error_band_lies_evenly_about_zero() -> None:
    """The band spans the measuring error to both sides of the zero line, and both sides are named."""
    picture = difference_panel(
        "left_hind", [Reading(FIRST, 4, 1)], (), SPAN, (-10, 10), "heels", ("outer higher", "inner higher"), 2.0
    )
    (band,) = strokes_of(picture, fill="var(--moss)")
    (zero,) = strokes_of(picture, stroke="var(--quiet)", stroke_width="1.2")

    assert (band[0][1] + band[2][1]) / 2 == pytest.approx(zero[0][1], abs=0.1)
    assert {"outer higher", "inner higher"} <= set(words_in(picture))


def test_shared_axes_hold_every_value_and_day() -> None:
    """Four feet share round limits with room around the values, and every visit lies inside the span."""
    feet: dict[Foot, list[Reading]] = {"left_fore": VISITS, "right_hind": [Reading(date(2026, 6, 1), None, 74)]}
    low, high = shared_scale(feet)
    first, last = shared_span(feet, [Event(date(2025, 12, 1), "vet", "x")])

    assert (low, high) == (70, 95)
    assert first < date(2025, 12, 1) < date(2026, 6, 1) < last
    assert scale_about_zero({"left_fore": [Reading(FIRST, 4, -7)]}, 2.0) == (-8, 8)


def test_nothing_has_no_axes() -> None:
    """Without a reading there is neither scale nor span."""
    with pytest.raises(ValueError, match="scale"):
        shared_scale({"left_fore": []})
    with pytest.raises(ValueError, match="span"):
        shared_span({"left_fore": []})


@pytest.mark.parametrize(
    ("first", "last", "labels"),
    [
        (date(2026, 3, 2), date(2026, 3, 2), ["2 Mar 2026"]),
        (date(2026, 3, 2), date(2026, 3, 16), ["2 Mar 2026", "9 Mar", "16 Mar"]),
        (date(2026, 3, 2), date(2026, 6, 22), ["Apr 2026", "May", "Jun"]),
        (date(2024, 8, 10), date(2026, 9, 10), ["2025", "Jul", "2026", "Jul"]),
        (date(2016, 1, 1), date(2026, 3, 1), ["2016", "2018", "2020", "2022", "2024", "2026"]),
    ],
)
def test_days_are_labelled_by_weeks_months_or_years(first: dt.date, last: dt.date, labels: list[str]) -> None:
    """Short and long histories both have a few labels, and a year is always among them."""
    assert [words for _, words in day_ticks((first, last))] == labels


@pytest.mark.parametrize("reach", [*range(0, 400, 7), *range(400, 9000, 97)])
def test_labels_of_days_never_touch(reach: int) -> None:
    """However long the history, two labels stand further apart than they are wide."""
    span = (date(2019, 2, 20), date(2019, 2, 20) + timedelta(reach))
    ticks = [(Axes(span, SCALE).x(day), 6.7 * len(words) / 2) for day, words in day_ticks(span)]

    assert ticks
    assert all(a + half < b - other for (a, half), (b, other) in pairwise(ticks))


def test_values_are_labelled_in_round_numbers() -> None:
    """A scale has two to five round values."""
    assert value_ticks((70, 100)) == [70, 80, 90, 100]
    assert value_ticks((-10, 10)) == [-10, -5, 0, 5, 10]
