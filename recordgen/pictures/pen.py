"""How a form is drawn: its colours by name, its widths and its dashes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from recordgen.records.models.names import Foot

Colour = Literal["ink", "quiet", "line", "card", "moss", "clay", "straw", "lf", "rf", "lh", "rh"]


COLOURS: tuple[Colour, ...] = get_args(Colour)


FOOT_COLOUR: dict[Foot, Colour] = {"left_fore": "lf", "right_fore": "rf", "left_hind": "lh", "right_hind": "rh"}


@dataclass(frozen=True)
class Pen:
    """How a form is drawn: colours by name, widths and dashes in picture units, opacities from 0 to 1."""

    stroke: Colour | None = None
    width: float = 1.0
    fill: Colour | None = None
    dash: tuple[float, ...] = ()
    opacity: float = 1.0
    fill_opacity: float = 1.0
    round_ends: bool = False
