"""Tell how a form is drawn: its colours by name, its widths and its dashes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from recordgen.records.models.names import Foot

Colour = Literal["ink", "quiet", "line", "card", "moss", "clay", "straw", "groove", "lf", "rf", "lh", "rh"]

# The colours of the light theme, by the name of the page's variable that takes their place.
COLOURS: dict[Colour, str] = {
    "ink": "#27302b",
    "quiet": "#5d665f",
    "line": "#ddd7c8",
    "card": "#fffdf8",
    "moss": "#3f6045",
    "clay": "#9c3c17",
    "straw": "#7d5a0c",
    "groove": "#242d28",
    "lf": "#0b6aa2",
    "rf": "#a94a12",
    "lh": "#08704f",
    "rh": "#8f4470",
}


FOOT_COLOUR: dict[Foot, Colour] = {"left_fore": "lf", "right_fore": "rf", "left_hind": "lh", "right_hind": "rh"}


@dataclass(frozen=True)
class Pen:
    """The way a form is drawn: colours by name, widths and dashes in picture units, opacities from 0 to 1."""

    stroke: Colour | None = None
    width: float = 1.0
    fill: Colour | None = None
    dash: tuple[float, ...] = ()
    opacity: float = 1.0
    fill_opacity: float = 1.0
    round_ends: bool = False


# The grooves beside the frog, and the deeper one in its middle: darker than the frog in both schemes.
GROOVE, DEEP_GROOVE = Pen(fill="groove", opacity=0.42), Pen(fill="groove", opacity=0.7)
