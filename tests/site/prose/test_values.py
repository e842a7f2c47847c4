"""Values in a text of Markdown are shown as they are, wherever they stand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from jinja2 import DictLoader
from markupsafe import Markup

from recordgen.problems import Trouble
from recordgen.site.prose.render import render_prose
from recordgen.site.prose.values import cover, uncover
from recordgen.site.templates import environment
from tests.support.horse_records import NAMING

TYPED = [
    "**bold** _it_ `code` ~~gone~~ \\* \\\\",
    "# no heading",
    "1. no list",
    "- no list\n- nor this",
    "    no code",
    "a | b | c\n---|---|---",
    "[a](https://example.org) ![b](x.png) <https://example.org>",
    "<script>alert(1)</script> & &amp; \"q\" 'p' <!--late 0-->",
    "{{ 7 * 7 }} {% raw %} {# x #}",
    "[ref]: https://example.org\nfootnote[^1]",
    "\x02wzxhzdk:0\x03 \ue00061\ue001",
    "title\n=====\n\n***\n\n> quote",
    "{: .rg-sub #id onclick=alert(1) }",
    "ächzend, 6 weeks",
]
# Where a value may stand: in a line of text, at its start, in a heading, a list, a term, a table, HTML, bold, a link.
PLACES = {
    "text": "before {{ typed }} behind",
    "start": "{{ typed }}",
    "heading": "## {{ typed }} {: #place }",
    "list": "- {{ typed }}\n- other",
    "term": "{{ typed }}\n:   meaning",
    "meaning": "term\n:   {{ typed }}",
    "table": "| a | b |\n|---|---|\n| {{ typed }} | 2 |",
    "html": '<div class="x"><p>{{ typed }}</p></div>',
    "bold": "**{{ typed }}** rest",
    "code": "`{{ typed }}`",
    "link": "[{{ typed }}](words.html)",
}


def prose(text: str, **values: object) -> BeautifulSoup:
    """The prose of a page whose template is `text`."""
    made = environment(Path("none"), NAMING)
    made.loader = DictLoader({"page.md": text, "prose.html": "{{ prose }}"})
    made.bytecode_cache = None
    return BeautifulSoup(render_prose(made, "page.md", **values), "lxml")


@pytest.mark.parametrize("place", PLACES)
def test_what_was_typed_is_shown_letter_for_letter(place: str) -> None:
    """No sign of it is read as Markdown or HTML, and no element is made of it: only those of a plain word stand."""
    plain = prose(PLACES[place], typed="word")
    shown = {typed: prose(PLACES[place], typed=typed) for typed in TYPED}
    texts = {typed: plain.get_text().replace("word", typed) for typed in TYPED}
    strange = {typed: str(found) for typed, found in shown.items() if _elements(found) != _elements(plain)}

    assert {typed: found.get_text() for typed, found in shown.items()} == texts
    assert strange == {}


def _elements(found: BeautifulSoup) -> list[tuple[str, Any]]:
    return [(made.name, made.attrs) for made in found.find_all()]


def test_the_same_text_in_the_template_itself_is_read() -> None:
    """The check above can fail: what stands in the template is Markdown and HTML."""
    found = prose("- **bold** <b>too</b>\n- [a](words.html)")

    assert [made.name for made in found.select("section *")] == ["ul", "li", "strong", "b", "li", "a"]


def test_a_value_in_a_link_stays_in_it() -> None:
    """An address with a quote, a bracket and a blank ends nowhere but where it ends."""
    found = prose("[a]({{ typed }})", typed='a) "b" <c>').select_one("a")

    assert found is not None
    assert found["href"] == 'a) "b" <c>'


def test_markup_of_the_program_is_not_covered() -> None:
    """A picture's place goes as it is; empty text is nothing at all."""
    assert (cover(Markup("<!--late 0-->")), cover("")) == ("<!--late 0-->", "")
    assert uncover(cover("<b>")) == "&lt;b&gt;"


def test_a_missing_value_is_told() -> None:
    """As in every template."""
    with pytest.raises(Trouble, match=r"template page\.md, line 1, cannot be filled in: 'nobody'"):
        prose("{{ nobody }}")
