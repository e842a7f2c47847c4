"""One picture traced twice or more: the error of the hand that traced it, and of a practice's hands over all such."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
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


@dataclass(frozen=True)
class PictureSpread:
    """One picture traced more than once.

    variance: of one picked coordinate within the picture, in what its tracings tell. freedom: one less than tracings.
    """

    variance: float
    freedom: int


def traced_again(visit: Visit) -> Iterator[list[Tracing]]:
    """The tracings of each picture that was traced more than once."""
    for found in visit.feet.values():
        pictures: list[list[Tracing]] = []
        for one in found.tracings:
            alike = next((held for held in pictures if same_picture(held[0], one)), None)
            if alike is None:
                pictures.append([one])
            else:
                alike.append(one)
        yield from (held for held in pictures if len(held) > 1)


def own_hand_times(visits: Iterable[Visit], usual_error: float) -> float:
    """Tell how much larger the error of a practice's hands is than its tracings tell; 1 from too few pictures.

    usual_error: SD of one point picked, in px at an image 1000 px wide, where a tracing tells none.
    """
    return pooled(hand_again(visits, usual_error))


def pooled(pictures: Sequence[PictureSpread]) -> float:
    """The error over all pictures, times what was told; 1 from too few pictures.

    Source: Bland & Altman 1996, BMJ 312:1654, within-subject standard deviation, each subject by its degrees of
    freedom; so ISO 5725-2:2019 pools repeatability; from memory, not read.
    """
    if len(pictures) < FEWEST_PICTURES:
        return 1.0
    squares = math.fsum(one.freedom * one.variance for one in pictures)
    return math.sqrt(squares / sum(one.freedom for one in pictures))


def hand_again(visits: Iterable[Visit], usual_error: float) -> list[PictureSpread]:
    """Tell how far the hand wandered on each picture traced more than once, against what its tracings tell."""
    groups = [alike for visit in visits for alike in traced_again(visit)]
    found = [PictureSpread(_variance(alike, lambda one: one.error_px(usual_error)), len(alike) - 1) for alike in groups]
    return [one for one in found if one.variance]


def hand_error_within(alike: Sequence[Tracing]) -> float | None:
    """The standard deviation of one picked coordinate, px, within one picture; None where nothing fits."""
    return math.sqrt(_variance(alike, lambda _: 1.0)) or None


def _variance(alike: Sequence[Tracing], told: Callable[[Tracing], float]) -> float:
    """The variance of a picked coordinate within one picture, in what was told of it; 0 where nothing fits.

    The pairs of three tracings are not independent; the mean of their variances is that of all three, with two degrees
    of freedom. Derived from: the sample variance is half the mean square of all differences.
    """
    squares = [
        2 * error**2 / (told(one) ** 2 + told(other) ** 2)
        for one, other in combinations(alike, 2)
        if (error := hand_error_px(one, other))
    ]
    return math.fsum(squares) / len(squares) if squares else 0.0


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
