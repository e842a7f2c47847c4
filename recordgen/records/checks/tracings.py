"""Mistakes and unlikely things of a tracing beyond the form of its points: lines that cross, sides, scale, its picture.

The order in which an outline was traced is never told as wrong; figures go by the names of the points.
"""

from __future__ import annotations

import hashlib
import math
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from recordgen.problems import Problem, Step, warning
from recordgen.records.checks.sizes import ANY, Animal, likely_for
from recordgen.records.checks.tracing_sides import disagreeing, is_upside_down, side_of, traced_as
from recordgen.records.models.annotations import extra
from recordgen.records.models.foot import Measures, Sides
from recordgen.records.models.lines.points import Spot
from recordgen.records.models.lines.shape_table import known_table, known_versions
from recordgen.records.models.names import Foot, Moment
from recordgen.records.models.tracing import OUTLINES, Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.photos.files import PHOTOS
from recordgen.records.photos.names import Subject, parse_photo_name
from recordgen.records.yaml.read import Written
from recordgen.records.yaml.validation_errors import say_steps
from recordgen.sentences import Said, listed, say

# The share of the image's width below which a scale is too short: at 2 % of 1000 px, with 1.5 px of error at each end,
# every length is a tenth off. Derived from: the assumed error of the hand.
SHORTEST_SCALE = 0.02
# How many SD of one point the distance of two points may be off. Derived from: 1.96 x sqrt(2) for 95 in 100.
FURTHEST_OFF = 1.96 * math.sqrt(2)
# How many points outside a line are told by their number.
MOST_TOLD = 8
FROM_HAIRLINE = ("dorsal_wall", "heel_wall", "medial_wall", "lateral_wall")
# What a traced line is as a measure, whose possible and likely range it must fit. A sole is the longer of two.
SIZES = {
    "wall": (say("the sole"), (Measures.model_fields["sole_width"], Measures.model_fields["sole_length"])),
    "dorsal_wall": (say("the front wall"), (Measures.model_fields["toe_length"],)),
    "medial_wall": (say("the inner wall"), (Sides.model_fields["medial"],)),
    "lateral_wall": (say("the outer wall"), (Sides.model_fields["lateral"],)),
}
# From one point of a line to the next, by their indexes.
Stretch = tuple[int, int]


@dataclass(frozen=True)
class TracedAt:
    """One tracing and where it stands. animal: whose foot it is, on that day."""

    visit: Written[Visit]
    foot: Foot
    number: int
    tracing: Tracing
    animal: Animal = ANY

    def problem(self, code: str, message: Said, way_out: Said, *steps: Step, unlikely: bool = False) -> Problem:
        """A problem of this tracing at `steps` inside it; the first of them is named in the message."""
        name = say_steps((self.foot, "tracings", self.number, *steps[:1]))
        place = self.visit.place("feet", self.foot, "tracings", self.number, *steps)
        return (warning if unlikely else Problem)(
            place, code, say("{name}: {message}", name=name, message=message), way_out
        )


def tracing_problems(visit: Written[Visit], animal: Animal) -> Iterator[Problem]:
    """Everything wrong or unlikely about the tracings of a visit beyond the form of their points."""
    for foot, found in visit.record.feet.items():
        for number, tracing in enumerate(found.tracings):
            yield from problems_of(TracedAt(visit, foot, number, tracing, animal))


def problems_of(traced: TracedAt) -> Iterator[Problem]:
    """Everything wrong or unlikely about one tracing beyond the form of its points."""
    for check in _CHECKS:
        yield from check(traced)


def crossing(points: Sequence[Spot]) -> tuple[Stretch, Stretch] | None:
    """Two stretches of an outline that cross or touch, each by the indexes of its ends; None where none do.

    points: the outline in order; the straight line from the last to the first closes it.
    """
    from shapely import LinearRing

    kept = [index for index, point in enumerate(points) if point != points[index - 1]]
    if len(kept) > 2 and LinearRing([points[index] for index in kept]).is_simple:
        return None
    stretches = [(one, kept[(number + 1) % len(kept)]) for number, one in enumerate(kept)]
    pairs = ((one, other) for one, other in combinations(stretches, 2) if _meet(points, one, other))
    return next(pairs, None)


def _meet(points: Sequence[Spot], one: tuple[int, int], other: tuple[int, int]) -> bool:
    """Tell whether two stretches meet anywhere but in the point where one goes on as the other."""
    from shapely import LineString

    lines = [LineString([points[first], points[last]]) for first, last in (one, other)]
    if set(one) & set(other):
        return bool(lines[0].intersection(lines[1]).length > 0)
    return bool(lines[0].intersects(lines[1]))


