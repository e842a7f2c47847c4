"""The error of the marking hand: every point of a picture picked anew, many times over.

The errors are drawn in the foot's own frame, and those of the scale along the scale, so that they turn with the picture
and fold with the mirror image: the same foot has the same error however it was photographed.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

import numpy as np

from recordgen.hoof.tracing.errors.standard import SCALE_FROM, SCALE_TO, standard_errors
from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points

# The standard deviation is known to about 7 per cent from so many.
DRAWS = 100


def redrawn(
    px: Points, sd_px: float, draws: int = DRAWS, times: Mapping[str, float] = MappingProxyType({})
) -> dict[str, Floats]:
    """The same points picked anew, (draws, n, 2): each with a normal error of its own, the same on every run.

    sd_px: of the error along x and along y. times: by how much it is larger for a landmark that was picked otherwise,
    where it is. A landmark's errors depend on its name and on how the foot lies, not on which others were picked.
    """
    scale = _both(px[SCALE_TO][0] - px[SCALE_FROM][0]) if SCALE_TO in px else np.eye(2)
    foot = frame(px, scale)
    # Seen in a mirror, both turn the other way round.
    scale = scale * [[1.0], [np.sign(np.linalg.det(scale) * np.linalg.det(foot))]]
    return {
        name: spots
        + times.get(name, 1.0)
        * sd_px
        * standard_errors(name, draws, len(spots))
        @ (scale if name in (SCALE_FROM, SCALE_TO) else foot)
        for name, spots in px.items()
    }


def frame(px: Points, usual: Floats) -> Floats:
    """Tell how the foot lies in the picture: unit vectors across and along it, (2, 2), px with y down.

    Of a sole lateral and toe by its frog, else by its wall; from the side forward and up, from the front lateral and up
    by the ground. usual: where nothing of that was picked.
    """
    if all(name in px for name in FROG):
        apex, medial, lateral = (px[name][0] for name in FROG)
        return _towards(apex - (medial + lateral) / 2, lateral - medial, usual)
    others = [spots for name, spots in px.items() if name not in ("ground", SCALE_FROM, SCALE_TO)]
    if "ground" in px and others:
        along = px["ground"][1] - px["ground"][0]
        up = _both(along)[1]
        away = (np.concatenate(others).mean(axis=0) - px["ground"][0]) @ up
        return _towards(up if away > 0 else -up, _forward(px, along), usual)
    if "wall" in px:
        wall = px["wall"]
        return _towards(wall.mean(axis=0) - (wall[0] + wall[-1]) / 2, wall[-1] - wall[0], usual)
    return usual


def _forward(px: Points, along: Floats) -> Floats:
    """The way a foot on the ground faces: where its front wall runs, or its lateral wall lies."""
    if "dorsal_wall" in px:
        return np.asarray(px["dorsal_wall"][-1] - px["dorsal_wall"][0])
    if {"medial_wall", "lateral_wall"} <= px.keys():
        return np.asarray(px["lateral_wall"].mean(axis=0) - px["medial_wall"].mean(axis=0))
    return along


def _towards(up: Floats, side: Floats, usual: Floats) -> Floats:
    """Unit vectors across and along `up`, the first of them on the side that `side` points to."""
    if not np.any(up):
        return usual
    axes = _both(up)[::-1]
    return np.asarray(axes * [[-1.0 if axes[0] @ side < 0 else 1.0], [1.0]])


def _both(along: Floats) -> Floats:
    """A direction and the one across it as unit vectors, (2, 2)."""
    one = along / max(float(np.hypot(*along)), 1e-12)
    return np.array([one, [-one[1], one[0]]])
