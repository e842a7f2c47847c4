"""recordgen photo: adding, refusing, cleaning."""

from __future__ import annotations

import os
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import Result

from recordgen.records.photos import add as photo_adding
from tests.conftest import TODAY
from tests.support.commands import run, run_today, small_practice
from tests.support.photographs import drawn, file_of, opened, with_place

FENNEL = "willowmere/fennel"
MANY = 8
SOLE = ("--foot", "LF", "--view", "sole", "--moment", "before", "--date", "2026-10-14")
NAME = "2026-10-14-left-fore-sole-before.jpg"


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A small practice."""
    return small_practice(tmp_path)


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    """A picture as a telephone writes it, outside the records."""
    file = tmp_path / "IMG_0412.jpg"
    file.write_bytes(with_place())
    return file


def add(records: Path, *words: str | Path) -> Result:
    """The output of adding photographs to Bramble."""
    return run_today("photo", FENNEL, *words, records=records)


def kept(records: Path) -> list[str]:
    """The names of Bramble's photographs."""
    folder = records / FENNEL / "photos"
    return sorted(path.name for path in folder.iterdir()) if folder.is_dir() else []


def test_a_photograph_comes_in_plain_and_the_original_stays(records: Path, picture: Path) -> None:
    """Named by what it shows, passed by the check."""
    before = picture.read_bytes()
    result = add(records, picture, *SOLE)

    assert result.output == f"{records / FENNEL / 'photos' / NAME}  added\n"
    assert (kept(records), picture.read_bytes()) == ([NAME], before)
    assert run_today("check", records=records).exit_code == 0


