"""Building many sites: apart from each other, and whole or not at all."""

from __future__ import annotations

import pickle
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from recordgen.files import list_files
from recordgen.pictures.cache import PictureCache
from recordgen.problems import Trouble
from recordgen.records.load.everything import read_whole
from recordgen.site import build
from recordgen.site.build import Work, build_sites, prepare, strangers
from recordgen.site.site_folders import MARK, mark_folder
from tests.conftest import RECORDS, ROOT, TODAY


@pytest.fixture(scope="module")
def work() -> Work:
    """One stable of the demo practice, ready to build."""
    return prepare(read_whole(RECORDS, TODAY, "willowmere"), TODAY, None)


def old_site(sites: Path) -> Path:
    """The site of a stable as it was built before."""
    folder = sites / "willowmere"
    folder.mkdir()
    (folder / "index.html").write_text("the old site")
    mark_folder(folder, "willowmere")
    return folder


def test_the_work_can_be_handed_to_another_process(work: Work) -> None:
    """Where forking is not safe, builders get a copy that makes the same site."""
    copy = pickle.loads(pickle.dumps(work))

    assert copy.site("willowmere", copy.desk()) == work.site("willowmere", work.desk())


def test_an_error_while_building_leaves_everything_as_it_was(
    work: Work, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A builder that fails writes nothing into the folder of sites."""
    old = old_site(tmp_path)

    def fail(*_: object) -> None:
        raise Trouble("the disk is full")

    monkeypatch.setattr("recordgen.site.engine.write_site", fail)
    with pytest.raises(Trouble):
        build_sites(work, ["willowmere"], tmp_path)

    assert [path.name for path in tmp_path.iterdir()] == ["willowmere"]
    assert list_files(old) == [MARK, "index.html"]


def test_an_error_while_swapping_puts_the_old_site_back(
    work: Work, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The old site is in its place again when the new one cannot take it."""
    old = old_site(tmp_path)
    monkeypatch.setattr(build, "_build_one", lambda slug, folder: build.Built(slug, slug, folder, 0))
    with pytest.raises(FileNotFoundError):
        build_sites(work, ["willowmere"], tmp_path)

    assert (old / "index.html").read_text() == "the old site"


def test_folders_of_others_are_not_taken_for_sites(tmp_path: Path) -> None:
    """Only a folder with our mark in it is named as left over."""
    (tmp_path / "holiday").mkdir()
    old = old_site(tmp_path)

    assert strangers(tmp_path, ["fallow-end"]) == [old]
    assert strangers(tmp_path, ["willowmere"]) == []


def test_a_picture_is_drawn_once_for_what_it_shows(work: Work, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A second build draws nothing: every picture is kept."""
    desk = replace(work, pictures=tmp_path).desk()
    first = work.site("willowmere", desk)
    monkeypatch.setattr(PictureCache, "_write", lambda *_: pytest.fail("a picture was drawn again"))
    again = replace(work, pictures=tmp_path).desk()

    assert work.site("willowmere", again) == first


def test_the_bare_engine_shows_the_practice_too(tmp_path: Path) -> None:
    """`mkdocs build` with the configuration at the top of the repository makes the trimmer's own site."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(tmp_path / "site")]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)

    assert (tmp_path / "site" / "willowmere" / "bramble.html").is_file()
