"""The coming weeks of a stable: windows, rounds, days off."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Any

import pytest

from recordgen.pictures.cache import PictureCache
from recordgen.pictures.charts.due_windows import STUB, DayColumns, WeekForm, free_days
from recordgen.pictures.charts.weeks_ahead import RIGHT, WIDTH, WeekRow, week_key, weeks_ahead
from tests.support.svg import SVG, group_titled, middle_of, points_of, root_of, strokes_of, words_in
from tests.support.text_boxes import outside, touching

FIRST, LAST, TODAY = date(2026, 11, 23), date(2027, 1, 17), date(2026, 11, 25)
BRAMBLE = WeekRow("Bramble", date(2026, 12, 2), date(2026, 12, 9), date(2026, 12, 18), None)
OTTER = WeekRow("Otter", date(2026, 10, 20), date(2026, 10, 30), date(2026, 11, 12), None)
CLAY, MOSS, INK = "var(--clay)", "var(--moss)", "var(--ink)"


def drawn(
    *rows: WeekRow,
    first: dt.date = FIRST,
    last: dt.date = LAST,
    rounds: Sequence[dt.date] = (),
    today: dt.date = TODAY,
    off: Sequence[tuple[dt.date, dt.date]] = (),
    labels: dict[str, str] | None = None,
) -> str:
    """The weeks of some horses."""
    return weeks_ahead(rows, first, last, rounds, today, off, labels or {}, "weeks")


def columns(picture: str, first: dt.date = FIRST, last: dt.date = LAST) -> DayColumns:
    """The days as the picture lays them out, told by its axis."""
    axes = [stroke for stroke in strokes_of(picture, stroke="var(--quiet)", stroke_width="0.8") if len(stroke) == 2]
    (left, bottom), (right, _) = max(axes, key=lambda stroke: stroke[1][0] - stroke[0][0])
    return DayColumns(first, last, left, right, 0, bottom)


def bar_of(picture: str, name: str, fill: str = MOSS) -> tuple[float, float]:
    """The leftmost and the rightmost place of a row's window."""
    paths = [path for path in group_titled(picture, name).iter(f"{SVG}path") if path.attrib.get("fill-opacity")]
    (points,) = [points_of(path.attrib["d"]) for path in paths if path.attrib["fill"] == fill]
    return min(x for x, _ in points), max(x for x, _ in points)


def best_of(picture: str, name: str) -> list[list[tuple[float, float]]]:
    """The block of a row's best day."""
    paths = [path for path in group_titled(picture, name).iter(f"{SVG}path") if path.attrib.get("fill") == MOSS]
    return [points_of(path.attrib["d"]) for path in paths if "fill-opacity" not in path.attrib]


def flags(picture: str) -> list[float]:
    """Where flags stand, left to right."""
    return sorted(stroke[0][0] for stroke in strokes_of(picture, fill=INK, stroke=INK))


def test_a_window_reaches_from_its_earliest_to_its_latest_day() -> None:
    """The bar takes the whole of both days."""
    picture = drawn(BRAMBLE)
    days = columns(picture)

    assert bar_of(picture, "Bramble") == (
        pytest.approx(days.start(BRAMBLE.earliest), abs=0.1),
        pytest.approx(days.start(BRAMBLE.latest) + days.width, abs=0.1),
    )


def test_the_best_day_is_a_taller_block_in_the_window() -> None:
    """The block stands in the middle of its day and reaches over the bar."""
    picture = drawn(BRAMBLE)
    (block,) = best_of(picture, "Bramble")
    bar = strokes_of(picture, fill_opacity="0.36")[0]

    assert (block[0][0] + block[1][0]) / 2 == pytest.approx(columns(picture).middle(BRAMBLE.best), abs=0.1)
    assert min(y for _, y in block) < min(y for _, y in bar)


def test_later_days_stand_further_right() -> None:
    """Days follow each other evenly over the whole width."""
    days = columns(drawn(BRAMBLE))
    starts = [days.start(day) for day in days.days]

    assert {round(b - a, 6) for a, b in pairwise(starts)} == {round(days.width, 6)}
    assert starts[-1] + days.width == pytest.approx(RIGHT)


def test_rows_stand_in_the_order_given() -> None:
    """The first horse is on top."""
    names = ["Otter", "Bramble", "Hazel"]
    picture = drawn(*(replace(BRAMBLE, name=name) for name in names))
    heights = [middle_of(group_titled(picture, name))[1] for name in names]

    assert heights == sorted(set(heights))


def test_a_window_that_has_passed_is_an_arrow_at_the_left_edge() -> None:
    """It points left, in the colour of what needs somebody to act, and the name has that colour too."""
    picture = drawn(BRAMBLE, OTTER)
    left, right = bar_of(picture, "Otter", CLAY)
    (arrow,) = strokes_of(picture, fill=CLAY)
    (name,) = [text for text in root_of(picture).iter(f"{SVG}text") if text.text == "Otter"]

    assert (left, right - left) == (pytest.approx(columns(picture).left, abs=0.1), pytest.approx(STUB, abs=0.1))
    assert [x for x, _ in arrow].count(left) == 1
    assert (name.attrib["fill"], best_of(picture, "Otter")) == (CLAY, [])


