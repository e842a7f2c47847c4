"""A figure with its error, by how far it spreads over many draws of what may be off in a tracing."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.hoof.tracing.foot_frame import Floats, Points


@dataclass(frozen=True)
class Figure:
    """A figure of a tracing and its standard deviation by hand, taps and camera, both in the figure's unit."""

    value: float
    sd: float

    @property
    def beyond_error(self) -> bool:
        """Tell whether it differs from nothing by more than its error."""
        return abs(self.value) >= smallest_real_change(self.sd, 0)


@dataclass(frozen=True)
class Draws:
    """Landmarks as they may have been, each (draws, n, 2), mm, one kind of error after the other.

    shaken: picked anew, the lines drawn through them as through those that were picked. strayed: the same picks, each
    line running its own way between them. seen: these as a camera would have shown them that was held otherwise.
    """

    shaken: Points
    strayed: Points
    seen: Points


Compute = Callable[[Points], dict[str, Floats]]
Told = Callable[[Points, Draws], dict[str, Figure]]


def spread_of(compute: Compute) -> Told:
    """Tells figures as they were picked, and how far they spread over the draws. compute: as `sole.sole_figures`."""
    return lambda plain, draws: spread(compute(plain), compute(draws.seen))


def spread(values: Mapping[str, Floats], draws: Mapping[str, Floats]) -> dict[str, Figure]:
    """Figures by name, each with the root of the mean square of how far its draws lie from it as it was picked.

    values: as picked; draws: (draws,) each. So what a curve through few taps leaves out on the mean counts as error.
    """
    return {
        name: Figure(float(value), float(np.sqrt(np.nanmean((draws[name] - value) ** 2))))
        for name, value in values.items()
        if name in draws and math.isfinite(value) and np.isfinite(draws[name]).any()
    }
