"""Where a shared file may lie."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from recordgen.private.sharing.output_folder import fit_place
from recordgen.problems import Trouble


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """Records inside a git tree that ignores its folder sites."""
    made = tmp_path / "tree" / "records"
    made.mkdir(parents=True)
    subprocess.run(["git", "init", "--quiet", tmp_path / "tree"], check=True)
    (tmp_path / "tree" / ".gitignore").write_text("/sites/\n")
    return made


def test_a_folder_elsewhere_will_do(records: Path, tmp_path: Path) -> None:
    """Named, or the one somebody works in."""
    assert fit_place(tmp_path / "out", records) == tmp_path / "out"


def test_without_a_name_it_is_the_folder_one_works_in(
    records: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The usual place."""
    monkeypatch.chdir(tmp_path)
    assert fit_place(None, records) == tmp_path


@pytest.mark.parametrize("here", ["tree", "tree/records", "tree/sites"])
def test_inside_the_records_it_must_be_named(
    records: Path, tmp_path: Path, here: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Even where git ignores it."""
    (tmp_path / "tree" / "sites").mkdir()
    monkeypatch.chdir(tmp_path / here)
    with pytest.raises(Trouble, match="this folder lies inside the records") as told:
        fit_place(None, records)

    assert "--out" in told.value.way_out


def test_a_named_folder_that_git_ignores_will_do(records: Path, tmp_path: Path) -> None:
    """The folder need not be there yet."""
    assert fit_place(tmp_path / "tree" / "sites", records) == tmp_path / "tree" / "sites"


@pytest.mark.parametrize("named", ["tree", "tree/records/willowmere", "link"])
def test_a_named_folder_that_git_would_keep_is_refused(records: Path, tmp_path: Path, named: str) -> None:
    """Also through a link."""
    (tmp_path / "link").symlink_to(records)
    with pytest.raises(Trouble, match="git does not ignore it"):
        fit_place(tmp_path / named, records)


def test_records_without_git_take_no_shared_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """They may get into git later."""
    with pytest.raises(Trouble, match="git does not ignore it"):
        fit_place(tmp_path / "sites", tmp_path)