def test_a_passed_window_in_sight_keeps_its_place() -> None:
    """A window that closed yesterday stands at its days, in the colour of what needs somebody to act."""
    picture = drawn(BRAMBLE, today=BRAMBLE.latest + timedelta(1))
    days = columns(picture)

    assert bar_of(picture, "Bramble", CLAY)[0] == pytest.approx(days.start(BRAMBLE.earliest), abs=0.1)
    assert len(best_of(picture, "Bramble")) == 1


def test_days_waited_since_a_window_are_dotted_to_today() -> None:
    """A window that closed two weeks ago is joined to today; one still open is not."""
    today = date(2026, 12, 21)
    picture = drawn(BRAMBLE, replace(BRAMBLE, name="Hazel", latest=date(2026, 12, 11)), today=today)
    ends = [stroke[1][0] for stroke in strokes_of(picture, stroke_dasharray="0.1,4")]

    assert ends == [pytest.approx(columns(picture).middle(today), abs=0.1)] * 2
    assert strokes_of(drawn(BRAMBLE), stroke_dasharray="0.1,4") == []


def test_a_window_that_goes_on_outside_is_pointed_there() -> None:
    """Windows that began before the first day point left, those that go on after the last one right."""
    picture = drawn(replace(BRAMBLE, earliest=date(2026, 11, 1), latest=date(2027, 3, 1)))
    (bar,) = strokes_of(picture, fill_opacity="0.36")
    left, right = min(x for x, _ in bar), max(x for x, _ in bar)

    assert [sum(x == end for x, _ in bar) for end in (left, right)] == [1, 1]
    assert (left, right) == (pytest.approx(columns(picture).left, abs=0.1), RIGHT)


def test_a_window_wholly_later_is_a_stub_at_the_right_edge() -> None:
    """A horse that is not due in these weeks still has its row."""
    later = replace(BRAMBLE, earliest=date(2027, 2, 1), best=date(2027, 2, 9), latest=date(2027, 2, 20))

    assert bar_of(drawn(later), "Bramble") == (pytest.approx(RIGHT - STUB), RIGHT)


def test_a_planned_visit_is_a_ring_on_its_day() -> None:
    """The ring stands on the row, at the day that is planned; a day outside is not drawn."""
    day = date(2026, 12, 16)
    picture = drawn(replace(BRAMBLE, planned=day))
    ((ring),) = strokes_of(picture, fill="var(--card)")
    outside_day = drawn(replace(BRAMBLE, planned=date(2027, 6, 1)))

    assert (min(x for x, _ in ring) + max(x for x, _ in ring)) / 2 == pytest.approx(
        columns(picture).middle(day), abs=0.2
    )
    assert strokes_of(outside_day, fill="var(--card)") == []


def test_rounds_are_lines_with_a_flag() -> None:
    """Each proposed day has its line once, however often it is named; days outside have none."""
    days = (date(2026, 12, 9), date(2026, 12, 29), date(2026, 12, 9), date(2027, 5, 1))
    picture = drawn(BRAMBLE, rounds=days)
    middle = columns(picture).middle

    assert flags(picture) == [pytest.approx(middle(day), abs=0.1) for day in days[:2]]


def test_weekends_and_days_off_are_shaded_once() -> None:
    """A holiday over a weekend makes one stretch with it, no darker where both meet."""
    days = [FIRST + timedelta(count) for count in range(14)]
    off = [(date(2026, 11, 27), date(2026, 11, 30)), (date(2026, 12, 2), date(2026, 12, 2))]

    assert free_days(days, off) == [
        (date(2026, 11, 27), date(2026, 11, 30)),
        (date(2026, 12, 2), date(2026, 12, 2)),
        (date(2026, 12, 5), date(2026, 12, 6)),
    ]


def test_shaded_days_stand_at_their_days() -> None:
    """The blocks begin with their Saturdays and end with their Sundays."""
    picture = drawn(BRAMBLE, last=date(2026, 12, 6))
    blocks = strokes_of(picture, fill="var(--line)")
    days = columns(picture, last=date(2026, 12, 6))

    assert [block[0][0] for block in blocks] == [
        pytest.approx(days.start(day), abs=0.1) for day in (date(2026, 11, 28), date(2026, 12, 5))
    ]
    assert blocks[0][1][0] - blocks[0][0][0] == pytest.approx(2 * days.width, abs=0.11)


def test_today_is_a_dashed_line_with_its_word() -> None:
    """The word stands above the line where it was given."""
    picture = drawn(BRAMBLE, labels={"today": "today"})
    ((top, bottom),) = strokes_of(picture, stroke_dasharray="2,2.4")

    assert top[0] == bottom[0] == pytest.approx(columns(picture).middle(TODAY), abs=0.1)
    assert "today" in words_in(picture)
    assert strokes_of(drawn(BRAMBLE, today=date(2026, 1, 1)), stroke_dasharray="2,2.4") == []


