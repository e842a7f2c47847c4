"""A sheet to draw on, forms and words one after the other, and small pictures of single forms for a legend."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from html import escape
from typing import TYPE_CHECKING, Literal, TypeVar

from recordgen.pictures.pen import Colour, Pen
from recordgen.pictures.shapes import Point, Shape, line

if TYPE_CHECKING:
    from recordgen.pictures.axes import View

SIZE = 16.0
MIDDLE: Point = (SIZE / 2, SIZE / 2)

Form = TypeVar("Form", bound=str)


def legend(forms: Mapping[Form, Callable[[Canvas, Point], None]], words: Mapping[Form, str]) -> dict[Form, str]:
    """A picture of each form that has words, named by them, in the order of the forms."""
    return {form: _picture(draw, words[form]) for form, draw in forms.items() if form in words}


def _picture(draw: Callable[[Canvas, Point], None], words: str) -> str:
    canvas = Canvas(SIZE, SIZE)
    draw(canvas, MIDDLE)
    return canvas.picture(words)


def stroke_key(pen: Pen) -> Callable[[Canvas, Point], None]:
    """A drawing for a legend: a stroke of a pen across its middle."""
    return lambda canvas, at: canvas.draw(line([(at[0] - 7, at[1]), (at[0] + 7, at[1])]), pen)


def box_key(pen: Pen, half: float = 5.0) -> Callable[[Canvas, Point], None]:
    """A drawing for a legend: a square of a pen about its middle. half: of its side, picture units."""
    corners = [(-half, -half), (half, -half), (half, half), (-half, half)]
    return lambda canvas, at: canvas.draw(line([(at[0] + x, at[1] + y) for x, y in corners], closed=True), pen)


Anchor = Literal["start", "middle", "end"]

# XML has no way to write these, so a record that holds one would break the page.
UNWRITABLE = dict.fromkeys([*(set(range(32)) - {9, 10, 13}), *range(0xD800, 0xE000), 0xFFFE, 0xFFFF])


class Canvas:
    """A sheet of its own measure: forms and words go on it one after the other, the last on top.

    It is matplotlib's axes: a form is a patch on them, a point a marker, a word a text.
    """

    def __init__(self, width: float, height: float, font_size: float = 12, view: View | None = None) -> None:
        """An empty sheet, width x height in picture units, y downwards, unless a view gives it axes of their own."""
        # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
        from recordgen.pictures.axes import blank

        self._view = view or blank(width, height)
        self._size = (width, height)
        self._font_size = font_size

    def draw(self, shape: Shape, pen: Pen) -> None:
        """Put a form on the sheet."""
        self._view.patch(shape, pen)

    def mark(self, points: Sequence[Point], form: str, size: float, pen: Pen) -> None:
        """Put matplotlib's marker of this form at points, so many picture units wide whatever the axes span."""
        self._view.markers(points, form, size, pen)

    def write(self, words: str, at: Point, anchor: Anchor = "start", colour: Colour = "quiet") -> None:
        """Put one line of words on the sheet, its baseline at a point; they are shown as typed."""
        self._view.words(printable(words), at, anchor, colour)

    def width_of(self, words: str) -> float:
        """About how wide words stand, picture units: measured in a font wider than most."""
        return self._view.width_of(printable(words), self._font_size)

    @contextmanager
    def group(self, words: str) -> Iterator[None]:
        """Drawings made inside belong together and tell these words to whoever points at it."""
        with self._view.group(printable(words)):
            yield

    def body(self) -> str:
        """Everything put on the sheet, to lie behind what is put on another one of its size."""
        return self._view.elements()

    def picture(self, title: str, kind: str = "") -> str:
        """The finished SVG, one `svg` element of class `picture`, named by its title.

        kind: one more class, by which the page knows how large it may stand.
        """
        return wrap_svg(self.body(), printable(title), self._size, self._font_size, kind)


def printable(words: str) -> str:
    """The words without the control characters that no XML can hold."""
    return words.translate(UNWRITABLE)


def wrap_svg(body: str, title: str, size: Point, font_size: float, kind: str = "") -> str:
    """An SVG element around what was drawn. Its id comes from what it shows, so that two on one page never share it."""
    width, height = size
    name = "p" + hashlib.sha256(f"{title}\0{body}".encode()).hexdigest()[:12]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{f"picture {kind}".strip()}" '
        f'viewBox="0 0 {width:g} {height:g}" role="img" '
        f'aria-labelledby="{name}" font-size="{font_size:g}" fill="var(--quiet)" stroke-linejoin="round">'
        f'<title id="{name}">{escape(title, quote=False)}</title>{body}</svg>'
    )
