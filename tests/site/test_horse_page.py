"""A horse's page as it is built: what stands first, what is left out, and the file for a calendar."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from icalendar import Calendar

from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import render_site
from tests.support.pages import soup
from tests.support.practice_folders import build

TOE = "date: 2026-{month:02}-14\nfeet: {{LF: {{after: {{toe_length: {mm}}}}}}}\n"
LAST = "willowmere/bramble/2026-10-14.yaml"


def horse_page(folder: Path, visits: dict[str, str], today: date, site: str = "willowmere") -> BeautifulSoup:
    """The page of a horse with these visits."""
    build(folder, visits)
    context = BuildContext.of(read_whole(folder, today), today, None)
    page = next(one for one in render_site(context, site).pages if one.uri.endswith("bramble.md"))
    return BeautifulSoup(page.complete(page.html), "lxml")


def text(part: Tag | None) -> str:
    """The words of a part."""
    assert part is not None
    return " ".join(part.get_text(" ").split())


def test_the_order_is_act_say_do_next_then_the_feet(demo_sites: Path) -> None:
    """Jobs and the next visit stand before the feet, and these before the pictures that prove it."""
    page = soup(demo_sites / "willowmere/horses/pippin.html")
    found = page.select("header h1, .rg-buttons, #ring, .rg-says, #jobs, #next, #changed, #feet, #then-and-now, "
                        "#toe-length, #glance, #more")  # fmt: skip

    assert [one.get("id") or (one.get("class") or [one.name])[0] for one in found] == [
        *("h1", "rg-buttons", "ring", "rg-says", "jobs", "next"),
        *("changed", "feet", "then-and-now", "toe-length", "glance", "more"),
    ]


def test_the_trimmer_is_a_touch_away(demo_sites: Path) -> None:
    """To call and to text; on the trimmer's own site nobody calls themselves."""
    links = soup(demo_sites / "willowmere/horses/moss.html").select(".rg-buttons a")

    assert [(one["href"], one.get_text()) for one in links] == [
        ("tel:07700900142", "Call Wren Ashdown"),
        ("sms:07700900142", "Text"),
    ]
    assert not soup(demo_sites / "practice/willowmere/moss.html").select(".rg-buttons")


def test_the_trimmers_words_are_signed_and_dated(demo_sites: Path) -> None:
    """As typed at the last visit."""
    said = soup(demo_sites / "willowmere/horses/pippin.html").select_one(".rg-says")

    assert text(said) == (
        "A third of the wall is new and grows straight. Keep to the vet's plan: it is working. "
        "Wren Ashdown, 28 October 2026"
    )


def test_at_most_three_changes_are_told_and_error_is_told_once(demo_sites: Path) -> None:
    """In plain words, those of findings first, then what changed last; intervals are folded."""
    changed = soup(demo_sites / "willowmere/horses/pippin.html").select_one("#changed")
    assert changed is not None
    lines = [text(one) for one in changed.select(":scope > ul > li")]

    assert lines == [
        "↓ Both fore feet: the gap at the toe is closing, by about 20 mm since 8 July.",
        "↑ Left fore: rolls over further back, by about 2.7 mm since 8 July.",
        "↑ Both fore feet: the toe is longer, by about 6 mm between 13 May and 8 July.",
    ]
    assert text(changed).count("real changes") == 1


@pytest.mark.parametrize("today", [date(2026, 10, 20), date(2026, 12, 4), date(2026, 12, 10)])
def test_a_change_of_the_last_visit_is_dated_by_the_one_before(tmp_path: Path, today: date) -> None:
    """Since then it may have come on any day."""
    visits = {
        f"willowmere/bramble/2026-{month:02}-14.yaml": TOE.format(month=month, mm=mm)
        for month, mm in zip(range(4, 11), (80, 80, 81, 80, 80, 81, 96), strict=True)
    }
    told = text(horse_page(tmp_path, visits, today).select_one("#changed"))

    assert "the toe is longer, by about 15 mm since 14 September." in told
    assert "since 14 October" not in told


@pytest.mark.parametrize(
    ("today", "heading"),
    [
        (date(2026, 11, 20), "Next visit about 25 November"),
        (date(2026, 11, 25), "Next visit about 25 November"),
        (date(2026, 11, 27), "Next visit by 2 December"),
        (date(2026, 12, 2), "Next visit by today"),
        (date(2026, 12, 3), "Was due by 2 December"),
    ],
)
def test_no_day_that_is_past_stands_in_the_future(tmp_path: Path, today: date, heading: str) -> None:
    """About the best day until it comes, by the latest until that comes, then due."""
    page = horse_page(tmp_path, {LAST: "date: 2026-10-14\nfeet: {LF: {note: x}}\nnext: {weeks: 6}\n"}, today)

    assert text(page.select_one("#next h2 span:not([hidden])")) == heading
    assert len(page.select("#next .rg-strip .now")) == 1
    assert (page.select_one("#next a[download]") is not None) == (today <= date(2026, 11, 25))


def test_one_visit_shows_no_charts(demo_sites: Path) -> None:
    """The feet and a sentence stand instead; nothing can be compared."""
    page = soup(demo_sites / "tithe-barn/horses/nutmeg.html")

    assert page.select("#toe-length, #glance, #compare, #angles, svg.course") == []
    assert len(page.select(".rg-foot-card svg.picture")) == 4


def test_a_foot_nobody_looked_at_keeps_its_place(tmp_path: Path) -> None:
    """It says so, also in the words of its drawing, and leads nowhere."""
    page = horse_page(tmp_path, {LAST: "date: 2026-10-14\nfeet: {LF: {note: x}}\n"}, date(2026, 10, 20))
    cards = page.select(".rg-foot-card")

    assert [text(one.h3) for one in cards] == ["Left fore", "Right fore", "Left hind", "Right hind"]
    assert [("Not looked at" in text(one), bool(one.a)) for one in cards] == [(False, True), *[(True, False)] * 3]
    assert "not looked at" in text(cards[1].select_one("svg title"))


def test_a_horses_own_calendar_file_holds_its_visit_alone(demo_sites: Path) -> None:
    """The event of the stable's file, so that taking in both doubles none. Source: RFC 5545, section 3.8.4.7."""
    page = soup(demo_sites / "willowmere/horses/moss.html")
    link = page.select_one("#next a[download]")
    assert link is not None
    (event,) = Calendar.from_ical((demo_sites / "willowmere/horses" / str(link["href"])).read_bytes()).walk("VEVENT")
    all_of = Calendar.from_ical((demo_sites / "willowmere/dates.ics").read_bytes()).walk("VEVENT")

    assert "Moss" in str(event["SUMMARY"])
    assert [event["UID"] == one["UID"] for one in all_of].count(True) == 1
    assert f"about {event['DTSTART'].dt.day} " in text(page.select_one("#next h2"))


def test_each_visit_has_one_line_of_what_was_found(demo_sites: Path) -> None:
    """Beside its day."""
    lines = [text(one) for one in soup(demo_sites / "willowmere/horses/pippin.html").select(".rg-visit > summary")]

    assert lines[0] == "28 October 2026 white line gap, mark on wall"
    assert all(re.fullmatch(r"\d+ \w+ 20\d\d(, looked at)? [a-z, ]+", line) for line in lines)
