"""The error of a figure that sums up how uneven a foot is: of two halves, of a ring. Errors can but add to it.

A foot whose halves are alike is picked with errors that make them differ, and the sum of what differs is never below
nothing. So a figure as picked says too much, the more the evener the foot. Each draw of the errors is taken away again:
it asks how uneven the foot itself must be, to look with these errors as uneven as it does.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.foot_frame import Floats

# What is tried of the foot itself, as a share of what was picked.
SHARES = np.linspace(0.0, 2.0, 41)
Size = Callable[[Floats], Floats]


@dataclass(frozen=True)
class Uneven:
    """The unevenness of a foot at k places: as picked, (k,), and over the three kinds of `Draws`, (draws, k) each."""

    picked: Floats
    shaken: Floats
    strayed: Floats
    seen: Floats

    def figure(self, size: Size) -> Figure:
        """The size that the foot itself has, and its standard deviation over the draws.

        size: (..., k) to (...), larger where a foot is more uneven.

        What a line leaves out between its taps makes an even foot look uneven and an uneven one look even. Nothing
        tells which, so that half of the draws take it away with the errors, and half add it to the foot. No figure is
        surer than the errors alone spread, since a foot may have been even by their chance.
        """
        between = self.strayed - self.shaken
        added = np.where((np.arange(len(between)) % 2 == 0)[:, None], between, 0)
        errors = self.seen - self.picked - added
        own = true_shares(self.picked, errors, size)[:, None] * self.picked + added
        told = size(own)
        least = np.nanstd(size(errors), ddof=1)
        return Figure(float(np.nanmean(told)), float(max(np.nanstd(told, ddof=1), least)))


def true_shares(picked: Floats, errors: Floats, size: Size) -> Floats:
    """Tell how large a share of what was picked is the foot's own, (draws,), from 0 to 2: for each draw of the errors.

    picked: (k,); errors: (draws, k). With its errors, that share is as uneven as what was picked; 0 where the errors
    alone are more uneven than it. Source: Casella & Berger 2002, Statistical Inference, section 9.2.1, an interval by
    inverting a test; from memory, not read.
    """
    tried = np.stack([size(share * picked + errors) for share in SHARES], axis=-1)
    below = tried <= size(picked)[..., None]
    last = np.where(below.any(axis=-1), len(SHARES) - 1 - below[..., ::-1].argmax(axis=-1), -1)
    before = np.clip(last, 0, len(SHARES) - 2)[:, None]
    low, high = (np.take_along_axis(tried, before + step, axis=-1)[:, 0] for step in (0, 1))
    with np.errstate(divide="ignore", invalid="ignore"):
        within = np.nan_to_num((size(picked) - low) / (high - low))
    found = SHARES[before[:, 0]] + (SHARES[1] - SHARES[0]) * np.clip(within, 0, 1)
    return np.asarray(np.where(last < 0, 0.0, found))
