"""All horses in one list, who has what, and everything typed searched."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import RECORDS, TODAY
from tests.support.commands import run, run_today
from tests.support.practice_folders import build

LOADED = """
import sys, recordgen.cli
try:
    recordgen.cli.main()
except SystemExit:
    print(*sys.modules, file=sys.stderr)
"""
GAP = "date: 2026-{month}-05\nfeet:\n  LF: {{wall: {{toe: {{separation: {{length: {size}}}}}}}}}\n"
FILES = {
    "hazel-bottom/stable.yaml": "name: Hazel Bottom\n",
    "hazel-bottom/bilberry/horse.yaml": "name: Bilberry\nleft: {date: 2026-11-08, why: sold}\n",
    "hazel-bottom/clover/horse.yaml": "name: Clover\nkind: donkey\n",
    "hazel-bottom/clover/2026-05-05.yaml": GAP.format(month="05", size=9),
    "hazel-bottom/dunnock/horse.yaml": "name: Dunnock\nborn: 2010\n",
    "hazel-bottom/dunnock/2026-07-05.yaml": GAP.format(month="07", size=7),
    "hazel-bottom/dunnock/2026-08-05.yaml": GAP.format(month="08", size=5),
}


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Two stables with four horses; one was sold, one has a gap since July, one had one in May."""
    return build(tmp_path_factory.mktemp("listed") / "records", FILES)


def test_all_horses_stand_in_one_list(records: Path) -> None:
    """By stable, with age, class, last visit, due day and open cautions; those that left are left out."""
    lines = run_today("list", records=records).output.splitlines()

    assert [line.split()[0] for line in lines] == ["hazel-bottom", "clover", "dunnock", "willowmere", "bramble", "3"]
    assert lines[2].split() == ["dunnock", "Dunnock", "16", "years", "adult", *lines[2].split()[5:]]
    assert "seen 2026-08-05" in lines[2]
    assert lines[-1] == "3 horses at 2 stables."


def test_those_that_left_are_listed_when_asked_for(records: Path) -> None:
    """With the day and why."""
    assert "ended 2026-11-08, sold" in run_today("list", "--ended", records=records).output


@pytest.mark.parametrize(("since", "horses"), [("June", ["dunnock"]), ("2026-05-01", ["clover", "dunnock"])])
def test_who_has_what_since_when(records: Path, since: str, horses: list[str]) -> None:
    """Told by the newest of each place."""
    words = ("--with", "gap at the white line", "--since", since)
    rows = json.loads(run_today("list", *words, "--json", records=records).output)

    assert [row["horse"] for row in rows if row["place"] == "toe"] == horses
    assert (
        rows[-1]
        == {
            "stable": "hazel-bottom",
            "horse": "dunnock",
            "name": "Dunnock",
            "day": "2026-08-05",
            "foot": "left_fore",
            "place": "toe",
            "what": "separation",
            "found": "gap at the white line, 5 mm long",
            "size_mm": None,
        }
        or rows[-1]["horse"] == "bramble"
    )


def test_the_list_is_a_table_for_other_programs(records: Path) -> None:
    """The same rows as CSV, read back by Python's own reader, and as JSON."""
    told = run_today("list", "--csv", records=records).output
    rows = list(csv.DictReader(io.StringIO(told, newline="")))
    plain = json.loads(run_today("list", "--json", records=records).output)

    assert [(row["horse"], row["class"], row["age_years"]) for row in rows] == [
        ("clover", "donkey", ""),
        ("dunnock", "adult", "16"),
        ("bramble", "adult", "11"),
    ]
    assert [{key: "" if value is None else str(value) for key, value in row.items()} for row in plain] == rows


def test_nobody_has_it(records: Path) -> None:
    """Which is said rather than nothing."""
    assert run_today("list", "--with", "abscess", records=records).output == "No horse has that.\n"


def test_a_search_tells_file_and_line(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a path that can be opened from here."""
    monkeypatch.chdir(records / "willowmere")
    found = run("find", "infection", "surface")

    assert found.stdout == "bramble/2026-10-14.yaml:9: feet, left_fore, frog, infection: surface\n"
    assert Path("bramble/2026-10-14.yaml").read_text().splitlines()[8].strip().startswith("frog: {infection: surface")
    assert run("find", "nothing of the kind").exit_code == 1


@pytest.mark.parametrize("form", ["--json", "--csv"])
def test_a_search_is_a_table_for_other_programs(records: Path, form: str) -> None:
    """With file, line, where and text."""
    told = run("find", "dunnock", "separation", form, "--records", records).stdout
    rows = json.loads(told) if form == "--json" else list(csv.DictReader(io.StringIO(told, newline="")))

    assert [(str(row["line"]), row["where"], row["text"]) for row in rows] == [
        ("3", "feet, LF, wall, toe, separation, length", size) for size in ("7", "5")
    ]


@pytest.mark.parametrize("command", [("due",), ("list",), ("summary", "willowmere/bramble"), ("visit", "none")])
def test_the_day_to_day_commands_load_no_page_builder(command: tuple[str, ...]) -> None:
    """Neither the drawing of pictures nor the building of sites, which take longer than the answer."""
    day = ("--today", str(TODAY)) if command[0] != "visit" else ()
    done = subprocess.run(
        [sys.executable, "-c", LOADED, *command, "--records", RECORDS, *day], capture_output=True, text=True
    )

    assert "click" in done.stderr.split()
    assert {"matplotlib", "mkdocs", "PIL", "icalendar", "cryptography"} & set(done.stderr.split()) == set()
