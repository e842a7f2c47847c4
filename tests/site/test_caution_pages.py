"""Cautions as the pages show them: every rule where people can look it up, open ones first, closed ones folded."""

from __future__ import annotations

from pathlib import Path

from tests.hoof.building import REFERENCE
from tests.site.pages import soup, words


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
    assert "Fennel" in words(demo_sites / "willowmere/index.html").split("Horses, by next visit")[0]


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
    """Whole weeks that have passed: above the page and in the caution of being overdue. 75 days are ten."""
    text = words(demo_sites / "tithe-barn/horses/rowan.html")

    assert "last visit 11 September 2026, 10 weeks ago" in text
    assert "The last visit was on 11 September 2026, 10 weeks ago" in text
