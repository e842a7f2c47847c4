"""Changes and new entries, with a real git."""

import subprocess
from pathlib import Path

import pytest

from recordgen.git.changes import kinds_of_change
from recordgen.git.keep import commit
from recordgen.git.troubles import GitTrouble


@pytest.fixture(autouse=True)
def somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are, and nothing of this computer's settings."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    for name in ("GIT_CONFIG_GLOBAL", "GIT_CONFIG_SYSTEM"):
        monkeypatch.setenv(name, str(tmp_path / "none"))


def changes(records: Path) -> list[Path]:
    """The files that changed, in order."""
    return list(kinds_of_change(records))


def git(folder: Path, *words: str) -> str:
    """The answer of git."""
    return subprocess.run(["git", "-C", str(folder), *words], capture_output=True, text=True, check=True).stdout


def write(folder: Path, name: str, text: str = "x\n") -> Path:
    """A file with its folders."""
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)
    return path


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """Records in a folder below the top of a repository, with three files kept."""
    top = tmp_path / "top"
    folder = top / "all records"
    for name in ("mill/a/horse.yaml", "mill/a/2026-10-14.yaml", "mill/stable.yaml"):
        write(folder, name, f"{name}\n" * 5)
    write(top, "outside.txt")
    git(top.parent, "init", "--quiet", str(top))
    git(top, "add", "--all")
    git(top, "commit", "--quiet", "--message=begun")
    return folder


def test_nothing_changed_is_nothing(records: Path) -> None:
    """A clean folder."""
    assert changes(records) == []


def test_each_kind_of_change_is_told(records: Path) -> None:
    """Added, amended, taken out; with spaces and letters of all languages; only under the records."""
    new = write(records, "mill/bläß x/2026-10-16.yaml")
    amended = write(records, "mill/stable.yaml", "other\n")
    gone = records / "mill/a/2026-10-14.yaml"
    gone.unlink()
    write(records.parent, "outside.txt", "other\n")

    assert kinds_of_change(records) == {gone: "taken out", new: "added", amended: "amended"}
    assert changes(records) == [gone, new, amended]


def test_a_renamed_file_is_taken_out_and_added(records: Path) -> None:
    """Both names are told, so that both can be kept."""
    git(records, "mv", "mill/a/horse.yaml", "mill/a/other.yaml")

    assert kinds_of_change(records) == {
        records / "mill/a/horse.yaml": "taken out",
        records / "mill/a/other.yaml": "added",
    }


def test_a_stables_changes_become_one_entry_and_the_rest_stays(records: Path) -> None:
    """New, amended and deleted files; what else was staged stays staged."""
    write(records, "mill/b/horse.yaml")
    write(records, "mill/stable.yaml", "other\n")
    (records / "mill/a/2026-10-14.yaml").unlink()
    write(records, "heath/stable.yaml")
    git(records, "add", "heath/stable.yaml")
    mine = [path for path in changes(records) if "mill" in path.parts]
    commit(records, mine, "Mill, 14 October 2026: Bramble seen")

    assert git(records, "log", "-1", "--format=%s").strip() == "Mill, 14 October 2026: Bramble seen"
    assert git(records, "show", "--name-status", "--relative", "--format=").splitlines() == [
        "D\tmill/a/2026-10-14.yaml",
        "A\tmill/b/horse.yaml",
        "M\tmill/stable.yaml",
    ]
    assert git(records, "diff", "--cached", "--name-only", "--relative").split() == ["heath/stable.yaml"]


def test_a_rename_becomes_one_entry(records: Path) -> None:
    """The old name goes, the new one comes."""
    git(records, "mv", "mill/a/horse.yaml", "mill/a/other.yaml")
    commit(records, changes(records), "renamed")

    assert changes(records) == []


def test_a_name_with_signs_is_meant_as_it_is(records: Path) -> None:
    """A star is no pattern here."""
    star = write(records, "mill/*.txt")
    write(records, "mill/other.txt")
    commit(records, [star], "star")

    assert changes(records) == [records / "mill/other.txt"]


def trouble(records: Path, says: str = "x") -> str:
    """The message of what stops an entry of all changes."""
    with pytest.raises(GitTrouble) as stopped:
        commit(records, changes(records), says)
    assert stopped.value.way_out
    return stopped.value.message


def test_no_change_makes_no_entry(records: Path) -> None:
    """Empty entries are not kept."""
    assert trouble(records) == "nothing has changed"


def test_a_folder_without_git_is_told(tmp_path: Path) -> None:
    """With the way to begin."""
    (tmp_path / "plain").mkdir()
    with pytest.raises(GitTrouble, match="not in a git repository") as stopped:
        changes(tmp_path / "plain")

    assert stopped.value.way_out == "Make it one: git init"


def test_a_computer_without_git_is_told(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing else can be done then."""
    monkeypatch.setenv("PATH", "")
    with pytest.raises(GitTrouble, match="git is not on this computer"):
        changes(records)


def test_git_that_does_not_know_us_is_told(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the command that introduces us."""
    write(records, "mill/stable.yaml", "other\n")
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.delenv(f"GIT_{role}_NAME")
        monkeypatch.delenv(f"GIT_{role}_EMAIL")
    git(records, "config", "user.useConfigOnly", "true")

    assert trouble(records) == "git does not know who you are"


def test_a_hook_that_refuses_is_told_in_its_words(records: Path) -> None:
    """The repository's own rule says why."""
    hook = write(records.parent, ".git/hooks/pre-commit", "#!/bin/sh\necho 'Not on a Sunday' >&2\nexit 1\n")
    hook.chmod(0o755)
    write(records, "mill/stable.yaml", "other\n")

    assert trouble(records) == "the repository refuses the entry: 'Not on a Sunday'"


def test_a_merge_that_is_not_finished_is_told(records: Path) -> None:
    """Two branches changed one line."""
    git(records, "checkout", "--quiet", "-b", "other")
    write(records, "mill/stable.yaml", "theirs\n")
    git(records, "commit", "--quiet", "-a", "-m", "theirs")
    git(records, "checkout", "--quiet", "-")
    write(records, "mill/stable.yaml", "ours\n")
    git(records, "commit", "--quiet", "-a", "-m", "ours")
    subprocess.run(["git", "-C", str(records), "merge", "other"], capture_output=True)

    assert trouble(records) == "a merge is not finished"


def test_git_that_is_busy_is_told(records: Path) -> None:
    """Another window holds the lock."""
    write(records, "mill/stable.yaml", "other\n")
    write(records.parent, ".git/index.lock", "")

    assert trouble(records) == "git is busy in another window, or was killed"
