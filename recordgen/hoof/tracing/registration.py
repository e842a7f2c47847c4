"""One sole laid over another by landmarks that both have, without a change of size."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points


def laid_onto(points: Points, onto: Points) -> dict[str, Floats] | None:
    """The points turned and shifted so that the frog's three landmarks lie nearest to those of another sole.

    points, onto: landmarks in the frames of their feet, mm, (n, 2) each. None where one of them has no whole frog.
    Source: Kabsch 1976, Acta Crystallographica A32:922, least squares of a turn and a shift; from memory, not read.
    """
    if any(name not in one for name in FROG for one in (points, onto)):
        return None
    own, other = (np.concatenate([one[name][:1] for name in FROG]) for one in (points, onto))
    middle, goal = own.mean(axis=0), other.mean(axis=0)
    away, wanted = own - middle, other - goal
    turn = np.arctan2((away[:, 0] * wanted[:, 1] - away[:, 1] * wanted[:, 0]).sum(), (away * wanted).sum())
    turned = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
    return {name: (spots - middle) @ turned + goal for name, spots in points.items()}
