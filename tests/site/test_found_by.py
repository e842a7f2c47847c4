"""Words by which search finds a horse."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from recordgen.hoof.observations import Finding
from recordgen.language.spoken import language_of
from recordgen.site.frame.home_screen import MANIFEST
from recordgen.site.frame.search_index import words_of
from recordgen.site.pages.found_by import day_spellings, everyday_names, search_names
from tests.support.horse_records import NAMING, summary, visit
from tests.support.kinds import MOST_INDEX_BYTES, SEARCH_INDEX
from tests.support.pages import all_pages, search_entries, words


def test_a_finding_goes_by_the_names_of_the_trade() -> None:
    """An infection of the frog is asked for as thrush, one elsewhere is not. Common practice, no source."""
    frog = Finding("left_hind", "central groove", "infection", "infection")
    sole = Finding("left_hind", "sole", "infection", "infection")

    assert "thrush" in everyday_names(frog, NAMING)
    assert "thrush" not in everyday_names(sole, NAMING)


def test_what_was_found_years_ago_is_found_still() -> None:
    """Names of all visits, each once."""
    sore = {"frog": {"infection": "deep groove"}}
    names = search_names(summary(visit("2024-03-04", left_hind=sore), visit("2026-11-20", left_hind=sore)), NAMING)

    assert names.count("thrush") == 1


def test_a_day_is_spelled_as_people_type_it() -> None:
    """Year first, and day first with strokes and with points or in words, without noughts before."""
    figures = ("2026-3-4", "4/3/2026", "4/3/26", "4.3.2026", "4.3.26")

    assert day_spellings(date(2026, 3, 4)) == (*figures, "4 March 2026", "4 Mar 2026")


def test_a_day_is_spelled_in_the_language_of_the_site() -> None:
    """With the points of German and without them, as DIN 5008 and hurried thumbs have it."""
    spelled = day_spellings(date(2026, 11, 8), language_of("de"))

    assert {"8. November 2026", "8 November 2026", "8. Nov. 2026", "8 Nov 2026", "8.11.26"} < set(spelled)


@pytest.mark.parametrize("name", ["thrush", "seedy toe", "canker"])
def test_no_horses_page_shows_an_everyday_name(demo_sites: Path, name: str) -> None:
    """It may say more than was observed; it stands in the index alone."""
    pages = [page for page in all_pages(demo_sites / "willowmere/horses") if not page.stem.endswith("sheet")]

    assert [page.name for page in pages if name in words(page).lower()] == []


def test_menus_and_general_advice_are_not_searched(demo_sites: Path) -> None:
    """A horse's name is found on pages that tell of it, and each horse is told before what explains."""
    entries = search_entries(demo_sites / "willowmere")
    weight = {address: entry[2] for address, entry in entries.items()}
    tansy = {address for address, entry in entries.items() if "tansy" in entry[5].split()}

    assert "horses/tansy.html" in tansy
    assert not {"horses/bramble.html", "horses/fennel.html", "method.html", "words.html"} & tansy
    assert weight["horses/tansy.html"] > weight["index.html"] > weight["method.html"]


def test_the_index_of_search_is_small(demo_sites: Path) -> None:
    """On a slow phone what search loads is there in a second. Judgement: 180 kB in a second, as throttled there."""
    sizes = [path.stat().st_size for path in demo_sites.glob(f"*/{SEARCH_INDEX}")]

    assert len(sizes) == 4
    assert max(sizes) <= MOST_INDEX_BYTES


def test_a_word_is_told_once_and_folded() -> None:
    """Small and without accents, as it is compared with what was typed; nothing of what is left out."""
    html = "<p>Márta MARTA</p><nav data-search-exclude><p>Moss</p></nav><svg><title>foot</title></svg><p>and gap</p>"

    assert words_of(html) == "marta gap"


def test_a_site_on_the_home_screen_has_its_name(demo_sites: Path) -> None:
    """Its manifest names the stable, its light paper, a page and a mark that are there, and nothing beyond the site."""
    site = demo_sites / "willowmere"
    told = json.loads((site / MANIFEST).read_bytes())

    assert (told["name"], told["scope"]) == ("Willowmere", "./")
    assert f"--paper: {told['background_color']};" in (site / told["start_url"]).read_text("utf-8")
    assert all((site / place).is_file() for place in (told["start_url"], *(icon["src"] for icon in told["icons"])))
