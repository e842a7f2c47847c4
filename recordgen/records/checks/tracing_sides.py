"""Tell which side is which in a tracing: whether its landmarks agree about it, and whether they fit the foot.

A left foot seen from below with its toe up has its lateral side on the right, and so has one seen from the front, since
it faces the viewer; a right foot has it on the left. Derived from: anatomy, and a picture that is not mirrored.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from recordgen.records.models.lines.points import Spot
from recordgen.records.models.names import Foot
from recordgen.records.models.tracing import TracedView

Points = Mapping[str, Sequence[Spot]]
# A way in the picture, px with y down.
Way = tuple[float, float]
Right = Literal["left", "right"]

# Landmarks that tell which side is which, and must tell the same.
PAIRS = (
    ("buttress_medial", "buttress_lateral"),
    ("frog_medial", "frog_lateral"),
    ("bar_medial", "bar_lateral"),
    ("coronet_medial", "coronet_lateral"),
    ("medial_wall", "lateral_wall"),
)


def disagreeing(points: Points) -> Iterator[tuple[tuple[str, str], tuple[str, str]]]:
    """Each pair of landmarks that lies the other way round than the first one, with that."""
    pairs = [pair for pair in PAIRS if set(pair) <= points.keys()]
    for pair in pairs[1:]:
        if _dot(_across(points, pairs[0]), _across(points, pair)) < 0:
            yield pair, pairs[0]


def traced_as(view: TracedView, points: Points) -> Right | None:
    """Tell whether a left or a right foot was traced, by where its lateral side lies; None where nothing tells."""
    pair = next((pair for pair in PAIRS if set(pair) <= points.keys()), None)
    up = _toe(points) if view == "sole" else _up(points)
    if pair is None or up is None:
        return None
    across = _across(points, pair)
    turn = up[0] * across[1] - up[1] * across[0]
    return None if turn == 0 else "left" if turn > 0 else "right"


def is_upside_down(view: TracedView, points: Points) -> bool:
    """Tell whether a foot from the side or the front stands under its ground line; a sole may lie any way round."""
    up = None if view == "sole" else _up(points)
    return up is not None and up[1] > 0


def side_of(foot: Foot) -> Right:
    """Tell whether a foot is a left or a right one."""
    return "left" if foot.startswith("left") else "right"


def _toe(points: Points) -> Way | None:
    """From the heels of a sole towards its toe."""
    if {"frog_apex", "frog_medial", "frog_lateral"} <= points.keys():
        return _way(_middle([*points["frog_medial"], *points["frog_lateral"]]), points["frog_apex"][0])
    if {"wall", "buttress_medial", "buttress_lateral"} <= points.keys():
        return _way(_middle([*points["buttress_medial"], *points["buttress_lateral"]]), _middle(points["wall"]))
    if {"bar_medial", "bar_lateral"} <= points.keys():
        bars = points["bar_medial"], points["bar_lateral"]
        return _way(_middle([bar[0] for bar in bars]), _middle([bar[-1] for bar in bars]))
    return None


def _up(points: Points) -> Way | None:
    """From the ground of a side or front view straight up to the rest of it."""
    others = [spot for name, spots in points.items() if name != "ground" for spot in spots]
    if "ground" not in points or not others:
        return None
    ground = _way(*points["ground"])
    across = (-ground[1], ground[0])
    away = _dot(_way(points["ground"][0], _middle(others)), across)
    return across if away > 0 else (ground[1], -ground[0])


def _across(points: Points, pair: tuple[str, str]) -> Way:
    """From medial to lateral."""
    medial, lateral = (_middle(points[name]) for name in pair)
    return _way(medial, lateral)


def _middle(spots: Sequence[Spot]) -> Spot:
    return Spot(*(sum(axis) / len(spots) for axis in zip(*spots, strict=True)))


def _way(start: Spot, end: Spot) -> Way:
    return end.x - start.x, end.y - start.y


def _dot(one: Way, other: Way) -> float:
    return one[0] * other[0] + one[1] * other[1]
