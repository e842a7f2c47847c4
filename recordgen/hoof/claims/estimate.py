"""Since when a series has changed, and by how much: all shapes of a change, each weighed by how well it fits."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from recordgen.hoof.claims.statistic import SHRINK, Floats, Shapes, log_ratios
from recordgen.hoof.mixture import Mixture

Kind = Literal["step", "trend"]


@dataclass(frozen=True)
class Estimate:
    """The change of a series.

    kind: at once between two visits, or little by little. start: the index of the first reading after a step, or of
    that at which a trend begins. change: from before it to the last reading, in the unit of the readings.
    """

    kind: Kind
    start: int
    change: Mixture


def estimate(sizes: Floats, shapes: Shapes) -> Estimate:
    """The likeliest kind and start of a change, and its size over all shapes that go the same way as the likeliest.

    What went up and came down again has shapes of both ways, between which no size lies.
    sizes: (m,), of each shape its size in standard errors. Raises ValueError where the readings could show no change.
    """
    if not len(sizes):
        raise ValueError("these readings could show no change")
    logs = log_ratios(sizes)
    weights = np.where(sizes * sizes[np.argmax(logs)] >= 0, np.exp(logs - logs.max()), 0)
    weights /= weights.sum()
    trend = bool(weights[shapes.ramp].sum() > 0.5)
    best = int(np.argmax(np.where(shapes.ramp == trend, weights, -1)))
    one_error = shapes.rises[:, -1] * shapes.errors
    parts = zip(weights, SHRINK * sizes * one_error, SHRINK**0.5 * one_error, strict=True)
    likely = [(float(weight), float(mean), float(sd)) for weight, mean, sd in parts if weight > 0]
    return Estimate("trend" if trend else "step", int(shapes.starts[best]), Mixture(tuple(likely)))
