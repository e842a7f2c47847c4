"""A new folder of records."""

import datetime as dt
import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from recordgen.problems import Trouble
from recordgen.records.load.practice import read_practice
from recordgen.records.write.json_schema import schema
from recordgen.records.write.practice import HOOK, start_practice
from recordgen.records.write.templates import yaml_text
from recordgen.records.yaml.tree import document
from tests.support.practice_folders import TODAY

GIT, SHELL = (shutil.which(name) or name for name in ("git", "sh"))
GIVEN = ("Hazel Hoof Care", "Wren Ashdown", "old-mill", "Old Mill")


@pytest.fixture(autouse=True)
def somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are, and nothing of this computer's settings."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(tmp_path / "none"))
    monkeypatch.setenv("GIT_CONFIG_SYSTEM", str(tmp_path / "none"))


def test_a_new_practice_reads_without_a_problem(tmp_path: Path) -> None:
    """Practice and first stable, with the names that were given."""
    start_practice(tmp_path / "records", *GIVEN, TODAY)
    practice, problems = read_practice(tmp_path / "records", TODAY)

    assert list(problems) == []
    assert (practice.file.name, practice.file.trimmer) == GIVEN[:2]
    assert (practice.stables[0].slug, practice.stables[0].stable.name) == GIVEN[2:]


def test_a_new_practice_holds_help_for_editor_git_and_trimmer(tmp_path: Path) -> None:
    """Each file is named in the answer."""
    made = start_practice(tmp_path, *GIVEN, TODAY)

    assert [file.relative_to(tmp_path).as_posix() for file in made.files] == [
        ".githooks/pre-commit",
        ".gitignore",
        ".schemas/horse.json",
        ".schemas/practice.json",
        ".schemas/shared.json",
        ".schemas/stable.json",
        ".schemas/visit.json",
        ".vscode/settings.json",
        "README.md",
        "old-mill/stable.yaml",
        "practice.yaml",
    ]
    assert json.loads((tmp_path / ".schemas/visit.json").read_text("utf-8")) == schema("visit")
    mapped = json.loads((tmp_path / ".vscode/settings.json").read_text("utf-8"))["yaml.schemas"]
    assert all((tmp_path / name).is_file() for name in mapped)
    assert "Begun on 1 December 2026." in (tmp_path / "README.md").read_text("utf-8")


def test_a_new_practice_is_kept_in_git(tmp_path: Path) -> None:
    """One first entry, and nothing left over."""
    made = start_practice(tmp_path, *GIVEN, TODAY)
    asked: dict[str, Any] = {"capture_output": True, "text": True, "check": True, "cwd": tmp_path}

    assert made.not_in_git is None
    assert subprocess.run(["git", "log", "--format=%s"], **asked).stdout == "Records of Hazel Hoof Care begun\n"
    assert subprocess.run(["git", "status", "--porcelain"], **asked).stdout == ""


