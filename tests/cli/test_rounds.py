"""recordgen rounds."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from recordgen.site.calendar import PRODUCT
from tests.conftest import RECORDS
from tests.support.commands import run_today, small_practice

PRACTICE = "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\n"


def records(folder: Path, *horses: str, practice: str = "leeway_days: 0", near: str = "") -> Path:
    """A practice of horses named stable/horse=day, to be visited on that very day; without a day, never seen."""
    folder.mkdir()
    (folder / "practice.yaml").write_text(f"{PRACTICE}{practice}\n")
    for text in horses:
        path, _, day = text.partition("=")
        horse = folder / path
        horse.mkdir(parents=True)
        (horse / "horse.yaml").write_text(f"name: {horse.name.title()}\nborn: 2015\n")
        (horse.parent / "stable.yaml").write_text(f"name: {horse.parent.name.title()}\n{near}")
        if day:
            (horse / "2026-10-28.yaml").write_text(f"date: 2026-10-28\nnote: x\nnext: {{date: {day}}}\n")
    return folder


def told(*words: str | Path, of: Path = RECORDS) -> list[str]:
    """The lines that the command prints; it must be content."""
    result = run_today("rounds", *words, records=of)
    assert result.exit_code == 0, result.output
    return result.output.splitlines()


def plain(*words: str | Path, of: Path = RECORDS) -> dict[str, Any]:
    """Output for other programs."""
    found: dict[str, Any] = json.loads("\n".join(told("--json", *words, of=of)))
    return found


def test_rounds_reads_in_a_terminal(tmp_path: Path) -> None:
    """A line a day in columns, then who cannot be met, who was never seen, and whether fewer days would do."""
    horses = "mill/ash=2026-12-08", "mill/elm=2026-12-08", "barn/oak=2026-12-10", "barn/yew=2026-11-11", "barn/fir"

    assert told(of=records(tmp_path / "r", *horses)) == [
        "Wednesday, 25 November  Barn  1 of 8  Yew",
        "Tuesday, 8 December     Mill  2 of 8  Ash, Elm",
        "Thursday, 10 December   Barn  1 of 8  Oak",
        "Cannot be visited inside their windows:",
        "  Yew (Barn): the window ended on 11 November 2026; planned for Wednesday, 25 November.",
        "No visit yet, so nothing is planned: Fir (Barn).",
        "3 days; no plan that does the same for each horse has fewer.",
    ]


def test_rounds_of_the_demo_visit_every_horse_that_is_due() -> None:
    """Each once, on a weekday, and who is due is who is planned."""
    found = plain()
    planned = [(horse["stable"], horse["horse"]) for one in found["rounds"] for horse in one["horses"]]
    due = json.loads(run_today("due", "--json").output)

    assert sorted(planned) == sorted((horse["stable"], horse["horse"]) for horse in due if horse["due"])
    assert found["gap"] == len(found["rounds"]) - found["fewest"]
    assert found["from"] == "2026-11-25"


def test_stables_near_each_other_are_one_round(tmp_path: Path) -> None:
    """Both names stand in the line."""
    horses = "mill/ash=2026-12-08", "barn/oak=2026-12-08"

    assert told(of=records(tmp_path / "r", *horses, near="near: [mill]\n")) == [
        "Tuesday, 8 December  Barn, Mill  2 of 8  Oak, Ash",
        "1 day; no plan that meets every window has fewer.",
    ]


def test_a_plan_that_may_not_be_the_least_says_so(tmp_path: Path) -> None:
    """The mill would do with one day, on which alone the barn can be visited."""
    horses = "mill/ash=2026-12-08", "mill/elm=2026-12-10", "barn/oak=2026-12-09"
    of = records(tmp_path / "r", *horses, practice="leeway_days: 1")

    assert told("--skip", "2026-12-08", "--skip", "2026-12-10", of=of) == [
        "Monday, 7 December     Mill  1 of 8  Ash",
        "Wednesday, 9 December  Barn  1 of 8  Oak",
        "Friday, 11 December    Mill  1 of 8  Elm",
        "3 days, 1 day more than if each place had the calendar to itself; whether fewer would do is not known.",
    ]


def test_why_a_window_is_not_met_is_told(tmp_path: Path) -> None:
    """No working day in it, or no room on those there are."""
    horses = "mill/ash=2026-12-08", "barn/oak=2026-12-08", "barn/yew=2026-12-09"
    lines = told(of=records(tmp_path / "r", *horses, practice="leeway_days: 0\nworking_days: [tue]"))

    assert lines[3:-1] == [
        "  Yew (Barn): no working day in the window, 9 December 2026; planned for Tuesday, 8 December.",
        "  Ash (Mill): no room on the days of the window, 8 December 2026; planned for Tuesday, 1 December.",
    ]


def test_a_window_of_several_days_is_told_from_its_first_to_its_last(tmp_path: Path) -> None:
    """All of it is a holiday."""
    of = records(tmp_path / "r", "mill/ash=2026-12-09", practice="leeway_days: 1\nholidays: [2026-12-06 to 2026-12-12]")

    assert "no working day in the window, 8 December 2026 to 10 December 2026;" in told(of=of)[2]


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ([], "2026-12-08"),
        (["--skip", "2026-12-08"], "2026-12-07"),
        (["--skip", "2026-12-07 to 2026-12-08"], "2026-12-09"),
        (["--skip", "2026-12-08", "--skip", "2026-12-07", "--skip", "2026-12-09"], "2026-12-10"),
        (["--from", "2026-12-08"], "2026-12-08"),
        (["--from", "2026-12-13"], "2026-12-14"),
    ],
)
def test_days_can_be_skipped_and_the_start_put_off(tmp_path: Path, words: list[str], day: str) -> None:
    """One day, several, or days from one to another; the horse that is due on the first goes on the nearest left."""
    found = plain(*words, of=records(tmp_path / "r", "mill/ash=2026-12-08"))

    assert [one["day"] for one in found["rounds"]] == [day]
    assert [one["placed"] for one in found["unmet"]] == ([] if day == "2026-12-08" else [day])


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (["--skip", "24.12.2026"], "'24.12.2026' is not a day; write it 2026-12-24"),
        (["--skip", "2026-12-24 to Easter"], "'Easter' is not a day; write it like 2026-11-25"),
        (["--skip", "2026-12-24 to 2026-12-20"], "ends before it begins; write the earlier day first"),
        (["--from", "soon"], "'soon' is not a day; write it like 2026-11-25"),
    ],
)
def test_a_day_that_is_none_is_wrong_use(words: list[str], expected: str) -> None:
    """Told with the form that is wanted."""
    result = run_today("rounds", *words)

    assert (result.exit_code, expected in result.output) == (2, True), result.output


def test_one_stable_can_be_planned_alone() -> None:
    """As if it had the calendar to itself; stables near it are not of this plan and are no mistake."""
    found = plain("--stable", "tithe-barn")

    assert {stable for one in found["rounds"] for stable in one["stables"]} == {"tithe-barn"}
    assert found["gap"] == 0


def test_without_a_next_visit_a_sentence_is_told(tmp_path: Path) -> None:
    """No table, no count."""
    assert told(of=records(tmp_path / "r", "mill/ash")) == [
        "No visit yet, so nothing is planned: Ash (Mill).",
        "No next visit to plan.",
    ]


def test_a_stable_that_is_not_there_is_told() -> None:
    """In a sentence, with exit code 1."""
    result = run_today("rounds", "--stable", "nowhere")

    assert (result.exit_code, "there is no stable 'nowhere'" in result.output) == (1, True)


def test_calendars_are_written_for_the_trimmer_and_for_each_stable(tmp_path: Path) -> None:
    """A file each, which says nothing of another stable; the folder is made."""
    lines = told("--calendar", tmp_path / "a" / "b", of=records(tmp_path / "r", "mill/ash=2026-12-08", "barn/oak"))
    mill, rounds = ((tmp_path / "a" / "b" / name).read_bytes() for name in ("mill.ics", "rounds.ics"))

    assert lines[-2:] == [str(tmp_path / "a" / "b" / name) for name in ("rounds.ics", "mill.ics")]
    assert mill.count(b"DTSTART;VALUE=DATE:20261208") == rounds.count(b"DTSTART;VALUE=DATE:20261208") == 1
    assert sorted(path.name for path in (tmp_path / "a" / "b").iterdir()) == ["mill.ics", "rounds.ics"]


def test_a_calendar_of_what_is_planned_no_more_is_taken_away(tmp_path: Path) -> None:
    """A file from before would name a day that nobody comes on; strangers stay."""
    folder = tmp_path / "calendar"
    folder.mkdir()
    for name in ("barn.ics", "other.ics"):
        (folder / name).write_text(f"BEGIN:VCALENDAR\r\nPRODID:{PRODUCT}\r\n")
    lines = told("--calendar", folder, of=records(tmp_path / "r", "mill/ash=2026-12-08", "barn/oak"))

    assert f"{folder / 'barn.ics'} is taken away: nothing is planned there now." in lines
    assert sorted(path.name for path in folder.iterdir()) == ["mill.ics", "other.ics", "rounds.ics"]


def test_somebody_elses_calendar_is_neither_written_over_nor_taken_away(tmp_path: Path) -> None:
    """Its name is told, and no calendar is written."""
    for name in ("mill.ics", "barn.ics"):
        folder = tmp_path / name
        folder.mkdir()
        (folder / name).write_text("BEGIN:VCALENDAR\r\nPRODID:-//Somebody//EN\r\n")
        of = records(tmp_path / f"r-{name}", "mill/ash=2026-12-08", "barn/oak")
        result = run_today("rounds", "--calendar", folder, records=of)

        assert (result.exit_code, f"{folder / name} is there already" in result.output) == (1, True)
        assert [path.name for path in folder.iterdir()] == [name]


def test_one_stable_s_calendar_leaves_the_trimmer_s_own_alone(tmp_path: Path) -> None:
    """A plan of one stable is not all the rounds."""
    told("--stable", "willowmere", "--calendar", tmp_path)

    assert [path.name for path in tmp_path.iterdir()] == ["willowmere.ics"]


def test_json_stays_json_beside_a_calendar(tmp_path: Path) -> None:
    """Written files are told elsewhere."""
    result = run_today("rounds", "--json", "--calendar", tmp_path / "c", records=small_practice(tmp_path))

    assert json.loads(result.stdout)["horses_a_day"] == 8
    assert str(tmp_path / "c" / "willowmere.ics") in result.stderr


def test_a_stable_named_rounds_does_not_get_the_trimmer_s_file(tmp_path: Path) -> None:
    """Its owners would read all rounds, or the trimmer theirs alone; nothing is written."""
    of = records(tmp_path / "r", "rounds/ash=2026-12-08")
    result = run_today("rounds", "--calendar", tmp_path / "c", records=of)

    assert (result.exit_code, (tmp_path / "c").exists()) == (1, False)
    assert "the name rounds is taken by the calendar of the rounds. Give the folder another name." in result.output


def test_no_calendar_is_written_into_the_records(tmp_path: Path) -> None:
    """Where git might keep it."""
    of = small_practice(tmp_path)
    result = run_today("rounds", "--calendar", of / "calendar", records=of)

    assert result.exit_code == 1
    assert (
        "lies inside the records, and git does not ignore it. Name a place elsewhere, such as --calendar"
        in result.output
    )
    assert not (of / "calendar").exists()


def test_a_calendar_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    """In a sentence, not a traceback."""
    (tmp_path / "file").write_text("")
    result = run_today("rounds", "--calendar", tmp_path / "file" / "folder")

    assert (result.exit_code, "cannot be written: " in result.output) == (1, True), result.output
