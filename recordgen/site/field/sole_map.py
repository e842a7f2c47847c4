"""Tell where on a sole to tap: each zone of the wall, the frog and the sole as a form of the same drawn foot."""

from __future__ import annotations

from typing import Any

from recordgen.pictures.feet.sole_form import FROG, FROG_HEEL, FROG_NOTCH, SoleForm, zone_shares
from recordgen.pictures.shapes import Point
from recordgen.records.models.names import ZONES, Foot

# The drawing, in its own units: room for the widest foot, and for words at its sides.
WIDTH, HEIGHT = 170.0, 146.0
MIDDLE, TOE = WIDTH / 2, 8.0
# A finger is wide: the wall's zones reach further in than the wall is thick, up to the sole's middle part.
TAPPED_MM = 25.0
# The outline of the zones stops at the heels, before the wall turns into the bars.
STEPS = 10


def sole_map(fore: bool) -> dict[str, Any]:
    """The forms to tap of a left foot, outer side at the right: place, outline as an SVG path, place of its words.

    A right foot is the mirror image, which the page draws.
    """
    foot: Foot = "left_fore" if fore else "left_hind"
    sole = SoleForm(foot, MIDDLE, TOE)
    forms = [_zone(sole, zone) for zone in ZONES]
    middle = [sole.wall(share, -TAPPED_MM) for share in _shares(-0.74, 0.74)]
    forms.append(_form("sole", [*middle, sole.part([(0.0, 0.62)])[0]], sole.at(0, 0.29 * sole.form.length)))
    frog = [*sole.part((*FROG, *FROG_HEEL, FROG_NOTCH)), *reversed(sole.part((*FROG[1:], *FROG_HEEL), -1))]
    forms.append(_form("frog", frog, sole.at(0, 0.8 * sole.form.length)))
    return {"width": WIDTH, "height": HEIGHT, "forms": forms}


def _zone(sole: SoleForm, zone: Any) -> dict[str, Any]:
    start, end = zone_shares(zone)
    outer = sole.along(start, end, 0, STEPS)
    inner = [sole.wall(share, -TAPPED_MM) for share in reversed(_shares(start, end))]
    middle = sole.wall((start + end) / 2, -TAPPED_MM / 2)
    return _form(zone, [*outer, *inner], middle)


def _shares(start: float, end: float) -> list[float]:
    return [start + (end - start) * step / STEPS for step in range(STEPS + 1)]


def _form(place: str, outline: list[Point], words: Point) -> dict[str, Any]:
    path = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in outline) + "Z"
    return {"place": place, "path": path, "at": [round(words[0], 1), round(words[1], 1)]}
