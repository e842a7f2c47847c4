"""The panels through time: growing, trimming, gaps, axes and events."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Sequence
from datetime import date, timedelta

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event, EventKind
from recordgen.language.quantities import Quantities
from recordgen.pictures.charts.day_mark import day_mark, with_mark
from recordgen.pictures.charts.events import event_key, marks_of, rows_of
from recordgen.pictures.charts.limits import scale_about_zero, shared_scale, shared_span
from recordgen.pictures.charts.panel import Frame, panel_view
from recordgen.pictures.charts.panel_size import BOTTOM, HEIGHT, LEFT, RIGHT, TOP, WIDTH
from recordgen.pictures.charts.through_time import angle_panel, difference_panel, toe_length_panel
from recordgen.records.models.names import Foot
from recordgen.units import UNITS
from tests.conftest import ROOT
from tests.support.svg import SVG, group_titled, is_figure, root_of, strokes_of, value_at, words_in
from tests.support.text_boxes import outside, touching

SPAN = (date(2026, 1, 1), date(2026, 12, 31))
SCALE = (70.0, 100.0)
FIRST, SECOND, THIRD = date(2026, 2, 1), date(2026, 3, 15), date(2026, 4, 26)
VISITS = [Reading(FIRST, 88, 80), Reading(SECOND, 90, 81), Reading(THIRD, 91, 79)]
CLIMB, DROP, DOTTED = "1.7", "0.9", "1,2.6"


def panel(readings: Sequence[Reading] = VISITS, foot: Foot = "left_fore", events: Sequence[Event] = ()) -> str:
    """A toe length panel on fixed axes."""
    return toe_length_panel(foot, readings, events, SPAN, SCALE, "toe length")


def drops(picture: str) -> list[list[tuple[float, float]]]:
    """The strokes that tell of a trim."""
    return strokes_of(picture, stroke_width=DROP)


def climbs(picture: str) -> list[list[tuple[float, float]]]:
    """The strokes that tell of growing."""
    return strokes_of(picture, stroke_width=CLIMB)


def across(day: date) -> float:
    """Where a day stands from left to right."""
    return LEFT + (RIGHT - LEFT) * (day - SPAN[0]).days / (SPAN[1] - SPAN[0]).days


def test_each_trim_is_a_vertical_drop_as_tall_as_what_was_trimmed() -> None:
    """Three trims of 8, 9 and 12 mm are three upright strokes of those heights."""
    picture = panel()
    strokes = drops(picture)

    assert [start[0] for start, _ in strokes] == [end[0] for _, end in strokes]
    assert [value_at(picture, a[1]) - value_at(picture, b[1]) for a, b in strokes] == pytest.approx([8, 9, 12], abs=0.1)


def test_the_wall_climbs_from_after_one_trim_to_before_the_next() -> None:
    """Growing runs from 80 to 90 and from 81 to 91 mm."""
    picture = panel()

    assert [(value_at(picture, a[1]), value_at(picture, b[1])) for a, b in climbs(picture)] == [
        pytest.approx((80, 90), abs=0.1),
        pytest.approx((81, 91), abs=0.1),
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
    (point,) = strokes_of(picture, stroke_linecap="round")
    assert point[0] == point[1]
    assert point[0][0] == pytest.approx(across(FIRST), abs=0.051)
    assert value_at(picture, point[0][1]) == pytest.approx(80, abs=0.1)


@pytest.mark.parametrize("readings", [[], [Reading(FIRST, None, None)]])
def test_nothing_measured_is_no_picture(readings: list[Reading]) -> None:
    """An empty axis would only look like a fault: the page says so in words instead."""
    with pytest.raises(ValueError, match="no reading to draw"):
        panel(readings)


@pytest.mark.parametrize(("foot", "dashed"), [("left_fore", 0), ("right_fore", 2), ("left_hind", 0), ("right_hind", 2)])
def test_right_feet_are_dashed(foot: Foot, dashed: int) -> None:
    """The side is told by the line, not by its colour."""
    assert len(strokes_of(panel(foot=foot), stroke_dasharray="3.4,1.8")) == dashed


@pytest.mark.parametrize(("foot", "hollow"), [("left_fore", 0), ("right_fore", 0), ("left_hind", 3), ("right_hind", 3)])
def test_hind_feet_have_hollow_points(foot: Foot, hollow: int) -> None:
    """Fore or hind is told by the point, not by its colour."""
    assert len(strokes_of(panel(foot=foot), stroke="var(--card)")) == hollow


def test_words_are_readable_and_no_larger_than_the_text_around_them() -> None:
    """Two abreast on a phone words are 11 CSS pixels or more; the page lets no panel be so wide that they pass 16."""
    css = (ROOT / "site_templates/styles/recordgen.css").read_text("utf-8")
    (widest,) = map(float, re.findall(r"svg\.picture:is\(\.panel, \.foot\) \{ max-width: (\d+)px", css))

    assert root_of(panel()).attrib["class"] == "picture panel"
    assert float(root_of(panel()).attrib["font-size"]) * 160 / WIDTH >= 11
    assert float(root_of(panel()).attrib["font-size"]) * widest / WIDTH <= 16


def test_today_is_marked_and_named() -> None:
    """A line across all values stands at today with its word above it."""
    picture = with_mark(panel(), day_mark(SPAN, date(2026, 9, 1), "today"))
    (line,) = strokes_of(picture, stroke="var(--clay)")
    (word,) = [text for text in root_of(picture).iter(f"{SVG}text") if text.text == "today"]

    assert [x for x, _ in line] == pytest.approx([across(date(2026, 9, 1))] * 2, abs=0.1)
    assert sorted(y for _, y in line) == pytest.approx([TOP, BOTTOM], abs=0.1)
    assert float(word.attrib["x"]) == pytest.approx(line[0][0], abs=0.1)


def test_a_low_panel_shows_the_same_on_less_height() -> None:
    """Days stand where they stood, values keep their distances in proportion."""
    usual, low = panel(), toe_length_panel("left_fore", VISITS, (), SPAN, SCALE, "toe length", low=True)

    assert float(root_of(low).attrib["viewBox"].split()[3]) < HEIGHT
    assert [[x for x, _ in drop] for drop in drops(low)] == [[x for x, _ in drop] for drop in drops(usual)]
    assert [value_at(low, a[1]) - value_at(low, b[1]) for a, b in drops(low)] == pytest.approx([8, 9, 12], abs=0.2)


def test_a_panel_does_not_tell_what_was_drawn_before_it() -> None:
    """Axes are reused: the same panel has the same bytes whatever stood on them in between."""
    first = panel(events=[Event(FIRST, "vet", "seen")])
    toe_length_panel("right_hind", VISITS, (), SPAN, (60, 120), "t", low=True)
    day_mark((FIRST, SECOND), SECOND, "now")
    difference_panel("left_hind", VISITS, (), SPAN, (-9, 95), "heels", ("a", "b"), 2.0)

    assert panel(events=[Event(FIRST, "vet", "seen")]) == first


def test_events_tell_their_day_and_words() -> None:
    """Pointing at a mark shows what happened, as it was typed."""
    picture = panel(events=[Event(FIRST, "feed", "hay & <b>oats</b> $5")])

    assert group_titled(picture, "1 Feb 2026: hay & <b>oats</b> $5") is not None


def test_near_events_of_one_kind_share_a_mark_and_others_stand_above_each_other() -> None:
    """Three kinds on one day stand in three rows; two of a kind a day apart are one mark."""
    kinds: tuple[EventKind, ...] = ("feed", "boots", "vet")
    events = [Event(FIRST, kind, kind) for kind in kinds] + [Event(FIRST + timedelta(1), "vet", "again")]
    marks = marks_of(events, SPAN)

    assert [len(shared) for _, _, shared in marks] == [1, 1, 2]
    assert rows_of(marks, SPAN) == [0, 1, 2]


def test_each_kind_of_event_has_a_form_of_its_own() -> None:
    """The legend's pictures differ in form, and each is named."""
    key = event_key({"feed": "feed changed", "boots": "boots", "vet": "vet"})

    assert len({str(strokes_of(picture)) for picture in key.values()}) == 3
    assert root_of(key["feed"])[0].text == "feed changed"


