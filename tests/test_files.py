"""Files written whole or not at all."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen import files
from recordgen.files import disk_trouble, fingerprints, list_empty_folders, list_files, write_new, write_whole, writing
from recordgen.problems import Trouble
from recordgen.sentences import worded

# Writes over a file and is killed while the new content stands in a part, before it takes its name.
KILLED = """
import os, pathlib, signal, sys
from recordgen import files
at = pathlib.Path(sys.argv[1])
setattr(os, sys.argv[2], lambda *_: os.kill(os.getpid(), signal.SIGKILL))
(files.write_whole if sys.argv[2] == "replace" else files.write_new)(at, "new")
"""


def killed(at: Path, before: str) -> None:
    """Write into a file, in a process that is killed before it calls a function of the system."""
    done = subprocess.run([sys.executable, "-c", KILLED, str(at), before])
    assert done.returncode == -signal.SIGKILL


def _full(*_: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_a_file_is_written_over_and_keeps_who_may_open_it(tmp_path: Path) -> None:
    """Text goes in as UTF-8 without a change of its lines' ends; nothing is left beside it."""
    file = tmp_path / "note.txt"
    write_whole(file, "one", mode=0o640)
    write_whole(file, "zwölf\r\n")

    assert file.read_bytes() == "zwölf\r\n".encode()
    assert file.stat().st_mode & 0o777 == 0o640
    assert list_files(tmp_path) == ["note.txt"]


def test_a_new_file_is_as_open_as_any_other(tmp_path: Path) -> None:
    """As the person's own settings say, or as told."""
    (tmp_path / "usual").touch()
    write_new(tmp_path / "new", b"")
    write_new(tmp_path / "keys", b"", mode=0o600)

    assert (tmp_path / "new").stat().st_mode == (tmp_path / "usual").stat().st_mode
    assert (tmp_path / "keys").stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("there", ["file", "folder", "link to nothing"])
def test_a_new_file_is_never_written_over_anything(tmp_path: Path, there: str) -> None:
    """Not even in the place of a link that leads nowhere."""
    file = tmp_path / "visit.yaml"
    match there:
        case "file":
            file.write_text("mine")
        case "folder":
            file.mkdir()
        case _:
            file.symlink_to(tmp_path / "nowhere")

    assert not write_new(file, "new")
    assert os.listdir(tmp_path) == ["visit.yaml"]


@pytest.mark.parametrize("links", [True, False])
def test_of_two_that_begin_one_file_the_second_is_told(
    tmp_path: Path, links: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also on disks on which a file has one name alone."""
    if not links:
        monkeypatch.setattr(os, "link", lambda *_: _not_permitted())
    monkeypatch.setattr(os.path, "lexists", lambda _: False)
    both = [write_new(tmp_path / "visit.yaml", text) for text in ("first", "second")]

    assert both == [True, False]
    assert (tmp_path / "visit.yaml").read_text() == "first"
    assert list_files(tmp_path) == ["visit.yaml"]


def _not_permitted() -> None:
    raise PermissionError(errno.EPERM, "Operation not permitted")


def test_killed_before_the_name_is_taken_the_old_file_stands(tmp_path: Path) -> None:
    """And the next writer clears what was left, but no part that somebody still writes."""
    file = tmp_path / "keys.json"
    write_whole(file, "old")
    killed(file, "replace")

    assert (file.read_text(), len(list_files(tmp_path))) == ("old", 2)
    write_whole(file, "newer")
    assert list_files(tmp_path) == ["keys.json"]


def test_killed_before_a_new_file_has_its_name_there_is_none(tmp_path: Path) -> None:
    """No empty and no half visit."""
    killed(tmp_path / "visit.yaml", "link")

    assert [files.is_part(name) for name in list_files(tmp_path)] == [True]
    assert write_new(tmp_path / "visit.yaml", "new")
    assert list_files(tmp_path) == ["visit.yaml"]


def test_killed_after_a_new_file_has_its_name_the_next_run_clears_what_is_left(tmp_path: Path) -> None:
    """Though that run finds the file there, and writes nothing."""
    killed(tmp_path / "note.txt", "unlink")
    left = len(list_files(tmp_path))

    assert write_new(tmp_path / "note.txt", "other") is False
    assert (left, list_files(tmp_path)) == (2, ["note.txt"])
    assert (tmp_path / "note.txt").read_text() == "new"


def test_a_part_that_is_being_written_stays(tmp_path: Path) -> None:
    """Another writer of the same file holds theirs."""
    with files._written_beside(tmp_path / "a.yaml", "theirs", None, True) as part:
        write_whole(tmp_path / "a.yaml", "mine")

        assert part.read_text() == "theirs"


def test_files_of_others_are_not_taken_for_parts(tmp_path: Path) -> None:
    """A name that only looks near stays."""
    names = [".a.yaml.part", ".a.yaml.0123abcd.part.txt", "a.yaml.0123abcd.part", ".b.yaml.0123abcd.part"]
    for name in names:
        (tmp_path / name).write_text("mine")
    write_whole(tmp_path / "a.yaml", "ours")

    assert list_files(tmp_path) == sorted([*names, "a.yaml"])


@pytest.mark.parametrize("write", [write_whole, write_new])
def test_a_full_disk_leaves_nothing_and_names_the_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, write: object
) -> None:
    """The file that was to be written, not its part."""
    monkeypatch.setattr(os, "fsync", _full)
    with pytest.raises(OSError, match="No space left") as stopped:
        write(tmp_path / "visit.yaml", "new")  # type: ignore[operator]

    assert stopped.value.filename == str(tmp_path / "visit.yaml")
    assert list_files(tmp_path) == []


def test_a_full_disk_is_a_sentence() -> None:
    """With the way out, and with how things stand."""
    with pytest.raises(Trouble, match=r"^the disk of out is full$") as told, writing(Path("out")):
        _full()
    other = disk_trouble(PermissionError(errno.EACCES, "Permission denied"), "out", worded("Nothing was shared"))

    assert told.value.way_out == "Nothing was written; make room, then try again"
    assert other.message == "out cannot be written: Permission denied"
    assert other.way_out == "Nothing was shared; look whether you may write there"


def test_all_that_a_folder_holds_is_listed(tmp_path: Path) -> None:
    """Files in order, a link as itself, and folders that hold nothing."""
    (tmp_path / "b" / "empty").mkdir(parents=True)
    (tmp_path / "b" / "one").write_text("1")
    (tmp_path / "a").symlink_to(tmp_path / "b")

    assert list_files(tmp_path) == ["a", "b/one"]
    assert list_empty_folders(tmp_path) == ["b/empty/"]
    assert fingerprints(tmp_path / "b") == {
        # Source: FIPS 180-4; the digest as sha256sum of GNU coreutils prints it.
        "one": "6b86b273ff34fce19d6b804eff5a3f5747ada4eaa22f1d49c01e52ddb7875b4b"
    }
