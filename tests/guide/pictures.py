"""The pictures of the README and the guide: what readers of the demo practice see, small enough to load at once."""

from __future__ import annotations

import shutil
from io import BytesIO
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, Page, expect, sync_playwright

from recordgen.packaged import packaged
from recordgen.site.field.build import build_field
from tests.conftest import RECORDS, TODAY, chromium
from tests.support import field, sealed_host

PICTURES = packaged() / "site_templates" / "pages" / "guide" / "pictures"
# The page of each picture, by the name of the picture. The README shows these; the guide shows all.
SHOWN = {"horse": "willowmere/horses/pippin.html", "today": "practice/index.html"}
# Screens of a phone: a visit that is written down, and a sealed site that asks for its words.
ON_PHONE = ("visit", "unlock")
MOST_BYTES = 60_000
_WINDOW, _SIZE = (1280, 900), (960, 675)
# A phone has more pixels than a page counts.
_PHONE, _HEIGHT_OF_LOCK, _SHARPER = (360, 720), 600, 2


def photograph(sites: Path, folder: Path, room: Path) -> None:
    """Write all pictures as WebP into a folder. sites: the built demo. room: an empty folder to work in.

    Raises playwright's errors.
    """
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=["--no-sandbox"])
        page = _window(browser, *_WINDOW)
        for name, address in SHOWN.items():
            page.goto((sites / address).as_uri())
            shot = Image.open(BytesIO(page.screenshot())).convert("RGB").resize(_SIZE, Image.Resampling.LANCZOS)
            _keep(shot, folder / f"{name}.webp")
        page = _window(browser, *_PHONE, device_scale_factor=_SHARPER, has_touch=True, is_mobile=True)
        visit = _visit(page, room / "phone")
        page.set_viewport_size({"width": _PHONE[0], "height": _HEIGHT_OF_LOCK})
        unlock = _unlock(page, sites / "willowmere", room / "sealed")
        for name, shot in zip(ON_PHONE, (visit, unlock), strict=True):
            _keep(shot, folder / f"{name}.webp")
        browser.close()


def _window(browser: Browser, width: int, height: int, **more: float | bool) -> Page:
    """A window in light colours on the day of the demo."""
    page = browser.new_page(viewport={"width": width, "height": height}, color_scheme="light", **more)  # type: ignore[arg-type]
    page.clock.set_fixed_time(f"{TODAY}T12:00:00")
    return page


def _keep(shot: Image.Image, file: Path) -> None:
    shot.save(file, quality=72, method=6)


def _visit(page: Page, room: Path) -> Image.Image:
    """The phone's page with a foot of a horse and one value, without the line that told that it was kept."""
    with field.hosted(build_field(RECORDS, TODAY, ("willowmere",), room)) as address:
        page.goto(address)
        page.wait_for_selector("body[data-ready]")
        hand = field.Hand(page)
        for key in ("horse-willowmere/tansy", "first-foot", "feet.left_fore.after.toe_length-73"):
            hand.tap(key)
        hand.settled()
        page.reload()
        page.wait_for_selector("body[data-ready]")
        return _shot(page)


def _unlock(page: Page, site: Path, room: Path) -> Image.Image:
    """The front of a stable's sealed site, as somebody meets it who has its address."""
    shutil.copytree(site / "assets", room / "site" / "assets")
    for name in ("index.html", "404.html"):
        shutil.copy(site / name, room / "site")
    with sealed_host.hosted(sealed_host.sealed(room, room / "site", "/")) as host:
        page.goto(host.address)
        expect(page.locator("#words")).to_be_visible()
        return _shot(page)


def _shot(page: Page) -> Image.Image:
    return Image.open(BytesIO(page.screenshot())).convert("RGB")
