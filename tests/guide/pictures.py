"""The pictures of the README: pages of the demo practice as their readers see them, small enough to load at once."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

from recordgen.packaged import packaged
from tests.conftest import TODAY, chromium

PICTURES = packaged() / "site_templates" / "pages" / "guide" / "pictures"
# The page of each picture, by the name of the picture.
SHOWN = {"horse": "willowmere/horses/pippin.html", "today": "practice/index.html"}
MOST_BYTES = 60_000
_WINDOW, _SIZE = (1280, 900), (960, 675)


def photograph(sites: Path, folder: Path) -> None:
    """Write a picture of each page in `SHOWN` as WebP. sites: the built demo. Raises playwright's errors."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": _WINDOW[0], "height": _WINDOW[1]}, color_scheme="light")
        page.clock.set_fixed_time(f"{TODAY}T12:00:00")
        for name, address in SHOWN.items():
            page.goto((sites / address).as_uri())
            shot = Image.open(BytesIO(page.screenshot())).convert("RGB").resize(_SIZE, Image.Resampling.LANCZOS)
            shot.save(folder / f"{name}.webp", quality=72, method=6)
        browser.close()
