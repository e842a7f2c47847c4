"""How well taps on pictures tell a known foot: pictures lit from a side, dirty, blurred, noisy and tilted.

`python -m tests.tapped.rendered [feet [seed]]` prints it as `tests.tapped.judged` does; there a hand knows every line
and its taps are off by chance alone, here it taps where the line shows.
"""

from __future__ import annotations

from tests.support.rendered_feet import as_eyes_see
from tests.tapped.judged import HANDS, KINDS, TAPS, asked, judged, judged_upright, tell


def main(feet: int, seed: int) -> None:
    """Print a line for each figure."""
    for wall, line in TAPS.items():
        found = (judged(feet, wall, kind, seed=seed, look=as_eyes_see) for kind in KINDS)
        tell(f"{wall} + {line} taps, {KINDS} soles", found)
    for name, hand in HANDS.items():
        found = (judged(feet, 11, kind, hand=hand, seed=seed, look=as_eyes_see) for kind in KINDS)
        tell(f"11 + 9 taps, {KINDS} soles, {name}", found)
    for view in ("side", "front"):
        found = (judged_upright(feet, view, hand=hand, seed=seed, look=as_eyes_see) for hand in HANDS.values())
        tell(f"from the {view}, {tuple(HANDS)}", found)


if __name__ == "__main__":
    main(*asked())
