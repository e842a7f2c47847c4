"""The reading of a practice's own page: Markdown, and no HTML."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st

from recordgen.records.pages.markdown import ATTRIBUTES, ELEMENTS, Link, read_page

# Pieces that would make scripts, frames, styles or handlers of events, were any of them read as HTML.
NASTY = [
    "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<svg/onload=alert(1)>", "<iframe src=//x>",
    "<a href='javascript:alert(1)'>", "<style>", "</section>", "<!--", "-->", "<?php", "<![CDATA[",
    "{: onclick=alert(1) }",
    "&lt;script&gt;", "&#60;script&#62;", "javascript&#58;alert(1)", "\x02", "\x03", "\x02wzxhzdk:0\x03",
    "<details open>",
]  # fmt: skip
SIGNS = [
    "# ",
    "## ",
    "- ",
    "1. ",
    "> ",
    "    ",
    "`",
    "**",
    "_",
    "[",
    "](",
    ")",
    "![",
    "|",
    "|-|-|",
    ": ",
    "\\",
    "<",
    ">",
]
TEXTS = st.lists(st.sampled_from([*NASTY, *SIGNS, "a", "word", "\n", "\n\n", " "]), max_size=30).map("".join)


def elements(html: str) -> list[str]:
    """The names of the elements of a page."""
    return [found.name for found in BeautifulSoup(html, "html.parser").find_all()]


def test_a_page_tells_its_title_headings_and_links() -> None:
    """The title is the words of the first line; every other heading has an id of its own."""
    read = read_page("# Mud *and* `ice` &amp; \\*wet\\* R&D\n\n## Wet\n\n## Wet\n\n[a](b.md#c) ![d](e.jpg)\n\n# Two\n")

    assert read.title == "Mud and ice & *wet* R&D"
    assert (read.headings, read.further) == (("wet", "wet_1"), ("Two",))
    assert read.links == (Link("b.md#c"), Link("e.jpg", is_picture=True))


@pytest.mark.parametrize("source", ["Text first.\n\n# Late", "## Deeper", "#", "", "- # no"])
def test_a_page_that_begins_otherwise_has_no_title(source: str) -> None:
    """A title is looked for nowhere but at the start."""
    assert read_page(source).title == ""


@pytest.mark.parametrize("nasty", [one for one in NASTY if one.startswith("<") and one[1].isalpha()])
def test_html_is_shown_as_it_was_typed(nasty: str) -> None:
    """It makes no element, whether it stands in a line or begins one."""
    for source in (f"before {nasty} behind", nasty, f"- {nasty}", f"# {nasty}", f"|a|\n|-|\n|{nasty}|"):
        html = read_page(source).html

        assert nasty in BeautifulSoup(html, "html.parser").get_text()
        assert set(elements(html)) <= ELEMENTS - {"img", "a"}


@given(TEXTS)
def test_nothing_but_what_is_allowed_comes_out(source: str) -> None:
    """Whatever is typed, a page holds these elements with these attributes alone."""
    found = BeautifulSoup(read_page(source).html, "html.parser").find_all()

    assert {one.name for one in found} <= ELEMENTS
    assert {name for one in found for name in one.attrs} <= ATTRIBUTES


def test_the_same_search_finds_what_another_reader_lets_through() -> None:
    """The check above can fail: read with all that Markdown allows, a script is one, and so is a drawing."""
    from markdown import markdown

    assert [set(elements(markdown(one))) <= ELEMENTS for one in NASTY[:3]] == [False, True, False]


def test_text_lists_tables_and_pictures_are_read() -> None:
    """Markdown as people know it."""
    source = "a **b** _c_\n\n- d\n\n1. e\n\n|f|g|\n|-|-|\n|h|i|\n\nj\n:   k\n\n> l\n\n![m](n.jpg)\n\n[o](p.md)"

    assert {"strong", "em", "ul", "ol", "table", "dl", "blockquote", "img", "a"} <= set(
        elements(read_page(source).html)
    )
