"""A photograph that is to be traced: what it shows, and when it cannot be."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.problems import Trouble
from recordgen.records.models.lines.points import Size
from recordgen.site.trace.photo import photo_to_trace
from tests.support.photographs import drawn, file_of
from tests.support.practice_folders import VISIT_FILE, build
from tests.support.tracing_text import text

PHOTOS = Path("willowmere/bramble/photos")
NAME = "2026-10-14-left-fore-sole-after.jpg"


def practice(folder: Path, name: str = NAME, **files: str | None) -> Path:
    """A practice with a photograph; files: the visit's text."""
    visit = files.get("visit", text("frog_apex: [10, 10]", file=NAME))
    return build(folder, {str(PHOTOS / name): file_of(drawn()), VISIT_FILE: visit})


def test_its_name_tells_what_it_shows(tmp_path: Path) -> None:
    """The foot, the view, the moment, its visit and its size; and how it was traced before."""
    found = photo_to_trace(practice(tmp_path), PHOTOS / NAME)

    assert (found.foot, found.view, found.moment, found.size) == ("left_fore", "sole", "after", Size(320, 240))
    assert found.visit == tmp_path / VISIT_FILE
    assert [(number, one.file) for number, one in found.earlier] == [(0, NAME)]


@pytest.mark.parametrize(("said", "expected"), [(None, "before"), ("after", "after")])
def test_a_picture_as_found_is_of_before_the_trim(tmp_path: Path, said: str | None, expected: str) -> None:
    """Unless somebody says otherwise."""
    name = "2026-10-14-left-fore-side.jpg"
    found = photo_to_trace(practice(tmp_path, name), PHOTOS / name, "after" if said else None)

    assert found.moment == expected


@pytest.mark.parametrize(
    ("name", "photo", "said"),
    [
        (NAME, "nowhere.jpg", "there is no photograph 'nowhere.jpg'"),
        ("2026-10-14-left-fore-whole.jpg", None, "shows the whole foot"),
        ("foot.jpg", None, "does not tell the day, the foot and the view"),
        ("2026-10-13-left-fore-sole.jpg", None, "there is no visit of 13 October 2026 for the tracing"),
    ],
)
def test_what_cannot_be_traced_is_told(tmp_path: Path, name: str, photo: str | None, said: str) -> None:
    """Each with its way out."""
    with pytest.raises(Trouble, match=said) as found:
        photo_to_trace(practice(tmp_path, name), Path(photo) if photo else PHOTOS / name)
    assert found.value.way_out


def test_a_picture_outside_the_records_is_refused(tmp_path: Path) -> None:
    """It is taken in first."""
    (tmp_path / NAME).write_bytes(file_of(drawn()))

    with pytest.raises(Trouble, match="does not lie in a horse's folder photos") as found:
        photo_to_trace(practice(tmp_path / "records"), tmp_path / NAME)
    assert found.value.way_out.startswith("Take it in first: recordgen photo")


def test_what_is_no_picture_is_refused(tmp_path: Path) -> None:
    """Before a browser is asked for."""
    (practice(tmp_path) / PHOTOS / NAME).write_bytes(b"words")

    with pytest.raises(Trouble, match=NAME):
        photo_to_trace(tmp_path, PHOTOS / NAME)
