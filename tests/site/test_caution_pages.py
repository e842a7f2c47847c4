"""Cautions as the pages show them: every rule where people can look it up, open ones first, closed ones folded."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import render_site
from tests.support.horse_records import REFERENCE
from tests.support.pages import soup, words
from tests.support.practice_folders import TODAY, build


def test_every_caution_stands_on_the_page_of_methods_with_its_source(demo_sites: Path) -> None:
    """Level, what is safe meanwhile, what not to do and why we say so, for each entry of the table."""
    text = words(demo_sites / "willowmere/method.html")
    missing = [
        key
        for key, caution in REFERENCE.cautions.items()
        for told in (caution.meanwhile, caution.do_not, caution.source)
        if told and " ".join(told.split()) not in text
    ]

    assert REFERENCE.cautions
    assert missing == []


def test_an_open_caution_stands_first_with_its_age(demo_sites: Path) -> None:
    """Before anything else of the horse, on its own page and on its stable's."""
    page = soup(demo_sites / "willowmere/horses/fennel.html")
    first = page.select_one("article section")

    assert first is not None
    assert first["id"] == "act"
    assert "First recorded on 18 November 2026, 7 days ago" in " ".join(first.get_text(" ").split())
    assert "Fennel" in words(demo_sites / "willowmere/index.html").split("Who is due when")[0]


def test_what_is_over_stays_to_be_read_with_who_ended_it(demo_sites: Path) -> None:
    """The vet's look that ended Pippin's stance is named with its day."""
    text = words(demo_sites / "willowmere/horses/pippin.html")

    assert "Cautions that are over" in text
    assert "Ended on 27 August 2026 by the vet, Imogen Sayle, Three Larches" in text


def test_no_page_calls_a_horse_well(demo_sites: Path) -> None:
    """A horse without a caution gets no word of comfort either."""
    text = words(demo_sites / "willowmere/horses/moss.html").lower()

    assert not soup(demo_sites / "willowmere/horses/moss.html").select_one("#act")
    assert [word for word in ("healthy", "is fine", "all clear", "no problem") if word in text] == []


def test_a_page_tells_one_number_of_weeks(demo_sites: Path) -> None:
    """Whole weeks that have passed, in the caution of being overdue alone; above it stands the day. 75 days are ten."""
    text = words(demo_sites / "tithe-barn/horses/rowan.html")

    assert "last visit 11 September 2026" in text.split("Do now")[0]
    assert "weeks" not in text.split("Do now")[0]
    assert "The last visit was on 11 September 2026, 10 weeks ago" in text


@pytest.fixture
def sore(tmp_path: Path) -> dict[str, BeautifulSoup]:
    """The trimmer's pages and the stable's, of a horse with several signs, a wound and a cut, and of one that ended."""
    first = "date: 2026-09-01\nfeet: {LF: {heat: yes, drew_blood: yes}}\n"
    last = (
        "date: 2026-10-14\nsigns: [leans back]\n"
        "feet: {LF: {heat: no, pulse: strong, wound: {where: coronet}}}\n"
        "resolved: [{caution: drew-blood, date: 2026-09-20, by: Ada Corrie}]\n"
    )
    files = {"willowmere/bramble/2026-09-01.yaml": first, "willowmere/bramble/2026-10-14.yaml": last}
    build(tmp_path, files)
    context = BuildContext.of(read_whole(tmp_path, TODAY), TODAY, None)
    sites = {site: render_site(context, site).pages for site in ("practice", "willowmere")}
    return {f"{site}/{page.uri}": BeautifulSoup(page.html, "lxml") for site in sites for page in sites[site]}


def text(page: BeautifulSoup, part: str) -> str:
    """The words of a part of a page."""
    found = page.select_one(part)
    assert found is not None
    return " ".join(found.get_text(" ").split())


def test_the_trimmers_own_page_names_who_ended_what(sore: dict[str, BeautifulSoup]) -> None:
    """By whose word and by whose record, with the day."""
    ended = text(sore["practice/index.md"], "#ended")

    assert (
        "The trim drew blood at the left fore on 1 September 2026. Ended on 20 September 2026, as Ada Corrie" in ended
    )
    assert "Ended on 14 October 2026: a later record of Wren Ashdown says otherwise." in ended
    assert not sore["willowmere/index.md"].select_one("#ended")


def test_the_trimmers_own_page_says_how_each_one_ends(sore: dict[str, BeautifulSoup]) -> None:
    """One that calls for the vet now ends by a vet; what it sums up is told once; no trim is planned, and why."""
    desk = sore["practice/index.md"]
    rows = [" ".join(row.get_text(" ").split()) for row in desk.select(".rg-watch")]

    assert any(row.startswith("Bramble , Willowmere") and "Several signs" in row for row in rows)
    assert all("or when a vet who saw the horse says so" in row for row in rows)
    assert not [row for row in rows if "pulse" in row and "Several signs" not in row]
    assert text(desk, "#no-trim") == "No trim is planned until the vet agrees: Bramble , Willowmere."
    assert text(desk, ".rg-urgent") == "Call your vet now: Bramble"


def test_the_trimmers_own_page_asks_for_no_line_to_type(sore: dict[str, BeautifulSoup]) -> None:
    """Neither braces nor keys of a record stand on it."""
    words = sore["practice/index.md"].get_text()

    assert [sign for sign in ("{", "}", "kind:", "resolved:", "ends:", ".yaml") if sign in words] == []


def test_an_owner_reads_that_no_trim_is_planned(sore: dict[str, BeautifulSoup]) -> None:
    """Beside the next visit, on the horse's page and on the stable's."""
    why = "No trim until the vet agrees: Several signs were recorded on 14 October 2026"

    assert why in text(sore["willowmere/horses/bramble.md"], "#next")
    assert "no trim until the vet agrees" in text(sore["willowmere/index.md"], "#horses")
