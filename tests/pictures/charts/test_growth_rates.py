"""The growth of each foot with its interval, its cycles and what is usual."""

from __future__ import annotations

from dataclasses import replace
from xml.etree.ElementTree import Element

import pytest

from recordgen.pictures.cache import PictureCache
from recordgen.pictures.charts.growth_rates import RateRow, growth_rates, rate_key, stack_levels
from recordgen.pictures.charts.rate_axes import RIGHT, WIDTH
from recordgen.records.models.names import FEET, Foot
from tests.support.svg import SVG, group_titled, middle_of, points_of, root_of, strokes_of, words_in
from tests.support.text_boxes import boxes_of, outside, touching

NAN = float("nan")
USUAL = (4.0, 13.0)
ROW = RateRow("left_fore", "left fore", 7.5, 8.5, 9.5, (8.0, 9.0), ())
FOUR = [
    replace(ROW, foot=foot, label=foot.replace("_", " "), low=6 + n, middle=7 + n, high=9 + n)
    for n, foot in enumerate(FEET)
]
BAR, CAPS, RAIL = "2", "1.5", "1.1"


def drawn(*rows: RateRow) -> str:
    """The rates of some rows on a scale of mm a month."""
    return growth_rates(rows, USUAL, "mm a month", "growth")


def paths(picture: str, label: str) -> list[Element]:
    """The paths of a row with their attributes."""
    return list(group_titled(picture, label).iter(f"{SVG}path"))


def place_of(picture: str, rate: float) -> object:
    """Where a rate stands, by the labels of the axis."""
    ticks = [
        (float(t.text or ""), float(t.attrib["x"]))
        for t in root_of(picture).iter(f"{SVG}text")
        if str(t.text).isdigit()
    ]
    (low, left), (high, right) = ticks[0], ticks[-1]
    return pytest.approx(left + (right - left) * (rate - low) / (high - low), abs=0.2)


def test_the_interval_and_the_estimate_stand_at_their_rates() -> None:
    """The bar runs from 7.5 to 9.5 and the point on it stands at 8.5."""
    picture = drawn(ROW)
    ((start, end),) = strokes_of(picture, stroke_width=BAR)
    ((dot, _),) = strokes_of(picture, stroke_width="8")

    assert [start[0], dot[0], end[0]] == [place_of(picture, rate) for rate in (7.5, 8.5, 9.5)]
    assert start[1] == end[1] == dot[1]


def test_single_cycles_stand_at_their_rates() -> None:
    """Each cycle is a small dot."""
    picture = drawn(ROW)
    places = [stroke[0][0] for stroke in strokes_of(picture, stroke_width="3.6", stroke="var(--lf)")]

    assert places == [place_of(picture, 8), place_of(picture, 9)]


def test_what_was_left_out_is_a_hollow_cross() -> None:
    """An outlier has a form of its own, outlined and not filled with the foot's colour."""
    picture = drawn(replace(ROW, left_out=(3.0,)))
    (cross,) = strokes_of(picture, fill="var(--card)", stroke="var(--quiet)")

    assert (min(x for x, _ in cross) + max(x for x, _ in cross)) / 2 == place_of(picture, 3)


def test_what_is_usual_is_a_band_behind_all_rows() -> None:
    """The band spans the usual range from the first to the last row."""
    picture = drawn(*FOUR)
    (band,) = strokes_of(picture, fill="var(--moss)")

    assert (band[0][0], band[1][0]) == (place_of(picture, 4), place_of(picture, 13))
    assert band[0][1] < min(middle_of(group_titled(picture, row.label))[1] for row in FOUR)
    assert band[2][1] > max(middle_of(group_titled(picture, row.label))[1] for row in FOUR)


def test_rows_stand_in_the_order_given() -> None:
    """The first foot is on top, and a faster one further right."""
    picture = drawn(*FOUR)
    middles = [middle_of(group_titled(picture, row.label)) for row in FOUR]

    assert [y for _, y in middles] == sorted(y for _, y in middles)
    assert words_in(picture).index("left fore") < words_in(picture).index("right hind")


@pytest.mark.parametrize("foot", FEET)
def test_feet_are_told_apart_without_colour(foot: Foot) -> None:
    """Right feet are dashed; hind feet are hollow."""
    picture = drawn(replace(ROW, foot=foot, cycles=()))
    bar = next(path for path in paths(picture, "left fore") if path.attrib["stroke-width"] == BAR)

    assert ("stroke-dasharray" in bar.attrib) == foot.startswith("right")
    assert bool(strokes_of(picture, stroke="var(--card)", stroke_width="4.2")) == foot.endswith("hind")


