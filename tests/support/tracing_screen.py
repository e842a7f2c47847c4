"""The tracing screen of a small practice at an address of this machine, and a hand that taps the picture."""

from __future__ import annotations

import io
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image, ImageDraw, ImageFilter
from playwright.sync_api import Browser, BrowserContext, Page

from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.tree import document
from recordgen.site.trace.photo import PhotoToTrace, photo_to_trace
from recordgen.site.trace.screen import screen_of
from recordgen.site.trace.serve import serve_screen
from tests.support import upright_shapes
from tests.support.practice_folders import VISIT_FILE, build
from tests.support.sole_shapes import FORE, Sole
from tests.support.tracing_pages import upright
from tests.support.typed_tracings import tapped

PHONE: dict[str, Any] = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
SIZE = (1200, 1000)
# Puts points on the screen, as if they had been tapped and the rule had lain on the foot.
PUT = """(points) => {
  tracing.draft.change((now) => Object.assign(now, {points, lay: 'on foot'}));
  tracing.draft.go(99);
}"""
Marks = dict[str, list[list[float]]]


def marks_of(view: str = "sole", sole: Sole = FORE) -> Marks:
    """The place where a foot's landmarks lie in the picture of `picture`, px: what a perfect hand would tap."""
    values = tapped(sole) if view == "sole" else upright(view, *_shape(view))
    scale, names = values.pop("scale"), Tracing.model_validate(values | {"scale": None}).named()
    return {"scale": [scale["from"], scale["to"]]} | {
        name: [list(spot) for spot in spots] for name, spots in names.items()
    }


def _shape(view: str) -> tuple[Any, tuple[float, float]]:
    return (upright_shapes.side(), (900, 820)) if view == "side" else (upright_shapes.front(), (600, 700))


