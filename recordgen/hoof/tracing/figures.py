"""Figures of a foot's tracings: each figure with its error, and which landmarks are missing for the others.

The errors go through every figure by Monte Carlo: each point, the ends of the scale among them, is picked anew so many
times with a normal error of the hand, the lines run anew between the points, a photograph is seen by a camera that was
held otherwise, and the spread of the figure over these draws is its standard deviation.
The delta method would do for smooth figures alone; the widest place and the greatest gap have corners.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeVar

import numpy as np

from recordgen.hoof.tracing import front as front_view
from recordgen.hoof.tracing import mirror
from recordgen.hoof.tracing import side as side_view
from recordgen.hoof.tracing import sole as outline
from recordgen.hoof.tracing import wall_thickness as ring
from recordgen.hoof.tracing.errors.draws import DRAWS, redrawn
from recordgen.hoof.tracing.errors.spread import Compute, Draws, Figure, Told, spread_of
from recordgen.hoof.tracing.errors.standard import SCALE_FROM, SCALE_TO
from recordgen.hoof.tracing.errors.tilt import as_seen_square
from recordgen.hoof.tracing.errors.twice import hand_error_within, same_picture
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.lines.drawn import drawn_lines, strayed_lines
from recordgen.records.models.tracing import TracedMoment, TracedView, Tracing

# Named among what lacks where no scale lay on the foot.
SCALE = "scale"
# The units of a figure that take a scale.
LENGTHS = ("_mm", "_mm2")
# Pictures count y downwards.
UP = np.array([1.0, -1.0])


class Group(NamedTuple):
    """Some figures of a view: what tells them of landmarks, what each needs, and what tells them with their errors."""

    compute: Compute
    needs: Mapping[str, tuple[str, ...]]
    told: Told


def _group(compute: Compute, needs: Mapping[str, tuple[str, ...]], told: Told | None = None) -> Group:
    return Group(compute, needs, told or spread_of(compute))


COMPUTED: Mapping[TracedView, tuple[Group, ...]] = {
    "side": (_group(side_view.side_figures, side_view.NEEDS),),
    "front": (_group(front_view.front_figures, front_view.NEEDS),),
    "sole": (
        _group(outline.sole_figures, outline.NEEDS),
        _group(mirror.mirror_figures, mirror.NEEDS, mirror.told_mirror),
        _group(ring.ring_figures, ring.NEEDS, ring.told_ring),
    ),
}


@dataclass(frozen=True)
class Traced:
    """One tracing: its landmarks, lines as drawn, (n, 2) each, in mm with y up, its figures, and what others lack.

    Without a scale the landmarks are in px.

    hand_px: the standard deviation of one picked point, px, that the errors are reckoned with.
    """

    tracing: Tracing
    points: Points
    figures: Mapping[str, Figure]
    lacking: Mapping[str, tuple[str, ...]]
    hand_px: float


Figures = Mapping[str, Figure]
Value = TypeVar("Value", Floats, Figure)
# Finds the figures of a tracing with their errors; `reckoned` does, or a memory of what it found.
Reckon = Callable[[Tracing, float], Figures]


def reckoned(tracing: Tracing, hand_px: float) -> dict[str, Figure]:
    """The figures of a tracing by name, each with its error. hand_px: SD of one picked coordinate, px.

    Some tens of milliseconds, most of it for the draws.
    """
    return dict(_with_errors(tracing, hand_px))


def traced(
    found: FootVisit, usual_error: float, reckon: Reckon = reckoned, hand_times: float = 1.0
) -> tuple[Traced, ...]:
    """Figures of a foot's tracings, one for each view and moment, in the order written.

    Where one was done twice, the first counts; where both are of one picture, they tell the error of the hand.
    usual_error: SD of one point picked, in px at an image 1000 px wide, where a tracing tells none. hand_times: how
    much larger the practice's own is than what is told.
    """
    return tuple(_traced(alike, usual_error, reckon, hand_times) for alike in _by_picture(found.tracings))


def _by_picture(tracings: Iterable[Tracing]) -> Iterator[list[Tracing]]:
    found: dict[tuple[TracedView, TracedMoment], list[Tracing]] = {}
    for one in tracings:
        found.setdefault((one.view, one.moment), []).append(one)
    yield from found.values()


def _traced(alike: Sequence[Tracing], usual_error: float, reckon: Reckon, hand_times: float) -> Traced:
    first = alike[0]
    hand = hand_error_within([one for one in alike if same_picture(first, one)])
    hand = hand or first.error_px(usual_error) * hand_times
    plain, figures = landmarks(first, tapped_points(first)), reckon(first.by_hand_of(usual_error), hand)
    lacking = {
        name: tuple(mark for mark in _needed(name, needed, first) if mark not in plain)
        for group in COMPUTED[first.view]
        for name, needed in group.needs.items()
        if name not in figures
    }
    return Traced(first, plain, figures, lacking, hand)


def _needed(name: str, marks: tuple[str, ...], tracing: Tracing) -> tuple[str, ...]:
    return marks if tracing.tells_lengths or not is_length(name) else (*marks, SCALE)


def is_length(figure: str) -> bool:
    """Tell whether a figure is a length or an area, which nobody knows without a scale; told by its unit."""
    return figure.endswith(LENGTHS)


def _with_errors(tracing: Tracing, hand_px: float) -> Iterator[tuple[str, Figure]]:
    px = tapped_points(tracing)
    plain, draws = landmarks(tracing, px), _draws(tracing, px, hand_px)
    for group in COMPUTED[tracing.view]:
        told = group.told(plain, draws)
        yield from tellable(tracing, told).items()


def _draws(tracing: Tracing, px: Points, hand_px: float) -> Draws:
    """The landmarks as they may have been, by each kind of error."""
    shaken = redrawn(px, hand_px, DRAWS, _times(tracing))
    strayed = seen = strayed_lines(shaken, tracing, DRAWS)
    if tracing.of == "photograph":
        seen = as_seen_square(px, strayed, tracing.scale.mm_per_px if tracing.scale else None)
    return Draws(*(_in_mm(tracing, drawn) for drawn in (drawn_lines(shaken, tracing), strayed, seen)))


def _times(tracing: Tracing) -> dict[str, float]:
    """Tell how much larger the error of a landmark is, by the names of `picked`."""
    times = tracing.error_times()
    scale = {end: times["scale"] for end in (SCALE_FROM, SCALE_TO) if "scale" in times}
    return times | scale


def plain_values(tracing: Tracing) -> dict[str, float]:
    """The figures of one tracing by name as they were picked, without their errors: a hundred times as quick."""
    points = landmarks(tracing, tapped_points(tracing))
    groups = COMPUTED[tracing.view]
    found = {name: value for group in groups for name, value in group.compute(points).items()}
    return {name: float(value) for name, value in tellable(tracing, found).items() if math.isfinite(value)}


def tellable(tracing: Tracing, found: Mapping[str, Value]) -> dict[str, Value]:
    """Those of its figures that a tracing can tell: no lengths where no scale lay on the foot."""
    return {name: value for name, value in found.items() if tracing.tells_lengths or not is_length(name)}


def tapped_points(tracing: Tracing) -> dict[str, Floats]:
    """The points tapped in a tracing and both ends of its scale, (n, 2) each, in px with y down."""
    ends = tracing.scale.ends if tracing.scale else ()
    scale = zip((SCALE_FROM, SCALE_TO), ((end,) for end in ends), strict=False)
    return {name: np.array(spots, dtype=float) for name, spots in (*tracing.named().items(), *scale)}


def tapped_landmarks(tracing: Tracing) -> dict[str, Floats]:
    """The same without the ends of the scale."""
    return {name: spots for name, spots in tapped_points(tracing).items() if name not in (SCALE_FROM, SCALE_TO)}


def landmarks(tracing: Tracing, px: Points) -> dict[str, Floats]:
    """The landmarks with their lines drawn, (..., m, 2), y up; in mm, or in px where the tracing has no scale.

    px: (..., n, 2), as `tapped_points` gives them, or `redrawn`; the ends of the scale are left out of the result.
    """
    return _in_mm(tracing, drawn_lines(px, tracing))


def _in_mm(tracing: Tracing, px: Points) -> dict[str, Floats]:
    """Drawn landmarks with y up, in mm where the tracing has a scale."""
    if tracing.scale is None:
        return {name: spots * UP for name, spots in px.items()}
    return in_mm(px, tracing.scale.length)


def in_mm(px: Points, length_mm: float) -> dict[str, Floats]:
    """Landmarks in mm with y up, the ends of the scale left out. px: (..., n, 2), as `tapped_points` gives them.

    length_mm: the true length of the scale.
    """
    span = px[SCALE_TO] - px[SCALE_FROM]
    mm_per_px = length_mm / np.hypot(span[..., 0], span[..., 1])[..., None]
    return {name: spots * mm_per_px * UP for name, spots in px.items() if name not in (SCALE_FROM, SCALE_TO)}
