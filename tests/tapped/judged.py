"""How well taps tell a known foot: bias, spread, and how often the told error holds the truth.

`python -m tests.tapped.judged [feet]` prints it for every figure: soles of three kinds, photographed square, 3 and 6
degrees from it, tapped at 7, 9, 11 and 13 places of the wall by hands of several kinds; then feet from the side and the
front. A rule lies some mm off the plane of the foot in all of them.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.tracing.errors.tilt import OFF_PLANE_MM
from recordgen.hoof.tracing.figures import Figures, reckoned
from tests.support.photographed_feet import photographed_foot, traced_by
from tests.support.photographed_soles import SIZE, Photographed, photographed, tapped_by

TAPS = {7: 5, 9: 7, 11: 9, 13: 11}
KINDS = ("usual", "odd", "uneven")
TILTS_DEG = (0, 3, 6)


@dataclass(frozen=True)
class Hand:
    """A hand that taps: SD of a tap in px of a picture 1000 px wide, and how far outside a line it always taps, mm."""

    per_mille: float
    outside_mm: float = 0.0

    @property
    def px(self) -> float:
        """SD of a tap, px of the pictures here."""
        return self.per_mille * SIZE[0] / 1000


# Source: trials on rendered soles, as the screen takes them (HAND in site_templates/trace/draft.js).
HANDS = {
    "zoomed": Hand(1.5),
    "loupe": Hand(3.8),
    "finger": Hand(15.0),
    "always outside": Hand(1.5, outside_mm=0.3),
}


@dataclass(frozen=True)
class Judged:
    """One figure over many feet: mean and RMS of what it is off, and the share whose 95 % interval holds the truth."""

    bias: float
    rms: float
    held: float


def judged(
    soles: int,
    wall: int,
    kind: str = "usual",
    tilt_deg: float = 0,
    model: int | None = 1,
    hand: Hand = HANDS["zoomed"],
    seed: int = 1,
) -> dict[str, Judged]:
    """Each figure over so many soles, each tapped once. wall: taps on it; TAPS tells how many on the white line."""

    def one(lot: np.random.Generator) -> tuple[Figures, Photographed]:
        below = float(lot.normal(0, OFF_PLANE_MM))
        seen = photographed(lot, kind != "usual", tilt_deg, uneven=kind == "uneven", mm_below=below)
        tracing = tapped_by(seen, lot, wall, TAPS[wall], hand.px, model, hand.outside_mm)
        return reckoned(tracing, tracing.error_px()), seen

    return _over(soles, seed, one)


def judged_upright(feet: int, view: str, tilt_deg: float = 0, hand: Hand = HANDS["loupe"]) -> dict[str, Judged]:
    """Each figure over so many feet from the side or the front."""

    def one(lot: np.random.Generator) -> tuple[Figures, Photographed]:
        seen = photographed_foot(lot, view, tilt_deg, float(lot.normal(0, OFF_PLANE_MM)))
        tracing = traced_by(seen, lot, view, hand.px)
        return reckoned(tracing, tracing.error_px()), seen

    return _over(feet, 1, one)


def _over(
    feet: int, seed: int, one: Callable[[np.random.Generator], tuple[Figures, Photographed]]
) -> dict[str, Judged]:
    off: dict[str, list[float]] = {}
    held: dict[str, list[bool]] = {}
    for number in range(feet):
        found, seen = one(np.random.default_rng([seed, number]))
        for name in found.keys() & seen.true.keys():
            away = found[name].value - seen.true[name]
            off.setdefault(name, []).append(away)
            held.setdefault(name, []).append(abs(away) <= 1.96 * found[name].sd)
    return {
        name: Judged(float(np.mean(apart)), float(np.sqrt(np.mean(np.square(apart)))), float(np.mean(held[name])))
        for name, apart in sorted(off.items())
    }


def main(feet: int) -> None:
    """Print a line for each figure."""
    for kind in KINDS:
        for wall, line in TAPS.items():
            found = [judged(feet, wall, kind, tilt) for tilt in TILTS_DEG]
            _tell(f"{wall} + {line} taps, {kind} soles, camera {TILTS_DEG} degrees from square", found)
    for name, hand in HANDS.items():
        found = [judged(feet, 11, "odd", tilt, hand=hand) for tilt in TILTS_DEG]
        _tell(f"11 + 9 taps, odd soles, {name}, camera {TILTS_DEG} degrees from square", found)
    for wall in TAPS:
        found = [judged(feet, wall, kind, model=None) for kind in KINDS]
        _tell(f"{wall} taps, the plain line, square; {KINDS} soles", found)
    for view in ("side", "front"):
        found = [judged_upright(feet, view, tilt) for tilt in TILTS_DEG]
        _tell(f"from the {view}, camera {TILTS_DEG} degrees from square", found)


def _tell(title: str, found: Iterable[dict[str, Judged]]) -> None:
    columns = list(found)
    print(f"\n{title}")
    for name in columns[0]:
        print(f"  {name:28} {'    '.join(_told(one[name]) for one in columns if name in one)}", flush=True)


def _told(one: Judged) -> str:
    return f"bias {one.bias:7.2f} rms {one.rms:7.2f} held {100 * one.held:4.0f} %"


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 60)
