"""recordgen check."""

from __future__ import annotations

import json
from pathlib import Path

from tests.conftest import RECORDS, TODAY
from tests.support.commands import run, run_today, small_practice


def test_the_demo_practice_is_well() -> None:
    """All is well, with counts and without a warning."""
    result = run_today("check")

    assert result.exit_code == 0
    assert result.output == "All is well: 3 stables, 15 horses, 211 visits; no problems.\n"


def test_the_folder_can_be_named_without_an_option() -> None:
    """`recordgen check records` is the same as with --records."""
    assert run("check", RECORDS, "--today", TODAY.isoformat()).output == run_today("check").output


def test_every_problem_of_every_file_is_listed_with_its_line(tmp_path: Path) -> None:
    """Problems of two files come in one run, sorted by place and counted."""
    records = small_practice(tmp_path)
    (records / "willowmere/bramble/2026-10-21.yaml").write_text("date: 2026-10-21\nfet: {}\nnext: {weeks: x}\n")
    (records / "willowmere/fennel/horse.yaml").write_text("name: Fennel\nkind: hors\n")
    result = run_today("check", records=records)

    lines = result.output.splitlines()
    assert result.exit_code == 1
    assert [line.split(" error")[0] for line in lines[:3]] == [
        "records/willowmere/bramble/2026-10-21.yaml:2:1:",
        "records/willowmere/bramble/2026-10-21.yaml:3:8:",
        "records/willowmere/fennel/horse.yaml:2:1:",
    ]
    assert lines[-1] == "3 errors in 2 files."


def test_json_lists_path_line_column_level_message_and_way_out(tmp_path: Path) -> None:
    """Each problem is a mapping for other programs."""
    records = small_practice(tmp_path)
    (records / "willowmere/stable.yaml").write_text("nam: Willowmere\n")
    result = run_today("check", "--json", records=records)

    problems = json.loads(result.output)
    assert result.exit_code == 1
    assert {tuple(problem) for problem in problems} == {
        ("path", "line", "column", "level", "code", "message", "way_out")
    }
    assert problems[0]["way_out"] == "Did you mean name?"


def test_warnings_stop_nothing(tmp_path: Path) -> None:
    """An unlikely value and the growth that it would mean are listed, and the exit code is 0."""
    records = small_practice(tmp_path)
    file = records / "willowmere/bramble/2026-10-21.yaml"
    file.write_text("date: 2026-10-21\nfeet:\n  LF: {before: {toe_length: 130}}\n")
    result = run_today("check", records=records)

    assert result.exit_code == 0
    assert "2026-10-21.yaml:3:" in result.output
    assert "6 warnings in 5 files" in result.output
    assert "2026-10-21-left-hind-sole-after.jpg:1:1: warning: it shows the left hind, of which" in result.output
    assert "far more than its other cycles" in result.output


def test_a_code_is_explained_with_an_example_and_its_mend() -> None:
    """Told are its meaning, a wrong case and a right one."""
    result = run("check", "--explain", "next-one-of-two")

    assert result.exit_code == 0
    assert result.output.splitlines() == [
        "The next visit is set in weeks or by its date, not both.",
        "Wrong, in a file of the kind visit:",
        "  next: {weeks: 6, date: 2026-11-25}",
        "Right, in a file of the kind visit:",
        "  next: {weeks: 6}",
    ]


def test_a_code_that_no_line_shows_is_explained_in_words() -> None:
    """Such as a photograph."""
    assert "Such as: A photograph named IMG_0001.jpg." in run("check", "--explain", "photo-name").output


def test_a_code_misspelt_names_the_nearest() -> None:
    """Exit code 2, as for any command that was used wrongly."""
    result = run("check", "--explain", "next-one-of-too")

    assert result.exit_code == 2
    assert "There is no code 'next-one-of-too'. Did you mean next-one-of-two?" in result.output


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    """No traceback: a sentence with the way out."""
    result = run("check", "--records", tmp_path / "nowhere")

    assert result.exit_code == 1
    assert "there is no such folder" in result.output
