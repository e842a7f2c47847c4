"""Kept pictures: drawn once, told apart by what they show, drawn again when damaged."""

from __future__ import annotations

import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.pictures import cache as kept
from recordgen.pictures.cache import PictureCache, canonical, key_of

READINGS = [Reading(date(2026, 2, 1), 88, 80)]


class Drawer:
    """Counts how often it draws."""

    def __init__(self) -> None:
        self.__qualname__ = "Drawer"
        self.times = 0

    def __call__(self, *args: object, **kwargs: object) -> str:
        """A picture that names what it was drawn from."""
        self.times += 1
        return f"<svg>ü {args} {kwargs}</svg>"


def files(folder: Path) -> list[Path]:
    """The files kept in a folder."""
    return sorted(path for path in folder.iterdir())


def test_a_picture_is_drawn_once_in_one_process() -> None:
    """Asking again gives the same picture without drawing."""
    store, draw = PictureCache(None), Drawer()

    assert store.drawn(draw, READINGS, unit="mm") == store.drawn(draw, READINGS, unit="mm")
    assert draw.times == 1


def test_a_picture_is_drawn_once_for_all_processes(tmp_path: Path) -> None:
    """Another process with the same folder does not draw it again."""
    draw = Drawer()
    first = PictureCache(tmp_path / "made").drawn(draw, READINGS)

    assert PictureCache(tmp_path / "made").drawn(draw, READINGS) == first
    assert draw.times == 1


def test_other_content_is_another_picture(tmp_path: Path) -> None:
    """One millimetre more is drawn anew."""
    store, draw = PictureCache(tmp_path), Drawer()
    store.drawn(draw, READINGS)
    store.drawn(draw, [Reading(date(2026, 2, 1), 89, 80)])

    assert draw.times == len(files(tmp_path)) == 2


@pytest.mark.parametrize("damage", [b"", b"<svg>", b"\xff\xfe", b"<svg>other</svg>\n<!--0-->\n"])
def test_a_damaged_file_is_drawn_again(tmp_path: Path, damage: bytes) -> None:
    """A file cut short, overwritten or unreadable is replaced by the right picture."""
    draw = Drawer()
    right = PictureCache(tmp_path).drawn(draw, READINGS)
    (file,) = files(tmp_path)
    whole = file.read_bytes()
    file.write_bytes(damage)

    assert PictureCache(tmp_path).drawn(draw, READINGS) == right
    assert (draw.times, file.read_bytes()) == (2, whole)


def test_one_changed_letter_is_noticed(tmp_path: Path) -> None:
    """A kept picture whose middle was changed is not shown."""
    draw = Drawer()
    right = PictureCache(tmp_path).drawn(draw, READINGS)
    (file,) = files(tmp_path)
    file.write_bytes(file.read_bytes().replace(b"88", b"98"))

    assert PictureCache(tmp_path).drawn(draw, READINGS) == right


def test_a_folder_that_cannot_be_written_costs_only_time(tmp_path: Path) -> None:
    """Where a file stands in the folder's place, pictures are drawn all the same."""
    (tmp_path / "file").write_text("in the way")

    assert PictureCache(tmp_path / "file").drawn(Drawer(), 1).startswith("<svg>")


def test_nothing_half_written_is_left(tmp_path: Path) -> None:
    """Only whole pictures stand in the folder, each named by its key."""
    draw = Drawer()
    PictureCache(tmp_path).drawn(draw, READINGS)

    assert [path.name for path in files(tmp_path)] == [f"{key_of(draw, (READINGS,), {})}.svg"]


def test_changed_drawing_code_draws_everything_again(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A new version of the drawings makes no use of what the old one drew."""
    draw = Drawer()
    PictureCache(tmp_path).drawn(draw, READINGS)
    monkeypatch.setattr(kept, "drawing_version", lambda: "another")
    PictureCache(tmp_path).drawn(draw, READINGS)

    assert draw.times == 2


def test_memory_holds_a_bounded_number(monkeypatch: pytest.MonkeyPatch) -> None:
    """The oldest picture is forgotten when memory is full."""
    monkeypatch.setattr(kept, "MOST_IN_MEMORY", 2)
    store, draw = PictureCache(None), Drawer()
    for number in (1, 2, 3, 3, 1):
        store.drawn(draw, number)

    assert draw.times == 4


def test_the_order_of_a_mapping_does_not_matter_and_kinds_of_value_do() -> None:
    """Equal content has one spelling; the number 1 and the word 1 have two."""
    assert canonical({"a": 1, "b": (2, 3)}) == canonical({"b": [2, 3], "a": 1})
    assert canonical(1) != canonical("1")
    assert canonical({"x", "y"}) == canonical({"y", "x"})


def test_what_has_no_spelling_is_refused() -> None:
    """An argument that could change unseen cannot be kept by content."""
    with pytest.raises(TypeError, match="by a object"):
        PictureCache(None).drawn(Drawer(), object())


SCRIPT = """
import sys
from datetime import date
from pathlib import Path
from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.cache import PictureCache
from recordgen.pictures.charts.through_time import toe_length_panel
span = (date(2026, 1, 1), date(2026, 12, 31))
readings = [Reading(date(2026, 2, 1), 88, 80)]
PictureCache(Path(sys.argv[1])).drawn(toe_length_panel, "left_fore", readings, [], span, (70, 90), "t")
print("matplotlib" in sys.modules, "numpy" in sys.modules)
"""


def test_matplotlib_is_loaded_only_to_draw(tmp_path: Path) -> None:
    """The first build loads matplotlib; the next, with every picture kept, does not."""
    runs = [
        subprocess.run([sys.executable, "-c", SCRIPT, str(tmp_path)], capture_output=True, text=True, check=True)
        for _ in range(2)
    ]

    assert [run.stdout.split() for run in runs] == [["True", "True"], ["False", "False"]]