def test_pictures_taken_in_at_once_are_all_kept(records: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Several windows add another picture of the same foot at the same moment, and each has a file of its own."""
    gate = threading.Barrier(MANY)
    monkeypatch.setattr(photo_adding, "plain_photo", lambda raw, shown: (gate.wait(), raw)[1])
    said = photo_adding.OnTheLine(TODAY, "left_fore", "sole", "before")

    def take_in(number: int) -> tuple[Path, bool]:
        file = tmp_path / f"{number}.jpg"
        file.write_bytes(file_of(drawn(100 + number)))
        return photo_adding.add_photo(records, records / FENNEL, file, said, TODAY)

    with ThreadPoolExecutor(MANY) as windows:
        done = list(windows.map(take_in, range(MANY)))

    assert {opened(path.read_bytes()).width for path, _ in done} == {100 + number for number in range(MANY)}
    assert all(new for _, new in done)
    assert len(kept(records)) == MANY


def test_the_same_picture_is_added_once(records: Path, picture: Path) -> None:
    """It is said and nothing is written."""
    add(records, picture, *SOLE)
    result = add(records, picture, *SOLE)

    assert (result.exit_code, kept(records)) == (0, [NAME])
    assert "was there already and stays as it is" in result.output


def test_another_picture_of_the_same_gets_a_number(records: Path, picture: Path, tmp_path: Path) -> None:
    """And nothing that is there is written over."""
    other = tmp_path / "IMG_0413.png"
    other.write_bytes(file_of(drawn(200, 300), "PNG"))
    add(records, picture, other, *SOLE)

    assert kept(records) == [NAME.replace(".jpg", "-2.jpg"), NAME]
    assert opened((records / FENNEL / "photos" / kept(records)[0]).read_bytes()).size == (200, 300)


def test_the_camera_tells_the_day_unless_it_is_said(records: Path, picture: Path, tmp_path: Path) -> None:
    """A picture without a day is of today."""
    plain = tmp_path / "scan.webp"
    plain.write_bytes(file_of(drawn(), "WEBP"))
    add(records, picture, plain, "--foot", "near_hind", "--view", "side")

    assert kept(records) == ["2026-10-14-left-hind-side-found.jpg", f"{TODAY}-left-hind-side-found.jpg"]


def test_a_name_that_tells_all_needs_no_more(records: Path, tmp_path: Path) -> None:
    """Given facts go before it."""
    file = tmp_path / "2026-10-14-right-fore-front-after.png"
    file.write_bytes(file_of(drawn(), "PNG"))
    add(records, file)
    add(records, file, "--view", "heel")

    assert kept(records) == ["2026-10-14-right-fore-front-after.jpg", "2026-10-14-right-fore-heel-after.jpg"]


@pytest.mark.parametrize(
    ("name", "words", "told"),
    [
        ("IMG_0412.jpg", (), "'IMG_0412.jpg' does not tell the foot and the view. Say them with --foot and --view."),
        ("IMG_0412.jpg", (*SOLE, "--date", "2026-11-26"), "The date 2026-11-26 of 'IMG_0412.jpg' is in the future."),
        ("none.jpg", SOLE, "There is no file "),
        ("records", SOLE, "'records' is a folder. Name the pictures in it."),
        ("records/link.jpg", SOLE, "'link.jpg' is a link that leads out of its folder. Name the picture itself."),
        ("text.jpg", SOLE, "'text.jpg' is no picture that can be read."),
        ("pipe.jpg", SOLE, "There is no file "),
    ],
)
def test_what_cannot_be_added_is_told(
    records: Path, picture: Path, name: str, words: tuple[str, ...], told: str
) -> None:
    """With the file, and nothing is written."""
    folder = picture.parent
    os.symlink(picture, records / "link.jpg")
    os.mkfifo(folder / "pipe.jpg")
    (folder / "text.jpg").write_text("x")
    result = add(records, folder / name, *words)

    assert (result.exit_code, kept(records)) == (1, [])
    assert told in result.output


def test_one_that_is_refused_does_not_stop_the_others(records: Path, picture: Path) -> None:
    """The exit code tells that something was."""
    result = add(records, picture.with_name("none.jpg"), picture, *SOLE)

    assert (result.exit_code, kept(records)) == (1, [NAME])


@pytest.mark.parametrize("horse", ["willowmere/otter", "../records/willowmere", "willowmere", "/willowmere/bramble"])
def test_a_horse_that_is_not_there_is_told(records: Path, picture: Path, horse: str) -> None:
    """With those that are."""
    result = run_today("photo", horse, picture, *SOLE, records=records)

    assert result.exit_code == 1
    assert "The horses there are: willowmere/bramble, willowmere/fennel." in result.output


def test_nothing_is_written_through_a_link_that_leads_out(records: Path, picture: Path, tmp_path: Path) -> None:
    """Photographs stay inside the records."""
    (tmp_path / "elsewhere").mkdir()
    os.symlink(tmp_path / "elsewhere", records / FENNEL / "photos")
    result = add(records, picture, *SOLE)

    assert "leads out of the records" in result.output
    assert list((tmp_path / "elsewhere").iterdir()) == []


@pytest.mark.parametrize(
    "words", [(FENNEL,), (FENNEL, "a.jpg", "--foot", "middle"), (FENNEL, "a.jpg", "--view", "top")]
)
def test_wrong_use_exits_with_two(records: Path, words: tuple[str, ...]) -> None:
    """No picture, no such foot, no such view."""
    assert run("photo", *words, "--records", records).exit_code == 2


@pytest.mark.parametrize("seen_from", ["here", "records"])
def test_cleaning_makes_a_photograph_plain_in_its_place(records: Path, picture: Path, seen_from: str) -> None:
    """As the check asks for it, and once it is done it changes nothing more."""
    file = records / FENNEL / "photos" / NAME
    file.parent.mkdir()
    file.write_bytes(picture.read_bytes())
    checked = run_today("check", records=records)
    name = file if seen_from == "here" else file.relative_to(records)
    results = [run_today("photo", "--clean", name, records=records) for _ in range(2)]

    assert (checked.exit_code, f"--clean {FENNEL}/photos/{NAME}." in checked.output) == (1, True)
    assert [result.output.split("  ")[1] for result in results] == ["made plain\n", "is plain already\n"]
    assert run_today("check", records=records).exit_code == 0


@pytest.mark.parametrize(
    ("name", "told"), [("IMG_0412.jpg", "lies outside the records"), ("records/a.png", "is not named as a JPEG")]
)
def test_only_photographs_of_the_records_are_cleaned(records: Path, picture: Path, name: str, told: str) -> None:
    """An original elsewhere is never touched."""
    (records / "a.png").write_bytes(file_of(drawn(), "PNG"))
    before = picture.read_bytes()
    result = run_today("photo", "--clean", picture.parent / name, records=records)

    assert (result.exit_code, picture.read_bytes()) == (1, before)
    assert told in result.output
