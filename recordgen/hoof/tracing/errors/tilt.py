"""The error of the camera: it is seldom quite square to the foot, and a rule lies seldom quite in its plane.

The picture does not show it. So each draw takes the picture for one of a camera that was off by another angle, and sees
the foot as it would have been then. Derived from: the pinhole camera.
"""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.errors.draws import frame
from recordgen.hoof.tracing.errors.standard import PLANE, SCALE_FROM, SCALE_TO, TILT, standard_errors
from recordgen.hoof.tracing.foot_frame import Floats, Points

# SD of how far the camera is from square to the foot, degrees about each of two axes: of a hundred pictures five are
# more than 8.6 degrees off. How far away it is, and SD of how far the rule lies from the plane of the foot, both mm:
# an arm's length, and a rule that lies across a foot. Judgement; the method page tells them.
TILT_DEG, AWAY_MM, OFF_PLANE_MM = 3.5, 450.0, 2.5
# Across the landmarks of a foot, where no scale tells their size, mm. Judgement.
USUAL_SIZE_MM = 130.0
SCALE = (SCALE_FROM, SCALE_TO)


def as_seen_square(px: Points, draws: Points, mm_per_px: float | None) -> dict[str, Floats]:
    """Landmarks as a camera square to the foot would show them, each draw with another tilt, (draws, n, 2), px.

    px: as picked, (n, 2), by which the tilts turn and fold with the foot. draws: (draws, n, 2). mm_per_px: None where
    no scale tells it. The ends of the scale come out as if it lay in the foot's plane, which it does but for some mm.
    Where nothing but one point was picked, no tilt tells anything, and the draws come out as they are.
    """
    axes = frame(px, np.eye(2))
    own = np.concatenate([spots for name, spots in px.items() if name not in SCALE] or [np.zeros((1, 2))]) @ axes.T
    low, high = own.min(axis=0), own.max(axis=0)
    middle = (low + high) / 2 @ axes
    across = float(np.hypot(*(high - low)))
    if not across:
        return dict(draws)
    away = AWAY_MM / (mm_per_px or USUAL_SIZE_MM / across)
    count = len(next(iter(draws.values())))
    tilt = np.radians(TILT_DEG) * standard_errors(TILT, count, 1) @ axes
    found = {name: _square(spots - middle, tilt, away) for name, spots in draws.items()}
    return found | _in_plane({name: found[name] for name in SCALE if name in found})


def _square(spots: Floats, tilt: Floats, away: float) -> Floats:
    """Points of a tilted plane, seen from `away`, as they lie in it; px from where the camera looks.

    tilt: (draws, 1, 2): towards where the plane falls away, as long as the angle, rad.
    """
    angle = np.hypot(tilt[..., 0], tilt[..., 1])[..., None]
    way = tilt / np.where(angle > 0, angle, 1)
    along = (spots * way).sum(axis=-1, keepdims=True)
    down = along * away / (away * np.cos(angle) - along * np.sin(angle))
    across = (spots - along * way) * (1 + down * np.sin(angle) / away)
    return np.asarray(down * way + across)


def _in_plane(ends: Points) -> dict[str, Floats]:
    """The ends of a scale that lay some mm above or below the foot, as they would show in its plane."""
    if not ends:
        return {}
    middle = (ends[SCALE_FROM] + ends[SCALE_TO]) / 2
    off = OFF_PLANE_MM / AWAY_MM * standard_errors(PLANE, len(middle), 1)[..., :1]
    return {name: middle + (spots - middle) * (1 + off) for name, spots in ends.items()}