def test_without_git_the_files_are_there_and_it_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The trimmer can go on and install git later."""
    monkeypatch.setenv("PATH", str(tmp_path / "nothing"))
    made = start_practice(tmp_path / "records", *GIVEN, TODAY)

    assert len(made.files) == 11
    assert made.not_in_git.message == "git is not on this computer"


def commit_by_hand(folder: Path, path: str, **more: str) -> subprocess.CompletedProcess[str]:
    """The answer of plain git to an entry of everything, with programs on `path`."""
    asked: dict[str, Any] = {
        "cwd": folder,
        "env": os.environ | {"PATH": path} | more,
        "capture_output": True,
        "text": True,
    }
    subprocess.run([GIT, "add", "--all"], check=True, **asked)
    done: subprocess.CompletedProcess[str] = subprocess.run([GIT, "commit", "-qm", "x"], **asked)
    return done


@pytest.fixture
def checker(tmp_path: Path) -> str:
    """A path with a recordgen in front that finds something wrong and tells how it was called."""
    made = tmp_path / "path" / "recordgen"
    made.parent.mkdir()
    made.write_text('#!/bin/sh\necho "asked to $*"\nexit 1\n')
    made.chmod(0o755)
    return f"{made.parent}{os.pathsep}{os.environ['PATH']}"


def test_plain_git_keeps_nothing_while_anything_is_wrong(tmp_path: Path, checker: str) -> None:
    """The hook looks the records through; it is kept in git as something to run."""
    start_practice(tmp_path / "records", *GIVEN, TODAY)
    (tmp_path / "records" / "practice.yaml").write_text("x")
    refused = commit_by_hand(tmp_path / "records", checker)
    modes = subprocess.run(["git", "ls-files", "-s", HOOK], cwd=tmp_path / "records", capture_output=True, text=True)

    assert (refused.returncode, refused.stderr) == (1, "asked to check --records .\n")
    assert modes.stdout.startswith("100755 ")


def test_an_entry_of_recordgen_is_looked_through_once(tmp_path: Path, checker: str) -> None:
    """Who has looked already says so to the hook."""
    start_practice(tmp_path / "records", *GIVEN, TODAY)
    (tmp_path / "records" / "practice.yaml").write_text("x")

    assert commit_by_hand(tmp_path / "records", checker, RECORDGEN_CHECKED="1").returncode == 0


def test_without_recordgen_on_the_path_an_entry_is_kept_and_it_is_said(tmp_path: Path) -> None:
    """Programs that call git often know no other path."""
    start_practice(tmp_path / "records", *GIVEN, TODAY)
    (tmp_path / "records" / "practice.yaml").write_text("x")
    (tmp_path / "bin").mkdir()
    (tmp_path / "bin" / "sh").symlink_to(SHELL)
    made = commit_by_hand(tmp_path / "records", str(tmp_path / "bin"))

    assert (made.returncode, made.stderr.startswith("The records were not looked through")) == (0, True)


@pytest.mark.parametrize("there", ["notes.txt", ".hidden"])
def test_a_folder_that_holds_anything_is_refused(tmp_path: Path, there: str) -> None:
    """Nothing of it is touched."""
    (tmp_path / there).write_text("mine")
    with pytest.raises(Trouble, match="holds something already"):
        start_practice(tmp_path, *GIVEN, TODAY)

    assert [path.name for path in tmp_path.iterdir()] == [there]


def test_a_file_in_the_folders_place_is_refused(tmp_path: Path) -> None:
    """A file is no folder."""
    (tmp_path / "records").write_text("mine")
    with pytest.raises(Trouble, match="holds something already"):
        start_practice(tmp_path / "records", *GIVEN, TODAY)


@pytest.mark.parametrize(
    ("given", "message"),
    [
        (("A", "B", "Old Mill", "C"), "'Old Mill' cannot be the name of a stable's folder"),
        (("A", "B", "photos", "C"), "'photos' cannot be the name of a stable's folder"),
        (("A", "B", "../x", "C"), "'../x' cannot be the name of a stable's folder"),
        ((" ", "B", "c", "C"), "' ' cannot be the name of the practice"),
        (("A", "B\nC", "c", "C"), "'B C' cannot be the name of the trimmer"),
    ],
)
def test_a_name_that_cannot_be_used_is_refused(tmp_path: Path, given: tuple[str, str, str, str], message: str) -> None:
    """Before anything is written."""
    with pytest.raises(Trouble) as trouble:
        start_practice(tmp_path, *given, dt.date(2026, 1, 1))

    assert (trouble.value.message, list(tmp_path.iterdir())) == (message, [])


@pytest.mark.parametrize(
    "text",
    ["Hazel", "Wren Ashdown", "a: b", "# a", "null", "no", "0012", 'He said "no"', "[x]", "é", "x #y", "*a", "", "-"],
)
def test_any_name_is_read_back_as_it_was_given(text: str) -> None:
    """Quotes where YAML needs them."""
    assert document("a.yaml", f"name: {yaml_text(text)}\n".encode()).values == {"name": text}
