"""Figures of tracings are reckoned once and kept; whatever is wrong with what is kept costs only time."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.hoof.tracing.figures import reckoned
from recordgen.records.models.tracing import Tracing
from recordgen.site.tracing import figure_cache as room
from recordgen.site.tracing.figure_cache import FigureCache, key_of
from tests.support.typed_tracings import typed

TRACING = Tracing.model_validate(typed())


def test_what_is_kept_is_what_was_reckoned(tmp_path: Path) -> None:
    """To the last digit, and written alike: 100.0 is not 100 in a file for other programs."""
    first, again = FigureCache(tmp_path)(TRACING, 1.5), FigureCache(tmp_path)(TRACING, 1.5)

    assert repr(first) == repr(again) == repr(reckoned(TRACING, 1.5))


def test_it_is_reckoned_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another hand or another tracing is another question."""
    asked: list[float] = []
    monkeypatch.setattr(room, "reckoned", lambda tracing, hand: asked.append(hand) or {})
    for hand in (1.5, 1.5, 2.0):
        FigureCache(tmp_path)(TRACING, hand)
    FigureCache(tmp_path)(Tracing.model_validate(typed(shift=(601, 900))), 1.5)

    assert asked == [1.5, 2.0, 1.5]


@pytest.mark.parametrize("content", ["", "{", "[1]", '{"a": 1}', '{"a": [1]}', '{"a": ["x", 1]}'])
def test_a_damaged_file_is_reckoned_anew(tmp_path: Path, content: str) -> None:
    """And written whole."""
    file = tmp_path / f"{key_of(TRACING, 1.5)}.json"
    file.write_text(content)

    assert FigureCache(tmp_path)(TRACING, 1.5) == reckoned(TRACING, 1.5)
    assert len(file.read_text()) > 100


def test_a_folder_that_takes_nothing_costs_only_time(tmp_path: Path) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "file").write_text("x")

    assert FigureCache(tmp_path / "file")(TRACING, 1.5) == reckoned(TRACING, 1.5)
