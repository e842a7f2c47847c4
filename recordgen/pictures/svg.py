"""The one place that knows how matplotlib writes: artists become SVG elements fit to stand inside a page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import cache, lru_cache
from io import StringIO
from typing import Any, cast

import numpy as np
from matplotlib import rcParams, style
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backends.backend_svg import RendererSVG
from matplotlib.figure import Figure
from matplotlib.path import Path
from matplotlib.transforms import IdentityTransform

from recordgen.pictures.cache import STYLE as STYLE_SHEET
from recordgen.pictures.pen import COLOURS

NO_METADATA = dict.fromkeys(("Creator", "Date", "Format", "Type"))
BETWEEN_TAGS = re.compile(r">\s+<")
# A path or words as the renderer writes them, and what is rewritten in them.
TAG = re.compile(r"<(?:path|text) [^<>]*>")
DATA, STYLE = re.compile(r' d="([^"]*)"'), re.compile(r' style="([^"]*)"')
TURN = re.compile(r' transform="rotate\(-?0[^"]*"')
PLACE = re.compile(r' ([xy])="(-?\d+\.\d{2,})"')
NAMED = {value: f"var(--{name})" for name, value in COLOURS.items()}
# What a page decides itself, or what is so without being said.
UNSAID = {"stroke-dashoffset", "font-family", "stroke-linejoin"}
DEFAULTS = {"stroke-width: 1", "stroke-linecap: butt", "text-anchor: start"}


def figure(width: float, height: float) -> Figure:
    """An empty figure in the style of all pictures, width x height in picture units."""
    _use_style()
    return Figure(figsize=(width / 72, height / 72))


@cache
def _use_style() -> None:
    style.use(STYLE_SHEET)


class SvgInPage(RendererSVG):
    """matplotlib's own SVG renderer, without the groups and references that a page has no use for."""

    def __init__(self, width: float, height: float) -> None:
        """An empty sheet, width x height in picture units."""
        self._out = StringIO()
        make: Any = super().__init__
        make(width, height, self._out, metadata=NO_METADATA)

    def open_group(self, s: str, gid: str | None = None) -> None:
        """Begin no group: those that tell something are begun by `group`."""

    def close_group(self, s: str) -> None:
        """End no group."""

    def draw_path(self, gc: Any, path: Any, transform: Any, rgbFace: Any = None) -> None:
        """Draw a path, its points to a tenth of a unit."""
        points = np.round(transform.transform(path.vertices), 1)
        whole = Path(points, path.codes)
        whole.should_simplify = False
        # Nothing is drawn outside its axes, and a clip would need a name that could stand twice in a page.
        gc.set_clip_rectangle(None)
        gc.set_clip_path(None)
        draw: Any = super().draw_path
        draw(gc, whole, IdentityTransform(), rgbFace)

    def draw_markers(
        self, gc: Any, marker_path: Any, marker_trans: Any, path: Any, trans: Any, rgbFace: Any = None
    ) -> None:
        """Draw all markers in one path, so that no form needs a name that could stand twice in a page."""
        form = marker_path.transformed(marker_trans)
        places = trans.transform(path.vertices)
        points = (form.vertices[None, :, :] + places[:, None, :]).reshape(-1, 2)
        codes = form.codes if form.codes is not None else [Path.MOVETO, *[Path.LINETO] * (len(form.vertices) - 1)]
        self.draw_path(gc, Path(points, np.tile(codes, len(places))), IdentityTransform(), rgbFace)

    def word(self, words: str, attributes: Mapping[str, str]) -> None:
        """Write words as an element; they are escaped, never interpreted."""
        write: Any = self.writer.element
        write("text", words, dict(attributes))

    @contextmanager
    def group(self, words: str) -> Iterator[None]:
        """Put what is drawn inside into a group that tells words, which are escaped, never interpreted."""
        writer: Any = self.writer
        writer.start("g")
        writer.element("title", words)
        yield
        writer.end("g")

    def begin(self) -> None:
        """Forget what was drawn; what was learned about the widths of words is kept."""
        self._out.seek(0)
        self._out.truncate()

    def body(self) -> str:
        """Everything drawn since it began, without a frame: plain attributes, and CSS variables for colours."""
        return tidy(self._out.getvalue())


def figure_of(axes: Axes) -> Figure:
    """The figure that axes were made for."""
    return cast(Figure, axes.figure)


def svg_elements(axes: Axes, artists: Sequence[Artist]) -> str:
    """Artists on axes, the last on top, as SVG elements without a frame."""
    renderer = _renderer(*figure_of(axes).get_size_inches() * 72)
    renderer.begin()
    for one in artists:
        one.draw(renderer)
    return renderer.body()


@lru_cache(maxsize=32)
def _renderer(width: float, height: float) -> SvgInPage:
    return SvgInPage(width, height)


def tidy(written: str) -> str:
    """SVG as matplotlib writes it, shorter: attributes for styles, and the page's variables for colours."""
    return TAG.sub(lambda found: _tag(found[0]), BETWEEN_TAGS.sub("><", written).strip())


def _tag(written: str) -> str:
    tag = DATA.sub(lambda found: f' d="{_short(found[1])}"', TURN.sub("", written))
    tag = PLACE.sub(lambda found: f' {found[1]}="{tenth(found[2])}"', tag)
    return STYLE.sub(lambda found: _attributes(found[1]), tag)


def _short(data: str) -> str:
    return " ".join(data.split()).replace(" L ", "L").replace(" C ", "C").replace(" M ", "M").replace("M ", "M")


def tenth(number: str | float) -> str:
    """A number to a tenth, as short as it goes."""
    text = f"{float(number):.1f}"
    return "0" if text == "-0.0" else text.removesuffix(".0")


def _attributes(written: str) -> str:
    pairs = (part.split(": ", 1) for part in written.split("; ") if part and part not in DEFAULTS)
    return "".join(f' {name}="{_value(name, value)}"' for name, value in pairs if not _is_left_out(name, value))


def _is_left_out(name: str, value: str) -> bool:
    return name in UNSAID or (name == "font-size" and value == f"{rcParams['font.size']:g}px")


def _value(name: str, value: str) -> str:
    return NAMED.get(value, value.replace(", ", ",")) if name != "font-size" else value.removesuffix("px")
