"""Outlines that see every one of their points from the middle."""

from __future__ import annotations

import numpy as np
from hypothesis import strategies as st

from recordgen.hoof.tracing.foot_frame import Floats

REACHES = st.lists(st.floats(5, 80), min_size=3, max_size=24)


PLACES = st.floats(-100, 100)


def star(reaches: list[float], x: float = 0, y: float = 0) -> Floats:
    """An outline that stands this far from (x, y) in evenly spread directions."""
    turn = np.linspace(0, 2 * np.pi, len(reaches), endpoint=False)
    return np.stack([x + np.array(reaches) * np.sin(turn), y + np.array(reaches) * np.cos(turn)], axis=-1)
