"""The page on safety and scope, as owners read it and as the trimmer does."""

from __future__ import annotations

import itertools
import re
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from recordgen.hoof.law_notes import scope_notes
from recordgen.site.model import link
from recordgen.site.prose.render import render_prose
from recordgen.site.templates import environment
from tests.support.horse_records import NAMING, REFERENCE, practice
from tests.support.pages import text_of

PLACES = ["GB", "DE", "US", "AU", "FR", None]
# Sums, fines, prison: none of it is for a page on what keeps a horse safe.
PENALTY = re.compile(
    r"[£$€]|\b(?:GBP|EUR|USD|pounds?|euros?|dollars?|fined?|fines|penalt\w+|prison|jail|offences?)\b", re.I
)


def page(country: str | None, private: bool = False) -> BeautifulSoup:
    """The page of a practice in a country."""
    found = practice(country=country) if country else practice()
    html = render_prose(
        environment(Path("none"), NAMING),
        "safety.md",
        here="safety.md",
        title="Safety and scope",
        menu=[],
        own_menu=[],
        private=private,
        practice=found,
        today=date(2026, 11, 25),
        link=lambda there: link("safety.md", there),
        notes=list(REFERENCE.safety.values()),
        scope=scope_notes(country, REFERENCE.scope),
    )
    return BeautifulSoup(html, "lxml")


@pytest.mark.parametrize("private", [False, True])
@pytest.mark.parametrize("country", PLACES)
def test_each_statement_stands_with_its_source(country: str | None, private: bool) -> None:
    """Every line of a list has one in small print; of what law asks also the day it was read."""
    lines = page(country, private).select("section li")

    assert lines
    assert [line.get_text() for line in lines if len(line.select("small")) != 1] == []
    assert all("read on 25 November 2026" in line.get_text() for line in page(country).select("#scope li"))


@pytest.mark.parametrize("section", ["vet now", "vet today", "handling", "hygiene", "chemicals", "records"])
def test_nothing_of_the_table_is_left_out(section: str) -> None:
    """All that owners are to read stands on the page, with what to do meanwhile."""
    told = text_of(page("GB"), "body")
    notes = [note for note in REFERENCE.safety.values() if note.section == section]

    assert notes
    assert [note for note in notes if note.text not in told or (note.meanwhile or "") not in told] == []


@pytest.mark.parametrize(
    ("country", "words"),
    [
        ("GB", "In England, Wales and Scotland law keeps shoeing for registered farriers"),
        ("DE", "In Germany law keeps shoeing for farriers"),
        ("US", "In the United States each state says"),
        ("AU", "In Australia we know of no licence"),
    ],
)
def test_the_law_of_the_practice_is_told(country: str, words: str) -> None:
    """Its own country's, in general, and no other's; what holds everywhere comes last."""
    told = text_of(page(country), "#scope")

    assert f"This practice works in {country}." in told
    assert words in told
    assert len(re.findall(r"In (?:England|Germany|the United States|Australia)\b", told)) == 1
    assert told.index(words) < told.index("Local law and licensed practice decide")


@pytest.mark.parametrize(
    ("country", "words"),
    [("FR", "This practice works in FR. We hold no note on the law there."), (None, "This practice names no country")],
)
def test_where_nothing_is_known_of_the_law_it_says_so(country: str | None, words: str) -> None:
    """The general note stands alone."""
    found = page(country)

    assert words in text_of(found, "#scope")
    assert len(found.select("#scope li")) == 1


@pytest.mark.parametrize("private", [False, True])
@pytest.mark.parametrize("country", PLACES)
def test_no_penalty_is_named(country: str | None, private: bool) -> None:
    """The page says what is asked of people, not what they are threatened with."""
    assert PENALTY.findall(page(country, private).get_text()) == []


def test_a_penalty_would_be_found() -> None:
    """The search above can fail."""
    assert all(PENALTY.search(text) for text in ("up to £400", "a fine", "It is an offence", "in prison"))


@pytest.mark.parametrize("country", PLACES)
def test_data_on_people_is_for_the_trimmer_alone(country: str | None) -> None:
    """Owners read nothing of how the trimmer keeps their data; the trimmer does, whatever the country."""
    assert page(country).select_one("#data") is None
    assert "personal data" not in page(country).get_text()
    assert "Keep the repository private" in text_of(page(country, private=True), "#data.rg-private")


@pytest.mark.parametrize(
    ("country", "words"), [("GB", "A fee is due each year, unless you are exempt"), ("DE", "law of the European Union")]
)
def test_what_is_asked_of_data_goes_by_the_country(country: str, words: str) -> None:
    """A fee in Britain, the law of the Union in Germany; each with the advice to ask."""
    told = {place: text_of(page(place, private=True), "#data") for place in ("GB", "DE", "US")}

    assert [place for place, text in told.items() if words in text] == [country]
    assert all("General notes, no legal advice. Law changes: ask" in text for text in told.values())


@pytest.mark.parametrize("private", [False, True])
def test_headings_go_down_step_by_step(private: bool) -> None:
    """One title, and no level is skipped; when to call a vet comes first. Source: WCAG 2.2, techniques H42 and G141."""
    headings = page("GB", private).select("h1, h2, h3, h4")
    levels = [int(heading.name[1]) for heading in headings]

    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(now <= before + 1 for before, now in itertools.pairwise(levels))
    assert [heading.get_text() for heading in headings][1:4] == ["Call a vet", "At once", "The same day"]


# Cautions that an owner sees as one thing: the line that says it.
SAID_BY = {
    "obel-high": "severely-lame",
    "foal-spares": "foal-lame",
    "foal-hot": "foal-lame",
    "hairline-dip": "sole-bulging",
    "gives-and-warm": "sole-bulging",
}


def test_what_is_urgent_of_a_horse_is_urgent_here() -> None:
    """Each caution that asks for a call at once has its line, and no line asks for more haste."""
    now = {key for key, note in REFERENCE.safety.items() if note.section == "vet now"}
    today = {key for key, note in REFERENCE.safety.items() if note.section == "vet today"}

    assert now == {SAID_BY.get(key, key) for key, words in REFERENCE.cautions.items() if words.level == "call now"}
    assert {REFERENCE.cautions[key].level for key in today & set(REFERENCE.cautions)} == {"call today"}
