"""The one place that knows matplotlib: its SVG renderer writes the paths, and what it wrote is made fit for a page."""

from __future__ import annotations

import re
from collections.abc import Mapping
from io import StringIO
from typing import Any

from matplotlib.backend_bases import GraphicsContextBase
from matplotlib.backends.backend_svg import RendererSVG
from matplotlib.path import Path
from matplotlib.transforms import Affine2D

from recordgen.pictures.pen import COLOURS, Colour, Pen
from recordgen.pictures.shapes import Shape

NO_METADATA = dict.fromkeys(("Creator", "Date", "Format", "Type"))

# matplotlib knows no CSS variables: each colour travels as a number of its own and is named again afterwards.
STANDINS = {colour: (254 / 255, 1 / 255, index / 255) for index, colour in enumerate(COLOURS)}
STANDIN = re.compile(r"#fe01([0-9a-f]{2})")
WRITTEN_PATH = re.compile(r'<path d="([^"]*)" style="([^"]*)"/>')
BETWEEN_TAGS = re.compile(r">\n *<")
START_OF_BODY = "</defs>"


class SvgWriter:
    """A sheet that matplotlib's SVG renderer writes on, without figure, axes or any state outside itself."""

    def __init__(self, width: float, height: float) -> None:
        """An empty sheet, width x height in picture units."""
        self._out = StringIO()
        # The artists above the renderer cost four times the drawing itself, and a practice has a thousand panels.
        self._renderer = _renderer(width, height, self._out)
        self._upright = Affine2D().scale(1, -1).translate(0, height)

    def draw(self, shape: Shape, pen: Pen) -> None:
        """Put a form on the sheet."""
        path = Path([(round(x, 1), round(y, 1)) for x, y in shape.points], shape.codes)
        path.should_simplify = False
        self._renderer.draw_path(_context(pen), path, self._upright, _fill(pen))

    def element(self, tag: str, words: str, attributes: Mapping[str, str]) -> None:
        """Put an element holding words on the sheet; the words are escaped, never interpreted."""
        self._renderer.writer.element(tag, words, dict(attributes))

    def open(self, tag: str) -> None:
        """Start an element that holds others."""
        self._renderer.writer.start(tag)

    def close(self, tag: str) -> None:
        """End the element last started."""
        self._renderer.writer.end(tag)

    def body(self) -> str:
        """The drawing without its frame: paths with plain attributes and CSS variables for colours."""
        self._renderer.finalize()
        written = self._out.getvalue()
        inner = written[written.index(START_OF_BODY) + len(START_OF_BODY) : written.rindex("</svg>")]
        return WRITTEN_PATH.sub(_tidied, BETWEEN_TAGS.sub("><", inner)).strip()


def _renderer(width: float, height: float, out: StringIO) -> Any:
    # matplotlib gives types for all but its renderers.
    make: Any = RendererSVG
    return make(width, height, out, metadata=NO_METADATA)


def _rgb(colour: Colour | None) -> tuple[float, float, float] | None:
    return None if colour is None else STANDINS[colour]


def _fill(pen: Pen) -> tuple[float, float, float, float] | None:
    colour = _rgb(pen.fill)
    return None if colour is None else (*colour, pen.fill_opacity)


def _context(pen: Pen) -> GraphicsContextBase:
    context = GraphicsContextBase()
    context.set_linewidth(pen.width if pen.stroke else 0)
    context.set_foreground(_rgb(pen.stroke) or (0.0, 0.0, 0.0))
    context.set_capstyle("round" if pen.round_ends else "butt")
    context.set_dashes(0, list(pen.dash) or None)
    if pen.opacity < 1:
        context.set_alpha(pen.opacity)
    return context


def _tidied(match: re.Match[str]) -> str:
    data, style = match.groups()
    return f'<path d="{_short(data)}"{_attributes(style)}/>'


def _short(data: str) -> str:
    return " ".join(data.split()).replace(" L ", "L").replace(" C ", "C").replace(" M ", "M").replace("M ", "M")


def _attributes(style: str) -> str:
    pairs = (part.split(": ", 1) for part in style.split("; ") if part)
    return "".join(f' {name}="{STANDIN.sub(_named, value)}"' for name, value in pairs if name != "stroke-dashoffset")


def _named(match: re.Match[str]) -> str:
    return f"var(--{COLOURS[int(match.group(1), 16)]})"
