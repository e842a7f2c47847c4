"""The pictures of the README and the guide are there, small, and told in words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from PIL import Image

from recordgen.language.catalogs import languages
from recordgen.site.prose.guide import FOLDER, GUIDE, guide_pictures, guide_text
from recordgen.site.prose.sized_pictures import MOST_HIGH
from tests.conftest import ROOT
from tests.guide.pictures import MOST_BYTES, ON_PHONE, PICTURES, SHOWN
from tests.support.pages import soup

_PICTURE = re.compile(r"!\[(?P<words>[^\]]*)\]\((?P<file>site_templates/[^)]+)\)")


def test_the_readme_shows_each_picture_with_its_words() -> None:
    """Those that `python -m tests.guide` makes and no other, each told in a sentence."""
    shown = {
        ROOT / found["file"]: found["words"] for found in _PICTURE.finditer((ROOT / "README.md").read_text("utf-8"))
    }

    assert set(shown) == {PICTURES / f"{name}.webp" for name in SHOWN}
    assert all(len(words.split()) > 5 for words in shown.values())


def test_pictures_are_small() -> None:
    """Each is whole and loads at once."""
    for name in (*SHOWN, *ON_PHONE):
        file = PICTURES / f"{name}.webp"
        with Image.open(file) as picture:
            picture.verify()

        assert file.stat().st_size <= MOST_BYTES


@pytest.mark.parametrize("code", languages())
def test_the_guide_shows_each_picture_once_in_a_place_of_its_size(code: str) -> None:
    """In the words of each language, one sentence to a picture; loaded when its reader comes near."""
    text = "".join(guide_text(uri, code).html for uri in GUIDE)
    shown = {f"{FOLDER}/{one['src']}": one for one in BeautifulSoup(text, "lxml").select("img")}
    sizes = {uri: (int(str(one["width"])), int(str(one["height"]))) for uri, one in shown.items()}

    assert text.count("<img") == len(shown)
    assert shown.keys() == guide_pictures().keys() == {f"{FOLDER}/pictures/{name}.webp" for name in (*SHOWN, *ON_PHONE)}
    assert all(re.fullmatch(r"([^\s.]+ ){9,}[^\s.]+\.", str(one["alt"])) for one in shown.values())
    assert {one["loading"] for one in shown.values()} == {"lazy"}
    for uri, (width, height) in sizes.items():
        with Image.open(guide_pictures()[uri]) as picture:
            assert (width / height, height <= MOST_HIGH) == (pytest.approx(picture.width / picture.height, 0.002), True)


def test_pictures_are_told_in_the_words_of_the_page() -> None:
    """No two languages tell a picture alike."""
    told = [
        [str(one["alt"]) for uri in GUIDE for one in BeautifulSoup(guide_text(uri, code).html, "lxml").select("img")]
        for code in languages()
    ]

    assert all(len(set(alike)) == len(told) for alike in zip(*told, strict=True))


def test_the_site_with_the_guide_alone_carries_its_pictures(demo_sites: Path) -> None:
    """Once and whole, where the guide's pages ask for them, from a disk as from a server."""
    carried = {file.relative_to(demo_sites).as_posix(): file for file in demo_sites.rglob("*.webp")}
    pages = [demo_sites / "practice" / uri.replace(".md", ".html") for uri in GUIDE]
    asked = [(page.parent / str(one["src"])).resolve() for page in pages for one in soup(page).select("article img")]

    assert carried.keys() == {f"practice/{uri}" for uri in guide_pictures()}
    assert all(carried[f"practice/{uri}"].read_bytes() == file.read_bytes() for uri, file in guide_pictures().items())
    assert sorted(asked) == sorted(file.resolve() for file in carried.values())