def test_angles_are_joined_after_and_ticked_before() -> None:
    """The line runs through the readings after each trim; a level tick marks each one before it."""
    picture = angle_panel("left_fore", [Reading(FIRST, 48, 51), Reading(SECOND, 49, 51.5)], (), SPAN, (45, 55), "angle")

    assert [len(stroke) for stroke in climbs(picture)] == [2]
    ticks = strokes_of(picture, stroke="var(--lf)", stroke_width="1.3")
    assert len(ticks) == 2
    assert all(start[1] == end[1] for start, end in ticks)
    assert "°" in words_in(picture)


@pytest.mark.parametrize("low", [False, True])
def test_angles_stay_degrees_where_lengths_are_inches(low: bool) -> None:
    """Their axis is no rule, also where the page tells the unit."""
    readings = [Reading(FIRST, 48, 51), Reading(SECOND, 49, 51.5)]
    inches = Quantities(units=UNITS["inches"])
    picture, metric = (
        angle_panel("left_fore", readings, (), SPAN, (45, 55), "angle", low=low, written=one)
        for one in (inches, Quantities())
    )

    assert "50" in words_in(picture)
    assert words_in(picture) == words_in(metric)


def test_the_error_band_lies_evenly_about_zero() -> None:
    """The band spans the measuring error to both sides of the zero line, and both sides are named."""
    picture = difference_panel(
        "left_hind", [Reading(FIRST, 4, 1)], (), SPAN, (-10, 10), "heels", ("outer higher", "inner higher"), 2.0
    )
    (band,) = strokes_of(picture, fill="var(--moss)")
    (zero,) = strokes_of(picture, stroke="var(--quiet)", stroke_width="1.2")
    edges = strokes_of(picture, stroke="var(--moss)")

    assert (band[0][1] + band[2][1]) / 2 == pytest.approx(zero[0][1], abs=0.1)
    assert {edge[0][1] for edge in edges} == {band[0][1], band[2][1]}


