"""The form of a page of prose."""

from __future__ import annotations

from xml.etree.ElementTree import fromstring

from markdown import Markdown

from recordgen.site.prose.sections import Sections

TEXT = """# Title

Under it.
{: .rg-sub }

Before the first.

## One {: #one .rg-private }

- a
- b

### Deeper

## Two

Last.
"""


def parts(text: str) -> list[tuple[str, dict[str, str], list[str]]]:
    """The parts of a page: name, attributes, and the names of what is in each."""
    html = Markdown(extensions=["attr_list", Sections()]).convert(text)
    return [(part.tag, part.attrib, [one.tag for one in part]) for part in fromstring(f"<body>{html}</body>")]


def test_a_page_is_parted_at_its_headings() -> None:
    """Title and the line below are the header; each second heading begins a section with its id and class."""
    assert parts(TEXT) == [
        ("header", {}, ["h1", "p"]),
        ("section", {}, ["p"]),
        ("section", {"id": "one", "class": "rg-private"}, ["h2", "ul", "h3"]),
        ("section", {}, ["h2", "p"]),
    ]


def test_an_empty_page_has_no_part() -> None:
    """Nothing comes of nothing."""
    assert parts("") == []


def test_a_folded_heading_stands_open_above_its_section() -> None:
    """The fold takes the id, so that a link to it opens it."""
    html = Markdown(extensions=["attr_list", Sections()]).convert("## One {: #one .rg-fold }\n\nText.\n\n## Two")
    folded, plain = fromstring(f"<body>{html}</body>")

    assert [(one.tag, one.attrib) for one in folded] == [("details", {"id": "one"})]
    assert [one.tag for one in folded[0]] == ["summary", "p"]
    assert folded.findtext("details/summary/h2") == "One"
    assert [one.tag for one in plain] == ["h2"]
