"""The README's pictures are there, small, and told in words."""

from __future__ import annotations

import re

from PIL import Image

from tests.conftest import ROOT
from tests.guide.pictures import MOST_BYTES, PICTURES, SHOWN

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
    for name in SHOWN:
        file = PICTURES / f"{name}.webp"
        with Image.open(file) as picture:
            picture.verify()

        assert file.stat().st_size <= MOST_BYTES
