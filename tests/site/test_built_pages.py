"""The built pages of the demo practice, read by an HTML parser."""

from __future__ import annotations

import itertools
import re
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

import html5lib
import pytest
from bs4 import BeautifulSoup

from tests.conftest import RECORDS
from tests.support.pages import all_pages, search_entries, soup, tree, words

STABLES = sorted(path.parent.name for path in RECORDS.glob("*/stable.yaml"))


def test_every_page_has_one_first_heading(demo_sites: Path) -> None:
    """A screen reader finds one title a page. Source: WCAG 2.2, technique H42."""
    counts = {path: len(tree(path).findall(".//h1")) for path in all_pages(demo_sites)}

    assert {path: count for path, count in counts.items() if count != 1} == {}


def test_headings_go_down_step_by_step(demo_sites: Path) -> None:
    """No heading skips a level. Source: WCAG 2.2, technique G141."""
    for path in all_pages(demo_sites):
        article = tree(path).find(".//article")
        levels = [int(heading.tag[1]) for heading in article.iter("h1", "h2", "h3", "h4")]

        assert all(now <= before + 1 for before, now in itertools.pairwise(levels)), (path, levels)


def test_pages_are_well_formed(demo_sites: Path) -> None:
    """The parser of the HTML standard finds nothing to mend in our part of a page.

    One stable's pages hold every template but the trimmer's front page. The lines of the pictures are left out: they
    are most of a page, and an attribute is an attribute.
    """
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    for path in [*all_pages(demo_sites / "willowmere"), demo_sites / "practice" / "index.html"]:
        article = re.search(r"<article.*</article>", path.read_text("utf-8"), re.DOTALL)

        assert article is not None
        assert parser.parseFragment(re.sub(r' d="[^"<>]*"', "", article[0])) is not None


def test_every_picture_has_a_name(demo_sites: Path) -> None:
    """Each inline picture is an image with a title of its own; each img has an alternative text."""
    for path in all_pages(demo_sites):
        for picture in tree(path).xpath("//article//svg[contains(@class, 'picture')]"):
            title = picture.find("title")
            assert picture.get("role") == "img"
            assert title is not None
            assert picture.get("aria-labelledby") == title.get("id")
            assert title.text.strip()
        assert tree(path).xpath("//img[not(@alt)]") == []


def test_no_id_stands_twice_on_a_page(demo_sites: Path) -> None:
    """Ids are unique, so that links and titles find their place."""
    for path in all_pages(demo_sites):
        ids = tree(path).xpath("//article//@id")

        assert sorted(ids) == sorted(set(ids)), path


def test_no_internal_link_is_dead(demo_sites: Path) -> None:
    """Each link inside a site leads to a file of that site, and to a place on it."""
    dead = []
    for site in demo_sites.iterdir():
        for path in all_pages(site):
            if path.name == "404.html":
                continue
            dead += [(path.name, href) for href in _hrefs(path) if not _leads_somewhere(path, site, href)]

    assert dead == []


def _leads_somewhere(page: Path, site: Path, href: str) -> bool:
    parts = urlsplit(href)
    if parts.scheme in ("tel", "sms", "mailto"):
        return True
    target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
    if not target.is_relative_to(site.resolve()) or not target.is_file():
        return False
    return not parts.fragment or parts.fragment in _ids(target)


def _hrefs(path: Path) -> list[str]:
    return [str(href) for href in tree(path).xpath("//a/@href")]


@cache
def _ids(path: Path) -> set[str]:
    return {str(one) for one in tree(path).xpath("//@id")}


def test_nothing_is_loaded_from_another_host(demo_sites: Path) -> None:
    """No page, style or script of ours names another host to load from."""
    loads = [("src", "script"), ("src", "img"), ("href", "link"), ("srcset", "source"), ("src", "iframe")]
    foreign = [
        (path.name, address)
        for path in all_pages(demo_sites)
        for attribute, name in loads
        for address in tree(path).xpath(f"//{name}/@{attribute}")
        if address.startswith(("http:", "https:", "//"))
    ]
    asked = re.compile(r"url\(\s*[\"']?(https?:)?//")
    styles = [path.name for path in all_pages(demo_sites) if asked.search(path.read_text("utf-8"))]

    assert foreign == []
    assert styles == []


