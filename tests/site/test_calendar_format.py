"""Calendar files to the letter of the standard, whatever the names, and unchanged in a built site."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from recordgen.hoof.rounds.rounds import Plan, Round
from recordgen.hoof.summary import StableSummary
from recordgen.site.calendar import PlannedDays, due_calendar, rounds_calendar, stable_calendar
from recordgen.site.engine import write_site
from recordgen.site.model import Page, Site
from tests.conftest import RECORDS, TODAY
from tests.support.calendars import (
    HOSTILE,
    LAST,
    LONG,
    NAMES,
    PLAN,
    TRICKY,
    A,
    components,
    content_lines,
    demo,
    events,
    said,
)


def named(stable: StableSummary, name: str) -> StableSummary:
    """The same stable, with one name for itself and its horses."""
    horses = [replace(one, horse=one.horse.model_copy(update={"name": name})) for one in stable.horses]
    return replace(stable, stable=stable.stable.model_copy(update={"name": name}), horses=tuple(horses))


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    """A file of each kind, full of names that are hard to write."""
    ways, stable = demo().ways, named(demo().stables[0], TRICKY + LONG + HOSTILE)
    return {
        "rounds": rounds_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST)),
        "stable": stable_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST), "mill"),
        "due": due_calendar(stable, ways, TODAY),
    }


@pytest.fixture(params=["rounds", "stable", "due"])
def file(request: pytest.FixtureRequest, files: dict[str, bytes]) -> bytes:
    """Each of the files in turn."""
    return files[request.param]


def test_lines_end_in_crlf_and_hold_no_other_control(file: bytes) -> None:
    """Each line ends in CR and LF, and no control but the tab stands inside. Source: RFC 5545, section 3.1."""
    assert file.endswith(b"\r\n")
    assert re.search(rb"[\x00-\x08\x0a-\x1f\x7f]", file.replace(b"\r\n", b"")) is None


def test_lines_are_folded(file: bytes) -> None:
    """No line is longer than 75 octets, and long ones were there to fold. Source: RFC 5545, section 3.1."""
    assert max(len(line) for line in file.split(b"\r\n")) <= 75
    assert max(len(line.encode()) for line in content_lines(file)) > 75


def test_every_folded_line_is_utf_8_by_itself(file: bytes) -> None:
    """Folding parts no character, for readers that decode before they unfold. Source: RFC 5545, 3.1 and 3.1.4."""
    assert "".join(line.decode("utf-8") for line in file.split(b"\r\n"))
    assert not file.isascii()


def test_the_calendar_has_what_it_must(file: bytes) -> None:
    """Product, version 2.0, an event at least, no method. Source: RFC 5545, 3.4, 3.6, 3.7.2 to 3.7.4."""
    calendar, *inside = components(file)
    counts = Counter(name for name, _ in calendar)
    lines = content_lines(file)

    assert (lines[0], lines[-1]) == ("BEGIN:VCALENDAR", "END:VCALENDAR")
    assert counts == {"PRODID": 1, "VERSION": 1, "NAME": 1, "X-WR-CALNAME": 1}
    assert dict(calendar)["VERSION"] == "2.0"
    assert len(inside) == lines.count("BEGIN:VEVENT") == lines.count("END:VEVENT") > 0


def test_an_event_has_each_property_once(file: bytes) -> None:
    """All that is required and all that we write, once each. Source: RFC 5545, section 3.6.1."""
    once = {"UID", "DTSTAMP", "SEQUENCE", "DTSTART;VALUE=DATE", "DTEND;VALUE=DATE", "SUMMARY", "DESCRIPTION"}
    once |= {"STATUS", "TRANSP"}
    for event in components(file)[1:]:
        assert Counter(name for name, _ in event) == dict.fromkeys(once, 1)


def test_values_have_their_types(file: bytes) -> None:
    """Dates, a time in UTC, a whole number, and the words that are listed.

    Source: RFC 5545, sections 3.3.4, 3.3.5, 3.3.8, 3.8.1.11, 3.8.2.7 and 3.8.7.2.
    """
    for event in map(dict, components(file)[1:]):
        assert re.fullmatch("[0-9]{8}", event["DTSTART;VALUE=DATE"])
        assert event["DTSTAMP"] == "20261125T000000Z"
        assert re.fullmatch("[0-9]+", event["SEQUENCE"])
        assert (event["STATUS"], event["TRANSP"]) == ("TENTATIVE", "TRANSPARENT")


def test_texts_are_escaped(file: bytes) -> None:
    """No comma, semicolon or backslash stands alone in a text. Source: RFC 5545, section 3.3.11."""
    text = r'(?:[\t !"#-+\--:<-\[\]-~]|[^\x00-\x7f]|\\[\\;,nN])*'
    texts = [one for part in components(file) for one in part if one[0] in ("NAME", "SUMMARY", "DESCRIPTION", "PRODID")]

    assert [value for _, value in texts if not re.fullmatch(text, value)] == []


def test_an_event_is_one_whole_day(file: bytes) -> None:
    """The end is not part of an event, so a day ends on the next. Source: RFC 5545, sections 3.6.1 and 3.8.2.2."""
    assert {event.decoded("dtend") - event.decoded("dtstart") for event in events(file)} == {timedelta(days=1)}


def test_uids_are_unique_and_unreadable(file: bytes) -> None:
    """Each is a hash at a host that cannot be. Source: RFC 5545, 3.8.4.7; RFC 7986, 5.3; RFC 2606, section 2."""
    uids = [str(event["uid"]) for event in events(file)]

    assert len(uids) == len(set(uids))
    assert [uid for uid in uids if not re.fullmatch(r"[0-9a-f]{32}@recordgen\.invalid", uid)] == []


def test_names_come_back_as_typed(files: dict[str, bytes]) -> None:
    """Marks that mean something to the format, line ends and long foreign names are read back as they were."""
    assert said(files["stable"], "SUMMARY") == [f"{TRICKY}: hoof visit proposed", f"{LONG}: hoof visit proposed"]
    assert str(events(files["stable"])[0]["summary"]) == f"{TRICKY}: hoof visit proposed"


@given(st.text('abnN ,;:"\\\n☃ö', min_size=1, max_size=200).filter(lambda name: "\\N" not in name))
@settings(max_examples=60, deadline=None)
def test_whatever_is_typed_comes_back(name: str) -> None:
    """Folding and escaping go together at every place of a line.

    The library takes a typed \\N for a line's end.
    """
    plan = Plan((Round(TODAY, ("mill",), (replace(A, name=f"a{name}z"),)),), (), 1)
    file = stable_calendar(PlannedDays(plan, NAMES, demo().ways, TODAY, LAST), "mill")

    assert said(file, "SUMMARY") == [f"a{name}z: hoof visit proposed"]
    assert max(len(line) for line in file.split(b"\r\n")) <= 75


def test_no_name_begins_a_property_of_its_own(files: dict[str, bytes]) -> None:
    """Signs that end a line for some readers are written as one inside the text; other controls are gone."""
    assert "Otter\nBEGIN:VALARM\nATTACH:a\nATTACH:b\nATTACH:c:" in said(files["rounds"], "DESCRIPTION")[0]
    assert all(len(line.splitlines()) == 1 for line in content_lines(files["rounds"]))


def test_files_lie_in_the_built_site_as_they_are(tmp_path: Path, files: dict[str, bytes]) -> None:
    """The engine changes no byte of a file, wherever in the site it lies."""
    page = Page("index.md", "Mill", "<h1>Mill</h1>")
    write_site(Site("mill", "Mill", (page,), {"dates.ics": files["due"], "more/x.ics": b"\xff"}), tmp_path, RECORDS)

    assert (tmp_path / "dates.ics").read_bytes() == files["due"]
    assert (tmp_path / "more" / "x.ics").read_bytes() == b"\xff"
