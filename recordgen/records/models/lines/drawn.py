"""The lines of a tracing as they run between its points: straight from one to the next, or smooth through all."""

from __future__ import annotations

from collections.abc import Mapping

from recordgen.records.models.lines.smooth import Floats, smooth
from recordgen.records.models.tracing import OUTLINES, Tracing

Points = Mapping[str, Floats]


def drawn_lines(points: Points, tracing: Tracing) -> dict[str, Floats]:
    """The landmarks of a tracing with its lines as they were drawn, (..., m, 2) each.

    points: by name what was tapped, (..., n, 2), in any unit; leading axes are draws, which are drawn anew each.
    """
    if tracing.drawn == "straight":
        return dict(points)
    return {name: smooth(found) if name in OUTLINES else found for name, found in points.items()}
