"""matplotlib's axes as pictures use them: made once, and reused with other limits and other artists."""

from __future__ import annotations

import warnings
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import cache
from typing import Any

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.font_manager import FontProperties
from matplotlib.lines import Line2D
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.textpath import text_to_path
from matplotlib.transforms import Transform

from recordgen.pictures.pen import COLOURS, Colour, Pen
from recordgen.pictures.shapes import Point, Shape
from recordgen.pictures.svg import figure, figure_of, svg_elements, tenth

Limits = tuple[float, float]

# Between two lines of words, and from the middle of a line to its baseline, picture units.
LINE, ASCENT_BELOW_MIDDLE = 13.0, 4.0


class View:
    """Artists waiting to be drawn on axes, with the limits that these axes shall have for them."""

    def __init__(self, axes: Axes, across: Limits, up: Limits, size: Point, behind: str = "") -> None:
        """No artist yet. across, up: the limits of the axes. size: of the figure. behind: SVG already drawn."""
        self._axes = axes
        self._limits = (across, up, size)
        self._behind = behind
        self._artists: list[Artist] = []

    def patch(self, shape: Shape, pen: Pen) -> None:
        """Add a form as a patch."""
        path = Path(shape.points, shape.codes)
        self._add(PathPatch(path, **_patch_style(pen)))

    def markers(self, points: Sequence[Point], form: str, size: float, pen: Pen) -> None:
        """Add markers of one form."""
        across, up = zip(*points, strict=True)
        self._add(Line2D(across, up, linestyle="none", marker=form, markersize=size, **_marker_style(pen)))

    def words(self, words: str, at: Point, anchor: str, colour: Colour) -> None:
        """Add words, their baseline at a point."""
        self._add(Lettering(words, at, anchor, colour))

    @staticmethod
    def width_of(words: str, size: float) -> float:
        """Tell how wide words stand in matplotlib's own font at a size, picture units."""
        with warnings.catch_warnings():
            # Signs that this font has not are counted as its box for them.
            warnings.simplefilter("ignore", UserWarning)
            wide, _, _ = text_to_path.get_text_width_height_descent(words, FontProperties(size=size), False)
        return wide

    @contextmanager
    def group(self, words: str) -> Iterator[None]:
        """Put what is added inside into a group that tells words."""
        outer, self._artists = self._artists, []
        yield
        inner, self._artists = self._artists, outer
        self._artists.append(Told(words, inner))

    def elements(self) -> str:
        """The SVG elements of everything added, in its order, on what lay behind."""
        across, up, (width, height) = self._limits
        figure_of(self._axes).set_size_inches(width / 72, height / 72)
        self._axes.set(xlim=across, ylim=up)
        return self._behind + svg_elements(self._axes, self._artists)

    def _add(self, artist: Artist) -> None:
        self._artists.append(on_axes(artist, self._axes, self._axes.transData))


def on_axes(artist: Artist, axes: Axes, transform: Transform) -> Artist:
    """The artist, which axes hold no longer than for one picture."""
    artist.set_figure(figure_of(axes))
    artist.axes = axes
    artist.set_transform(transform)
    return artist


class Lettering(Artist):
    """One line of words, whose room nobody has to know: the page sets them in its own font."""

    def __init__(self, words: str, at: Point, anchor: str = "start", colour: Colour = "quiet", down: float = 0) -> None:
        """Words whose baseline is at a point of the axes, or so many picture units below it."""
        super().__init__()
        self._words, self._at, self._down = words, at, down
        self._style = {"text-anchor": anchor, "fill": f"var(--{colour})"}

    def draw(self, renderer: Any) -> None:
        """Write them."""
        x, y = self.get_transform().transform(self._at)
        usual = {"text-anchor": "start", "fill": "var(--quiet)"}
        style = {name: value for name, value in self._style.items() if usual[name] != value}
        renderer.word(self._words, {"x": tenth(x), "y": tenth(renderer.height - y + self._down), **style})


class Told(Artist):
    """Artists in a group that tells words."""

    def __init__(self, words: str, artists: Sequence[Artist]) -> None:
        """The artists in their order."""
        super().__init__()
        self._words, self._artists = words, artists

    def draw(self, renderer: Any) -> None:
        """Draw the group."""
        with renderer.group(self._words):
            for one in self._artists:
                one.draw(renderer)


def lines_of(
    words: str, at: Point, transform: Transform, anchor: str = "start", centred: bool = True
) -> list[Lettering]:
    """Words one below the other, about a point or from it down, as they cannot touch whatever the page's font."""
    parts = words.split(" ")
    first = ASCENT_BELOW_MIDDLE - (LINE * (len(parts) - 1) / 2 if centred else 0)
    made = [Lettering(part, at, anchor, down=first + LINE * row) for row, part in enumerate(parts)]
    for one in made:
        one.set_transform(transform)
    return made


def _rgba(colour: Colour | None, opacity: float = 1.0) -> Any:
    return "none" if colour is None else (COLOURS[colour], opacity)


def _patch_style(pen: Pen) -> dict[str, Any]:
    return {
        "edgecolor": _rgba(pen.stroke),
        "facecolor": _rgba(pen.fill, pen.fill_opacity),
        "alpha": pen.opacity if pen.opacity < 1 else None,
        "linewidth": pen.width if pen.stroke else 0,
        "linestyle": (0, pen.dash) if pen.dash else "solid",
        "capstyle": "round" if pen.round_ends else "butt",
        "joinstyle": "round",
    }


def _marker_style(pen: Pen) -> dict[str, Any]:
    return {
        "markeredgecolor": _rgba(pen.stroke),
        "markerfacecolor": _rgba(pen.fill, pen.fill_opacity),
        "markeredgewidth": pen.width if pen.stroke else 0,
        "clip_on": False,
    }


@cache
def _sheet() -> Axes:
    axes = figure(100, 100).add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    return axes


def blank(width: float, height: float) -> View:
    """Axes of equal aspect that fill a figure, in picture units, y downwards."""
    return to_scale(width, height, (width, height))


def to_scale(width: float, height: float, size: Point, behind: str = "") -> View:
    """Axes of equal aspect that show a sheet of this width and height, y downwards, in a figure of another size."""
    return View(_sheet(), (0, width), (height, 0), size, behind)


def framed_axes(width: float, height: float, box: tuple[float, float, float, float]) -> Axes:
    """Axes with ticks and frame in a figure of their own.

    box: left, top, right and bottom of the axes, picture units from the figure's upper left corner.
    """
    left, top, right, bottom = box
    place = (left / width, 1 - bottom / height, (right - left) / width, (bottom - top) / height)
    return figure(width, height).add_axes(place)


def bare(across: Limits, up: Limits, size: Point, room: float) -> View:
    """Axes without ticks and frame. room: left free about the limits, picture units."""
    wider = (across[1] - across[0]) * room / (size[0] - 2 * room)
    higher = (up[1] - up[0]) * room / (size[1] - 2 * room)
    return View(_sheet(), (across[0] - wider, across[1] + wider), (up[0] - higher, up[1] + higher), size)