def outside(points: Sequence[Spot], outline: Sequence[Spot], leeway: float) -> list[int]:
    """The indexes of the points that stand further than `leeway` outside a closed outline; all in px."""
    import shapely

    away = shapely.distance(shapely.Polygon(outline), shapely.points(points))
    return [index for index, distance in enumerate(away) if distance > leeway]


def _crossed(traced: TracedAt) -> Iterator[Problem]:
    points, lines = traced.tracing.named(), _lines(traced.tracing)
    for name in OUTLINES:
        met = crossing(lines[name]) if name in points else None
        if met:
            met = _tapped(met, len(points[name]), len(lines[name]))
            (first, second), (third, fourth) = ((start + 1, end + 1) for start, end in met)
            message = say(
                "it crosses or touches itself, between points {first} and {second} and points {third} and {fourth}",
                first=first,
                second=second,
                third=third,
                fourth=fourth,
            )
            way_out = say("Trace the points in order, once round; the straight line between the ends closes it")
            yield traced.problem("tracing-crosses-itself", message, way_out, name, met[0][0])


def _lines(tracing: Tracing) -> dict[str, tuple[Spot, ...]]:
    """The outlines of a sole as they were drawn, px."""
    if tracing.drawn == "straight":
        return tracing.named()
    import numpy as np

    from recordgen.records.models.lines.drawn import drawn_lines

    points = {name: np.array(spots, dtype=float) for name, spots in tracing.named().items()}
    return {name: tuple(Spot(x, y) for x, y in line.tolist()) for name, line in drawn_lines(points, tracing).items()}


