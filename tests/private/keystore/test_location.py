"""Where keys lie: outside every repository, found again when the records move, apart for each practice."""

import shutil
import stat
import subprocess
from pathlib import Path

import pytest

from recordgen.private.keystore.location import private_folder, refuse_repository, state_file
from recordgen.problems import Trouble


@pytest.fixture(autouse=True)
def keys(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder for keys, and somebody for git."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    for name in ("GIT_CONFIG_GLOBAL", "GIT_CONFIG_SYSTEM"):
        monkeypatch.setenv(name, str(tmp_path / "none"))
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    return tmp_path / "keys"


def git(folder: Path, *words: str) -> None:
    """Ask git."""
    subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True)


def repository(folder: Path, text: str) -> Path:
    """Records with a first entry."""
    folder.mkdir(parents=True)
    (folder / "practice.yaml").write_text(text)
    git(folder, "init", "--quiet")
    enter(folder)
    return folder


def enter(folder: Path) -> None:
    """All files as one entry."""
    git(folder, "add", ".")
    git(folder, "commit", "--quiet", "--message=Records begun")


def test_the_folder_of_keys_is_closed_to_others(keys: Path) -> None:
    """It is made for its owner alone, and closed again where it stood open."""
    private_folder()
    keys.chmod(0o755)

    assert stat.S_IMODE(private_folder().stat().st_mode) == 0o700


def test_without_a_name_it_is_a_folder_of_this_user(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's place for a program's data."""
    monkeypatch.delenv("RECORDGEN_PRIVATE")
    monkeypatch.setattr("recordgen.private.keystore.location.user_data_path", lambda name: tmp_path / "data" / name)

    assert private_folder() == tmp_path / "data" / "recordgen" / "private"


def test_a_folder_in_a_repository_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No key may be kept by git, by whatever path it is named, and the folder is not made."""
    repository(tmp_path / "records", "a: 1\n")
    (tmp_path / "link").symlink_to(tmp_path / "records")
    for name in (tmp_path / "records" / "keys", tmp_path / "link" / "deep" / "keys"):
        monkeypatch.setenv("RECORDGEN_PRIVATE", str(name))
        with pytest.raises(Trouble, match="lies in a git repository"):
            private_folder()

    assert not (tmp_path / "records" / "keys").exists()


def test_a_worktree_is_a_repository_too(tmp_path: Path) -> None:
    """There `.git` is a file."""
    (tmp_path / ".git").write_text("gitdir: elsewhere\n")

    with pytest.raises(Trouble, match="git repository"):
        refuse_repository(tmp_path / "copy.json")


def test_records_that_move_keep_their_keys(tmp_path: Path) -> None:
    """The history names them, not the folder; a clone has the same."""
    here = repository(tmp_path / "records", "a: 1\n")
    file = state_file(here, "willowmere")
    git(tmp_path, "clone", "--quiet", str(here), "clone")
    shutil.move(here, tmp_path / "elsewhere")

    assert state_file(tmp_path / "elsewhere", "willowmere") == file
    assert state_file(tmp_path / "clone", "willowmere") == file


def test_new_entries_change_nothing(tmp_path: Path) -> None:
    """The first entry of the history stays the first."""
    here = repository(tmp_path / "records", "a: 1\n")
    file = state_file(here, "willowmere")
    (here / "new.yaml").write_text("b: 2\n")
    enter(here)

    assert state_file(here, "willowmere") == file


def test_two_practices_do_not_meet(tmp_path: Path) -> None:
    """Stables of the same name in two practices, or in two folders of one repository, have keys of their own."""
    one, other = repository(tmp_path / "one", "a: 1\n"), repository(tmp_path / "other", "a: 2\n")
    (one / "second").mkdir()
    files = {state_file(folder, "willowmere") for folder in (one, other, one / "second")}

    assert len(files) == 3


def test_records_without_a_history_keep_their_keys_once_they_have_one(tmp_path: Path) -> None:
    """The file found by the folder is renamed."""
    here = tmp_path / "records"
    here.mkdir()
    state_file(here, "willowmere").write_bytes(b"keys")
    shutil.copytree(repository(tmp_path / "new", "a: 1\n") / ".git", here / ".git")

    assert state_file(here, "willowmere").read_bytes() == b"keys"
    shutil.move(here, tmp_path / "elsewhere")
    assert state_file(tmp_path / "elsewhere", "willowmere").read_bytes() == b"keys"


def test_a_history_cut_short_is_told(tmp_path: Path) -> None:
    """Its first entry is not the first, so the keys would not be found."""
    here = repository(tmp_path / "records", "a: 1\n")
    (here / "new.yaml").write_text("b: 2\n")
    enter(here)
    git(tmp_path, "clone", "--quiet", "--depth=1", f"file://{here}", "shallow")

    with pytest.raises(Trouble, match="cut short"):
        state_file(tmp_path / "shallow", "willowmere")


def test_a_hook_of_another_repository_is_not_followed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Variables that git sets for its hooks do not point to other keys."""
    one, other = repository(tmp_path / "one", "a: 1\n"), repository(tmp_path / "other", "a: 2\n")
    file = state_file(one, "willowmere")
    monkeypatch.setenv("GIT_DIR", str(other / ".git"))

    assert state_file(one, "willowmere") == file


@pytest.mark.parametrize("slug", ["", "../willowmere", "a/b", "Willow"])
def test_only_a_stables_name_names_a_file(tmp_path: Path, slug: str) -> None:
    """Nothing leads out of the folder."""
    with pytest.raises(ValueError, match="no name of a stable"):
        state_file(tmp_path, slug)