def test_weeks_are_labelled_with_their_mondays() -> None:
    """A few weeks show every Monday that has room; the label begins where the day does."""
    picture = drawn(BRAMBLE, first=date(2026, 11, 25), last=date(2026, 12, 22))

    texts = {text.text: float(text.attrib["x"]) for text in root_of(picture).iter(f"{SVG}text")}
    start = columns(picture, date(2026, 11, 25), date(2026, 12, 22)).start

    assert list(texts)[:3] == ["30 Nov", "7 Dec", "14 Dec"]
    assert texts["7 Dec"] == pytest.approx(start(date(2026, 12, 7)), abs=0.1)


@pytest.mark.parametrize("reach", [0, 1, 5, 6, 13, 27, 41, 55, 83, 181, 400])
@pytest.mark.parametrize("weekday", range(7))
def test_words_never_touch_or_leave_the_sheet(reach: int, weekday: int) -> None:
    """Whatever day the weeks begin with and however many they are, the words stand clear."""
    first = date(2026, 11, 23) + timedelta(weekday)
    rows = [replace(BRAMBLE, name=f"Wild Mallow Meadow {n}") for n in range(3)]
    picture = drawn(*rows, first=first, last=first + timedelta(reach), today=first, labels={"today": "today"})

    assert touching(picture) == outside(picture) == []
    assert len(words_in(picture)) > len(rows) + 1


@pytest.mark.parametrize("count", [1, 12])
def test_the_sheet_grows_with_the_rows(count: int) -> None:
    """Each row has the same height, and all stay on the sheet."""
    picture = drawn(*(replace(BRAMBLE, name=f"horse {n}") for n in range(count)), rounds=[TODAY])
    width, height = (float(number) for number in root_of(picture).attrib["viewBox"].split()[2:])
    points = [point for path in root_of(picture).iter(f"{SVG}path") for point in points_of(path.attrib["d"])]

    assert height == 35 + 22 * count
    assert all(0 <= x <= width and 0 <= y <= height for x, y in points)


def test_a_single_day_is_a_picture() -> None:
    """The first day may be the last one, and a window may be one day."""
    day = WeekRow("Otter", TODAY, TODAY, TODAY, TODAY)
    picture = drawn(day, first=TODAY, last=TODAY, rounds=[TODAY])
    (block,) = best_of(picture, "Otter")

    assert bar_of(picture, "Otter") == (pytest.approx(columns(picture).left, abs=0.1), RIGHT)
    assert block[1][0] - block[0][0] == pytest.approx(8)
    assert "25 Nov" in words_in(picture)


def test_a_window_of_one_day_is_drawn() -> None:
    """It is as wide as its day."""
    picture = drawn(replace(BRAMBLE, earliest=BRAMBLE.best, latest=BRAMBLE.best))
    left, right = bar_of(picture, "Bramble")

    assert right - left == pytest.approx(columns(picture).width, abs=0.1)


def test_a_long_name_is_cut_and_told_in_full() -> None:
    """The row's group keeps the name as typed."""
    name = "Sir <Marmaduke> of the Glen & Sons"
    picture = drawn(replace(BRAMBLE, name=name))

    assert group_titled(picture, name) is not None
    assert words_in(picture)[-1].endswith("…")


def test_what_cannot_be_drawn_is_refused() -> None:
    """No horse, a window out of order or a last day before the first are told, not drawn."""
    with pytest.raises(ValueError, match="no horse"):
        drawn()
    with pytest.raises(ValueError, match="out of order"):
        replace(BRAMBLE, best=date(2027, 1, 1))
    with pytest.raises(ValueError, match="out of order"):
        drawn(BRAMBLE, first=LAST, last=FIRST)


def test_the_same_weeks_give_the_same_bytes_and_one_name() -> None:
    """Nothing depends on when it was drawn or on the order of rounds, and it can be kept by content."""
    rounds = [date(2026, 12, 9), date(2026, 12, 29)]
    arguments: tuple[Any, ...] = ([BRAMBLE], FIRST, LAST, rounds, TODAY, [(TODAY, TODAY)], {}, "weeks")

    assert drawn(BRAMBLE, rounds=rounds) == drawn(BRAMBLE, rounds=rounds[::-1])
    assert PictureCache(None).drawn(weeks_ahead, *arguments) == weeks_ahead(*arguments)
    assert weeks_ahead(*arguments).count(' id="') == 1
    assert root_of(weeks_ahead(*arguments))[0].text == "weeks"


def test_text_is_large_enough_on_a_phone() -> None:
    """At 320 CSS pixels wide the text is 11 pixels or more."""
    assert float(root_of(drawn(BRAMBLE)).attrib["font-size"]) * 320 / WIDTH >= 11


def test_each_form_has_a_small_picture_named_by_its_words() -> None:
    """A legend holds the forms that have words, and no two alike."""
    words: dict[WeekForm, str] = {
        "window": "window",
        "best": "best day",
        "passed": "passed",
        "planned": "planned",
        "round": "round",
    }
    key = week_key(words)

    assert len({str(strokes_of(picture)) for picture in key.values()}) == 5
    assert root_of(key["best"])[0].text == "best day"
