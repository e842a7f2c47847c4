"""The lines of a tracing as they run between its points: straight, smooth through all, or as outlines usually run.

A white line may then be moved to the ridge that the photograph shows.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from recordgen.records.models.lines.between import astray_by, smooth_astray
from recordgen.records.models.lines.ridge import moved_to_ridge
from recordgen.records.models.lines.shape_table import SHIPPED, known_table
from recordgen.records.models.lines.smooth import Floats, smooth
from recordgen.records.models.lines.usual_shape import Families, families_of, off_the_curve, usual_lines
from recordgen.records.models.tracing import OUTLINES, Tracing

Points = Mapping[str, Floats]


def drawn_lines(points: Points, tracing: Tracing) -> dict[str, Floats]:
    """The landmarks of a tracing with its lines as they were drawn, (..., m, 2) each.

    points: by name what was tapped, (..., n, 2), in px; leading axes are draws, which are drawn anew each. Whether the
    lines follow the usual outlines is asked of the tracing as it was tapped, and holds for all draws.
    """
    if tracing.drawn == "straight":
        return dict(points)
    usual = follows_usual_shape(tracing) and usual_lines(points, tracing.error_px(), usual=_families(tracing))
    return _to_ridge(_smooth(points) | (usual or {}), tracing)


def strayed_lines(points: Points, tracing: Tracing, draws: int) -> dict[str, Floats]:
    """The same as each may run between its taps, (draws, m, 2); straight ones as they were drawn.

    points: taps picked anew, (draws, n, 2). A ridge moves with the line, so that it takes nothing off the error: in the
    trials it brought the line nearer, but a streak of the picture may be another than the white line.
    """
    if tracing.drawn == "straight":
        return dict(points)
    sd, families = tracing.error_px(), _families(tracing)
    astray = astray_by(_tapped(tracing), sd, draws, families)
    usual = follows_usual_shape(tracing) and usual_lines(points, sd, astray, families)
    plain = _smooth(points)
    return _to_ridge(plain | (usual or smooth_astray(points, plain, astray, families)), tracing)


def follows_usual_shape(tracing: Tracing) -> bool:
    """Tell whether the lines of a tracing follow the usual outlines: it says so, and no tap lies off them."""
    if known_table(tracing.model) is None:
        return False
    return not off_the_curve(_tapped(tracing), tracing.error_px(), _families(tracing))


def _families(tracing: Tracing) -> Families:
    """The outlines that a tracing goes by; ours where it names none."""
    return families_of(known_table(tracing.model) or SHIPPED)


def _to_ridge(lines: dict[str, Floats], tracing: Tracing) -> dict[str, Floats]:
    if tracing.ridge is None:
        return lines
    return lines | {"white_line": moved_to_ridge(lines["white_line"], tracing.ridge)}


def _smooth(points: Points) -> dict[str, Floats]:
    return {name: smooth(found) if name in OUTLINES else found for name, found in points.items()}


def _tapped(tracing: Tracing) -> dict[str, Floats]:
    return {name: np.array(spots, dtype=float) for name, spots in tracing.named().items()}
