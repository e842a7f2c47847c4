"""Findings, each marked at its place in one colour, each kind by a form of its own so that grey prints tell it too."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import groupby

from recordgen.hoof.observations import Finding
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.feet.sole_form import BAR_LINE, SIDE_GROOVE, SoleForm, zone_shares
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, circle, curve, dots, join_pieces, line, segments
from recordgen.records.models.names import ZONES, Place, Zone, zone_named

LEAST_BULGE, MOST_BULGE, BULGE_UNSIZED = 3.0, 13.0, 4.0
LEAST_GAP, MOST_GAP, GAP_UNSIZED = 3.0, 7.0, 4.0
RING = 5.2
RINGS_APART = 12.5

EDGE = Pen("clay", 1.4, "clay")
HATCHED = Pen("clay", 1.3, "card")
STROKE = Pen("clay", 1.8, round_ends=True)
BROAD = Pen("clay", 5.2, round_ends=True)

# Middles of the places that are no zone of the wall: across and back in shares, as in `sole_form.py`.
SPOTS: dict[str, Point] = {
    "frog": (0.0, 0.55),
    "central groove": (0.0, 0.86),
    "sole": (0.0, 0.22),
    "heel bulbs": (0.0, 1.13),
    "lateral groove": (0.37, 0.77),
    "medial groove": (-0.37, 0.77),
    "lateral bar": (0.46, 0.735),
    "medial bar": (-0.46, 0.735),
}
CORONET_OUTSIDE = 8.0

LINES: dict[str, tuple[tuple[Point, ...], int]] = {
    "central groove": (((0.0, 0.74), (0.0, 0.86), (0.0, 0.99)), 1),
    "frog": (((0.0, 0.44), (0.0, 0.52), (0.0, 0.64)), 1),
    "lateral groove": (SIDE_GROOVE, 1),
    "medial groove": (SIDE_GROOVE, -1),
    "lateral bar": (BAR_LINE, 1),
    "medial bar": (BAR_LINE, -1),
}

Marker = Callable[[Canvas, SoleForm, Finding], None]


def draw_findings(canvas: Canvas, sole: SoleForm, findings: Sequence[Finding]) -> None:
    """Every finding at its place, those of one kind at one place together, each telling its text when pointed at."""
    rings: dict[Place, int] = {}
    ordered = sorted(findings, key=lambda finding: (_layer(finding), finding.place, finding.kind))
    for _, group in groupby(ordered, key=lambda finding: (finding.place, finding.kind)):
        same = list(group)
        with canvas.group("\n".join(finding.text for finding in same)):
            _draw_one(canvas, sole, max(same, key=lambda finding: finding.size_mm or 0), rings)


def _layer(finding: Finding) -> int:
    kinds = list(MARKERS)
    return kinds.index(finding.kind) if finding.kind in kinds else len(kinds)


def _draw_one(canvas: Canvas, sole: SoleForm, finding: Finding, rings: dict[Place, int]) -> None:
    places, marker = MARKERS.get(finding.kind, (frozenset(), None))
    if marker and finding.place in places:
        marker(canvas, sole, finding)
        return
    _ring(canvas, ring_centre(sole, finding.place, rings.get(finding.place, 0)))
    rings[finding.place] = rings.get(finding.place, 0) + 1


def ring_centre(sole: SoleForm, place: Place, count: int) -> Point:
    """The place where the ring of a finding stands; the second and third at one place stand beside the first."""
    aside = RINGS_APART * ((count + 1) // 2) * (1 if count % 2 else -1)
    zone = zone_named(place)
    if zone:
        start, end = zone_shares(zone)
        middle = (start + end) / 2
        return sole.wall(middle + aside / 150, -sole.thickness(middle) / 2)
    if place == "coronet":
        return sole.wall(aside / 150, CORONET_OUTSIDE)
    x, y = sole.part([SPOTS[place]])[0]
    return x + aside, y


def _ring(canvas: Canvas, centre: Point) -> None:
    canvas.draw(circle(centre, RING), Pen("clay", 2.0, "card"))
    canvas.draw(dots([centre]), Pen("clay", 3.2, round_ends=True))


def _zone(finding: Finding) -> tuple[float, float]:
    zone: Zone = zone_named(finding.place) or "toe"
    return zone_shares(zone)


def bulge_form(sole: SoleForm, start: float, end: float, bulge: float) -> Shape:
    """A swelling outside the wall between two shares, as high in its middle as `bulge`, mm."""
    start, end = start - 0.04, end + 0.04
    shares = [start + (end - start) * step / 10 for step in range(11)]
    out = [sole.wall(share, bulge * math.sin(math.pi * step / 10) ** 0.8) for step, share in enumerate(shares)]
    inside = [sole.wall(share, -sole.thickness(share) * 0.35) for share in shares]
    return _band(out, list(reversed(inside)))


def _band(there: Sequence[Point], back: Sequence[Point]) -> Shape:
    """A closed band between two smooth edges."""
    first, second = curve(there), curve(back)
    pieces = [*_pieces(first), (there[-1], back[0], back[0]), *_pieces(second)]
    return join_pieces(pieces, there[0], closed=True)


def _pieces(shape: Shape) -> list[tuple[Point, Point, Point]]:
    inner = shape.points[1:]
    return [(inner[i], inner[i + 1], inner[i + 2]) for i in range(0, len(inner), 3)]


def _flare(canvas: Canvas, sole: SoleForm, finding: Finding) -> None:
    bulge = min(max(finding.size_mm or BULGE_UNSIZED, LEAST_BULGE), MOST_BULGE)
    canvas.draw(bulge_form(sole, *_zone(finding), bulge), EDGE)


def _separation(canvas: Canvas, sole: SoleForm, finding: Finding) -> None:
    gap = min(max(finding.size_mm or GAP_UNSIZED, LEAST_GAP), MOST_GAP)
    start, end = _zone(finding)
    start, end = start + 0.03, end - 0.03
    shares = [start + (end - start) * step / 8 for step in range(9)]
    outer = [sole.wall(share, -sole.thickness(share) + 0.8) for share in shares]
    inner = [sole.wall(share, -sole.thickness(share) - gap) for share in shares]
    canvas.draw(_band(outer, list(reversed(inner))), HATCHED)
    canvas.draw(segments(zip(outer, inner, strict=True)), Pen("clay", 1.2))


def _crack(canvas: Canvas, sole: SoleForm, finding: Finding) -> None:
    start, end = _zone(finding)
    middle = (start + end) / 2
    depth = sole.thickness(middle) + 5
    steps = [(0.0, 3.5), (0.018, 0.0), (-0.018, -depth * 0.3), (0.018, -depth * 0.65), (0.0, -depth)]
    points = [sole.wall(middle + aside, outward) for aside, outward in steps]
    canvas.draw(line(points), Pen("card", 4.0, round_ends=True))
    canvas.draw(line(points), STROKE)


def _along(canvas: Canvas, sole: SoleForm, finding: Finding) -> None:
    shares, side = LINES[finding.place]
    canvas.draw(curve(sole.part(shares, side)), BROAD)


def _speckles(canvas: Canvas, sole: SoleForm, finding: Finding) -> None:
    _along(canvas, sole, finding)
    shares, side = LINES[finding.place]
    canvas.draw(curve(sole.part(shares, side)), Pen("card", 1.7, dash=(0.1, 4.2), round_ends=True))


WALL: frozenset[str] = frozenset(ZONES)
GROOVES: frozenset[str] = frozenset({"central groove", "medial groove", "lateral groove", "frog"})
BARS: frozenset[str] = frozenset({"medial bar", "lateral bar"})

# In the order they are drawn, so that a narrow mark is never hidden by a broad one.
MARKERS: dict[str, tuple[frozenset[str], Marker]] = {
    "flare": (WALL, _flare),
    "separation": (WALL, _separation),
    "bar": (BARS, _along),
    "infection": (GROOVES, _speckles),
    "crack": (WALL, _crack),
}
