"""A foot from below, toe up, as one meets it when it is lifted, with what was found marked at its place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from recordgen.hoof.observations import Finding
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.feet.findings import draw_findings
from recordgen.pictures.feet.sole_form import (
    BAR_AT_FROG,
    BAR_AT_SOLE,
    BAR_TIP,
    BULB,
    BUTTRESS,
    CENTRAL_GROOVE,
    CLEFT,
    FROG,
    FROG_HEEL,
    FROG_NOTCH,
    SIDE_GROOVE_END,
    SIDE_GROOVE_FLOOR,
    SoleForm,
)
from recordgen.pictures.pen import DEEP_GROOVE, GROOVE, Pen
from recordgen.pictures.shapes import LINE, Point, Shape, curve
from recordgen.records.models.names import Foot, is_left

# At 160 CSS px wide, the smallest a foot stands on a phone, 12 of these units are still more than 11 px.
WIDTH, HEIGHT = 170.0, 158.0
MIDDLE, TOE = WIDTH / 2, 18.0
LARGE = 2.0

WHITE_LINE_INSIDE = 2.6
INNER_WALL_ENDS = 0.9
GROUND, FROG_TINT = Pen(fill="straw", opacity=0.12), Pen(fill="straw", opacity=0.3)


def foot_from_below(
    foot: Foot, findings: Sequence[Finding], labels: Mapping[str, str], title: str, large: bool = False
) -> str:
    """One foot seen from below with its findings; a left foot's outer edge is on the right of the drawing.

    findings: those of other feet are left out. labels: `outer` and `inner`, the words at the two sides. large: drawn
    for twice the width, its words and lines no larger.
    """
    # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
    from recordgen.pictures.axes import to_scale

    size = (WIDTH * LARGE, HEIGHT * LARGE) if large else (WIDTH, HEIGHT)
    canvas = Canvas(*size, view=to_scale(WIDTH, HEIGHT, size, _anatomy(foot, size)))
    draw_findings(canvas, SoleForm(foot, MIDDLE, TOE), [finding for finding in findings if finding.foot == foot])
    right, left = ("outer", "inner") if is_left(foot) else ("inner", "outer")
    baseline = 11 * WIDTH / size[0]
    canvas.write(labels[left], (1, baseline))
    canvas.write(labels[right], (WIDTH - 1, baseline), "end")
    return canvas.picture(title, "wide" if large else "foot")


@lru_cache(maxsize=8)
def _anatomy(foot: Foot, size: Point) -> str:
    """The bare foot, drawn once for all findings."""
    from recordgen.pictures.axes import to_scale

    canvas = Canvas(*size, view=to_scale(WIDTH, HEIGHT, size))
    draw_foot(canvas, SoleForm(foot, MIDDLE, TOE))
    return canvas.body()


def draw_foot(canvas: Canvas, sole: SoleForm) -> None:
    """The bare foot: bulbs, sole, wall and bars in one band, white line, frog and grooves."""
    canvas.draw(bulbs_form(sole), Pen("quiet", 1.2, "straw", fill_opacity=0.14))
    canvas.draw(curve(sole.along(-0.97, 0.97, -2, 20)), GROUND)
    for side in (1, -1):
        canvas.draw(groove_form(sole, side), GROOVE)
    horn = horn_form(sole)
    # First opaque, so that neither bulbs nor sole show through the horn.
    canvas.draw(horn, Pen(fill="card"))
    canvas.draw(horn, Pen("ink", 1.0, "quiet", fill_opacity=0.3))
    canvas.draw(curve(sole.along(-0.97, 0.97, 0, 20)), Pen("ink", 2.2, round_ends=True))
    canvas.draw(white_line_form(sole), Pen("straw", 1.5, dash=(0.1, 3.0), round_ends=True))
    _draw_frog(canvas, sole)


def _draw_frog(canvas: Canvas, sole: SoleForm) -> None:
    """The frog's two branches, the groove between them, and the cleft in which it runs out between the bulbs."""
    canvas.draw(mirrored_form(sole, CLEFT), GROOVE)
    frog = frog_form(sole)
    canvas.draw(frog, Pen("ink", 1.0, "card"))
    canvas.draw(frog, FROG_TINT)
    canvas.draw(mirrored_form(sole, CENTRAL_GROOVE), DEEP_GROOVE)


def horn_form(sole: SoleForm) -> Shape:
    """The wall and the bars it turns into at the heels, one closed band."""
    outer = sole.along(-0.97, 0.97, 0, 20)
    inner = [sole.wall(share, -sole.thickness(share)) for share in _inner_shares()]
    heel, other_heel = _bar(sole, 1), _bar(sole, -1)
    return curve([*outer, *heel, *inner, *reversed(other_heel)], closed=True)


def _inner_shares() -> list[float]:
    return [INNER_WALL_ENDS * (1 - step / 9) for step in range(19)]


def _bar(sole: SoleForm, side: int) -> list[Point]:
    return sole.part((BUTTRESS, *reversed(BAR_AT_FROG), BAR_TIP, *reversed(BAR_AT_SOLE)), side)


def white_line_form(sole: SoleForm) -> Shape:
    """The white line, just inside the wall."""
    shares = [0.88 * (1 - step / 9) for step in range(19)]
    return curve([sole.wall(share, -sole.thickness(share) - WHITE_LINE_INSIDE) for share in shares])


def frog_form(sole: SoleForm) -> Shape:
    """The frog, whose two branches part at its back."""
    right = sole.part((*FROG, *FROG_HEEL, FROG_NOTCH))
    left = sole.part((*FROG[1:], *FROG_HEEL), -1)
    return curve([*right, *reversed(left)], closed=True)


def mirrored_form(sole: SoleForm, half: Sequence[Point]) -> Shape:
    """A closed form on the midline, given by its outer half from front to back."""
    right, left = sole.part(half), sole.part([point for point in half if point[0]], -1)
    return curve([*right, *reversed(left)], closed=True)


def groove_form(sole: SoleForm, side: int) -> Shape:
    """The groove between frog and bar; side is 1 for the outer one, -1 for the inner one."""
    along_bar = curve(sole.part(SIDE_GROOVE_FLOOR, side))
    under_frog = sole.part([SIDE_GROOVE_END], side)
    return Shape((*along_bar.points, *under_frog), (*along_bar.codes, LINE))


def bulbs_form(sole: SoleForm) -> Shape:
    """The two heel bulbs behind the foot with the cleft between them."""
    outer, inner = sole.part(BULB), sole.part(BULB[:-1], -1)
    return curve([*outer, *reversed(inner)])
