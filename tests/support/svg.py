"""Parts of a picture as a test sees them: its elements, its words and the points of its paths."""

from __future__ import annotations

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"

Point = tuple[float, float]


def root_of(picture: str) -> ElementTree.Element:
    """The parsed picture; fails where it is not well-formed."""
    return ElementTree.fromstring(picture)


def words_in(picture: str) -> list[str]:
    """Every text shown, in drawing order."""
    return [text.text or "" for text in root_of(picture).iter(f"{SVG}text")]


def strokes_of(picture: str, **attributes: str) -> list[list[Point]]:
    """The points of each stroke of the paths with these attributes; `_` stands for `-`."""
    wanted = {name.replace("_", "-"): value for name, value in attributes.items()}
    paths = [path for path in root_of(picture).iter(f"{SVG}path") if wanted.items() <= path.attrib.items()]
    return [points_of(stroke) for path in paths for stroke in path.attrib["d"].split("M")[1:]]


def points_of(data: str) -> list[Point]:
    """The points named in path data, handles included."""
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", data)]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def group_titled(picture: str, title: str) -> ElementTree.Element:
    """The group that tells this title."""
    groups = [group for group in root_of(picture).iter(f"{SVG}g") if group.findtext(f"{SVG}title") == title]
    assert len(groups) == 1
    return groups[0]


def middle_of(group: ElementTree.Element) -> Point:
    """The middle of everything drawn in a group."""
    points = [point for path in group.iter(f"{SVG}path") for point in points_of(path.attrib["d"])]
    across, down = zip(*points, strict=True)
    return (min(across) + max(across)) / 2, (min(down) + max(down)) / 2


def value_at(picture: str, y: float) -> float:
    """The value that stands at a height, read off the lines across and the figures at their left."""
    heights = sorted((stroke[0][1] for stroke in strokes_of(picture, stroke="var(--line)")), reverse=True)
    values = [float(words.replace("\N{MINUS SIGN}", "-")) for words in words_in(picture) if is_figure(words)]
    values = sorted(values[-len(heights) :])
    return values[0] + (heights[0] - y) / (heights[0] - heights[-1]) * (values[-1] - values[0])


def is_figure(words: str) -> bool:
    """Tell whether words are a number and no year."""
    return bool(re.fullmatch(r"[-\N{MINUS SIGN}]?\d{1,3}(\.\d+)?", words))
