"""A picture from the side or the front made upright: the ground level, and the foot looking the same way each time."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.outline_frame import Floats, Points


def level(points: Points) -> dict[str, Floats] | None:
    """The landmarks with the ground at y = 0 and up above it, (..., n, 2); None where the ground was not traced.

    points: (..., n, 2), mm, y up, as the picture was held. Which of the ground's two points comes first does not
    matter: up is where the other landmarks lie. So the roll of the camera drops out.
    """
    ground = points.get("ground")
    if ground is None:
        return None
    along = ground[..., 1, :] - ground[..., 0, :]
    along = along / np.hypot(along[..., 0], along[..., 1])[..., None]
    up = np.stack([-along[..., 1], along[..., 0]], axis=-1)
    found = {name: _seen(spots - ground[..., :1, :], along, up) for name, spots in points.items()}
    others = [spots[..., 1] for name, spots in found.items() if name != "ground"]
    if not others:
        return found
    below = np.concatenate(others, axis=-1).mean(axis=-1) < 0
    # Half a turn, not a mirror: what faced left faces right.
    return {name: np.where(below[..., None, None], -spots, spots) for name, spots in found.items()}


def _seen(away: Floats, along: Floats, up: Floats) -> Floats:
    return np.stack([(away * axis[..., None, :]).sum(axis=-1) for axis in (along, up)], axis=-1)


def mirrored(points: Points, flip: NDArray[np.bool_]) -> dict[str, Floats]:
    """Landmarks seen from the other side where `flip`, (...), is true."""
    sign = np.stack([np.where(flip, -1.0, 1.0), np.ones(np.shape(flip))], axis=-1)[..., None, :]
    return {name: spots * sign for name, spots in points.items()}


def rise(direction: Floats) -> Floats:
    """The angle of a direction that points up, against the ground to the right, degrees from 0 to 180, (...)."""
    return np.asarray(np.degrees(np.arctan2(direction[..., 1], direction[..., 0])))