def test_the_mark_of_the_tab_stands_in_the_page(demo_sites: Path) -> None:
    """A browser asks for it past the worker that opens sealed files, so that a host would see the asking."""
    icons = {tree(path).xpath("string(//link[@rel='icon']/@href)")[:26] for path in all_pages(demo_sites)}

    assert icons == {"data:image/svg+xml;base64,"}


def test_pages_that_explain_do_not_change_with_the_day(demo_sites: Path) -> None:
    """A day later only what tells of horses is another page for a host."""
    for name in ("words", "method", "safety"):
        assert "November 2026" not in words(demo_sites / "willowmere" / f"{name}.html").split("Hazel Hoof Care")[-1]
    assert "25 November 2026" in words(demo_sites / "willowmere" / "index.html")


def _own_words(stable: str) -> set[str]:
    names = [path.parent.name for path in RECORDS.glob(f"{stable}/*/horse.yaml")]
    return {stable, *names}


@pytest.mark.parametrize("stable", STABLES)
def test_no_page_of_a_stable_holds_a_word_of_another(demo_sites: Path, stable: str) -> None:
    """Neither names of other stables and their horses nor their addresses stand anywhere in a stable's files."""
    foreign = set().union(*(_own_words(other) for other in STABLES if other != stable))
    for path in (demo_sites / stable).rglob("*"):
        if path.suffix not in (".html", ".js", ".json", ".webmanifest", ".xml", ".txt", ".ics") or not path.is_file():
            continue
        text = re.sub(r"--\w+|\n ", "", path.read_text("utf-8").lower())
        found = {word for word in foreign if re.search(rf"\b{word.replace('-', '[- ]')}\b", text)}

        assert found == set(), path


def test_the_same_search_finds_the_foreign_words_on_the_trimmers_site(demo_sites: Path) -> None:
    """The check above can fail: the trimmer's site does hold a word of each stable."""
    text = " ".join(words(path).lower() for path in all_pages(demo_sites / "practice"))

    assert all(stable.replace("-", " ") in text for stable in STABLES)


def test_private_notes_stay_with_the_trimmer(demo_sites: Path) -> None:
    """A private note of a record is on the trimmer's site and in no file of a stable's."""
    notes = {
        match[1].strip("'\"")[:30]
        for path in RECORDS.rglob("*.yaml")
        for match in re.finditer(r"^private_note: (.+)$", path.read_text("utf-8"), re.MULTILINE)
    }
    private = " ".join(words(path) for path in all_pages(demo_sites / "practice"))
    open_text = " ".join(words(path) for stable in STABLES for path in all_pages(demo_sites / stable))

    assert notes
    assert [note for note in notes if note not in private] == []
    assert [note for note in notes if note in open_text] == []


def test_search_knows_the_horses(demo_sites: Path) -> None:
    """The search index of a stable holds each horse's page."""
    found = search_entries(demo_sites / "willowmere")

    assert {f"horses/{horse}.html" for horse in _own_words("willowmere") - {"willowmere"}} <= found.keys()


def test_cautions_come_first(demo_sites: Path) -> None:
    """On a page with a caution, no section comes before it."""
    page = soup(demo_sites / "willowmere" / "horses" / "fennel.html")
    first = page.select_one("article section")

    assert first is not None
    assert first["id"] == "act"


def test_every_chart_carries_its_figures(demo_sites: Path) -> None:
    """Each section with panels through time has a table of the same readings."""
    page: BeautifulSoup = soup(demo_sites / "willowmere" / "horses" / "bramble.html")
    for section in page.select("section:has(.rg-panels)"):
        rows = section.select("tbody tr")

        assert len(rows) == len({row.th.get_text() for row in rows if row.th})
        assert len(rows) > 10


def test_no_page_prints_a_diagnosis_of_our_own(demo_sites: Path) -> None:
    """The word stands on no page; a vet's words name a condition only where a vet is named beside them."""
    for path in all_pages(demo_sites):
        assert "diagnos" not in words(path).lower(), path
