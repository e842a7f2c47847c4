"""Small pictures of single forms, for a legend that the page lays out in its own words."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from html import escape
from typing import Literal, TypeVar

from recordgen.pictures.pen import Colour, Pen
from recordgen.pictures.shapes import Point, Shape

SIZE = 16.0
MIDDLE: Point = (SIZE / 2, SIZE / 2)

Form = TypeVar("Form", bound=str)


def legend(forms: Mapping[Form, Callable[[Canvas, Point], None]], words: Mapping[Form, str]) -> dict[Form, str]:
    """A picture of each form that has words, named by them, in the order of the forms."""
    return {form: _drawn(draw, words[form]) for form, draw in forms.items() if form in words}


def _drawn(draw: Callable[[Canvas, Point], None], words: str) -> str:
    canvas = Canvas(SIZE, SIZE)
    draw(canvas, MIDDLE)
    return canvas.picture(words)


Anchor = Literal["start", "middle", "end"]

# XML has no way to write these, so a record that holds one would break the page.
UNWRITABLE = dict.fromkeys([*(set(range(32)) - {9, 10, 13}), *range(0xD800, 0xE000), 0xFFFE, 0xFFFF])


class Canvas:
    """A sheet of its own measure: forms and words go on it one after the other, the last on top."""

    def __init__(self, width: float, height: float, font_size: float = 12) -> None:
        """An empty sheet, width x height in picture units, y downwards; the page's CSS decides its size."""
        # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
        from recordgen.pictures.svg import SvgWriter

        self._ink = SvgWriter(width, height)
        self._size = (width, height)
        self._font_size = font_size

    def draw(self, shape: Shape, pen: Pen) -> None:
        """Put a form on the sheet."""
        self._ink.draw(shape, pen)

    def write(self, words: str, at: Point, anchor: Anchor = "start", colour: Colour = "quiet") -> None:
        """Put one line of words on the sheet, its baseline at a point; they are shown as typed."""
        attributes = {"x": f"{at[0]:.4g}", "y": f"{at[1]:.4g}"}
        if anchor != "start":
            attributes["text-anchor"] = anchor
        if colour != "quiet":
            attributes["fill"] = f"var(--{colour})"
        self._ink.element("text", printable(words), attributes)

    @contextmanager
    def told(self, words: str) -> Iterator[None]:
        """Drawings made inside belong together and tell these words to whoever points at it."""
        self._ink.open("g")
        self._ink.element("title", printable(words), {})
        yield
        self._ink.close("g")

    def picture(self, title: str) -> str:
        """The finished SVG, one `svg` element of class `picture`, named by its title."""
        return framed(self._ink.body(), printable(title), self._size, self._font_size)


def printable(words: str) -> str:
    """The words without the control characters that no XML can hold."""
    return words.translate(UNWRITABLE)


def framed(body: str, title: str, size: Point, font_size: float) -> str:
    """An SVG element around what was drawn. Its id comes from what it shows, so that two on one page never share it."""
    width, height = size
    name = "p" + hashlib.sha256(f"{title}\0{body}".encode()).hexdigest()[:12]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 {width:g} {height:g}" role="img" '
        f'aria-labelledby="{name}" font-size="{font_size:g}" fill="var(--quiet)" stroke-linejoin="round">'
        f'<title id="{name}">{escape(title, quote=False)}</title>{body}</svg>'
    )
