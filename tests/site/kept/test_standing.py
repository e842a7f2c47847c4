"""Building on what stands gives what building all anew gives, byte for byte, whatever was edited in between."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.site.model import Page
from recordgen.site.pages.horse import render_horse_and_sheet
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.pages.sites import PRACTICE
from recordgen.site.prose.guide import guide_pictures
from tests.conftest import TODAY
from tests.support.edits import EVERYWHERE, LOCAL, Edited


def test_after_any_edits_the_sites_are_those_of_a_cold_build(tmp_path: Path) -> None:
    """Every kind of edit once, in an order drawn at random: three at a time where something stands, else six."""
    practice = Edited.of(tmp_path, seed=11, stables=3, horses=1)
    practice.build("sites")
    for kinds, at_once in ((sorted(LOCAL), 3), (sorted(EVERYWHERE), 6)):
        practice.rng.shuffle(kinds)
        for begin in range(0, len(kinds), at_once):
            for kind in kinds[begin : begin + at_once]:
                practice.edit(kind)

            assert practice.differing() == [], practice.done


def test_only_the_stable_that_changed_is_built_again(tmp_path: Path) -> None:
    """The other stands as it was; so do its pages in the trimmer's site and the guide's pictures, by a second name."""
    practice = Edited.of(tmp_path, seed=3)
    practice.build("sites")
    site = tmp_path / "sites" / PRACTICE
    stand = [site / "stable-002" / "horse-001.html", *(site / uri for uri in guide_pictures())]
    written = [(file.stat().st_ino, file.stat().st_mtime_ns) for file in stand]
    visit = sorted((practice.records / "stable-001" / "horse-001").glob("2*.yaml"))[-1]
    visit.write_text(re.sub(r"toe_length: [0-9.]+", "toe_length: 81.5", visit.read_text("utf-8"), count=1), "utf-8")

    assert practice.build("sites") == {"stable-001": False, "stable-002": True, PRACTICE: False}
    assert [(file.stat().st_ino, file.stat().st_mtime_ns) for file in stand] == written
    assert practice.differing() == []


def test_of_a_stable_only_the_horse_that_changed_is_made_again(tmp_path: Path) -> None:
    """In the stable's site and in the trimmer's: its neighbour's pages stand; what tells of all horses does not."""
    practice = Edited.of(tmp_path, seed=3, stables=1)
    practice.build("sites")
    sites = (tmp_path / "sites" / "stable-001" / "horses", tmp_path / "sites" / PRACTICE / "stable-001")
    neighbour, changed = ([site / f"horse-00{number}_sheet.html" for site in sites] for number in (2, 1))
    before = {page: page.stat().st_ino for page in (*neighbour, *changed)}
    visit = sorted((practice.records / "stable-001" / "horse-001").glob("2*.yaml"))[-1]
    visit.write_text(re.sub(r"toe_length: [0-9.]+", "toe_length: 81.5", visit.read_text("utf-8"), count=1), "utf-8")
    practice.build("sites")

    assert all(page.stat().st_ino == before[page] for page in neighbour)
    assert all(page.stat().st_ino != before[page] for page in changed)
    assert practice.differing() == []


def test_on_a_new_day_the_pages_of_horses_are_only_told_the_day(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Forward and back: only a horse whose window opens or ends is made again, and all is as on a cold build."""
    practice, made = Edited.of(tmp_path, seed=3), set[str]()
    practice.build("sites")
    with monkeypatch.context() as patch:
        patch.setattr("recordgen.site.pages.sites.render_horse_and_sheet", counting(made))
        for days in (1, 2, 0, 1):
            practice.today = TODAY + dt.timedelta(days=days)
            practice.build("sites")
            page = (tmp_path / "sites" / PRACTICE / "stable-001" / "horse-001.html").read_text("utf-8")

            assert f"as of {practice.today.day} November 2026" in page

    assert made == {"stable-001/horse-002"}
    assert practice.differing() == []


def test_what_another_version_left_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It may have another form: the sites are made again, whatever is kept of them."""
    practice = Edited.of(tmp_path, seed=3, stables=1, horses=1)
    practice.build("sites")
    monkeypatch.setattr("recordgen.site.kept.standing.program_version", lambda: "another")
    monkeypatch.setattr("recordgen.site.kept.standing.from_json", lambda *_: pytest.fail("read"))

    assert practice.build("sites") == {"stable-001": False, PRACTICE: False}


def counting(made: set[str]) -> Callable[[PageRenderer, str, HorseSummary, StableSummary], tuple[Page, Page]]:
    """The renderer of a horse's pages, which notes whose it makes."""

    def render(renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary) -> tuple[Page, Page]:
        made.add(f"{horse.stable}/{horse.slug}")
        return render_horse_and_sheet(renderer, uri, horse, stable)

    return render
