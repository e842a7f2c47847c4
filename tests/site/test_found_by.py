"""Words by which search finds a horse."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from recordgen.hoof.observations import Finding
from recordgen.site.pages.found_by import day_spellings, everyday_names, found_by
from tests.support.horse_records import NAMING, summary, visit
from tests.support.pages import all_pages, words


def test_a_finding_goes_by_the_names_of_the_trade() -> None:
    """An infection of the frog is asked for as thrush, one elsewhere is not. Common practice, no source."""
    frog = Finding("left_hind", "central groove", "infection", "infection")
    sole = Finding("left_hind", "sole", "infection", "infection")

    assert "thrush" in everyday_names(frog, NAMING)
    assert "thrush" not in everyday_names(sole, NAMING)


def test_what_was_found_years_ago_is_found_still() -> None:
    """Names and days of all visits, each once."""
    sore = {"frog": {"infection": "deep groove"}}
    names = found_by(summary(visit("2024-03-04", left_hind=sore), visit("2026-11-20", left_hind=sore)), NAMING)

    assert names.count("thrush") == 1
    assert {"2024-03-04", "4/3/2024", "20.11.2026"} <= set(names)


def test_a_day_is_spelled_as_people_type_it() -> None:
    """Year first, and day first with strokes and with points, without noughts before."""
    assert day_spellings(date(2026, 3, 4)) == ("2026-03-04", "4/3/2026", "4.3.2026")


@pytest.mark.parametrize("name", ["thrush", "seedy toe", "canker"])
def test_no_horses_page_shows_an_everyday_name(demo_sites: Path, name: str) -> None:
    """It may say more than was observed; it stands in the index alone."""
    pages = [page for page in all_pages(demo_sites / "willowmere/horses") if not page.stem.endswith("sheet")]

    assert [page.name for page in pages if name in words(page).lower()] == []


def test_menus_and_general_advice_are_not_searched(demo_sites: Path) -> None:
    """A horse's name is found on pages that tell of it, and each horse is told before what explains."""
    entries = json.loads((demo_sites / "willowmere/search/search_index.json").read_text())["docs"]
    boost = {entry["location"]: entry.get("boost", 1) for entry in entries}
    tansy = [entry["location"] for entry in entries if "Tansy" in entry["text"]]

    assert "horses/tansy.html" in tansy
    assert not {"horses/bramble.html", "horses/fennel.html", "method.html", "words.html"} & set(tansy)
    assert boost["horses/tansy.html"] > boost["index.html"] > boost["method.html"]
