"""How well taps tell a known foot: bias, spread, and how often the told error holds the truth.

`python -m tests.tapped.judged [feet [seed]]` prints it for every figure, marked where not 90 to 98 of 100 are held:
soles of three kinds, tapped at 7, 9, 11 and 13 places of the wall by hands of several kinds; then feet from the side
and the front. The camera is as far from square, and the rule as far off the plane of the foot, as the method page says
that hands hold them. What is judgement in the errors was tried on seed 1; seed 2 judges it.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.tracing.errors.tilt import OFF_PLANE_MM, TILT_DEG
from recordgen.hoof.tracing.figures import Figures, reckoned
from tests.support.photographed_feet import photographed_foot, traced_by
from tests.support.photographed_soles import SIZE, Photographed, photographed, tapped_by

TAPS = {7: 5, 9: 7, 11: 9, 13: 11}
KINDS = ("usual", "odd", "uneven")
TILTS_DEG = (0.0, 6.0)


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


Look = Callable[[Photographed, str, np.random.Generator], Photographed]


def plainly(seen: Photographed, view: str, lot: np.random.Generator) -> Photographed:
    """An eye that sees every line where it is."""
    return seen


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
    tilt_deg: float | None = None,
    model: int | None = 1,
    hand: Hand = HANDS["zoomed"],
    seed: int = 1,
    look: Look = plainly,
) -> dict[str, Judged]:
    """Each figure over so many soles, each tapped once.

    wall: taps on it; TAPS tells how many on the white line. tilt_deg: of the camera from square; as hands hold it
    where it is None. look: where the eye of the hand sees the lines.
    """

    def one(lot: np.random.Generator) -> tuple[Figures, Photographed]:
        below = float(lot.normal(0, OFF_PLANE_MM))
        seen = photographed(lot, kind != "usual", _tilt(lot, tilt_deg), uneven=kind == "uneven", mm_below=below)
        seen = look(seen, "sole", lot)
        tracing = tapped_by(seen, lot, wall, TAPS[wall], hand.px, model, hand.outside_mm)
        return reckoned(tracing, tracing.error_px()), seen

    return _over(soles, seed, one)


def judged_upright(
    feet: int,
    view: str,
    tilt_deg: float | None = None,
    hand: Hand = HANDS["loupe"],
    seed: int = 1,
    look: Look = plainly,
) -> dict[str, Judged]:
    """Each figure over so many feet from the side or the front."""

    def one(lot: np.random.Generator) -> tuple[Figures, Photographed]:
        seen = photographed_foot(lot, view, _tilt(lot, tilt_deg), float(lot.normal(0, OFF_PLANE_MM)))
        seen = look(seen, view, lot)
        tracing = traced_by(seen, lot, view, hand.px)
        return reckoned(tracing, tracing.error_px()), seen

    return _over(feet, seed, one)


def _tilt(lot: np.random.Generator, tilt_deg: float | None) -> float:
    """How far a camera is from square, degrees. Of the method page: so much about each of two axes."""
    return float(np.hypot(*lot.normal(0, TILT_DEG, 2))) if tilt_deg is None else tilt_deg


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


def asked() -> tuple[int, int]:
    """How many feet, and the seed, as the command was told."""
    feet, seed = (*sys.argv[1:], *("60", "2")[len(sys.argv) - 1 :])
    return int(feet), int(seed)


def main(feet: int, seed: int) -> None:
    """Print a line for each figure."""
    for wall, line in TAPS.items():
        tell(f"{wall} + {line} taps, {KINDS} soles", (judged(feet, wall, kind, seed=seed) for kind in KINDS))
    for tilt in TILTS_DEG:
        found = (judged(feet, 11, kind, tilt, seed=seed) for kind in KINDS)
        tell(f"11 + 9 taps, {KINDS} soles, camera {tilt} degrees from square", found)
    for name, hand in HANDS.items():
        tell(f"11 + 9 taps, {KINDS} soles, {name}", (judged(feet, 11, kind, hand=hand, seed=seed) for kind in KINDS))
    for wall in TAPS:
        found = (judged(feet, wall, kind, model=None, seed=seed) for kind in KINDS)
        tell(f"{wall} taps, the plain line; {KINDS} soles", found)
    for view in ("side", "front"):
        tell(
            f"from the {view}, {tuple(HANDS)}",
            (judged_upright(feet, view, hand=HANDS[hand], seed=seed) for hand in HANDS),
        )


def tell(title: str, found: Iterable[dict[str, Judged]]) -> None:
    """Print a line for each figure, a column for each of what was found."""
    columns = list(found)
    print(f"\n{title}")
    for name in columns[0]:
        print(f"  {name:34} {'    '.join(_told(one[name]) for one in columns if name in one)}", flush=True)


def _told(one: Judged) -> str:
    return (
        f"bias {one.bias:7.2f} rms {one.rms:7.2f} held {100 * one.held:4.0f} %{' ' if 0.9 <= one.held <= 0.98 else '!'}"
    )


if __name__ == "__main__":
    main(*asked())