def test_true_growth_has_a_bar_of_another_kind_below() -> None:
    """Growth by a mark is an open box with a lozenge, lower than the bar of net growth."""
    picture = drawn(replace(ROW, true=(9.0, 10.0, 11.0)), replace(FOUR[1], true=None))
    box, lozenge = strokes_of(picture, stroke_width=RAIL)[0], strokes_of(picture, fill="var(--lf)")[0]

    assert (min(x for x, _ in box), max(x for x, _ in box)) == (place_of(picture, 9), place_of(picture, 11))
    assert (min(x for x, _ in lozenge) + max(x for x, _ in lozenge)) / 2 == place_of(picture, 10)
    assert min(y for _, y in box) > strokes_of(picture, stroke_width=BAR)[0][0][1]
    assert len(strokes_of(picture, stroke_width=RAIL)) == 1


@pytest.mark.parametrize("count", [1, 2, 4, 12])
def test_words_never_touch_or_leave_the_sheet(count: int) -> None:
    """From one row to twelve, with long labels and far values, all words stand clear."""
    rows = [replace(ROW, label=f"right hind foot {n}", left_out=(-2.5, 31.0)) for n in range(count)]
    picture = drawn(*rows)

    assert touching(picture) == outside(picture) == []
    assert len(strokes_of(picture, stroke_width=BAR)) == count


def test_everything_drawn_is_inside_the_sheet() -> None:
    """No value, however far, leaves the plot."""
    picture = drawn(*FOUR, replace(ROW, label="x", low=-4, high=40, cycles=(-5, 41), left_out=(60,), true=(0, 1, 55)))
    height = float(root_of(picture).attrib["viewBox"].split()[3])
    points = [point for path in root_of(picture).iter(f"{SVG}path") for point in points_of(path.attrib["d"])]

    assert all(0 <= x <= WIDTH and 0 <= y <= height for x, y in points)
    assert max(x for x, _ in points) <= RIGHT + 3


def test_a_label_is_shown_and_told_as_typed() -> None:
    """A name with signs of markup stands above its row letter for letter."""
    label = "the <left> hind foot & more"
    picture = drawn(replace(ROW, label=label))

    assert group_titled(picture, label) is not None
    assert label in words_in(picture)


@pytest.mark.parametrize(
    "row",
    [
        replace(ROW, low=9),
        replace(ROW, high=NAN),
        replace(ROW, cycles=(NAN,)),
        replace(ROW, left_out=(float("inf"),)),
        replace(ROW, true=(9, 8, 10)),
    ],
)
def test_what_cannot_be_drawn_is_refused(row: RateRow) -> None:
    """An interval out of order and what is no number are told, not drawn."""
    with pytest.raises(ValueError, match=r"out of order|not a number"):
        drawn(row)


def test_no_row_and_no_range_are_refused() -> None:
    """An empty axis would only look like a fault."""
    with pytest.raises(ValueError, match="no rate"):
        drawn()
    with pytest.raises(ValueError, match="usual"):
        growth_rates([ROW], (5, 4), "mm", "t")


def test_an_interval_without_width_is_drawn() -> None:
    """One value that is low, middle and high still has its point and its end strokes."""
    picture = growth_rates([replace(ROW, low=8, middle=8, high=8, cycles=())], (8, 8), "mm", "t")

    assert len([stroke for stroke in strokes_of(picture, stroke_width=CAPS) if len(stroke) == 2]) == 2
    assert touching(picture) == []


def test_dots_that_would_cover_each_other_stand_above_each_other() -> None:
    """Three alike take three levels, a fourth the topmost, one apart the lowest."""
    assert stack_levels([50, 10, 10, 10, 10], apart=4) == [(10, 0), (10, 1), (10, 2), (10, 2), (50, 0)]


def test_the_same_rates_give_the_same_bytes_and_one_name() -> None:
    """Nothing depends on when it was drawn, and it can be kept by content."""
    assert drawn(*FOUR) == drawn(*FOUR) == PictureCache(None).picture(growth_rates, FOUR, USUAL, "mm a month", "growth")
    assert drawn(*FOUR).count(' id="') == 1


def test_text_is_large_enough_on_a_phone() -> None:
    """At 310 CSS pixels wide the text is 11 pixels or more."""
    assert float(root_of(drawn(ROW)).attrib["font-size"]) * 310 / WIDTH >= 11
    assert {words for words, _ in boxes_of(drawn(ROW))} >= {"left fore", "mm a month"}


def test_each_form_has_a_small_picture_named_by_its_words() -> None:
    """A legend holds the forms that have words, and no two alike."""
    key = rate_key({"net": "net growth", "true": "by a mark", "usual": "usual", "cycle": "one", "left out": "out"})

    assert len({str(strokes_of(picture)) for picture in key.values()}) == 5
    assert root_of(key["net"])[0].text == "net growth"
    assert list(rate_key({"cycle": "one"})) == ["cycle"]
