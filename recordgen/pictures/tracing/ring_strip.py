"""The ring of a sole unrolled: how thick the wall is from the inner heel over the toe to the outer heel.

Unrolled, as millimetres then stand on one straight axis: what is a millimetre thicker looks the same at the heel and at
the toe, and two rings can be read against each other. Bent round a foot they would not.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, box_key, legend, stroke_key
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, finite, join_shapes, line

__all__ = ["RingForm", "RingLine", "RingZone", "ring_key", "ring_strip"]

Line = tuple[Point, ...]
RingForm = Literal["latest", "band", "other", "earlier", "baseline", "above"]
# Forms that are areas.
AREAS: tuple[RingForm, ...] = ("band", "above")

# In the order in which they are drawn.
PENS: dict[RingForm, Pen] = {
    "band": Pen(fill="quiet", opacity=0.3),
    "above": Pen("moss", 0.6, "moss", fill_opacity=0.5),
    "earlier": Pen("quiet", 0.9),
    "baseline": Pen("moss", 1.8, dash=(0.1, 3.4), round_ends=True),
    "other": Pen("ink", 1.4, dash=(5.0, 3.0)),
    "latest": Pen("ink", 2.4),
}
KEY_ORDER: tuple[RingForm, ...] = ("latest", "band", "other", "earlier", "baseline", "above")


@dataclass(frozen=True)
class RingLine:
    """One line on the strip: stretches of (degrees from the toe, inner side below 0; mm).

    form: the ring told of, that of the other moment of the same day, one of an earlier day, or the baseline. Of
    AREAS the stretches are polygons: `band` about the latest ring as far as its error reaches, `above` between a ring
    and its baseline.
    """

    form: RingForm
    stretches: tuple[Line, ...]


@dataclass(frozen=True)
class RingZone:
    """A zone of the wall: its words, and from where to where it goes, degrees from the toe."""

    words: str
    start: float
    end: float


def ring_strip(
    lines: Sequence[RingLine], zones: Sequence[RingZone], labels: Mapping[str, str], title: str, inches: bool = False
) -> str:
    """The unrolled ring with its zones named below and mm, or inches, at the left. labels: `inner`, `outer`, `unit`.

    Raises ValueError where there is no point, or one is no number.
    """
    points = [point for one in lines for stretch in one.stretches for point in stretch]
    if not points:
        raise ValueError("no ring to draw")
    finite("ring", *(number for point in points for number in point))
    # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
    from recordgen.pictures.tracing.ring_axes import HEIGHT, WIDTH, ring_frame, ring_view

    named, sides = tuple((z.words, z.start, z.end) for z in zones), (labels["inner"], labels["outer"])
    frame = ring_frame(points, named, sides, labels["unit"], inches)
    canvas = Canvas(WIDTH, HEIGHT, view=ring_view(frame))
    for form, pen in PENS.items():
        for one in lines:
            if one.form == form and one.stretches:
                closed = form in AREAS
                canvas.draw(join_shapes(line(stretch, closed) for stretch in one.stretches), pen)
    return canvas.picture(title, "wide")


def ring_key(words: Mapping[RingForm, str]) -> dict[RingForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend({form: _key(form) for form in KEY_ORDER}, words)


def _key(form: RingForm) -> Callable[[Canvas, Point], None]:
    return box_key(PENS[form], 4.5) if form in AREAS else stroke_key(PENS[form])