@cache
def picture(view: str = "sole") -> bytes:
    """A photograph of that foot, drawn: earth, horn, sole, frog, and a rule."""
    earth = np.random.default_rng(7).integers(40, 120, (SIZE[1] // 4, SIZE[0] // 4), dtype=np.uint8)
    drawn = Image.fromarray(earth).resize(SIZE).convert("RGB")
    draw, marks = ImageDraw.Draw(drawn), marks_of(view, replace(FORE, picks=60))
    fills = {"wall": (150, 132, 104), "white_line": (176, 164, 138)}
    for name, fill in fills.items():
        if name in marks:
            draw.polygon([tuple(spot) for spot in marks[name]], fill=fill, outline=(214, 186, 118), width=9)
    if view == "sole":
        draw.polygon(
            [tuple(marks[name][0]) for name in ("frog_medial", "frog_apex", "frog_lateral")], fill=(70, 60, 50)
        )
    else:
        lines = ("dorsal_wall", "heel_wall") if view == "side" else ("medial_wall", "lateral_wall")
        draw.polygon([tuple(spot) for spot in (*marks[lines[0]], *reversed(marks[lines[1]]))], fill=fills["wall"])
    draw.line([tuple(spot) for spot in marks["scale"]], fill=(240, 220, 90), width=8)
    out = io.BytesIO()
    drawn.filter(ImageFilter.GaussianBlur(1)).save(out, "JPEG", quality=80)
    return out.getvalue()


def traced_practice(folder: Path, view: str = "sole", foot: str = "left-fore", **files: str) -> PhotoToTrace:
    """A practice with one photograph to trace. files: over those of `build`, by their names with / as __."""
    name = f"2026-10-14-{foot}-{view}-after.jpg"
    more = {key.replace("__", "/"): text for key, text in files.items()}
    build(folder, {f"willowmere/bramble/photos/{name}": picture(view), **more})
    return photo_to_trace(folder, Path("willowmere/bramble/photos") / name)


def tracings_in(photo: PhotoToTrace) -> tuple[Tracing, ...]:
    """The tracings of its foot in the visit."""
    visit = Visit.model_validate(document(VISIT_FILE, photo.visit.read_bytes()).values)
    return visit.feet[photo.foot].tracings if photo.foot in visit.feet else ()


@dataclass
class Served:
    """A screen that is shown: its address, and the thread that ends once the tracing is written."""

    address: str
    thread: threading.Thread


@contextmanager
def served(folder: Path, photo: PhotoToTrace, port: int = 0) -> Iterator[Served]:
    """The screen of a photograph at an address of this machine."""
    told, found = threading.Event(), []
    shown = screen_of(folder, photo)
    thread = threading.Thread(
        target=serve_screen, args=(shown, port, lambda address: (found.append(address), told.set())), daemon=True
    )
    thread.start()
    assert told.wait(10)
    yield Served(found[0], thread)


@dataclass
class Tapper:
    """A hand at the screen. contacts: how often it touched. said: what the console said."""

    page: Page
    contacts: int = 0
    said: list[str] = field(default_factory=list)

    def at(self, spot: list[float]) -> list[float]:
        """The place where a spot of the picture lies in the window, px."""
        return self.page.evaluate(_AT, spot)  # type: ignore[no-any-return]

    def tap(self, *spots: list[float]) -> None:
        """Touch spots of the picture one after another."""
        for spot in spots:
            self.page.touchscreen.tap(*self.at(spot))
            self.contacts += 1

    def press(self, key: str) -> None:
        """Press a button by its key."""
        found = self.page.locator(f'[data-key="{key}"]').first
        found.tap() if self.page.evaluate("navigator.maxTouchPoints > 0") else found.click()
        self.contacts += 1

    def pinch(self, spot: list[float]) -> None:
        """One finger touches a spot and moves, a second comes, both go apart, and leave one after the other."""
        touch = self.page.context.new_cdp_session(self.page)
        x, y = self.at(spot)

        def send(kind: str, *across: float) -> None:
            points = [{"x": one, "y": y, "id": number} for number, one in enumerate(across)]
            touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

        send("touchStart", x)
        send("touchMove", x + 10)
        send("touchStart", x + 10, x + 60)
        for step in range(1, 6):
            send("touchMove", x + 10 - 8 * step, x + 60 + 8 * step)
        send("touchEnd", x - 30)
        send("touchEnd")

    def turn(self) -> None:
        """Turn the phone on its side, and wait until the screen has followed."""
        self.page.set_viewport_size({"width": 844, "height": 390})
        self.page.evaluate(_TURNED)

    def points(self) -> Marks:
        """The points on the screen."""
        return self.page.evaluate("tracing.draft.now.points")  # type: ignore[no-any-return]

    def step(self) -> str:
        """The step that stands on the screen."""
        return self.page.evaluate("tracing.draft.here().key")  # type: ignore[no-any-return]

    def words(self) -> str:
        """The words at the top."""
        return " ".join(self.page.locator("#trace header").inner_text().split())

    def figures(self) -> dict[str, float]:
        """The figures as the screen reckons them."""
        return self.page.evaluate("traceFigures(tracing.draft.tracing())")  # type: ignore[no-any-return]

    def scale(self, marks: Marks, lay: str = "on-foot") -> None:
        """Tap both ends of the rule and say where it lay."""
        self.tap(*marks["scale"])
        self.press(f"lay-{lay}")

    def singles(self, marks: Marks, *names: str) -> None:
        """Tap single points in the order asked."""
        for name in names:
            self.tap(*marks[name])

    def sole(self, marks: Marks) -> None:
        """Tap a whole sole, lines in no order."""
        self.scale(marks)
        self.singles(marks, "frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral")
        for name in ("wall", "white_line"):
            line = marks[name]
            self.tap(*line[::2], *line[1::2][::-1])
            self.press("next")


_AT = """(spot) => {
  const box = document.querySelector('canvas').getBoundingClientRect(), at = tracing.view.toScreen(spot);
  return [box.left + at[0], box.top + at[1]];
}"""

_TURNED = """() => new Promise((done) => {
  const look = () => tracing.view.width > tracing.view.height ? done() : requestAnimationFrame(look);
  look();
})"""


def opened(context: BrowserContext, address: str) -> Tapper:
    """The screen opened in a new window."""
    page = context.new_page()
    page.set_default_timeout(8000)
    hand = Tapper(page)
    page.on("console", lambda message: hand.said.append(message.text))
    page.on("pageerror", lambda error: hand.said.append(str(error)))
    page.goto(address)
    page.wait_for_selector("body[data-ready]")
    return hand


def phone(browser: Browser) -> BrowserContext:
    """A phone of its own."""
    return browser.new_context(**PHONE)
