"""The foot's own frame: toe up the page, lateral to the right, whatever foot it is and however the picture was held."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Points = Mapping[str, Floats]

FROG = ("frog_apex", "frog_medial", "frog_lateral")


@dataclass(frozen=True)
class FootFrame:
    """The place of a foot in the picture, each (..., 2).

    origin: the middle of the frog's base, mm. toe: unit vector along the frog's axis, towards its apex. lateral: unit
    vector across it, towards the lateral side.
    """

    origin: Floats
    toe: Floats
    lateral: Floats

    def seen(self, points: Floats) -> Floats:
        """Points in the foot's frame: x across the axis, lateral positive; y along it, toe positive.

        points: (..., n, 2), mm; the result the same.
        """
        away = points - self.origin[..., None, :]
        return np.stack([_along(away, self.lateral), _along(away, self.toe)], axis=-1)


def _along(away: Floats, direction: Floats) -> Floats:
    return np.asarray((away * direction[..., None, :]).sum(axis=-1))


def frame_of(points: Points) -> FootFrame | None:
    """The foot's frame from its frog; None where a point of the frog is missing or two of them coincide.

    The frog's axis runs from the middle of its base corners to its apex. Which side is lateral is told by the names
    of the base corners alone, so that a right foot and the mirror image of it, a left one, have the same figures.
    """
    if any(name not in points for name in FROG):
        return None
    apex, medial, lateral = (points[name][..., 0, :] for name in FROG)
    return frame_along((medial + lateral) / 2, apex, lateral - medial)


def frame_along(origin: Floats, apex: Floats, to_lateral: Floats) -> FootFrame | None:
    """The frame with an axis from origin to apex; None where it has no length, or no side.

    origin, apex: (..., 2), mm. to_lateral: (..., 2), any vector that points more to the lateral side than not.
    """
    axis = np.asarray(apex - origin, dtype=float)
    length = np.hypot(axis[..., 0], axis[..., 1])
    if not np.all(length > 0):
        return None
    toe = axis / length[..., None]
    across = np.stack([toe[..., 1], -toe[..., 0]], axis=-1)
    side = np.sign((across * to_lateral).sum(axis=-1))
    if not np.all(side):
        return None
    return FootFrame(origin, toe, across * side[..., None])


def in_foot(points: Points) -> dict[str, Floats] | None:
    """All points in the foot's frame, mm; None where the frog gives none."""
    frame = frame_of(points)
    return None if frame is None else {name: frame.seen(found) for name, found in points.items()}
