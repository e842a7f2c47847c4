"""The room that a picture's words take, measured with a font at hand that is wider than most."""

from __future__ import annotations

from functools import cache
from itertools import combinations

from matplotlib.font_manager import findfont
from matplotlib.ft2font import FT2Font

from tests.support.svg import SVG, root_of

Box = tuple[float, float, float, float]


@cache
def font() -> FT2Font:
    """DejaVu Sans, which matplotlib brings along."""
    face = FT2Font(findfont("DejaVu Sans"))
    face.set_size(100, 72)
    return face


def measured_width(words: str, size: float) -> float:
    """Tell how wide words stand at a font size."""
    return sum(font().load_char(ord(letter)).linearHoriAdvance for letter in words) / 65536 / 100 * size


def boxes_of(picture: str) -> list[tuple[str, Box]]:
    """Every text with its left, top, right and bottom, capitals' height above the baseline and descent below it."""
    root = root_of(picture)
    size = float(root.attrib["font-size"])
    return [(text.text or "", _box(text.text or "", text.attrib, size)) for text in root.iter(f"{SVG}text")]


def _box(words: str, attributes: dict[str, str], size: float) -> Box:
    width = measured_width(words, size)
    before = {"start": 0.0, "middle": width / 2, "end": width}[attributes.get("text-anchor", "start")]
    x, y = float(attributes["x"]), float(attributes["y"])
    return x - before, y - 0.76 * size, x - before + width, y + 0.22 * size


def touching(picture: str) -> list[tuple[str, str]]:
    """The pairs of words that cover each other."""
    pairs = combinations(boxes_of(picture), 2)
    return [(a, b) for (a, box), (b, other) in pairs if _touch(box, other)]


def _touch(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def outside(picture: str) -> list[str]:
    """The words that reach over the edge of the sheet, by more than a tenth of a unit."""
    _, _, width, height = (float(number) for number in root_of(picture).attrib["viewBox"].split())
    return [
        words
        for words, (left, top, right, bottom) in boxes_of(picture)
        if left < -0.1 or top < -0.1 or right > width + 0.1 or bottom > height + 0.1
    ]
