"""What of the ring stands above a smooth curve that is alike on both sides.

A sound ring is not everywhere as thick: in front feet it thins from the toe to the quarters, in hind feet hardly
(Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, p. 47). So a flare is not what is thicker than the middle
of the ring, but what stands above a curve that thins like a sound wall, a + b cos t + c cos 2t with t from the toe.
"""

from __future__ import annotations

import numpy as np

from recordgen.hoof.outline_frame import Floats

# Beyond these many spreads of the ring about the curve a place counts less: above sooner, as a bulge must not lift the
# curve; below later, as a chip out of the wall must not pull it down.
# Judgement, tried on smooth soles as `baseline` tells.
ABOVE, BELOW = 1.5, 2.5
# The least spread, mm: about the error of a thickness from two picks. Judgement.
LEAST_SPREAD = 0.25
# How fast the weight falls beyond them: with the fourth power, and how often it is weighed anew. Judgement.
FALL = 4
ROUNDS = 20
# The curve is told where the ring was traced this far on both sides, degrees from the toe. Judgement.
FAR_ENOUGH = 90.0


def far_enough(angle_deg: Floats) -> bool:
    """Whether the ring was traced far enough on both sides for a curve through it; angle_deg: (k,), from the toe."""
    return bool(angle_deg.min() <= -FAR_ENOUGH and angle_deg.max() >= FAR_ENOUGH)


def above_baseline(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """What of the thickness stands above the baseline, (..., k), mm; below 0 where the wall is thinner than that.

    angle_deg: (k,), from the toe. thickness_mm: (..., k).
    Raises ValueError where the ring was not traced far enough on both sides.
    """
    return thickness_mm - baseline(angle_deg, thickness_mm)


def baseline(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """The smooth curve through a ring that is the same on both sides, (..., k), mm; arguments as in above_baseline.

    Fitted by least squares, each time with less weight for what stands far off, above sooner than below.

    How well it knows a bulge, tried on smooth soles (toe 12 or 9.5 mm, quarters near 9) with an error of 0.5 mm:
    no bulge: each zone within 0.1 mm. One bulge, 2 to 8 mm high and 30 to 80 degrees wide: its zone's mean 3 % too
    small in the middle of the cases, 17 % at worst (wide ones), the other zones within 0.3 mm. A whole side pushed out,
    140 degrees wide by 4 mm: about half of it is seen, and the other side reads 1 mm too thin. Both quarters
    pushed out alike: 9 tenths of it where they are 50 degrees wide, a quarter where they are 80. A wall that is
    thick at the toe alone reads as a flare there. A chip of 6 mm reads too shallow, and others up to 0.6 mm too thick.
    """
    if not far_enough(angle_deg):
        raise ValueError("the ring was not traced far enough on both sides")
    turn = np.radians(angle_deg)
    curves = np.stack([np.ones_like(turn), np.cos(turn), np.cos(2 * turn)], axis=-1)
    fitted = _fitted(curves, thickness_mm, np.ones_like(thickness_mm))
    for _ in range(ROUNDS):
        fitted = _fitted(curves, thickness_mm, _weights(thickness_mm - fitted))
    return fitted


def _weights(above: Floats) -> Floats:
    """1 near the curve, and less beyond its limit above and below."""
    # 1.4826 makes of the median the standard deviation where errors are normal.
    spread = np.maximum(1.4826 * np.median(np.abs(above), axis=-1, keepdims=True), LEAST_SPREAD)
    limit = np.where(above > 0, ABOVE, BELOW) * spread
    return np.asarray((limit / np.maximum(np.abs(above), limit)) ** FALL)


def _fitted(curves: Floats, thickness: Floats, weight: Floats) -> Floats:
    """Weighted least squares, for all draws at once."""
    weighted = curves.T * weight[..., None, :]
    factors = np.linalg.solve(weighted @ curves, weighted @ thickness[..., None])
    return np.asarray((curves @ factors)[..., 0])
