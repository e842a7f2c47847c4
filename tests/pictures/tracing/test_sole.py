"""Soles as they were traced, to scale."""

from __future__ import annotations

from dataclasses import replace

import pytest

from recordgen.cache.spelling import canonical
from recordgen.pictures.tracing.sole import Extent, TracedSole, extent_of, sole_key, traced_pair, traced_sole
from tests.support.svg import points_of, root_of, strokes_of, words_in
from tests.support.text_boxes import outside, touching
from tests.support.traced_soles import SOLE, WALL

LABELS = {"inner": "inner", "outer": "outer", "bar": "20 mm"}
EXTENT = extent_of([SOLE])


def drawn(sole: TracedSole = SOLE, extent: Extent = EXTENT) -> str:
    """A sole on its sheet."""
    return traced_sole(sole, extent, LABELS, "a sole")


def bar_of(picture: str) -> float:
    """The length of the bar of 20 mm, picture units."""
    ((start, end),) = strokes_of(picture, stroke="var(--ink)", stroke_width="1.6")[:1]
    return end[0] - start[0]


def wall_of(picture: str, number: int = 0) -> list[tuple[float, float]]:
    """The points of the outer edge of one wall."""
    drawn = [stroke for stroke in strokes_of(picture, stroke="var(--ink)", stroke_width="2") if len(stroke) > 2][number]
    # Of a curve each third point is one that it was drawn through.
    return drawn[::3]


def test_the_same_sole_gives_the_same_bytes_and_is_named() -> None:
    """A picture tells its title, and holds one id."""
    assert drawn() == drawn()
    assert root_of(drawn())[0].text == "a sole"
    assert drawn().count(' id="') == 1
    assert canonical(SOLE) == canonical(replace(SOLE))


def test_the_bar_is_twenty_millimetres_of_the_drawing() -> None:
    """A sole 130 mm wide is 6.5 bars wide."""
    across = [x for x, _ in wall_of(drawn())]

    assert (max(across) - min(across)) / bar_of(drawn()) == pytest.approx(130 / 20, rel=0.01)


def test_every_point_of_the_wall_stands_where_it_was_traced() -> None:
    """Toe up, outer side at the right: away from the middle and from the foremost point, by the bar's scale."""
    unit = bar_of(drawn()) / 20
    x, y = next(point for point, traced in zip(wall_of(drawn()), WALL, strict=True) if traced == (0.0, 125.0))

    for point, (across, along) in zip(wall_of(drawn()), WALL, strict=True):
        assert point == pytest.approx((x + across * unit, y + (125 - along) * unit), abs=0.3)


def test_soles_with_one_extent_have_one_scale() -> None:
    """A pony's foot beside a cob's is drawn smaller."""
    small = replace(SOLE, wall=tuple((x / 2, y / 2) for x, y in WALL))
    both = extent_of([SOLE, small])
    widths = [max(x for x, _ in wall_of(drawn(one, both))) - 150 for one in (SOLE, small)]

    assert bar_of(drawn(SOLE, both)) == bar_of(drawn(small, both))
    assert widths[0] == pytest.approx(2 * widths[1], rel=0.01)


def test_the_best_axis_leans_to_the_side_it_is_turned_to() -> None:
    """Five degrees to the outer side: at the toe it stands further right than at the heel; not there without a turn."""
    ((heel, toe),) = strokes_of(drawn(), stroke="var(--moss)", stroke_dasharray="8,4")

    assert (toe[0] - heel[0]) / (heel[1] - toe[1]) == pytest.approx(0.0875, abs=0.002)
    assert strokes_of(drawn(replace(SOLE, best_axis=None)), stroke_dasharray="8,4") == []


def test_what_stands_out_is_shaded_at_its_side() -> None:
    """The flare of the outer quarter is a filled form right of the middle, darker than the wall."""
    (flare,) = strokes_of(drawn(), fill="var(--moss)")

    assert min(x for x, _ in flare) > 150
    assert not strokes_of(drawn(replace(SOLE, flares=())), fill="var(--moss)")


def test_what_was_not_traced_is_not_drawn() -> None:
    """With the wall alone there is neither frog nor white line nor an axis."""
    alone = TracedSole(wall=WALL)

    assert alone.forms == ["wall"]
    assert SOLE.forms == ["wall", "white line", "flare", "bars", "frog", "axis", "best axis", "breakover"]
    assert strokes_of(drawn(alone), stroke="var(--straw)") == []
    assert drawn(TracedSole(frog=SOLE.frog)).startswith("<svg")


@pytest.mark.parametrize("size", [0.5, 1.0, 2.0])
def test_words_stand_clear_on_the_sheet(size: float) -> None:
    """Inner at the left, outer at the right, the bar's words below, for a small pony and a heavy horse."""
    sole = TracedSole(wall=tuple((x * size, y * size) for x, y in WALL))
    picture = drawn(sole, extent_of([sole]))

    assert words_in(picture) == ["inner", "outer", "20 mm"]
    assert (touching(picture), outside(picture)) == ([], [])


def test_everything_drawn_stays_on_the_sheet() -> None:
    """However wide or long, or however far the axis leans."""
    for extent in (EXTENT, Extent(-120, 120, 0, 125), Extent(-65, 65, -60, 200)):
        picture = drawn(replace(SOLE, best_axis=((0.0, 60.0), 19.0)), extent)
        _, _, width, height = map(float, root_of(picture).attrib["viewBox"].split())
        points = [
            point for path in root_of(picture).iter() if "d" in path.attrib for point in points_of(path.attrib["d"])
        ]

        assert all(-0.1 <= x <= width + 0.1 and -0.1 <= y <= height + 0.1 for x, y in points)


def test_a_pair_stands_side_by_side_on_one_scale() -> None:
    """Left foot at the left, both with the inner side at their left, and each under its name."""
    small = replace(SOLE, wall=tuple((x * 0.9, y * 0.9) for x, y in WALL))
    picture = traced_pair({"left fore": SOLE, "right fore": small}, EXTENT, LABELS, "both")
    left, right = ([x for x, _ in wall_of(picture, number)] for number in (0, 1))

    assert words_in(picture) == ["left fore", "inner", "outer", "right fore", "inner", "outer", "20 mm"]
    assert max(left) < min(right)
    assert (max(right) - min(right)) / (max(left) - min(left)) == pytest.approx(0.9, abs=0.01)
    assert (touching(picture), outside(picture)) == ([], [])


def test_text_is_large_enough_on_a_phone() -> None:
    """Eleven pixels or more at 310 CSS px."""
    pair = traced_pair({"a": SOLE, "b": SOLE}, EXTENT, LABELS, "both")
    for picture in (drawn(), pair):
        root = root_of(picture)
        assert float(root.attrib["font-size"]) * 310 / float(root.attrib["viewBox"].split()[2]) >= 11


def test_forms_differ_without_colour() -> None:
    """In the key each form is drawn in its own way."""
    key = sole_key({form: form for form in SOLE.forms})
    seen = {
        str([(sorted((k, v) for k, v in path.attrib.items() if k not in ("stroke", "fill"))) for path in root_of(one)])
        for one in key.values()
    }

    assert len(seen) == len(SOLE.forms)


def test_without_a_point_there_is_no_extent() -> None:
    """Nothing to draw is told."""
    with pytest.raises(ValueError, match="no sole"):
        extent_of([TracedSole()])