def _tapped(met: tuple[Stretch, Stretch], points: int, drawn: int) -> tuple[Stretch, Stretch]:
    """Stretches of a drawn line as those between the points that were tapped, of which each begins as many."""
    each = (drawn - 1) // (points - 1)
    starts = [start // each for start, _ in met]
    one, other = ((start, (start + 1) % points) for start in starts)
    return one, other


def _white_line_inside(traced: TracedAt) -> Iterator[Problem]:
    line, wall = traced.tracing.white_line, _lines(traced.tracing).get("wall")
    if not wall or not line or crossing(wall):
        return
    out = outside(line, wall, FURTHEST_OFF * traced.tracing.error_px())
    if out:
        numbers: list[str] = [str(index + 1) for index in out[:MOST_TOLD]]
        numbers += [say("{number} more", number=len(out) - MOST_TOLD)] if len(out) > MOST_TOLD else []
        message = say("points {numbers} stand outside the wall", numbers=listed(numbers))
        if len(out) == 1:
            message = say("point {number} stands outside the wall", number=numbers[0])
        way_out = say("Look whether wall and white_line were swapped, or trace these points anew")
        yield traced.problem("tracing-outside-wall", message, way_out, "white_line", out[0])


def _sides_agree(traced: TracedAt) -> Iterator[Problem]:
    for (medial, lateral), (first_medial, first_lateral) in disagreeing(traced.tracing.named()):
        message = say(
            "{medial} and {lateral} lie the other way round than {first_medial} and {first_lateral}",
            medial=medial,
            lateral=lateral,
            first_medial=first_medial,
            first_lateral=first_lateral,
        )
        yield traced.problem(
            "tracing-sides-disagree", message, say("Look whether medial and lateral were swapped"), medial
        )


def _sides_fit_the_foot(traced: TracedAt) -> Iterator[Problem]:
    view, points = traced.tracing.view, traced.tracing.named()
    shown, meant = traced_as(view, points), side_of(traced.foot)
    if shown and shown != meant and not any(disagreeing(points)):
        as_in = say("a left foot") if shown == "left" else say("a right foot")
        if view == "sole":
            message = say("with the toe up, its lateral side lies as in {foot}", foot=as_in)
        else:
            message = say("from the front, its lateral side lies as in {foot}", foot=as_in)
        way_out = say("Look whether the foot was mistaken, medial and lateral were swapped, or the picture is mirrored")
        yield traced.problem("tracing-side-not-foot", message, way_out)


def _from_the_hairline_down(traced: TracedAt) -> Iterator[Problem]:
    points = traced.tracing.named()
    if "ground" not in points:
        return
    for name in FROM_HAIRLINE:
        line = points.get(name)
        if line and _above(line[0], points["ground"]) < _above(line[-1], points["ground"]):
            message = say("its first point is nearer to the ground than its last")
            yield traced.problem("tracing-upside-down", message, say("Write its points from the hairline down"), name)


def _above_the_ground(traced: TracedAt) -> Iterator[Problem]:
    if is_upside_down(traced.tracing.view, traced.tracing.named()):
        message = say("the foot stands under its ground line")
        way_out = say("Look whether the picture is upside down, or the two points on the ground were mistaken")
        yield traced.problem("tracing-under-ground", message, way_out, "ground", unlikely=True)


def _above(point: Spot, ground: Sequence[Spot]) -> float:
    """Tell how far a point is from the ground's line, times the length of that line."""
    one, other = ground
    return abs((other.x - one.x) * (point.y - one.y) - (other.y - one.y) * (point.x - one.x))


def _scale_is_long(traced: TracedAt) -> Iterator[Problem]:
    tracing = traced.tracing
    if tracing.scale and tracing.scale.length_px < SHORTEST_SCALE * tracing.image.width:
        message = say(
            "it is too short to scale by: {length:.0f} px of an image {width} px wide",
            length=tracing.scale.length_px,
            width=tracing.image.width,
        )
        yield traced.problem(
            "tracing-scale-short", message, say("Take two points further apart"), "scale", unlikely=True
        )


def _scale_is_sane(traced: TracedAt) -> Iterator[Problem]:
    scale = traced.tracing.scale
    if scale is None:
        return
    for name, points in traced.tracing.named().items():
        if name not in SIZES:
            continue
        what, fields = SIZES[name]
        ends = combinations(points, 2) if name == "wall" else [(points[0], points[-1])]
        length = max(math.dist(*pair) for pair in ends) * scale.mm_per_px
        least, most = widest(extra(info)["possible"] for info in fields)
        low, high = widest(likely_for(info, traced.animal.size) for info in fields)
        told = say("by it {what} is {length:.0f} mm from end to end", what=what, length=length)
        if not least <= length <= most:
            way_out = say("Look at both ends of the scale, at its length and at the unit")
            yield traced.problem(
                "tracing-scale-impossible",
                say("{told}; {least:g} to {most:g} mm is possible", told=told, least=least, most=most),
                way_out,
                "scale",
            )
        elif not low <= length <= high:
            message = say(
                "{told}, outside {low:g} to {high:g}{named}, so look again",
                told=told,
                low=low,
                high=high,
                named=traced.animal.named,
            )
            yield traced.problem(
                "tracing-scale-unlikely", message, say("It may stand if it is right"), "scale", unlikely=True
            )


def widest(ranges: Iterable[tuple[float, float]]) -> tuple[float, float]:
    """The range that holds all of some."""
    lows, highs = zip(*ranges, strict=True)
    return min(lows), max(highs)


def _table_is_here(traced: TracedAt) -> Iterator[Problem]:
    """A practice's own tables lie in its folder, so that no tracing by itself tells whether its table is there."""
    model = traced.tracing.model
    if model is not None and known_table(model) is None:
        message = say(
            "there is no model {model}; known here: {known_versions}",
            model=model,
            known_versions=", ".join(known_versions()),
        )
        way_out = say("Put its file back into outlines, trace it anew, or take it out")
        yield traced.problem("tracing-model-unknown", message, way_out, "model")


def _after_a_trim(traced: TracedAt) -> Iterator[Problem]:
    if traced.tracing.moment == "after" and not traced.visit.record.trimmed:
        message = say("it shows the foot after a trim, but the visit says trimmed: no")
        yield traced.problem(
            "tracing-after-without-trim", message, say("Take out trimmed: no, or write moment: before"), "moment"
        )


def _has_its_picture(traced: TracedAt) -> Iterator[Problem]:
    name = traced.tracing.file
    if name is None:
        return
    path = traced.visit.file.parent / PHOTOS / name
    if not os.path.isfile(path):
        message = say("there is no such photograph in the horse's folder photos")
        way_out = say("Put it there with recordgen photo, correct the name, or take out file")
        yield traced.problem("tracing-photo-missing", message, way_out, "file", unlikely=True)
    elif traced.tracing.sha256 not in (None, hashlib.sha256(path.read_bytes()).hexdigest()):
        message = say("the photograph was changed since it was traced")
        way_out = say("Look whether the points still fit it, and trace it anew where they do not; then take out sha256")
        yield traced.problem("tracing-photo-changed", message, way_out, "file", unlikely=True)
    about = parse_photo_name(name)
    if about and about[0] not in _subjects(traced):
        message = say("by its name the photograph shows another day, foot, view or moment")
        yield traced.problem(
            "tracing-photo-of-another", message, say("Look which one was traced"), "file", unlikely=True
        )


def _subjects(traced: TracedAt) -> list[Subject]:
    """The subjects its photograph may have by its name."""
    moments: tuple[Moment, ...] = ("found", traced.tracing.moment)
    day = traced.visit.record.date
    return [Subject(day, traced.foot, traced.tracing.view, moment) for moment in moments]


_CHECKS: tuple[Callable[[TracedAt], Iterator[Problem]], ...] = (
    _crossed,
    _white_line_inside,
    _sides_agree,
    _sides_fit_the_foot,
    _from_the_hairline_down,
    _above_the_ground,
    _scale_is_long,
    _scale_is_sane,
    _table_is_here,
    _after_a_trim,
    _has_its_picture,
)
