"""A practice's own pages on the sites they belong to, and on no other."""

from __future__ import annotations

import io
import re
from datetime import date
from pathlib import Path

import pytest
from PIL import Image

from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.model import Site
from recordgen.site.pages.sites import PRACTICE, render_site
from tests.demo.pages import PAGES
from tests.support.pages import all_pages, search_entries, soup, words
from tests.support.practice_folders import build
from tests.support.reading_age import grade, joined

LANE, BEFORE = "When the lane floods", "Before we come"


def a_picture() -> bytes:
    """The bytes of a small picture."""
    made = io.BytesIO()
    Image.new("RGB", (4, 3)).save(made, "PNG")
    return made.getvalue()


PICTURE = a_picture()


def texts(site: Path) -> str:
    """All words of a built site, its index of search too."""
    return " ".join([*map(words, all_pages(site)), (site / "search" / "index.js").read_text("utf-8")])


@pytest.fixture
def work_sites(tmp_path: Path) -> dict[str, Site]:
    """The sites of two stables and the practice, not yet written."""
    files: dict[str, str | bytes | None] = {
        "pages/mud.md": "# Mud & <b>ice</b>\n\n## Wet\n\n<script>alert(1)</script> [words](words.md)\n",
        "willowmere/pages/lane.md": "# Lane\n\n![Gate](gate.png) [mud](mud.md#wet) [up](#lane)\n\n## Lane\n",
        "willowmere/pages/gate.png": PICTURE,
        "old-mill/stable.yaml": "name: Old Mill\n",
    }
    day = date(2026, 12, 1)
    context = BuildContext.of(read_whole(build(tmp_path, files), day), day, None)
    return {slug: render_site(context, slug) for slug in ("willowmere", "old-mill", PRACTICE)}


@pytest.mark.parametrize("site", ["fallow-end", "tithe-barn", "willowmere", PRACTICE])
def test_a_page_of_the_practice_is_on_every_site(demo_sites: Path, site: str) -> None:
    """With its title in the menu of every page; search reads it."""
    assert "pages/before-we-come.html" in search_entries(demo_sites / site)
    for path in all_pages(demo_sites / site):
        named = [one.get_text(strip=True) for one in soup(path).select("article nav.rg-line a")]
        assert BEFORE in named or path.name == "404.html" or path.name.endswith("_sheet.html"), path


def test_a_page_of_a_stable_is_on_no_other_stables_site(demo_sites: Path) -> None:
    """Neither its title nor a word of it; on its own and on the trimmer's it is found."""
    found = {
        site.name for site in demo_sites.iterdir() if LANE in texts(site) or "top gate, up the farm" in texts(site)
    }

    assert found == {"fallow-end", PRACTICE}


def test_links_and_pictures_find_their_places(work_sites: dict[str, Site]) -> None:
    """On the stable's site and on the trimmer's, where its pages lie deeper."""
    pages = {slug: {page.uri: page.html for page in site.pages} for slug, site in work_sites.items()}
    own, deeper = pages["willowmere"]["pages/lane.md"], pages[PRACTICE]["willowmere/pages/lane.md"]

    assert re.findall(r'(?:href|src)="([^"]*(?:#|gate)[^"]*)"', own) == ["gate.png", "mud.html#wet", "#lane"]
    assert re.findall(r'href="([^"]*#wet)"', deeper) == ["../../pages/mud.html#wet"]
    assert work_sites["willowmere"].files["pages/gate.png"] == PICTURE
    assert work_sites[PRACTICE].files["willowmere/pages/gate.png"] == PICTURE
    assert "pages/gate.png" not in work_sites["old-mill"].files


def test_html_of_a_page_is_not_run(work_sites: dict[str, Site]) -> None:
    """A script is shown as it was typed, and a title is text in the menu."""
    page = next(page for page in work_sites["old-mill"].pages if page.uri == "pages/mud.md")

    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in page.html
    assert ("<script" in page.html, page.in_menu, page.title) == (False, True, "Mud & <b>ice</b>")
    assert "Mud &amp; &lt;b&gt;ice&lt;/b&gt;</a>" in page.html


@pytest.mark.parametrize("name", PAGES)
def test_the_pages_of_the_demo_are_plain(name: str) -> None:
    """Nobody needs more than seven years of school for them."""
    lines = [re.sub(r"\]\(.*?\)|[#|\[\]]|^[-0-9]+\.? ", " ", line).strip() for line in PAGES[name].splitlines()]

    assert grade(joined(line for line in lines if re.search("[a-z]", line))) <= 7
