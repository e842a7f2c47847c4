"""recordgen init, visit, commit: with real git."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.commands import run, run_today, small_practice
from tests.support.publishing import git


def visit_of(kept_records: Path, horse: str, day: str = "2026-11-25") -> Path:
    """A new visit with one value in it."""
    file = kept_records / "willowmere" / horse / f"{day}.yaml"
    file.write_text(f"date: {day}\nfeet: {{LF: {{before: {{toe_length: 90}}}}}}\n")
    return file


def test_commit_makes_one_entry_that_reads_like_a_diary(kept_records: Path) -> None:
    """Stable, day and horses stand in the message."""
    visit_of(kept_records, "bramble")
    visit_of(kept_records, "fennel")
    result = run_today("commit", records=kept_records)

    assert result.exit_code == 0
    assert (
        git(kept_records, "log", "-1", "--format=%s").strip() == "Willowmere, 25 November 2026: Bramble and Fennel seen"
    )
    assert git(kept_records, "status", "--porcelain") == ""


def test_commit_refuses_while_anything_is_wrong(kept_records: Path) -> None:
    """The problem is told and nothing is kept."""
    visit_of(kept_records, "bramble").write_text("date: 2026-11-25\nfet: {}\n")
    before = git(kept_records, "rev-parse", "HEAD")
    result = run_today("commit", records=kept_records)

    assert result.exit_code == 1
    assert "Did you mean feet?" in result.output
    assert git(kept_records, "rev-parse", "HEAD") == before


def test_a_dry_run_keeps_nothing(kept_records: Path) -> None:
    """The entry is printed and the file stays as it is."""
    visit_of(kept_records, "bramble")
    result = run_today("commit", "--dry-run", records=kept_records)

    assert result.output == "Willowmere, 25 November 2026: Bramble seen\n"
    assert git(kept_records, "status", "--porcelain") != ""


def test_commit_without_a_change_says_so(kept_records: Path) -> None:
    """Nothing to keep is no error."""
    assert run_today("commit", records=kept_records).output == "Nothing has changed since the last entry.\n"


def test_commit_outside_git_tells_the_way_out(tmp_path: Path) -> None:
    """A sentence, no traceback."""
    result = run_today("commit", records=small_practice(tmp_path))

    assert result.exit_code == 1
    assert "git init" in result.output


def test_visit_begins_a_file_with_the_last_values(kept_records: Path) -> None:
    """The last values stand as comments, and the file reads without an error."""
    result = run("visit", "willowmere", "--horse", "bramble", "--date", "2026-11-25", "--records", kept_records)
    text = (kept_records / "willowmere/bramble/2026-11-25.yaml").read_text()

    assert result.exit_code == 0
    assert "# 86 before, 75 after" in text
    assert run_today("check", records=kept_records).exit_code == 0


def test_visit_begins_a_short_file_of_one_line_a_foot(kept_records: Path) -> None:
    """Above it stands what this foot had before, and the file reads without an error."""
    run("visit", "willowmere", "--short", "--horse", "bramble", "--date", "2026-11-25", "--records", kept_records)
    text = (kept_records / "willowmere/bramble/2026-11-25.yaml").read_text()

    assert "  # 86 h36/36 a49 c331 before, 75 h31/32 a51 after on 21 October 2026\n" in text
    assert "\n  left_fore: {before: , after: , landing: , frog: {infection: , central_groove_depth: }, " in text
    assert run_today("check", records=kept_records).exit_code == 0


def test_visit_never_overwrites(kept_records: Path) -> None:
    """A file that is there stays as it is."""
    file = visit_of(kept_records, "bramble")
    before = file.read_text()
    result = run("visit", "willowmere", "--date", "2026-11-25", "--records", kept_records)

    assert file.read_text() == before
    assert "was there already" in result.output
    assert (kept_records / "willowmere/fennel/2026-11-25.yaml").is_file()


@pytest.mark.usefixtures("committer")
def test_init_makes_a_practice_that_checks_visits_and_commits(tmp_path: Path) -> None:
    """From nothing to a first site, by the commands alone."""
    folder = tmp_path / "my-practice"
    made = run("init", folder, "--practice", "Own Practice", "--trimmer", "Somebody", "--stable", "Old Mill")
    (folder / "old-mill" / "daisy").mkdir()
    (folder / "old-mill" / "daisy" / "horse.yaml").write_text("name: Daisy\n")
    begun = run("visit", "old-mill", "--date", "2026-11-25", "--records", folder)
    file = folder / "old-mill" / "daisy" / "2026-11-25.yaml"
    file.write_text(file.read_text().replace("      toe_length:", "      toe_length: 80", 1))
    kept = run_today("commit", records=folder)
    built = run_today("build", "--out", tmp_path / "sites", records=folder)

    assert [result.exit_code for result in (made, begun, kept, built)] == [0, 0, 0, 0], kept.output + built.output
    assert git(folder, "log", "--format=%s").splitlines()[-1] == "Records of Own Practice begun"
    assert (tmp_path / "sites/old-mill/horses/daisy.html").is_file()


def test_a_name_that_init_left_to_be_filled_in_is_told_and_stops_the_build(tmp_path: Path) -> None:
    """At once, and with its line by every later command, until the right name stands there."""
    folder = tmp_path / "own"
    made = run("init", folder, "--practice", "Own Practice", "--stable", "Old Mill")
    built = run_today("build", "--out", tmp_path / "sites", records=folder)

    assert (made.exit_code, built.exit_code) == (0, 1)
    assert f"Fill in 'Your name' in {folder / 'practice.yaml'} first" in made.output
    assert "own/practice.yaml:4:1: error: trimmer: 'Your name' was left to be filled in" in built.output
    assert not (tmp_path / "sites").exists()


def test_init_asks_on_a_terminal_for_what_was_not_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The practice, who trims, and the first stable."""
    answers = {"Name of your practice": "Own Practice", "Your name, as owners know you": "Ada", "First stable": "Mere"}
    monkeypatch.setattr("recordgen.cli.init.can_ask", lambda: True)
    monkeypatch.setattr("recordgen.cli.init.ask", answers.__getitem__)
    run("init", tmp_path / "own")

    assert "name: Own Practice\ntrimmer: Ada\n" in (tmp_path / "own/practice.yaml").read_text()
    assert (tmp_path / "own/mere/stable.yaml").is_file()


def test_init_refuses_a_folder_that_holds_anything(tmp_path: Path) -> None:
    """Nothing of somebody's is touched."""
    (tmp_path / "note.txt").write_text("mine")
    result = run("init", tmp_path)

    assert result.exit_code == 1
    assert [path.name for path in tmp_path.iterdir()] == ["note.txt"]


def test_a_visit_that_was_only_begun_does_not_count(kept_records: Path) -> None:
    """It is asked about, moves no due date, and is not kept in git before something is filled in."""
    due = run_today("due", records=kept_records).output
    run("visit", "willowmere", "--date", "2026-11-25", "--records", kept_records)
    told = run_today("check", records=kept_records).output

    assert told.count("nothing is filled in yet, so this is not counted as a visit") == 2
    assert run_today("due", records=kept_records).output == due
    assert run_today("commit", records=kept_records).output.endswith("Nothing has changed since the last entry.\n")
