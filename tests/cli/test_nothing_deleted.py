"""Commands that write never delete or write over what they did not make, and leave nothing half written."""

from __future__ import annotations

import errno
import os
import shutil
import subprocess
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import click
import pytest

from recordgen.cli.options import exit_on_trouble
from recordgen.files import fingerprints
from recordgen.locks import hold_lock
from recordgen.sentences import worded
from recordgen.site import engine
from recordgen.site.model import Placed, Site
from recordgen.site.site_folders import MARK, mark_folder
from tests.conftest import TODAY
from tests.support import practice_folders
from tests.support.commands import run, run_today
from tests.support.publishing import git


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A small practice in a git repository of its own, called as the trimmer's own site is."""
    made = practice_folders.build(tmp_path / "practice")
    (made / ".gitignore").write_text("/sites/\n/other/\n")
    for words in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "--message", "begun"]):
        git(made, *words)
    return made


@pytest.fixture
def quick_pages(monkeypatch: pytest.MonkeyPatch) -> None:
    """A page of one line in place of what the engine would write."""

    def write(site: Site, folder: Path, *_: Path | None) -> Mapping[str, Sequence[Placed]]:
        folder.mkdir()
        (folder / "index.html").write_text(f"{site.name}\n")
        return {page.uri: () for page in site.pages}

    monkeypatch.setattr(engine, "write_site", write)


def build(records: Path, *words: str | Path) -> tuple[int, str]:
    """The exit code of a build in this process, and what it said."""
    result = run_today("build", "--no-cache", "--processes", "1", *words, records=records)
    return result.exit_code, result.output


