"""One picture traced twice: the error of the hand that traced it, and of a practice's hands over all such pictures."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.records.models.lines.drawn import drawn_lines
from recordgen.records.models.lines.points import Spot
from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit

# From so many pictures on a practice's own error takes the place of the one that each tracing tells. Judgement.
FEWEST_PICTURES = 5


def same_picture(first: Tracing, again: Tracing) -> bool:
    """Tell whether two tracings are of one picture, by what it shows, its name, its checksum and its size."""
    sums = {one.sha256 for one in (first, again)} - {None}
    return _shown(first) == _shown(again) and len(sums) < 2


def _shown(one: Tracing) -> tuple[object, ...]:
    return one.view, one.moment, one.file, one.image


def traced_twice(visit: Visit) -> Iterator[tuple[Tracing, Tracing]]:
    """The pairs of tracings of one picture."""
    for found in visit.feet.values():
        yield from (pair for pair in combinations(found.tracings, 2) if same_picture(*pair))


def own_hand_times(visits: Iterable[Visit], usual_error: float) -> float:
    """Tell how much larger the error of a practice's hands is than its tracings tell; 1 from too few pictures.

    usual_error: SD of one point picked, in px at an image 1000 px wide, where a tracing tells none.
    Source: Bland & Altman 1996, BMJ 312:1654, within-subject standard deviation from pairs, each against what was told.
    """
    return pooled(hand_times(visits, usual_error))


def pooled(times: Sequence[float]) -> float:
    """The error over all pictures by that of each, both times what was told; 1 from too few pictures."""
    if len(times) < FEWEST_PICTURES:
        return 1.0
    return math.sqrt(math.fsum(one * one for one in times) / len(times))


def hand_times(visits: Iterable[Visit], usual_error: float) -> list[float]:
    """Tell how much larger the error of the hand is than its tracings tell, of each picture traced twice."""
    pairs = [pair for visit in visits for pair in traced_twice(visit)]
    return [error / pair[0].error_px(usual_error) for pair in pairs if (error := hand_error_px(*pair))]


def hand_error_px(first: Tracing, again: Tracing) -> float | None:
    """The standard deviation of one picked coordinate, px, from a picture traced twice; None where nothing fits.

    Each difference between two picks has twice the variance of one. Lines with another number of points, and long ones
    whose points are nobody's landmark, count by the distance of each point from the other line, a coordinate each.
    Source: Bland & Altman 1996, BMJ 312:1654, within-subject standard deviation from pairs.
    """
    one, other = first.named(), again.named()
    points = {name: np.array(spots, dtype=float) for name, spots in other.items()}
    lines = drawn_lines(points, again)
    both = [name for name in one if name in other]
    differences = [found for name in both for found in _differences(one[name], other[name], lines[name])]
    return math.sqrt(math.fsum(d * d for d in differences) / (2 * len(differences))) if differences else None


def _differences(one: tuple[Spot, ...], other: tuple[Spot, ...], drawn: Floats) -> Iterator[float]:
    """The differences of two picks of one landmark; drawn: the other one's line."""
    if len(one) == len(other) <= 2:
        for (x, y), (also_x, also_y) in zip(one, other, strict=True):
            yield from (x - also_x, y - also_y)
        return
    from shapely import LineString, Point

    line = LineString(drawn)
    # Ends may lie beyond the other line's, which is no error across it.
    yield from (line.distance(Point(spot)) for spot in one[1:-1])
