"""Small records with tracings, and the part of a horse's page and of its sheet that tells them."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup

from recordgen.hoof.summary import HorseSummary
from recordgen.hoof.tracing.foot_frame import Points
from recordgen.pictures.cache import PictureCache
from recordgen.records.models.tracing import LANDMARKS, ONE
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.horse.parts import foot_parts
from recordgen.site.model import Page
from recordgen.site.photographs import Album
from recordgen.site.templates import environment, render
from recordgen.site.tracing.page import tracings_of
from tests.support import upright_shapes
from tests.support.horse_records import NAMING, WAYS, summary, visit
from tests.support.sole_shapes import FORE, Bulge, Sole
from tests.support.typed_tracings import typed

PX_PER_MM = 6.0
SINGLE = {name for marks in LANDMARKS.values() for name, takes in marks.items() if takes == ONE}
FLARED, HALF_FLARED = Sole(bulges=(Bulge(90, 6),)), Sole(bulges=(Bulge(90, 2.5),))
BOTH_SIDES = Sole(bulges=(Bulge(-90, 5), Bulge(90, 5)))
KEPT = PictureCache(None)


def upright(view: str, points: Points, shift: tuple[float, float] = (900, 820), **values: Any) -> dict[str, Any]:
    """A tracing from the side or the front as somebody would write it, 6 px to a mm."""
    spots = {
        name: [[float(x) * PX_PER_MM + shift[0], shift[1] - float(y) * PX_PER_MM] for x, y in found]
        for name, found in points.items()
    }
    landmarks = {name: found[0] if name in SINGLE else found for name, found in spots.items()}
    scale = {"from": [100, 950], "to": [700, 950], "length": 100}
    usual = {"view": view, "moment": "after", "of": "drawing", "image": [1200, 1000], "scale": scale}
    return usual | landmarks | values


def side(moment: str = "after", **values: Any) -> dict[str, Any]:
    """A tracing from the side; angles and a hollow wall as `upright_shapes.side` takes them."""
    shape = {key: values.pop(key) for key in ("toe", "heel", "pastern", "bend_mm") if key in values}
    return upright("side", upright_shapes.side(**shape), moment=moment, **values)


def front(**values: Any) -> dict[str, Any]:
    """A tracing from the front."""
    return upright("front", upright_shapes.front(), shift=(600, 700), **values)


def with_tracings(*days: tuple[str, dict[str, list[dict[str, Any]]]], **values: Any) -> HorseSummary:
    """The summary of a horse of which these were traced, by day and foot."""
    visits = [visit(day, **{foot: {"tracings": held} for foot, held in feet.items()}) for day, feet in days]
    return summary(*visits, **values)


@cache
def usual() -> HorseSummary:
    """A horse whose outer flare goes down, one foot of which was traced on both days, the other on the last alone."""
    return with_tracings(
        ("2026-06-10", {"left_fore": [typed(FLARED)]}),
        (
            "2026-10-14",
            {
                "left_fore": [typed(FLARED, moment="before"), typed(HALF_FLARED), side(bend_mm=3), front()],
                "right_fore": [typed(FORE, of="photograph")],
                "left_hind": [typed(FORE, without="frog_apex")],
            },
        ),
    )


def section(found: HorseSummary, album: Album | None = None) -> BeautifulSoup:
    """The parts of a horse's page that tell its tracings: each foot's under its name, then what stands for all."""
    pictures, made = Pictures(KEPT, NAMING), environment(Path("none"), NAMING)
    tracings = tracings_of(found, WAYS, album)
    values = {"tracings": tracings, "pictures": pictures, "horse": found.horse, "link": lambda there: there}
    html = ""
    for part in foot_parts(found, tracings, album or Album()):
        told = render(made, "horse/traced_foot.html", part=part, **values)
        html += f"<section><h3>{NAMING.foot(part.foot).capitalize()}</h3>{told}</section>"
    html += render(made, "horse/tracings.html", **values)
    return BeautifulSoup(Page("horses/bramble.md", "", html, tuple(pictures.late)).complete(html), "html.parser")


def text(found: Any) -> str:
    """Its words in one line."""
    return " ".join(found.get_text(" ").split())
