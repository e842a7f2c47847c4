"""Growth, due days and rounds as the pages show them, against what was computed."""

from __future__ import annotations

from pathlib import Path

import pytest
from icalendar import Calendar

from recordgen.days import month_day, month_name, month_year, weekday_day
from recordgen.hoof.rounds.rounds import Calendar as Days
from recordgen.hoof.rounds.rounds import plan_of
from recordgen.hoof.summary import HorseSummary, StableSummary, summarise_stable
from recordgen.records.load.everything import read_whole
from recordgen.site.context import ways_of
from tests.conftest import RECORDS, TODAY
from tests.support.pages import soup, words


@pytest.fixture(scope="module")
def stables() -> list[StableSummary]:
    """The demo practice."""
    whole = read_whole(RECORDS, TODAY)
    ways = ways_of(whole)
    return [summarise_stable(stable, ways, TODAY) for stable in whole.practice.stables]


def horse(stables: list[StableSummary], name: str) -> HorseSummary:
    """One horse of the demo by its folder."""
    return next(one for stable in stables for one in stable.horses if one.slug == name)


def test_an_owner_reads_when_and_between_which_days_and_why(demo_sites: Path, stables: list[StableSummary]) -> None:
    """The best day as a heading, the window, and the reason by growth."""
    due = horse(stables, "moss").due
    assert due is not None
    section = soup(demo_sites / "willowmere/horses/moss.html").select_one("#next")
    assert section is not None
    text = " ".join(section.get_text(" ").split())

    assert text.startswith(f"Next visit about {month_day(due.best)}")
    assert f"{due.earliest.day} {month_name(due.earliest)[:3]} earliest" in text
    assert f"{due.latest.day} {month_name(due.latest)[:3]} latest" in text
    assert "Because by then the toe will have grown about 11 mm" in text
    assert f"Not after {month_day(due.latest)}: {due.latest_reason}." in text


def test_growth_is_told_with_its_interval(demo_sites: Path, stables: list[StableSummary]) -> None:
    """The rate and both ends of the interval, by the month."""
    rate = horse(stables, "moss").growth.together
    low, mean, high = (f"{round(value * 365.25 / 12, 1):g} mm" for value in (rate.low, rate.mean, rate.high))

    assert f"about {mean} a month, between {low} and {high}, from {rate.cycles} cycles" in words(
        demo_sites / "willowmere/horses/moss.html"
    )


def test_a_mark_is_told_with_the_month_it_grows_out(demo_sites: Path, stables: list[StableSummary]) -> None:
    """A drawing of the wall, and for each mark its month with the interval."""
    (ring,) = horse(stables, "pippin").feet["left_fore"].growing_out
    section = soup(demo_sites / "willowmere/horses/pippin.html").select_one("#growing-out")
    assert section is not None
    text = " ".join(section.get_text(" ").split())

    assert f"about {month_year(ring.about)}, between {month_year(ring.earliest)}" in text
    assert "It stands where it was expected." in text
    assert section.select_one("figure svg.picture")


def test_the_trimmer_sees_the_rounds_that_would_do(demo_sites: Path, stables: list[StableSummary]) -> None:
    """Each planned day with its horses, in order, as the planner gives it."""
    whole = read_whole(RECORDS, TODAY)
    plan = plan_of(stables, Days.of(ways_of(whole), TODAY))
    rows = soup(demo_sites / "practice/index.html").select("#rounds li")

    assert [row.b.get_text(strip=True) for row in rows] == [weekday_day(one.day) for one in plan.rounds]
    for row, one in zip(rows, plan.rounds, strict=True):
        assert all(wish.name in row.get_text() for wish in one.wishes)


def test_who_is_overdue_stands_first_in_each_stable(demo_sites: Path) -> None:
    """A stable's list begins with the horse that waits longest."""
    lists = soup(demo_sites / "practice/index.html").select("#due .rg-dues ul")
    late = [["late" in (row.get("class") or []) for row in one.select(".rg-due")] for one in lists]

    assert any(any(rows) for rows in late)
    assert all(rows == sorted(rows, reverse=True) for rows in late)


def test_a_stable_s_dates_are_a_calendar_of_its_own_horses(demo_sites: Path, stables: list[StableSummary]) -> None:
    """One whole-day event a present horse on its best day; linked from the front page."""
    for stable in stables:
        found = Calendar.from_ical((demo_sites / stable.slug / "dates.ics").read_bytes())
        days = sorted(event["DTSTART"].dt for event in found.walk("VEVENT"))

        assert days == sorted(one.due.best for one in stable.present if one.due)
        assert soup(demo_sites / stable.slug / "index.html").select_one('a[href="dates.ics"]')


def test_forecasts_and_what_came_are_for_the_trimmer_alone(demo_sites: Path) -> None:
    """Neither a stable's page nor its horses' pages tell them."""
    assert soup(demo_sites / "practice/willowmere/moss.html").select_one("#fared table")
    assert "on average" in words(demo_sites / "practice/index.html")
    assert not soup(demo_sites / "willowmere/horses/moss.html").select_one("#fared")


def test_remarks_are_for_the_trimmer_alone(demo_sites: Path) -> None:
    """The list of what to look at stands on the trimmer's front page and nowhere else."""
    assert soup(demo_sites / "practice/index.html").select_one("#gaps")
    for stable in ("willowmere", "fallow-end", "tithe-barn"):
        assert "Missing in the records" not in words(demo_sites / stable / "index.html")


def test_aims_are_told_with_how_far_each_foot_is(demo_sites: Path) -> None:
    """The measure, the value aimed at, and the latest reading of each foot, in one line an aim."""
    section = soup(demo_sites / "willowmere/horses/bramble.html").select_one("#aims")
    assert section is not None
    first, traced, toes = (" ".join(item.get_text(" ").split()) for item in section.select("li"))

    assert first == "Flare at the inner toe quarter at 2 mm or less: right hind 1 mm on 21 Oct 2026, there."
    assert traced.startswith("Flare, from the ring at the inner toe quarter at 2 mm or less: right hind")
    assert toes.startswith("Toe length at 78 mm or less: left fore")
    assert "right hind" in toes
