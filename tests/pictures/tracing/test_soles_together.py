"""Soles over each other, through a year, over their picture, and against the line of equal distance."""

from __future__ import annotations

from dataclasses import replace

import pytest

from recordgen.pictures.tracing.off_concentric import OffConcentric, off_concentric
from recordgen.pictures.tracing.sole_over import SoleOnPhoto, sole_over_photo
from recordgen.pictures.tracing.soles_together import film_strip, overlay, overlay_key
from tests.support.svg import root_of, strokes_of, words_in
from tests.support.text_boxes import outside, touching
from tests.support.traced_soles import SOLE

LABELS = {"inner": "inner", "outer": "outer", "bar": "20 mm", "note": "to think by, not to cut by"}
SMALL = replace(SOLE, wall=tuple((x * 0.9, y * 0.9) for x, y in SOLE.wall))
OFF = OffConcentric(
    SOLE, SOLE.white_line, (SOLE.flares[0],), (("1.2 ± 0.3", SOLE.wall[5]), ("0.5 ± 0.3", SOLE.wall[3]))
)


def reach_of(stroke: list[tuple[float, float]]) -> float:
    """How far a line reaches from left to right."""
    return max(x for x, _ in stroke) - min(x for x, _ in stroke)


def test_both_soles_stand_on_one_scale() -> None:
    """The first is dashed, the last is not, and a smaller one is drawn smaller."""
    picture = overlay(SOLE, SMALL, LABELS, "both")
    (first,) = strokes_of(picture, stroke="var(--clay)", stroke_width="1.6")
    last = next(line for line in strokes_of(picture, stroke="var(--ink)", stroke_width="2") if len(line) > 2)

    assert reach_of(last[::3]) / reach_of(first[::3]) == pytest.approx(0.9, abs=0.01)
    assert (touching(picture), outside(picture)) == ([], [])
    assert list(overlay_key({"first": "before", "last": "after"})) == ["first", "last"]


@pytest.mark.parametrize("count", [3, 5, 9, 10])
def test_a_year_stands_in_rows_of_five(count: int) -> None:
    """Each over its day, on one scale, and no word covers another."""
    picture = film_strip([(f"{day + 10} Nov", SMALL if day % 2 else SOLE) for day in range(count)], "a year")
    widths = [reach_of(line[::3]) for line in strokes_of(picture, stroke="var(--ink)", stroke_width="1.5")]

    assert words_in(picture) == [f"{day + 10} Nov" for day in range(count)]
    assert widths[1] / widths[0] == pytest.approx(0.9, abs=0.02)
    assert (touching(picture), outside(picture)) == ([], [])


def test_the_drawing_says_that_it_is_no_plan_to_cut() -> None:
    """With how far a zone stands outside at its side."""
    picture = off_concentric(OFF, LABELS, "off")

    assert words_in(picture)[0] == "to think by, not to cut by"
    assert {"1.2 ± 0.3", "0.5 ± 0.3"} <= set(words_in(picture))
    assert (touching(picture), outside(picture)) == ([], [])
    assert len(strokes_of(picture, stroke="var(--moss)", fill="var(--moss)")) == 1


def test_over_a_picture_points_stand_where_they_were_marked() -> None:
    """The sheet has the form of the picture, and the wall its points."""
    wall = ((100.0, 700.0), (60.0, 300.0), (400.0, 50.0), (740.0, 300.0), (700.0, 700.0))
    picture = sole_over_photo(SoleOnPhoto((800, 1000), wall), "over")
    _, _, width, height = map(float, root_of(picture).attrib["viewBox"].split())
    (line,) = strokes_of(picture, stroke="var(--ink)", stroke_width="2")

    assert height / width == pytest.approx(1000 / 800)
    assert line[::3] == [pytest.approx((x * width / 800, y * width / 800), abs=0.1) for x, y in wall]
