"""Feet traced from the side or the front, on blank and over a photograph."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from recordgen.pictures.tracing.upright import ARC_RADIUS, TracedUpright, TracedWall, traced_upright, upright_key
from tests.support.svg import root_of, strokes_of, words_in
from tests.support.text_boxes import boxes_of, outside, touching

TOE = TracedWall(
    line=((54.0, -64.0), (30.0, -38.0), (0.0, 0.0)),
    along=(1.0, 0.0),
    straight=((76.0, -90.0), (0.0, 0.0)),
    words="toe 49.8°",
    edge=((54.0, -64.0), (0.0, 0.0)),
    edge_words="1.9 mm",
)
HEEL = TracedWall(
    line=((128.0, -30.0), (95.0, 0.0)), along=(1.0, 0.0), straight=((128.0, -30.0), (95.0, 0.0)), words="heel 42.0°"
)
FOOT = TracedUpright(
    walls=(TOE, HEEL),
    ground=((-20.0, 0.0), (140.0, 0.0)),
    pastern=((90.0, -112.0), (60.0, -72.0)),
    pastern_words="pastern 53.0°",
    hairline=((54.0, -64.0), (128.0, -30.0)),
    marks=(("breakover", (9.0, 0.0)), ("heel_contact", (95.0, 0.0))),
)
FORMS = ["wall", "straight", "edge", "pastern", "breakover", "heel_contact"]


def drawn(foot: TracedUpright = FOOT) -> str:
    """A foot on its sheet."""
    return traced_upright(foot, "20 mm", "from the side")


def in_photograph(
    foot: TracedUpright = FOOT,
    scale: float = 6.0,
    shift: tuple[float, float] = (300.0, 900.0),
    image: tuple[int, int] = (1600, 1200),
    mirror: bool = False,
) -> TracedUpright:
    """The same foot as it lies in a photograph, px."""
    sign = -1 if mirror else 1

    def moved(line: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
        return tuple((sign * x * scale + shift[0], y * scale + shift[1]) for x, y in line)

    walls = tuple(
        replace(
            wall,
            line=moved(wall.line),
            along=(sign * 1.0, 0.0),
            straight=moved(wall.straight),
            edge=moved(wall.edge),
        )
        for wall in foot.walls
    )
    marks = tuple((mark, moved([point])[0]) for mark, point in foot.marks)
    lines: dict[str, Any] = {name: moved(getattr(foot, name)) for name in ("ground", "pastern", "hairline")}
    return replace(foot, walls=walls, marks=marks, image=image, mm=scale, **lines)


def walls_of(picture: str) -> list[list[tuple[float, float]]]:
    """The strokes of the walls, without the light edge under them."""
    return strokes_of(picture, stroke="var(--ink)", stroke_width="2.4")


def bar_of(picture: str) -> float:
    """The length of the bar, picture units."""
    (found,) = [
        stroke
        for stroke in strokes_of(picture, stroke="var(--ink)", stroke_width="1.6")
        if len(stroke) == 2 and stroke[0][1] == stroke[1][1]
    ]
    return found[1][0] - found[0][0]


def test_the_same_foot_gives_the_same_bytes_and_is_named() -> None:
    """A picture tells its title."""
    assert drawn() == drawn()
    assert root_of(drawn())[0].text == "from the side"
    assert drawn().count(' id="') == 1


def test_the_angles_are_written() -> None:
    """Each beside its line: those of walls below the ground, in the order of the walls."""
    boxes = dict(boxes_of(drawn()))
    ground = max(y for wall in walls_of(drawn()) for _, y in wall)

    assert set(words_in(drawn())) == {"toe 49.8°", "heel 42.0°", "pastern 53.0°", "1.9 mm", "20 mm"}
    assert min(boxes["toe 49.8°"][1], boxes["heel 42.0°"][1]) > ground
    assert boxes["toe 49.8°"][2] < boxes["heel 42.0°"][0]


def test_the_drawing_is_to_scale() -> None:
    """A front wall 84 mm long is 4.2 bars long."""
    toe, _ = walls_of(drawn())

    assert math.dist(toe[0], toe[-1]) / bar_of(drawn()) == pytest.approx(math.dist((54, 64), (0, 0)) / 20, rel=0.01)


def test_over_a_photograph_lines_lie_on_their_pixels() -> None:
    """The sheet has the form of the photograph, and each point stands at the same share of width and height."""
    foot = in_photograph()
    picture = drawn(foot)
    _, _, width, height = map(float, root_of(picture).attrib["viewBox"].split())

    assert width / height == pytest.approx(1600 / 1200)
    for wall, shown in zip(foot.walls, walls_of(picture), strict=True):
        expected = [(x * width / 1600, y * width / 1600) for x, y in wall.line]
        assert [coordinate for point in shown for coordinate in point] == pytest.approx(
            [coordinate for point in expected for coordinate in point], abs=0.06
        )
    assert bar_of(picture) == pytest.approx(20 * 6 * width / 1600, abs=0.1)


def test_over_a_photograph_each_line_has_a_light_edge() -> None:
    """So that it can be seen on dark horn and on light ground; on blank there is none."""
    edged = strokes_of(drawn(in_photograph()), stroke="var(--card)")

    assert all(wall in edged for wall in walls_of(drawn(in_photograph())))
    assert strokes_of(drawn(), stroke="var(--card)") == []


def test_the_straight_edge_is_drawn_where_the_wall_is_hollow_alone() -> None:
    """From the hairline to the ground, with its depth; without one neither is there."""
    plain = replace(FOOT, walls=(replace(TOE, edge=(), edge_words=""), HEEL))

    assert len(strokes_of(drawn(), stroke="var(--moss)", stroke_width="1.5")) == 1
    assert strokes_of(drawn(plain), stroke="var(--moss)", stroke_width="1.5") == []
    assert "1.9 mm" not in words_in(drawn(plain))


def test_arcs_open_where_the_angle_is_taken() -> None:
    """From the ground behind the toe up to its wall, and the same at the heel."""
    for wall, arc in zip(walls_of(drawn()), strokes_of(drawn(), stroke="var(--ink)", stroke_width="1.1"), strict=True):
        foot = wall[-1]
        turned = math.atan2(foot[1] - arc[-1][1], arc[-1][0] - foot[0])

        assert arc[0] == pytest.approx((foot[0] + ARC_RADIUS, foot[1]), abs=0.2)
        assert turned == pytest.approx(math.atan2(foot[1] - wall[0][1], wall[0][0] - foot[0]), abs=0.02)


@pytest.mark.parametrize("mirror", [False, True])
@pytest.mark.parametrize("scale", [1.5, 3.0, 6.0])
@pytest.mark.parametrize("down", [400.0, 900.0, 1195.0])
def test_words_stand_clear_in_any_photograph(mirror: bool, scale: float, down: float) -> None:
    """However small the foot, wherever it stands and whichever way it looks."""
    shift = (1300.0 if mirror else 300.0, max(down, 115 * scale))
    picture = drawn(in_photograph(scale=scale, shift=shift, mirror=mirror))

    assert (touching(picture), outside(picture)) == ([], [])


def test_words_stand_clear_on_blank() -> None:
    """Upright as traced."""
    assert (touching(drawn()), outside(drawn())) == ([], [])


def test_text_is_large_enough_on_a_phone() -> None:
    """Eleven pixels or more at 310 CSS px."""
    for picture in (drawn(), drawn(in_photograph())):
        root = root_of(picture)
        assert float(root.attrib["font-size"]) * 310 / float(root.attrib["viewBox"].split()[2]) >= 11


def test_what_was_not_traced_is_not_drawn() -> None:
    """One wall without ground has no angle; nothing at all is refused."""
    alone = TracedUpright(walls=(replace(TOE, straight=(), edge=(), words=""),))

    assert words_in(drawn(alone)) == ["20 mm"]
    assert alone.forms == ["wall"]
    with pytest.raises(ValueError, match="no foot"):
        drawn(TracedUpright(walls=()))


def test_forms_differ_without_colour() -> None:
    """In the key each form is drawn in its own way."""
    assert FOOT.forms == FORMS
    key = upright_key({form: form for form in FOOT.forms})
    shown = {
        str([[(k, v) for k, v in path.attrib.items() if k not in ("stroke", "fill")] for path in root_of(one)])
        for one in key.values()
    }

    assert len(shown) == len(FORMS)