@pytest.mark.usefixtures("quick_pages")
@pytest.mark.parametrize("out", [".", "willowmere", "look", "sites/../willowmere/bramble", ".git", "other", "../link"])
def test_a_build_writes_nowhere_in_the_records_but_into_sites(
    records: Path, out: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By whatever name, and even where git would ignore it; not one byte changes."""
    (records.parent / "link").symlink_to(records)
    before = fingerprints(records)
    monkeypatch.chdir(records)
    code, said = build(records, "--out", out)

    assert (code, "lies inside the records" in said) == (1, True)
    assert fingerprints(records) == before


@pytest.mark.usefixtures("quick_pages")
def test_one_folder_up_the_records_are_named_and_stay(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The repository is called as the trimmer's own site is; nothing of it goes, `.git` least of all."""
    before = fingerprints(records)
    monkeypatch.chdir(records)
    code, said = build(records, "--out", "..")

    assert code == 1
    assert "practice holds files that are not of this site: .git/" in said
    assert fingerprints(records) == before
    assert [path.name for path in records.parent.iterdir()] == ["practice"]


@pytest.mark.usefixtures("quick_pages")
def test_the_folder_of_sites_in_the_records_is_for_sites(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Built twice, with nothing left over, for the owner of the files alone, and unknown to git."""
    monkeypatch.chdir(records)
    assert [build(records)[0], build(records)[0]] == [0, 0]

    sites = records / "sites"
    assert sorted(path.name for path in sites.iterdir()) == ["practice", "willowmere"]
    assert {path.stat().st_mode & 0o777 for path in (sites, *sites.iterdir())} == {0o700}
    assert git(records, "status", "--porcelain") == ""


@pytest.mark.usefixtures("quick_pages")
def test_sites_that_git_would_keep_are_refused(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The way out names .gitignore."""
    (records / ".gitignore").unlink()
    monkeypatch.chdir(records)
    code, said = build(records)

    assert (code, ".gitignore" in said) == (1, True)
    assert not (records / "sites").exists()


@pytest.mark.usefixtures("quick_pages")
def test_records_without_git_have_sites_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """In their own folder of sites."""
    records = practice_folders.build(tmp_path / "records")
    monkeypatch.chdir(records)

    assert build(records)[0] == 0
    assert (records / "sites" / "willowmere" / MARK).is_file()


@pytest.mark.usefixtures("quick_pages")
@pytest.mark.parametrize("theirs", ["willowmere/index.html", "practice/holiday/beach.jpg"])
def test_a_strangers_folder_of_a_sites_name_stays(records: Path, tmp_path: Path, theirs: str) -> None:
    """It is named, no site at all is put in place, and nothing is left beside."""
    file = tmp_path / "out" / theirs
    file.parent.mkdir(parents=True)
    file.write_text("mine")
    code, said = build(records, "--out", tmp_path / "out")

    assert (code, theirs.partition("/")[2] in said) == (1, True)
    assert list(fingerprints(tmp_path / "out")) == [theirs]


@pytest.mark.usefixtures("quick_pages")
def test_a_file_put_into_a_site_stops_the_next_build(records: Path, tmp_path: Path) -> None:
    """A page changed by hand does not: it is built anew."""
    out = tmp_path / "out"
    build(records, "--out", out)
    (out / "willowmere" / "index.html").write_text("changed")
    assert build(records, "--out", out)[0] == 0
    (out / "willowmere" / "letter.txt").write_text("mine")
    code, said = build(records, "--out", out)

    assert (code, "letter.txt" in said) == (1, True)
    assert (out / "willowmere" / "letter.txt").read_text() == "mine"


@pytest.mark.usefixtures("quick_pages")
def test_two_builds_in_one_place_do_not_meet(records: Path, tmp_path: Path) -> None:
    """The second is told."""
    (tmp_path / "out").mkdir()
    with hold_lock(tmp_path / "out", worded("")):
        code, said = build(records, "--out", tmp_path / "out")

    assert (code, "Sites are being built in" in said) == (1, True)
    assert list((tmp_path / "out").iterdir()) == []


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 64 kB, where this user may make one."""
    place = tmp_path / "disk"
    place.mkdir()
    mount = shutil.which("mount")
    options = ["-t", "tmpfs", "-o", "size=64k", "tmpfs", str(place)]
    if not mount or subprocess.run([mount, *options], capture_output=True).returncode:
        pytest.skip("no disk can be made here")
    yield place
    subprocess.run(["umount", str(place)], check=True)


def test_a_full_disk_is_told_with_its_place_and_leaves_the_old_site(records: Path, small_disk: Path) -> None:
    """The folder of sites is named, not a file that was copied into it; nothing is left beside the old site."""
    old = small_disk / "willowmere"
    old.mkdir()
    (old / "index.html").write_text("old")
    mark_folder(old, "willowmere")
    before = fingerprints(small_disk)
    code, said = build(records, "--out", small_disk)

    assert (code, said) == (
        1,
        f"The disk of {small_disk} is full. The sites before stay as they are; make room, then try again.\n",
    )
    assert fingerprints(small_disk) == before
    assert [path.name for path in small_disk.iterdir()] == ["willowmere"]


def _full(*_: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_a_visit_on_a_full_disk_is_no_empty_file(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The file is named; once there is room the same command begins it."""
    words = ["visit", "willowmere", "--horse", "bramble", "--date", TODAY.isoformat(), "--records", str(records)]
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", _full)
        result = run(*words)
    horse = records / "willowmere" / "bramble"

    assert (result.exit_code, f"The disk of {horse / f'{TODAY}.yaml'} is full" in result.output) == (1, True)
    assert git(records, "status", "--porcelain") == ""
    assert run(*words).exit_code == 0
    assert (horse / f"{TODAY}.yaml").stat().st_size > 100


def test_init_on_a_full_disk_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """So that the same words do once there is room."""
    words = ["init", str(tmp_path / "new"), "--stable", "Willowmere", "--practice", "Hazel", "--trimmer", "Wren"]
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", _full)
        result = run(*words)

    assert (result.exit_code, "is full" in result.output) == (1, True)
    assert list((tmp_path / "new").iterdir()) == []


@pytest.mark.parametrize(("words", "there"), [([], "<!doctype html>"), (["--csv"], "a,b\r\n"), (["--json"], "{}")])
def test_a_sheet_is_never_written_over_a_file_that_is_none(tmp_path: Path, words: list[str], there: str) -> None:
    """Whatever its name; a sheet of ours in any form may be replaced."""
    file = tmp_path / "bramble.out"
    run_today("sheet", "willowmere/bramble", *words, "--out", file)
    again = run_today("sheet", "willowmere/bramble", "--out", file)
    file.write_bytes(there.encode())
    refused = run_today("sheet", "willowmere/bramble", *words, "--out", file)

    assert again.exit_code == 0
    assert (refused.exit_code, "is there already and is no sheet of ours" in refused.output) == (1, True)
    assert file.read_bytes() == there.encode()


@pytest.mark.parametrize("name", ["horse.yaml", "2026-10-14.yaml", "new.html"])
def test_a_sheet_is_never_written_into_the_records(records: Path, name: str) -> None:
    """Over a record least of all."""
    before = fingerprints(records)
    file = records / "willowmere" / "bramble" / name
    result = run_today("sheet", "willowmere/bramble", "--out", file, records=records)

    assert result.exit_code == 1
    assert fingerprints(records) == before


def test_a_copy_that_found_no_room_names_where_it_was_to_go(capsys: pytest.CaptureFixture[str]) -> None:
    """Not what it was made from, which is well."""
    with pytest.raises(click.exceptions.Exit), exit_on_trouble():
        raise OSError(errno.ENOSPC, "No space left on device", "a-photograph.jpg", None, "out/site")

    assert capsys.readouterr().err == (
        "The disk of out/site is full. What was there before stays; make room, then try again.\n"
    )
