"""A white line moved to the ridge that its photograph shows, by how far it lies from the line through the taps.

The tracing screen looks for the ridge in the picture; here the line is moved alone, so that it follows taps that are
drawn anew. `site_templates/trace/ridge.js` moves it in the same way; shared cases hold both together.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from recordgen.records.models.lines.smooth import Floats


def moved_to_ridge(line: Floats, ridge_px: Sequence[float]) -> Floats:
    """A line with each point moved outwards, (..., m, 2), px.

    line: (..., m, 2), px, round a sole from heel to heel. ridge_px: how far at even places along it, outwards above 0;
    between them it changes evenly.
    """
    at = np.linspace(0, len(ridge_px) - 1, line.shape[-2])
    off = np.interp(at, np.arange(len(ridge_px)), ridge_px)
    return np.asarray(line + off[:, None] * _outwards(line))


def _outwards(line: Floats) -> Floats:
    """A unit vector away from what the line goes round, (..., m, 2)."""
    before = np.concatenate([line[..., :1, :], line[..., :-1, :]], axis=-2)
    after = np.concatenate([line[..., 1:, :], line[..., -1:, :]], axis=-2)
    (x, y), following = np.moveaxis(line, -1, 0), np.roll(line, -1, axis=-2)
    turn = np.sign((x * following[..., 1] - following[..., 0] * y).sum(axis=-1))[..., None, None]
    way = after - before
    across = turn * np.stack([way[..., 1], -way[..., 0]], axis=-1)
    return np.asarray(across / np.maximum(np.hypot(across[..., 0], across[..., 1]), 1e-12)[..., None])
