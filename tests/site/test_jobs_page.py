"""The list of jobs for the wall of the feed room."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from types import SimpleNamespace

import pytest
from bs4 import BeautifulSoup, Tag

from recordgen.hoof.care.jobs import week_of_jobs
from recordgen.hoof.summary import HorseSummary
from recordgen.pictures.cache import PictureCache
from recordgen.records.models.stable import Stable
from recordgen.site.drawings.dated import DaySayer
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.model import Page
from recordgen.site.pages.ticks import tick_key
from recordgen.site.templates import environment, render
from tests.support.horse_records import NAMING, REFERENCE, practice, summary, visit
from tests.support.pages import text_of

TODAY = date(2026, 11, 2)
WHOLE = practice(phone="07700 900142")


def horse(name: str, *care: str) -> SimpleNamespace:
    """The facts that the page asks of a horse's summary."""
    return of_summary(name, summary(visit("2026-10-14", care=list(care))))


def of_summary(name: str, found: HorseSummary) -> SimpleNamespace:
    """The same of a summary under another name."""
    named = SimpleNamespace(name=name)
    return SimpleNamespace(
        horse=named, stable="willowmere", slug=name.lower(), jobs=found.jobs, withheld=found.withheld
    )


def page(horses: Sequence[SimpleNamespace], stable: Stable | None = None) -> BeautifulSoup:
    """The page of a stable with these horses."""
    templates = environment(Path("none"), NAMING)
    pictures = Pictures(PictureCache(None), NAMING, DaySayer(templates, TODAY))
    html = render(
        templates,
        "jobs.html",
        pictures=pictures,
        here="jobs.md",
        menu=[],
        own_menu=[],
        private=False,
        practice=WHOLE,
        today=TODAY,
        link=lambda there: there,
        stable=stable or Stable(name="Willowmere"),
        horses=horses,
        week=week_of_jobs((one, one.jobs) for one in horses),
        withheld=[(one, job) for one in horses for job in one.withheld],
    )
    return BeautifulSoup(Page("jobs.md", "", html, tuple(pictures.late)).complete(html), "lxml")


def rows(found: BeautifulSoup) -> dict[str, list[str]]:
    """By horse, the days that are meant for the job; every day has a box."""
    lines = [row for row in found.select(".rg-week tbody tr") if row.select_one("th[scope=row]")]
    assert all(len(row.select("td input[data-tick]")) == 7 for row in lines)
    return {row.th.get_text(): meant(row) for row in lines if row.th}


def meant(row: Tag) -> list[str]:
    """The days whose boxes are framed and printed."""
    return [str(box["aria-label"]).split(", ")[1] for box in row.select(".meant input")]


def test_ticks_stand_on_their_days() -> None:
    """Every day for a daily job, two days for one that is done twice a week."""
    ticks = rows(page([horse("Otter", "pick-out-daily"), horse("Moss", "chip-that-catches")]))

    assert (len(ticks["Otter"]), ticks["Moss"]) == (7, ["Monday", "Thursday"])


def test_a_job_stands_once_over_its_horses() -> None:
    """With how often, the months it is for, what to stop at, and why."""
    found = page([horse("Otter", "wet-season-frog"), horse("Moss", "wet-season-frog")])
    words = REFERENCE.care["wet-season-frog"]
    (head,) = [" ".join(one.get_text(" ").split()) for one in found.select(".rg-week th[scope=rowgroup]")]

    assert head.startswith(f"{words.what} every second day while the ground is wet")
    assert all(part in head for part in ("for the wet months", words.stop_if, words.caution, words.why) if part)
    assert set(rows(found)) == {"Otter", "Moss"}


def test_jobs_without_days_say_when_they_come_up() -> None:
    """They have a box for today alone."""
    found = page([horse("Otter", "boots-fit")])
    (box,) = found.select("#as-told input")

    assert found.select_one("#week") is None
    assert "before and after each use" in text_of(found, "#as-told")
    assert (text_of(found, "#as-told label"), box.has_attr("data-weekday")) == ("Otter", False)


def test_a_horses_job_has_one_key_on_every_page() -> None:
    """The seven days of the week and the box of today keep the same tick."""
    otter = horse("Otter", "pick-out-daily")
    week = {str(box["data-tick"]) for box in page([otter]).select("input")}

    assert week == {tick_key("willowmere", "otter", otter.jobs[0])}


def test_a_stable_without_jobs_says_so() -> None:
    """It does not say that nothing need be done."""
    assert "No care note is in force. That only tells what was written down." in page([horse("Fennel")]).get_text()


def test_whom_to_ring_stands_on_the_sheet() -> None:
    """The trimmer, and the vet where one is named."""
    vet = Stable.model_validate({"name": "Willowmere", "vet": {"name": "Fold Gate Vets", "phone": "01632 960856"}})
    found = page([horse("Otter", "pick-out-daily")], vet)

    head = text_of(found, "header")

    assert "about a job, ring Wren Ashdown, 07700 900142 ; in doubt about a horse, ring the vet" in head
    assert text_of(found, ".rg-vet") == "Vet: Fold Gate Vets, 01632 960856"


def test_without_a_vet_the_sheet_says_your_vet() -> None:
    """And no number is made up."""
    assert text_of(page([horse("Otter", "pick-out-daily")]), ".rg-vet") == "Vet: your vet"


def test_a_job_that_waits_has_no_ticks_and_says_why() -> None:
    """For that horse alone; the other one's goes on."""
    sore = {"frog": {"infection": "deep groove", "painful": True}}
    fennel = of_summary("Fennel", summary(visit("2026-10-14", left_hind=sore, care=["daily-grooves", "dry-bed"])))
    found = page([fennel, horse("Otter", "daily-grooves")])
    brush = [body.get_text(" ") for body in found.select(".rg-week tbody") if "brush the grooves" in body.get_text()]

    assert "The groove of the left hind was deep and sore on 14 October 2026. Fennel" in text_of(found, "#not-now")
    assert ["Otter" in text and "Fennel" not in text for text in brush] == [True]


@pytest.mark.parametrize("name", ["<b>Otter</b>", "{{ 7 * 7 }}"])
def test_a_name_stands_as_it_was_typed(name: str) -> None:
    """On every list of the page."""
    found = page([horse(name, "pick-out-daily", "boots-fit")])

    assert all(name in text_of(found, part) for part in ("#week", "#as-told"))
