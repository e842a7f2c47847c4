"""How well a few taps tell a known sole: bias, spread, and how often the told error holds the truth.

`python -m tests.tapped.judged [soles]` prints it for 7, 9, 11 and 13 taps on the wall, usual and odd soles, square and
tilted, by the usual outlines and by the plain smooth line.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.tracing.figures import reckoned
from tests.support.photographed_soles import photographed, tapped_by

FIGURES = (
    "sole_width_mm",
    "sole_length_mm",
    "sole_area_mm2",
    "mirror_match_percent",
    "ring_toe_mm",
    "ring_difference_mm",
)
TAPS = {7: 5, 9: 7, 11: 9, 13: 11}
# A tap that settled under the loupe, picture zoomed to the foot: px of a picture 1600 px wide.
SETTLED_PX = 2.4


@dataclass(frozen=True)
class Judged:
    """One figure over many soles: mean and RMS of what it is off, and the share whose 95 % interval holds the truth."""

    bias: float
    rms: float
    held: float


def judged(
    soles: int, wall: int, odd: bool = False, tilt_deg: float = 0, model: int | None = 1, seed: int = 1
) -> dict[str, Judged]:
    """Each figure over so many soles, each tapped once. wall: taps on it; TAPS tells how many on the white line."""
    off: dict[str, list[float]] = {name: [] for name in FIGURES}
    held: dict[str, list[bool]] = {name: [] for name in FIGURES}
    for number in range(soles):
        lot = np.random.default_rng([seed, number])
        seen = photographed(lot, odd, tilt_deg)
        tracing = tapped_by(seen, lot, wall, TAPS[wall], SETTLED_PX, model)
        found = reckoned(tracing, tracing.error_px())
        for name in FIGURES:
            away = found[name].value - seen.true[name]
            off[name].append(away)
            held[name].append(abs(away) <= 1.96 * found[name].sd)
    return {
        name: Judged(float(np.mean(apart)), float(np.sqrt(np.mean(np.square(apart)))), float(np.mean(held[name])))
        for name, apart in off.items()
    }


def main(soles: int) -> None:
    """Print a line for each figure."""
    for odd in (False, True):
        for tilt in (0, 6):
            for wall, line in TAPS.items():
                kind = "odd" if odd else "usual"
                print(f"\n{wall} + {line} taps, {kind} soles, camera {tilt} degrees from square; then the plain line")
                found, plain = (judged(soles, wall, odd, tilt, model) for model in (1, None))
                for name in FIGURES:
                    print(f"  {name:22} {_told(found[name])}    {_told(plain[name])}")


def _told(one: Judged) -> str:
    return f"bias {one.bias:8.2f}  rms {one.rms:8.2f}  held {100 * one.held:4.0f} %"


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 60)
