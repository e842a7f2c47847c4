"""Free text is shown as it was typed, whatever it holds."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from recordgen.cache.entries import user_cache
from recordgen.records.load.everything import read_whole
from recordgen.site.build import build_sites
from recordgen.site.build_context import BuildContext
from tests.conftest import TODAY
from tests.support.pages import soup, words

NASTY = "<script>alert(1)</script> {{ 7 * 7 }} {% raw %} | a | b | **bold** _it_ `code` & \"q\" 'p' <!--late 0-->"
# A note of 5,000 words.
LONG = "She " + "steps shorter, " * 2499 + "so wait."
VISIT = {
    "date": "2026-10-14",
    "since_last": NASTY,
    "keeping": {"feed_change": NASTY, "ground": NASTY},
    "feet": {
        "left_fore": {
            "before": {"toe_length": 92, "toe_angle": 50, "heel_height": {"medial": 38, "lateral": 37}},
            "object": {"what": NASTY, "where": "sole"},
            "done": [NASTY],
            "note": NASTY,
        }
    },
    "care": [{"what": NASTY, "how_often": NASTY}],
    "note": NASTY,
    "private_note": LONG,
}


@pytest.fixture(scope="module")
def nasty_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site whose every free text is as bad as can be."""
    records = tmp_path_factory.mktemp("nasty")
    horse = records / "old-mill" / "horse"
    horse.mkdir(parents=True)
    files = {
        records / "practice.yaml": {"name": NASTY, "trimmer": NASTY},
        horse.parent / "stable.yaml": {"name": NASTY, "note": NASTY, "vet": {"name": NASTY}},
        horse / "horse.yaml": {"name": NASTY, "note": NASTY, "conformation": [NASTY]},
        horse / "2026-10-14.yaml": VISIT,
    }
    for path, values in files.items():
        path.write_text(json.dumps(values), "utf-8")
    out = tmp_path_factory.mktemp("nasty-sites")
    context = BuildContext.of(read_whole(records, TODAY), TODAY, user_cache())
    build_sites(context, ["old-mill", "practice"], out)
    return out


def test_every_free_text_is_shown_as_typed(nasty_site: Path) -> None:
    """Names, notes, jobs and findings stand on the page letter for letter."""
    text = words(nasty_site / "old-mill" / "horses" / "horse.html")

    assert text.count(NASTY) >= 9


def test_a_note_of_5000_words_stops_no_build(nasty_site: Path) -> None:
    """It stands whole where it belongs, and nowhere else."""
    text = words(nasty_site / "practice" / "old-mill" / "horse.html")

    assert len(LONG.split()) > 5000
    assert LONG in text
    assert LONG[:60] not in words(nasty_site / "old-mill" / "horses" / "horse.html")


@pytest.mark.parametrize("page", ["old-mill/index.html", "old-mill/horses/horse.html", "practice/index.html"])
def test_nothing_typed_becomes_a_script(nasty_site: Path, page: str) -> None:
    """No script on the page holds what was typed, and no element was made of it."""
    found = soup(nasty_site / page)

    assert [script for script in found.find_all("script") if "alert(1)" in script.get_text()] == []
    assert [made for made in found.select("article :is(strong, em, code)") if made.get_text() in ("bold", "it")] == []


@pytest.mark.parametrize("page", ["old-mill/index.html", "old-mill/horses/horse.html", "practice/index.html"])
def test_titles_show_what_was_typed(nasty_site: Path, page: str) -> None:
    """The title of the window and the header of the page hold the name, not its markup."""
    found = soup(nasty_site / page)

    assert found.title is not None
    assert "{{ 7 * 7 }}" in found.title.get_text()
    assert "<script>alert(1)</script>" in found.select(".rg-home")[0].get_text()
