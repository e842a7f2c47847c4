"""The mark of a built site, and what is refused for want of it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from recordgen.problems import Trouble
from recordgen.site.site_folders import MARK, is_site, mark_folder, refuse_place


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A folder as a build leaves it."""
    folder = tmp_path / "willowmere"
    (folder / "horses").mkdir(parents=True)
    (folder / "index.html").write_text("a page")
    (folder / "horses" / "bramble.html").write_text("another")
    mark_folder(folder, "willowmere")
    return folder


def test_the_mark_lists_what_was_written_and_the_folder_is_its_owners_alone(site: Path) -> None:
    """Names with their sizes, and whose site it is."""
    assert json.loads((site / MARK).read_text()) == {
        "site": "willowmere",
        "files": {"horses/bramble.html": 7, "index.html": 6},
    }
    assert is_site(site)
    assert site.stat().st_mode & 0o777 == 0o700


def test_a_marked_folder_an_empty_one_and_none_at_all_may_be_replaced(site: Path, tmp_path: Path) -> None:
    """A file of ours may be changed or gone, and what systems leave behind counts for nothing."""
    (site / "index.html").write_text("changed by hand")
    (site / "horses" / "bramble.html").unlink()
    (site / "horses" / ".DS_Store").touch()
    (site / "horses" / "Thumbs.db").touch()
    (tmp_path / "empty").mkdir()

    refuse_place(site, "willowmere")
    refuse_place(tmp_path / "empty", "willowmere")
    refuse_place(tmp_path / "nothing", "willowmere")


@pytest.mark.parametrize("name", ["notes.txt", "horses/holiday.jpg", ".git/HEAD", "mine/"])
def test_what_a_stranger_put_there_is_named(site: Path, name: str) -> None:
    """In any depth, and a folder though it is empty."""
    if name.endswith("/"):
        (site / name).mkdir()
    else:
        (site / name).parent.mkdir(exist_ok=True)
        (site / name).write_text("mine")
    with pytest.raises(Trouble, match=f"holds files that are not of this site: {name}"):
        refuse_place(site, "willowmere")


@pytest.mark.parametrize("mark", [None, "", "{}", "[]", '{"site": "willowmere"}', '{"site": 1, "files": 2}', "\xff"])
def test_without_a_mark_that_reads_every_file_is_a_strangers(site: Path, mark: str | None) -> None:
    """The folder's name tells nothing."""
    if mark is None:
        (site / MARK).unlink()
    else:
        (site / MARK).write_text(mark, "latin-1")
    with pytest.raises(Trouble, match=r"not of this site: .*index\.html"):
        refuse_place(site, "willowmere")


def test_the_site_of_another_stable_stays(site: Path) -> None:
    """Though it is one of ours."""
    with pytest.raises(Trouble, match="holds the site of willowmere"):
        refuse_place(site, "fallow-end")


@pytest.mark.parametrize("kind", ["file", "link"])
def test_a_file_or_a_link_in_a_sites_place_is_told(site: Path, tmp_path: Path, kind: str) -> None:
    """A link could lead anywhere."""
    place = tmp_path / "place"
    if kind == "file":
        place.write_text("mine")
    else:
        place.symlink_to(site)
    with pytest.raises(Trouble, match="is no folder"):
        refuse_place(place, "willowmere")
