"""Kept pictures: drawn once, told apart by what they show."""

from __future__ import annotations

import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from recordgen.cache.entries import Cache
from recordgen.hoof.measures.readings import Reading
from recordgen.pictures import cache as kept
from recordgen.pictures.cache import PictureCache

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


def test_a_picture_is_drawn_once_in_one_process() -> None:
    """Asking again gives the same picture without drawing."""
    store, draw = PictureCache(None), Drawer()

    assert store.picture(draw, READINGS, unit="mm") == store.picture(draw, READINGS, unit="mm")
    assert draw.times == 1


def test_a_picture_is_drawn_once_for_all_processes(tmp_path: Path) -> None:
    """Another process with the same folder does not draw it again."""
    draw = Drawer()
    first = PictureCache(Cache(tmp_path)).picture(draw, READINGS)

    assert PictureCache(Cache(tmp_path)).picture(draw, READINGS) == first
    assert draw.times == 1


def test_other_content_is_another_picture(tmp_path: Path) -> None:
    """One millimetre more is drawn anew."""
    store, draw = PictureCache(Cache(tmp_path)), Drawer()
    store.picture(draw, READINGS)
    store.picture(draw, [Reading(date(2026, 2, 1), 89, 80)])

    assert draw.times == 2


def test_changed_drawing_code_draws_everything_again(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A new version of the drawings makes no use of what the old one drew."""
    draw = Drawer()
    PictureCache(Cache(tmp_path)).picture(draw, READINGS)
    monkeypatch.setattr(kept, "program_version", lambda: "another")
    PictureCache(Cache(tmp_path)).picture(draw, READINGS)

    assert draw.times == 2


def test_memory_holds_a_bounded_number(monkeypatch: pytest.MonkeyPatch) -> None:
    """The oldest picture is forgotten when memory is full."""
    monkeypatch.setattr(kept, "MOST_IN_MEMORY", 2)
    store, draw = PictureCache(None), Drawer()
    for number in (1, 2, 3, 3, 1):
        store.picture(draw, number)

    assert draw.times == 4


def test_what_has_no_spelling_is_refused() -> None:
    """An argument that could change unseen cannot be kept by content."""
    with pytest.raises(TypeError, match="by a object"):
        PictureCache(None).picture(Drawer(), object())


SCRIPT = """
import sys
from datetime import date
from pathlib import Path
from recordgen.cache.entries import Cache
from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.cache import PictureCache
from recordgen.pictures.charts.through_time import toe_length_panel
span = (date(2026, 1, 1), date(2026, 12, 31))
readings = [Reading(date(2026, 2, 1), 88, 80)]
PictureCache(Cache(Path(sys.argv[1]))).picture(toe_length_panel, "left_fore", readings, [], span, (70, 90), "t")
print("matplotlib" in sys.modules, "numpy" in sys.modules)
"""


def test_matplotlib_is_loaded_only_to_draw(tmp_path: Path) -> None:
    """The first build loads matplotlib; the next, with every picture kept, does not."""
    runs = [
        subprocess.run([sys.executable, "-c", SCRIPT, str(tmp_path)], capture_output=True, text=True, check=True)
        for _ in range(2)
    ]

    assert [run.stdout.split() for run in runs] == [["True", "True"], ["False", "False"]]
