"""The state of a repository, with a real git."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from recordgen.git.repository import (
    contents_of,
    files_about_to_add,
    files_of,
    hashes_of,
    is_ignored,
    list_contents,
    staged_files,
)

EMPTY = "e69de29bb2d1d6434b8b29ae775ad8c2e48c5391"


def git(folder: Path, *words: str) -> str:
    """The answer of git."""
    return subprocess.run(["git", "-C", str(folder), *words], capture_output=True, text=True, check=True).stdout


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder below the top of a repository, with one file kept, one ignored and one new."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    made = tmp_path / "top" / "all records"
    made.mkdir(parents=True)
    git(tmp_path, "init", "--quiet", "top")
    (made / "kept blåbær.txt").write_text("kept\n")
    (made.parent / ".gitignore").write_text("*.key\n")
    git(made.parent, "add", "--all")
    git(made, "commit", "--quiet", "--message=begun")
    (made / "a.key").write_text("x")
    (made / "new.txt").write_text("")
    return made


def test_files_are_told_apart_by_what_git_does_with_them(folder: Path) -> None:
    """Named from the folder, whatever signs the names hold; what is ignored is not told unless git keeps it."""
    git(folder, "add", "--force", "a.key")
    found = files_of(folder)

    assert (found.tracked, found.ignored) == ({"kept blåbær.txt", "a.key"}, {"a.key"})
    assert found.new == {"new.txt"}
    assert is_ignored(folder / "sites.key", folder)
    assert not is_ignored(folder / "sites", folder)


def test_what_is_about_to_be_kept_is_told_with_its_content(folder: Path) -> None:
    """As it was staged, not as it lies on the disk. Source of the name of an empty file: git hash-object /dev/null."""
    git(folder, "add", "new.txt")
    (folder / "new.txt").write_text("other\n")

    assert staged_files(folder) == {"new.txt": EMPTY}
    assert dict(contents_of(folder, [EMPTY, "0" * 40])) == {EMPTY: b"", "0" * 40: None}
    assert (
        hashes_of(folder, ["new.txt", "kept blåbær.txt"])["kept blåbær.txt"] == list_contents(folder)["kept blåbær.txt"]
    )


def test_only_the_index_of_its_own_hook_is_looked_at(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A hook of another repository tells of other files."""
    git(folder, "add", "new.txt")
    assert files_about_to_add(folder) == set()

    monkeypatch.setenv("GIT_INDEX_FILE", str(folder.parent / ".git" / "index"))
    assert files_about_to_add(folder) == {"new.txt"}
    git(tmp_path, "init", "--quiet", "other")
    monkeypatch.setenv("GIT_INDEX_FILE", str(tmp_path / "other" / ".git" / "index"))
    assert files_about_to_add(folder) == set()
