"""Links between pages, and late parts."""

from __future__ import annotations

import pytest

from recordgen.site.model import DatedPart, PackedTexts, Page, Placed, link


@pytest.mark.parametrize(
    ("here", "there", "address"),
    [
        ("index.md", "horses/bramble.md", "horses/bramble.html"),
        ("horses/bramble.md", "index.md", "../index.html"),
        ("horses/bramble.md", "horses/otter.md", "otter.html"),
        ("willowmere/otter.md", "tithe-barn/index.md", "../tithe-barn/index.html"),
        ("index.md", "index.md", "index.html"),
    ],
)
def test_links_are_relative(here: str, there: str, address: str) -> None:
    """A link between two pages works wherever the site is put."""
    assert link(here, there) == address


def test_late_parts_come_into_their_places() -> None:
    """A page is complete once its late parts stand where they were asked for."""
    page = Page("index.md", "x", "", ("<svg/>", "<table/>"))

    assert page.complete("a<!--late 1-->b<!--late 0-->c") == "a<table/>b<svg/>c"


def test_the_file_of_a_page_tells_where_it_names_the_day() -> None:
    """In bytes, also where a dated part stands twice, within another late part, or after letters of two bytes."""
    part = DatedPart("dated/mark.html", "{}")
    page = Page("index.md", "x", "", ("<svg>ä<!--late 1--></svg>", "<b>heute</b>"), {1: part})
    file, placed = page.complete_as_file("ü<!--late 0-->, <!--late 1-->.")

    assert file.decode() == "ü<svg>ä<b>heute</b></svg>, <b>heute</b>."
    assert placed == (Placed(9, 21, part), Placed(29, 41, part))
    assert {file[one.start : one.end] for one in placed} == {b"<b>heute</b>"}


@pytest.mark.parametrize("texts", [(), ("",), ("<svg/>", "", "ä")])
def test_packed_texts_are_the_same_texts(texts: tuple[str, ...]) -> None:
    """None, an empty one, and several."""
    packed = PackedTexts(texts)

    assert (tuple(packed), len(packed), [packed[at] for at in range(len(packed))]) == (texts, len(texts), list(texts))