def test_the_sides_of_zero_are_named_at_the_side_of_the_picture() -> None:
    """Outer stands beside the upper half and inner beside the lower one, right of all drawn; no sign is left."""
    picture = difference_panel("left_hind", [Reading(FIRST, 4, 1)], (), SPAN, (-10, 10), "heels", ("up", "down"), 2.0)
    places = {
        str(text.text): (float(text.attrib["x"]), float(text.attrib["y"]))
        for text in root_of(picture).iter(f"{SVG}text")
    }
    furthest = max(x for stroke in strokes_of(picture) for x, _ in stroke)

    assert furthest < places["up"][0] == places["down"][0]
    assert TOP < places["up"][1] < (TOP + BOTTOM) / 2 < places["down"][1] < BOTTOM
    assert sorted(words for words in places if is_figure(words)) == ["0", "10"]


def test_shared_axes_hold_every_value_and_day() -> None:
    """Four feet share limits with room around the values, and every visit lies inside the span."""
    feet: dict[Foot, list[Reading]] = {"left_fore": VISITS, "right_hind": [Reading(date(2026, 6, 1), None, 74)]}
    low, high = shared_scale(feet)
    first, last = shared_span(feet, [Event(date(2025, 12, 1), "vet", "x")])

    assert 71 < low < 74
    assert 91 < high < 94
    assert first < date(2025, 12, 1) < date(2026, 6, 1) < last
    assert scale_about_zero({"left_fore": [Reading(FIRST, 4, -7)]}, 2.0) == (-7.28, 7.28)


def test_nothing_has_no_axes() -> None:
    """Without a reading there is neither scale nor span."""
    with pytest.raises(ValueError, match="scale"):
        shared_scale({"left_fore": []})
    with pytest.raises(ValueError, match="span"):
        shared_span({"left_fore": []})


def frame_of(first: dt.date, last: dt.date, sides: tuple[str, str] | None = None) -> str:
    """The frame of a panel over these days, as one picture."""
    drawn = panel_view(Frame((first, last), (70, 100), "mm", sides=sides)).elements()
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" font-size="12">{drawn}</svg>'


@pytest.mark.parametrize(
    ("first", "last", "labels"),
    [
        (date(2026, 3, 2), date(2026, 6, 22), ["May ’26"]),
        (date(2025, 11, 2), date(2026, 6, 22), ["2026", "Mar", "May"]),
        (date(2024, 8, 10), date(2026, 9, 10), ["2025", "2026"]),
        (date(2016, 1, 1), date(2026, 3, 1), ["2020", "2025"]),
    ],
)
def test_days_are_labelled_by_months_or_years(first: dt.date, last: dt.date, labels: list[str]) -> None:
    """Short and long histories both have a few labels, and a year is always among them."""
    days = [words for words in words_in(frame_of(first, last)) if words != "mm" and not is_figure(words)]

    assert days == labels


@pytest.mark.parametrize("sides", [None, ("outer higher", "inner higher")])
@pytest.mark.parametrize("reach", [*range(112, 900, 31), *range(900, 9000, 397)])
def test_words_of_a_frame_never_touch_and_stay_on_the_sheet(reach: int, sides: tuple[str, str] | None) -> None:
    """However long the history, labels stand apart, measured in a font wider than most."""
    first = date(2019, 2, 20)
    picture = frame_of(first, first + timedelta(reach), sides)

    assert len(words_in(picture)) > 4
    assert touching(picture) == []
    assert outside(picture) == []


@pytest.mark.parametrize(
    ("scale", "values"), [((68, 93), ["70", "80", "90"]), ((-7.3, 7.3), ["−5", "0", "5"]), ((49, 58), ["50", "55"])]
)
def test_values_are_labelled_in_round_numbers(scale: tuple[float, float], values: list[str]) -> None:
    """A scale has two to four round values, with a true minus sign."""
    drawn = panel_view(Frame(SPAN, scale, "mm")).elements()

    assert [
        words for words in words_in(f'<svg xmlns="http://www.w3.org/2000/svg">{drawn}</svg>') if is_figure(words)
    ] == values
